/** The plan of 2,000 placements, and the search for look-alikes among 500 marks against trying every pair. */
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { BuildOptions, Inputs } from "../../src/index.js";
import { readJob } from "../../src/job/index.js";
import type { Base } from "../../src/job/model/job.js";
import { findLookAlikes } from "../../src/orientation/index.js";
import type { PlacedRod } from "../../src/rods/index.js";
import { placeRods } from "../../src/rods/index.js";
import { numberQuestions } from "../../src/tasks/number-questions.js";
import { openJob, vocabulary } from "../../src/tasks/open.js";
import { makePackageInParts } from "../../src/tasks/package.js";
import { makePlateOutline } from "../../src/template/index.js";
import { inches } from "../../src/units/index.js";
import { makeInputs, withPlacements } from "./jobs.js";
import { type Measure, timed } from "./measure.js";

const TYPES = 20;
const PLACES = 2000;
const MARKS = 500;

function runAll(inputs: Inputs, outputs: BuildOptions["outputs"]): number {
  const document = newLeanDocument();
  const opened = openJob(inputs, { date: "2026-11-24" });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings.slice(0, 3)));
  const built = makePackageInParts(numberQuestions(opened.value), {
    ...{ version: "bench", document },
    ...(outputs === undefined ? {} : { outputs }),
  });
  let files = 0;
  for (const { files: made } of built.bases) files += made.length;
  for (const _ of built.documents) files += 1;
  built.rest();
  return files;
}

function measurePlan(): readonly Measure[] {
  const inputs = withPlacements(makeInputs(TYPES), TYPES, PLACES);
  const nothing = timed(() => runAll(inputs, []));
  const plan = timed(() => runAll(inputs, ["plan-svg", "plan-dxf"]));
  const seconds = (plan.milliseconds - nothing.milliseconds) / 1000;
  return [
    {
      what: `plan of ${PLACES} placements: ${plan.result} sheets and DXF, without reading and checks`,
      value: `${seconds.toFixed(2)} s`,
      aim: "under 2 s",
    },
    {
      what: "reading, site plan and checks of that job",
      value: `${(nothing.milliseconds / 1000).toFixed(2)} s`,
      aim: "",
    },
  ];
}

interface Made {
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
}

/** Every pair of marks, every one of the eight ways round, every rod against every other: the straightforward way. */
function tryEveryPair(made: readonly Made[], limit: number): number {
  let near = 0;
  for (const [i, { rods: a }] of made.entries())
    for (const { rods: b } of made.slice(i + 1)) if (a.length === b.length && nearest(a, b) < limit) near += 1;
  return near;
}

function nearest(a: readonly PlacedRod[], b: readonly PlacedRod[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const face of [1, -1])
    for (let quarter = 0; quarter < 4; quarter += 1) {
      const [cos = 1, sin = 0] =
        [
          [1, 0],
          [0, 1],
          [-1, 0],
          [0, -1],
        ][quarter] ?? [];
      let most = 0;
      for (const { center } of a) {
        const [x, y] = [cos * center.x * face - sin * center.y, sin * center.x * face + cos * center.y];
        most = Math.max(most, Math.min(...b.map((rod) => Math.hypot(rod.center.x - x, rod.center.y - y))));
      }
      least = Math.min(least, most);
    }
  return least;
}

function measureLookAlikes(): readonly Measure[] {
  const read = readJob(makeInputs(MARKS), { date: "2026-11-24", vocabulary });
  if (!read.ok) throw new Error("the job of the benchmark has faults");
  const made = read.value.bases.map((base) => {
    const rods = placeRods(base);
    if (!rods.ok) throw new Error(`${base.mark} has no rods`);
    const outline = makePlateOutline(read.value, base, rods.value);
    if (!outline.ok) throw new Error(`${base.mark} has no outline`);
    return { base, rods: rods.value, outline: outline.value };
  });
  const own = timed(() => findLookAlikes(made, inches(1)));
  const pairs = timed(() => tryEveryPair(made, 25.4));
  if (own.result.near.length === 0) throw new Error("no look-alikes found");
  return [
    { what: `look-alikes among ${MARKS} marks`, value: `${(own.milliseconds / 1000).toFixed(2)} s`, aim: "under 2 s" },
    {
      what: "times as fast as trying every pair in eight ways round",
      value: (pairs.milliseconds / own.milliseconds).toFixed(1),
      aim: "",
    },
  ];
}

/** Rows of the layout. */
export function measureLayout(): readonly Measure[] {
  return [...measurePlan(), ...measureLookAlikes()];
}
