/**
 * How long the engine of the page takes of an edit: processor time, at the median and at the 95th percentile; the longest slice of
 * the work that follows, which an edit may have to wait for; and what share the edit is of opening the job anew in the same run.
 */
import type { Inputs } from "../../src/index.js";
import type { KeyEdit, Watch } from "../../src/tasks/live/model.js";
import type { Live } from "../../src/tasks/live/open-live.js";
import { openLive } from "../../src/tasks/live/open-live.js";
import { makeInputs, withPlacements } from "./jobs.js";
import type { Measure } from "./measure.js";

const EDITS = 120;
const WARM_UP = 40;
const DATE = "2026-11-24";
const ROOM = { width: 190, height: 150 };
/** How often the job is opened anew meanwhile. */
const OPENINGS = 3;

/** Each kind of edit in turn on its job; the sheet of an eight-rod base is on the screen. */
export function* measureLive(): Generator<Measure> {
  const alone = makeInputs(1, 1);
  const many = makeInputs(500);
  yield measure("an eight-rod template alone in its job", alone, 0, valueEdits(0), "16 ms");
  yield measure("the same in a job of 500 bases", many, 1, valueEdits(1), "50 ms");
  yield measure("a value at fault, and right again, of 500 bases", many, 1, faultyEdits(1), "50 ms");
  const layered = "defaults: { template: { thickness: 1/4 }, rods: { nut: heavy hex } }\n";
  yield measure("500 bases over defaults", withHead(many, layered), 1, valueEdits(1), "50 ms");
  yield measure("500 bases, merge: auto", withHead(many, "merge: auto\n"), 1, valueEdits(1), "");
  yield measure("60 bases, sheet: B", withHead(makeInputs(60), "sheet: B\n"), 1, valueEdits(1), "50 ms");
  yield measure("a mark, of 500 bases", many, 1, marks(1), "50 ms");
  yield measure("the revision of a job of 500 bases", many, 1, revisions, "");
  yield measure("a base taken out, of 500 bases", many, 1, () => ({ kind: "remove", path: ["bases", 300] }), "");
  yield measure(
    "an edit of a base, 100 placed 300 times",
    withPlacements(makeInputs(100), 100, 300),
    1,
    valueEdits(1),
    "",
  );
}

function withHead(inputs: Inputs, lines: string): Inputs {
  const text = String(inputs.files.get(inputs.job)).replace("bases:\n", `${lines}bases:\n`);
  return { ...inputs, files: new Map([...inputs.files, [inputs.job, text]]) };
}

type EditOf = (turn: number) => KeyEdit;

function valueEdits(base: number): EditOf {
  return (turn) => ({ kind: "set", path: ["bases", base, "pattern", "y"], text: `${12 + (turn % 16) / 16}` });
}

function faultyEdits(base: number): EditOf {
  return (turn) => ({ kind: "set", path: ["bases", base, "pattern", "y"], text: turn % 2 === 0 ? "none" : "12" });
}

function marks(base: number): EditOf {
  return (turn) => ({ kind: "set", path: ["bases", base, "mark"], text: `C${turn}` });
}

const revisions: EditOf = (turn) => ({ kind: "set", path: ["job", "revision"], text: `R${turn}` });

function measure(what: string, inputs: Inputs, base: number, edit: EditOf, aim: string): Measure {
  const live = openLive(inputs, { date: DATE });
  settle(live);
  const watch: Watch = { base: `bases[${base}]`, room: ROOM };
  const [times, slices, openings]: [number[], number[], number[]] = [[], [], []];
  for (let turn = -WARM_UP; turn < EDITS; turn += 1) {
    const time = processorTime(() => void live.edit([edit(turn + WARM_UP)], watch));
    if (turn >= 0) times.push(time);
    if (turn % 10 === 0) slices.push(...settle(live));
    if (turn >= 0 && turn % (EDITS / OPENINGS) === 0) openings.push(processorTime(() => openAnew(inputs, watch)));
  }
  const [half, most, anew] = [at(times, 0.5), at(times, 0.95), at(openings, 0.5)];
  const value = `${half.toFixed(1)}, ${most.toFixed(1)} ms; ${at(slices, 1).toFixed(0)} ms; 1/${Math.round(anew / half)}`;
  return { what: `an edit, ${what}: median, 95th percentile; longest slice after it; share of opening`, value, aim };
}

/** As far as an edit goes: nothing but the watched base is checked. */
function openAnew(inputs: Inputs, watch: Watch): void {
  const live = openLive(inputs, { date: DATE });
  live.state();
  live.look(watch);
}

/** Does what is left to do; milliseconds of its slices. */
function settle(live: Live): readonly number[] {
  const slices: number[] = [];
  for (let isLeft = true; isLeft; )
    slices.push(
      processorTime(() => {
        isLeft = live.work();
      }),
    );
  return slices;
}

/** Milliseconds of processor time: a machine that others use too is not counted in. */
function processorTime(work: () => void): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function at(times: readonly number[], share: number): number {
  return times.toSorted((a, b) => a - b)[Math.floor((times.length - 1) * share)] ?? Number.NaN;
}
