/** Which key of the job stands behind every figure of a drawing: dimensions by where they end, callouts by what they are of. */
import type { CheckedBase } from "../../checks/checked.js";
import type { CheckRow } from "../../checks/model.js";
import { comparedTexts, limitWords } from "../../checks/words.js";
import { extentOf, extentOfPoints } from "../../geometry/index.js";
import type { RodGroup } from "../../job/index.js";
import type { PhraseOf } from "../../sheets/callouts.js";
import { textBox } from "../../sheets/occupied.js";
import type { ScreenPlan } from "../../sheets/on-screen.js";
import { holeSpan, onPaper } from "../../sheets/plan-shapes.js";
import type { PathPart, SceneGroup, SceneItem, StrokeRole } from "../../sheets/scene.js";
import type { Hole } from "../../template/model.js";
import { formatLength, nanometres } from "../../units/index.js";
import { firstRowsAbout } from "./about-hole.js";
import type { Axis, Keyed, Stop } from "./figure-keys.js";
import {
  circleKeys,
  cornerKeys,
  fromPointKeys,
  holeKey,
  isSame,
  linesOf,
  neighbourKeys,
  openingKeys,
  openingPlaceKeys,
  ownKey,
  patternKeys,
  rodKey,
  rodPlaceKeys,
  sizeKeys,
  spanKey,
  stopAt,
} from "./figure-keys.js";
import type { Edge, FigureKey, LiveFigure, LiveFigures, LiveHole, LiveOutline, PaperBox } from "./figure-model.js";

/** What is written of the base, and given to it: texts by key path. */
export interface Said {
  readonly written: Readonly<Record<string, string>>;
  readonly given: Readonly<Record<string, { readonly text: string; readonly by: string }>>;
}

/** Everything on the drawing of a base that can be reached, with its keys. */
export function figuresOf(checked: CheckedBase, plan: ScreenPlan, said: Said): LiveFigures {
  const keyed = keyedOf(checked, said);
  const drawn = groupsIn(plan.items);
  const unplaced = plan.unplaced.flatMap(({ lines, about }) =>
    lines.flatMap((phrases, i) =>
      phrases.map((words, k) => partFigure(keyed, words, about.lines[i]?.[k] ?? "nothing", about.tag, null)),
    ),
  );
  const figures = [
    ...drawn.flatMap((group) => dimensionFigure(keyed, plan, group) ?? []),
    ...joined(drawn.flatMap((group) => calloutFigure(keyed, group) ?? [])),
    ...joined(unplaced),
  ];
  const rows = firstRowsAbout(checked.rows);
  return {
    figures: named(figures),
    outlines: drawn.flatMap((group) => outlineOf(keyed, group) ?? []).sort(templateLast),
    holes: checked.plate.holes.map((hole) => holeOf(keyed, plan, hole, rows.get(hole.tag))),
    names: textsIn(plan.items).map((item) => ({ words: item.text, box: extentOfPoints(textBox(item)) })),
  };
}

/** Where outlines lie on each other, that of the template is the one that is seen. */
function templateLast(a: LiveOutline, b: LiveOutline): number {
  return Number(a.name === "template") - Number(b.name === "template");
}

/** A base with what keys are looked for in. */
export function keyedOf({ base, plate, job }: Pick<CheckedBase, "base" | "plate" | "job">, said: Said): Keyed {
  const { x0, y0, x1, y1 } = extentOf(plate.keyed?.bare ?? plate.region.outer);
  const [left, low, right, top] = [x0, y0, x1, y1].map((value) => Math.round(value * 1e6));
  const keys = [...Object.keys(said.written), ...Object.keys(said.given)];
  return {
    ...{ base, plate, unit: job.unit },
    box: { x0: left ?? 0, y0: low ?? 0, x1: right ?? 0, y1: top ?? 0 },
    isGrouped: keys.some((key) => key.startsWith("groups[")),
    isWritten: (key) => said.written[key] !== undefined || said.given[key] !== undefined,
  };
}

type Figure = Omit<LiveFigure, "id">;

/** Lines of a callout, one after the other, that say the same key are one figure. */
function joined(figures: readonly Figure[]): readonly Figure[] {
  const all: Figure[] = [];
  for (const figure of figures) {
    const last = all.at(-1);
    if (last?.name === figure.name && keysText(last) === keysText(figure) && figure.keys.length > 0)
      all[all.length - 1] = { ...last, words: `${last.words} ${figure.words}`, box: around(last.box, figure.box) };
    else all.push(figure);
  }
  return all;
}

function keysText({ keys }: Figure): string {
  return keys.map(({ key }) => key).join(" ");
}

function around(a: PaperBox | null, b: PaperBox | null): PaperBox | null {
  if (a === null || b === null) return null;
  return { x0: Math.min(a.x0, b.x0), y0: Math.min(a.y0, b.y0), x1: Math.max(a.x1, b.x1), y1: Math.max(a.y1, b.y1) };
}

/** A figure keeps its id from drawing to drawing, as long as it measures the same. */
function named(figures: readonly Figure[]): readonly LiveFigure[] {
  const seen = new Map<string, number>();
  return figures.map((figure) => {
    const base = `${figure.name} ${keysText(figure)}`;
    const count = seen.get(base) ?? 0;
    seen.set(base, count + 1);
    return { ...figure, id: `${base} ${count}` };
  });
}

function groupsIn(items: readonly SceneItem[]): readonly SceneGroup[] {
  return items.flatMap((item) => (item.kind === "group" ? [item, ...groupsIn(item.items)] : []));
}

type SceneText = Extract<SceneItem, { kind: "text" }>;

/** Texts that belong to no dimension and no callout. */
function textsIn(items: readonly SceneItem[]): readonly SceneText[] {
  return items.flatMap((item): readonly SceneText[] => {
    if (item.kind === "text") return [item];
    return item.kind === "group" && !APART.has(item.name) ? textsIn(item.items) : [];
  });
}

const APART: ReadonlySet<string> = new Set(["dimension", "callout", "callout-part"]);

function boxOfWords(items: readonly SceneItem[]): { readonly words: string; readonly box: PaperBox | null } {
  const texts = items.flatMap((item) => (item.kind === "text" ? [item] : []));
  const corners = texts.flatMap((item) => textBox(item));
  return { words: texts.map(({ text }) => text).join(" "), box: corners.length === 0 ? null : extentOfPoints(corners) };
}

function dimensionFigure(
  keyed: Keyed,
  { scale, origin }: ScreenPlan,
  { name, data, items }: SceneGroup,
): Figure | null {
  if (name !== "dimension") return null;
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = [data.x0, data.y0, data.x1, data.y1].map(Number);
  const at = (paper: number, from: number) => Math.round(((paper - from) / scale) * 1e6);
  const words = boxOfWords(items);
  const isLevel = Math.abs(y0 - y1) < 1e-6;
  if (!isLevel && Math.abs(x0 - x1) > 1e-6) return { ...words, ...diagonal(keyed) };
  const axis: Axis = isLevel ? "x" : "y";
  const [a, b] = isLevel ? [at(x0, origin.x), at(x1, origin.x)] : [at(y0, origin.y), at(y1, origin.y)];
  return { ...words, ...between(keyed, axis, Math.min(a, b), Math.max(a, b)) };
}

type Meaning = Pick<Figure, "name" | "keys" | "follows">;

function diagonal(keyed: Keyed): Meaning {
  const keys = keyed.base.groups.flatMap((group) =>
    (["x", "y"] as const).flatMap((axis) => patternKeys(keyed, group, axis, null)),
  );
  return { name: "diagonal of the rods", keys, follows: "The diagonal follows from where the rods stand." };
}

/** What stands at a coordinate: edges of the plate, rod lines, the working point. */
interface Feature {
  readonly edge: boolean;
  readonly groups: readonly { readonly group: RodGroup; readonly stop: Stop }[];
  readonly isPoint: boolean;
}

function featureAt(keyed: Keyed, axis: Axis, at: number): Feature {
  const { box, base } = keyed;
  const edges = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
  const groups = base.groups.flatMap((group) => {
    const stop = stopAt(linesOf(keyed, group, axis), at);
    return stop === null ? [] : [{ group, stop }];
  });
  return { edge: edges.some((edge) => isSame(edge, at)), groups, isPoint: isSame(at, 0) };
}

/** A length along an axis, by the features at its ends. */
function between(keyed: Keyed, axis: Axis, from: number, to: number): Meaning {
  const [a, b] = [featureAt(keyed, axis, from), featureAt(keyed, axis, to)];
  if (a.edge && b.edge) return { name: `template in ${axis}`, keys: sizeKeys(keyed, axis).slice(0, 1), follows: "" };
  const span = ownSpan(keyed, axis, a, from, to);
  if (span !== null) return { name: span.label, keys: [span], follows: "" };
  const [rods] = [...a.groups, ...b.groups];
  if (!a.edge && !b.edge && rods !== undefined && (a.isPoint || b.isPoint)) {
    const at = a.isPoint ? to : from;
    const isOwn = rods.group.pattern.kind === "lines" || rods.group.pattern.kind === "points";
    const keys = isOwn ? fromPointKeys(keyed, rods.group, axis, at) : patternKeys(keyed, rods.group, axis, at);
    return {
      name: `rod line ${axis} from W.P.`,
      keys,
      follows: isOwn ? "" : "It follows from the rods overall, which stand evenly about the working point.",
    };
  }
  return derived(keyed, axis, a, b);
}

function ownSpan(keyed: Keyed, axis: Axis, { groups }: Feature, from: number, to: number): FigureKey | null {
  for (const { group } of groups) {
    const key = spanKey(keyed, group, axis, from, to);
    if (key !== null) return key;
  }
  return null;
}

/** An edge distance, an edge from the working point, lines of two groups: it follows from what gives its ends. */
function derived(keyed: Keyed, axis: Axis, a: Feature, b: Feature): Meaning {
  const rods = [...a.groups, ...b.groups].map(({ group, stop }) => patternKeys(keyed, group, axis, stop.at));
  const hasEdge = a.edge || b.edge;
  const keys = [...(hasEdge ? sizeKeys(keyed, axis) : []), ...rods.flat()];
  const ends = [...(hasEdge ? ["the size of the template"] : []), ...(rods.length > 0 ? ["where the rods stand"] : [])];
  const name = !hasEdge
    ? `rod lines apart in ${axis}`
    : rods.length > 0
      ? `edge distance in ${axis}`
      : `edge from W.P. in ${axis}`;
  return { name, keys: unique(keys), follows: `It follows from ${ends.join(" and ")}.` };
}

function unique(keys: readonly FigureKey[]): readonly FigureKey[] {
  return [...new Map(keys.map((each) => [each.key, each])).values()];
}

function calloutFigure(keyed: Keyed, { name, data, items }: SceneGroup): Figure | null {
  if (name !== "callout-part") return null;
  const { words, box } = boxOfWords(items);
  return partFigure(keyed, words, data.of as PhraseOf, String(data.tag), box);
}

function partFigure(keyed: Keyed, words: string, of: PhraseOf, tag: string, box: PaperBox | null): Figure {
  return { words, box, ...meaningOf(keyed, of, tag) };
}

function meaningOf(keyed: Keyed, of: PhraseOf, tag: string): Meaning {
  const hole = keyed.plate.holes.find((each) => each.tag === tag);
  const alike = hole === undefined ? [] : groupsAlike(keyed, hole);
  const own = (name: string, keys: readonly FigureKey[]): Meaning => ({ name, keys, follows: "" });
  switch (of) {
    case "hole":
      return own(
        "hole",
        hole?.role === "rod" ? alike.map((group) => holeKey(keyed, group)) : otherHoleKeys(keyed, hole),
      );
    case "rod":
      return own(
        "rod",
        alike.map((group) => rodKey(keyed, group)),
      );
    case "opening":
      return own("opening", openingKeys(keyed));
    case "opening place":
      return own("place of the opening", openingPlaceKeys(keyed));
    case "inside":
      return own("inside of the ring", insideKeys(keyed));
    case "bolt circle":
      return own(
        "bolt circle",
        alike.flatMap((group) => circleKeys(keyed, group).slice(0, 1)),
      );
    case "count":
      return own(
        "rods on the circle",
        alike.flatMap((group) => circleKeys(keyed, group).slice(1, 2)),
      );
    case "start":
      return own(
        "first rod",
        alike.flatMap((group) => circleKeys(keyed, group).slice(2)),
      );
    case "corner":
      return own("corners", cornerKeys(keyed));
    case "cut":
      return {
        name: "cut corners",
        keys: sizeKeys(keyed, "x"),
        follows: "The cut follows from the corners of the polygon.",
      };
    case "key":
      return {
        name: "orientation key",
        keys: [ownKey("template.key", "orientation key", "auto", { clears: true })],
        follows: "The program sizes it: auto, or none.",
      };
    case "radial edge":
      return {
        name: "edge distance",
        keys: unique([
          ...sizeKeys(keyed, "x").slice(0, 1),
          ...alike.flatMap((group) => circleKeys(keyed, group).slice(0, 1)),
        ]),
        follows: "It follows from the size of the template and the bolt circle.",
      };
    case "nothing":
      return { name: "note", keys: [], follows: "It follows from the material and the shop." };
  }
}

/** Groups whose holes one callout names together. */
function groupsAlike({ base }: Keyed, hole: Hole): readonly RodGroup[] {
  const own = groupOf(base.groups, hole);
  return own === null
    ? []
    : base.groups.filter(({ hole: { value }, rod }) => value === own.hole.value && rod.size === own.rod.size);
}

function groupOf(groups: readonly RodGroup[], { tag, role }: Hole): RodGroup | null {
  const letter = /^\D+/.exec(tag)?.[0];
  return role === "rod" ? (groups.find((group) => group.letter === letter) ?? null) : null;
}

function insideKeys({ base, unit }: Keyed): readonly FigureKey[] {
  const { outline } = base.template;
  return outline.kind === "ring"
    ? [ownKey("template.outline.inner", "inside of the ring", formatLength(outline.inner, unit))]
    : [];
}

function otherHoleKeys({ unit, isWritten }: Keyed, hole: Hole | undefined): readonly FigureKey[] {
  if (hole === undefined || hole.shape.kind !== "circle") return [];
  const root = hole.role === "nail" ? "template.nails" : "template.groutHoles";
  const key = `${root}.diameter`;
  return isWritten(key) ? [ownKey(key, `${hole.role} holes`, formatLength(hole.shape.diameter, unit))] : [];
}

function outlineOf(keyed: Keyed, { name, data, items }: SceneGroup): LiveOutline | null {
  const what = name === "plate" ? "template" : data.of === "CONCRETE" ? "concrete" : "base plate";
  if (name !== "plate" && name !== "neighbour") return null;
  const lines = items.flatMap((item) =>
    item.kind === "stroke" && item.role === ROLE_OF_EDGE[what] ? item.parts.flatMap(chordsOf) : [],
  );
  const keys = what === "template" ? templateKeys(keyed) : neighbourKeys(keyed, what);
  const words = `${what} ${sizeWords(keyed, what)}`;
  return { id: `outline-${what.replace(" ", "-")}`, name: what, words, lines, keys, follows: "" };
}

/** `420 × 360`, `Ø48`. */
function sizeWords({ base, box, unit }: Keyed, what: Edge): string {
  const say = (length: number): string => formatLength(length, unit);
  if (what === "template") {
    const isRound = base.template.outline.kind === "circle" || base.template.outline.kind === "ring";
    const [x, y] = [say(box.x1 - box.x0), say(box.y1 - box.y0)];
    return isRound ? `Ø${x}` : `${x} × ${y}`;
  }
  const { shape } = what === "concrete" ? base.concrete : base.basePlate;
  if (shape.kind === "missing") return "";
  return shape.value.kind === "circle"
    ? `Ø${say(shape.value.diameter)}`
    : `${say(shape.value.x)} × ${say(shape.value.y)}`;
}

const ROLE_OF_EDGE: Readonly<Record<Edge, StrokeRole>> = {
  template: "outline",
  "base plate": "base-plate",
  concrete: "concrete",
};

function templateKeys(keyed: Keyed): readonly FigureKey[] {
  return unique([...sizeKeys(keyed, "x"), ...sizeKeys(keyed, "y"), ...cornerKeys(keyed)]);
}

type Chord = LiveOutline["lines"][number];

/** A line as it is; arcs and circles as chords, near enough to be clicked. */
function chordsOf(part: PathPart): readonly Chord[] {
  if (part.kind === "line") return [[part.from.x, part.from.y, part.to.x, part.to.y]];
  const { center, radius, from, sweep } =
    part.kind === "circle" ? { ...part, from: 0, sweep: 2 * Math.PI } : circleOf(part);
  const count = Math.max(2, Math.ceil((Math.abs(sweep) / (2 * Math.PI)) * 24));
  const point = (i: number): [number, number] => {
    const turn = from + (sweep * i) / count;
    return [center.x + radius * Math.cos(turn), center.y + radius * Math.sin(turn)];
  };
  return Array.from({ length: count }, (_, i): Chord => [...point(i), ...point(i + 1)]);
}

function circleOf({ from, to, bulge }: Extract<PathPart, { kind: "arc" }>) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const rise = (1 - bulge * bulge) / (4 * bulge);
  const center = { x: (from.x + to.x) / 2 - dy * rise, y: (from.y + to.y) / 2 + dx * rise };
  const radius = Math.hypot(from.x - center.x, from.y - center.y);
  return { center, radius, from: Math.atan2(from.y - center.y, from.x - center.x), sweep: 4 * Math.atan(bulge) };
}

const ROLE_WORDS: Readonly<Record<Hole["role"], string>> = {
  rod: "rod hole",
  opening: "opening",
  nail: "nail hole",
  grout: "grout hole",
  bolt: "bolt hole",
};

function holeOf(keyed: Keyed, plan: ScreenPlan, hole: Hole, worst: CheckRow | undefined): LiveHole {
  const center = onPaper(plan, hole.center);
  const span = holeSpan(hole);
  const [w, h] = [span.x * plan.scale, span.y * plan.scale];
  const group = groupOf(keyed.base.groups, hole);
  return {
    tag: hole.tag,
    words: holeWords(keyed, hole, worst),
    box: { x0: center.x - w, y0: center.y - h, x1: center.x + w, y1: center.y + h },
    isRound: hole.shape.kind === "circle",
    keys:
      group === null
        ? placedKeys(keyed, hole)
        : [holeKey(keyed, group), rodKey(keyed, group), ...rodPlaceKeys(keyed, group, hole)],
  };
}

function placedKeys(keyed: Keyed, hole: Hole): readonly FigureKey[] {
  if (hole.role !== "opening") return otherHoleKeys(keyed, hole);
  return keyed.base.template.outline.kind === "ring" && openingKeys(keyed).length === 0
    ? insideKeys(keyed)
    : unique([...openingKeys(keyed), ...openingPlaceKeys(keyed)]);
}

/** `A1, rod hole Ø1-5/16 for a 1 rod, at X 6, Y -5. Worst row: ...`. */
function holeWords({ unit }: Keyed, { tag, role, shape, center, rod }: Hole, worst: CheckRow | undefined): string {
  const say = (length: number) => formatLength(length, unit);
  const size =
    shape.kind === "circle" ? `diameter ${say(shape.diameter)}` : `${say(shape.width)} by ${say(shape.height)}`;
  const place = `at X ${say(nanometres(center.x * 1e6))}, Y ${say(nanometres(center.y * 1e6))}`;
  const rodWords = rod === null ? "" : ` for rod ${rod.size}`;
  const row = worst === undefined ? "No row is about it alone." : `Its worst row: ${rowWords(worst, unit)}.`;
  return `${tag}, ${ROLE_WORDS[role]}, ${size}${rodWords}, ${place}. ${row}`;
}

function rowWords({ rule, status, value, limit, sense }: CheckRow, unit: Keyed["unit"]): string {
  if (value === null || limit === null || sense === null) return `${rule} ${status}`;
  const [is, most] = comparedTexts(value, limit, unit);
  return `${rule} ${status}, ${is}, allowed ${limitWords(sense, most)}`;
}
