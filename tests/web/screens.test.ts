/**
 * Pictures of the page in its main states, at three widths, light and dark; they lie in `tests/web/screens` for people to look
 * at. `RODPLATE_SCREENS=1 npx vitest run tests/web/screens.test.ts` takes them anew. Letters and edges differ from one machine
 * to the next, so that they are held loosely: their size, and that they are neither blank nor of one colour.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, settled, showView, WIDTHS } from "./states.js";

const FOLDER = fileURLToPath(new URL("screens/", import.meta.url));
const isTakenAnew = process.env.RODPLATE_SCREENS === "1";

interface State {
  readonly name: string;
  readonly view: string;
  reach(page: Page): Promise<void>;
}

const opened =
  (view: string) =>
  async (page: Page): Promise<void> => {
    await openSample(page, "packing-hall");
    await showView(page, view);
  };

const STATES: readonly State[] = [
  { name: "begin", view: "Begin", reach: async () => {} },
  { name: "template", view: "Template", reach: opened("Template") },
  { name: "schedule", view: "Schedule", reach: opened("Schedule") },
  { name: "ledger", view: "Ledger", reach: opened("Ledger") },
  {
    name: "solid",
    view: "Solid",
    reach: async (page) => {
      await opened("Solid")(page);
      await page.locator("canvas[data-shown]").waitFor();
    },
  },
];

/** Bytes of a picture at most. */
const SMALL = 60_000;

async function pictureOf(page: Page): Promise<Buffer> {
  await settled(page);
  return page.screenshot({ type: "jpeg", quality: 18, animations: "disabled" });
}

/** Width and height, from the frame header of a JPEG (ITU T.81, B.2.2: SOF0 or SOF2). */
function sizeOf(picture: Buffer): { readonly width: number; readonly height: number } {
  for (let at = 2; at < picture.length; at += 2 + picture.readUInt16BE(at + 2)) {
    const marker = picture[at + 1];
    if (marker === 0xc0 || marker === 0xc2)
      return { height: picture.readUInt16BE(at + 5), width: picture.readUInt16BE(at + 7) };
  }
  throw new Error("no picture");
}

describe.skipIf(hasNoBrowser())("pictures of the page", () => {
  const driver = startDriver();
  const looks = WIDTHS.flatMap((size) => [
    { ...size, dark: false },
    { ...size, dark: true },
  ]);

  it.each(looks)("at $width px, dark $dark", async ({ width, height, dark }) => {
    for (const { name, view, reach } of STATES)
      await driver.visit(
        async (page) => {
          await reach(page);
          await page.getByRole("main", { name: view }).waitFor();
          const now = await pictureOf(page);
          const path = `${FOLDER}${name}-${width}-${dark ? "dark" : "light"}.jpg`;
          if (isTakenAnew) {
            mkdirSync(FOLDER, { recursive: true });
            writeFileSync(path, now);
          }
          const kept = readFileSync(path);
          expect(kept.length).toBeLessThan(SMALL);
          expect(sizeOf(now)).toEqual(sizeOf(kept));
          // a picture that went blank packs to a fraction, one with something new all over it to a multiple
          expect(now.length / kept.length).toBeGreaterThan(0.6);
          expect(now.length / kept.length).toBeLessThan(1.6);
          const sideways = "document.documentElement.scrollWidth - document.documentElement.clientWidth";
          expect(await page.evaluate(sideways), "the page goes sideways").toBe(0);
        },
        { width, height, dark },
      );
  });

  it("stand in 640 px as at 200 % zoom without going sideways", async () => {
    await driver.visit(
      async (page) => {
        await openSample(page, "packing-hall");
        for (const view of ["Template", "Schedule", "Plan", "Ledger", "Questions", "Solid", "Package", "Survey"]) {
          await showView(page, view);
          await settled(page);
          const sideways = "document.documentElement.scrollWidth - document.documentElement.clientWidth";
          expect(await page.evaluate(sideways), view).toBe(0);
        }
      },
      { width: 640, height: 400 },
    );
  });
});
