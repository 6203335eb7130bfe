/** Drawings by hand, with what our own cut files never hold: blocks, splines, ellipses, old polylines. */
import type { Draw } from "./model.js";

type Tag = readonly [number, string | number];

/** A drawing with a plate, holes, and a few entities of every kind. */
export function curvedDrawing(random: Draw): string {
  const kinds = [circle, ellipse, spline, oldPolyline, insert, line, arc];
  const parts = Array.from({ length: 1 + random.below(9) }, () => random.pick(kinds)(random));
  return drawing(
    [box(400, 300), ...parts],
    [[0, "BLOCK"], [2, "HOLE"], [10, 0], [20, 0], ...circle(random), [0, "ENDBLK"]],
  );
}

/** Tags as a file with a header in millimetres. */
export function drawing(entities: readonly (readonly Tag[])[], blocks: readonly Tag[] = []): string {
  const tags: Tag[] = [
    ...([
      [0, "SECTION"],
      [2, "HEADER"],
      [9, "$ACADVER"],
      [1, "AC1015"],
      [9, "$INSUNITS"],
      [70, 4],
      [0, "ENDSEC"],
    ] as const),
    ...([[0, "SECTION"], [2, "BLOCKS"], ...blocks, [0, "ENDSEC"], [0, "SECTION"], [2, "ENTITIES"]] as const),
    ...entities.flat(),
    ...([
      [0, "ENDSEC"],
      [0, "EOF"],
    ] as const),
  ];
  return `${tags.map(([code, value]) => `${code}\n${value}`).join("\n")}\n`;
}

/** A closed rectangle from 0, 0. */
export function box(x: number, y: number): readonly Tag[] {
  return polyline([
    [0, 0],
    [x, 0],
    [x, y],
    [0, y],
  ]);
}

/** A closed polyline. */
export function polyline(points: readonly (readonly [number, number])[]): readonly Tag[] {
  const vertices = points.flatMap(([x, y]): Tag[] => [
    [10, x],
    [20, y],
  ]);
  return [[0, "LWPOLYLINE"], [8, "CUT"], [90, points.length], [70, 1], ...vertices];
}

const at = (random: Draw): number => 20 + random.below(2600) / 10;

function circle(random: Draw): readonly Tag[] {
  return [
    [0, "CIRCLE"],
    [8, "CUT"],
    [10, at(random)],
    [20, at(random)],
    [40, 1 + random.below(20)],
  ];
}

function line(random: Draw): readonly Tag[] {
  return [
    [0, "LINE"],
    [8, "CUT"],
    [10, at(random)],
    [20, at(random)],
    [11, at(random)],
    [21, at(random)],
  ];
}

function arc(random: Draw): readonly Tag[] {
  const turn = (): number => random.below(360);
  return [
    [0, "ARC"],
    [8, "CUT"],
    [10, at(random)],
    [20, at(random)],
    [40, 1 + random.below(20)],
    [50, turn()],
    [51, turn()],
  ];
}

function ellipse(random: Draw): readonly Tag[] {
  const place: Tag[] = [
    [10, at(random)],
    [20, at(random)],
    [11, 1 + random.below(20)],
    [21, random.below(3)],
  ];
  return [
    [0, "ELLIPSE"],
    [8, "CUT"],
    ...place,
    [40, random.pick([1, 0.5, 0])],
    [41, 0],
    [42, random.pick([6.283185307179586, 3])],
  ];
}

function spline(random: Draw): readonly Tag[] {
  const degree = 1 + random.below(5);
  const count = degree + 1 + random.below(6);
  const knots = Array.from({ length: count + degree + 1 }, (_, i) => Math.min(Math.max(0, i - degree), count - degree));
  const points = Array.from({ length: count }, (): Tag[] => [
    [10, at(random)],
    [20, at(random)],
  ]);
  return [[0, "SPLINE"], [8, "CUT"], [71, degree], ...knots.map((knot): Tag => [40, knot]), ...points.flat()];
}

function oldPolyline(random: Draw): readonly Tag[] {
  const vertex = (): Tag[] => [
    [0, "VERTEX"],
    [8, "CUT"],
    [10, at(random)],
    [20, at(random)],
    [42, random.pick([0, 1, -0.5])],
  ];
  return [[0, "POLYLINE"], [8, "CUT"], [66, 1], [70, 1], ...vertex(), ...vertex(), ...vertex(), [0, "SEQEND"]];
}

function insert(random: Draw): readonly Tag[] {
  const scale = random.pick([1, -1, 2]);
  const rows: Tag[] = [
    [70, 1 + random.below(4)],
    [71, 1 + random.below(4)],
    [44, 30],
    [45, 30],
  ];
  return [
    [0, "INSERT"],
    [8, "CUT"],
    [2, "HOLE"],
    [10, at(random)],
    [20, at(random)],
    [41, scale],
    [42, scale],
    ...rows,
  ];
}
