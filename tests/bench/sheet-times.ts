/** How long sheets take, from checked bases to the text of their SVG. Runs in Node and, bundled, in a page of a browser. */
import { checkBase } from "../../src/checks/checked.js";
import { type DrawingDocument, newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import type { Inputs } from "../../src/index.js";
import { drawSheet, type SheetRequest } from "../../src/sheets/index.js";
import { openJob } from "../../src/tasks/open.js";
import { timed } from "./measure.js";

const WARM_UP = 2;
const ROUNDS = 5;

/** Milliseconds of each sheet in every round but the first ones: layout alone, and with its SVG. */
export interface SheetTimes {
  readonly layout: readonly number[];
  readonly whole: readonly number[];
}

/** What the sheets of a job's bases are drawn from. */
export function requestsOf(inputs: Inputs): readonly SheetRequest[] {
  const opened = openJob(inputs, { date: "2026-11-24" });
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

/** Draws and writes every sheet in every round; `onStart` is called when the first rounds, which only warm up, are over. */
export function timeSheets(
  requests: readonly SheetRequest[],
  page: DrawingDocument,
  onStart: () => void = () => {},
): SheetTimes {
  const [layout, whole]: [number[], number[]] = [[], []];
  for (let round = -WARM_UP; round < ROUNDS; round += 1) {
    if (round === 0) onStart();
    for (const request of requests) {
      const scene = timed(() => drawSheet(request));
      const svg = timed(() => writeSheetSvg(scene.result, page));
      if (round < 0) continue;
      layout.push(scene.milliseconds);
      whole.push(scene.milliseconds + svg.milliseconds);
    }
  }
  return { layout, whole };
}

/** The same in a page, from the job's texts: on the lean document as in Node, and on the page's own. */
export function timeInPage(
  job: string,
  files: readonly (readonly [string, string])[],
  own: DrawingDocument,
): { readonly lean: SheetTimes; readonly own: SheetTimes } {
  const requests = requestsOf({ job, files: new Map(files) });
  return { lean: timeSheets(requests, newLeanDocument()), own: timeSheets(requests, own) };
}
