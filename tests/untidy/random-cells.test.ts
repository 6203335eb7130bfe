/** Random cells through the whole reading of a schedule: values, blanks or faults, and nothing that the read-as table does not show. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SourceNode } from "../../src/readers/source.js";
import { findNode } from "../../src/readers/source.js";
import type { ReadLine, Schedule } from "../../src/schedule/index.js";
import { groupBy } from "../../src/units/group-by.js";
import { sheetOf } from "../unit/schedule/drawn-sheet.js";
import { read } from "./read-sheet.js";

const HEADINGS = [
  ...[
    "MARK",
    "QTY",
    "NO. OF RODS",
    "ROD DIA",
    "GRADE",
    "EMBED",
    "PROJ",
    "O.A.L.",
    "X",
    "Y",
    "NX",
    "B.C.",
    "BASE PLATE",
  ],
  ...["HOLE SIZE", "WASHER", "COLUMN", "PIER SIZE", "GROUT", "PAINT", "REMARKS"],
];
const PIECES = [
  ...[
    "1",
    "4",
    "12",
    "3/4",
    "1-1/4",
    "11/4",
    "-",
    "x",
    "@",
    "SPA",
    "Ø",
    '"',
    "'",
    "DO",
    "SAME AS",
    "B3",
    "SEE NOTE",
    "2",
    "(4)",
    "M24",
  ],
  ...[
    "mm",
    "PL",
    "F1554",
    "GR 55",
    "HDG",
    "W12x65",
    "C/C",
    "TYP",
    "VARIES",
    "N/A",
    "",
    " ",
    "\n",
    "&",
    "THRU",
    "B1-B4",
    "=",
    "6",
    "SQ",
    "½",
    "ƒ",
  ],
];
const cell = fc.array(fc.constantFrom(...PIECES), { maxLength: 5 }).map((pieces) => pieces.join(" ").trim());
const drawn = fc.oneof({ arbitrary: cell, weight: 4 }, { arbitrary: fc.string({ maxLength: 12 }), weight: 1 });

/** Every text of a base, lists as the read-as table writes them. */
function textsOf(node: SourceNode): readonly string[] {
  if (node.kind === "scalar") return [node.text];
  if (node.kind === "list") return node.items.flatMap(textsOf);
  return node.entries.filter(({ key }) => key !== "kind").flatMap(({ value }) => textsOf(value));
}

function shown(lines: readonly ReadLine[]): string {
  return lines.map(({ taken, written, key }) => `${taken}\u0000${key === "" ? written.trim() : ""}`).join("\u0001");
}

/** Texts of a base that no line of its own mark shows. */
function unshown({ bases, readAs }: Schedule): readonly string[] {
  const linesOf = groupBy(readAs.lines, ({ mark }) => mark);
  return bases.flatMap((base) => {
    const mark = findNode(base, "mark");
    const own = shown(linesOf.get(mark?.kind === "scalar" ? mark.text : "") ?? []);
    return textsOf(base).filter((text) => text !== "" && !own.includes(text) && !text.includes("; "));
  });
}

describe("100,000 random cells", () => {
  it("give values, blanks or faults, each shown", { timeout: 240_000 }, () => {
    const row = fc.array(drawn, { minLength: HEADINGS.length - 1, maxLength: HEADINGS.length - 1 });
    const rows = fc.array(row, { minLength: 1_000, maxLength: 1_000 });
    let cells = 0;
    for (const [index, body] of fc.sample(rows, 5).entries()) {
      const marked = body.map((texts, at) => [at % 7 === 6 ? "" : `${index % 2 === 0 ? "B" : "C"}${at}`, ...texts]);
      const schedule = read(sheetOf([HEADINGS, ...marked]));
      if (schedule.readAs.lines.length === 0) throw new Error(JSON.stringify(schedule.findings).slice(0, 1500));
      cells += marked.length * HEADINGS.length;
      expect(unshown(schedule)).toEqual([]);
      const filled = marked.flat().filter((text) => text.trim() !== "").length;
      expect(new Set(schedule.readAs.lines.map(({ cell: place }) => place)).size).toBeGreaterThanOrEqual(filled);
    }
    expect(cells).toBe(100_000);
  });
});
