/**
 * What a rod looks like from its side: stations along its axis in nanometres, from the lowest point of rod or hook upward to
 * its top. What nobody gave stands at a likely place, and the shape says that it is not to scale.
 */
import type { Bottom, EndPlate } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import type { RodDetail } from "../../rods/detail/model.js";
import { findThreadInSeries } from "../../standards/index.js";
import { toMillimetres } from "../../units/index.js";
import type { Length } from "../../units/length.js";

/** From the lower to the upper station. */
export type Span = readonly [number, number];

/** A nut, washer or plate on the lower end; `half`: half of its width across the axis. */
export interface ShapePart {
  readonly kind: "nut" | "plate";
  readonly span: Span;
  readonly half: number;
}

/** A length that is dimensioned; null: it is not given, and says so. */
export interface Measured {
  readonly name: string;
  readonly short: string;
  readonly span: Span;
  readonly value: Length | null;
}

/** The rod from its side. */
export interface RodShape {
  readonly top: number;
  readonly radius: number;
  /** Half of the bar, less than `radius` under a rolled thread; and of the thread's core. */
  readonly shank: number;
  readonly core: number;
  readonly threads: readonly Span[];
  /** Swedged part. */
  readonly swedged: Span | null;
  /** Top of concrete; null where it is not known. */
  readonly concrete: number | null;
  readonly parts: readonly ShapePart[];
  /** Reach from the axis and inside radius; null of a straight rod. */
  readonly hook: { readonly reach: number; readonly inside: number } | null;
  /** False where the lower end is not given: it is drawn as broken off. */
  readonly isEnded: boolean;
  /** False where something stands at a likely place. */
  readonly isKnown: boolean;
  /** Along threads and swedged part. */
  readonly threadLengths: readonly Measured[];
  readonly depths: readonly Measured[];
  readonly overall: Measured;
}

/** Likely lengths as multiples of the diameter, where none is given. */
const LIKELY = { projection: 7, embedment: 14, thread: 4, below: 0.4, washer: 0.4, nut: 1, nutHalf: 0.95 } as const;

/** The shape of a rod. */
export function shapeOf(detail: RodDetail): RodShape {
  const { diameter, bar, hook, overall, fullThread } = detail;
  const radius = diameter / 2;
  const shank = bar.kind === "given" ? bar.value / 2 : radius;
  const above = orLikely(detail.projection, LIKELY.projection * diameter);
  const under = orLikely(detail.embedment, LIKELY.embedment * diameter);
  const stack = lowerStack(detail);
  const top =
    overall.kind === "given" ? overall.value.value : above + under + stack.height + (hook === null ? 0 : 2 * shank);
  const bearing = bearingOf(detail, top - above - under, hook === null ? stack.height : 2 * shank);
  const threads = threadsOf(detail, top);
  return {
    ...{ top, radius, shank, core: coreOf(detail), swedged: swedgedOf(detail) },
    threads: fullThread ? [[0, top]] : threads.map(({ span }) => span),
    concrete: detail.projection.kind === "given" ? top - above : null,
    parts: stack.place(bearing),
    hook: hook?.kind === "given" ? { reach: hook.value.reach, inside: hook.value.insideRadius } : null,
    isEnded: detail.bottom.kind === "given" && hook?.kind !== "missing",
    isKnown: isKnown(detail),
    threadLengths: [...(fullThread ? [] : threads), ...swedgedLength(detail)],
    depths: depthsOf(detail, top, above, bearing),
    overall: {
      name: "OVERALL",
      short: "OVERALL",
      span: [0, top],
      value: overall.kind === "given" ? overall.value.value : null,
    },
  };
}

function orLikely(input: Input<Length>, likely: number): number {
  return input.kind === "given" ? input.value : likely;
}

/** Everything that has a place is given. */
function isKnown({
  overall,
  projection,
  embedment,
  topThread,
  bottomThread,
  bottom,
  hook,
  fullThread,
  nut,
}: RodDetail): boolean {
  const ends =
    fullThread || (topThread.kind === "given" && (bottomThread.kind === "given" || !isThreadedBelow(bottom)));
  const lengths = [overall, projection, embedment, bottom].every(({ kind }) => kind === "given");
  return lengths && ends && hook?.kind !== "missing" && (nut.kind === "given" || !isThreadedBelow(bottom));
}

/** Nuts hold the lower end. */
function isThreadedBelow(bottom: Input<Bottom>): boolean {
  if (bottom.kind === "missing") return false;
  return bottom.value.kind === "nut" || (bottom.value.kind === "plate" && bottom.value.nuts > 0);
}

/** Where the embedment goes to: by both lengths where they are known, else as near the end as its parts allow. */
function bearingOf({ projection, embedment }: RodDetail, byLengths: number, likely: number): number {
  return projection.kind === "given" && embedment.kind === "given" ? byLengths : likely;
}

const CORE_DEPTH = (5 / 8) * Math.sqrt(3) * 0.5;

/** Half of the basic minor diameter: d - 1.0825 p (ISO 724, ASME B1.1). */
function coreOf({ thread, diameter }: RodDetail): number {
  const found = findThreadInSeries(thread, diameter);
  if (!found.found) return 0.42 * diameter;
  const { pitch, threadsPerInch } = found.row;
  const step = pitch ?? (threadsPerInch === null ? 0.1 * diameter : 25.4e6 / threadsPerInch);
  return diameter / 2 - CORE_DEPTH * step;
}

function threadsOf({ topThread, bottomThread, bottom, diameter, hook }: RodDetail, top: number): readonly Measured[] {
  const upper = orLikely(topThread, LIKELY.thread * diameter);
  const above: Measured = { name: "THREAD", short: "THREAD", span: [top - upper, top], value: givenLength(topThread) };
  const lower =
    bottomThread.kind === "given" ? bottomThread.value : isThreadedBelow(bottom) ? LIKELY.thread * diameter : 0;
  if (lower === 0 || hook !== null) return [above];
  return [{ name: "THREAD", short: "THREAD", span: [0, lower], value: givenLength(bottomThread) }, above];
}

function givenLength(input: Input<Length>): Length | null {
  return input.kind === "given" ? input.value : null;
}

function swedgedOf({ bottom }: RodDetail): Span | null {
  return bottom.kind === "given" && bottom.value.kind === "swedged" ? [0, bottom.value.length] : null;
}

function swedgedLength(detail: RodDetail): readonly Measured[] {
  const span = swedgedOf(detail);
  return span === null ? [] : [{ name: "SWEDGED", short: "SWEDGED", span, value: span[1] as Length }];
}

function depthsOf(
  { projection, embedment }: RodDetail,
  top: number,
  above: number,
  bearing: number,
): readonly Measured[] {
  const concrete = top - above;
  return [
    { name: "EMBEDMENT", short: "EMBED.", span: [bearing, concrete], value: givenLength(embedment) },
    { name: "PROJECTION", short: "PROJ.", span: [concrete, top], value: givenLength(projection) },
  ];
}

/** What stands at the lower end: its height below the bearing face and a little rod, and its parts from that face. */
interface LowerStack {
  readonly height: number;
  place(bearing: number): readonly ShapePart[];
}

function lowerStack({ bottom, nut, diameter }: RodDetail): LowerStack {
  if (bottom.kind === "missing") return { height: 0, place: () => [] };
  const height = nut.kind === "given" ? nut.value.height : LIKELY.nut * diameter;
  const half = nut.kind === "given" ? nut.value.acrossCorners / 2 : LIKELY.nutHalf * diameter;
  const nutAt = (upper: number): ShapePart => ({ kind: "nut", span: [upper - height, upper], half });
  const below = LIKELY.below * diameter;
  const { value } = bottom;
  if (value.kind === "nut") {
    const washer = value.washer;
    if (washer === null) return { height: height + below, place: (bearing) => [nutAt(bearing)] };
    return {
      height: washer.thickness + height + below,
      place: (bearing) => [plateAt(washer, bearing), nutAt(bearing - washer.thickness)],
    };
  }
  if (value.kind === "plate")
    return {
      height: value.thickness + (value.nuts === 0 ? 0 : height + below),
      place: (bearing) => [
        ...(value.nuts === 2 ? [nutAt(bearing + height)] : []),
        plateAt(value, bearing),
        ...(value.nuts > 0 ? [nutAt(bearing - value.thickness)] : []),
      ],
    };
  return { height: 0, place: () => [] };
}

function plateAt({ size, thickness }: EndPlate, upper: number): ShapePart {
  return { kind: "plate", span: [upper - thickness, upper], half: size / 2 };
}

/** A shape's length on paper at a scale, mm. */
export function onPaper(nanometres: number, scale: number): number {
  return toMillimetres(nanometres as Length) * scale;
}
