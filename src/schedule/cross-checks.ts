/** Cells that say the same in two ways, held against each other: a typist's slips. The ledger judges the steel. */
import type { Finding } from "../diagnostics/finding.js";
import { nameCell } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Length, Unit } from "../units/index.js";
import { formatWithUnit, parseCount, parseLength } from "../units/index.js";
import type { FoundTable, LeftOut } from "./model.js";
import type { RowBase } from "./row-bases.js";
import type { Taken } from "./sheet-cell.js";

/** Lengths of a base, or of a group of it, by their keys. */
class Lengths {
  constructor(
    private readonly values: readonly Taken[],
    readonly unit: Unit,
  ) {}

  find(key: string): Taken | undefined {
    return this.values.find((value) => value.key === key && value.origin !== "asked");
  }

  /** A thread's name gives its diameter. */
  of(key: string): Length | null {
    const node = this.find(key)?.node;
    if (node?.kind !== "scalar") return null;
    const thread = /^M ?(\d+)$/i.exec(node.text.trim())?.[1];
    const length = parseLength(thread === undefined ? node.text : `${thread} mm`, this.unit);
    return length.ok ? length.value : null;
  }

  show(length: number): string {
    return formatWithUnit(length, this.unit);
  }

  /** `18 in (E7)` */
  name(key: string): string {
    return `${this.show(this.of(key) ?? 0)} (${this.find(key)?.from.place.cell ?? ""})`;
  }
}

/** Doubts of a base: each names the cells that do not go together. */
export function baseDoubts(base: RowBase, unit: Unit): readonly Finding[] {
  return base.groups.flatMap(({ values }) => {
    const lengths = new Lengths([...base.own, ...values], unit);
    return [
      ...rodLength(lengths),
      ...plateSizes(lengths),
      ...(["x", "y"] as const).flatMap((axis) => edgeDistance(lengths, axis)),
      ...circleOnPlate(lengths),
      ...elevations(lengths),
    ];
  });
}

function doubt(value: Taken | undefined, code: string, message: string): readonly Finding[] {
  return value === undefined ? [] : [{ ...errorAt(value.from.place, code, message), severity: "warning" }];
}

/** What a rod has below its embedment, at most: a nut with the rod standing out of it (common practice). */
const DIAMETERS_BELOW = 4;

function rodLength(lengths: Lengths): readonly Finding[] {
  const [length, projection, embedment, diameter] = [
    lengths.of("rods.length"),
    lengths.of("rods.projection"),
    lengths.of("rods.embedment"),
    lengths.of("rods.diameter"),
  ];
  if (length === null || projection === null || embedment === null || diameter === null) return [];
  if (isHooked(lengths) || length <= projection + embedment + DIAMETERS_BELOW * diameter) return [];
  const message = `${lengths.show(length)} is longer than projection ${lengths.name("rods.projection")} and embedment ${lengths.name("rods.embedment")} account for, ${lengths.show(projection + embedment)}; it is used as read`;
  return doubt(lengths.find("rods.length"), "length-differs", message);
}

function isHooked(lengths: Lengths): boolean {
  const bottom = lengths.find("rods.bottom")?.node;
  return bottom?.kind === "map" && bottom.entries.some(({ value }) => value.kind === "scalar" && value.text === "hook");
}

/** A plate that holds its rods the other way round alone has its sides in the other order: an error. */
function plateSizes(lengths: Lengths): readonly Finding[] {
  const doubts = (["x", "y"] as const).flatMap((axis) => plateSize(lengths, axis));
  const [x, y] = [lengths.of("basePlate.x"), lengths.of("basePlate.y")];
  const isTurned = holds(lengths, "x", y) && holds(lengths, "y", x);
  if (doubts.length === 0 || !isTurned) return doubts;
  const rods = `${lengths.name("pattern.x")} in X by ${lengths.name("pattern.y")} in Y`;
  const message = `a plate of ${lengths.name("basePlate.x")} in X by ${lengths.name("basePlate.y")} in Y does not hold rods at ${rods}, and turned by 90 degrees it does: one of the two has X and Y in the other order`;
  const plate = lengths.find("basePlate.x");
  const hint = "write both in one order, X first, in the sheet or in the job as cells: { CELL: TEXT }";
  return plate === undefined ? [] : [errorAt(plate.from.place, "plate-turned", message, hint)];
}

function holds(lengths: Lengths, axis: "x" | "y", plate: Length | null): boolean {
  const [pattern, diameter] = [lengths.of(`pattern.${axis}`), lengths.of("rods.diameter")];
  return plate !== null && pattern !== null && plate >= pattern + (diameter ?? 0);
}

/** The rods' own radius from the edge of a plate about the working point, at least. */
function plateSize(lengths: Lengths, axis: "x" | "y"): readonly Finding[] {
  const [plate, pattern, diameter] = [`basePlate.${axis}`, `pattern.${axis}`, "rods.diameter"].map((key) =>
    lengths.of(key),
  );
  if (!plate || !pattern || lengths.find("basePlate.at") !== undefined) return [];
  if (plate >= pattern + (diameter ?? 0)) return [];
  const message = `${lengths.show(plate)} does not hold rods at ${lengths.name(`pattern.${axis}`)} in ${axis.toUpperCase()}: they stand outside the plate or cut its edge; it is used as read`;
  return doubt(lengths.find(`basePlate.${axis}`), "plate-size-differs", message);
}

function edgeDistance(lengths: Lengths, axis: "x" | "y"): readonly Finding[] {
  const own = `check.edge${axis.toUpperCase()}`;
  const key = lengths.find(own) === undefined ? "check.edge" : own;
  const [plate, pattern, edge] = [`basePlate.${axis}`, `pattern.${axis}`, key].map((each) => lengths.of(each));
  if (!plate || !pattern || !edge || lengths.find("basePlate.at") !== undefined) return [];
  if (plate === pattern + 2 * edge) return [];
  const message = `an edge of ${lengths.show(edge)} on both sides of ${lengths.name(`pattern.${axis}`)} makes a plate of ${lengths.show(pattern + 2 * edge)}, and ${lengths.name(`basePlate.${axis}`)} is written; the plate is used as read`;
  return doubt(lengths.find(key), "edge-differs", message);
}

function circleOnPlate(lengths: Lengths): readonly Finding[] {
  const [circle, diameter] = [lengths.of("pattern.diameter"), lengths.of("rods.diameter")];
  const key = ["basePlate.diameter", "basePlate.x", "basePlate.y"].find((each) => {
    const plate = lengths.of(each);
    return plate !== null && circle !== null && plate < circle + (diameter ?? 0) && each === "basePlate.diameter";
  });
  if (key === undefined) return [];
  const message = `${lengths.show(lengths.of(key) ?? 0)} does not hold rods on a circle of ${lengths.name("pattern.diameter")}: they stand outside the plate or cut its edge; it is used as read`;
  return doubt(lengths.find(key), "plate-size-differs", message);
}

/** A plate levelled on a setting plate stands higher by that plate: it is not held against the sum. */
function elevations(lengths: Lengths): readonly Finding[] {
  const [concrete, grout, plate] = ["check.topOfConcrete", "grout", "check.bottomOfPlate"].map((key) =>
    lengths.of(key),
  );
  const levelling = lengths.find("levelling")?.node;
  const isOnPlate = levelling?.kind === "scalar" && levelling.text === "plate";
  if (concrete === null || concrete === undefined || !grout || plate === null || plate === undefined || isOnPlate)
    return [];
  if (concrete + grout === plate) return [];
  const message = `${lengths.show(plate)} is not top of concrete ${lengths.name("check.topOfConcrete")} and grout ${lengths.name("grout")} together, ${lengths.show(concrete + grout)}; the grout is used as read`;
  return doubt(lengths.find("check.bottomOfPlate"), "elevations-differ", message);
}

/** The total that is written below the quantities, against their sum; of several, what each adds up is not known. */
export function totalDoubts({ leftOut, isTurned, sheet }: FoundTable, bases: readonly RowBase[]): readonly Finding[] {
  const counts = bases.flatMap(({ own }) => own.filter(({ key }) => key === "quantity"));
  const column = counts[0]?.from.column.found.cell;
  if (column === undefined || counts.length < bases.length) return [];
  const isBelow = ({ cell }: LeftOut) => (isTurned ? cell.line === column.line : cell.column === column.column);
  const totals = leftOut.filter((text) => text.why === "a total" && isBelow(text));
  return totals.length === 1 ? totals.flatMap(({ cell }) => totalDoubt(cell, counts, sheet)) : [];
}

function totalDoubt(cell: Cell, counts: readonly Taken[], sheet: string): readonly Finding[] {
  const total = parseCount(cell.text, 0, 100_000_000);
  const [first, last] = [counts[0]?.from, counts.at(-1)?.from];
  if (!total.ok || first === undefined || last === undefined) return [];
  const sum = counts.reduce((all, { node }) => all + countOf(node), 0);
  if (sum === total.value) return [];
  const place = { ...first.place, line: cell.line, column: cell.column, label: "total", cell: nameCell(sheet, cell) };
  const message = `${total.value} is written, and what stands above it (${first.place.cell ?? ""} to ${last.place.cell ?? ""}) makes ${sum}; the rows are used as read`;
  return [{ ...errorAt(place, "total-differs", message), severity: "warning" }];
}

function countOf(node: SourceNode): number {
  const count = node.kind === "scalar" ? parseCount(node.text, 0, 1_000_000) : null;
  return count?.ok ? count.value : 0;
}
