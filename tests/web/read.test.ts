/** A schedule as it was sent, read on the page: pasted or dropped, asked, answered, taken. Invented data. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { toPlain } from "../../src/job/document.js";
import type { SourceNode } from "../../src/readers/source.js";
import { findNode } from "../../src/readers/source.js";
import { readYaml } from "../../src/readers/yaml.js";
import { readAnswered } from "../../src/tasks/answered-sheet.js";
import { splitJob } from "../../src/tasks/job-parts.js";
import { readSheetAsSent } from "../../src/tasks/read.js";
import { writeJobAgain } from "../../src/tasks/read-job.js";
import { hasNoBrowser, startDriver } from "./browser.js";
import type { GivenFile } from "./given.js";
import { dropOn } from "./given.js";

const UNTIDY = [
  "ANCHOR ROD SCHEDULE - INVENTED HALL",
  "MARK\tNO. OF RODS\tROD DIA\tEMBED\tPROJ\tGAGE\tB.C.\tBASE PL\tREMARKS",
  'B1\t4\t"3/4"""\t12\t6\t"9"""\t\t14x14x1\t',
  "B2\t4\t1\t18\t8\t12 x 10\t\t18x16 PL 1 1/2\t=SUM(A1)",
  "B3-B5\tDO\tDO\tDO\tDO\tDO\t\tDO\t",
  "B6\t8\t1\t24\t9\t\t24\tDIA 30 x 1-1/2\t<script>alert(1)</script>",
  "B7\t6\t1\t24\t9\t14 x 16\t\t20x20x1-1/2\ta\u202Eevil",
  "",
  "NOTES:",
  `1. RODS ARE SET BY TEMPLATE${", AND BY NOTHING ELSE".repeat(20)}.`,
].join("\n");

const METRIC = ["MARK\tQTY\tROD DIA\tPATTERN", "F1\t2\t24\t300 x 240", "F2\t1\t30\t400 x 300"].join("\n");

async function paste(page: Page, text: string): Promise<void> {
  await page.getByRole("button", { name: "Paste its cells" }).click();
  await page.getByLabel("Cells of the schedule").fill(text);
  await page.getByRole("button", { name: "Read it" }).click();
}

const standing = (page: Page, words: RegExp) => page.locator(".asking .standing", { hasText: words }).waitFor();

const cellRow = (page: Page, cell: string) =>
  page.locator(".rows tbody tr", { has: page.locator("th", { hasText: new RegExp(`^${cell} `) }) });

/** Hands files or text over as a browser does: an event of this kind, with what it brings. */
function bring(page: Page, kind: "drop" | "paste", content: string): Promise<unknown> {
  const [file, text] = kind === "drop" ? [content, ""] : ["", content];
  return page.evaluate(`(() => {
    const data = new DataTransfer();
    const [file, text] = ${JSON.stringify([file, text])};
    const bytes = Uint8Array.from(atob(file), (sign) => sign.charCodeAt(0));
    if (file !== "") data.items.add(new File([bytes], "schedule.xlsx"));
    if (text !== "") data.setData("text/plain", text);
    const options = { bubbles: true, cancelable: true, clipboardData: data, dataTransfer: data };
    document.body.dispatchEvent(file === "" ? new ClipboardEvent("paste", options) : new DragEvent("drop", options));
  })()`);
}

/** The job file as the page hands it out. */
async function downloadedJob(page: Page): Promise<string> {
  const coming = page.waitForEvent("download");
  await page.locator("summary", { hasText: "Job" }).click();
  await page.getByRole("button", { name: "Download", exact: true }).click();
  return readFileSync(await (await coming).path(), "utf8");
}

const rootOf = (job: string): SourceNode => {
  const read = readYaml(job, "job.yaml");
  if (!read.ok) throw new Error(job);
  return read.value;
};

/** The bases that the job file holds. */
function basesOf(job: string): readonly unknown[] {
  const bases = findNode(rootOf(job), "bases");
  return bases?.kind === "list" ? bases.items.map(toPlain) : [];
}

/** The bases that the command line's task reads of the sheet with the answers that the job holds. */
function readAgain(job: string): readonly unknown[] {
  const bytes = new TextEncoder().encode(job);
  const own = rootOf(new TextDecoder().decode(splitJob(bytes)?.own));
  const read = readSheetAsSent({ name: "pasted.tsv", file: UNTIDY, job: own, unit: null });
  if (!read.ok || !read.value.isUnderstood) throw new Error("not understood");
  const again = writeJobAgain(splitJob(bytes)?.own ?? bytes, "job.yaml", read.value);
  expect(new TextDecoder().decode(again)).toBe(job);
  return basesOf(new TextDecoder().decode(again));
}

describe.skipIf(hasNoBrowser())("a schedule as it was sent", () => {
  const driver = startDriver();

  it("is pasted, asked about, answered and taken; the templates stand", async () => {
    await driver.visit(async (page) => {
      await paste(page, UNTIDY);
      await standing(page, /7 bases, bare numbers in inches/);
      await page.getByRole("button", { name: "two rods straddle the axis" }).click();
      await page.getByRole("button", { name: "3 lines in X and 2 in Y" }).click();
      await page.getByLabel(/^F3 says/).fill("9 SQ");
      await page
        .getByRole("group", { name: "cannot be read; allowed is 12 x 10" })
        .getByRole("button", { name: "Answer" })
        .click();
      await page.getByLabel("Plate thickness").fill("1/4");
      await page
        .getByRole("group", { name: /thickness of the templates/ })
        .getByRole("button", { name: "Answer" })
        .click();
      // a sign that reorders a line is none that a job takes: asked once everything else is answered
      await page.getByLabel(/^I7 says/).fill("evil");
      await page
        .getByRole("group", { name: /unseen sign/ })
        .getByRole("button", { name: "Answer" })
        .click();
      await standing(page, /nothing is open/);
      await page.getByLabel("Job number").fill("24-117");
      await page.getByLabel("Title").fill("Invented hall: <b>north</b> # 2");
      await page.getByRole("button", { name: "Take these 7 bases" }).click();
      await page.getByRole("img", { name: /^Template / }).waitFor();
      for (const mark of ["B1", "B2", "B3", "B4", "B5", "B6", "B7"])
        expect(await page.locator(".bases").getByRole("button", { name: mark }).count()).toBe(1);
      expect(await page.getByRole("heading", { level: 1 }).textContent()).toContain("Invented hall: <b>north</b> # 2");
      const job = await downloadedJob(page);
      expect(basesOf(job)).toEqual(readAgain(job));
      expect(basesOf(job).length).toBe(7);
    });
  });

  it("shows every cell with its place and text, what was taken and what was left out", async () => {
    await driver.visit(async (page) => {
      await paste(page, UNTIDY);
      await standing(page, /7 bases/);
      const row = (cell: string) => cellRow(page, cell);
      expect(await row("H4").textContent()).toMatch(
        /18x16 PL 1 1\/2[\s\S]*Base plate X 18 in[\s\S]*Base plate Y 16 in/,
      );
      expect(await row("A1").textContent()).toContain("stands above the table");
      expect(await row("A10").textContent()).toContain("a note");
      expect(await row("I6").textContent()).toContain("<script>alert(1)</script>");
      expect(await row("I4").textContent()).toContain("=SUM(A1)");
      expect(await row("I7").textContent()).toContain("a\\u202eevil");
      expect(await row("A10").locator(".written > bdi").textContent()).toMatch(/^1\. RODS ARE SET.*\.\.\.$/);
      await row("A10").getByText("all 448 characters").click();
      expect(await row("A10").locator(".written details bdi").isVisible()).toBe(true);
      const read = readAnswered({ name: "pasted.tsv", file: UNTIDY, answers: [] });
      if (!read.ok) throw new Error("not read");
      const cells = new Set(read.value.form.entries.flatMap(({ cell }) => (cell === "" ? [] : [cell])));
      expect(await page.locator(".rows tbody tr").count()).toBe(cells.size);
    });
  });

  it("takes an answer back, and a cell that is meant otherwise", async () => {
    await driver.visit(async (page) => {
      await paste(page, UNTIDY);
      await standing(page, /4 questions open/);
      await page.getByRole("button", { name: "a rod stands on the axis" }).click();
      await standing(page, /3 questions open/);
      await page.getByRole("button", { name: "Take back answer 1" }).click();
      await standing(page, /4 questions open/);
      await page.getByRole("button", { name: "Mean otherwise in C4" }).click();
      await page.getByLabel("What is meant in C4").fill("1-1/8");
      await page.keyboard.press("Enter");
      await page.locator(".answered li", { hasText: "1-1/8" }).waitFor();
      await cellRow(page, "C4").locator(".value", { hasText: "1-1/8" }).waitFor();
    });
  });

  it("asks for the unit that nothing proves, and for what the shop chooses; a keyboard alone answers", async () => {
    await driver.visit(async (page) => {
      await paste(page, METRIC);
      await page.getByRole("group", { name: /inches or millimetres/ }).waitFor();
      expect(await cellRow(page, "D2").textContent()).toContain("300 x 240");
      await page.getByRole("button", { name: /^millimetres/ }).focus();
      await page.keyboard.press("Enter");
      await page.getByLabel("Plate thickness").fill("6");
      await page.keyboard.press("Enter");
      await standing(page, /2 bases, bare numbers in millimetres.*nothing is open/);
      await page.locator(".take button:focus", { hasText: "Take these 2 bases" }).waitFor();
      await page.keyboard.press("Enter");
      await page.getByRole("img", { name: /^Template / }).waitFor();
    });
  });

  it("asks an answer that no job takes again, loses nothing of what is left, and reads a newer sheet into its job", async () => {
    const sheet = (...rows: readonly string[]) => ["MARK\tX\tY", ...rows].join("\n");
    const bytes = (text: string): readonly GivenFile[] => [{ name: "bases.tsv", bytes: Buffer.from(text) }];
    const two = sheet('B1\t9"\t9"', 'B2\t10"\t12"');
    await driver.visit(async (page) => {
      const answer = async (label: string, text: string): Promise<void> => {
        await page.getByLabel(label).fill(text);
        await page.keyboard.press("Enter");
        await page.locator(".answered li", { hasText: text }).waitFor();
      };
      await dropOn(page, "body", bytes(two));
      await standing(page, /2 bases.*2 questions open/);
      await answer("Rod diameter", "M31");
      await page.getByRole("group", { name: /"M31" is no rod size.*nearest: M30/ }).waitFor();
      await answer("Plate thickness", "abc");
      await page.getByRole("group", { name: /"abc" is not a length/ }).waitFor();
      await page.reload();
      await page.getByRole("group", { name: /"abc" is not a length/ }).waitFor();
      await answer("Plate thickness", "1/4");
      await page.getByRole("button", { name: "Put this sheet away" }).click();
      await page.getByRole("button", { name: "Paste its cells" }).click();
      await page.getByLabel("Cells of the schedule").fill("another sheet");
      await page.getByRole("button", { name: "Back" }).click();
      await page.getByRole("button", { name: "Go on with pasted cells" }).waitFor();
      await page.getByRole("button", { name: "Go on with bases.tsv" }).click();
      await standing(page, /2 bases.*1 question open/);
      await answer("Rod diameter", "3/4");
      await standing(page, /nothing is open/);
      await page.getByRole("button", { name: "Mean otherwise in C2" }).press("Enter");
      await page.keyboard.press("Escape");
      expect(await page.locator(":focus").textContent()).toBe("Mean otherwise in C2");
      await page.keyboard.press("Enter");
      await page.getByLabel("What is meant in C2").fill("9-1/2");
      await page.keyboard.press("Enter");
      await cellRow(page, "C2").locator(".value", { hasText: "9-1/2" }).waitFor();
      await page.getByRole("button", { name: "Take these 2 bases" }).click();
      await page.getByRole("img", { name: /^Template / }).waitFor();
      await dropOn(page, "body", bytes(sheet('B1\t9"\t9"', 'B2\t10"\t12"', 'B3\t12"\t14"')));
      await standing(page, /3 bases.*nothing is open/);
      expect(await cellRow(page, "C2").locator(".value").textContent()).toBe("9-1/2");
      await page.getByRole("button", { name: "Take these 3 bases" }).click();
      await page.getByRole("grid").getByText("B3", { exact: true }).waitFor();
      await page.getByRole("button", { name: "Undo bases.tsv read again" }).click();
      await page.getByRole("grid").getByText("B3", { exact: true }).waitFor({ state: "detached" });
      await page.getByRole("button", { name: "Begin", exact: true }).click();
      await page.getByRole("button", { name: "Throw away pasted cells" }).click();
      await page.getByRole("button", { name: "Throw it away for good" }).click();
      await page.getByRole("heading", { name: "Begun, and no job yet" }).waitFor({ state: "detached" });
    });
  });

  it("asks which of several tables is the schedule", async () => {
    const table = (title: string, mark: string) => [
      title,
      "MARK\tROD DIA\tX\tY",
      `${mark}1\t3/4"\t9\t9`,
      `${mark}2\t1"\t12\t10`,
    ];
    await driver.visit(async (page) => {
      await paste(page, [...table("INTERIOR BASES", "B"), "", "", ...table("EXTERIOR BASES", "C")].join("\n"));
      await page.getByRole("group", { name: /2 tables have the same headings/ }).waitFor();
      await page.getByRole("button", { name: /EXTERIOR BASES/ }).click();
      await standing(page, /2 bases/);
      expect(await cellRow(page, "A9").textContent()).toContain("C1");
    });
  });

  it("reads a workbook that is dropped, and the sheet of the samples", async () => {
    const bytes = readFileSync(new URL("../../samples/packing-hall/schedule.xlsx", import.meta.url)).toString("base64");
    await driver.visit(async (page) => {
      await bring(page, "drop", bytes);
      await standing(page, /22 bases/);
      await page.getByRole("button", { name: "Take these 22 bases" }).click();
      await page.getByRole("img", { name: /^Template / }).waitFor();
      expect(await page.locator(".bases > li").count()).toBe(22);
    });
  });

  it("takes text that is pasted where no field is", async () => {
    await driver.visit(async (page) => {
      await bring(page, "paste", UNTIDY);
      await standing(page, /7 bases/);
    });
  });

  it("stays usable with 2,000 rows, and can be stopped", async () => {
    const rows = Array.from({ length: 2000 }, (_, i) => `B${i + 1}\t${(i % 7) + 1}\t1 in\t12\t10\t18x16x1-1/2`);
    const sheet = ["MARK\tQTY\tROD DIA\tX\tY\tBASE PL", ...rows].join("\n");
    await driver.visit(async (page) => {
      await bring(page, "paste", sheet);
      await page.getByRole("button", { name: "Cancel" }).click();
      await page.locator(".asking .standing", { hasText: "Not read." }).waitFor();
      await page.getByRole("button", { name: "Put this sheet away" }).click();
      await bring(page, "paste", sheet);
      await standing(page, /2000 bases/);
      expect(await page.locator(".rows tbody tr").count()).toBeLessThanOrEqual(100);
      await page.getByLabel("Find a cell, a mark or words").fill("B1777");
      await page.locator(".rows tbody tr").first().waitFor();
      expect(await page.locator(".rows tbody tr").count()).toBe(7);
      await page.getByLabel("Plate thickness").fill("1/4");
      await page.keyboard.press("Enter");
      await standing(page, /nothing is open/);
    });
  });

  it("says of what cannot be read what it is and what to do", async () => {
    await driver.visit(async (page) => {
      const file = { name: "print.pdf", mimeType: "application/pdf", buffer: Buffer.from("%PDF-1.7 invented") };
      await page.getByLabel("Choose the schedule").setInputFiles(file);
      await page
        .getByRole("alert")
        .getByText(/a print \(\.pdf\)/)
        .waitFor();
      const scan = { name: "scan.png", mimeType: "image/png", buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47]) };
      await page.getByLabel("Choose another file").setInputFiles(scan);
      await page
        .getByRole("alert")
        .getByText(/a picture.*ask for the sheet/)
        .waitFor();
      await page.getByRole("button", { name: "Put this sheet away" }).click();
      await paste(page, "no table at all");
      await page.getByRole("alert").waitFor();
    });
  });
});
