/** What tests of keeping do on the page, as a person would. */
import type { Locator, Page } from "playwright-core";

/** Opens the sample with five bases at its first template. */
export async function openSample(page: Page): Promise<void> {
  await page
    .getByRole("button", { name: /machine[- ]hall/i })
    .first()
    .click();
  await page.getByRole("img", { name: /^Template / }).waitFor();
}

/** Types over a word of the title block, and waits until it stands there. */
export async function retype(page: Page, label: string, text: string): Promise<void> {
  await page.getByRole("button", { name: new RegExp(`^${label}:`) }).click();
  await page.getByRole("textbox", { name: label }).fill(text);
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: `${label}: ${text}` }).waitFor();
}

/** The job has this title now. */
export async function titled(page: Page, title: string): Promise<void> {
  await page
    .getByRole("heading", { level: 1 })
    .filter({ hasText: `${title}, rev` })
    .waitFor();
}

/** A button back or forth, by the step that it is about. */
export function step(page: Page, word: "Undo" | "Redo", name: string): Locator {
  return page.getByRole("button", { name: `${word} ${name}` });
}

/** A job in the list of those that are kept. */
export function kept(page: Page, title: RegExp): Locator {
  return page.getByRole("button", { name: title }).first();
}
