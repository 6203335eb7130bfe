/** AISC 360-22, Table J3.3M: bolt holes, in mm. */
import { millimetres } from "../../units/length.js";
import type { BoltHoleRow, BoltHoleRule } from "../bolt-holes.js";
import type { StandardTable } from "../model.js";

const SOURCE = "AISC 360-22 Table J3.3M";

/** Bolt, standard hole, oversized hole, short slot (width, length), long slot (width, length), note. */
export const aisc360MetricBoltHoles: StandardTable<BoltHoleRow> = {
  edition: "AISC 360-22M",
  clause: "Table J3.3M",
  rows: [
    row("M12", 14, 16, [14, 18], [14, 30], "M12 row appears only in 360-22"),
    row("M16", 18, 20, [18, 22], [18, 40]),
    row("M20", 22, 24, [22, 26], [22, 50]),
    row("M22", 24, 28, [24, 30], [24, 55]),
    row("M24", 27, 30, [27, 32], [27, 60], "clearance provided allows 1-in bolt if desirable"),
    row("M27", 30, 35, [30, 37], [30, 67]),
    row("M30", 33, 38, [33, 40], [33, 75]),
  ],
};

/** The rule row of the table, from M36 on. */
export const aisc360MetricBoltHoleRule: BoltHoleRule = {
  from: millimetres(36),
  standard: { factor: 1, add: millimetres(3) },
  oversized: { factor: 1, add: millimetres(8) },
  shortSlot: { width: { factor: 1, add: millimetres(3) }, length: { factor: 1, add: millimetres(10) } },
  longSlot: { width: { factor: 1, add: millimetres(3) }, length: { factor: 2.5, add: millimetres(0) } },
  source: SOURCE,
  confidence: "high",
  note: "",
};

type Sides = readonly [width: number, length: number];

function row(size: string, standard: number, oversized: number, short: Sides, long: Sides, note = ""): BoltHoleRow {
  return {
    size,
    diameter: millimetres(Number(size.slice(1))),
    standard: millimetres(standard),
    oversized: millimetres(oversized),
    shortSlot: { width: millimetres(short[0]), length: millimetres(short[1]) },
    longSlot: { width: millimetres(long[0]), length: millimetres(long[1]) },
    source: SOURCE,
    confidence: "high",
    note,
  };
}
