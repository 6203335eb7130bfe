/** Straight lines cut off at a box. */
import type { Extent, Point } from "../../geometry/index.js";

/** A straight line inside a box, from end to end; null where it passes by. */
export function clipped(from: Point, to: Point, box: Extent): readonly [Point, Point] | null {
  let [enter, leave] = [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  for (const [step, low, high] of [
    [dx, box.x0 - from.x, box.x1 - from.x],
    [dy, box.y0 - from.y, box.y1 - from.y],
  ] as const) {
    if (step === 0) {
      if (low > 0 || high < 0) return null;
      continue;
    }
    enter = Math.max(enter, Math.min(low / step, high / step));
    leave = Math.min(leave, Math.max(low / step, high / step));
  }
  if (enter >= leave) return null;
  const point = (t: number) => ({ x: from.x + dx * t, y: from.y + dy * t });
  return [enter === 0 ? from : point(enter), leave === 1 ? to : point(leave)];
}
