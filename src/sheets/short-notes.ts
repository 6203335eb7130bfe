/** What a sheet of a size that the job chose says of what it leaves out: in words here, or in which file it stands. */
import type { RodGroup } from "../job/model/job.js";
import { originWords } from "./operator-box.js";
import type { SheetRequest } from "./request.js";
import { revisionTable } from "./revision-table.js";
import {
  bottomWords,
  embedmentWords,
  fastenerWords,
  projectionWords,
  rodWords,
  stackWords,
  supportWords,
  templateWords,
  threadWords,
  undersideWords,
} from "./section-words.js";

/**
 * brief: earlier revisions and the box for the cutting table are left out; bare: the views beside the plan too; cut: what of
 * the section no note has room for, and of the tables what ledger.csv and summary.json have.
 */
export type Shortening = "brief" | "bare" | "cut";

/** The notes that stand for what is left out of a sheet of this size; none where nothing is. */
export function shortNotes(request: SheetRequest, size: string, how: Shortening): readonly string[] {
  const views = how === "bare" ? request.base.groups.map((own) => sectionNote(request, own)) : [];
  const left = [
    ...earlierRevisions(request),
    ...cuttingBox(request),
    ...sideViews(request, how),
    ...(how === "cut" ? CUT_SHORT : []),
  ];
  return [...views, ...(left.length === 0 ? [] : [`Left out for size ${size}: ${left.join("; ")}.`])];
}

const CUT_SHORT = ["what is missing from tables and checks here (ledger.csv, summary.json)"] as const;

function earlierRevisions(request: SheetRequest): readonly string[] {
  const all = revisionTable(request, Infinity).rows.length;
  return all > revisionTable(request, 1).rows.length ? ["earlier revisions (in the job file)"] : [];
}

function cuttingBox(request: SheetRequest): readonly string[] {
  if (request.cutFiles.length === 0) return [];
  return [`figures for the cutting table (summary.json; 0,0 of the cut file: ${originWords(request)})`];
}

function sideViews({ job, plate, cutFiles }: SheetRequest, how: Shortening): readonly string[] {
  if (how === "brief") return [];
  const isDrawn = job.shop.marking.how === "scribe" && cutFiles.length > 0;
  const marks = `the view of the marks on the top face (listed above${isDrawn ? ", drawn in the cut file" : ""})`;
  const section = `the setting section (${how === "bare" ? "in words above" : "summary.json"})`;
  return [...(plate.marks.length === 0 ? [] : [marks]), section];
}

/** The setting section of a group in words: as it stands when the concrete is placed, then what stands on it later. */
function sectionNote(request: SheetRequest, own: RodGroup): string {
  const placed = [
    projectionWords(request, own),
    threadWords(request, own),
    embedmentWords(request, own),
    rodWords(request, own),
    bottomWords(request, own),
    templateWords(request),
    undersideWords(request),
    fastenerWords(request, own),
    supportWords(request),
  ];
  const stack = stackWords(request, own).map(({ words }) => words);
  const said = (phrases: readonly (readonly string[])[]) => phrases.map((words) => words.join(" ")).join("; ");
  return `SETTING, RODS ${own.letter}: ${said(placed)}. UNDER THE COLUMN, FROM THE CONCRETE UP: ${said(stack)}.`;
}
