import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/model.js";
import type { Answer, JobStatus, TemplateUse } from "../../../src/job/model/job.js";
import { missing } from "../../../src/job/model/job.js";
import { drawSheet } from "../../../src/sheets/index.js";
import { scales, sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { statusWords } from "../../../src/sheets/status-words.js";
import { titleBlock } from "../../../src/sheets/title-block.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const answer: Answer = {
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
  return { ...request, held, rows: question === "none" ? passing : [asked, ...passing] };
}

describe("the status", () => {
  it.each([
    ["released", [], "none", "RELEASED"],
    ["released", [], "answered", "RELEASED"],
    ["released", [], "open", "QUESTION OPEN (RELEASED)"],
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
  const piece = titleBlock(request, C, scale, C.panel);
  return { piece, words: textsOf([piece.draw(0, 0)]).map(({ text }) => text) };
}

describe("the title block", () => {
  it("is at most 100 mm high at letters of 3 mm, held or not", () => {
    for (const held of [[], ["too near"]])
      expect(block(requestWith("released", held, "open")).piece.height).toBeLessThanOrEqual(100);
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
