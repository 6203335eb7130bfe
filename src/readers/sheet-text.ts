/** Text that stands for a spreadsheet (CSV, tab separated, between bars, in columns; pasted or saved) -> a table of cells. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { splitAligned } from "./aligned-cells.js";
import { findSeparator, readSeparated, tableOfRows, tooManyCells } from "./csv.js";
import { MOST_CELLS, type Table } from "./inputs.js";
import type { SplitRow } from "./quoted-cells.js";
import { isRule, type Separator, withoutOuterBars } from "./separator.js";
import { decodeSheetText } from "./text.js";

const SEPARATORS: readonly Separator[] = ["\t", "|", ";", ",", "aligned"];

/** Reads a text. `Cell.line` is the line of the file where the row starts, `Cell.column` counts cells from 1. */
export function readSheetText(input: string | Uint8Array, file: string): Outcome<Table> {
  const decoded = decodeSheetText(input, file);
  if (!decoded.ok) return { ok: false, findings: [decoded.finding] };
  const { text, separator, firstLine } = findSeparator(decoded.text, SEPARATORS);
  const table = tableOf(text, separator, firstLine, file);
  return { ...table, findings: [...decoded.warnings, ...table.findings] };
}

function tableOf(text: string, separator: Separator, firstLine: number, file: string): Outcome<Table> {
  switch (separator) {
    case ",":
    case ";":
    case "\t":
      return readSeparated(text, separator, firstLine, file);
    case "|":
      return readRows(barRows(text), firstLine, file);
    case "aligned":
      return readAligned(text, firstLine, file);
  }
}

function readRows(rows: readonly SplitRow[], firstLine: number, file: string): Outcome<Table> {
  const cells = rows.reduce((sum, { texts }) => sum + Math.max(1, texts.length), 0);
  if (cells > MOST_CELLS) return { ok: false, findings: [tooManyCells(file)] };
  return tableOfRows(rows, firstLine, [], file);
}

const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/);

/** A line without a bar is one text: a title, a note. Rules are blank rows, so that rows keep their numbers. */
function barRows(text: string): readonly SplitRow[] {
  return linesOf(text).map((line, index) => {
    if (isRule(line)) return { texts: [], line: index + 1 };
    const texts = line.includes("|") ? withoutOuterBars(line).split("|") : [line];
    return { texts: texts.map((each) => each.trim()), line: index + 1 };
  });
}

function readAligned(text: string, firstLine: number, file: string): Outcome<Table> {
  const split = splitAligned(linesOf(text));
  if (split.ok) return readRows(split.rows, firstLine, file);
  const { line, cells, expected } = split;
  const finding: Finding = {
    ...{ code: "blank-cells", severity: "error", at: { file, line: line + firstLine - 1, column: 1 } },
    message: `this line has ${cells} ${cells === 1 ? "cell" : "cells"} where most have ${expected}, and nothing shows which are blank; allowed are columns that stand below each other, or cells parted by tabs, bars (|) or commas`,
  };
  return { ok: false, findings: [finding] };
}
