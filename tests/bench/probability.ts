/**
 * A million trials of a four-rod base, against a straightforward baseline: the same errors, each trial handed to a
 * general-purpose minimiser of three variables (compass search) that knows nothing of plates.
 */
import { fileURLToPath } from "node:url";
import { drawErrors } from "../../src/fit/errors.js";
import { randomSource } from "../../src/fit/random.js";
import { fitProbability } from "../../src/index.js";
import { compassSearch } from "./compass-search.js";
import { type Measure, timed } from "./measure.js";

const MILLION = 1_000_000;
const BASELINE = 20_000;
/** Millimetres: four rods on 200 x 200, clearance 3, errors even in a circle of 3.6. */
const HOLES = [-100, 100].flatMap((x) => [-100, 100].map((y) => ({ x, y, clearance: 3 })));
const SIZE = 3.6;
const SEED = 11;
/** Share of trials in which the search may stop on a kink, short of a place where the plate drops on. */
const STALLS = 0.01;

/** Times both in one process; the shares must agree within four standard errors and the trials that the search misses. */
export function measureProbability(): readonly Measure[] {
  fitProbability({ holes: HOLES, rodError: { kind: "disc", size: SIZE }, maxTurn: 0.05, samples: 20_000, seed: SEED });
  const own = timed(() =>
    fitProbability({
      holes: HOLES,
      rodError: { kind: "disc", size: SIZE },
      maxTurn: 0.05,
      samples: MILLION,
      seed: SEED,
    }),
  );
  const baseline = timed(() => baselineShare(BASELINE));
  const error = Math.sqrt((baseline.result * (1 - baseline.result)) / BASELINE);
  if (Math.abs(own.result.free - baseline.result) > 4 * error + STALLS)
    throw new Error(`the shares differ: ${own.result.free} and ${baseline.result}`);
  const ratio = (baseline.milliseconds * (MILLION / BASELINE)) / own.milliseconds;
  return [
    {
      what: `one million trials of a four-rod base, ${(100 * own.result.free).toFixed(1)} % drop on`,
      value: `${(own.milliseconds / 1000).toFixed(2)} s`,
      aim: "under 2 s",
    },
    {
      what: `times as fast as a general-purpose minimiser (compass search, ${BASELINE} of the same trials)`,
      value: ratio.toFixed(0),
      aim: "",
    },
  ];
}

function baselineShare(samples: number): number {
  const dx = new Float64Array(HOLES.length);
  const dy = new Float64Array(HOLES.length);
  const term = { zone: "disc", spread: { kind: "uniform" }, reach: HOLES.map(() => SIZE), common: false } as const;
  const draw = drawErrors([term], randomSource(SEED), dx, dy);
  let drops = 0;
  for (let i = 0; i < samples; i++) {
    draw();
    if (compassSearch((motion) => largestOver(motion, dx, dy), [0, 0, 0], [1, 1, 0.01], 1e-4) <= 0) drops++;
  }
  return drops / samples;
}

/** Largest distance of rod and hole beyond the clearance, at a shift and turn. */
function largestOver([tx = 0, ty = 0, turn = 0]: readonly number[], dx: Float64Array, dy: Float64Array): number {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return HOLES.reduce((most, { x, y, clearance }, i) => {
    const [ex, ey] = [cos * x - sin * y + tx - x - (dx[i] ?? 0), sin * x + cos * y + ty - y - (dy[i] ?? 0)];
    return Math.max(most, Math.hypot(ex, ey) - clearance);
  }, Number.NEGATIVE_INFINITY);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { what, value, aim } of measureProbability())
    process.stdout.write(`${what}: ${value}${aim === "" ? "" : ` (aim: ${aim})`}\n`);
}
