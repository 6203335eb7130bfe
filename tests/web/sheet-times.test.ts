/** How long it takes from Enter to the drawing on the screen: an eight-rod template, as the browser itself measures it. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample } from "./states.js";

async function times(page: Page, name: string): Promise<readonly number[]> {
  const entries = `performance.getEntriesByName(${JSON.stringify(name)}).map((entry) => entry.duration)`;
  return (await page.evaluate<number[]>(entries)).sort((a, b) => a - b);
}

const at = (sorted: readonly number[], share: number) => sorted[Math.floor(sorted.length * share)] ?? Number.NaN;

describe.skipIf(hasNoBrowser())("times of typing on the drawing", () => {
  const driver = startDriver();

  it("draws an edit of eight rods soon after Enter, little of it in the page itself", async () => {
    await driver.visit(async (page) => {
      await openSample(page, "machine-hall");
      await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: /^F3/ }).click();
      const circle = page.getByRole("button", { name: /^bolt circle/ });
      for (let diameter = 519; diameter > 499; diameter -= 1) {
        await circle.focus();
        await page.keyboard.press("F2");
        await page.keyboard.type(String(diameter));
        await page.keyboard.press("Enter");
        await page.getByRole("button", { name: new RegExp(`^bolt circle.*Ø${diameter}`) }).waitFor();
      }
      const [drawn, rendered] = [await times(page, "figure drawn"), await times(page, "sheet rendered")];
      const say = (sorted: readonly number[]) => [0.5, 0.95].map((share) => at(sorted, share).toFixed(1)).join(" and ");
      process.stderr.write(`from Enter to drawing ${say(drawn)} ms, rendering ${say(rendered)} ms (median, 95 %)\n`);
      expect(drawn).toHaveLength(20);
      // the quarter that other programs of the machine disturbed least
      expect(at(rendered, 0.25)).toBeLessThan(4);
      expect(at(drawn, 0.25)).toBeLessThan(100);
    });
  });
});
