/** The key in words. */
import { type Point, toLattice } from "../../geometry/index.js";
import type { Unit } from "../../units/index.js";
import { formatLength } from "../../units/index.js";
import type { Keyed } from "../model.js";

/** "corner cut 1/2 x 1-1/4 at +X +Y": legs along the edge nearer to x, then the other; a notch by its place, in a rim by its angle. */
export function keyWords({ kind, x, y, at, bare }: Keyed, unit: Unit): string {
  const say = (length: number) => formatLength(length, unit);
  if (kind !== "edge notch") return `${kind} ${say(x)} x ${say(y)} at the +X +Y corner`;
  if (bare.kind === "circle")
    return `edge notch ${say(x)} wide, ${say(y)} deep, upright flank ${angleWords(bare.center, at)}`;
  return `edge notch ${say(x)} wide, ${say(y)} deep at (${say(toLattice(at.x))}, ${say(toLattice(at.y))})`;
}

/** To 0.01 degrees. */
function angleWords(center: Point, at: Point): string {
  const turn = (Math.atan2(at.y - center.y, at.x - center.x) * 180) / Math.PI;
  return `at ${Math.round(((turn + 360) % 360) * 100) / 100}° counter-clockwise from +X`;
}

/** Its legs or its width and depth, for a callout: "1/2 × 1-1/4". */
export function keySize({ kind, x, y }: Keyed, unit: Unit): string {
  const size = `${formatLength(x, unit)} × ${formatLength(y, unit)}`;
  return kind === "edge notch" ? `${size} DEEP` : size;
}
