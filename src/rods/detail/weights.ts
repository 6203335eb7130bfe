/** Weights of rods and what goes on them, in kilograms, by their nominal sizes: chamfers, threads and zinc are left out. */
import type { Density } from "../../job/model/job.js";
import { type Length, millimetres, NM_PER_MM, nanometres, toMillimetres } from "../../units/length.js";
import { CUBIC_FOOT_IN_MM3, POUND_IN_KG } from "../../units/weight.js";

/** Of a volume in cubic millimetres. */
export function kilogramsOf(volume: number, { value, unit }: Density): number {
  const kilograms = unit === "lb/ft3" ? (volume / CUBIC_FOOT_IN_MM3) * value * POUND_IN_KG : (volume / 1e9) * value;
  return Math.round(kilograms * 1e6) / 1e6;
}

/** Of a round bar. */
export function weighBar(diameter: Length, length: Length, density: Density): number {
  return kilogramsOf(discArea(diameter) * toMillimetres(length), density);
}

/** The longest bar that weighs no more than this, in kilograms. */
export function lengthOfWeight(kilograms: number, diameter: Length, { value, unit }: Density): Length {
  const perVolume = unit === "lb/ft3" ? (value * POUND_IN_KG) / CUBIC_FOOT_IN_MM3 : value / 1e9;
  return nanometres(Math.floor((kilograms / perVolume / discArea(diameter)) * NM_PER_MM));
}

/** Of a nut: a hexagonal prism by its width across flats, with a hole of the thread's size. */
export function weighNut(acrossFlats: Length, height: Length, hole: Length, density: Density): number {
  const flats = toMillimetres(acrossFlats);
  const hexagon = (Math.sqrt(3) / 2) * flats * flats;
  return kilogramsOf((hexagon - discArea(hole)) * toMillimetres(height), density);
}

/** Of a round or square piece with a round hole; `size`: diameter or side. null where the hole takes the whole piece. */
export function weighPiece(
  { shape, size, thickness }: { readonly shape: "round" | "square"; readonly size: Length; readonly thickness: Length },
  hole: Length,
  density: Density,
): number | null {
  if (hole >= size) return null;
  const side = toMillimetres(size);
  const area = shape === "round" ? discArea(size) : side * side;
  return kilogramsOf((area - discArea(hole)) * toMillimetres(thickness), density);
}

/** Play of a hole in a washer or an end plate: 1/16 in, common practice. */
export const HOLE_PLAY: Length = millimetres(1.5875);

function discArea(diameter: Length): number {
  return (Math.PI / 4) * toMillimetres(diameter) ** 2;
}
