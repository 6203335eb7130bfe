/** The ledger on the page: beside the drawing, and of the whole job. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { makePackage } from "../../src/tasks/build.js";
import { openJob } from "../../src/tasks/open.js";
import { runProgram } from "../cli/program.js";
import { hasNoBrowser, startDriver } from "./browser.js";
import { showView } from "./states.js";

const SAMPLE = readFileSync(new URL("../../samples/packing-hall/job.yaml", import.meta.url), "utf8");
const SHOP = readFileSync(new URL("../../templates/shops/plasma.yaml", import.meta.url), "utf8");

const SAMPLES = fileURLToPath(new URL("../../samples", import.meta.url));

const PATIENT = { timeout: 20_000 };

async function openSample(page: Page): Promise<void> {
  await page.getByRole("button", { name: "packing-hall" }).click();
  await page.getByRole("img", { name: /^Template / }).waitFor();
}

async function showBase(page: Page, mark: string): Promise<void> {
  await page
    .getByRole("list", { name: "Bases" })
    .getByRole("button", { name: new RegExp(`^${mark}\\b`) })
    .click();
}

describe.skipIf(hasNoBrowser())("the ledger on the page", () => {
  const driver = startDriver();

  it("says beside the drawing what fails, of which holes, by how much, and the clause on demand; a row lights its holes", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await showBase(page, "B19");
      const row = page.getByRole("button", { name: /Washer over base-plate hole A1 A2 A3 A4/ });
      await row.waitFor();
      expect(await row.textContent()).toMatch(
        /fails, asks the engineer, answered.*2-1\/4 in, at least 2-1\/2 in.*short by 1\/4 in/,
      );
      await row.focus();
      await page.locator(".hole.lit").first().waitFor({ state: "attached" });
      expect(await page.locator(".hole.lit").count()).toBe(4);
      await page.keyboard.press("Enter");
      await page.getByText(/washer-cover: Design Guide 1, 2nd ed/).waitFor();
      expect(await row.getAttribute("aria-expanded")).toBe("true");
    });
  });

  it("leads from what is not checked to the field that lacks, and closes it", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await showBase(page, "B19");
      await page.getByRole("button", { name: /Washer over base-plate hole A1 A2 A3 A4/ }).waitFor();
      const lacking = page.getByRole("region", { name: /not checked/ });
      await lacking.getByRole("button", { name: "Depth of the concrete" }).click();
      await page.locator("input:focus, select:focus").waitFor();
      await page.keyboard.type("36");
      await page.keyboard.press("Enter");
      await lacking.getByRole("button", { name: "Depth of the concrete" }).waitFor({ state: "detached" });
    });
  });

  it("shows every row of the job in a table that is walked by keyboard, and filters it", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await page.getByRole("button", { name: "Ledger", exact: true }).click();
      await page.getByText("Every base is checked.").waitFor();
      const table = page.getByRole("table", { name: "Rows of the ledger" });
      await expect.poll(async () => Number(await table.getAttribute("aria-rowcount")), PATIENT).toBeGreaterThan(4000);
      const count = Number(await table.getAttribute("aria-rowcount"));
      expect(await table.getByRole("row").count()).toBeLessThan(80);
      await table.getByRole("row").nth(1).focus();
      await page.keyboard.press("End");
      await page.locator(`tr:focus[aria-rowindex="${count}"]`).waitFor();
      await page.keyboard.press("ArrowUp");
      await page.locator(`tr:focus[aria-rowindex="${count - 1}"]`).waitFor();
      await page.getByLabel("Status").selectOption({ label: "fails" });
      await page.getByLabel("Severity").selectOption({ label: "holds the base" });
      await expect.poll(async () => Number(await table.getAttribute("aria-rowcount")), PATIENT).toBeLessThan(40);
      const marks = await table.locator("tbody td.mark").allTextContents();
      expect(new Set(marks)).toEqual(new Set(["B20"]));
      // found again by who went elsewhere
      await showView(page, "Questions");
      await showView(page, "Ledger");
      await expect.poll(async () => Number(await table.getAttribute("aria-rowcount")), PATIENT).toBeLessThan(40);
      expect(await page.getByLabel("Status").inputValue()).toBe("fail");
      const cautions = page.getByRole("region", { name: "Cautions" });
      expect(await cautions.textContent()).toMatch(/No rule looks at: anchorage strength.*29 CFR 1926\.755\(b\)/);
      // the figures of the command line
      const { stdout } = await runProgram(SAMPLES, ["check", "packing-hall/job.yaml"]);
      const [, passed, failed, notChecked, apart] =
        /Ledger: (\d+) passed, (\d+) failed, (\d+) not checked, (\d+) not\s+applicable/.exec(stdout) ?? [];
      await page
        .getByText(`${failed} fail, ${notChecked} not checked, ${passed} pass, ${apart} do not apply.`)
        .waitFor();
    });
  });

  it("hands out ledger.csv with the bytes of the package", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await page.getByRole("button", { name: "Ledger", exact: true }).click();
      const coming = page.waitForEvent("download");
      await page.getByRole("button", { name: "Save ledger.csv" }).click();
      const file = await coming;
      expect(file.suggestedFilename()).toBe("ledger.csv");
      const files = new Map([
        ["job.yaml", SAMPLE],
        ["templates/shops/plasma.yaml", SHOP],
      ]);
      const opened = openJob({ job: "job.yaml", files }, { date: "2026-11-24" });
      if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("\n"));
      const made = makePackage(opened.value, { version: "", document: null, outputs: ["ledger"] }).finish();
      expect(readFileSync(await file.path(), "utf8")).toBe(
        new TextDecoder().decode(made.files.find(({ kind }) => kind === "ledger")?.bytes),
      );
    });
  });
});
