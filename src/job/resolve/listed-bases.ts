/** The bases of a job as written: the items of its list, or the rows of its schedule. */
import type { Finding, Place } from "../../diagnostics/finding.js";
import { hasErrors, placeWords } from "../../diagnostics/finding.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { ReadAs } from "../../schedule/index.js";
import { markKey, openTables, readSchedule } from "../../schedule/index.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt, joinPath, placeOf } from "../document.js";
import type { HeadDocument } from "../schema/job.js";
import type { JobSources } from "./job-sources.js";
import { besideTable, namedTable } from "./named-table.js";

/** The bases as written, with what was understood of the sheet that they come from. */
export interface ListedBases extends WithFindings<readonly SourceDocument[]> {
  readonly readAs: ReadAs | null;
}

/** One document a base; one of `bases` and `schedule` gives them. */
export function listBases(head: HeadDocument | null, sources: JobSources): ListedBases {
  const { document } = sources;
  const bases = findNode(document.root, "bases");
  const written = findNode(document.root, "schedule");
  if (bases !== undefined) {
    const message = "is given beside bases; allowed is one of them";
    const twice = written === undefined ? [] : [faultAt(document, ["schedule"], "bases-and-schedule", message)];
    const { value, findings } = listedBases(bases, document);
    return { value, readAs: null, findings: [...twice, ...findings] };
  }
  if (written === undefined)
    return none([
      faultAt(document, ["bases"], "required", "is required; allowed is a list of bases, or schedule: FILE"),
    ]);
  return head?.schedule === undefined ? none([]) : scheduledBases(written, sources);
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

function scheduledBases(schedule: SourceNode, { document, inputs, unit }: JobSources): ListedBases {
  const { file: name, answers } = namedTable(schedule);
  const fault = (code: string, message: string) => faultAt(document, ["schedule"], code, message);
  const file = inputs.files.get(name);
  if (file === undefined)
    return none([
      fault("missing-file", `there is no schedule ${name}; allowed is a CSV or XLSX file beside the job file`),
    ]);
  const tables = openTables(file, name, answers.sheet);
  if (!tables.ok) return none(tables.findings);
  const read = readSchedule(tables.value, name, unit, answers, besideTable(document, "schedule"));
  const { bases, headingOf, columnOf, readAs, findings } = read;
  const empty =
    bases.length === 0 && !hasErrors(findings)
      ? [fault("empty-schedule", `${name} has no row under its headings; allowed is one base or more`)]
      : [];
  return {
    value: bases.map((root) => ({ root, path: "", nameOf: headingOf, columnOf })),
    readAs,
    findings: [...tables.findings, ...findings, ...empty],
  };
}

interface MarkUse {
  readonly kind: "base" | "template";
  readonly mark: string;
  readonly base: number;
  readonly place: Place;
}

/**
 * Base marks and template marks share one set of names, in which capitals make no difference. A template may bear the mark of
 * its own base; one of several bases bears a mark that is no base's, since it would tell a lie beside the others.
 */
export function markFaults(bases: readonly SourceDocument[]): Finding[] {
  const first = new Map<string, MarkUse>();
  return bases.flatMap((source, base) =>
    marksOf(source, base).flatMap((use) => {
      const key = markKey(use.mark);
      const earlier = first.get(key);
      if (earlier === undefined) first.set(key, use);
      return earlier === undefined || earlier.base === base ? [] : sharedMark(use, earlier);
    }),
  );
}

function marksOf(source: SourceDocument, base: number): MarkUse[] {
  return [["mark"], ["template", "mark"]].flatMap((path) => {
    const node = findNode(source.root, ...path);
    if (node?.kind !== "scalar") return [];
    const kind = path.length === 1 ? "base" : "template";
    return [{ kind, mark: node.text, base, place: placeOf(source, path) }];
  });
}

/** Nothing where both are template marks, written alike: whether their plates are one is proved once they are made. */
function sharedMark(use: MarkUse, earlier: MarkUse): Finding[] {
  const isTemplate = use.kind === "template" && earlier.kind === "template";
  if (isTemplate && use.mark === earlier.mark) return [];
  const twice = `the mark "${use.mark}" is used twice; first at ${placeWords(earlier.place)}`;
  const fault = (message: string, hint?: string): Finding[] => [
    { code: "mark-twice", severity: "error", at: use.place, message, ...(hint === undefined ? {} : { hint }) },
  ];
  if (isTemplate) return fault(`${twice} as "${earlier.mark}"; the mark of one template is written alike`);
  if (use.kind === "base" && earlier.kind === "base") return fault(`${twice}; every base and template has its own`);
  const own = `template.mark: T-${use.mark}`;
  return fault(
    `${twice}; a template of several bases bears the mark of none of them`,
    `where it is one plate for all of them, give each ${own}`,
  );
}
