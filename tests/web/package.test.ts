/** The package of the page against that of the command line: the same files, byte for byte. */
import { cpSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import type { Download, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { filesBelow } from "../archive-of.js";
import { newFolder, runProgram } from "../cli/program.js";
import { hasNoBrowser, startDriver } from "./browser.js";
import { choose, filesAt, openJobFile } from "./given.js";

const stress = (name: string): string => fileURLToPath(new URL(`../stress/jobs/${name}.yaml`, import.meta.url));
const sample = (name: string, file = "job.yaml"): string =>
  fileURLToPath(new URL(`../../samples/${name}/${file}`, import.meta.url));

/** Paths whose bytes are not the same in both, or that stand in one alone. */
function differences(a: ReadonlyMap<string, Uint8Array>, b: ReadonlyMap<string, Uint8Array>): readonly string[] {
  const paths = new Set([...a.keys(), ...b.keys()]);
  return [...paths].filter((path) => Buffer.compare(a.get(path) ?? NONE, b.get(path) ?? NONE) !== 0);
}

const NONE = Buffer.from("there is no such file");

async function bytesOf(download: Download): Promise<Uint8Array> {
  return readFileSync(await download.path());
}

async function makeOnPage(page: Page): Promise<{ readonly name: string; readonly zip: Uint8Array }> {
  await page.getByRole("button", { name: "Package", exact: true }).click();
  await page.getByRole("button", { name: "Make the package" }).click();
  const save = page.getByRole("button", { name: /^Save .*\.zip$/ });
  await save.waitFor({ timeout: 120_000 });
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  return { name: download.suggestedFilename(), zip: await bytesOf(download) };
}

interface Case {
  readonly what: string;
  readonly files: readonly string[];
  readonly options?: readonly string[];
  readonly choose?: (page: Page) => Promise<void>;
}

const SIGNAL = ["job-xlsx.yaml", "schedule.xlsx", "own-laser.yaml"].map((file) => sample("signal-mast", file));

/** Other jobs are held against each other without a browser, in `tests/unit/web/engine/package-bytes.test.ts`. */
const CASES: readonly Case[] = [
  { what: "a sample in inches, on A4", files: [sample("machine-hall")], options: ["--paper", "a4"], choose: a4 },
  { what: "a job whose bases come from a workbook, with a shop file of its own", files: SIGNAL },
  {
    what: "held bases, whose cut files are wanted too",
    files: [stress("held")],
    options: ["--include-held"],
    choose: withHeld,
  },
  { what: "marks in other scripts", files: [stress("other-scripts")] },
];

async function a4(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Package", exact: true }).click();
  await page.getByLabel("Paper of the set").selectOption({ label: "A4" });
}

async function withHeld(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Package", exact: true }).click();
  await page.getByRole("checkbox", { name: /^Cut files of held bases too/ }).check();
}

/** A folder with these files in it, the first of them the job. */
function folderOf(paths: readonly string[]): { readonly folder: string; readonly job: string } {
  const folder = newFolder();
  for (const path of paths) cpSync(path, join(folder, path.split("/").at(-1) ?? ""));
  return { folder, job: paths[0]?.split("/").at(-1) ?? "" };
}

describe.skipIf(hasNoBrowser())("the package on the page", () => {
  const driver = startDriver();

  for (const { what, files, options = [], choose: chooseFirst } of CASES)
    it(`has the bytes of the command line: ${what}`, { timeout: 240_000 }, async () => {
      const { folder, job } = folderOf(files);
      const ended = await runProgram(folder, ["make", job, "--out", "made", ...options]);
      expect(ended.status).toBeLessThan(2);
      await driver.visit(async (page) => {
        await openJobFile(page, ...files);
        await chooseFirst?.(page);
        const { name, zip } = await makeOnPage(page);
        expect(name).toMatch(/^[^/\\]+_rev-[^/\\]+\.zip$/);
        const unzipped = new Map(Object.entries(unzipSync(zip)));
        expect([...unzipped.keys()].filter((path) => path.includes("\\"))).toEqual([]);
        expect(differences(unzipped, filesBelow(join(folder, "made")))).toEqual([]);
      });
    });

  it("makes the same ZIP again, and shows single files that are those in it", { timeout: 240_000 }, async () => {
    await driver.visit(async (page) => {
      await openJobFile(page, stress("two-rods"));
      const first = await makeOnPage(page);
      const again = await makeOnPage(page);
      expect(Buffer.compare(first.zip, again.zip)).toBe(0);
      const inside = unzipSync(first.zip);
      for (const path of ["START-HERE.txt", "engineer/ledger.csv"]) {
        const save = page.getByRole("button", { name: `Save ${path}`, exact: true });
        const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
        expect(Buffer.compare(await bytesOf(download), inside[path] ?? NONE)).toBe(0);
      }
      await page.getByRole("button", { name: "Look at engineer/ledger.csv", exact: true }).click();
      await page
        .getByRole("region", { name: "Table of engineer/ledger.csv" })
        .getByRole("columnheader")
        .first()
        .waitFor();
      const sheet = Object.keys(inside).find((path) => /^sheets\/.*\.svg$/.test(path)) ?? "";
      await page.getByRole("button", { name: `Look at ${sheet}`, exact: true }).click();
      const picture = page.getByRole("img", { name: `The drawing ${sheet}` });
      await expect
        .poll(() => picture.evaluate((element) => Number(Reflect.get(element, "naturalWidth"))))
        .toBeGreaterThan(100);
      await page.getByRole("button", { name: "Look at START-HERE.txt", exact: true }).click();
      await page.getByRole("region", { name: "Text of START-HERE.txt" }).getByText("START HERE").first().waitFor();
    });
  });

  it("goes on with the numbers of an earlier package, as a folder does", { timeout: 240_000 }, async () => {
    const { folder, job } = folderOf([stress("question-open")]);
    await runProgram(folder, ["make", job, "--out", "made"]);
    mkdirSync(join(folder, "before"));
    cpSync(join(folder, "made", "summary.json"), join(folder, "before", "summary.json"));
    const ended = await runProgram(folder, ["make", job, "--out", "made"]);
    expect(ended.stderr).toContain("numbers of questions go on from revision");
    await driver.visit(async (page) => {
      await openJobFile(page, stress("question-open"));
      await page.getByRole("button", { name: "Package", exact: true }).click();
      await choose(page, "Earlier package", ...filesAt(join(folder, "before", "summary.json")));
      await page.getByText(/^summary\.json: job .* question/).waitFor();
      const [chooser] = await Promise.all([
        page.waitForEvent("filechooser"),
        page.getByRole("button", { name: "Its folder..." }).click(),
      ]);
      await chooser.setFiles(join(folder, "before"));
      await page.getByText(/^before: job .* question/).waitFor();
      const { zip } = await makeOnPage(page);
      await page.getByText(/^Numbers of questions go on from revision .* in before/).waitFor();
      expect(differences(new Map(Object.entries(unzipSync(zip))), filesBelow(join(folder, "made")))).toEqual([]);
      await page.getByRole("button", { name: "What must be cut again" }).click();
      await page.locator(".answer .verdict", { hasText: /^Nothing must be cut again/ }).waitFor();
    });
  });

  it("is given up in the middle, and made again", { timeout: 240_000 }, async () => {
    await driver.visit(async (page) => {
      await openJobFile(page, stress("three-hundred-places"));
      await page.getByRole("button", { name: "Package", exact: true }).click();
      await page.getByRole("button", { name: "Make the package" }).click();
      await page.getByRole("progressbar", { name: "Making the package" }).waitFor();
      await page.getByRole("button", { name: "Cancel" }).click();
      await expect.poll(() => page.getByRole("progressbar").count()).toBe(0);
      expect(await page.getByRole("button", { name: "Make the package" }).isEnabled()).toBe(true);
    });
  });
});
