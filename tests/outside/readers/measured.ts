/** Measures of what an outside reader makes of a cut file, by plane geometry of the test's own. File's unit, y up. */

export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A polyline of points (straight), or an arc that runs counter-clockwise from angle `start` to `end` (radians). */
export type Edge =
  | { readonly kind: "points"; readonly points: readonly XY[] }
  | {
      readonly kind: "arc";
      readonly center: XY;
      readonly radius: number;
      readonly start: number;
      readonly end: number;
    };

/** What is drawn on the cut layers (edges, circles), and everything on all layers for the extents. */
export interface Drawn {
  readonly cutEdges: readonly Edge[];
  readonly circles: readonly (XY & { readonly diameter: number })[];
  readonly otherEdges: readonly Edge[];
}

/** What one outside reader says about one file; null where it has no word for it. */
export interface Measured {
  readonly path: string;
  /** What the reader itself objects to. */
  readonly faults: readonly string[];
  readonly unit: "in" | "mm" | null | undefined;
  readonly measurement: number | null | undefined;
  readonly headerExtent: readonly number[] | null;
  readonly extent: readonly number[];
  readonly circles: readonly (readonly [number, number, number])[] | null;
  readonly open: number;
  readonly pierces: number;
  readonly cutLength: number;
  readonly netArea: number;
}

export const UNIT_OF_INSUNITS: Readonly<Record<number, "in" | "mm">> = { 1: "in", 4: "mm" };

export function measureDrawn({
  cutEdges,
  circles,
  otherEdges,
}: Drawn): Pick<Measured, "extent" | "open" | "pierces" | "cutLength" | "netArea"> {
  const { closed, open } = chain(cutEdges);
  const areas = [
    ...closed.map((links) => Math.abs(links.reduce((sum, link) => sum + link, 0))),
    ...circles.map(({ diameter }) => (Math.PI * diameter * diameter) / 4),
  ];
  const length = cutEdges.reduce((sum, edge) => sum + lengthOf(edge), 0);
  const points = [...cutEdges, ...otherEdges].flatMap(reachOf);
  for (const { x, y, diameter } of circles) {
    points.push({ x: x - diameter / 2, y: y - diameter / 2 }, { x: x + diameter / 2, y: y + diameter / 2 });
  }
  const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
  return {
    extent: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
    open,
    pierces: areas.length,
    cutLength: circles.reduce((sum, { diameter }) => sum + Math.PI * diameter, length),
    netArea: 2 * Math.max(0, ...areas) - areas.reduce((sum, area) => sum + area, 0),
  };
}

/** The arc of a bulge (published DXF reference, group 42): tan of a quarter of the sweep, counter-clockwise positive. */
export function bulgeEdge(from: XY, to: XY, bulge: number): Edge {
  if (bulge === 0) return { kind: "points", points: [from, to] };
  const sweep = 4 * Math.atan(Math.abs(bulge));
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = chord / 2 / Math.sin(sweep / 2);
  const [a, b] = bulge > 0 ? [from, to] : [to, from];
  const heading = Math.atan2(b.y - a.y, b.x - a.x);
  const start = heading - Math.PI / 2 - sweep / 2;
  const center = { x: a.x - radius * Math.cos(start), y: a.y - radius * Math.sin(start) };
  return { kind: "arc", center, radius, start, end: start + sweep };
}

function sweepOf({ start, end }: Extract<Edge, { kind: "arc" }>): number {
  const full = 2 * Math.PI;
  return (((end - start) % full) + full) % full;
}

function at(edge: Extract<Edge, { kind: "arc" }>, angle: number): XY {
  return {
    x: edge.center.x + edge.radius * Math.cos(angle),
    y: edge.center.y + edge.radius * Math.sin(angle),
  };
}

function endsOf(edge: Edge): readonly [XY, XY] {
  if (edge.kind === "arc") return [at(edge, edge.start), at(edge, edge.end)];
  const [first, last] = [edge.points[0], edge.points.at(-1)];
  if (first === undefined || last === undefined) throw new Error("a polyline without points");
  return [first, last];
}

function lengthOf(edge: Edge): number {
  if (edge.kind === "arc") return edge.radius * sweepOf(edge);
  const { points } = edge;
  return points
    .slice(1)
    .reduce((sum, to, i) => sum + Math.hypot(to.x - (points[i]?.x ?? 0), to.y - (points[i]?.y ?? 0)), 0);
}

/** Area swept about 0,0 from start to end. */
function sweptBy(edge: Edge): number {
  const cross = (a: XY, b: XY) => (a.x * b.y - b.x * a.y) / 2;
  if (edge.kind === "points") {
    return edge.points.slice(1).reduce((sum, to, i) => sum + cross(edge.points[i] ?? to, to), 0);
  }
  const [from, to] = endsOf(edge);
  const { center, radius } = edge;
  return (radius * radius * sweepOf(edge) + center.x * (to.y - from.y) - center.y * (to.x - from.x)) / 2;
}

function reachOf(edge: Edge): readonly XY[] {
  if (edge.kind === "points") return edge.points;
  const quarters = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);
  const full = 2 * Math.PI;
  const met = quarters.filter((angle) => (((angle - edge.start) % full) + full) % full <= sweepOf(edge));
  return [...endsOf(edge), ...met.map((angle) => at(edge, angle))];
}

const AROUND = [0, -1, 1].flatMap((dx) => [0, -1, 1].map((dy) => [dx, dy] as const));

/** Names places: one within 1e-5 of an earlier one has its name, wherever rounding would part them. */
function startPlaces(): (place: XY) => string {
  const known = new Map<string, { readonly name: string; readonly at: XY }>();
  return (at) => {
    const [column, row] = [Math.round(at.x * 1e5), Math.round(at.y * 1e5)];
    const near = AROUND.map(([dx, dy]) => known.get(`${column + dx},${row + dy}`)).find(
      (each) => each !== undefined && Math.hypot(each.at.x - at.x, each.at.y - at.y) < 1e-5,
    );
    if (near !== undefined) return near.name;
    const name = `${column},${row}`;
    known.set(name, { name, at });
    return name;
  };
}

/** Chains edges whose ends agree to 1e-5; of each closed chain the swept areas, signed by the way it is run. */
function chain(edges: readonly Edge[]): { readonly closed: readonly (readonly number[])[]; readonly open: number } {
  const key = startPlaces();
  const ends = edges.map((edge) => endsOf(edge).map(key) as [string, string]);
  const byEnd = new Map<string, number[]>();
  ends.forEach((pair, index) => {
    for (const end of new Set(pair)) byEnd.set(end, [...(byEnd.get(end) ?? []), index]);
  });
  const unused = new Set(edges.keys());
  const closed: number[][] = [];
  let open = 0;
  for (const first of edges.keys()) {
    if (!unused.delete(first)) continue;
    const links = [sweptBy(edges[first] as Edge)];
    const start = ends[first]?.[0];
    let here = ends[first]?.[1];
    while (here !== start) {
      const next = byEnd.get(here ?? "")?.find((index) => unused.has(index));
      if (next === undefined) break;
      unused.delete(next);
      const forward = ends[next]?.[0] === here;
      links.push((forward ? 1 : -1) * sweptBy(edges[next] as Edge));
      here = ends[next]?.[forward ? 1 : 0];
    }
    if (here === start) closed.push(links);
    else open++;
  }
  return { closed, open };
}
