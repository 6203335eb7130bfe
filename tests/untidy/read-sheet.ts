/** A drawn sheet -> what is read of it, in a form that two writings of one value share. */
import { formatFinding } from "../../src/diagnostics/finding.js";
import type { PlainValue } from "../../src/job/document.js";
import { toPlain } from "../../src/job/document.js";
import type { Table } from "../../src/readers/inputs.js";
import { readYaml } from "../../src/readers/yaml.js";
import type { Schedule, TableAnswers } from "../../src/schedule/index.js";
import { readSchedule } from "../../src/schedule/index.js";
import type { Unit } from "../../src/units/index.js";
import { parseLength } from "../../src/units/index.js";

/** Answers as a job file has them. */
export interface Answers {
  readonly table?: string;
  readonly columns?: Readonly<Record<string, string>>;
  readonly notes?: Readonly<Record<string, string | Readonly<Record<string, string>>>>;
  readonly cells?: Readonly<Record<string, string>>;
}

export function answersOf({ columns = {}, notes = {}, cells = {}, ...named }: Answers): TableAnswers {
  const note = ([key, text]: [string, string | Readonly<Record<string, string>>]) =>
    [key, typeof text === "string" ? text : new Map(Object.entries(text))] as const;
  return {
    ...named,
    columns: new Map(Object.entries(columns)),
    notes: new Map(Object.entries(notes).map(note)),
    cells: new Map(Object.entries(cells)),
  };
}

export function read(table: Table, unit: Unit = "in", answers: Answers = {}): Schedule {
  return readSchedule([table], "s.xlsx", unit, answersOf(answers));
}

/** The bases of a schedule as plain values. */
export function basesOf({ bases }: Schedule, unit: Unit = "in"): unknown {
  return bases.map((base) => sameWriting(toPlain(base), unit));
}

/** The bases of a job file as plain values. */
export function writtenBases(yaml: string, unit: Unit = "in"): unknown {
  const root = readYaml(yaml, "job.yaml");
  if (!root.ok) throw new Error(root.findings.map(formatFinding).join("\n"));
  const plain = toPlain(root.value);
  if (!Array.isArray(plain)) throw new Error("no list of bases");
  return plain.map((base) => sameWriting(base, unit));
}

/** Lengths in nanometres, words in small letters, groups without what is empty, their keys in order. */
function sameWriting(value: PlainValue, unit: Unit): unknown {
  if (typeof value === "string") {
    const length = parseLength(value, unit);
    return length.ok ? `${length.value} nm` : value.toLowerCase();
  }
  if (Array.isArray(value)) return value.map((item) => sameWriting(item, unit));
  const entries = Object.entries(value).map(([key, each]) => [key, sameWriting(each, unit)] as const);
  const filled = entries.filter(([, each]) => typeof each !== "object" || Object.keys(each ?? {}).length > 0);
  return Object.fromEntries(filled.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Codes of what is told, each once, in order. */
export function codesOf({ findings }: Schedule, severity: "error" | "warning"): readonly string[] {
  return [...new Set(findings.filter((finding) => finding.severity === severity).map(({ code }) => code))].sort();
}
