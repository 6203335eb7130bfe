/** From where a solid is looked at: angles in degrees, and how large. Plain figures; `stage.ts` draws from them. */

/** Where the eye stands. */
export interface ViewPoint {
  /** Around the upright axis, counter-clockwise seen from the top; 0: the eye is at -Y, so that X runs right. */
  readonly around: number;
  /** Of the eye above the level plane; 90: from the top. */
  readonly above: number;
  /** Times the size at which the whole fills the room. */
  readonly zoom: number;
  /** By how much the middle is moved, in rooms of the screen: to the right and up. */
  readonly right: number;
  readonly up: number;
}

/** Views with a name. */
export type ViewPointName = "slant" | "top" | "north" | "side";

/** `north`: degrees counter-clockwise from +X of plan north; null where it is not known, and +Y stands for it. */
export function namedViewPoint(name: ViewPointName, north: number | null): ViewPoint {
  const whole = { zoom: 1, right: 0, up: 0 };
  const toNorth = (north ?? 90) + 90;
  switch (name) {
    case "slant":
      return { ...whole, around: -32, above: 28 };
    case "top":
      return { ...whole, around: 0, above: 90 };
    case "north":
      return { ...whole, around: toNorth, above: 0 };
    case "side":
      return { ...whole, around: toNorth - 90, above: 0 };
  }
}

const LEAST_ZOOM = 0.3;
const MOST_ZOOM = 40;

/** Turned by degrees; it never turns over. */
export function turned(from: ViewPoint, around: number, above: number): ViewPoint {
  return { ...from, around: from.around + around, above: Math.max(-90, Math.min(90, from.above + above)) };
}

/** Nearer by this factor, towards a place of the room: 0, 0 is its middle. */
export function zoomed(from: ViewPoint, by: number, at: { readonly right: number; readonly up: number }): ViewPoint {
  const zoom = Math.max(LEAST_ZOOM, Math.min(MOST_ZOOM, from.zoom * by));
  const real = zoom / from.zoom;
  return {
    ...from,
    zoom,
    right: at.right + (from.right - at.right) * real,
    up: at.up + (from.up - at.up) * real,
  };
}

/** Moved on the screen by parts of its room. */
export function moved(from: ViewPoint, right: number, up: number): ViewPoint {
  return { ...from, right: from.right + right, up: from.up + up };
}

/** Between two, the short way round; `share` 0 to 1. */
export function between(from: ViewPoint, to: ViewPoint, share: number): ViewPoint {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  const round = ((((to.around - from.around) % 360) + 540) % 360) - 180;
  return {
    around: from.around + round * share,
    above: mix(from.above, to.above),
    zoom: mix(from.zoom, to.zoom),
    right: mix(from.right, to.right),
    up: mix(from.up, to.up),
  };
}
