/** A rod on paper: its scale, and where the view is broken so that it fits; what is not broken away is to scale. */
import type { Unit } from "../../units/length.js";
import { type Scale, scales } from "../sheet-sizes.js";
import { onPaper, type RodShape, type Span } from "./shape.js";

/** Paper that a rod may take, mm: along its axis, across it from the axis upward, and from the axis down for a hook. */
export interface RodRoom {
  readonly along: number;
  readonly half: number;
  readonly hook: number;
}

/** Where stations of a rod stand on paper, mm from its lowest point. */
export interface FittedRod {
  readonly scale: Scale;
  readonly length: number;
  /** Paper places of station breaks: middle of each. */
  readonly breaks: readonly number[];
  place(station: number): number;
  /** True where nothing is broken away between the two. */
  isWhole(span: Span): boolean;
}

/** A rod thinner than this on paper, mm, shows no thread; thicker than that it takes the room of its length. */
const THINNEST = 3.2;
const [BROKEN_LEAST, BROKEN_MOST] = [4.4, 8];
/** Gap between the two lines of a break, mm. */
export const BREAK_GAP = 1.6;
/** No stretch is broken to less, mm. */
const LEAST_STRETCH = 14;

/** Whole at the largest scale at which it fits and its thread shows; else broken, at the largest at which it is not clumsy. */
export function fitRod(shape: RodShape, room: RodRoom, unit: Unit): FittedRod {
  const known = scales(unit);
  const fits = known.filter(({ factor }) => isNarrow(shape, room, factor));
  const size = ({ factor }: Scale) => onPaper(2 * shape.radius, factor);
  const whole = fits.find((scale) => onPaper(shape.top, scale.factor) <= room.along && size(scale) >= THINNEST);
  if (whole !== undefined && size(whole) <= 2 * BROKEN_MOST) return fitted(shape, whole, room.along);
  const broken =
    fits.find((scale) => size(scale) <= BROKEN_MOST && size(scale) >= BROKEN_LEAST) ??
    fits.find((scale) => size(scale) <= BROKEN_MOST) ??
    known.at(-1);
  if (broken === undefined) throw new RangeError("no scales");
  return fitted(shape, broken, room.along);
}

function isNarrow({ parts, radius, hook }: RodShape, { half, hook: down }: RodRoom, factor: number): boolean {
  const widest = parts.reduce((most, part) => Math.max(most, part.half), radius);
  return onPaper(widest, factor) <= half && (hook === null || onPaper(hook.reach, factor) <= down);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly whole: number;
}

function fitted(shape: RodShape, scale: Scale, along: number): FittedRod {
  const stretches = stretchesOf(shape, scale.factor);
  const cap = capFor(
    stretches.map(({ whole }) => whole),
    along,
  );
  let at = 0;
  const placed = stretches.map((stretch) => {
    const length = Math.min(stretch.whole, cap);
    at += length;
    return { ...stretch, start: at - length, length, isBroken: stretch.whole > cap };
  });
  const place = (station: number) => {
    const own = placed.find(({ to }) => station <= to) ?? placed.at(-1);
    if (own === undefined) return onPaper(station, scale.factor);
    const fromLow = onPaper(station - own.from, scale.factor);
    if (!own.isBroken || station <= own.from) return own.start + fromLow;
    return station >= own.to
      ? own.start + own.length + onPaper(station - own.to, scale.factor)
      : own.start + own.length / 2;
  };
  return {
    scale,
    length: at,
    breaks: placed.flatMap(({ isBroken, start, length }) => (isBroken ? [start + length / 2] : [])),
    place,
    isWhole: ([low, high]) => placed.every(({ isBroken, from, to }) => !isBroken || to <= low || from >= high),
  };
}

/** From feature to feature. */
function stretchesOf(shape: RodShape, factor: number): readonly Stretch[] {
  const spans = [
    ...shape.threads,
    ...shape.parts.map(({ span }) => span),
    ...(shape.swedged === null ? [] : [shape.swedged]),
  ];
  const bend = shape.hook === null ? [] : [2 * shape.shank + shape.hook.inside];
  const depths = shape.depths.flatMap(({ span }) => span);
  const stations = [0, shape.top, ...spans.flat(), ...bend, ...depths].filter((each) => each >= 0 && each <= shape.top);
  const sorted = [...new Set(stations)].sort((a, b) => a - b);
  return sorted.slice(1).map((to, i) => {
    const from = sorted[i] ?? 0;
    return { from, to, whole: onPaper(to - from, factor) };
  });
}

/** The length to which longer stretches are broken, so that all together are as long as the room. */
function capFor(lengths: readonly number[], room: number): number {
  const total = (cap: number) => lengths.reduce((sum, length) => sum + Math.min(length, cap), 0);
  if (total(Number.POSITIVE_INFINITY) <= room) return Number.POSITIVE_INFINITY;
  let [low, high] = [0, room];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (total(middle) <= room) low = middle;
    else high = middle;
  }
  return Math.max(low, LEAST_STRETCH);
}

const HALVINGS = 30;
