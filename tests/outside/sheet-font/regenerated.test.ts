/** The sheet font that is committed is what `npm run fonts` makes of Arimo, byte for byte. Source: @expo-google-fonts/arimo. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { isSkipped } from "../viewers.js";
import { makeFontFiles } from "./make.mjs";

const require = createRequire(import.meta.url);

/** Until the package is installed, there is nothing to cut the font from. */
function isInstalled(): boolean {
  try {
    return require.resolve("@expo-google-fonts/arimo/package.json") !== "";
  } catch {
    return process.env.RODPLATE_REQUIRE_OUTSIDE === "1";
  }
}

describe.skipIf(!isInstalled() || isSkipped("fonts-dejavu-extra"))("the sheet font", () => {
  it("is made again the same", async () => {
    const files = await makeFontFiles();
    expect(files.size).toBe(4);
    for (const [path, text] of files)
      expect(readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8") === text, path).toBe(true);
  });
});
