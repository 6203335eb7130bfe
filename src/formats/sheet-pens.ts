/** Line weights, dashes and inks of sheets, whatever they are written as. Black on white, so that a one-bit print says it all. */
import type { StrokeRole } from "../sheets/scene.js";

/** Width and dashes in millimetres of the paper; no dashes: drawn through. */
export interface Pen {
  readonly width: number;
  readonly dashes: readonly number[];
  readonly ink: Ink;
}

/** `held` is dark enough to print solid in one bit. */
export type Ink = "black" | "held" | "paper";

const SOLID: readonly number[] = [];
/** ISO 128: long dashes and a dot; long dashes and two, shorter and wider, to be told apart on a small plate. */
const CHAIN = [9, 1.2, 0.6, 1.2];
const PHANTOM = [4.5, 1, 1, 1, 1, 1];
const DASHED = [3, 1.2];

/** ISO 128: visible edges are twice as wide as narrow lines; the wide ones on small sheets are one step finer. */
const NARROW = 0.25;

interface LineGroup {
  readonly edge: number;
  readonly border: number;
}

const SMALL_SHEET: LineGroup = { edge: 0.5, border: 0.5 };
const LARGE_SHEET: LineGroup = { edge: 0.7, border: 0.7 };
const HOLE = 0.5;

/** The pens of a sheet of this width, millimetres. */
export function pensOf(width: number): Readonly<Record<StrokeRole, Pen>> {
  return width < 300 ? SMALL_PENS : LARGE_PENS;
}

const pen = (width: number, dashes = SOLID, ink: Ink = "black"): Pen => ({ width, dashes, ink });

function pensFor({ edge, border }: LineGroup): Readonly<Record<StrokeRole, Pen>> {
  return {
    outline: pen(edge),
    frame: pen(border),
    hole: pen(HOLE),
    "table-heavy": pen(HOLE),
    concrete: pen(0.35, DASHED),
    "base-plate": pen(0.35, PHANTOM),
    centre: pen(NARROW, CHAIN),
    held: pen(1, SOLID, "held"),
    dimension: pen(NARROW),
    extension: pen(NARROW),
    leader: pen(NARROW),
    scribe: pen(NARROW),
    fine: pen(NARROW),
    table: pen(NARROW),
  };
}

const SMALL_PENS = pensFor(SMALL_SHEET);
const LARGE_PENS = pensFor(LARGE_SHEET);
