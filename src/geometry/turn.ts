/** Cosine and sine of degrees, exact at multiples of 30 and 45 and exactly symmetric from octant to octant. */

/** Cosine and sine of one angle. */
export interface Turn {
  readonly cos: number;
  readonly sin: number;
}

/**
 * The turn through `numerator / denominator` degrees counter-clockwise. The angle is folded into the first octant before
 * any division, so that mirrored positions of a bolt circle get the very same figures.
 */
export function turnOf(numerator: number, denominator = 1): Turn {
  const full = 360 * denominator;
  const angle = ((numerator % full) + full) % full;
  if (angle > full / 2) return mirrorY(turnOf(full - angle, denominator));
  if (angle > full / 4) return mirrorX(turnOf(full / 2 - angle, denominator));
  if (angle > full / 8) return swap(turnOf(full / 4 - angle, denominator));
  return firstOctant(angle / denominator);
}

function mirrorX({ cos, sin }: Turn): Turn {
  return { cos: -cos + 0, sin };
}

function mirrorY({ cos, sin }: Turn): Turn {
  return { cos, sin: -sin + 0 };
}

function swap({ cos, sin }: Turn): Turn {
  return { cos: sin, sin: cos };
}

function firstOctant(degrees: number): Turn {
  if (degrees === 0) return { cos: 1, sin: 0 };
  if (degrees === 30) return { cos: Math.sqrt(3) / 2, sin: 0.5 };
  if (degrees === 45) return { cos: Math.SQRT1_2, sin: Math.SQRT1_2 };
  const radians = (degrees * Math.PI) / 180;
  return { cos: Math.cos(radians), sin: Math.sin(radians) };
}

/** The same direction in degrees from 0 up to, not including, 360. */
export function wholeTurn(degrees: number): number {
  return ((degrees % 360) + 360) % 360;
}
