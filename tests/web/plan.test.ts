/** The layout on the page: edited on its drawing, by mouse and by keyboard; begun where there is none. Invented data. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, showView } from "./states.js";

async function openPlan(page: Page, sample = "packing-hall"): Promise<void> {
  await openSample(page, sample);
  await showView(page, "Plan");
}

const PATIENT = { timeout: 15_000 };

const spacing = (page: Page, words: string) => page.getByRole("button", { name: `Spacing ${words}: edit` });

describe.skipIf(hasNoBrowser())("the plan on the page", () => {
  const driver = startDriver();

  it("takes a spacing where it stands: press it, type, Enter; and gives it back by Undo", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      await spacing(page, "2 to 3, 25'").click();
      const field = page.getByRole("textbox", { name: "Spacing 2 to 3" });
      await field.fill("27'");
      await page.keyboard.press("Escape");
      await spacing(page, "2 to 3, 25'").and(page.locator(":focus")).waitFor();
      await page.keyboard.press("F2");
      await field.fill("26'-6\"");
      await page.keyboard.press("Enter");
      await spacing(page, "2 to 3, 26'-6\"").and(page.locator(":focus")).waitFor();
      expect(await page.getByRole("button", { name: "Undo" }).getAttribute("title")).toContain("25' to 26'-6\"");
      await page.locator(".layout text", { hasText: "26'-6\"" }).first().waitFor();
      await page.getByRole("button", { name: "Spacings, x, 25', 26'-6\", 9 @ 25': edit" }).waitFor();
      await page.getByRole("button", { name: "Undo" }).click();
      await spacing(page, "2 to 3, 25'").waitFor();
    });
  });

  it("keeps a spacing that is refused, says why, and leaves the drawing as it was", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      await spacing(page, "2 to 3, 25'").click();
      await page.getByRole("textbox", { name: "Spacing 2 to 3" }).fill("far");
      await page.keyboard.press("Enter");
      await page.getByText(/The drawing is as the layout was last right/).waitFor();
      await page.getByText(/"far"/).first().waitFor();
      expect(await page.locator(".layout text", { hasText: /^25'-0"$/ }).count()).toBeGreaterThan(5);
    });
  });

  it("renames a line with every place that names it", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      // below the window: the keyboard brings it in
      await page.getByRole("button", { name: "Line A, A: edit" }).focus();
      await page.keyboard.press("Enter");
      await page.getByRole("textbox", { name: "Line A" }).fill("AA");
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: "Place 1, Stands at, AA-1: edit" }).waitFor();
      expect(await page.locator(".beside .fault").count()).toBe(0);
    });
  });

  it("has every base by keyboard with its name, place and state, and opens its template", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      const places = page.getByRole("list", { name: /^Bases on the plan/ }).getByRole("button");
      await places.first().waitFor();
      expect(await places.count()).toBe(118);
      // one stop of the tabulator; arrows go to the neighbour, which comes into the window
      expect(await places.and(page.locator("[tabindex='0']")).count()).toBe(1);
      await places.and(page.getByRole("button", { name: /^B3 G-1, / })).focus();
      await page.keyboard.press("ArrowDown");
      await places
        .and(page.getByRole("button", { name: /^B3 F-1, / }))
        .and(page.locator(":focus"))
        .waitFor();
      await page.keyboard.press("End");
      const [last, room] = [await places.last().boundingBox(), await page.locator(".layout").boundingBox()];
      expect(last !== null && room !== null && last.x > room.x && last.x + last.width < room.x + room.width).toBe(true);
      const held = places.and(page.getByRole("button", { name: /^B20 H-7, held/ }));
      await held.focus();
      await page.keyboard.press("Enter");
      await page.getByRole("img", { name: "Template T20" }).waitFor();
    });
  });

  it("places a base, changes its turn, and takes it out again", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      await page.getByLabel("Place base").selectOption("B17");
      await page.getByLabel("at the lines").fill("B-10.5");
      await page.getByRole("button", { name: "Place", exact: true }).click();
      await page.getByText(/10\.5/).first().waitFor();
      await page.getByRole("button", { name: "Undo" }).click();
      await page.getByRole("button", { name: "Place 1, Turn, blank: edit" }).click();
      await page.getByRole("textbox", { name: "Place 1, Turn" }).fill("270");
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: /^B7 A-1, .*turned 270\u00b0/ }).waitFor();
    });
  });

  it("lists the points to set out, and hands them over as the package has them", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      await page.getByText("Points to set out").click();
      const [file] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Download" }).first().click(),
      ]);
      const text = readFileSync(await file.path(), "utf8");
      expect(file.suggestedFilename()).toMatch(/^PH-207_rev-B.*_local_PNEZD_.*\.csv$/);
      expect(text.split("\r\n").length).toBeGreaterThan(500);
    });
  });

  it("begins a grid where a job has none, and places its first base", async () => {
    await driver.visit(async (page) => {
      await openPlan(page, "machine-hall");
      await page.getByLabel(/lines that run north/).fill("3 @ 7500");
      await page.getByLabel(/lines that run east/).fill("2 @ 9000");
      await page.getByRole("button", { name: "Start the grid" }).click();
      await spacing(page, "A to B, 9000").waitFor();
      await page.getByText(/Without a place: F1 \(10 of them\)/).waitFor();
      await page.getByLabel("at the lines").fill("A-1");
      await page.getByRole("button", { name: "Place", exact: true }).click();
      await page.getByRole("button", { name: /^F1 A-1/ }).waitFor();
    });
  });

  it("is zoomed and moved as the sheet is, and shows the whole, its letters at 11 dots and more at every width", async () => {
    for (const width of [1280, 390])
      await driver.visit(
        async (page) => {
          await openPlan(page);
          await page.locator(".layout text").first().waitFor();
          const sizes = `[...document.querySelectorAll(".layout text")].map((each) => {
            const svg = each.ownerSVGElement;
            return Number(each.getAttribute("font-size")) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          })`;
          expect(await page.evaluate(`Math.min(...${sizes})`)).toBeGreaterThanOrEqual(10.99);
          await page.getByRole("button", { name: "Whole", exact: true }).click();
          const outside = `(() => {
            const room = document.querySelector(".layout").getBoundingClientRect();
            return [...document.querySelectorAll(".layout .spot, .layout .place")].filter((each) => {
              const box = each.getBoundingClientRect();
              return box.left < room.left || box.right > room.right || box.top < room.top || box.bottom > room.bottom;
            }).length;
          })()`;
          await expect.poll(() => page.evaluate(outside), PATIENT).toBe(0);
          // drawn anew for a closer look: larger in itself, its letters as large as before
          await page.locator(".layout").focus();
          for (let i = 0; i < 5; i += 1) await page.keyboard.press("+");
          await expect.poll(() => page.evaluate(outside), PATIENT).toBeGreaterThan(0);
          await expect.poll(() => page.evaluate(`Math.max(...${sizes})`), PATIENT).toBeLessThan(17);
          await expect.poll(() => page.evaluate(`Math.min(...${sizes})`), PATIENT).toBeGreaterThanOrEqual(10.8);
        },
        { width, height: 844 },
      );
  });
});
