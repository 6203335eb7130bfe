/**
 * Dimensions by ASME Y14.5 and ISO 129 habit: text above its line and parallel to it, read from the bottom or the right;
 * first line and the next ones at least as far as the standard asks, extension lines with a gap and an overshoot. Every dimension is a group that carries its value, so that its text can be held against its end points.
 */

import { extensionGap, firstDimensionLine, nextDimensionLine } from "../standards/index.js";
import { formatLength, toMillimetres } from "../units/index.js";
import type { Length, Unit } from "../units/length.js";
import { arrowHead, at, circle, group, line, stroke, strokeOf, text } from "./items.js";
import { crossesText } from "./occupied.js";
import { type Draft, hasRoom, interrupt, put } from "./paper.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import { measureText, textWidth } from "./text-metrics.js";

/** Gap between a feature and its extension line. */
const EXTENSION_GAP = toMillimetres(extensionGap.value);
/** How far an extension line runs past the dimension line: less than the 3 mm of the standard, as rows stand close. */
const OVERSHOOT = 2;
const TEXT_GAP = 1;

/** Between a dimension line and the baseline of its figure: brackets and commas hang below it. */
function textGap(words: string, letter: number): number {
  return Math.max(TEXT_GAP, measureText(words, letter, false).drop + 0.6);
}

/** Distance from the outline to the first dimension line, and between lines, for a letter height. */
export function lineSpacing(letter: number): { readonly first: number; readonly next: number } {
  const [first, next] = [toMillimetres(firstDimensionLine.value), toMillimetres(nextDimensionLine.value)];
  return { first: Math.max(first, 2 * letter + 4), next: Math.max(next, 2 * letter + 2.6) };
}

/** One stretch of a dimension line, drawn from `p` to `q` on paper. */
export interface Run {
  readonly p: PaperPoint;
  readonly q: PaperPoint;
  readonly value: Length;
  /** Before the figure, as `Ø`. */
  readonly prefix: string;
  /** The whole text, where it is not the plain figure: feet and inches. */
  readonly words?: string;
  /** Where the text may stand outside the run when it is too short: past `p`, past `q`. */
  readonly outside: readonly ("p" | "q")[];
  /** A short run has arrows outside (alone) or dots (in a chain). */
  readonly short: "arrows outside" | "dots";
}

/** The stretches of a straight line that are drawn. */
export type Breaks = (from: PaperPoint, to: PaperPoint) => readonly (readonly [PaperPoint, PaperPoint])[];

const UNBROKEN: Breaks = (from, to) => [[from, to]];

interface Frame {
  /** Point at `u` along the run from `p` and `w` to the side of the text. */
  readonly point: (u: number, w: number) => PaperPoint;
  readonly turn: number;
  readonly length: number;
  readonly dx: number;
  readonly dy: number;
}

function frameOf(run: Run): Frame {
  const length = Math.hypot(run.q.x - run.p.x, run.q.y - run.p.y);
  const dx = (run.q.x - run.p.x) / length;
  const dy = (run.q.y - run.p.y) / length;
  const point = (u: number, w: number) => at(run.p.x + dx * u - dy * w, run.p.y + dy * u + dx * w);
  return { point, turn: (Math.atan2(dy, dx) * 180) / Math.PI, length, dx, dy };
}

/** Arrow length for a letter height: about 3 mm. */
function arrowLength(letter: number): number {
  return letter >= 3 ? 3 : 2.4;
}

/** The text of a dimension. */
function dimensionText(value: Length, unit: Unit, prefix = ""): string {
  return `${prefix}${formatLength(value, unit)}`;
}

/** Takes the paper of the lines of all runs first; afterwards each text finds its room. False when one does not. */
export function putRuns(draft: Draft, runs: readonly Run[], unit: Unit, letter: number): boolean {
  const drawn = runs.map((run) => ({ run, frame: frameOf(run), lines: runLines(run, letter) }));
  const start = draft.items.length;
  for (const { lines } of drawn) put(draft, ...lines);
  draft.items.length = start;
  return drawn.every(({ run, frame, lines }) => {
    const words = run.words ?? dimensionText(run.value, unit, run.prefix);
    const label = findPlace(draft, run, frame, words, letter);
    if (label === null) return false;
    put(draft, ...label);
    draft.items.length -= label.length;
    const data = { valueNm: run.value, x0: run.p.x, y0: run.p.y, x1: run.q.x, y1: run.q.y };
    draft.items.push(group("dimension", [...lines, ...label], data));
    return true;
  });
}

function runLines(run: Run, letter: number, breaks = UNBROKEN): readonly SceneItem[] {
  const frame = frameOf(run);
  const arrow = arrowLength(letter);
  const whole = strokeOf(
    "dimension",
    breaks(run.p, run.q).map(([from, to]) => line(from, to)),
  );
  if (frame.length >= 2 * arrow + 1)
    return [whole, arrowHead(run.p, -frame.dx, -frame.dy, arrow), arrowHead(run.q, frame.dx, frame.dy, arrow)];
  if (run.short === "dots") return [stroke("dimension", line(run.p, run.q), circle(run.p, 0.4), circle(run.q, 0.4))];
  const reach = 2 * arrow;
  return [
    stroke("dimension", line(frame.point(-reach, 0), frame.point(frame.length + reach, 0))),
    arrowHead(run.p, frame.dx, frame.dy, arrow),
    arrowHead(run.q, -frame.dx, -frame.dy, arrow),
  ];
}

type Label = readonly SceneItem[];

function findPlace(draft: Draft, run: Run, frame: Frame, words: string, letter: number): Label | null {
  for (const label of candidates(run, frame, words, letter)) {
    const [item, ...lines] = label;
    if (item === undefined || item.kind !== "text" || !hasRoom(draft, item, 0.4)) continue;
    if (lines.every((extra) => isClear(draft, extra))) return label;
  }
  return null;
}

function isClear(draft: Draft, extra: SceneItem): boolean {
  return (
    extra.kind !== "stroke" ||
    extra.parts.every((part) => part.kind !== "line" || !crossesText(draft.taken, part.from, part.to))
  );
}

/** In order of preference: on the line, past its ends, a row higher or lower with a tick to the line. */
function* candidates(run: Run, frame: Frame, words: string, letter: number): Generator<Label> {
  const width = textWidth(words, letter);
  const spare = frame.length - width - 1.2;
  const gap = textGap(words, letter);
  const label = (u: number, w: number) =>
    text("dimension", words, frame.point(u, w), letter, { anchor: "middle", turn: frame.turn });
  const middle = frame.length / 2;
  if (spare >= 0) for (const share of SHARES) yield [label(middle + (share * spare) / 2, gap)];
  const past =
    (run.short === "dots" || frame.length >= 2 * arrowLength(letter) + 1 ? 2 : 2 * arrowLength(letter)) + width / 2;
  for (const end of run.outside) {
    const u = end === "p" ? -past : frame.length + past;
    const reach = end === "p" ? -past - width / 2 : frame.length + past + width / 2;
    const from = frame.point(end === "p" ? 0 : frame.length, 0);
    yield [label(u, gap), stroke("dimension", line(from, frame.point(reach, 0)))];
  }
  for (const w of [TEXT_GAP + gap + letter + 0.6, -TEXT_GAP - letter])
    for (const shift of [0, 0.4, -0.4, 0.8, -0.8]) {
      const u = middle + shift * width;
      const tick = w > 0 ? w - gap + 0.5 : w + letter + 0.5;
      const foot = frame.point(middle, 0);
      yield [
        label(u, w),
        ...(w > 0 || Math.abs(shift) > 0
          ? [stroke("leader", line(foot, frame.point(middle + shift * width * 0.9, tick)))]
          : []),
      ];
    }
}

const SHARES = [0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9];

/**
 * A dimension straight between two features (a diagonal): its text stands anywhere along the line where there is room,
 * rather clear of centre lines, else interrupting them. Nothing is drawn and false returned when there is none.
 */
export function putAligned(
  draft: Draft,
  run: Run,
  unit: Unit,
  letters: readonly number[],
  breaks: Breaks = UNBROKEN,
): boolean {
  if (breaks(run.p, run.q).some(([from, to]) => crossesText(draft.taken, from, to))) return false;
  return letters.some((letter) =>
    (["all", "hard"] as const).some((strokes) => putAlong(draft, readable(run), unit, letter, strokes, breaks)),
  );
}

function putAlong(
  draft: Draft,
  run: Run,
  unit: Unit,
  letter: number,
  strokes: "all" | "hard",
  breaks: Breaks,
): boolean {
  const frame = frameOf(run);
  const words = run.words ?? dimensionText(run.value, unit, run.prefix);
  const width = textWidth(words, letter);
  const gap = textGap(words, letter);
  for (const middle of middlesAlong(breaks(run.p, run.q), run.p, width / 2 + arrowLength(letter))) {
    const label = text("dimension", words, frame.point(middle, gap), letter, { anchor: "middle", turn: frame.turn });
    if (!hasRoom(draft, label, 0.5, strokes)) continue;
    interrupt(draft, label);
    const data = { valueNm: run.value, x0: run.p.x, y0: run.p.y, x1: run.q.x, y1: run.q.y };
    put(draft, group("dimension", [...runLines(run, letter, breaks), label], data));
    return true;
  }
  return false;
}

/** Distances from `start` at which a figure may have its middle: on the longest stretch first, from its middle outward. */
function middlesAlong(drawn: ReturnType<Breaks>, start: PaperPoint, half: number): readonly number[] {
  const reach = (point: PaperPoint) => Math.hypot(point.x - start.x, point.y - start.y);
  const stretches = drawn.map(([p, q]) => ({
    middle: (reach(p) + reach(q)) / 2,
    spare: (reach(q) - reach(p)) / 2 - half,
  }));
  return stretches
    .sort((a, b) => b.spare - a.spare)
    .flatMap(({ middle, spare }) =>
      Array.from({ length: Math.max(0, Math.floor(spare) + 1) }, (_, k) =>
        k === 0 ? [middle] : [middle + k, middle - k],
      ).flat(),
    );
}

/** The run turned about so that its text reads from the bottom or the right of the sheet. */
function readable(run: Run): Run {
  const dx = run.q.x - run.p.x;
  const forward = dx > 1e-9 || (Math.abs(dx) <= 1e-9 && run.q.y > run.p.y);
  return forward ? run : { ...run, p: run.q, q: run.p };
}

/** Extension line from a feature to just past the dimension line, on one straight line; broken off where `breaks` says. */
export function extension(feature: PaperPoint, onLine: PaperPoint, breaks = UNBROKEN): SceneItem {
  const length = Math.hypot(onLine.x - feature.x, onLine.y - feature.y);
  const dx = (onLine.x - feature.x) / length;
  const dy = (onLine.y - feature.y) / length;
  const from = at(feature.x + dx * EXTENSION_GAP, feature.y + dy * EXTENSION_GAP);
  const stretches = breaks(from, at(onLine.x + dx * OVERSHOOT, onLine.y + dy * OVERSHOOT));
  return strokeOf(
    "extension",
    stretches.map(([p, q]) => line(p, q)),
  );
}
