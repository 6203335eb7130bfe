/** The key in words. */
import { toLattice } from "../../geometry/index.js";
import type { Unit } from "../../units/index.js";
import { formatDegrees, formatLength } from "../../units/index.js";
import type { Keyed } from "../model.js";

/**
 * "corner cut 1/2 x 1-1/4 at the +X +Y corner": legs along the edge nearer to x, then the other; a notch by its place, on a rim
 * by the angle of its upright flank, counter-clockwise from +X.
 */
export function keyWords(keyed: Keyed, unit: Unit): string {
  const { kind, x, y } = keyed;
  const say = (length: number) => formatLength(length, unit);
  if (kind !== "edge notch") return `${kind} ${say(x)} x ${say(y)} at the +X +Y corner`;
  return `edge notch ${say(x)} wide, ${say(y)} deep at ${placeWords(keyed, say)}`;
}

function placeWords({ at, bare }: Keyed, say: (length: number) => string): string {
  if (bare.kind !== "circle") return `(${say(toLattice(at.x))}, ${say(toLattice(at.y))})`;
  const degrees = (Math.atan2(at.y - bare.center.y, at.x - bare.center.x) * 180) / Math.PI;
  return `${formatDegrees((degrees + 360) % 360, 2)} from +X, counter-clockwise`;
}

/** Its legs or its width and depth, for a callout: "1/2 × 1-1/4". */
export function keySize({ kind, x, y }: Keyed, unit: Unit): string {
  const size = `${formatLength(x, unit)} × ${formatLength(y, unit)}`;
  return kind === "edge notch" ? `${size} DEEP` : size;
}
