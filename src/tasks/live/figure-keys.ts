/** Which keys of a base give a feature of its drawing: a rod line, an edge, a hole, an opening, the plates around. */
import type { Base, Offset, OutlineSpec, RodGroup } from "../../job/index.js";
import type { Hole, Plate } from "../../template/model.js";
import { formatDecimals, formatLength, nanometres, type Unit } from "../../units/index.js";
import type { FigureKey, Move, Takes } from "./figure-model.js";

/** x or y of the base's own axes. */
export type Axis = "x" | "y";

/** What keys are looked for in. */
export interface Keyed {
  readonly base: Base;
  readonly plate: Plate;
  readonly unit: Unit;
  /** The plate's own box, nanometres, without a cut or notch that shows the way round. */
  readonly box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };
  /** True of a base that is written by `groups`. */
  readonly isGrouped: boolean;
  /** True of a key that the base, its kind or the defaults write. */
  readonly isWritten: (key: string) => boolean;
}

const TEXT: Takes = { kind: "text" };

interface KeyWords {
  readonly note?: string;
  readonly clears?: boolean;
}

/** A key whose text is its own. */
export function ownKey(
  key: string,
  label: string,
  shown: string,
  { note = "", clears = false }: KeyWords = {},
): FigureKey {
  return { key, label, shown, note, clears, takes: TEXT };
}

/** A length as a job file says it without loss: a fraction or decimals in the job's unit, else millimetres. */
export function exactText(length: number, unit: Unit): string {
  const written = formatLength(length, unit);
  const isFraction = length % 396_875 === 0;
  if (unit === "in" && isFraction) return written;
  const decimals = formatDecimals(length, "mm", 6).replace(/\.?0+$/, "");
  return unit === "in" ? `${decimals} mm` : decimals;
}

const shownIn = ({ unit }: Keyed, length: number): string => formatLength(length, unit);

/** `groups[1].` where rods stand in groups. */
export function groupPrefix({ base, isGrouped }: Keyed, group: RodGroup): string {
  return isGrouped ? `groups[${base.groups.indexOf(group)}].` : "";
}

function groupWords({ base }: Keyed, { letter }: RodGroup): string {
  return base.groups.length > 1 ? ` of group ${letter}` : "";
}

const INDEX: Readonly<Record<Axis, 0 | 1>> = { x: 0, y: 1 };

/** A rod line, or another feature across one axis: where it is, and the keys that say so. */
export interface Stop {
  readonly at: number;
  readonly keys: readonly string[];
}

/** Rod lines of a group, ascending. A rectangle's lines have no keys of their own. */
export function linesOf(keyed: Keyed, group: RodGroup, axis: Axis): readonly Stop[] {
  const { pattern } = group;
  const prefix = `${groupPrefix(keyed, group)}pattern`;
  switch (pattern.kind) {
    case "rectangle": {
      const [overall, count] = axis === "x" ? [pattern.x, pattern.nx] : [pattern.y, pattern.ny];
      return Array.from({ length: count }, (_, i) => ({ at: spacedAt(overall, count, i), keys: [] }));
    }
    case "lines":
      return ascending(pattern[axis].map((at, i) => ({ at, keys: [`${prefix}.${axis}[${i}]`] })));
    case "points":
      return ascending(
        pattern.at.map((point, i) => ({ at: point[axis], keys: [`${prefix}.at[${i}][${INDEX[axis]}]`] })),
      );
    case "circle":
      return [];
  }
}

function spacedAt(overall: number, count: number, i: number): number {
  return nanometres((overall * (2 * i - count + 1)) / (2 * Math.max(1, count - 1)));
}

function ascending(stops: readonly Stop[]): readonly Stop[] {
  const byPlace = new Map<number, Stop>();
  for (const { at, keys } of stops) byPlace.set(at, { at, keys: [...(byPlace.get(at)?.keys ?? []), ...keys] });
  return [...byPlace.values()].sort((a, b) => a.at - b.at);
}

/** Rounded once on the paper and once in the plate: within a nanometre it is the same place. */
export function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1.5;
}

/** Where a group has a line there; null where it has none. */
export function stopAt(stops: readonly Stop[], at: number): Stop | null {
  return stops.find((stop) => isSame(stop.at, at)) ?? null;
}

/** The keys that give the rods of a group across an axis: an overall size, or the places of its lines. */
export function patternKeys(keyed: Keyed, group: RodGroup, axis: Axis, at: number | null): readonly FigureKey[] {
  const { pattern } = group;
  const prefix = `${groupPrefix(keyed, group)}pattern`;
  const of = groupWords(keyed, group);
  switch (pattern.kind) {
    case "rectangle":
      return [ownKey(`${prefix}.${axis}`, `rods overall in ${axis}${of}`, shownIn(keyed, pattern[axis]))];
    case "circle":
      return circleKeys(keyed, group).slice(0, 1);
    case "lines":
    case "points":
      return linesOf(keyed, group, axis)
        .filter((stop) => at === null || isSame(stop.at, at))
        .map((stop) => lineKey(keyed, axis, stop, of));
  }
}

/** A line by its coordinate; of several points at once all of them move. */
function lineKey(keyed: Keyed, axis: Axis, { at, keys }: Stop, of: string): FigureKey {
  const label = `rod line ${axis} from W.P.${of}`;
  const [first = ""] = keys;
  const shown = shownIn(keyed, at);
  if (keys.length === 1) return ownKey(first, label, shown);
  const moves = keys.map((key): Move => ({ key, plus: 0, times: 1, over: 1 }));
  return {
    ...ownKey(first, label, shown, { note: `Moves the ${keys.length} rods on this line.` }),
    takes: { kind: "moves", moves },
  };
}

const SIDES: Readonly<Record<Axis, readonly [below: string, above: string]>> = {
  x: ["left of", "right of"],
  y: ["below", "above"],
};

/** The keys of a rod line by how far it stands from the working point, as it is drawn: a length, whichever side it is on. */
export function fromPointKeys(keyed: Keyed, group: RodGroup, axis: Axis, at: number): readonly FigureKey[] {
  const [below, above] = SIDES[axis];
  return patternKeys(keyed, group, axis, at).map((own): FigureKey => {
    const label = `rods ${at < 0 ? below : above} the working point${groupWords(keyed, group)}`;
    if (at >= 0) return { ...own, label };
    const moves = (own.takes.kind === "moves" ? own.takes.moves : [{ key: own.key, plus: 0, times: 1, over: 1 }]).map(
      (move): Move => ({ ...move, times: -1 }),
    );
    const note = `${own.note} The job file has it as a negative ${axis}.`.trim();
    return { ...own, label, note, shown: shownIn(keyed, nanometres(-at)), takes: { kind: "moves", moves } };
  });
}

/** A length between two lines of one group. */
export function spanKey(keyed: Keyed, group: RodGroup, axis: Axis, from: number, to: number): FigureKey | null {
  const lines = linesOf(keyed, group, axis);
  const [a, b] = [stopAt(lines, from), stopAt(lines, to)];
  if (a === null || b === null) return null;
  const { pattern } = group;
  if (pattern.kind === "rectangle")
    return pitchKey(keyed, group, axis, lines.indexOf(b) - lines.indexOf(a), lines.length);
  const label = `rods apart in ${axis}${groupWords(keyed, group)}`;
  return movedKey(keyed, label, axis, a, b);
}

/** Of a rectangle: the whole, or so many of its equal pitches. */
function pitchKey(keyed: Keyed, group: RodGroup, axis: Axis, steps: number, count: number): FigureKey {
  const [whole] = patternKeys(keyed, group, axis, null);
  if (whole === undefined) throw new RangeError("a rectangle without its size");
  if (steps === count - 1) return whole;
  const overall = group.pattern.kind === "rectangle" ? group.pattern[axis] : 0;
  const shown = shownIn(keyed, nanometres((overall * steps) / (count - 1)));
  const moves = [{ key: whole.key, plus: 0, times: count - 1, over: steps }];
  const [one, all] = [steps === 1 ? "pitch" : `${steps} pitches`, count - 1];
  return {
    ...whole,
    label: `${one} of the rods in ${axis}${groupWords(keyed, group)}`,
    shown,
    note: `${all} equal pitches: ${whole.key} becomes ${steps === 1 ? all : `${all}/${steps}`} times what is typed.`,
    takes: { kind: "moves", moves },
  };
}

/** A length between two places that are written: the one farther from the working point moves, or both where they lie evenly about it. */
export function movedKey(keyed: Keyed, label: string, axis: Axis, a: Stop, b: Stop): FigureKey {
  const isEven = isSame(a.at, -b.at);
  const moved = isEven ? [a, b] : Math.abs(a.at) > Math.abs(b.at) ? [a] : [b];
  const moves = moved.flatMap((stop) => {
    const sign = stop === a ? -1 : 1;
    const plus = isEven ? 0 : stop === a ? b.at : a.at;
    return stop.keys.map((key): Move => ({ key, plus, times: sign, over: isEven ? 2 : 1 }));
  });
  const [first] = moved;
  const note = isEven
    ? "Moves both, evenly about the working point."
    : `Moves the one at ${axis.toUpperCase()} ${shownIn(keyed, first?.at ?? 0)}.`;
  const shown = shownIn(keyed, b.at - a.at);
  return { key: moves[0]?.key ?? "", label, shown, note, clears: false, takes: { kind: "moves", moves } };
}

/** Diameter, count and start of a bolt circle. */
export function circleKeys(keyed: Keyed, group: RodGroup): readonly FigureKey[] {
  const { pattern } = group;
  if (pattern.kind !== "circle") return [];
  const prefix = `${groupPrefix(keyed, group)}pattern`;
  const of = groupWords(keyed, group);
  const { start } = pattern;
  const words =
    start.kind === "degrees"
      ? String(start.degrees)
      : `${start.kind}${start.axis === undefined ? "" : ` ${start.axis}`}`;
  return [
    ownKey(`${prefix}.diameter`, `bolt circle${of}`, shownIn(keyed, pattern.diameter)),
    ownKey(`${prefix}.count`, `rods on the circle${of}`, String(pattern.count)),
    ownKey(`${prefix}.start`, `first rod${of}`, words, {
      note: "Degrees counter-clockwise from +X, straddle or on-axis.",
    }),
  ];
}

/** What gives the template's size across an axis. */
export function sizeKeys(keyed: Keyed, axis: Axis): readonly FigureKey[] {
  const { outline } = keyed.base.template;
  const at = "template.outline";
  switch (outline.kind) {
    case "rectangle":
      return [
        ownKey(`${at}.${axis}`, `template in ${axis}`, shownIn(keyed, outline[axis])),
        ...placeKeys(keyed, outline.at, at, axis),
      ];
    case "circle":
      return [
        ownKey(`${at}.diameter`, "diameter of the template", shownIn(keyed, outline.diameter)),
        ...placeKeys(keyed, outline.at, at, axis),
      ];
    case "ring":
      return [
        ownKey(`${at}.outer`, "outer diameter of the ring", shownIn(keyed, outline.outer)),
        ...placeKeys(keyed, outline.at, at, axis),
      ];
    case "polygon":
      return [polygonKey(keyed, outline, axis)];
    case "auto":
      return [autoKey(keyed, axis)];
  }
}

/** Where a centre stands, if it stands off the working point. */
function placeKeys(keyed: Keyed, place: Offset, root: string, axis: Axis): readonly FigureKey[] {
  if (place.x === 0 && place.y === 0) return [];
  return [ownKey(`${root}.at[${INDEX[axis]}]`, `${axis} of its center`, shownIn(keyed, place[axis]))];
}

/** The corners of a polygon on its outermost line at the side that moves. */
function polygonKey(keyed: Keyed, { at }: Extract<OutlineSpec, { kind: "polygon" }>, axis: Axis): FigureKey {
  const corners = ascending(
    at.map((point, i) => ({ at: point[axis], keys: [`template.outline.at[${i}][${INDEX[axis]}]`] })),
  );
  const [first, last] = [corners[0], corners.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError("a polygon without corners");
  return movedKey(keyed, `template in ${axis}`, axis, first, last);
}

/** The size that the edge rule gave: what is typed makes a rectangle of it that stays. */
function autoKey(keyed: Keyed, axis: Axis): FigureKey {
  const { box, unit } = keyed;
  const [x, y] = [nanometres(box.x1 - box.x0), nanometres(box.y1 - box.y0)];
  const [mx, my] = [nanometres((box.x0 + box.x1) / 2), nanometres((box.y0 + box.y1) / 2)];
  const root = "template.outline";
  const place =
    mx === 0 && my === 0 ? {} : { [`${root}.at[0]`]: exactText(mx, unit), [`${root}.at[1]`]: exactText(my, unit) };
  const texts = {
    [`${root}.kind`]: "rectangle",
    [`${root}.x`]: exactText(x, unit),
    [`${root}.y`]: exactText(y, unit),
    ...place,
  };
  return {
    ...{
      key: `${root}.${axis}`,
      label: `template in ${axis}`,
      shown: shownIn(keyed, axis === "x" ? x : y),
      clears: false,
    },
    note: "Sized by the edge rule until now: what is typed makes it a rectangle of your sizes.",
    takes: { kind: "whole", root, texts },
  };
}

/** The hole of a group in its template. */
export function holeKey(keyed: Keyed, group: RodGroup): FigureKey {
  const key = keyed.isGrouped ? `${groupPrefix(keyed, group)}hole` : "template.hole";
  const note = keyed.isWritten(key) ? "Empty: by the rules again." : "By the rules until now.";
  return ownKey(key, `hole in the template${groupWords(keyed, group)}`, shownIn(keyed, group.hole.value), {
    note,
    clears: true,
  });
}

/** The rods of a group. */
export function rodKey(keyed: Keyed, group: RodGroup): FigureKey {
  return ownKey(`${groupPrefix(keyed, group)}rods.diameter`, `rods${groupWords(keyed, group)}`, group.rod.size);
}

/** Where one rod stands. */
export function rodPlaceKeys(keyed: Keyed, group: RodGroup, { center }: Hole): readonly FigureKey[] {
  if (group.pattern.kind === "circle") return circleKeys(keyed, group);
  return (["x", "y"] as const).flatMap((axis) => patternKeys(keyed, group, axis, center[axis] * 1e6));
}

/** Size of the opening; one that the rules sized becomes one of your own. */
export function openingKeys(keyed: Keyed): readonly FigureKey[] {
  const { opening } = keyed.base.template;
  const root = "template.opening";
  switch (opening.kind) {
    case "none":
      return [];
    case "circle":
      return [ownKey(`${root}.diameter`, "opening", shownIn(keyed, opening.diameter))];
    case "rectangle":
      return [
        ownKey(`${root}.x`, "opening in x", shownIn(keyed, opening.x)),
        ownKey(`${root}.y`, "opening in y", shownIn(keyed, opening.y)),
        ownKey(`${root}.radius`, "its corner radius", shownIn(keyed, opening.radius), { clears: true }),
      ];
    case "auto":
      return autoOpeningKeys(keyed);
  }
}

function autoOpeningKeys(keyed: Keyed): readonly FigureKey[] {
  const texts = autoOpeningTexts(keyed);
  const note = "Sized by the rules until now: what is typed stays.";
  const takes: Takes = { kind: "whole", root: "template.opening", texts };
  return Object.entries(texts)
    .filter(([key]) => !key.includes("["))
    .map(
      ([key, shown]): FigureKey => ({
        ...{ key, shown, note, takes },
        label: `opening ${key.split(".").at(-1)}`,
        clears: false,
      }),
    );
}

function autoOpeningTexts({ plate, unit }: Keyed): Readonly<Record<string, string>> {
  const hole = plate.holes.find(({ role }) => role === "opening");
  if (hole === undefined) return {};
  const { shape, center } = hole;
  const say = (length: number) => exactText(length, unit);
  const root = "template.opening";
  const size =
    shape.kind === "circle"
      ? { [`${root}.diameter`]: say(shape.diameter) }
      : { [`${root}.x`]: say(shape.width), [`${root}.y`]: say(shape.height), [`${root}.radius`]: say(shape.radius) };
  const [x, y] = [nanometres(center.x * 1e6), nanometres(center.y * 1e6)];
  return x === 0 && y === 0 ? size : { ...size, [`${root}.at[0]`]: say(x), [`${root}.at[1]`]: say(y) };
}

/** Where the opening stands. Both coordinates are written at once where none is written yet. */
export function openingPlaceKeys(keyed: Keyed): readonly FigureKey[] {
  const { opening } = keyed.base.template;
  if (opening.kind !== "circle" && opening.kind !== "rectangle") return openingKeys(keyed);
  return centerKeys(keyed, "template.opening", opening.at, "opening");
}

/** Both coordinates of a centre; where none is written yet, the first that is typed writes the other as 0. */
export function centerKeys(keyed: Keyed, root: string, place: Offset, what: string): readonly FigureKey[] {
  const at = `${root}.at`;
  const isThere = keyed.isWritten(`${at}[0]`);
  return (["x", "y"] as const).map((axis): FigureKey => {
    const own = ownKey(`${at}[${INDEX[axis]}]`, `${axis} of the ${what}`, shownIn(keyed, place[axis]));
    return isThere
      ? own
      : { ...own, takes: { kind: "whole", root: at, texts: { [`${at}[0]`]: "0", [`${at}[1]`]: "0" } } };
  });
}

/** The corners of the template as they are written. */
export function cornerKeys(keyed: Keyed): readonly FigureKey[] {
  const { outline } = keyed.base.template;
  const corner = "corner" in outline ? outline.corner : null;
  if (corner === null || corner.kind === "square") return [];
  const root = "template.outline.corner";
  if (corner.kind === "round") {
    const key = keyed.isWritten(`${root}.radius`) ? "radius" : "size";
    return [ownKey(`${root}.${key}`, "radius of the corners", shownIn(keyed, corner.radius))];
  }
  if (keyed.isWritten(`${root}.size`))
    return [ownKey(`${root}.size`, `${corner.kind} of the corners`, shownIn(keyed, corner.x))];
  return (["x", "y"] as const).map((axis) =>
    ownKey(`${root}.${axis}`, `${corner.kind} along ${axis}`, shownIn(keyed, corner[axis])),
  );
}

/** Size, place and more of the base plate or the concrete. */
export function neighbourKeys(keyed: Keyed, name: "base plate" | "concrete"): readonly FigureKey[] {
  const { basePlate, concrete } = keyed.base;
  const [root, what, of] =
    name === "base plate"
      ? (["basePlate", "base plate", basePlate] as const)
      : (["concrete", "concrete", concrete] as const);
  const { shape } = of;
  if (shape.kind === "missing") return [];
  const size =
    shape.value.kind === "circle"
      ? [ownKey(`${root}.diameter`, `diameter of the ${what}`, shownIn(keyed, shape.value.diameter))]
      : [
          ownKey(`${root}.x`, `${what} in x`, shownIn(keyed, shape.value.x)),
          ownKey(`${root}.y`, `${what} in y`, shownIn(keyed, shape.value.y)),
        ];
  return [
    ...size,
    ...centerKeys(keyed, root, of.at, what),
    ...(name === "base plate" ? plateKeys(keyed) : depthKeys(keyed)),
  ];
}

function plateKeys(keyed: Keyed): readonly FigureKey[] {
  const { basePlate, groups } = keyed.base;
  const say = (input: (typeof basePlate)["thickness"]) => (input.kind === "missing" ? "" : shownIn(keyed, input.value));
  const holes = groups.map((group) => {
    const key = keyed.isGrouped ? `${groupPrefix(keyed, group)}baseHole` : "basePlate.hole";
    return ownKey(key, `hole in the base plate${groupWords(keyed, group)}`, say(group.baseHole), { clears: true });
  });
  return [
    ownKey("basePlate.thickness", "thickness of the base plate", say(basePlate.thickness), { clears: true }),
    ...holes,
  ];
}

function depthKeys(keyed: Keyed): readonly FigureKey[] {
  const { depth } = keyed.base.concrete;
  return [
    ownKey("concrete.depth", "depth of the concrete", depth.kind === "missing" ? "" : shownIn(keyed, depth.value), {
      clears: true,
    }),
  ];
}
