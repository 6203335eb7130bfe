/**
 * ASTM F844 plain washers (ASME B18.21.1 Type A), narrow and wide, in inches as printed. F844-07a s.7.1 (secondary copy):
 * where both series exist the narrow one is furnished unless the order says otherwise. Design Guide 1, Table 2.3, note 3 has
 * F844 as USS Standard, which is the wide one (from memory): who only writes F844 may get either. From 1-3/4 in on there is one series.
 */
import { asmeWasher } from "../fasteners.js";
import type { Confidence, StandardTable, WasherRow } from "../model.js";

const SOURCE = "ASTM F844 / ASME B18.21.1 Type A";
const PART = "ASTM F844 / ASME B18.21.1 Type A (part from memory: see confidence)";
const MEMORY = "ASTM F844 / ASME B18.21.1 Type A (from memory)";

// Size, inside, outside, basic thickness, confidence, source.
const narrow: readonly WasherRow[] = [
  row("1/4", 0.281, 0.625, 0.065, "high"),
  row("3/8", 0.406, 0.812, 0.065, "high"),
  row("1/2", 0.531, 1.062, 0.095, "high"),
  row("5/8", 0.656, 1.312, 0.095, "high"),
  row("3/4", 0.812, 1.469, 0.134, "high"),
  row("7/8", 0.938, 1.75, 0.134, "high"),
  row("1", 1.062, 2, 0.134, "from memory", MEMORY),
  row("1-1/8", 1.25, 2.25, 0.134, "from memory", MEMORY),
  row("1-1/4", 1.375, 2.5, 0.165, "from memory", MEMORY),
  row("1-3/8", 1.5, 2.75, 0.165, "from memory", MEMORY),
  row("1-1/2", 1.625, 3, 0.165, "from memory", MEMORY),
];

const wide: readonly WasherRow[] = [
  row("1/4", 0.312, 0.734, 0.065, "high"),
  row("3/8", 0.438, 1, 0.083, "high"),
  row("1/2", 0.562, 1.375, 0.109, "high"),
  row("5/8", 0.688, 1.75, 0.134, "high"),
  row("3/4", 0.812, 2, 0.148, "high"),
  row("7/8", 0.938, 2.25, 0.165, "medium-high"),
  row("1", 1.062, 2.5, 0.165, "medium-high"),
  row("1-1/8", 1.25, 2.75, 0.165, "from memory", MEMORY),
  row("1-1/4", 1.375, 3, 0.165, "medium", PART),
  row("1-3/8", 1.5, 3.25, 0.18, "from memory", MEMORY),
  row("1-1/2", 1.625, 3.5, 0.18, "medium-high"),
];

const single: readonly WasherRow[] = [
  row("1-3/4", 1.875, 4, 0.18, "from memory", MEMORY),
  row("2", 2.125, 4.5, 0.18, "from memory", MEMORY),
  row("2-1/4", 2.375, 4.75, 0.22, "from memory", MEMORY),
  row("2-1/2", 2.625, 5, 0.238, "from memory", MEMORY),
  row("2-3/4", 2.875, 5.25, 0.259, "from memory", MEMORY),
  row("3", 3.125, 5.5, 0.284, "from memory", PART),
];

/** What is furnished when the order does not name a series: narrow, and the one series above 1-1/2 in. */
export const f844Washers: StandardTable<WasherRow> = {
  edition: "ASTM F844",
  clause: "plain washers, narrow unless specified (ASME B18.21.1 Type A)",
  rows: [...narrow, ...single],
};

/** The narrow series, named, and the one series above 1-1/2 in. */
export const f844NarrowWashers: StandardTable<WasherRow> = {
  edition: "ASTM F844 narrow",
  clause: "plain washers, narrow (ASME B18.21.1 Type A)",
  rows: [...narrow, ...single],
};

/** The wide series, and the one series above 1-1/2 in. */
export const f844WideWashers: StandardTable<WasherRow> = {
  edition: "ASTM F844 wide",
  clause: "plain washers, wide (ASME B18.21.1 Type A)",
  rows: [...wide, ...single],
};

function row(
  size: string,
  inside: number,
  outside: number,
  thickness: number,
  confidence: Confidence,
  source = SOURCE,
): WasherRow {
  return asmeWasher(size, inside, outside, thickness, source, confidence);
}
