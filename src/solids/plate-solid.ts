/** A piece of a template as it is when all its holes are made. */
import type { Plate } from "../template/model.js";
import { toMillimetres } from "../units/length.js";
import { extrude } from "./extrude.js";
import { flatRings } from "./flat-rings.js";
import type { Solid } from "./model.js";

/** Farthest that a chord lies from its arc in the solid of a piece, millimetres. */
export const PIECE_CHORD = 0.01;

/** Several formats write the same solid. */
const made = new WeakMap<Plate, { readonly solid: Solid | null }>();

/**
 * With every hole, cut or drilled, at nominal size; underside at z 0, TOP up. null where holes or edge of a held plate meet,
 * so that it is no one thing.
 */
export function solidOfPlate(plate: Plate): Solid | null {
  const known = made.get(plate);
  if (known !== undefined) return known.solid;
  const solid = drawUp(plate, PIECE_CHORD);
  made.set(plate, { solid });
  return solid;
}

/** The same with chords as far from their arcs as is said. */
export function drawUp({ mark, region, holes, thickness }: Plate, chord: number): Solid | null {
  const inner = holes.map(({ contour }) => contour);
  return extrude(mark, flatRings(region.outer, inner, chord), 0, toMillimetres(thickness));
}
