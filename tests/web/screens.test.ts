/**
 * Pictures of the page in its main states, at three widths, light and dark; they lie in `tests/web/screens` for people to look
 * at. `RODPLATE_SCREENS=1 npx vitest run tests/web/screens.test.ts` takes them anew. Letters and edges differ from one machine
 * to the next, and words of a sample change, so that a picture is held against the kept one by the brightness of coarse cells: a
 * view that came up empty, in other colours or with its parts elsewhere is another one.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, settled, showView, WIDTHS } from "./states.js";

const FOLDER = fileURLToPath(new URL("screens/", import.meta.url));
const isTakenAnew = process.env.RODPLATE_SCREENS === "1";

/** The states of one visit, in the order in which a person comes to them. */
const STATES = ["Begin", "Template", "Schedule", "Ledger", "Solid"] as const;
const LOOKS = ["light", "dark"] as const;

/** Bytes of a picture at most. */
const SMALL = 45_000;

/** Cells of a picture each way. */
const CELLS = 12;

/** Greatest mean difference of cells, of 255: the same state on other days was below 1.3, another state above 4.5. */
const LIKE = 3;

async function pictureOf(page: Page): Promise<Buffer> {
  await settled(page);
  return page.screenshot({ type: "jpeg", quality: 8, animations: "disabled" });
}

/** Width, height, and mean brightness, 0 to 255, of each cell, row by row. */
interface Coarse {
  readonly size: readonly [number, number];
  readonly cells: readonly number[];
}

/** Decoded by the browser itself. */
function coarse(page: Page, picture: Buffer): Promise<Coarse> {
  return page.evaluate<Coarse>(`(async () => {
    const bytes = Uint8Array.from(atob("${picture.toString("base64")}"), (sign) => sign.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes]));
    const { width, height } = bitmap;
    const context = new OffscreenCanvas(width, height).getContext("2d");
    context.drawImage(bitmap, 0, 0);
    const { data } = context.getImageData(0, 0, width, height);
    const sums = new Array(${CELLS ** 2}).fill(0);
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) {
        const at = 4 * (y * width + x);
        const cell = Math.floor((y * ${CELLS}) / height) * ${CELLS} + Math.floor((x * ${CELLS}) / width);
        sums[cell] += 0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2];
      }
    return { size: [width, height], cells: sums.map((sum) => (sum * ${CELLS ** 2}) / (width * height)) };
  })()`);
}

function difference(a: Coarse, b: Coarse): number {
  const each = a.cells.map((brightness, cell) => Math.abs(brightness - (b.cells[cell] ?? 0)));
  return each.reduce((sum, one) => sum + one, 0) / each.length;
}

/** A page is never wider than its window. */
async function goesSideways(page: Page): Promise<boolean> {
  return page.evaluate<boolean>("document.documentElement.scrollWidth > document.documentElement.clientWidth");
}

async function reach(page: Page, state: (typeof STATES)[number]): Promise<void> {
  if (state === "Begin") return page.locator(".samples li:last-child svg path").first().waitFor();
  if (state === "Template") await openSample(page, "packing-hall");
  await showView(page, state);
  if (state === "Solid") await page.locator("canvas[data-shown]").waitFor();
}

/** Holds what is shown against the kept picture of this name, or keeps it. */
async function compareShown(page: Page, name: string): Promise<void> {
  const now = await pictureOf(page);
  const path = `${FOLDER}${name}.jpg`;
  if (isTakenAnew) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(path, now);
  }
  const kept = readFileSync(path);
  expect(kept.length, name).toBeLessThan(SMALL);
  const [shown, before] = [await coarse(page, now), await coarse(page, kept)];
  expect(shown.size, name).toEqual(before.size);
  expect(difference(shown, before), name).toBeLessThan(LIKE);
}

describe.skipIf(hasNoBrowser())("pictures of the page", () => {
  const driver = startDriver();

  it.each(WIDTHS)("at $width px, light and dark", { timeout: 120_000 }, async ({ width, height }) => {
    await driver.visit(
      async (page) => {
        for (const state of STATES) {
          await reach(page, state);
          for (const look of LOOKS) {
            await page.emulateMedia({ colorScheme: look });
            await compareShown(page, `${state.toLowerCase()}-${width}-${look}`);
          }
          await page.emulateMedia({ colorScheme: "light" });
          expect(await goesSideways(page), `${state} goes sideways`).toBe(false);
        }
      },
      { width, height },
    );
  });

  it("are told from those of a view that came up empty", async () => {
    await driver.visit(async (page) => {
      for (const state of STATES) {
        await reach(page, state);
        const full = await coarse(page, await pictureOf(page));
        await page.evaluate("document.querySelector('#view').style.visibility = 'hidden'");
        const empty = await coarse(page, await pictureOf(page));
        await page.evaluate("document.querySelector('#view').style.visibility = ''");
        expect(difference(full, empty), state).toBeGreaterThan(LIKE);
      }
    });
  });

  it("stand in 640 px as at 200 % zoom without going sideways", async () => {
    await driver.visit(
      async (page) => {
        await openSample(page, "packing-hall");
        for (const view of ["Template", "Schedule", "Plan", "Ledger", "Questions", "Solid", "Package", "Survey"]) {
          await showView(page, view);
          await settled(page);
          expect(await goesSideways(page), view).toBe(false);
        }
      },
      { width: 640, height: 400 },
    );
  });
});
