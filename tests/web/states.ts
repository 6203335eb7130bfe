/** The states of the page that are looked at as a whole: for accessibility, and in pictures. */
import type { Page } from "playwright-core";

/** A state, and how a person gets there from the empty page. */
export interface PageStateCase {
  readonly name: string;
  reach(page: Page): Promise<void>;
}

/** Widths that the page is made for: a desk, a tablet, a telephone. */
export const WIDTHS = [
  { width: 1280, height: 800 },
  { width: 900, height: 1000 },
  { width: 390, height: 844 },
] as const;

/** Opens a sample by its name, and waits until its first template is drawn. */
export async function openSample(page: Page, name: string): Promise<void> {
  await page
    .getByRole("button", { name: new RegExp(name, "i") })
    .first()
    .click();
  await page.getByRole("img", { name: /^Template / }).waitFor();
}

/** Shows a view of the job that is open. */
export async function showView(page: Page, name: string): Promise<void> {
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name, exact: true }).click();
  await page.getByRole("main", { name }).waitFor();
}

/** Nothing is being worked on any more, and what was asked for is shown. */
export async function settled(page: Page): Promise<void> {
  await page.locator("[aria-busy='true']").first().waitFor({ state: "detached" });
  await page.evaluate("document.fonts.ready.then(() => undefined)");
  await page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
}
