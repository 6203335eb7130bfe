/**
 * Accessibility of every view, by the rules of axe-core (Deque): all of WCAG 2.0, 2.1 and 2.2 A and AA that can be told by a
 * program, and its best practices, at three widths, light and dark. No rule is left out; for `DRAWN` see there.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, settled, showView, WIDTHS } from "./states.js";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const OPTIONS = {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"],
  // the one rule of 2.2 is off unless it is asked for
  rules: { "target-size": { enabled: true } },
  resultTypes: ["violations"],
};

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/**
 * Figures and holes of a drawing may be smaller than 24 px, or nearer to each other: WCAG 2.5.8 excepts a presentation that is
 * essential, as a place on a drawing is, and what can be done elsewhere, here in the fields and the list of holes beside it.
 */
const DRAWN = /class="(figure-place|hole|mark-place)/;

/** What axe finds wrong, a line each rule with the first place. */
async function violationsOf(page: Page, state: string): Promise<readonly string[]> {
  await settled(page);
  const { violations } = await page.evaluate<{ violations: readonly Violation[] }>(
    `axe.run(document, ${JSON.stringify(OPTIONS)})`,
  );
  const left = violations.map((each) =>
    each.id === "target-size" ? { ...each, nodes: each.nodes.filter(({ html }) => !DRAWN.test(html)) } : each,
  );
  return left.flatMap(({ id, help, nodes: [first, ...more] }) => {
    if (first === undefined) return [];
    const place = `${first.html.slice(0, 300)}: ${first.failureSummary.replaceAll(/\s+/g, " ")}`;
    return `${state}: ${id} (${help}) at ${1 + more.length} places, as ${place}`;
  });
}

const VIEWS = ["Template", "Schedule", "Plan", "Ledger", "Questions", "Solid", "Package", "Survey", "Proof", "Compare"];

describe.skipIf(hasNoBrowser())("accessibility", () => {
  const driver = startDriver();
  const cases = WIDTHS.flatMap((size) => [
    { ...size, dark: false },
    { ...size, dark: true },
  ]);

  it("is told by rules that find faults: a picture without a name is one", async () => {
    await driver.visit(async (page) => {
      await page.evaluate(AXE);
      await page.evaluate("document.querySelector('main').append(document.createElement('button'))");
      expect((await violationsOf(page, "planted")).join("\n")).toContain("button-name");
    });
  });

  it.each(cases)("of every view at $width px, dark $dark", async ({ width, height, dark }) => {
    await driver.visit(
      async (page) => {
        await page.evaluate(AXE);
        const found = [...(await violationsOf(page, "Begin"))];
        await openSample(page, "packing-hall");
        for (const view of VIEWS) {
          await showView(page, view);
          found.push(...(await violationsOf(page, view)));
        }
        await page.getByRole("button", { name: "Keys and words" }).click();
        found.push(...(await violationsOf(page, "Keys and words")));
        expect(found).toEqual([]);
      },
      { width, height, dark },
    );
  });
});
