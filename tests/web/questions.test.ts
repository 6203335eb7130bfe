/** Questions answered on the page. */
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";

async function openQuestions(page: Page): Promise<void> {
  await page.getByRole("button", { name: "packing-hall" }).click();
  await page.getByRole("img", { name: /^Template / }).waitFor();
  await page.getByRole("button", { name: "Questions", exact: true }).click();
  await page.getByText("4 open, 1 open with the release accepted, 1 answered, 0 closed.", { exact: false }).waitFor();
}

/** Goes on by Tab until this has the focus. */
async function tabTo(page: Page, place: Locator): Promise<void> {
  const focused = place.and(page.locator(":focus"));
  for (let i = 0; i < 40 && (await focused.count()) === 0; i += 1) await page.keyboard.press("Tab");
  expect(await focused.count()).toBe(1);
}

describe.skipIf(hasNoBrowser())("questions on the page", () => {
  const driver = startDriver();

  it("are answered by keyboard alone: the base that was asked about is clear then", async () => {
    await driver.visit(async (page) => {
      await openQuestions(page);
      // nobody accepts any more: B19 waits for its answer
      await page.getByRole("button", { name: "Take back the acceptance of Q-2" }).focus();
      await page.keyboard.press("Enter");
      await page.getByText("5 open, 0 open with the release accepted", { exact: false }).waitFor();
      await page.getByRole("heading", { name: /^Q-2/ }).focus();
      const question = page.getByRole("article", { name: /^Q-2/ });
      await tabTo(page, question.locator("summary"));
      await page.keyboard.press("Enter");
      await tabTo(page, question.getByLabel("Answered by"));
      await page.keyboard.type("E. Ray, engineer of record");
      await tabTo(page, question.getByLabel("Answer", { exact: true }));
      await page.keyboard.type("Holes as drawn; see the erection drawings.");
      await tabTo(page, question.getByRole("button", { name: "Write the answer" }));
      await page.keyboard.press("Enter");
      await page.getByText("4 open, 0 open with the release accepted, 2 answered", { exact: false }).waitFor();
      await page.getByRole("button", { name: "Template", exact: true }).click();
      const base = page.getByRole("list", { name: "Bases" }).getByRole("button", { name: /^B19/ });
      expect((await base.textContent())?.trim()).toBe("B19");
    });
  });

  it("tell at the field what cannot be written, and write nothing", async () => {
    await driver.visit(async (page) => {
      await openQuestions(page);
      const form = page.getByRole("article", { name: /^Q-3/ });
      await form.getByText("Answer Q-3").click();
      await form.getByLabel(/^Date/).fill("24.11.26");
      await form.getByRole("button", { name: "Write the answer" }).click();
      await form.getByText(/^Answered by: is empty/).waitFor();
      expect(await form.getByLabel(/^Date/).getAttribute("aria-invalid")).toBe("true");
      expect(await form.getByText(/^Date.*:.*year-month-day|^Date.*:/).count()).toBeGreaterThan(0);
      expect(await page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
    });
  });

  it("go out as a form and come back in it", async () => {
    await driver.visit(async (page) => {
      await openQuestions(page);
      const coming = page.waitForEvent("download");
      await page.getByRole("button", { name: "Save it as YAML" }).click();
      const file = await coming;
      const form = readFileSync(await file.path(), "utf8");
      const filled = form.replace(
        /answer:\n {4}by:\n {4}date:/,
        'answer: "Yes"\n    by: "E. Ray"\n    date: "2026-11-25"',
      );
      expect(filled).not.toBe(form);
      const field = page.getByLabel(/^Answer form that came back/);
      await field.setInputFiles({ name: "back.yaml", mimeType: "text/yaml", buffer: Buffer.from(form) });
      await page.getByText(/back.yaml has no answer/).waitFor();
      await field.setInputFiles({ name: "back.yaml", mimeType: "text/yaml", buffer: Buffer.from(filled) });
      await page.getByText("2 answered", { exact: false }).waitFor();
    });
  });
});
