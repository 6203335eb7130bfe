/** The bases of a job as written: the items of its list, or the rows of its schedule. */
import type { Finding, Outcome, Place } from "../../diagnostics/finding.js";
import { hasErrors, placeWords } from "../../diagnostics/finding.js";
import { listed } from "../../diagnostics/listed.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { ReadAs, Schedule } from "../../schedule/index.js";
import { markKey, openTables, readSchedule } from "../../schedule/index.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt, joinPath, placeOf } from "../document.js";
import type { HeadDocument } from "../schema/job.js";
import type { SheetDifference } from "./held-against-sheet.js";
import { holdAgainstSheet } from "./held-against-sheet.js";
import type { JobSources } from "./job-sources.js";
import { besideTable, namedTable } from "./named-table.js";

/** The bases as written, with what was understood of the sheet that they come from. */
export interface ListedBases extends WithFindings<readonly SourceDocument[]> {
  readonly readAs: ReadAs | null;
}

/** One document a base; one of `bases` and `schedule` gives them, `readFrom` without `bases` as `schedule` does. */
export function listBases(head: HeadDocument | null, sources: JobSources): ListedBases {
  const { document } = sources;
  const bases = findNode(document.root, "bases");
  const schedule = findNode(document.root, "schedule");
  const readFrom = findNode(document.root, "readFrom");
  const twice = doubleFaults(document, { bases, schedule, readFrom });
  const written = bases === undefined ? ofSheetAlone(head, sources) : listedBases(bases, document);
  if (bases === undefined || readFrom === undefined || head?.readFrom === undefined || written.value.length === 0)
    return { ...written, findings: [...twice, ...written.findings] };
  const beside = besideSheet(written, readSheet("readFrom", readFrom, sources), document);
  return { ...beside, findings: [...twice, ...beside.findings] };
}

type Written = Readonly<Record<"bases" | "schedule" | "readFrom", SourceNode | undefined>>;

function doubleFaults(document: SourceDocument, { bases, schedule, readFrom }: Written): readonly Finding[] {
  const fault = (beside: string) =>
    faultAt(document, ["schedule"], "bases-and-schedule", `is given beside ${beside}; allowed is one of them`);
  if (schedule === undefined) return [];
  return [...(bases === undefined ? [] : [fault("bases")]), ...(readFrom === undefined ? [] : [fault("readFrom")])];
}

function none(findings: readonly Finding[]): ListedBases {
  return { value: [], readAs: null, findings };
}

function listedBases(bases: SourceNode, document: SourceDocument): ListedBases {
  const fault = (message: string) => none([faultAt(document, ["bases"], "bad-value", message)]);
  if (bases.kind !== "list") return fault("is no list; allowed is a list of bases");
  if (bases.items.length === 0) return fault("is an empty list; allowed is one base or more");
  const value = bases.items.map((root, index) => ({ root, path: joinPath("bases", [index]), nameOf: () => null }));
  return { value, readAs: null, findings: [] };
}

function ofSheetAlone(head: HeadDocument | null, sources: JobSources): ListedBases {
  const { document } = sources;
  const key = findNode(document.root, "schedule") === undefined ? "readFrom" : "schedule";
  const named = findNode(document.root, key);
  if (named === undefined)
    return none([
      faultAt(document, ["bases"], "required", "is required; allowed is a list of bases, or schedule: FILE"),
    ]);
  return head?.[key] === undefined ? none([]) : scheduledBases(key, named, sources);
}

const MISSING: Readonly<Record<"schedule" | "readFrom", (name: string) => string>> = {
  schedule: (name) => `there is no schedule ${name}; allowed is a CSV or XLSX file beside the job file`,
  readFrom: (name) =>
    `${name}, from which the bases were read, is not there any more; put it back beside the job file, or delete readFrom, and the bases stand for themselves`,
};

/** The sheet read, or why it is not. */
function readSheet(
  key: "schedule" | "readFrom",
  named: SourceNode,
  { document, inputs, unit }: JobSources,
): Outcome<Schedule> {
  const { file: name, answers } = namedTable(named);
  const file = inputs.files.get(name);
  if (file === undefined)
    return { ok: false, findings: [faultAt(document, [key], "missing-file", MISSING[key](name))] };
  const tables = openTables(file, name, answers.sheet);
  if (!tables.ok) return tables;
  const schedule = readSchedule(tables.value, name, unit, answers, besideTable(document, key));
  return { ok: true, value: schedule, findings: tables.findings };
}

function scheduledBases(key: "schedule" | "readFrom", named: SourceNode, sources: JobSources): ListedBases {
  const read = readSheet(key, named, sources);
  if (!read.ok) return none(read.findings);
  const { bases, headingOf, columnOf, readAs, findings } = read.value;
  const message = `${namedTable(named).file} has no row under its headings; allowed is one base or more`;
  const empty =
    bases.length === 0 && !hasErrors(findings) ? [faultAt(sources.document, [key], "empty-schedule", message)] : [];
  return {
    value: bases.map((root) => ({ root, path: "", nameOf: headingOf, columnOf })),
    readAs,
    findings: [...read.findings, ...findings, ...empty],
  };
}

/** The job's bases hold: what the sheet has against them is a warning, that it is not there any more a fault. */
function besideSheet(written: ListedBases, read: Outcome<Schedule>, document: SourceDocument): ListedBases {
  if (!read.ok) return { ...written, findings: [...written.findings, ...read.findings] };
  const { roots, readAs, differences } = holdAgainstSheet(
    written.value.map(({ root }) => root),
    read.value,
  );
  const { headingOf: nameOf, columnOf } = read.value;
  const value = written.value.map((base, index) => {
    const root = roots[index];
    return root === undefined ? base : { ...base, root, nameOf, columnOf };
  });
  const told = [...read.findings, ...read.value.findings].map((finding) => ({
    ...finding,
    severity: "warning" as const,
  }));
  return {
    value,
    readAs,
    findings: [...written.findings, ...told, ...differenceWarnings(differences, readAs, document)],
  };
}

const MOST_TOLD = 4;

function differenceWarnings(
  differences: readonly SheetDifference[],
  { file }: ReadAs,
  document: SourceDocument,
): readonly Finding[] {
  if (differences.length === 0) return [];
  const each = differences.map(({ mark, key, taken, remark }) => {
    const what = [mark, key, taken].filter((word) => word !== "").join(" ");
    return `${what}: ${remark}`;
  });
  const places = differences.length === 1 ? "one place" : `${differences.length} places`;
  const message = `the bases differ from ${file} in ${places}, and hold as they stand here: ${listed(each, MOST_TOLD, "; ")}`;
  return [{ ...faultAt(document, ["bases"], "differs-from-sheet", message), severity: "warning" }];
}

interface MarkUse {
  readonly kind: "base" | "template";
  readonly mark: string;
  /** In capitals. */
  readonly key: string;
  readonly base: number;
  readonly place: () => Place;
}

/** The marks of bases and of their templates as written. */
export function markUses(bases: readonly SourceDocument[]): readonly MarkUse[] {
  return bases.flatMap((source, base) =>
    MARK_PATHS.flatMap(({ kind, path }): readonly MarkUse[] => {
      const node = findNode(source.root, ...path);
      if (node?.kind !== "scalar") return [];
      return [{ kind, mark: node.text, key: markKey(node.text), base, place: () => placeOf(source, path) }];
    }),
  );
}

const MARK_PATHS = [
  { kind: "base", path: ["mark"] },
  { kind: "template", path: ["template", "mark"] },
] as const;

/**
 * Base marks and template marks share one set of names, in which capitals make no difference. A template may bear the mark of
 * its own base; one of several bases bears a mark that is no base's, since it would tell a lie beside the others.
 */
export function markFaults(uses: readonly MarkUse[]): Finding[] {
  const first = new Map<string, MarkUse>();
  return uses.flatMap((use) => {
    const earlier = first.get(use.key);
    if (earlier === undefined) first.set(use.key, use);
    return earlier === undefined || earlier.base === use.base ? [] : sharedMark(use, earlier);
  });
}

/** Every mark, in capitals. */
export function knownMarks(uses: readonly MarkUse[]): ReadonlySet<string> {
  return new Set(uses.map(({ key }) => key));
}

/** Nothing where both are template marks, written alike: whether their plates are one is proved once they are made. */
function sharedMark(use: MarkUse, earlier: MarkUse): Finding[] {
  const isTemplate = use.kind === "template" && earlier.kind === "template";
  if (isTemplate && use.mark === earlier.mark) return [];
  const twice = `the mark "${use.mark}" is used twice; first at ${placeWords(earlier.place())}`;
  const fault = (message: string, hint?: string): Finding[] => [
    { code: "mark-twice", severity: "error", at: use.place(), message, ...(hint === undefined ? {} : { hint }) },
  ];
  if (isTemplate) return fault(`${twice} as "${earlier.mark}"; the mark of one template is written alike`);
  if (use.kind === "base" && earlier.kind === "base") return fault(`${twice}; every base and template has its own`);
  const own = `template.mark: T-${use.mark}`;
  return fault(
    `${twice}; a template of several bases bears the mark of none of them`,
    `where it is one plate for all of them, give each ${own}`,
  );
}
