/**
 * ASME B18.21.1 plain washers, Type B, in inches as printed. Three rows of the open data set differ from Machinery's Handbook
 * (31st ed., p. 1697): the handbook's values are kept and the row says so.
 */
import { asmeWasher } from "../fasteners.js";
import type { Confidence, StandardTable, WasherRow } from "../model.js";

/** Narrow series: size, inside, outside, thickness, confidence, note. */
export const typeBNarrowWashers: StandardTable<WasherRow> = {
  edition: "ASME B18.21.1 Type B narrow",
  clause: "plain washers, Type B, narrow",
  rows: [
    row("1/4", 0.281, 0.5, 0.063),
    row("5/16", 0.344, 0.625, 0.063),
    row("3/8", 0.406, 0.734, 0.063),
    row("7/16", 0.469, 0.875, 0.063),
    row("1/2", 0.531, 1, 0.063),
    row("9/16", 0.594, 1.125, 0.063),
    row("5/8", 0.656, 1.25, 0.1),
    row("3/4", 0.812, 1.375, 0.1),
    row("7/8", 0.938, 1.469, 0.1),
    row("1", 1.062, 1.75, 0.1),
    row("1-1/8", 1.188, 2, 0.1),
    row("1-1/4", 1.312, 2.25, 0.16),
    row("1-3/8", 1.438, 2.5, 0.16),
    row("1-1/2", 1.562, 2.75, 0.16),
    row("1-5/8", 1.75, 3, 0.16),
    row("1-3/4", 1.875, 3.25, 0.16),
    row("1-7/8", 2, 3.5, 0.25),
    row("2", 2.125, 3.75, 0.25),
    row("2-1/4", 2.375, 4, 0.25),
    row("2-1/2", 2.625, 4.5, 0.25),
    row("2-3/4", 2.875, 5, 0.25),
    row("3", 3.125, 5.5, 0.375),
  ],
};

/** Regular series: size, inside, outside, thickness, confidence, note. */
export const typeBRegularWashers: StandardTable<WasherRow> = {
  edition: "ASME B18.21.1 Type B regular",
  clause: "plain washers, Type B, regular",
  rows: [
    row("1/4", 0.281, 0.734, 0.063),
    row("5/16", 0.344, 0.875, 0.063),
    row("3/8", 0.406, 1, 0.063),
    row("7/16", 0.469, 1.125, 0.063),
    row("1/2", 0.531, 1.25, 0.1),
    row("9/16", 0.594, 1.469, 0.1),
    row("5/8", 0.656, 1.75, 0.1),
    row("3/4", 0.812, 2, 0.1),
    row("7/8", 0.938, 2.25, 0.16),
    row("1", 1.062, 2.5, 0.16),
    row("1-1/8", 1.188, 2.75, 0.16),
    row("1-1/4", 1.312, 3, 0.16),
    row("1-3/8", 1.438, 3.25, 0.16, "high (conflict resolved)", "one open data set prints thickness .250"),
    row("1-1/2", 1.562, 3.5, 0.25, "medium", "file prints 889 mm; 88.9 (3-1/2 in) intended"),
    row("1-5/8", 1.75, 3.75, 0.25),
    row("1-3/4", 1.875, 4, 0.25),
    row("1-7/8", 2, 4.25, 0.25),
    row("2", 2.125, 4.5, 0.25),
    row("2-1/4", 2.375, 5, 0.25),
    row("2-1/2", 2.625, 5.5, 0.375),
    row("2-3/4", 2.875, 6, 0.375),
    row("3", 3.125, 6.5, 0.375),
  ],
};

/** Wide series: size, inside, outside, thickness, confidence, note. */
export const typeBWideWashers: StandardTable<WasherRow> = {
  edition: "ASME B18.21.1 Type B wide",
  clause: "plain washers, Type B, wide",
  rows: [
    row("1/4", 0.281, 1, 0.063),
    row("5/16", 0.344, 1.125, 0.063),
    row("3/8", 0.406, 1.25, 0.1),
    row("7/16", 0.469, 1.469, 0.1),
    row("1/2", 0.531, 1.75, 0.1),
    row("9/16", 0.594, 2, 0.1),
    row("5/8", 0.656, 2.25, 0.16),
    row("3/4", 0.812, 2.5, 0.16),
    row("7/8", 0.938, 2.75, 0.16),
    row("1", 1.062, 3, 0.16),
    row("1-1/8", 1.188, 3.25, 0.16),
    row(
      "1-1/4",
      1.312,
      3.5,
      0.25,
      "high (conflict resolved)",
      "one open data set prints outside 3.250, thickness .150",
    ),
    row("1-3/8", 1.438, 3.75, 0.25, "high (conflict resolved)", "one open data set prints outside 4.000"),
    row("1-1/2", 1.562, 4, 0.25),
    row("1-5/8", 1.75, 4.25, 0.25),
    row("1-3/4", 1.875, 4.5, 0.25),
    row("1-7/8", 2, 4.75, 0.25),
    row("2", 2.125, 5, 0.25),
    row("2-1/4", 2.375, 5.5, 0.375),
    row("2-1/2", 2.625, 6, 0.375),
    row("2-3/4", 2.875, 6.5, 0.375),
    row("3", 3.125, 7, 0.375),
  ],
};

function row(
  size: string,
  inside: number,
  outside: number,
  thickness: number,
  confidence: Confidence = "medium",
  note = "",
): WasherRow {
  return asmeWasher(size, inside, outside, thickness, "ASME B18.21.1 Type B", confidence, note);
}
