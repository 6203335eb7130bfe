/** Lines of a rod from its side, lying with its top to the right: edges, threads (ISO 6410-1), lower end, break lines. */
import { at, fill, line, rectangle, stroke, strokeOf } from "../items.js";
import type { PaperPoint, PathPart, SceneItem } from "../scene.js";
import { BREAK_GAP, type FittedRod } from "./fit-rod.js";
import { onPaper, type RodShape, type ShapePart, type Span } from "./shape.js";

/** A rod with its place: `x` of its lowest point, `y` of its axis. */
export interface PlacedRod {
  readonly shape: RodShape;
  readonly fit: FittedRod;
  readonly x: number;
  readonly y: number;
}

/** Place on paper of a station, `off` the axis in millimetres of paper. */
export function spotOf({ fit, x, y }: PlacedRod, station: number, off = 0): PaperPoint {
  return at(x + fit.place(station), y + off);
}

/** All of it. `welded`: the lower nut is tack welded on its underside. */
export function rodLines(rod: PlacedRod, welded: boolean): readonly SceneItem[] {
  const { shape } = rod;
  const low = bendEnd(shape);
  return [
    strokeOf("outline", [...edges(rod, low), ...endLines(rod, low)]),
    strokeOf("fine", [...threadLines(rod, low), ...brokenEnds(rod)]),
    ...(shape.hook === null ? [] : [strokeOf("outline", hookParts(rod))]),
    ...shape.parts.flatMap((part) => partItems(rod, part)),
    ...(welded ? weldItems(rod) : []),
    centreLine(rod),
  ];
}

/** Where the straight of the rod begins: above the bend of a hook. */
function bendEnd({ hook, shank }: RodShape): number {
  return hook === null ? 0 : 2 * shank + hook.inside;
}

/** Half width of the rod at a station: of the thread, or of the bar beside it. */
export function halfAt({ shape, fit }: Pick<PlacedRod, "shape" | "fit">, station: number): number {
  const own = shape.parts.find(({ span: [from, to] }) => station >= from && station <= to);
  if (own !== undefined) return onPaper(own.half, fit.scale.factor);
  const isThread = shape.threads.some(([from, to]) => station >= from && station <= to);
  return onPaper(isThread ? shape.radius : shape.shank, fit.scale.factor);
}

/** Parts of a span that no nut or plate hides, in paper places, broken at the breaks. */
function seen({ shape, fit }: PlacedRod, [from, to]: Span): readonly Span[] {
  const gaps: readonly Span[] = [
    ...shape.parts.map(({ span: [a, b] }): Span => [fit.place(a), fit.place(b)]),
    ...fit.breaks.map((middle): Span => [middle - BREAK_GAP / 2, middle + BREAK_GAP / 2]),
  ];
  return gaps.reduce<readonly Span[]>(
    (spans, [a, b]) =>
      spans.flatMap(([low, high]): readonly Span[] => {
        if (b <= low || a >= high) return [[low, high]];
        return [...(a > low ? [[low, a] as const] : []), ...(b < high ? [[b, high] as const] : [])];
      }),
    [[fit.place(from), fit.place(to)]],
  );
}

function both({ x, y }: PlacedRod, spans: readonly Span[], half: number): readonly PathPart[] {
  return spans.flatMap(([from, to]) => [half, -half].map((off) => line(at(x + from, y + off), at(x + to, y + off))));
}

/** Chamfer of the ends, mm of paper. */
const CHAMFER = 0.5;

function edges(rod: PlacedRod, low: number): readonly PathPart[] {
  const { shape, fit } = rod;
  const factor = fit.scale.factor;
  const threads = shape.threads.map(([from, to]): Span => [Math.max(from, low), to]);
  const plain = threads
    .toSorted((a, b) => a[0] - b[0])
    .reduce<readonly Span[]>(
      (spans, [from, to]) =>
        spans.flatMap(([a, b]): readonly Span[] => [
          ...(from > a ? [[a, Math.min(from, b)] as const] : []),
          ...(to < b ? [[Math.max(to, a), b] as const] : []),
        ]),
      [[low, shape.top]],
    );
  const bare = shape.swedged === null ? plain : plain.map(([a, b]): Span => [Math.max(a, shape.swedged?.[1] ?? 0), b]);
  return [
    ...threads.flatMap((span) => both(rod, ends(rod, seen(rod, span)), onPaper(shape.radius, factor))),
    ...bare.flatMap((span) => both(rod, ends(rod, seen(rod, span)), onPaper(shape.shank, factor))),
    ...(shape.swedged === null ? [] : swedgedParts(rod, shape.swedged)),
  ];
}

/** Spans that stop short of the chamfers. */
function ends({ shape, fit }: PlacedRod, spans: readonly Span[]): readonly Span[] {
  const [low, high] = [shape.hook === null && shape.isEnded ? CHAMFER : 0, fit.place(shape.top) - CHAMFER];
  return spans.map(([from, to]) => [Math.max(from, low), Math.min(to, high)]);
}

/** End faces with their chamfers, and the lines across at which threads end. */
function endLines(rod: PlacedRod, low: number): readonly PathPart[] {
  const { shape, fit, x, y } = rod;
  const isLowerEnd = low === 0 && shape.isEnded && shape.swedged === null;
  const top = fit.place(shape.top);
  const limits = shape.threads.flat().filter((each) => each > low && each < shape.top);
  const hidden = (station: number) => shape.parts.some(({ span: [a, b] }) => station > a && station < b);
  const radius = onPaper(shape.radius, fit.scale.factor);
  return [
    ...face(at(x + top, y), -1, halfAt(rod, shape.top)),
    ...(isLowerEnd ? face(at(x, y), 1, halfAt(rod, 0)) : []),
    ...limits
      .filter((each) => !hidden(each))
      .map((each) => line(spotOf(rod, each, radius), spotOf(rod, each, -radius))),
  ];
}

function face({ x, y }: PaperPoint, inward: 1 | -1, half: number): readonly PathPart[] {
  const c = Math.min(CHAMFER, half / 2);
  const back = x + inward * CHAMFER;
  return [
    line(at(back, y + half), at(x, y + half - c)),
    line(at(x, y + half - c), at(x, y - half + c)),
    line(at(x, y - half + c), at(back, y - half)),
  ];
}

/** At the core, narrow, and never nearer to the edge than the eye tells (ISO 128: twice a wide line). */
function threadLines(rod: PlacedRod, low: number): readonly PathPart[] {
  const { shape, fit } = rod;
  const radius = onPaper(shape.radius, fit.scale.factor);
  const core = Math.min(onPaper(shape.core, fit.scale.factor), radius - LEAST_DEPTH);
  return shape.threads.flatMap(([from, to]) => both(rod, seen(rod, [Math.max(from, low), to]), core));
}

const LEAST_DEPTH = 0.7;

/** Zigzags at breaks, and where a lower end is not given. */
function brokenEnds(rod: PlacedRod): readonly PathPart[] {
  const { shape, fit, x } = rod;
  const over = onPaper(shape.radius, fit.scale.factor) + 1.2;
  const places = fit.breaks.flatMap((middle) => [middle - BREAK_GAP / 2, middle + BREAK_GAP / 2]);
  const all = shape.isEnded ? places : [0, ...places];
  return all.flatMap((place) => zigzag(x + place, rod.y, over));
}

function zigzag(x: number, y: number, over: number): readonly PathPart[] {
  const points = [
    at(x, y + over),
    at(x, y + 0.8),
    at(x - 0.6, y + 0.3),
    at(x + 0.6, y - 0.3),
    at(x, y - 0.8),
    at(x, y - over),
  ];
  return points.slice(1).map((to, i) => line(points[i] ?? to, to));
}

/** Flattened places along a swedged end, each as long as the rod is thick. */
function swedgedParts({ shape, fit, x, y }: PlacedRod, [, upper]: Span): readonly PathPart[] {
  const factor = fit.scale.factor;
  const half = onPaper(shape.shank, factor);
  const end = fit.place(upper);
  const count = Math.max(1, Math.round(end / Math.max(2.4, 2.2 * half)));
  const step = end / count;
  const profile = Array.from({ length: count }, (_, i) =>
    [
      [0, 1],
      [0.15, 1],
      [0.35, 0.7],
      [0.65, 0.7],
      [0.85, 1],
    ].map(([u = 0, w = 1]) => ({ u: (i + u) * step, w })),
  ).flat();
  const points = [...profile, { u: end, w: 1 }];
  return [
    ...[1, -1].flatMap((side) =>
      points.slice(1).map(({ u, w }, i) => {
        const from = points[i] ?? { u, w };
        return line(at(x + from.u, y + side * half * from.w), at(x + u, y + side * half * w));
      }),
    ),
    line(at(x, y + half), at(x, y - half)),
  ];
}

const QUARTER = Math.tan(Math.PI / 8);

/** Bend and leg, the leg down; the bend is a quarter turn. */
function hookParts(rod: PlacedRod): readonly PathPart[] {
  const { shape, fit, x, y } = rod;
  const { hook } = shape;
  if (hook === null) return [];
  const factor = fit.scale.factor;
  const [half, inside, reach] = [shape.shank, hook.inside, hook.reach].map((each) => onPaper(each, factor));
  if (half === undefined || inside === undefined || reach === undefined) return [];
  const [bar, outer] = [2 * half, inside + 2 * half];
  const turn = y - half - inside;
  const foot = y - reach;
  return [
    { kind: "arc", from: at(x + outer, y + half), to: at(x, turn), bulge: QUARTER },
    { kind: "arc", from: at(x + outer, y - half), to: at(x + bar, turn), bulge: QUARTER },
    line(at(x, turn), at(x, foot)),
    line(at(x + bar, turn), at(x + bar, foot)),
    line(at(x, foot), at(x + bar, foot)),
  ];
}

function partItems(rod: PlacedRod, { kind, span: [from, to], half }: ShapePart): readonly SceneItem[] {
  const { fit, x, y } = rod;
  const off = onPaper(half, fit.scale.factor);
  const [x0, x1] = [x + fit.place(from), x + fit.place(to)];
  const box = strokeOf("outline", rectangle(x0, y - off, x1, y + off));
  if (kind === "plate") return [box];
  return [
    box,
    strokeOf(
      "fine",
      [off / 2, -off / 2].map((each) => line(at(x0, y + each), at(x1, y + each))),
    ),
  ];
}

const WELD = 1.3;

/** Small fillets at the underside of the lowest nut. */
function weldItems(rod: PlacedRod): readonly SceneItem[] {
  const nut = rod.shape.parts.filter(({ kind }) => kind === "nut").at(-1);
  if (nut === undefined) return [];
  const half = onPaper(rod.shape.radius, rod.fit.scale.factor);
  const { x, y } = spotOf(rod, nut.span[0]);
  return [1, -1].map((side) =>
    fill("arrow", at(x, y + side * half), at(x - WELD, y + side * half), at(x, y + side * (half + WELD))),
  );
}

function centreLine({ shape, fit, x, y }: PlacedRod): SceneItem {
  const low = shape.hook === null ? -3 : -1.5;
  return stroke("centre", line(at(x + low, y), at(x + fit.place(shape.top) + 3, y)));
}
