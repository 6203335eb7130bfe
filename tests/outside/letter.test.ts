/** The letter to the engineer of record by qpdf (ISO 32000 syntax) and poppler: every number, figure, clause and caution is text in it. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import type { PdfMaker } from "../../src/formats/pdf-maker.js";
import { packageOf } from "../questions-case.js";
import { isSkipped, newFolder, run } from "./viewers.js";

const bases = [
  { mark: "B1", quantity: 6 },
  { mark: "B2", washer: "2-5/8" },
  { mark: "B3", hole: "2", washer: "3" },
  { mark: "B4", hole: "2-1/8", washer: "2-7/8" },
];
const made = packageOf({ revision: "A", bases, pdf: PDFDocument as unknown as PdfMaker });
const words = (text: string) => text.replace(/\s+/g, " ");

describe("the letter", () => {
  it.skipIf(isSkipped("qpdf", "pdftotext"))("is a whole PDF that holds every question", () => {
    const path = join(newFolder(), "letter.pdf");
    writeFileSync(path, made.bytes("_letter.pdf"));
    expect(run("qpdf", ["--check", path])).toContain("No syntax or stream encoding errors");
    const text = words(run("pdftotext", ["-layout", path, "-"]));
    expect(made.questions.length).toBeGreaterThanOrEqual(4);
    for (const { number, parts, mark } of made.questions) {
      expect(text).toContain(number);
      expect(text).toContain(mark);
      expect(text).toContain(parts.figures?.found);
      expect(text).toContain(parts.figures?.asked);
      expect(text).toContain(parts.figures?.missed);
    }
    expect(text).toContain("Design Guide 1");
    expect(text).toContain("The engineer of record decides.");
    expect(text).toContain("Local codes");
    expect(text).not.toMatch(/(?<!nothing here says that a detail )\b(is|are) acceptable\b/);
  });
});

describe("the letter as text", () => {
  it("says the same, in lines that a message takes", () => {
    const text = made.text("_letter.txt");
    for (const { number, parts } of made.questions) {
      expect(text).toMatch(new RegExp(`^${number}  `, "m"));
      expect(words(text)).toContain(words(parts.said));
      expect(words(text)).toContain(
        `${parts.figures?.found}, asked for: ${parts.figures?.asked}; ${parts.figures?.missed}.`,
      );
    }
    expect(text.split("\n").filter((line) => line.length > 76)).toEqual([]);
  });

  it("is not written where nothing is asked", () => {
    const quiet = packageOf({ revision: "A", bases: [{ mark: "B1", washer: "3" }] });
    expect(quiet.files.filter(({ kind }) => /letter|answer-form/.test(kind))).toEqual([]);
    expect(quiet.files.some(({ kind }) => kind === "question-register-json")).toBe(true);
  });
});
