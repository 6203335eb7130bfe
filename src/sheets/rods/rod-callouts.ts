/** Words with leaders under a rod: what holds its lower end, the bend, thread and colour of its top. */
import { isWeldedOn } from "../../job/model/stack.js";
import type { RodDetail } from "../../rods/detail/model.js";
import { greatestOf } from "../../units/extremes.js";
import { formatLength, type Unit } from "../../units/index.js";
import type { Length } from "../../units/length.js";
import { arrowHead, at, group, line, stroke, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { halfAt, type PlacedRod, spotOf } from "./draw-rod.js";
import { onPaper } from "./shape.js";

/** Words at a place of the rod; those of the lower end stand to the right of their leader, those of the top to the left. */
export interface Callout {
  readonly end: "lower" | "top";
  /** mm on paper, where the leader meets what it names. */
  readonly x: number;
  readonly y: number;
  readonly words: string;
}

/** Of a rod that is placed. `clear`: stretch of paper that leaders of the top keep out of. */
export function calloutsOf(
  detail: RodDetail,
  rod: PlacedRod,
  unit: Unit,
  clear: Stretch,
  letter: number,
): readonly Callout[] {
  return [
    ...lowerParts(detail, rod, unit),
    ...hookCallout(detail, rod, unit),
    ...topCallouts(detail, rod, clear, letter),
  ];
}

function lowerParts(detail: RodDetail, rod: PlacedRod, unit: Unit): readonly Callout[] {
  const { shape, fit } = rod;
  const under = (station: number, words: string): Callout => {
    const { x, y } = spotOf(rod, station, -halfAt(rod, station));
    return { end: "lower", x, y, words };
  };
  if (!shape.isEnded) return [under(0, "LOWER END NOT GIVEN")];
  const words = partWords(detail, unit);
  const lowest = shape.parts.at(-1);
  const parts = shape.parts.map(({ span: [from, to] }, i) => under((from + to) / 2, words[i] ?? ""));
  if (detail.tackWelds.length === 0 || lowest === undefined) return parts;
  const { x, y } = spotOf(rod, lowest.span[0], -onPaper(shape.radius, fit.scale.factor));
  return [...parts, { end: "lower", x: x - 0.9, y: y - 0.6, words: "TACK WELD, UNDERSIDE OF THE NUT" }];
}

function length(nanometres: number, unit: Unit): string {
  return formatLength(nanometres as Length, unit);
}

/** Of the parts at the lower end, from the top down. */
function partWords({ bottom, nut }: RodDetail, unit: Unit): readonly string[] {
  if (bottom.kind === "missing") return [];
  const nutWords = nut.kind === "given" ? `${nut.value.kind.toUpperCase()} NUT` : "NUT, KIND NOT GIVEN";
  const { value } = bottom;
  const plate = (
    words: string,
    { shape, size, thickness }: { readonly shape: string; readonly size: Length; readonly thickness: Length },
  ) => {
    const across = length(size, unit);
    return `${words} ${shape === "square" ? `${across} x ${across}` : `⌀${across}`} x ${length(thickness, unit)}`;
  };
  if (value.kind === "nut") return [...(value.washer === null ? [] : [plate("PLATE WASHER", value.washer)]), nutWords];
  if (value.kind !== "plate") return [];
  const own = plate("PLATE", value);
  if (isWeldedOn(value)) return [`${own}, WELDED`];
  return value.nuts === 2 ? [nutWords, own, nutWords] : [own, nutWords];
}

function hookCallout({ hook }: RodDetail, rod: PlacedRod, unit: Unit): readonly Callout[] {
  const { shape, fit } = rod;
  if (hook?.kind !== "given" || shape.hook === null) return [];
  const [inside, half] = [onPaper(shape.hook.inside, fit.scale.factor), onPaper(shape.shank, fit.scale.factor)];
  const out = inside * (1 - Math.SQRT1_2);
  const x = rod.x + 2 * half + out;
  const words = `R ${length(hook.value.insideRadius, unit)} INSIDE, BEND 90°`;
  return [{ end: "lower", x, y: rod.y - half - out, words }];
}

/** Shares of the top thread at which its leader may stand. */
const SHARES = [0.45, 0.3, 0.6, 0.2, 0.75, 0.85, 0.95];

/** `clear`: stretch of paper that the leader of the thread keeps out of; its words stay right of the lower end. */
function topCallouts(detail: RodDetail, rod: PlacedRod, [from, to]: Stretch, letter: number): readonly Callout[] {
  const { shape } = rod;
  const [low, high] = topThread(rod);
  const both = shape.threads.length > 1 ? ", BOTH ENDS" : detail.fullThread ? ", FULL LENGTH" : "";
  const words = `${detail.threadCallout}${both}`;
  const left = shape.hook === null ? -LEFT_OVER : onPaper(2 * shape.shank, rod.fit.scale.factor) + CLEAR;
  const least = rod.x + left + textWidth(words, letter) + 1.5 * GAP;
  const places = SHARES.map((share) => low + (high - low) * share);
  const x = places.find((each) => each >= least && (each < from || each > to)) ?? high - (high - low) * 0.05;
  const y = rod.y - halfAt(rod, shape.top);
  const color = detail.endColor.kind === "given" ? [`THIS END ${detail.endColor.value.toUpperCase()}`] : [];
  return [{ end: "top", x, y, words }, ...color.map((each): Callout => ({ end: "top", x: high - 1, y, words: each }))];
}

/** Words may begin so far left of a straight rod, mm. */
const LEFT_OVER = 8;

/** On paper, above the last break of the view. */
function topThread({ shape, fit, x }: PlacedRod): readonly [number, number] {
  const from = shape.threads.at(-1)?.[0] ?? 0;
  const breaks = fit.breaks.filter((each) => each > fit.place(from)).map((each) => each + 2);
  return [x + greatestOf(breaks.slice(-1), fit.place(from)), x + fit.place(shape.top)];
}

/** Between baselines, in letters. */
const LEADING = 1.75;

/** From left to right, a stretch of paper. */
type Stretch = readonly [number, number];

/**
 * What stands under a rod: its callouts, the stretch of the first row in which the top of concrete is named, and words that
 * begin at the left of the figure.
 */
export interface UnderRod {
  readonly callouts: readonly Callout[];
  readonly taken: Stretch;
  readonly caption: { readonly x: number; readonly words: string };
  readonly letter: number;
}

/** Height that it takes. */
export function heightUnder(under: UnderRod): number {
  const { callouts, letter, taken } = under;
  const rows = rowsOf(callouts, letter, taken).map(({ row }) => row);
  return (greatestOf([...rows, captionRow(under)]) + 1) * letter * LEADING;
}

/** How far right its words reach, on paper. */
export function rightOfUnder({ callouts, caption, letter }: UnderRod): number {
  return greatestOf([
    caption.x + textWidth(caption.words, letter),
    ...callouts.map((each) => stretchOf(each, letter)[1]),
  ]);
}

/** The first row under those of the lower end in which the caption meets nothing. */
function captionRow({ callouts, taken, caption, letter }: UnderRod): number {
  const own: Stretch = [caption.x, caption.x + textWidth(caption.words, letter)];
  const rows = rowsOf(callouts, letter, taken);
  const isFree = (row: number) =>
    (row > 0 || !meet(own, taken)) &&
    rows.every((each) =>
      each.callout.end === "lower" ? each.row < row : each.row !== row || !meet(own, stretchOf(each.callout, letter)),
    );
  let row = 0;
  while (!isFree(row)) row += 1;
  return row;
}

/** A callout in its row; without a leader where no order of rows keeps leaders off words. */
interface Rowed {
  readonly callout: Callout;
  readonly row: number;
  readonly isLed: boolean;
}

const GAP = 1.6;

/**
 * Of each end the nearer to the middle, the higher, so that no leader crosses words. Both ends share rows where they have room
 * there; else those of one end stand under those of the other.
 */
function rowsOf(callouts: readonly Callout[], letter: number, taken: Stretch): readonly Rowed[] {
  const sorted = (end: Callout["end"]) => callouts.filter((each) => each.end === end).toSorted((a, b) => a.x - b.x);
  const [lower, top] = [sorted("lower").reverse(), sorted("top")];
  const stretch = (each: Callout) => stretchOf(each, letter);
  const firstFree = (list: readonly Callout[]) => (list.slice(0, 1).some((each) => meet(stretch(each), taken)) ? 1 : 0);
  const [low, high] = [firstFree(lower), firstFree(top)];
  const pairs = lower.flatMap((a) => top.map((b) => ({ a: stretch(a), b: stretch(b) })));
  const placed = (lowFrom: number, topFrom: number, isLed = true): readonly Rowed[] => [
    ...lower.map((callout, i) => ({ callout, row: i + lowFrom, isLed })),
    ...top.map((callout, i) => ({ callout, row: i + topFrom, isLed })),
  ];
  if (!pairs.some(({ a, b }) => meet(a, b))) return placed(low, high);
  if (pairs.every(({ a, b }) => b[1] > a[1] + CLEAR)) return placed(low, Math.max(high, lower.length + low));
  if (pairs.every(({ a, b }) => a[0] < b[0] - CLEAR)) return placed(Math.max(low, top.length + high), high);
  return placed(1, lower.length + 1, false);
}

/** From the leader to the end of the words. */
function stretchOf({ x, words, end }: Callout, letter: number): Stretch {
  const reach = textWidth(words, letter) + 1.5 * GAP;
  return end === "lower" ? [x, x + reach] : [x - reach, x];
}

function meet([a, b]: Stretch, [c, d]: Stretch): boolean {
  return a < d + CLEAR && c < b + CLEAR;
}

/** Between words in one row, mm. */
const CLEAR = 1.5;

/** Under `y`, row by row. */
export function itemsUnder(under: UnderRod, y: number): readonly SceneItem[] {
  const { callouts, taken, letter, caption } = under;
  const foot = y - (captionRow(under) + 0.5) * letter * LEADING - letter / 2;
  const told = text("note", caption.words, at(caption.x, foot), letter);
  const led = rowsOf(callouts, letter, taken).map(({ callout, row, isLed }) => {
    const { x, y: edge, words, end } = callout;
    const middle = y - (row + 0.5) * letter * LEADING;
    const side = end === "lower" ? 1 : -1;
    const anchor = end === "lower" ? "start" : "end";
    const label = text("label", words, at(x + side * 1.5 * GAP, middle - letter / 2), letter, { anchor });
    if (!isLed) return group("rod-callout", [label]);
    return group("rod-callout", [
      stroke("leader", line(at(x, edge), at(x, middle)), line(at(x, middle), at(x + side * GAP, middle))),
      arrowHead(at(x, edge), 0, 1, 2),
      label,
    ]);
  });
  return [...led, told];
}
