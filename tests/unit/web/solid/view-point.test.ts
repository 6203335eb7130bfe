/** From where a solid is seen, and which of its lines show. */
import { describe, expect, it } from "vitest";
import type { LiveShell } from "../../../../src/tasks/live/solid.js";
import { linesOf } from "../../../../src/web/solid/lines.js";
import { between, namedViewPoint, turned, zoomed } from "../../../../src/web/solid/view-point.js";

describe("view points", () => {
  it.each([
    // plan north along +Y: the eye at +Y is half a turn from -Y
    [90, 180, 90],
    // plan north along +X
    [0, 90, 0],
    [null, 180, 90],
  ])("stand at north %s degrees, and at the east", (north, fromNorth, fromSide) => {
    expect(namedViewPoint("north", north).around).toBe(fromNorth);
    expect(namedViewPoint("side", north).around).toBe(fromSide);
  });

  it("do not turn over", () => {
    expect(turned(namedViewPoint("slant", null), 0, 500).above).toBe(90);
    expect(turned(namedViewPoint("slant", null), 0, -500).above).toBe(-90);
  });

  it("keep the place under the pointer when they come nearer", () => {
    const at = { right: 0.25, up: -0.1 };
    const before = { ...namedViewPoint("top", null), right: 0.05, up: 0.02 };
    const after = zoomed(before, 1.5, at);
    // a point of the solid that lay at `at` lies there still
    expect((at.right - after.right) / after.zoom).toBeCloseTo((at.right - before.right) / before.zoom, 12);
    expect((at.up - after.up) / after.zoom).toBeCloseTo((at.up - before.up) / before.zoom, 12);
  });

  it("go the short way round, also after many turns", () => {
    const from = { ...namedViewPoint("top", null), around: 725 };
    expect(between(from, { ...from, around: 350 }, 1).around).toBeCloseTo(710, 9);
    expect(between(from, { ...from, around: 20 }, 0.5).around).toBeCloseTo(732.5, 9);
  });
});

/** An upright prism of so many sides. */
function prism(sides: number): LiveShell {
  const ring = Array.from({ length: sides }, (_, i) => [
    Math.cos((2 * Math.PI * i) / sides),
    Math.sin((2 * Math.PI * i) / sides),
  ]);
  const corners = [0, 1].flatMap((z) => ring.flatMap(([x = 0, y = 0]) => [x, y, z]));
  const walls = ring.flatMap((_, i) => {
    const next = (i + 1) % sides;
    return [i, next, next + sides, i, next + sides, i + sides];
  });
  const fan = Array.from({ length: sides - 2 }, (_, i) => i + 1);
  const ends = fan.flatMap((i) => [0, i + 1, i, sides, sides + i, sides + i + 1]);
  return {
    ...{ part: "rod", name: "prism" },
    corners: Float32Array.from(corners),
    triangles: Uint32Array.from([...walls, ...ends]),
  };
}

describe("lines of a shell", () => {
  it("are the edges of a hexagon nut: six above, six below, six upright, none within a face", () => {
    const { round, from } = linesOf([prism(6)], []);
    expect(round.length).toBe(18);
    expect([...round].every((each) => each === 0)).toBe(true);
    expect(from.length).toBe(54);
  });

  it("of a round rod are its rims, and its sides as contours only", () => {
    const { round } = linesOf([prism(40)], []);
    expect([...round].filter((each) => each === 0).length).toBe(80);
    expect([...round].filter((each) => each === 1).length).toBe(40);
  });
});
