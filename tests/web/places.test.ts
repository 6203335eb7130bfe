/** The one build runs from wherever it lies: below a path of any server, on when that server is gone, and from the disk without one. */
import { copyFileSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { newFolder } from "../cli/program.js";
import { BUILT, type FileServer, hasNoBrowser, serve, startDriver } from "./browser.js";
import { openSample, retype, step, titled } from "./keep-steps.js";

async function show(page: Page, view: string): Promise<void> {
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: view, exact: true }).click();
  await page.getByRole("main", { name: view }).locator(":scope > :not([aria-busy])").first().waitFor();
}

const EVERY_VIEW = ["Schedule", "Plan", "Ledger", "Questions", "Survey", "Budget", "Compare", "Package"];

describe.skipIf(hasNoBrowser())("the page from the disk, by its file", () => {
  const driver = startDriver();
  const at = pathToFileURL(join(BUILT, "index.html")).href;

  it("does all that it does from a server: threads, keeping, the package, links", async () => {
    let link = "";
    await driver.visit(
      async (page) => {
        await openSample(page);
        await retype(page, "Title", "From the disk");
        for (const view of [...EVERY_VIEW, "Solid", "Package"]) await show(page, view);
        await page.getByRole("button", { name: "Make the package" }).click();
        await page
          .getByRole("button", { name: /^Save .*\.zip/ })
          .or(page.getByRole("alert"))
          .waitFor({ timeout: 90_000 });
        const coming = page.waitForEvent("download");
        await page.getByRole("button", { name: /^Save .*\.zip/ }).click();
        const files = Object.keys(unzipSync(readFileSync(await (await coming).path())));
        expect(files.filter((name) => name.endsWith(".dxf")).length).toBeGreaterThan(3);
        expect(files.some((name) => name.endsWith(".pdf"))).toBe(true);
        await page.reload();
        await titled(page, "From the disk");
        await step(page, "Undo", "Title Machine hall with overhead crane to From the disk").waitFor();
        await page.locator("summary", { hasText: "Job" }).click();
        await page.getByRole("button", { name: "Share as a link" }).click();
        link = await page.getByRole("textbox", { name: "Link" }).inputValue();
        await page.getByText("It opens the page where it lies on this machine").waitFor();
      },
      { at },
    );
    expect(link.startsWith(`${at}#job=`)).toBe(true);
    await driver.visit(
      async (page) => {
        await page.getByRole("button", { name: "Open the job of the link" }).click();
        await titled(page, "From the disk");
        expect(page.url()).toBe(at);
      },
      { at: link },
    );
  });

  it("without its files, or with a broken one, says what to do, and is never blank", async () => {
    const folder = newFolder();
    copyFileSync(join(BUILT, "index.html"), join(folder, "index.html"));
    const alone = pathToFileURL(join(folder, "index.html")).href;
    await driver.visit(
      async (page) => {
        await page.getByText("The page has not started. It needs the files beside it").waitFor();
      },
      { at: alone, expected: /not loaded|ERR_FILE_NOT_FOUND/ },
    );
    await driver.visit(
      async (page) => {
        await page.route(/assets\/index-[\w-]+\.js$/, (route) => route.abort());
        await page.reload();
        await page.getByText("The page has not started. It needs the files beside it").waitFor();
      },
      { expected: /not loaded|ERR_FAILED/ },
    );
    rmSync(folder, { recursive: true });
  });
});

describe.skipIf(hasNoBrowser())("the page below a path of a server", () => {
  const driver = startDriver();

  it("works on when the server is gone; what it still would need is told, and comes when the server is there again", async () => {
    const first = await serve("/tools/sheets/");
    const port = Number(new URL(first.address).port);
    let again: FileServer | null = null;
    try {
      await driver.visit(
        async (page) => {
          await openSample(page);
          await page.waitForLoadState("networkidle");
          first.close();
          for (const view of EVERY_VIEW) await show(page, view);
          await page.getByRole("button", { name: "Make the package" }).click();
          await page.getByRole("alert").getByText("could not be loaded from where the page came from").waitFor();
          await show(page, "Solid");
          const solid = page.getByRole("main", { name: "Solid" });
          await solid.getByRole("alert").getByText("The job is kept in this browser").waitFor();
          await show(page, "Template");
          await retype(page, "Title", "Alone");
          again = await serve("/tools/sheets/", port);
          await show(page, "Solid");
          await solid.getByText(/Rods are plain bars/).waitFor();
          await solid.getByRole("alert").waitFor({ state: "detached" });
          await page.reload();
          await titled(page, "Alone");
        },
        { at: first.address, expected: /ERR_CONNECTION_REFUSED|not loaded|Failed to load/ },
      );
    } finally {
      first.close();
      (again as FileServer | null)?.close();
    }
  });
});
