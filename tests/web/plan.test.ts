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

const spacing = (page: Page, words: string) => page.getByRole("button", { name: `Spacing ${words}: edit` });

describe.skipIf(hasNoBrowser())("the plan on the page", () => {
  const driver = startDriver();

  it("takes a spacing where it stands: press it, type, Enter; and gives it back by Undo", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      await spacing(page, "2 to 3, 25'").click();
      await page.getByRole("textbox", { name: "Spacing 2 to 3" }).fill("26'-6\"");
      await page.keyboard.press("Enter");
      await spacing(page, "2 to 3, 26'-6\"").waitFor();
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
      await page.getByRole("button", { name: "Line A, A: edit" }).click();
      await page.getByRole("textbox", { name: "Line A" }).fill("AA");
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: "Place 1, Stands at, AA-1: edit" }).waitFor();
      expect(await page.locator(".beside .fault").count()).toBe(0);
    });
  });

  it("has every base by keyboard with its name, place and state, and opens its template", async () => {
    await driver.visit(async (page) => {
      await openPlan(page);
      const places = page.getByRole("list", { name: "Bases on the plan" }).getByRole("button");
      await places.first().waitFor();
      expect(await places.count()).toBe(118);
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

  it("goes closer and shows the whole, its letters at 11 dots and more at every width", async () => {
    for (const width of [1280, 390])
      await driver.visit(
        async (page) => {
          await openPlan(page);
          await page.locator(".layout text").first().waitFor();
          const least = await page.evaluate(`(() => {
            const svg = document.querySelector(".layout svg");
            const dots = svg.clientWidth / svg.viewBox.baseVal.width;
            return Math.min(...[...svg.querySelectorAll("text")].map((each) => Number(each.getAttribute("font-size")) * dots));
          })()`);
          expect(least).toBeGreaterThanOrEqual(11);
          await page.getByRole("button", { name: "Whole plan" }).click();
          const fits = `(({ scrollWidth, clientWidth }) => scrollWidth <= clientWidth)(document.querySelector(".layout"))`;
          await expect.poll(() => page.evaluate(fits), { timeout: 15_000 }).toBe(true);
        },
        { width, height: 844 },
      );
  });
});
