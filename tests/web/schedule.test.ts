/** The schedule on the page, by keyboard and by mouse: cells typed, blocks pasted, bases added, sorted, found. Invented data. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, showView } from "./states.js";

const grid = (page: Page) => page.getByRole("grid", { name: "Schedule of bases" });

const cell = (page: Page, mark: string, column: string) =>
  page.getByRole("gridcell", { name: new RegExp(`^${mark}: ${column},`) });

const says = (page: Page, mark: string, column: string, text: string) =>
  page
    .locator(`[aria-label^=${JSON.stringify(`${mark}: ${column}, ${text}`)}]`)
    .first()
    .waitFor();

async function openSchedule(page: Page, sample = "packing-hall"): Promise<void> {
  await openSample(page, sample);
  await showView(page, "Schedule");
  await grid(page).getByRole("rowheader").first().waitFor();
}

const PATIENT = { timeout: 15_000 };

/** Marks of the lines as they stand one under the other. */
async function marksFromAbove(page: Page, count: number): Promise<readonly string[]> {
  const marks = await page.evaluate(`[...document.querySelectorAll(".grid tbody th[scope=row]")]
    .map((head) => [head.getBoundingClientRect().y, head.querySelector(".text").textContent])
    .sort(([a], [b]) => a - b).map(([, mark]) => mark)`);
  return (marks as readonly string[]).slice(0, count);
}

/** What a spreadsheet hands over, pasted where the keyboard is. */
function paste(page: Page, text: string): Promise<unknown> {
  return page.evaluate(`(() => {
    const data = new DataTransfer();
    data.setData("text/plain", ${JSON.stringify(text)});
    document.activeElement.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
  })()`);
}

/** What is copied where the keyboard is. */
function copied(page: Page): Promise<unknown> {
  return page.evaluate(`(() => {
    const data = new DataTransfer();
    document.activeElement.dispatchEvent(new ClipboardEvent("copy", { clipboardData: data, bubbles: true, cancelable: true }));
    return data.getData("text/plain");
  })()`);
}

describe.skipIf(hasNoBrowser())("the schedule on the page", () => {
  const driver = startDriver();

  it("is edited by keyboard alone: arrows lead, typing begins, Enter takes, Escape gives up", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await cell(page, "B1", "Projection").click();
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("ArrowDown");
      await page.keyboard.type("9-1/2");
      await page.keyboard.press("Enter");
      await says(page, "B3", "Projection", "9-1/2");
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("F2");
      await page.keyboard.type("x");
      await page.keyboard.press("Escape");
      expect(await page.locator(":focus").getAttribute("aria-label")).toBe("B3: Projection, 9-1/2");
      // a step after it: what Escape gave up is in none before
      await page.keyboard.press("ArrowRight");
      await page.keyboard.type("25");
      await page.keyboard.press("Enter");
      await says(page, "B3", "Embedment", "25");
      await says(page, "B3", "Projection", "9-1/2");
      await page.getByRole("button", { name: "Undo" }).click();
      await says(page, "B3", "Embedment", "24");
      await page.getByRole("button", { name: "Undo" }).click();
      await says(page, "B3", "Projection", "9");
      await cell(page, "B3", "Projection").click();
      await page.keyboard.press("Home");
      expect(await page.locator(":focus").getAttribute("aria-label")).toBe("B3: Mark, B3");
      await page.keyboard.press("Control+End");
      expect(await page.locator(":focus").getAttribute("aria-label")).toMatch(/^B22: Material/);
    });
  });

  it("keeps what is refused in its cell, and says there what is allowed", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await cell(page, "B3", "Projection").click();
      await page.keyboard.type("9 apples");
      await page.keyboard.press("Enter");
      await says(page, "B3", "Projection", "9 apples; ");
      expect(await cell(page, "B3", "Projection").getAttribute("aria-invalid")).toBe("true");
      await page.getByText(/^Projection: "9 apples"/).waitFor();
      await says(page, "B3", "State", "faulty");
      await page.getByRole("button", { name: "Undo" }).click();
      await says(page, "B3", "Projection", "9");
    });
  });

  it("takes a pattern as it is read, and says at the cell what a pattern may be", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await cell(page, "B3", "Pattern").click();
      await page.keyboard.type("hexagon 12");
      await page.keyboard.press("Enter");
      await page
        .getByRole("alert")
        .getByText(/"hexagon 12" is no pattern/)
        .waitFor();
      await page.getByRole("textbox", { name: "B3, Pattern" }).fill("rectangle 13 x 10");
      await page.keyboard.press("Enter");
      await says(page, "B3", "Pattern", "rectangle 13 x 10");
    });
  });

  it("takes 200 pasted rows as one step: lines first, new bases behind them; and one Undo takes them back", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page, "machine-hall");
      await page.getByRole("rowheader", { name: "F1: Mark, F1" }).click();
      const rows = Array.from({ length: 200 }, (_, i) => `N${i + 1}\tx\t\t2\tM24\t8.8`);
      await paste(page, rows.join("\r\n"));
      await page.getByText(/^200 bases$/).waitFor();
      await says(page, "N2", "Rod dia", "M24");
      const refused = page.getByRole("alert");
      expect(await refused.textContent()).toContain('F1, State, "x"');
      await page.getByRole("button", { name: "Undo" }).click();
      await page.getByText(/^5 bases$/).waitFor();
      await says(page, "F2", "Rod dia", "M30");
    });
  });

  it("copies a block as a spreadsheet takes it, and fills a selection down", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await cell(page, "B1", "Projection").click();
      await page.keyboard.press("Shift+ArrowDown");
      await page.keyboard.press("Shift+ArrowRight");
      expect(await copied(page)).toBe("6\t12\n7\t15");
      await page.getByRole("button", { name: "Fill down" }).click();
      await says(page, "B2", "Embedment", "12");
      await says(page, "B2", "Projection", "6");
    });
  });

  it("adds, duplicates, moves and takes out bases; sorts as a view, and writes that order when asked", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      const first = grid(page).getByRole("rowheader").first();
      await page.getByRole("rowheader", { name: "B1: Mark, B1" }).click();
      await page.getByRole("button", { name: "Duplicate" }).click();
      // the copy is picked, and what is pressed twice at once is done twice to it
      await grid(page).getByRole("rowheader", { name: "B23: Mark", selected: true }).waitFor();
      await page.getByRole("button", { name: "Move down" }).dblclick();
      await expect.poll(() => marksFromAbove(page, 5), PATIENT).toEqual(["B1", "B2", "B3", "B23", "B4"]);
      await grid(page).getByRole("rowheader", { name: "B23: Mark", selected: true }).waitFor();
      await page.getByRole("button", { name: "Take out" }).click();
      await page.getByText(/^22 bases$/).waitFor();
      const head = grid(page).getByRole("columnheader", { name: "Rod dia" });
      await head.getByRole("button").click();
      expect(await head.getAttribute("aria-sort")).toBe("ascending");
      const least = await first.getAttribute("aria-label");
      await page.getByRole("button", { name: "Write this order into the job" }).click();
      await expect.poll(() => grid(page).locator("th[aria-sort=ascending]").count(), PATIENT).toBe(0);
      await expect.poll(() => first.getAttribute("aria-label"), PATIENT).toBe(least);
      expect(least).not.toMatch(/^B1:/);
    });
  });

  it("finds bases by a text and by their state", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await page.getByLabel("Find").fill("conveyor bridge");
      await page.getByText(/^1 of 22 bases$/).waitFor();
      await page.getByLabel("Find").fill("");
      await page.getByLabel("Show").selectOption("held");
      await page.getByRole("rowheader", { name: /^B20: Mark/ }).waitFor();
      expect(await grid(page).getByRole("rowheader").count()).toBe(1);
      await says(page, "B20", "Worst margin", "short by 1-1/16 in: overlap of two holes");
      // found again by who went elsewhere
      await showView(page, "Ledger");
      await showView(page, "Schedule");
      await page.getByText(/^1 of 22 bases$/).waitFor();
      expect(await page.getByLabel("Show").inputValue()).toBe("held");
    });
  });

  it("shows hostile texts as texts", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await page.getByRole("rowheader", { name: "B1: Mark, B1" }).click();
      const hostile = `<img src=x onerror="document.title='hit'">`;
      await paste(page, hostile);
      await page.getByRole("rowheader", { name: hostile }).first().waitFor();
      expect(await page.locator("tbody img").count()).toBe(0);
      expect(await page.title()).not.toBe("hit");
    });
  });

  it("shows values that defaults give lighter, with who gives them, and edits the defaults", async () => {
    await driver.visit(async (page) => {
      await openSchedule(page);
      await page.getByRole("button", { name: "Columns" }).click();
      await page.getByRole("checkbox", { name: "Template grade" }).check();
      await says(page, "B1", "Template grade", "A36, given by default");
      const field = page.getByRole("textbox", { name: "every base, Template grade" });
      await field.fill("A572");
      await field.press("Enter");
      await says(page, "B1", "Template grade", "A572, given by default");
    });
  });

  it("is a card a row on a narrow screen, and edited there", async () => {
    await driver.visit(
      async (page) => {
        await openSchedule(page);
        await page.locator(".grid.cards").waitFor();
        await cell(page, "B1", "Projection").click();
        await page.keyboard.press("Enter");
        await page.getByRole("textbox", { name: "B1, Projection" }).fill("6-1/4");
        await page.keyboard.press("Enter");
        await says(page, "B1", "Projection", "6-1/4");
        expect(await page.evaluate("document.documentElement.scrollWidth <= innerWidth")).toBe(true);
      },
      { width: 390, height: 844 },
    );
  });
});
