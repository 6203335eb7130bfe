/** Words with leaders under a rod: what holds its lower end, the bend, thread and colour of its top. */
import type { RodDetail } from "../../rods/detail/model.js";
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
  clear: readonly [number, number],
): readonly Callout[] {
  return [...lowerParts(detail, rod, unit), ...hookCallout(detail, rod, unit), ...topCallouts(detail, rod, clear)];
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
  if (value.nuts === 0) return [`${own}, WELDED`];
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
const SHARES = [0.45, 0.3, 0.6, 0.2, 0.75];

function topCallouts(detail: RodDetail, rod: PlacedRod, [from, to]: readonly [number, number]): readonly Callout[] {
  const { shape } = rod;
  const [low, high] = topThread(rod);
  const share = SHARES.find((each) => low + (high - low) * each < from || low + (high - low) * each > to) ?? 0.45;
  const both = shape.threads.length > 1 ? ", BOTH ENDS" : detail.fullThread ? ", FULL LENGTH" : "";
  const off = -halfAt(rod, shape.top);
  const thread: Callout = {
    end: "top",
    x: low + (high - low) * share,
    y: rod.y + off,
    words: `${detail.threadCallout}${classWords(detail)}${both}`,
  };
  const color = detail.endColor.kind === "given" ? [`THIS END ${detail.endColor.value.toUpperCase()}`] : [];
  return [thread, ...color.map((words): Callout => ({ end: "top", x: high - 1, y: rod.y + off, words }))];
}

function classWords({ threadClass }: RodDetail): string {
  return threadClass.kind === "given" ? "" : ", CLASS NOT GIVEN";
}

/** On paper, above the last break of the view. */
function topThread({ shape, fit, x }: PlacedRod): readonly [number, number] {
  const from = shape.threads.at(-1)?.[0] ?? 0;
  const breaks = fit.breaks.filter((each) => each > fit.place(from)).map((each) => each + 2);
  return [x + Math.max(fit.place(from), ...breaks.slice(-1)), x + fit.place(shape.top)];
}

/** Between baselines, in letters. */
const LEADING = 1.75;

/** From left to right, a stretch of paper. */
type Stretch = readonly [number, number];

/** Height that callouts take under a rod; `taken`: stretch of the first row in which the top of concrete is named. */
export function calloutHeight(callouts: readonly Callout[], letter: number, taken: Stretch): number {
  return rowsOf(callouts, letter, taken).reduce((most, { row }) => Math.max(most, row + 1), 1) * letter * LEADING;
}

interface Rowed {
  readonly callout: Callout;
  readonly row: number;
}

const GAP = 1.6;

/** The nearer to the middle, the higher, so that no leader crosses words; the top's stand under the others where both find no room in a row. */
function rowsOf(callouts: readonly Callout[], letter: number, taken: Stretch): readonly Rowed[] {
  const sorted = (end: Callout["end"]) => callouts.filter((each) => each.end === end).toSorted((a, b) => a.x - b.x);
  const lower = sorted("lower").reverse();
  const top = sorted("top");
  const stretch = ({ x, words, end }: Callout): Stretch => {
    const reach = textWidth(words, letter) + 1.5 * GAP;
    return end === "lower" ? [x, x + reach] : [x - reach, x];
  };
  const meets = ([a, b]: Stretch, [c, d]: Stretch) => a < d + CLEAR && c < b + CLEAR;
  const low = lower.slice(0, 1).some((each) => meets(stretch(each), taken)) ? 1 : 0;
  const high = top.slice(0, 1).some((each) => meets(stretch(each), taken)) ? 1 : 0;
  const clash = lower.some((each) => top.some((other) => meets(stretch(each), stretch(other))));
  const shift = clash ? Math.max(high, lower.length + low) : high;
  return [
    ...lower.map((callout, row) => ({ callout, row: row + low })),
    ...top.map((callout, i) => ({ callout, row: i + shift })),
  ];
}

/** Between words in one row, mm. */
const CLEAR = 1.5;

/** Under `y`, row by row. */
export function calloutItems(
  callouts: readonly Callout[],
  y: number,
  letter: number,
  taken: Stretch,
): readonly SceneItem[] {
  return rowsOf(callouts, letter, taken).map(({ callout, row }) => {
    const { x, y: edge, words, end } = callout;
    const middle = y - (row + 0.5) * letter * LEADING;
    const side = end === "lower" ? 1 : -1;
    return group("rod-callout", [
      stroke("leader", line(at(x, edge), at(x, middle)), line(at(x, middle), at(x + side * GAP, middle))),
      arrowHead(at(x, edge), 0, 1, 2),
      text("label", words, at(x + side * 1.5 * GAP, middle - letter / 2), letter, {
        anchor: end === "lower" ? "start" : "end",
      }),
    ]);
  });
}
