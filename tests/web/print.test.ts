/** The sheet from the printer: on the paper that it was made for, at true scale. Measured in the PDF that the browser prints. */
import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openJobFile } from "./given.js";

/** The dialog of the printer is left out; what would be printed is what `page.pdf` prints. */
const PRINTER = "window.print = () => {};";

/** Points of a PDF in a millimetre: ISO 32000-1, 8.3.2.3. */
const POINT = 72 / 25.4;

/** A page of a PDF as Chromium writes it: its size in points, and by how much it draws what is in millimetres. */
interface Printed {
  readonly size: readonly [number, number];
  readonly scales: readonly (readonly [number, number])[];
}

function readPrinted(pdf: Buffer): readonly Printed[] {
  const text = pdf.toString("latin1");
  const sizes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(
    ([, width, height]) => [Number(width), Number(height)] as const,
  );
  const contents = [...text.matchAll(/\/FlateDecode[^>]*>>\s*stream\r?\n/g)].flatMap(({ 0: head, index }) => {
    try {
      return [inflateSync(pdf.subarray(index + head.length)).toString("latin1")];
    } catch {
      return [];
    }
  });
  const pages = contents.filter((each) => /^\.2[34]\d* 0 0 -\.2[34]\d* /m.test(each.slice(0, 200)));
  return sizes.map((size, i) => ({ size, scales: scalesOf(pages[i] ?? "") }));
}

/** Of its first matrices: that of the page, and within it those of the drawing. */
function scalesOf(content: string): readonly (readonly [number, number])[] {
  const found = [...content.matchAll(/^(-?[\d.]+) 0 0 (-?[\d.]+) -?[\d.]+ -?[\d.]+ cm$/gm)].map(
    ([, across, down]) => [Number(across), Number(down)] as const,
  );
  const [page = [0, 0], ...within] = found;
  return within.map(([across, down]) => [across * page[0], Math.abs(down * page[1])]);
}

async function print(page: Page): Promise<readonly Printed[]> {
  await page.getByRole("button", { name: "Print this sheet" }).click();
  await page.locator(".printed img").first().waitFor({ state: "attached" });
  return readPrinted(await page.pdf({ preferCSSPageSize: true }));
}

async function sizeOfSheet(page: Page): Promise<readonly [number, number]> {
  const [coming] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Download this sheet (SVG)" }).click(),
  ]);
  const svg = readFileSync(await coming.path(), "utf8");
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 \1 \2"/.exec(svg) ?? [];
  return [Number(width), Number(height)];
}

describe.skipIf(hasNoBrowser())("a sheet that is printed", () => {
  const driver = startDriver();
  const sample = (name: string): string => new URL(`../../samples/${name}/job.yaml`, import.meta.url).pathname;

  it.each(["machine-hall", "packing-hall"])(
    "of %s has its own paper, and a millimetre of it is a millimetre",
    async (name) => {
      await driver.visit(
        async (page) => {
          await page.addInitScript({ content: PRINTER });
          await page.reload();
          await openJobFile(page, sample(name));
          const [width, height] = await sizeOfSheet(page);
          const printed = await print(page);
          expect(printed.length).toBe(1);
          const [first] = printed;
          // Chromium makes papers of whole dots, 96 to the inch
          for (const [i, mm] of [width, height].entries())
            expect(Math.abs((first?.size[i] ?? 0) - mm * POINT)).toBeLessThanOrEqual(0.75);
          const own = first?.scales[0] ?? [0, 0];
          // a tenth of a millimetre in a hundred metres
          for (const scale of own) expect(Math.abs(scale / POINT - 1)).toBeLessThan(1e-6);
        },
        { dark: true },
      );
    },
  );
});
