/** Drill list of a plywood template: what a carpenter sets out and drills, from two edges and from the working point. */

import { millimetresInUnit } from "../summary/summarize.js";
import type { Hole, Plate, PlateMeasures } from "../template/model.js";
import type { Length, Unit } from "../units/length.js";
import { toUnit } from "../units/length.js";
import type { CsvCell } from "./csv-cells.js";
import { writeCsvRows } from "./csv-cells.js";

/** Headings; x and y are from the working point, right and up as seen from above; the edges are those of the board. */
const DRILL_COLUMNS = [
  "template",
  "revision",
  "quantity",
  "tag",
  "role",
  "do",
  "x",
  "y",
  "from left edge",
  "from lower edge",
  "diameter",
  "width",
  "height",
  "corner radius",
  "rod",
  "board thickness",
  "unit",
] as const;

/** One row a hole or opening, in the plate's order, after one row for the board itself. */
export function writeDrillList(plate: Plate, measures: PlateMeasures, unit: Unit): string {
  const { extent } = measures;
  const inUnit = (length: number): number => millimetresInUnit(length, unit);
  const start: CsvCell[] = [plate.mark, plate.revision, plate.quantity];
  const end: CsvCell[] = [toUnit(plate.thickness, unit), unit];
  const board: CsvCell[] = [
    ...start,
    "BOARD",
    "outline",
    plate.outlineKind === "circle" ? "cut round" : "cut to outline",
    ...[inUnit(extent.x0), inUnit(extent.y0), 0, 0],
    null,
    ...[inUnit(extent.x1 - extent.x0), inUnit(extent.y1 - extent.y0), null, null],
    ...end,
  ];
  const rows = plate.holes.map((hole): CsvCell[] => [
    ...start,
    hole.tag,
    hole.role,
    hole.made === "drill" ? "drill" : "cut out",
    inUnit(hole.center.x),
    inUnit(hole.center.y),
    inUnit(hole.center.x - extent.x0),
    inUnit(hole.center.y - extent.y0),
    ...sizeCells(hole, (length) => toUnit(length, unit)),
    hole.rod?.size ?? null,
    ...end,
  ]);
  return writeCsvRows([DRILL_COLUMNS, board, ...rows]);
}

function sizeCells({ shape }: Hole, size: (length: Length) => number): CsvCell[] {
  return shape.kind === "circle"
    ? [size(shape.diameter), null, null, null]
    : [null, size(shape.width), size(shape.height), size(shape.radius)];
}
