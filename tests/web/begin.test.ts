/** Where a job begins: the empty page, and a first template from nothing by keyboard alone. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";

/** Presses keys one after the other; a text is pressed sign by sign. How many there were. */
async function press(page: Page, keys: readonly string[]): Promise<number> {
  let count = 0;
  for (const key of keys) {
    const signs = /^[A-Z][A-Za-z+]+$/.test(key) ? [key] : [...key];
    for (const sign of signs) {
      await page.keyboard.press(sign === " " ? "Space" : sign);
      count += 1;
    }
  }
  return count;
}

/** Tab by Tab to the button of this name. How many there were. */
async function tabTo(page: Page, name: RegExp): Promise<number> {
  for (let count = 1; count <= 60; count += 1) {
    await page.keyboard.press("Tab");
    const words = await page.locator(":focus").textContent();
    if (name.test(words ?? "")) return count;
  }
  throw new Error(`no Tab leads to ${name}`);
}

describe.skipIf(hasNoBrowser())("the empty page", () => {
  const driver = startDriver();

  it("says what is made, how to begin, what to look at, and who decides", async () => {
    await driver.visit(async (page) => {
      for (const name of ["Type a first template", "Paste its cells", "Open a job file", "Open sample packing-hall"])
        expect(await page.getByRole("button", { name }).isVisible()).toBe(true);
      expect(await page.getByLabel("Choose the schedule").count()).toBe(1);
      expect(await page.getByText("It checks and reports; the engineer of record decides").isVisible()).toBe(true);
      expect(await page.getByText("Local codes and licensed practice govern").isVisible()).toBe(true);
      await page.locator(".samples li:last-child svg path").first().waitFor();
      expect(await page.locator(".samples svg").count()).toBe(3);
    });
  });

  it("opens every sample with its templates", async () => {
    for (const [name, mark] of [
      ["machine-hall", /^F1/],
      ["packing-hall", /^B1\b/],
      ["signal-mast", /^M1/],
    ] as const)
      await driver.visit(async (page) => {
        await page.getByRole("button", { name: `Open sample ${name}` }).click();
        await page.getByRole("img", { name: /^Template / }).waitFor();
        expect(await page.getByRole("button", { name: mark }).count()).toBeGreaterThan(0);
      });
  });

  it("leads to a first right template by keyboard alone, in 28 keys at most from the empty page", async () => {
    await driver.visit(async (page) => {
      const from = Date.now();
      let keys = await tabTo(page, /^Type a first template/);
      keys += await press(page, ["Enter"]);
      await page.getByRole("img", { name: "The template, as it would be" }).waitFor();
      // rod, plate, the kind as it is, X, Y
      keys += await press(page, ["3/4", "Tab", "1/4", "Tab", "Tab", "9", "Tab", "11", "Enter"]);
      const drawing = page.getByRole("img", { name: /^Template T1/ });
      await drawing.waitFor();
      expect(await drawing.locator("text", { hasText: /^A\d$/ }).count()).toBe(4);
      for (const figure of ["9", "11"])
        expect(await drawing.getByText(figure, { exact: true }).count()).toBeGreaterThan(0);
      expect(await page.getByText(/job of one base|New job/).count()).toBeGreaterThan(0);
      process.stderr.write(`a first template from nothing: ${keys} keys, ${Date.now() - from} ms by machine\n`);
      expect(keys).toBeLessThanOrEqual(28);
    });
  });

  it("draws from the first figure on, and says what is still an example", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Type a first template" }).click();
      const drawing = page.getByRole("img", { name: "The template, as it would be" });
      await page.getByText("An example stands for: Rod diameter, Plate thickness, X overall, Y overall.").waitFor();
      await page.getByLabel("X overall").fill("15-1/2");
      await drawing.getByText("15-1/2", { exact: true }).first().waitFor();
      await page.getByRole("button", { name: "Make this template" }).click();
      expect(await page.getByText("is needed").count()).toBe(3);
      await page.getByLabel("Rod diameter").and(page.locator(":focus")).waitFor();
      expect(await drawing.isVisible()).toBe(true);
    });
  });

  it("tells a fault of a figure at its field, with the words of the job file", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Type a first template" }).click();
      const field = page.getByLabel("X overall");
      for (const [label, text] of Object.entries({ "Rod diameter": "3/4", "Plate thickness": "1/4", "Y overall": "9" }))
        await page.getByLabel(label).fill(text);
      const below = page.getByLabel("Rods in X");
      const before = await below.boundingBox();
      await field.fill("12 furlongs");
      // at once, before it is drawn: nothing is made of a figure at fault
      await page.keyboard.press("Enter");
      await page.locator('[aria-invalid="true"]:focus').waitFor();
      expect(await below.boundingBox()).toEqual(before);
      const said = (await field.getAttribute("aria-describedby")) ?? "";
      expect(await page.locator(`[id="${said}"]`).textContent()).toContain("12 furlongs");
      await field.fill("12");
      await page.locator('[aria-invalid="true"]').waitFor({ state: "detached" });
    });
  });

  it.each([
    [
      "millimetres",
      "Lines",
      { "Rod diameter": "M24", "Plate thickness": "6", "Lines at X": "-200, 0, 200", "Lines at Y": "-100, 100" },
      6,
    ],
    [
      "millimetres",
      "Circle",
      { "Rod diameter": "M30", "Plate thickness": "8", "Bolt circle": "520", Rods: "8", "First rod": "straddle" },
      8,
    ],
    [
      "inches",
      "Points",
      { "Rod diameter": "1", "Plate thickness": "3/8", "Rods at X, Y": "0, 8; 7-1/2, -6; -7-1/2, -6" },
      3,
    ],
    [
      "inches",
      "Rectangle",
      { "Rod diameter": "1-1/4", "Plate thickness": "1/4", "X overall": "1'-6\"", "Y overall": "10", "Rods in X": "3" },
      6,
    ],
  ] as const)("makes a template in %s of the kind %s", async (unit, kind, figures, rods) => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Type a first template" }).click();
      await page.getByLabel(unit).check();
      await page.getByLabel(kind).check();
      for (const [label, text] of Object.entries(figures)) await page.getByLabel(label, { exact: true }).fill(text);
      await page.getByText("Drawn as typed.").waitFor();
      await page.getByRole("button", { name: "Make this template" }).click();
      const drawing = page.getByRole("img", { name: /^Template T1/ });
      await drawing.waitFor();
      expect(await drawing.locator("text", { hasText: /^A\d+$/ }).count()).toBe(rods);
    });
  });

  it("keeps what was typed while another view is looked at", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Type a first template" }).click();
      await page.getByLabel("X overall").fill("13");
      await page.getByRole("button", { name: "Proof" }).click();
      await page.getByRole("button", { name: "Begin" }).click();
      expect(await page.getByLabel("X overall").inputValue()).toBe("13");
      await page.getByLabel("Rod diameter").fill("3/4");
      await page.getByLabel("Circle").check();
      await page.getByLabel("millimetres").check();
      await page.getByLabel("Rectangle").check();
      expect(await page.getByLabel("X overall").inputValue()).toBe("13");
      expect(await page.getByLabel("Rod diameter").inputValue()).toBe("3/4");
      await page.reload();
      await page.getByLabel("X overall").waitFor();
      expect(await page.getByLabel("X overall").inputValue()).toBe("13");
      await page.getByRole("button", { name: "Back", exact: true }).click();
      await page.getByRole("button", { name: "Go on with a first template" }).click();
      expect(await page.getByLabel("Rod diameter").inputValue()).toBe("3/4");
    });
  });
});
