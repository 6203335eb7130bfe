import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/model.js";
import { openQuestionsOf } from "../../../src/checks/release.js";
import type { Answer, JobStatus, TemplateUse } from "../../../src/job/model/job.js";
import { missing } from "../../../src/job/model/job.js";
import { drawSheet } from "../../../src/sheets/index.js";
import { scales, sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { statusWords } from "../../../src/sheets/status-words.js";
import { measureText } from "../../../src/sheets/text-metrics.js";
import { leastTitleHeight, titleBlock } from "../../../src/sheets/title-block.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { type SceneText, textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const answer: Answer = {
  ...{ kind: "answered", question: "" },
  ...{ mark: "B1", rule: "washer-cover", by: "EOR", date: "2026-11-20", text: "As drawn.", subject: "" },
  value: missing("answers.value", "none given"),
};

/** A request with no question, an open one, or one that is answered. */
function requestWith(status: JobStatus, held: readonly string[], question: "none" | "open" | "answered") {
  const request = sheetCase(jobFixture({ status }), baseFixture());
  const passing = request.rows.filter((row) => row.status !== "fail");
  const [one] = passing;
  if (one === undefined) throw new Error("no row");
  const asked: CheckRow = { ...one, status: "fail", severity: "ask", answer: question === "open" ? null : answer };
  const rows = question === "none" ? passing : [asked, ...passing];
  return { ...request, held, rows, open: openQuestionsOf("B1", rows) };
}

describe("the status", () => {
  it.each([
    ["released", [], "none", "RELEASED"],
    ["released", [], "answered", "RELEASED"],
    ["released", [], "open", "NOT RELEASED, QUESTION OPEN"],
    ["for approval", [], "none", "FOR APPROVAL"],
    ["preliminary", [], "open", "QUESTION OPEN (PRELIMINARY)"],
    ["released", ["too near"], "none", "HELD (JOB RELEASED)"],
    ["released", ["too near"], "open", "HELD, QUESTION OPEN (JOB RELEASED)"],
    ["for approval", ["too near"], "answered", "HELD (JOB FOR APPROVAL)"],
  ] as const)("of a %s job, held by %j, question %s: %s", (status, held, question, words) => {
    expect(statusWords(requestWith(status, held, question))).toBe(words);
  });

  it("stands on the sheet, in its title and in its description alike", () => {
    const held = drawSheet(requestWith("released", ["too near"], "open"));
    expect(held.title).toContain("HELD");
    expect(held.description).toContain("HELD, QUESTION OPEN (JOB RELEASED)");
    const open = drawSheet(requestWith("released", [], "open"));
    expect(open.title).toContain("QUESTION OPEN");
    const fine = drawSheet(requestWith("released", [], "none"));
    expect(fine.title).not.toMatch(/HELD|QUESTION/);
  });
});

const C = sheetSizes("in").find(({ name }) => name.endsWith("C"));

function block(request: ReturnType<typeof sheetCase>) {
  const [scale] = scales("in");
  if (scale === undefined || C === undefined) throw new Error("no scale or sheet");
  const piece = titleBlock(request, C, scale);
  return { piece, words: textsOf([piece.draw(0, 0)]).map(({ text }) => text) };
}

/** What a text takes on paper. */
function inkOf({ text: words, at: { x, y }, height, bold, anchor, role }: SceneText) {
  const { width, rise, drop } = measureText(words, height, bold);
  const left = anchor === "middle" ? x - width / 2 : x;
  return { words, role, x: [left, left + width] as const, y: [y - drop, y + rise] as const };
}

function gapOf([a0, a1]: readonly [number, number], [b0, b1]: readonly [number, number]): number {
  return Math.max(b0 - a1, a0 - b1);
}

describe("the title block", () => {
  it("is at most 106 mm high at letters of 3 mm, and little more with HELD in it", () => {
    const heights = [[], ["too near"]].map((held) => block(requestWith("released", held, "open")).piece.height);
    expect(heights[0]).toBeLessThanOrEqual(106);
    expect(heights[1]).toBeLessThanOrEqual(110);
  });

  it("breaks no caption on a B sheet or larger, whatever the unit", () => {
    for (const unit of ["in", "mm"] as const)
      for (const sheet of sheetSizes(unit).slice(1)) {
        const request = sheetCase(jobFixture({ unit }), baseFixture());
        const { draw } = titleBlock(request, sheet, { name: "1:1", factor: 1 });
        const words = textsOf([draw(0, 0)]).map(({ text }) => text);
        for (const caption of ["DRAWING NUMBER", "SOURCE DRAWING", "APPROVED BY", "CUT FILES, START OF SHA-256"])
          expect(words, sheet.name).toContain(caption);
        expect(words).toContain(unit === "in" ? "INCHES" : "MILLIMETRES");
      }
  });

  it("keeps captions clear of their values and of each other, in any script and at every size of letters", () => {
    const words = ["Packing hall (north)", "Šablóna Ďáblíc Å̊ngström", "Машинный зал Ёлка", "東京駅の柱脚"];
    for (const unit of ["in", "mm"] as const)
      for (const sheet of sheetSizes(unit))
        for (const title of words) {
          const request = sheetCase(jobFixture({ unit, title, owner: title }), baseFixture());
          const { draw } = titleBlock({ ...request, held: ["too near"] }, sheet, { name: "1:1", factor: 1 });
          const boxes = textsOf([draw(0, 0)]).map(inkOf);
          for (const [i, one] of boxes.entries())
            for (const other of boxes.slice(i + 1)) {
              const [across, along] = [gapOf(one.y, other.y), gapOf(one.x, other.x)];
              const isCaption = (one.role === "label") !== (other.role === "label");
              const least = isCaption ? sheet.lettering.small * 0.3 : 0.1;
              expect(Math.max(across, along), `${sheet.name}: ${one.words} | ${other.words}`).toBeGreaterThan(least);
            }
        }
  });

  it("has the mark in the largest letters, and room for a name under CHECKED BY and APPROVED BY", () => {
    for (const unit of ["in", "mm"] as const)
      for (const sheet of sheetSizes(unit)) {
        const piece = titleBlock(requestWith("released", [], "none"), sheet, { name: "1:1", factor: 1 });
        const texts = textsOf([piece.draw(0, 0)]);
        const largest = Math.max(...texts.map(({ height }) => height));
        const mark = texts.findIndex(({ text }) => text.endsWith("MARK")) + 1;
        expect(texts.filter(({ height }) => height === largest)).toEqual([texts[mark]]);
        const foot = (label: string) => texts.findLast(({ text }) => text === label)?.at.y ?? Number.NaN;
        const captionUnder = foot("RULES AND EDITIONS") + sheet.lettering.small;
        const by = texts.findLast(({ text }) => text.startsWith("APPROVED"))?.at.y ?? Number.NaN;
        expect(by - captionUnder, sheet.name).toBeGreaterThanOrEqual(8);
      }
  });

  it("has HELD beside the mark of a held template alone", () => {
    expect(block(requestWith("released", ["too near"], "none")).words).toContain("HELD");
    expect(block(requestWith("released", [], "open")).words).not.toContain("HELD");
  });

  it("leaves CHECKED BY and APPROVED BY with their dates to persons", () => {
    const words = block(requestWith("released", [], "none")).words.join("|");
    expect(words).toContain("CHECKED BY|DATE|APPROVED BY|DATE|");
  });

  it.each([
    ["template", "SETTING TEMPLATE, MARK"],
    ["template left as setting plate", "TEMPLATE AND SETTING PLATE, MARK"],
    ["setting plate over cast rods", "PLATE OVER CAST RODS, MARK"],
  ] as const)("says what a %s is", (use: TemplateUse, words) => {
    const template = { ...baseFixture().template, use };
    expect(block(sheetCase(jobFixture(), baseFixture({ template }))).words).toContain(words);
  });

  it("has a drawing number, and cuts off nothing that a job may say", () => {
    const owner = "Joint Undertaking of the Eastern Machining Hall and its Yard";
    const title = `${"Машинный зал ".repeat(9)}東`;
    const job = jobFixture({
      owner,
      title,
      number: "9-".repeat(20),
      tolerances: "Holes +1/32, -0; edges 1/16; flat 1/8",
    });
    const { words } = block(
      sheetCase(job, baseFixture({ template: { ...baseFixture().template, mark: "T-".repeat(30) } })),
    );
    const all = words.join("").replaceAll(" ", "");
    for (const part of [owner, title, job.tolerances, `${job.number}-${"T-".repeat(30)}`])
      expect(all).toContain(part.replaceAll(" ", ""));
    expect(words.filter((text) => text.endsWith("…"))).toEqual([]);
  });
});

describe("the least height of a title block", () => {
  it("is never more than that of a block, on any sheet, with long words or none", () => {
    for (const unit of ["in", "mm"] as const)
      for (const sheet of sheetSizes(unit))
        for (const title of [
          "",
          "Hall",
          "A title that runs on over the whole width of its field, and then some more",
        ]) {
          const request = sheetCase(jobFixture({ unit, title, owner: "", number: "", drawnBy: "" }), baseFixture());
          const { height } = titleBlock(request, sheet, { name: "1:1", factor: 1 });
          expect(leastTitleHeight(sheet.lettering), `${sheet.name}: ${title}`).toBeLessThanOrEqual(height);
          expect(leastTitleHeight(sheet.lettering)).toBeGreaterThan(height / 3);
        }
  });
});
