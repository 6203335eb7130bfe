/** What is in the middle of the window stays there when the plan is drawn anew. */
import { describe, expect, it } from "vitest";
import { dotsOf, type Lying, redrawn } from "../../../../src/web/plan/plan-zoom.js";

const SIZE = { width: 800, height: 600 };

/** Paper of so many times a room of 200 x 150 mm, plan 0,0 at its own place. */
function paper(times: number, x: number, y: number): Lying {
  return { times, height: 150 * times, origin: { x, y }, scale: 0.004 * times };
}

/** The point of the plan in the middle of the window. */
function middle(drawing: Lying, zoom: { readonly times: number; readonly x: number; readonly y: number }) {
  const dots = dotsOf(drawing, zoom.times);
  return {
    x: ((SIZE.width / 2 - zoom.x) / dots - drawing.origin.x) / drawing.scale,
    y: (drawing.height - (SIZE.height / 2 - zoom.y) / dots - drawing.origin.y) / drawing.scale,
  };
}

describe("a plan that is drawn anew", () => {
  it.each([
    [1, 2, -300, -200],
    [3, 2.5, -500, -400],
    [2, 2, -120, -480],
  ])("at %d times instead of %d keeps the middle of the window", (from, to, x, y) => {
    const [before, after] = [paper(from, 40, 30), paper(to, 44, 27)];
    const zoom = { times: 2.2, x, y };
    const now = redrawn(zoom, before, after, 2.2, SIZE);
    const [was, is] = [middle(before, zoom), middle(after, now)];
    expect(is.x).toBeCloseTo(was.x, 6);
    expect(is.y).toBeCloseTo(was.y, 6);
  });

  it("covers its window, whatever was in the middle", () => {
    const now = redrawn({ times: 1, x: 0, y: 0 }, paper(1, 40, 30), paper(1, 90, 30), 1, SIZE);
    expect(now).toEqual({ times: 1, x: 0, y: 0 });
  });
});
