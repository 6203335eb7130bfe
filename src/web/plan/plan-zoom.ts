/** Where a plan lies in its window once it is drawn anew: what is in the middle of the window stays there. */
import type { ScreenLayout } from "../../tasks/live/plan-model.js";
import { DOTS_PER_MM } from "../sheet/places.js";
import { moved, type Size, type Zoom } from "../sheet/zoom.js";

/** What of a drawing says where it lies. */
export type Lying = Pick<ScreenLayout, "height" | "times" | "origin" | "scale">;

/** Dots of the window to a millimetre of the paper. */
export function dotsOf(drawing: Lying, times: number): number {
  return (DOTS_PER_MM * times) / drawing.times;
}

/** At first: the upper left corner of what is drawn, as it is drawn. */
export function firstLying({ height, times, box }: ScreenLayout, size: Size): Zoom {
  return moved({ times, x: -box.x0 * DOTS_PER_MM, y: (box.y1 - height) * DOTS_PER_MM }, 0, 0, size);
}

/** `times`: what the drawing that comes is looked at with. */
export function redrawn(now: Zoom, before: Lying, after: Lying, times: number, size: Size): Zoom {
  const middle = { x: size.width / 2, y: size.height / 2 };
  const [from, to] = [dotsOf(before, now.times), dotsOf(after, times)];
  const plan = {
    x: ((middle.x - now.x) / from - before.origin.x) / before.scale,
    y: (before.height - (middle.y - now.y) / from - before.origin.y) / before.scale,
  };
  const lying = {
    times,
    x: middle.x - (after.origin.x + plan.x * after.scale) * to,
    y: middle.y - (after.height - after.origin.y - plan.y * after.scale) * to,
  };
  return moved(lying, 0, 0, size);
}
