/** Whole ways through the page, as a person goes them. Invented data. */
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, showView } from "./states.js";

const drawing = (page: Page) => page.getByRole("img", { name: /^Template / });

/** From the empty page: four rods 3/4 through 1/4, 9 by 11. */
async function firstTemplate(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Type a first template" }).click();
  await page.getByLabel("Rod diameter").fill("3/4");
  await page.getByLabel("Plate thickness").fill("1/4");
  await page.getByLabel("X overall").fill("9");
  await page.getByLabel("Y overall").fill("11");
  await page.getByRole("button", { name: "Make this template" }).click();
  await drawing(page).waitFor();
}

/** Types on a figure of the drawing, as it says. */
async function retypeFigure(page: Page, name: string, text: string): Promise<void> {
  await page.getByRole("button", { name: new RegExp(`^${name}`) }).click();
  const field = page.getByRole("textbox", { name });
  await field.fill(text);
  await field.press("Enter");
  await field.waitFor({ state: "detached" });
}

const figureShown = (page: Page, text: string) => drawing(page).getByText(text, { exact: true }).first().waitFor();

/** What has the keyboard: its element and its name; empty where nothing has it. */
function placeOfKeyboard(page: Page): Promise<string> {
  return page.evaluate<string>(`(() => {
    const place = document.activeElement;
    if (place === null || place === document.body) return "";
    const name = place.getAttribute("aria-label") ?? place.textContent;
    return (place.localName + " " + name).trim();
  })()`);
}

/** Makes the package and takes it; the names of its files. */
async function takePackage(page: Page): Promise<readonly string[]> {
  await showView(page, "Package");
  await page.getByRole("button", { name: "Make the package" }).click();
  const save = page.getByRole("button", { name: /^Save .*\.zip$/ });
  await save.waitFor({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  return Object.keys(unzipSync(readFileSync(await download.path())));
}

describe.skipIf(hasNoBrowser())("a way through the page", () => {
  const driver = startDriver();

  it("goes from nothing to a package, by a figure typed on the drawing; a reload finds everything", async () => {
    await driver.visit(async (page) => {
      await firstTemplate(page);
      await retypeFigure(page, "rods overall in x", "13-1/2");
      await figureShown(page, "13-1/2");
      await page.keyboard.press("Control+z");
      await figureShown(page, "9");
      await page.keyboard.press("Control+Shift+z");
      await figureShown(page, "13-1/2");
      const files = await takePackage(page);
      for (const ending of ["START-HERE.txt", "summary.json", "_set.pdf", ".dxf"])
        expect(files.filter((name) => name.endsWith(ending))).not.toEqual([]);
      await page.reload();
      await showView(page, "Template");
      await figureShown(page, "13-1/2");
      await page.getByRole("button", { name: /^Undo/ }).click();
      await figureShown(page, "9");
    });
  });

  it("takes an untidy schedule as it was sent, asks, and shows its templates and its table", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Paste its cells" }).click();
      await page
        .getByLabel("Cells of the schedule")
        .fill(
          'SCHEDULE OF BASES\nMARK\tQTY\tROD DIA\tEMBED\tPROJ\tGAGE\tBASE PL\nB1\t2\t"3/4"""\t12\t6\t9x9\t14x14x1\nB2\tDO\t1\t18\t8\t12 x 10\t18x16 PL 1 1/2\n',
        );
      await page.getByRole("button", { name: "Read it" }).click();
      await page.getByLabel("Plate thickness").fill("1/4");
      await page
        .getByRole("group", { name: /thickness of the templates/ })
        .getByRole("button", { name: "Answer" })
        .click();
      await page.getByLabel("Job number").fill("26-200");
      await page.getByLabel("Title").fill("Invented shed");
      await page.getByRole("button", { name: "Take these 2 bases" }).click();
      await drawing(page).waitFor();
      await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: "B2" }).click();
      await figureShown(page, "12");
      await showView(page, "Schedule");
      await page.getByRole("gridcell", { name: /^B2: Embedment, 18/ }).waitFor();
    });
  });

  it("mends a base that is held, where the ledger says what is wrong", async () => {
    await driver.visit(async (page) => {
      await firstTemplate(page);
      const held = page.getByRole("status").filter({ hasText: "Not to be cut" });
      expect(await held.count()).toBe(0);
      // two holes 13/16 whose centres are 3/4 apart overlap
      await retypeFigure(page, "rods overall in x", "3/4");
      await held.waitFor();
      await showView(page, "Package");
      await page
        .getByText(/1 of 1 bases? held/)
        .first()
        .waitFor();
      await showView(page, "Template");
      await page.getByRole("button", { name: /^Undo/ }).click();
      await held.waitFor({ state: "detached" });
      await figureShown(page, "9");
    });
  });

  it("answers a question of the engineer where it is asked; the answer outlives a reload", async () => {
    await driver.visit(async (page) => {
      await openSample(page, "packing-hall");
      await showView(page, "Questions");
      await page.getByText("Answer Q-3", { exact: true }).click();
      const form = page.getByRole("form", { name: "Answer to Q-3" });
      await form.getByLabel("Answered by").fill("J. Doe, engineer of record");
      await form.getByLabel("Answer", { exact: true }).fill("Rods farther apart, see sketch 4");
      await form.getByRole("button", { name: "Write the answer" }).click();
      const answered = page.getByRole("article", { name: "Q-3, answered" });
      await page
        .getByText(/^Answered: \d/)
        .first()
        .click();
      await answered.waitFor();
      expect(await answered.textContent()).toContain("Rods farther apart, see sketch 4");
      await page.reload();
      await page
        .getByText(/^Answered: \d/)
        .first()
        .click();
      await answered.waitFor();
    });
  });

  it("goes past the views by one key, keeps the focus when views change, and closes the panel of keys", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("heading", { level: 2 }).first().waitFor();
      await page.keyboard.press("Tab");
      expect(await page.locator(":focus").textContent()).toBe("To the view Begin");
      await page.keyboard.press("Enter");
      expect(await page.locator(":focus").getAttribute("id")).toBe("view");
      await openSample(page, "machine-hall");
      expect(await page.title()).toMatch(/^Template - MH-031 .* - rodplate$/);
      // the button that was pressed went away with its view
      await expect.poll(() => page.locator(":focus").getAttribute("id"), { timeout: 10_000 }).toBe("view");
      await page.getByRole("button", { name: "Keys and words" }).press("Enter");
      await page.getByRole("dialog", { name: "Keys and words" }).waitFor();
      await page.keyboard.press("Escape");
      await expect.poll(() => page.locator(":focus").textContent(), { timeout: 10_000 }).toBe("Keys and words");
    });
  });

  it("never loses the keyboard: not by a step taken back, what is put away, long work, or a row taken out", async () => {
    await driver.visit(async (page) => {
      const press = async (name: string | RegExp): Promise<void> => {
        const button = page.getByRole("button", { name }).first();
        await button.focus();
        await page.keyboard.press("Enter");
      };
      const has = (place: string | RegExp) =>
        expect.poll(() => placeOfKeyboard(page), { timeout: 20_000 }).toMatch(place);
      await press("Type a first template");
      await has(/^input/);
      await press("Back");
      await has("main Begin");
      await openSample(page, "packing-hall");
      await has("main Template");
      await retypeFigure(page, "rods overall in x", "9-1/2");
      await has(/^button rods overall in x: 9-1\/2/);
      await press(/^Undo/);
      await page.getByRole("button", { name: "Undo", exact: true }).waitFor();
      await has(/^button Undo/);
      await page.locator(".job-menu summary").focus();
      await page.keyboard.press("Enter");
      await press("Share as a link");
      await has(/^section Question/);
      await press("Put away");
      await has("summary Job");
      await showView(page, "Plan");
      await press(/^Take out the places/);
      await page.getByRole("button", { name: /^Undo / }).waitFor();
      await has(/^button Take out/);
      await page.keyboard.press("Control+z");
      await page.getByRole("button", { name: /^Redo / }).waitFor();
      await has(/^button Take out/);
      await showView(page, "Questions");
      await press(/^Take back the acceptance/);
      await page.getByRole("button", { name: /^Take back the acceptance/ }).waitFor({ state: "detached" });
      await has(/^button/);
      await showView(page, "Package");
      await press("Make the package");
      await page.getByRole("progressbar", { name: "Making the package" }).waitFor();
      await has("button Make the package");
      await press("Cancel");
      await page.getByRole("progressbar").waitFor({ state: "detached" });
      await has("button Make the package");
    });
  });

  it("turns the solid by keys and buttons; a change of the job leaves it where it was turned to", async () => {
    await driver.visit(async (page) => {
      await openSample(page, "machine-hall");
      await retypeFigure(page, "rods overall in x", "320");
      await showView(page, "Solid");
      const canvas = page.getByRole("img", { name: /^Solid of template S1/ });
      await page.locator("canvas[data-shown=S1]").waitFor();
      await page.getByText(/is 660 mm along X by 340 mm along Y, 6 mm thick, with 4 rods/).waitFor();
      const picture = async (): Promise<string> => {
        await page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
        return page.evaluate<string>("document.querySelector('canvas').toDataURL()");
      };
      const first = await picture();
      // a blank picture of this size packs to far less
      expect(first.length).toBeGreaterThan(8000);
      await canvas.focus();
      await page.keyboard.press("ArrowRight");
      await expect.poll(picture, { timeout: 10_000 }).not.toBe(first);
      await page.keyboard.press("ArrowLeft");
      await expect.poll(picture, { timeout: 10_000 }).toBe(first);
      for (const key of ["ArrowRight", "ArrowUp", "+"]) await page.keyboard.press(key);
      await expect.poll(picture, { timeout: 10_000 }).not.toBe(first);
      const turned = await picture();
      await page.keyboard.press("Control+z");
      await expect.poll(picture, { timeout: 10_000 }).not.toBe(turned);
      await page.keyboard.press("Control+Shift+z");
      // the same body from the same side: nothing went back to the first view
      await expect.poll(picture, { timeout: 10_000 }).toBe(turned);
      await page.getByRole("button", { name: "From the top" }).click();
      await expect.poll(picture, { timeout: 10_000 }).not.toBe(turned);
    });
  });

  it("says so where the browser draws no solids, and shows the plan", async () => {
    await driver.visit(async (page) => {
      await page.evaluate("HTMLCanvasElement.prototype.getContext = () => null");
      await openSample(page, "machine-hall");
      await showView(page, "Solid");
      await page.getByText("This browser shows no solids").waitFor();
      await drawing(page).waitFor();
      await page.getByText(/with 4 rods/).waitFor();
    });
  });
});
