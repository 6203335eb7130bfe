/** The sheet of a template, from a checked base to the text of its SVG: how long one takes, as a page would ask for it. */
import { checkBase } from "../../src/checks/checked.js";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { drawSheet, type SheetRequest } from "../../src/sheets/index.js";
import { openJob } from "../../src/tasks/open.js";
import { makeInputs } from "./jobs.js";
import { type Measure, timed } from "./measure.js";

/** All five kinds of base; none has more than 12 rods. */
const BASES = 60;
const WARM_UP = 2;
const ROUNDS = 5;
/** What a sheet took before: 27 to 33 ms as the median of the samples, layout and SVG together, on one such machine: 31 a second. */
const BEFORE = { median: "27 to 33 ms before", rate: "31 before" } as const;

/** Requests for the sheets of the benchmark's bases. */
export function sheetRequests(count: number): readonly SheetRequest[] {
  const opened = openJob(makeInputs(count), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings.slice(0, 3)));
  const { job, bases } = opened.value;
  return bases.map((shaped, i) => ({
    ...checkBase(job, shaped),
    cutFiles: [{ name: `T${i + 1}_1-off_PL1-4_A36_rev-A.dxf`, sha256: "0123456789abcdef".repeat(4) }],
    drillListName: null,
    sheetNumber: 1,
    sheetCount: 1,
    sheetBases: [shaped.base.mark],
    programVersion: "bench",
    piece: null,
  }));
}

interface Times {
  readonly layout: number[];
  readonly whole: number[];
  /** Of the processor, of all sheets together: what others do on the machine at the same time counts for less. */
  readonly processor: number;
}

/** Milliseconds of each sheet in every round but the first ones, layout alone and with its SVG. */
function timeSheets(requests: readonly SheetRequest[]): Times {
  const page = newLeanDocument();
  const [layout, whole]: [number[], number[]] = [[], []];
  let start = process.cpuUsage();
  for (let round = -WARM_UP; round < ROUNDS; round += 1) {
    if (round === 0) start = process.cpuUsage();
    for (const request of requests) {
      const scene = timed(() => drawSheet(request));
      const svg = timed(() => writeSheetSvg(scene.result, page));
      if (round < 0) continue;
      layout.push(scene.milliseconds);
      whole.push(scene.milliseconds + svg.milliseconds);
    }
  }
  const { user, system } = process.cpuUsage(start);
  return { layout, whole, processor: (user + system) / 1000 };
}

function quantile(values: readonly number[], share: number): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length * share)] ?? Number.NaN;
}

const figures = (times: readonly number[]): string =>
  `${quantile(times, 0.5).toFixed(1)} ms, ${quantile(times, 0.95).toFixed(1)} ms`;

/** Rows of the sheets. */
export function measureSheets(): readonly Measure[] {
  const { layout, whole, processor } = timeSheets(sheetRequests(BASES));
  const perSecond = Math.round((1000 * whole.length) / whole.reduce((sum, time) => sum + time, 0));
  return [
    {
      what: `a sheet of up to 12 holes, layout and SVG, median and 95 % (${BEFORE.median})`,
      value: figures(whole),
      aim: "8 ms, 16 ms",
    },
    { what: "its layout alone, median and 95 %", value: figures(layout), aim: "" },
    { what: `sheets a second, one after the other (${BEFORE.rate})`, value: `${perSecond} /s`, aim: "" },
    { what: "processor time of a sheet, mean", value: `${(processor / whole.length).toFixed(1)} ms`, aim: "" },
  ];
}
