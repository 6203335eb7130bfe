/** Drawing practice: borders, lettering and dimensions, in mm on the paper. */
import { type Length, millimetres } from "../../units/length.js";
import type { Sourced, StandardTable, StandardValue } from "../model.js";

/** Border of a sheet: at the binding edge, and on the other sides. */
export const border: StandardValue<{ readonly binding: Length; readonly other: Length }> = {
  edition: "ISO 5457:1999",
  clause: "borders",
  value: { binding: millimetres(20), other: millimetres(10) },
  source: "from memory",
  confidence: "from memory",
  note: "an older text has 20 mm for A0 and A1, 10 mm for A2 to A4 (conflict)",
};

/** A height of lettering. */
export interface LetterHeightRow extends Sourced {
  readonly height: Length;
}

/** Heights of lettering, smallest first. */
export const letterHeights: StandardTable<LetterHeightRow> = {
  edition: "ISO 3098",
  clause: "height series",
  rows: [1.8, 2.5, 3.5, 5, 7, 10, 14, 20].map((mm) => letterHeight(mm)),
};

/** Least height of notes: of metric sheets by their size, of inch sheets in all sizes. */
export const leastLettering = {
  A4: notes("A4", 1.8),
  "A3 to A1": notes("A3 to A1", 2.5),
  A0: notes("A0", 3.5),
  inch: inchLettering("least height of notes and dimensions", 3, ".12 in"),
} as const;

/** Height of the title and the drawing number on inch sheets. */
export const inchTitleLettering = inchLettering("height of title and drawing number", 6, ".24 in");

/** Distance of the first dimension line from the outline, at least: 3/8 in is printed beside it. */
export const firstDimensionLine = dimension("first line from the outline", 10);

/** Distance between dimension lines, at least: 1/4 in is printed beside it. */
export const nextDimensionLine = dimension("following lines", 6);

/** Visible gap between a feature and its extension line: about 1/16 in. */
export const extensionGap = dimension("extension line, visible gap", 1.5);

/** Length of an arrowhead over its width. */
export const arrowProportion: StandardValue<number> = {
  edition: "ASME Y14.5M",
  clause: "arrowheads",
  value: 3,
  source: "secondary copy",
  confidence: "medium-high",
  note: "about 1/8 in long",
};

function letterHeight(mm: number): LetterHeightRow {
  return { height: millimetres(mm), source: "secondary copy", confidence: "high", note: "" };
}

function notes(sheets: string, mm: number): StandardValue<Length> {
  const clause = `least height of notes, ${sheets}`;
  const sourced = { source: "secondary copy", confidence: "medium", note: "" } as const;
  return { edition: "ISO 3098", clause, value: millimetres(mm), ...sourced };
}

function inchLettering(clause: string, mm: number, note: string): StandardValue<Length> {
  const sourced = { source: "from memory", confidence: "from memory", note } as const;
  return { edition: "ASME Y14.2", clause, value: millimetres(mm), ...sourced };
}

function dimension(clause: string, mm: number): StandardValue<Length> {
  const sourced = { source: "ASME Y14.5M text, secondary copy", confidence: "medium-high", note: "" } as const;
  return { edition: "ASME Y14.5M", clause, value: millimetres(mm), ...sourced };
}
