/** Certified fits of four and eight rods, against a general-purpose minimiser (compass search) on the same plates. */
import { randomSource } from "../../src/fit/random.js";
import type { FitHole, FitRod } from "../../src/index.js";
import { fitPlate } from "../../src/index.js";
import { compassSearch } from "./compass-search.js";
import { type Measure, timed } from "./measure.js";

const CASES = 20_000;
const BASELINE = 300;
const CLEARANCE = 10;

interface Case {
  readonly holes: readonly FitHole[];
  readonly rods: readonly FitRod[];
}

/** Rods of a 300 x 250 pattern in millimetres, `ny` rows, each off by up to 6 either way. */
function makeCases(count: number, ny: number): readonly Case[] {
  const random = randomSource(7);
  const off = (): number => 6 * random.signed();
  const rows = Array.from({ length: ny }, (_, i) => -125 + (250 * i) / (ny - 1));
  const holes = [-150, 150].flatMap((x) => rows.map((y) => ({ x, y, clearance: CLEARANCE })));
  return Array.from({ length: count }, () => ({
    holes,
    rods: holes.map(({ x, y }) => ({ x: x + off(), y: y + off() })),
  }));
}

/** Largest distance of rod and hole beyond the clearance, at a shift and turn. */
function largestOver({ holes, rods }: Case, [tx = 0, ty = 0, turn = 0]: readonly number[]): number {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return holes.reduce((most, { x, y, clearance }, i) => {
    const rod = rods[i] ?? { x: 0, y: 0 };
    const over = Math.hypot(cos * x - sin * y + tx - rod.x, sin * x + cos * y + ty - rod.y) - clearance;
    return Math.max(most, over);
  }, Number.NEGATIVE_INFINITY);
}

function measureFits(rods: number, aim: string): readonly Measure[] {
  const cases = makeCases(CASES, rods / 2);
  for (const { holes, rods: set } of cases.slice(0, 2000)) fitPlate(holes, set);
  const own = timed(() => cases.map(({ holes, rods: set }) => fitPlate(holes, set).value));
  // A value far below zero, so that the search goes on to the least one instead of stopping where the plate drops on.
  const few = cases.slice(0, BASELINE);
  const baseline = timed(() =>
    few.map((one) => compassSearch((at) => largestOver(one, at) + 100, [0, 0, 0], [1, 1, 0.01], 1e-7) - 100),
  );
  const worse = baseline.result.filter((value, i) => value < (own.result[i] ?? Number.POSITIVE_INFINITY) - 1e-6);
  if (worse.length > 0) throw new Error(`${worse.length} fits are worse than the baseline's`);
  const ratio = baseline.milliseconds / BASELINE / (own.milliseconds / CASES);
  return [
    { what: `certified fits of ${rods} rods`, value: `${Math.round(CASES / (own.milliseconds / 1000))} /s`, aim },
    { what: `times as fast as a general-purpose minimiser, ${rods} rods`, value: ratio.toFixed(0), aim: "" },
  ];
}

/** Rows for four and eight rods. */
export function measureAllFits(): readonly Measure[] {
  return [...measureFits(4, "40000 /s"), ...measureFits(8, "15000 /s")];
}
