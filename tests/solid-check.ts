/** An own look at the bytes of an STL, which knows nothing of how they were made: triangles, edges, shells, volume. */
import { groupBy } from "../src/units/group-by.js";

export type Spot = readonly [number, number, number];

export interface Facet {
  readonly normal: Spot;
  readonly corners: readonly [Spot, Spot, Spot];
}

export interface Shell {
  /** Handles: 0 of a ball, 1 of a ring; by Euler, V - E + F = 2 - 2g. */
  readonly genus: number;
  readonly volume: number;
  readonly low: Spot;
  readonly high: Spot;
}

export function readStl(bytes: Uint8Array): { readonly head: string; readonly facets: readonly Facet[] } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * count) throw new Error(`${bytes.length} bytes for ${count} triangles`);
  const spot = (at: number): Spot => [0, 4, 8].map((by) => view.getFloat32(at + by, true)) as unknown as Spot;
  const facets = Array.from({ length: count }, (_, i): Facet => {
    const at = 84 + 50 * i;
    return { normal: spot(at), corners: [spot(at + 12), spot(at + 24), spot(at + 36)] };
  });
  return { head: new TextDecoder().decode(bytes.subarray(0, 80)), facets };
}

const minus = (a: Spot, b: Spot): Spot => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Spot, b: Spot): Spot => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Spot, b: Spot): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** What is wrong: triangles of no area, normals that do not stand on them, edges that are not used once each way. */
export function faultsOf(facets: readonly Facet[]): readonly string[] {
  const faults: string[] = [];
  const uses = new Map<string, number>();
  for (const { normal, corners } of facets) {
    const [a, b, c] = corners;
    const across = cross(minus(b, a), minus(c, a));
    const size = Math.sqrt(dot(across, across));
    if (!(size > 0)) faults.push(`no area at ${a.join()}`);
    if (!(dot(across, normal) > 0.999 * size)) faults.push(`normal at ${a.join()}`);
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = `${from.join()} ${to.join()}`;
      uses.set(key, (uses.get(key) ?? 0) + 1);
    }
  }
  for (const [key, count] of uses) {
    const back = key.split(" ").reverse().join(" ");
    if (count !== 1 || uses.get(back) !== 1) faults.push(`edge ${key}: ${count} and ${uses.get(back) ?? 0}`);
  }
  return faults;
}

/** Shells, parted by the edges that their triangles share, in the order of their first triangles. */
export function shellsOf(facets: readonly Facet[]): readonly Shell[] {
  const parent = facets.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while ((parent[at] ?? at) !== at) at = parent[at] ?? at;
    return at;
  };
  const byEdge = new Map<string, number>();
  facets.forEach(({ corners: [a, b, c] }, i) => {
    for (const ends of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = ends
        .map((end) => end.join())
        .sort()
        .join(" ");
      const other = byEdge.get(key);
      if (other === undefined) byEdge.set(key, i);
      else parent[root(i)] = root(other);
    }
  });
  return [...groupBy(facets.keys(), root).values()].map((shell) => shellOf(shell.flatMap((i) => facets[i] ?? [])));
}

function shellOf(facets: readonly Facet[]): Shell {
  const spots = new Map(facets.flatMap(({ corners }) => corners.map((corner) => [corner.join(), corner] as const)));
  const edges = (facets.length * 3) / 2;
  const all = [...spots.values()];
  const ends = (axis: 0 | 1 | 2) =>
    all.reduce(([low, high], spot) => [Math.min(low, spot[axis]), Math.max(high, spot[axis])] as const, [
      Infinity,
      -Infinity,
    ] as const);
  const [x, y, z] = [ends(0), ends(1), ends(2)];
  return {
    genus: 1 - (spots.size - edges + facets.length) / 2,
    volume: facets.reduce((sum, { corners: [a, b, c] }) => sum + dot(a, cross(b, c)), 0) / 6,
    low: [x[0], y[0], z[0]],
    high: [x[1], y[1], z[1]],
  };
}
