/** The hole table: where each hole stands from the working point, its size, and how it is made. */
import type { Hole } from "../template/model.js";
import type { Unit } from "../units/index.js";
import { once, onceFor } from "../units/once.js";
import { coordinate, sizeText } from "./callouts.js";
import { type ChainMode, type Located, unlocated } from "./located.js";
import { originName, type SheetRequest } from "./request.js";
import type { TableText } from "./table.js";
import { unitWord } from "./unit-word.js";

const NONE: ReadonlySet<number> = new Set();

/** A hole table is needed with more than 8 holes, more than 2 sizes, or a hole that chains of this mode and callouts do not locate. */
export function needsHoleTable(request: Located, mode: ChainMode): boolean {
  return needOf(request)(mode);
}

const needOf = onceFor((request: Located) => once((mode: ChainMode) => isNeeded(request, mode)));

function isNeeded(request: Located, mode: ChainMode): boolean {
  const { plate, job } = request;
  if (plate.holes.length > 8 || unlocated(request, mode).length > 0) return true;
  return new Set(plate.holes.map((hole) => sizeText(hole, job.unit))).size > 2;
}

/** Rows `from` to `to` of the hole table; the count stands under the last part. */
export function holeTable(request: SheetRequest, from: number, to: number): TableText {
  const { plate, job } = request;
  const rows = plate.holes.slice(from, to).map((hole) => holeRow(hole, job.unit));
  const last = to >= plate.holes.length;
  return {
    name: "hole-table",
    heading:
      from === 0 ? `HOLE TABLE (${unitWord(job.unit)} FROM ${originName(request.piece)})` : "HOLE TABLE (CONTINUED)",
    columns: [
      { title: "TAG", share: 0.12, align: "start" },
      { title: "X", share: 0.19, align: "end" },
      { title: "Y", share: 0.19, align: "end" },
      { title: "ROD", share: 0.12, align: "end" },
      { title: "HOLE", share: 0.24, align: "end" },
      { title: "MADE", share: 0.14, align: "end" },
    ],
    rows,
    foot: last ? [countWords(plate.holes)] : [],
    under: [],
    strong: NONE,
  };
}

function holeRow(hole: Hole, unit: Unit): readonly string[] {
  const { tag, center, rod, made } = hole;
  return [
    tag,
    coordinate(center.x, unit),
    coordinate(center.y, unit),
    rod?.size ?? "",
    tableSize(hole, unit),
    made.toUpperCase(),
  ];
}

/** Without the radius of its corners, which the callout has, where the sides are long figures: they take the rod's room. */
function tableSize(hole: Hole, unit: Unit): string {
  const size = sizeText(hole, unit);
  if (size.length <= LONGEST_SIZE) return size;
  const sides = (size.split(",")[0] ?? size).replaceAll(" ", "");
  return sides.length <= LONGEST_SIDES ? sides : "SEE CALLOUT";
}

const LONGEST_SIZE = 14;
const LONGEST_SIDES = 16;

function countWords(holes: readonly Hole[]): string {
  const drilled = holes.filter(({ made }) => made === "drill").length;
  const parts = [
    ...(holes.length > drilled ? [`${holes.length - drilled} CUT`] : []),
    ...(drilled > 0 ? [`${drilled} DRILLED`] : []),
  ];
  return `COUNT ${holes.length}: ${parts.join(", ")}`;
}
