/**
 * Accessibility of every view and of what it asks, by the rules of axe-core (Deque): all of WCAG 2.0, 2.1 and 2.2 A and AA that can be told by a
 * program, and its best practices, at the widest and the narrowest width, light and dark. No rule is left out; for `DRAWN` see there.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { choose } from "./given.js";
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
async function violationsOf(page: Page, state: string, options: object = OPTIONS): Promise<readonly string[]> {
  await settled(page);
  const { violations } = await page.evaluate<{ violations: readonly Violation[] }>(
    `axe.run(document, ${JSON.stringify(options)})`,
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

/** Of dark only the colours are others. */
const DARK = { ...OPTIONS, runOnly: ["color-contrast"], rules: {} };

/** A state, and how a person comes to it from the one before. */
type Steps = readonly (readonly [state: string, reach: (page: Page) => Promise<unknown>])[];

const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name }).first().click();
const view = (name: string) => [name, (page: Page) => showView(page, name)] as const;
const unknown = { name: "notes.zip", bytes: new TextEncoder().encode("no archive") };

/** Before there is a job, with what is wrong in a first template and what is asked of a schedule. */
const BEGINNING: Steps = [
  ["Begin", (page) => page.locator(".samples li:last-child svg path").first().waitFor()],
  [
    "a first template at fault",
    async (page) => {
      await press(page, "Type a first template");
      await page.getByLabel("X overall").fill("12 furlongs");
      await press(page, "Make this template");
      await page.locator(".fault", { hasText: "furlongs" }).waitFor();
    },
  ],
  [
    "a schedule that asks",
    async (page) => {
      await press(page, "Back");
      await press(page, "Paste its cells");
      await page.getByLabel("Cells of the schedule").fill("MARK\tROD DIA\tGAGE\nB1\t3/4 in\t9 x 9\nB2\tzz\t12 x 10\n");
      await press(page, "Read it");
      await page.locator(".asking .question").first().waitFor();
    },
  ],
];

/** With a sample open: every view, its lists unfolded; faults at their fields, dialogs, work that goes on. */
const JOB: Steps = [
  [
    "Template",
    async (page) => {
      await openSample(page, "packing-hall");
      await page.evaluate("for (const list of document.querySelectorAll('#view details')) list.open = true");
    },
  ],
  [
    "a figure at fault",
    async (page) => {
      await press(page, /^rods overall in x/);
      await page.getByRole("textbox", { name: "rods overall in x" }).fill("12 furlongs");
      await page.keyboard.press("Enter");
      await page.locator(".figure-field .fault").first().waitFor();
    },
  ],
  [
    "a held base",
    async (page) => {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+z");
      await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: /^B20/ }).click();
      await page.getByRole("status").filter({ hasText: "Not to be cut" }).waitFor();
    },
  ],
  [
    "a link to be shared",
    async (page) => {
      await page.locator(".job-menu > summary").click();
      await press(page, "Share as a link");
      await page.getByLabel("Link").waitFor();
    },
  ],
  view("Schedule"),
  [
    "a cell at fault, the next one open",
    async (page) => {
      await page.getByRole("gridcell", { name: /^B2: Rod dia/ }).click();
      await page.keyboard.type("zz");
      await page.keyboard.press("Enter");
      await page.locator(".line.told").first().waitFor();
      await page.keyboard.press("F2");
      await press(page, "Columns");
    },
  ],
  [
    "Plan",
    async (page) => {
      await press(page, /^Undo/);
      await page.locator(".line.told").first().waitFor({ state: "detached" });
      await showView(page, "Plan");
      await page.getByRole("table", { name: "Places of bases" }).waitFor();
    },
  ],
  [
    "Ledger",
    async (page) => {
      await showView(page, "Ledger");
      await press(page, "Show the rows that hold");
      await page.getByRole("table", { name: "Rows of the ledger" }).getByText("Overlap of two holes").first().waitFor();
    },
  ],
  [
    "Questions, one being answered",
    async (page) => {
      await showView(page, "Questions");
      await page.getByText("Answer Q-3", { exact: true }).click();
    },
  ],
  [
    "Solid",
    async (page) => {
      await showView(page, "Solid");
      await page.locator("canvas[data-shown]").waitFor();
    },
  ],
  [
    "Package, being made",
    async (page) => {
      await showView(page, "Package");
      await press(page, "Make the package");
    },
  ],
  [
    "Package, made",
    async (page) => {
      await page.getByRole("button", { name: /^Save .*\.zip$/ }).waitFor({ timeout: 90_000 });
      await press(page, "Look at START-HERE.txt");
      await page.getByRole("region", { name: "Text of START-HERE.txt" }).waitFor();
    },
  ],
  [
    "Sign, without a name",
    async (page) => {
      await showView(page, "Sign");
      await press(page, "Sign the package");
      await page.getByText("by needs a name").first().waitFor();
    },
  ],
  [
    "Survey, with what the file does not say",
    async (page) => {
      await showView(page, "Survey");
      const points = { name: "points.csv", bytes: new TextEncoder().encode("A1,1000,1000,0\nA2,1009,1000,0\n") };
      await choose(page, "Surveyor's points", points);
      await page.getByRole("alert").waitFor({ timeout: 60_000 });
    },
  ],
  [
    "Budget",
    async (page) => {
      await showView(page, "Budget");
      await press(page, "Reckon the budget");
      await page.locator(".answer .verdict").waitFor({ timeout: 60_000 });
    },
  ],
  [
    "Proof, of no archive",
    async (page) => {
      await showView(page, "Proof");
      await choose(page, "Cut files or a package", unknown);
      await page.locator(".refusal, .answer .verdict").first().waitFor({ timeout: 60_000 });
    },
  ],
  view("Compare"),
  [
    "Keys and words",
    async (page) => {
      await press(page, "Keys and words");
      await page.getByRole("dialog", { name: "Keys and words" }).waitFor();
    },
  ],
];

describe.skipIf(hasNoBrowser())("accessibility", () => {
  const driver = startDriver();

  it("is told by rules that find faults: a picture without a name is one", async () => {
    await driver.visit(async (page) => {
      await page.evaluate(AXE);
      await page.evaluate("document.querySelector('main').append(document.createElement('button'))");
      expect((await violationsOf(page, "planted")).join("\n")).toContain("button-name");
    });
  });

  it.each([WIDTHS[0], WIDTHS[2]])(
    "of every view and what it asks, at $width px, light and dark",
    { timeout: 300_000 },
    async (size) => {
      for (const steps of [BEGINNING, JOB])
        await driver.visit(async (page) => {
          await page.evaluate(AXE);
          const found: string[] = [];
          for (const [state, reach] of steps) {
            await reach(page);
            found.push(...(await violationsOf(page, state)));
            await page.emulateMedia({ colorScheme: "dark" });
            found.push(...(await violationsOf(page, `${state}, dark`, DARK)));
            await page.emulateMedia({ colorScheme: "light" });
          }
          expect(found).toEqual([]);
        }, size);
    },
  );
});
