/**
 * A reader of cut files that shares no code with the program: group codes by pairs of lines, circles, lines, arcs and bulges.
 * It reads what a controller would cut and nothing else; anything it does not know makes it throw.
 */

/** A circle that is cut. */
export interface CutCircle {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** What a layer draws. */
export interface LayerContent {
  readonly circles: readonly CutCircle[];
  /** Lines and arcs, in the file's order. */
  readonly arcs: readonly Arc[];
}

/** What lines and arcs that join into one contour enclose: area without sign, and the box around them. */
export interface Enclosed {
  readonly area: number;
  readonly box: readonly [number, number, number, number];
}

type Tags = readonly (readonly [number, string])[];

/** A line, or an arc by its bulge. */
export interface Arc {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly bulge: number;
}

/** The content of each layer of the ENTITIES section. */
export function readCut(text: string): ReadonlyMap<string, LayerContent> {
  const layers = new Map<string, { circles: CutCircle[]; arcs: Arc[] }>();
  for (const [type, tags] of entitiesOf(text)) {
    const name = textOf(tags, 8) ?? "";
    const layer = layers.get(name) ?? { circles: [], arcs: [] };
    layers.set(name, layer);
    take(type, tags, layer);
  }
  return layers;
}

function textOf(tags: Tags, code: number): string | undefined {
  return tags.find(([each]) => each === code)?.[1];
}

function* entitiesOf(text: string): Generator<readonly [string, Tags]> {
  const lines = text.split(/\r?\n/);
  let section = "";
  let open: [string, (readonly [number, string])[]] = ["", []];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [code, value] = [Number(lines[i]), (lines[i + 1] ?? "").trim()];
    if (code !== 0) {
      open[1].push([code, value]);
      if (open[0] === "SECTION" && code === 2) section = value;
      continue;
    }
    if (section === "ENTITIES" && open[0] !== "SECTION") yield open;
    if (value === "ENDSEC") section = "";
    open = [value, []];
  }
}

function take(type: string, tags: Tags, layer: { circles: CutCircle[]; arcs: Arc[] }): void {
  const at = (code: number): number => Number(textOf(tags, code));
  switch (type) {
    case "CIRCLE":
      layer.circles.push({ x: at(10), y: at(20), diameter: 2 * at(40) });
      break;
    case "LINE":
      layer.arcs.push({ x0: at(10), y0: at(20), x1: at(11), y1: at(21), bulge: 0 });
      break;
    case "ARC":
      layer.arcs.push(arcOf(at(10), at(20), at(40), at(50), at(51)));
      break;
    case "LWPOLYLINE":
      layer.arcs.push(...polyline(tags));
      break;
    case "POINT":
      break;
    default:
      throw new Error(`a cut file with ${type}`);
  }
}

function arcOf(x: number, y: number, radius: number, start: number, end: number): Arc {
  const [a, b] = [(start * Math.PI) / 180, (end * Math.PI) / 180];
  const sweep = (((b - a) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const at = (angle: number): [number, number] => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  const [[x0, y0], [x1, y1]] = [at(a), at(b)];
  return { x0, y0, x1, y1, bulge: Math.tan(sweep / 4) };
}

/** A bulge belongs to the vertex before it. */
function polyline(tags: Tags): Arc[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let closed = false;
  for (const [code, value] of tags) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number(value), y: 0, bulge: 0 });
    else if (code === 70) closed = Number(value) % 2 === 1;
    else if (last !== undefined && code === 20) last.y = Number(value);
    else if (last !== undefined && code === 42) last.bulge = Number(value);
  }
  const ends = closed ? vertices : vertices.slice(0, -1);
  return ends.map(({ x, y, bulge }, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? { x, y };
    return { x0: x, y0: y, x1: next.x, y1: next.y, bulge };
  });
}

/** Joined end to end, whichever way each is drawn; extents with what arcs reach beyond their ends, sampled finely. */
export function measure(arcs: readonly Arc[]): Enclosed {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  let area = 0;
  for (const arc of inOrder(arcs)) {
    const chord = Math.hypot(arc.x1 - arc.x0, arc.y1 - arc.y0);
    const sweep = 4 * Math.atan(arc.bulge);
    const radius = sweep === 0 ? 0 : chord / (2 * Math.sin(sweep / 2));
    area += (arc.x0 * arc.y1 - arc.x1 * arc.y0) / 2 + (radius * radius * (sweep - Math.sin(sweep))) / 2;
    for (const [x, y] of sampled(arc)) {
      [x0, y0] = [Math.min(x0, x), Math.min(y0, y)];
      [x1, y1] = [Math.max(x1, x), Math.max(y1, y)];
    }
  }
  return { area: Math.abs(area), box: [x0, y0, x1, y1] };
}

function sampled({ x0, y0, x1, y1, bulge }: Arc): readonly (readonly [number, number])[] {
  const ends = [[x0, y0] as const, [x1, y1] as const];
  if (bulge === 0) return ends;
  const along = (1 - bulge * bulge) / (4 * bulge);
  const [cx, cy] = [(x0 + x1) / 2 - (y1 - y0) * along, (y0 + y1) / 2 + (x1 - x0) * along];
  const [start, sweep, radius] = [Math.atan2(y0 - cy, x0 - cx), 4 * Math.atan(bulge), Math.hypot(x0 - cx, y0 - cy)];
  const quarters = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2).filter((angle) => isSwept(angle, start, sweep));
  return [...ends, ...quarters.map((angle) => [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)] as const)];
}

function isSwept(angle: number, start: number, sweep: number): boolean {
  const whole = 2 * Math.PI;
  const turn = sweep > 0 ? angle - start : start - angle;
  return ((turn % whole) + whole) % whole <= Math.abs(sweep);
}

function inOrder(arcs: readonly Arc[]): readonly Arc[] {
  const left = [...arcs];
  const ordered: Arc[] = [];
  let last = left.shift();
  while (last !== undefined) {
    ordered.push(last);
    const { x1, y1 } = last;
    const isAt = (x: number, y: number): boolean => Math.hypot(x - x1, y - y1) < 1e-4;
    const at = left.findIndex((arc) => isAt(arc.x0, arc.y0) || isAt(arc.x1, arc.y1));
    const [next] = at < 0 ? [] : left.splice(at, 1);
    last = next === undefined || isAt(next.x0, next.y0) ? next : turned(next);
  }
  if (left.length > 0) throw new Error(`${left.length} lines of an outline do not join`);
  return ordered;
}

function turned({ x0, y0, x1, y1, bulge }: Arc): Arc {
  return { x0: x1, y0: y1, x1: x0, y1: y0, bulge: -bulge };
}
