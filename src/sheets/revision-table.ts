/** The revisions of a sheet: of a template's sheet, those that touch it. */
import type { Job, Revision } from "../job/model/job.js";
import type { SheetRequest } from "./request.js";
import type { TableText } from "./table.js";
import { wrap } from "./text-metrics.js";

const NONE: ReadonlySet<number> = new Set();

/** Of a template's sheet the base, and the marks that it is for; a plan has neither and shows every revision. */
export type RevisedSheet = Pick<SheetRequest, "job"> & Partial<Pick<SheetRequest, "base" | "sheetBases">>;

/**
 * The newest revisions, oldest of those first; the job's own revision with its status, that of a held
 * sheet no less, where the job lists none. Of a template's sheet only
 * those that touch its bases or its template; that the last one does not is said.
 */
export function revisionTable(request: RevisedSheet, most: number): TableText {
  const { job } = request;
  const status = `JOB ${job.status.toUpperCase()}`;
  const listed: readonly Revision[] =
    job.revisions.length > 0 ? job.revisions : [{ revision: job.revision, date: job.date, text: status, marks: null }];
  const known = touching(listed, request);
  const shown = known.slice(-most);
  return {
    name: "revision-block",
    heading: "REVISIONS",
    columns: [
      { title: "REV", share: 0.1, align: "start" },
      { title: "DATE", share: 0.16, align: "start" },
      { title: "DESCRIPTION", share: 0.74, align: "start" },
    ],
    rows: shown.flatMap(revisionRows),
    foot: known.length > shown.length ? [`+ ${known.length - shown.length} EARLIER`] : [],
    under: [],
    strong: NONE,
  };
}

/** Width of the description in cap heights of its letters, on the narrowest panel. */
const DESCRIPTION = 41;

/** A description that is too long for its line goes on in the next. */
function revisionRows({ revision, date, text }: Revision): readonly (readonly string[])[] {
  const [first = "", ...more] = wrap(text, DESCRIPTION, 1);
  return [[revision, date, first], ...more.map((line) => ["", "", line])];
}

function touching(listed: readonly Revision[], { job, base, sheetBases }: RevisedSheet): readonly Revision[] {
  if (base === undefined) return listed;
  const own = new Set([...(sheetBases ?? [base.mark]), base.template.mark].map(folded));
  const named = marksNamed(job);
  return listed.flatMap((row, i): readonly Revision[] => {
    const marks = named.get(row) ?? null;
    if (marks === null || marks.some((mark) => own.has(mark))) return [row];
    return i === listed.length - 1 ? [{ ...row, text: "NO CHANGE TO THIS MARK" }] : [];
  });
}

/** Marks are the same whatever their capitals. */
function folded(mark: string): string {
  return mark.toUpperCase();
}

type NamedMarks = ReadonlyMap<Revision, readonly string[] | null>;

/** What the revisions of a job name, looked for once. */
const kept = new WeakMap<Job["bases"], { readonly of: Job["revisions"]; readonly named: NamedMarks }>();

function marksNamed({ revisions, bases }: Pick<Job, "revisions" | "bases">): NamedMarks {
  const known = kept.get(bases);
  if (known?.of === revisions) return known.named;
  const marks = [...new Set(bases.flatMap(({ mark, template }) => [mark, template.mark]))];
  const named = new Map(revisions.map((row) => [row, row.marks?.map(folded) ?? marksIn(row.text, marks)]));
  kept.set(bases, { of: revisions, named });
  return named;
}

/** A row about all, or about a range whose ends alone are named. */
const WIDER = /\b(?:all|every|each|others?|rest|etc)\b/i;

/** Marks, each written as `#`, with what says "and those between": one end may be a mark that the job has no more. */
const RANGE =
  /(?:#|[A-Z]+-?\d+)\s*(?:-|–|to|thru|through|\.\.\.?)\s*#|#\s*(?:-|–|to|thru|through|\.\.\.?)\s*[A-Z]+-?\d/i;

/**
 * The marks that a text names, folded; null where it names none for certain: none at all, a range, or all. Only marks of
 * letters and digits count: `12` and `A` stand in texts that name no mark.
 */
export function marksIn(text: string, marks: readonly string[]): readonly string[] | null {
  const found = marks.filter((mark) => /[A-Za-z]/.test(mark) && /\d/.test(mark) && isNamedIn(text, mark));
  if (found.length === 0) return null;
  const longestFirst = [...found].sort((a, b) => b.length - a.length);
  const rest = longestFirst.reduce((left, mark) => left.replaceAll(mark, "#"), text);
  return RANGE.test(rest) || WIDER.test(rest) ? null : found.map(folded);
}

/** As a word of its own, and not as the tag of a rod. */
function isNamedIn(text: string, mark: string): boolean {
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) {
    const [before, after] = [text.slice(0, at), text.slice(at + mark.length)];
    if (/[A-Za-z0-9_.-]$/.test(before) || /^[A-Za-z0-9_-]|^\.\w/.test(after)) continue;
    if (!/\brods?\s$/i.test(before)) return true;
  }
  return false;
}
