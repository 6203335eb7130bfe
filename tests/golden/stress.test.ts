/**
 * Jobs that ask much of a drawing, each sheet as a golden picture that was looked at. A mismatch writes `NAME.changed` beside
 * it; `npm run samples` renews them. The embedded font, the same in all, is left out of the goldens.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { builtPackage } from "./package.js";

const stress = fileURLToPath(new URL("../stress", import.meta.url));
/** Pictures, and the files that they name. */
const KINDS = [
  "cut-joined",
  "cut-r12",
  "drill-list",
  "sheet-svg",
  "piece-sheet-svg",
  "setting-sheet-svg",
  ...(["setting-out-csv", "setting-out-bare-csv", "check-distances-csv", "plan-dxf", "plan-svg"] as const),
] as const;
const names = readdirSync(join(stress, "jobs")).map((file) => file.replace(/\.yaml$/, ""));

/** As `tests/golden/renew.mjs` does. */
function withoutFont(svg: string): string {
  return svg.replace(/base64,[A-Za-z0-9+/=]+/g, "base64,");
}

function flatName(path: string): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

describe("sheets that ask much", () => {
  it("are twenty jobs or more", () => {
    expect(names.length).toBeGreaterThanOrEqual(20);
  });

  it.each(names)("%s is drawn as it was looked at", async (name) => {
    const files = await builtPackage(join(stress, "jobs"), `${name}.yaml`, KINDS);
    const drawn = [...files].filter(([path]) => path.endsWith(".svg"));
    const changed = drawn.flatMap(([path, bytes]) => {
      const svg = withoutFont(bytes.toString("utf8"));
      const golden = join(stress, "expected", name, flatName(path));
      if (existsSync(golden) && readFileSync(golden, "utf8") === svg) return [];
      mkdirSync(dirname(golden), { recursive: true });
      writeFileSync(`${golden}.changed`, svg);
      return [flatName(path)];
    });
    expect(changed).toEqual([]);
    const known = readdirSync(join(stress, "expected", name)).filter((file) => file.endsWith(".svg"));
    expect(drawn.map(([path]) => flatName(path)).sort()).toEqual(known.sort());
  });
});
