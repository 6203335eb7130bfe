/** The small picture of a question: a base in plan with what is asked about ringed, or the layout with its bases marked. */
import type { Contour, Extent, Point } from "../geometry/index.js";
import { extentOfPoints, joinExtents, NO_EXTENT } from "../geometry/index.js";
import type { Plan } from "../plan/model.js";
import type { BaseFigure, FigureRod } from "../summary/facts.js";
import { toMillimetres } from "../units/index.js";
import { arrowHead, at, circle, group, line, rectangle, stroke, strokeOf, text } from "./items.js";
import type { Area, Draft } from "./paper.js";
import { hasRoom, interrupt, put, startDraft, withGaps } from "./paper.js";
import { contourParts, onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint, SceneItem } from "./scene.js";

/** A square of paper for a picture, millimetres. */
export const FIGURE_SIDE = 52;
const [EDGE, AXIS, RING] = [6, 8, 1.1];

/** `subjects`: as the rows name them, rods by their tags, pairs as `A1-A2`; where no rod is named all of the base are meant. */
export function baseFigureItem(
  figure: BaseFigure,
  subjects: readonly string[],
  letter: number,
  x: number,
  top: number,
): SceneItem {
  const area: Area = { x0: x, y0: top - FIGURE_SIDE, x1: x + FIGURE_SIDE, y1: top };
  const view = viewOf(extentOf(figure), area);
  const draft = startDraft(area);
  put(draft, stroke("fine", ...rectangle(area.x0, area.y0, area.x1, area.y1)));
  put(draft, ...outlines(figure, view));
  put(
    draft,
    ...figure.rods.map((rod) => strokeOf("hole", [circle(onPaper(view, rod.center), (rod.diameter / 2) * view.scale)])),
  );
  const named = namedRods(figure.rods, subjects);
  const marked = named.rods.length > 0 ? named.rods : figure.rods;
  put(
    draft,
    strokeOf("held", [...marked.map((rod) => ringOf(rod, view)), ...named.pairs.map((pair) => joinOf(pair, view))]),
  );
  put(draft, ...axes(area, letter));
  const middle = middleOf(figure.rods);
  for (const rod of marked.slice(0, MOST_TAGS)) putTag(draft, rod, { view, middle, letter });
  return group("letter-figure", withGaps(draft.items, draft.gaps));
}

const MOST_TAGS = 24;

function outlines({ concrete, basePlate, column, rods }: BaseFigure, view: View): readonly SceneItem[] {
  const holes = rods.flatMap(({ center, hole }) =>
    hole === null ? [] : [circle(onPaper(view, center), (hole / 2) * view.scale)],
  );
  return [
    ...(concrete === null ? [] : [strokeOf("concrete", contourParts(view, concrete))]),
    ...(basePlate === null ? [] : [strokeOf("base-plate", contourParts(view, basePlate))]),
    ...(column === null ? [] : [strokeOf("fine", contourParts(view, column))]),
    ...(holes.length === 0 ? [] : [strokeOf("fine", holes)]),
  ];
}

function extentOf({ rods, basePlate, concrete, column }: BaseFigure): Extent {
  const reach = ({ center: { x, y }, diameter, hole }: FigureRod): readonly Point[] => {
    const r = Math.max(diameter, hole ?? 0) / 2;
    return [
      { x: x - r, y: y - r },
      { x: x + r, y: y + r },
    ];
  };
  const around = [basePlate, concrete, column].reduce<Extent>(
    (all, contour) => (contour === null ? all : joinExtents(all, extentOfPoints(cornersOf(contour)))),
    NO_EXTENT,
  );
  return joinExtents(around, extentOfPoints(rods.flatMap(reach)));
}

/** Points that no part of it reaches past, near enough for a picture. */
function cornersOf(contour: Contour): readonly Point[] {
  if (contour.kind === "path") return contour.segments.map(({ from }) => from);
  const { x, y } = contour.center;
  const r = toMillimetres(contour.diameter) / 2;
  return [
    { x: x - r, y: y - r },
    { x: x + r, y: y + r },
  ];
}

function viewOf({ x0, y0, x1, y1 }: Extent, area: Area): View {
  const room = FIGURE_SIDE - EDGE - AXIS;
  const scale = room / Math.max(x1 - x0, y1 - y0, 1);
  const middle = at((area.x0 + AXIS + area.x1 - EDGE / 2) / 2, (area.y0 + AXIS + area.y1 - EDGE / 2) / 2);
  return { scale, origin: at(middle.x - ((x0 + x1) / 2) * scale, middle.y - ((y0 + y1) / 2) * scale) };
}

interface Named {
  readonly rods: readonly FigureRod[];
  readonly pairs: readonly (readonly [FigureRod, FigureRod])[];
}

function namedRods(rods: readonly FigureRod[], subjects: readonly string[]): Named {
  const byTag = new Map(rods.map((rod) => [rod.tag, rod]));
  const tagsOf = (subject: string) => (subject.match(/[A-Z]+\d+/g) ?? []).flatMap((tag) => byTag.get(tag) ?? []);
  const groups = new Set(subjects.filter((subject) => /^[A-Z]+$/.test(subject)));
  const named = new Set([...subjects.flatMap(tagsOf), ...rods.filter((rod) => groups.has(rod.group))]);
  const pairs = subjects.flatMap((subject): Named["pairs"] => {
    const [a, b, ...more] = tagsOf(subject);
    return a !== undefined && b !== undefined && more.length === 0 ? [[a, b]] : [];
  });
  return { rods: rods.filter((rod) => named.has(rod)), pairs };
}

function ringRadius({ diameter, hole }: FigureRod, { scale }: View): number {
  return (Math.max(diameter, hole ?? 0) / 2) * scale + RING;
}

const ringOf = (rod: FigureRod, view: View) => circle(onPaper(view, rod.center), ringRadius(rod, view));

/** From ring to ring; nothing where they meet. */
function joinOf([a, b]: readonly [FigureRod, FigureRod], view: View) {
  const [from, to] = [onPaper(view, a.center), onPaper(view, b.center)];
  const apart = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = (start: PaperPoint, reach: number) =>
    at(start.x + ((to.x - from.x) / apart) * reach, start.y + ((to.y - from.y) / apart) * reach);
  const [near, far] = [ringRadius(a, view), ringRadius(b, view)];
  return near + far >= apart ? line(from, from) : line(along(from, near), along(to, -far));
}

function middleOf(rods: readonly FigureRod[]): Point {
  const { x0, y0, x1, y1 } = extentOfPoints(rods.map(({ center }) => center));
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
}

interface TagPlace {
  readonly view: View;
  /** Of all rods: a tag stands outwards of it where it can, so that nobody takes it for another rod's. */
  readonly middle: Point;
  readonly letter: number;
}

/** Beside its ring, outwards first, where it stands clear; left out where it does nowhere: the ring says which it is. */
function putTag(draft: Draft, rod: FigureRod, { view, middle, letter }: TagPlace): void {
  const { x, y } = onPaper(view, rod.center);
  const reach = ringRadius(rod, view) + 1.2;
  const [d, up] = [reach * 0.75, -letter / 2];
  const tag = (dx: number, dy: number, anchor: "start" | "middle" | "end") =>
    text("tag", rod.tag, at(x + dx, y + dy), letter, { anchor });
  const places = [
    { to: at(0, 1), item: tag(0, reach, "middle") },
    { to: at(0, -1), item: tag(0, -reach - letter, "middle") },
    { to: at(1, 0), item: tag(reach, up, "start") },
    { to: at(-1, 0), item: tag(-reach, up, "end") },
    { to: at(0.7, 0.7), item: tag(d, d * 0.8, "start") },
    { to: at(-0.7, 0.7), item: tag(-d, d * 0.8, "end") },
    { to: at(0.7, -0.7), item: tag(d, -d * 0.8 - letter, "start") },
    { to: at(-0.7, -0.7), item: tag(-d, -d * 0.8 - letter, "end") },
  ];
  const out = { x: rod.center.x - middle.x, y: rod.center.y - middle.y };
  const outwards = ({ to }: (typeof places)[number]) => -(to.x * out.x + to.y * out.y);
  const free = places
    .toSorted((a, b) => outwards(a) - outwards(b))
    .find(({ item }) => hasRoom(draft, item, 0.5, "hard"));
  if (free === undefined) return;
  interrupt(draft, free.item);
  put(draft, free.item);
}

/** The base's own axes in the lower left corner. */
function axes({ x0, y0 }: Area, letter: number): readonly SceneItem[] {
  const corner = at(x0 + 2.2, y0 + 2.2);
  const small = letter * 0.9;
  return [
    stroke("fine", line(corner, at(corner.x + 6, corner.y)), line(corner, at(corner.x, corner.y + 6))),
    arrowHead(at(corner.x + 6, corner.y), 1, 0, 2.2),
    arrowHead(at(corner.x, corner.y + 6), 0, 1, 2.2),
    text("label", "+X", at(corner.x + 7, corner.y - small / 2), small),
    text("label", "+Y", at(corner.x - 0.8, corner.y + 7), small),
  ];
}

/** Every place of the layout as a point, those that the subjects name ringed and lettered. */
export function layoutFigureItem(
  plan: Plan,
  subjects: readonly string[],
  letter: number,
  x: number,
  top: number,
): SceneItem {
  const area: Area = { x0: x, y0: top - FIGURE_SIDE, x1: x + FIGURE_SIDE, y1: top };
  const points = plan.bases.map(({ name, base, workingPoint }) => ({ name, mark: base.mark, workingPoint }));
  const view = viewOf(extentOfPoints(points.map(({ workingPoint }) => workingPoint)), area);
  const words = new Set(subjects.flatMap((subject) => subject.split(/[\s,/;:]+/)));
  const isNamed = ({ name, mark }: (typeof points)[number]) =>
    subjects.some((subject) => subject.includes(name)) ||
    (words.has(mark) && !subjects.some((subject) => names.some((other) => subject.includes(other))));
  const names = points.map(({ name }) => name);
  const named = points.filter(isNamed);
  const draft = startDraft(area);
  put(draft, stroke("fine", ...rectangle(area.x0, area.y0, area.x1, area.y1)));
  put(
    draft,
    strokeOf(
      "fine",
      points.map(({ workingPoint }) => circle(onPaper(view, workingPoint), 0.5)),
    ),
  );
  if (named.length > 0)
    put(
      draft,
      strokeOf(
        "held",
        named.map(({ workingPoint }) => circle(onPaper(view, workingPoint), 1.8)),
      ),
    );
  put(draft, ...axes(area, letter));
  for (const { name, workingPoint } of named.slice(0, MOST_TAGS))
    putName(draft, name, onPaper(view, workingPoint), letter);
  return group("letter-figure", draft.items);
}

function putName(draft: Draft, name: string, { x, y }: PaperPoint, letter: number): void {
  const reach = 3;
  const places = [
    text("tag", name, at(x + reach, y - letter / 2), letter),
    text("tag", name, at(x - reach, y - letter / 2), letter, { anchor: "end" }),
    text("tag", name, at(x, y + reach), letter, { anchor: "middle" }),
    text("tag", name, at(x, y - reach - letter), letter, { anchor: "middle" }),
  ];
  const free = places.find((place) => hasRoom(draft, place, 0.5));
  if (free !== undefined) put(draft, free);
}
