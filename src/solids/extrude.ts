/** Plates, rods and nuts are all what lies between rings, drawn up. */
import type { Ring, Solid, Triangle } from "./model.js";
import { nextCorners, triangulate } from "./triangulate.js";

/** Between two levels, millimetres, `low` under `high`; null where the rings bound no one thing. */
export function extrude(name: string, rings: readonly Ring[], low: number, high: number): Solid | null {
  const face = triangulate(rings);
  if (face === null) return null;
  const points = rings.flat();
  const up = points.length;
  const triangles: Triangle[] = [];
  for (const [a, b, c] of face) triangles.push([c, b, a]);
  for (const [a, b, c] of face) triangles.push([a + up, b + up, c + up]);
  for (const [from, to] of nextCorners(rings).entries())
    triangles.push([from, to, to + up], [from, to + up, from + up]);
  return { name, corners: [low, high].flatMap((z) => points.map(({ x, y }) => [x, y, z] as const)), triangles };
}
