/** Signing, proof, survey, comparison, budget and checks as text on the page, against what the command line gives. */
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync, zipSync } from "fflate";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { filesBelow } from "../archive-of.js";
import { newFolder, runProgram } from "../cli/program.js";
import { hasNoBrowser, startDriver } from "./browser.js";
import { choose, filesAt, type GivenFile, openJobFile } from "./given.js";

const JOB = fileURLToPath(new URL("../stress/jobs/one-base-plan.yaml", import.meta.url));
const QUESTION = fileURLToPath(new URL("../stress/jobs/question-open.yaml", import.meta.url));

const show = (page: Page, view: string): Promise<void> =>
  page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: view, exact: true }).click();

const verdict = (page: Page, words: RegExp): Promise<void> =>
  page.locator(".answer .verdict", { hasText: words }).waitFor({ timeout: 90_000 });

/** A package of the command line in a folder, and as a ZIP. */
async function packageOf(path: string): Promise<{ readonly folder: string; readonly zip: GivenFile }> {
  const folder = newFolder();
  cpSync(path, join(folder, "job.yaml"));
  const ended = await runProgram(folder, ["make", "job.yaml", "--out", "made"]);
  expect(ended.status).toBeLessThan(2);
  return { folder, zip: { name: "made.zip", bytes: zipSync(Object.fromEntries(filesBelow(join(folder, "made")))) } };
}

describe.skipIf(hasNoBrowser())("answers on the page", () => {
  const driver = startDriver();

  it("signs a package that the command line then finds signed", { timeout: 200_000 }, async () => {
    const { folder, zip } = await packageOf(QUESTION);
    await driver.visit(async (page) => {
      await show(page, "Sign");
      await choose(page, "Package", zip);
      await page.getByRole("button", { name: "Sign the package" }).click();
      await page.getByText("by needs a name").first().waitFor();
      await page.getByLabel("Who has checked it").fill("A. Checker");
      await page.getByLabel("Note").fill("looked at every sheet");
      await page.getByRole("button", { name: "Sign the package" }).click();
      await verdict(page, /^Signed: job .*, by A\. Checker on \d{4}-\d{2}-\d{2}\.$/);
      const save = page.getByRole("button", { name: "Save made.zip with its record" });
      const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
      const signed = unzipSync(readFileSync(await download.path()));
      const before = unzipSync(zip.bytes);
      const added = Object.keys(signed).filter((path) => before[path] === undefined);
      expect(added).toHaveLength(1);
      expect(added[0]).toMatch(/^engineer\/signed\/\d{4}-\d{2}-\d{2}_A\.-Checker\.json$/);
      for (const [path, bytes] of Object.entries(before))
        expect(Buffer.compare(bytes, signed[path] ?? new Uint8Array()), path).toBe(0);
      const record = added[0] ?? "";
      await runProgram(folder, ["sign", "made", "--by", "A. Checker", "--note", "looked at every sheet"]);
      const own = [...filesBelow(join(folder, "made"))].find(([path]) => path.startsWith("engineer/signed/"));
      const withoutTime = (text: string) =>
        text.replace(/"(date|instant|sealed?)": ?"[^"]*"/g, "").replace(/"seal.*/s, "");
      expect(withoutTime(new TextDecoder().decode(signed[record]))).toBe(
        withoutTime(new TextDecoder().decode(own?.[1])),
      );
    });
  });

  it("proves a package, and says which file is not the one that was checked", { timeout: 200_000 }, async () => {
    const { folder, zip } = await packageOf(JOB);
    const files = unzipSync(zip.bytes);
    const cut = Object.keys(files).find((path) => /^cut\/[^/]+\.dxf$/.test(path)) ?? "";
    const text = new TextDecoder().decode(files[cut]);
    const changed = { ...files, [cut]: new TextEncoder().encode(text.replace("EOF", "EOF\n")) };
    await driver.visit(async (page) => {
      await show(page, "Proof");
      await choose(page, "Cut files or a package", zip);
      await verdict(page, /^The package is the one that was checked/);
      await choose(page, "Cut files or a package", { name: "changed.zip", bytes: zipSync(changed) });
      await verdict(page, /^The package is NOT the one that was checked/);
      await page.locator(".proved-package li", { hasText: cut }).first().waitFor();
      const [chooser] = await Promise.all([
        page.waitForEvent("filechooser"),
        page.getByRole("button", { name: "Its folder..." }).click(),
      ]);
      await chooser.setFiles(join(folder, "made"));
      await verdict(page, /^The package is the one that was checked/);
      const [kept] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save proof.json", exact: true }).click(),
      ]);
      const ended = await runProgram(folder, ["proof", "made", "--json"]);
      expect(readFileSync(await kept.path(), "utf8")).toBe(ended.stdout);
    });
  });

  it("refuses hostile archives in a sentence each", { timeout: 120_000 }, async () => {
    const bomb = zipSync({ "summary.json": new Uint8Array(50_000_000) });
    const out = zipSync({ "summary.json": new Uint8Array(3), "../escape.txt": new Uint8Array(3) });
    await driver.visit(async (page) => {
      await show(page, "Proof");
      for (const [name, bytes, words] of [
        ["out.zip", out, /a name that leads out of it/],
        ["bomb.zip", bomb, /bomb\.zip/],
        ["none.zip", zipSync({ "a.txt": new Uint8Array(3) }), /neither a package nor a DXF file/],
        ["cut.zip", out.subarray(0, out.length - 9), /no ZIP archive, or is damaged/],
      ] as const) {
        await choose(page, "Cut files or a package", { name, bytes });
        await page.getByRole("alert").filter({ hasText: words }).waitFor({ timeout: 60_000 });
      }
    });
  });

  it("holds surveyed points against the job, with its sheet and report", { timeout: 200_000 }, async () => {
    const { folder } = await packageOf(JOB);
    const [path, bytes] =
      [...filesBelow(join(folder, "made"))].find(([name]) => /^field\/.*PNEZD.*\.csv$/.test(name)) ?? [];
    const name = path?.split("/").at(-1) ?? "";
    const lines = new TextDecoder().decode(bytes).trimEnd().split(/\r?\n/);
    const cells = (lines[1] ?? "").split(",");
    cells[1] = String(Number(cells[1]) + 1);
    const moved = [lines[0], cells.join(","), ...lines.slice(2)].join("\n");
    writeFileSync(join(folder, name), moved);
    const ended = await runProgram(folder, ["survey", "job.yaml", name, "--within", "60 in", "--out", "answers"]);
    expect(ended.status).toBe(1);
    await driver.visit(async (page) => {
      await openJobFile(page, JOB);
      await show(page, "Survey");
      const unsaid = { name: "points.csv", bytes: new TextEncoder().encode("A1,1000,1000,0\nA2,1009,1000,0\n") };
      await choose(page, "Surveyor's points", unsaid);
      const unit = page.locator(".field", { has: page.getByLabel("Unit of the points") });
      await unit
        .locator(".fault", { hasText: "the unit of its coordinates is nowhere told" })
        .waitFor({ timeout: 60_000 });
      expect(await page.getByRole("alert").textContent(), "names no option of the command line").not.toContain("--");
      await page.getByLabel("Accuracy: every point within").fill("nonsense");
      await page.getByLabel("A point without a name is a rod's within").fill("60 in");
      await choose(page, "Surveyor's points", { name, bytes: new TextEncoder().encode(moved) });
      await page.locator(".field .fault", { hasText: "nonsense" }).waitFor({ timeout: 60_000 });
      const fits = `(({ scrollWidth, clientWidth }) => scrollWidth <= clientWidth)(document.querySelector(".survey form"))`;
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 844 });
        await expect.poll(() => page.evaluate(fits), { message: `at ${width} px` }).toBe(true);
      }
      await page.getByLabel("Accuracy: every point within").fill("");
      await page.getByRole("button", { name: "Hold the points against the job" }).click();
      await verdict(page, /not drop on/);
      await page.locator("#view .drawing.sheet svg").first().waitFor();
      for (const file of ["survey-groups.csv", "survey-rods.csv", "survey-report.txt", "survey-report.pdf"]) {
        const save = page.getByRole("button", { name: `Save ${file}`, exact: true });
        const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
        const own = readFileSync(join(folder, "answers", file));
        expect(Buffer.compare(readFileSync(await download.path()), own), file).toBe(0);
      }
    });
  });

  it("compares a dropped package with the open job, and says what must be cut again", {
    timeout: 200_000,
  }, async () => {
    const { zip } = await packageOf(JOB);
    await driver.visit(async (page) => {
      await openJobFile(page, JOB);
      await show(page, "Compare");
      await choose(page, "The old one", zip);
      await verdict(page, /^Nothing must be cut again, and no rods made again\.$/);
    });
  });

  it("reckons the budget, and writes the checks as text", { timeout: 200_000 }, async () => {
    const folder = newFolder();
    cpSync(JOB, join(folder, "one-base-plan.yaml"));
    const checked = await runProgram(folder, ["check", "one-base-plan.yaml", "--all"]);
    const budget = await runProgram(folder, ["budget", "one-base-plan.yaml", "--out", "budget"]);
    expect(budget.status).toBe(0);
    await driver.visit(async (page) => {
      await openJobFile(page, JOB);
      await show(page, "Budget");
      await page.getByRole("button", { name: "Reckon the budget" }).click();
      await verdict(page, /base plate/);
      const save = page.getByRole("button", { name: "Save budget.csv", exact: true });
      const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
      expect(readFileSync(await download.path(), "utf8")).toBe(
        readFileSync(join(folder, "budget", "budget.csv"), "utf8"),
      );
      await show(page, "Package");
      await page.getByText("The checks as text").click();
      await page.getByLabel("Every row").check();
      await page.getByRole("button", { name: "Write the text" }).click();
      const text = page.getByRole("region", { name: "The checks as text" }).locator("pre");
      await text.waitFor({ timeout: 60_000 });
      expect(await text.textContent()).toBe(checked.stdout);
    });
  });

  it("says what is no package and no job", { timeout: 120_000 }, async () => {
    await driver.visit(async (page) => {
      await openJobFile(page, JOB);
      await show(page, "Compare");
      await choose(page, "The old one", { name: "notes.txt", bytes: new TextEncoder().encode("hello") });
      await page.getByRole("alert").filter({ hasText: "notes.txt is neither a package" }).waitFor({ timeout: 60_000 });
      await choose(page, "The old one", ...filesAt(QUESTION));
      await verdict(page, /./);
    });
  });
});
