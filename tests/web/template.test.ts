/** The template of a base on the page. */
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";

describe.skipIf(hasNoBrowser())("the template on the page", () => {
  const driver = startDriver();

  it("opens a sample and shows its first template with tags, dimensions and ledger", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "machine-hall" }).click();
      const drawing = page.getByRole("img", { name: /^Template / });
      await drawing.waitFor();
      expect(await drawing.locator("text", { hasText: /^A\d$/ }).count()).toBe(4);
      expect(await page.locator(".checks > li").count()).toBeGreaterThan(10);
    });
  });
});
