/** The job file of a sheet that was read: a person's part, kept, and the bases below it. */
import type { Cause } from "../diagnostics/gather.js";
import { gatherFindings, sheetOf } from "../diagnostics/gather.js";
import type { Printable } from "../diagnostics/printable.js";
import { terminalLine } from "../diagnostics/printable.js";
import { writeJobHead, writeQuestionRemarks } from "../formats/job-head-yaml.js";
import type { ReadAsQuestion } from "../formats/read-as-form.js";
import { writeYamlItems } from "../formats/source-yaml.js";
import type { SourceNode } from "../readers/source.js";
import { findEntry } from "../readers/source.js";
import { readYaml } from "../readers/yaml.js";
import { joinJob } from "./job-parts.js";
import type { SheetReading } from "./read.js";

/** How a job file is written the first time. */
export interface NewJob {
  /** The job file as its user names it. */
  readonly name: string;
  /** Path of the JSON Schema for editors, from the job file's folder; null without one. */
  readonly schema: string | null;
  /** The sheet's file as the job file names it. */
  readonly file: string;
}

const encoder = new TextEncoder();

/** A new job file: what is known, lines to fill in for what is asked, and the bases where nothing is. */
export function writeNewJob({ name, schema, file }: NewJob, reading: SheetReading): Uint8Array {
  const { unit, unitBecause, form } = reading;
  const { sheet } = form;
  const questions = openQuestions(reading);
  const head = writeJobHead({ name, schema, file, sheet, table: "", unit, unitBecause, questions });
  const open = `# No bases yet: ${openWords(reading)} above. Answer it there, then: ${againWords(name)}\n`;
  return joinJob(encoder.encode(head), reading.isUnderstood ? basesText(reading.bases) : open);
}

/** The job file with a person's part as it is, and what is below its marker anew. */
export function writeJobAgain(own: Uint8Array, name: string, reading: SheetReading): Uint8Array {
  const open = `# No bases yet: ${openWords(reading)}. Copy the lines that answer into the part above, under the same keys and without #; then: ${againWords(name)}\n`;
  const below = reading.isUnderstood ? basesText(reading.bases) : open + writeQuestionRemarks(openQuestions(reading));
  return joinJob(own, below);
}

/** What is asked, and cells at fault, for which the job may say what is meant; each cause once. */
export function openQuestions({ form, findings }: SheetReading): readonly ReadAsQuestion[] {
  const ofCells = findings.filter(
    ({ severity, at, code }) => severity === "error" && at.cell !== undefined && !OF_COLUMNS.has(code),
  );
  return [...form.questions, ...gatherFindings(ofCells).slice(0, MOST_CAUSES).map(faultQuestion)];
}

/** Faults of whole columns: their places are headings, which `columns` answers and `cells` does not. */
const OF_COLUMNS: ReadonlySet<string> = new Set(["two-columns-differ", "no-marks", "many-faults"]);

const MOST_CAUSES = 20;
const MOST_CELLS = 12;

/** What an answer to a cell at fault says. */
export const MEANT_IN_CELL = "what is meant in the cell";

function faultQuestion({ all, first, subject }: Cause): ReadAsQuestion {
  const cells = all.flatMap(({ at }) => at.cell ?? []);
  const named = cells.slice(0, MOST_CELLS).map((cell) => `${cell.slice(sheetOf(cell).length)}: TEXT`);
  const text = `at fault: ${subject === "" ? "" : `${subject}: `}${first.message}`;
  return { cells, text, choices: [{ line: `cells: { ${named.join(", ")} }`, means: MEANT_IN_CELL }] };
}

function againWords(name: string): Printable {
  return terminalLine`rodplate read ${name} --out ${name}`;
}

function openWords({ form, findings }: SheetReading): string {
  const faults = findings.filter(({ severity }) => severity === "error").length;
  const words = [
    ...(form.questions.length === 0 ? [] : [`${form.questions.length} asked`]),
    ...(faults === 0 ? [] : [`${faults} at fault in the sheet`]),
  ];
  return words.length === 0 ? "the sheet has none" : words.join(", ");
}

/** `bases:` with everything that a base says; groups of keys that hold nothing are left out. */
function basesText(bases: readonly SourceNode[]): string {
  return `bases:\n${writeYamlItems(bases.map((base) => inOrder(withoutEmpty(base))))}`;
}

/** Keys of a base in the order in which people look for them. */
const ORDER: readonly string[] = [
  ...["mark", "quantity", "kind", "member", "note", "rods", "pattern", "groups", "basePlate", "column", "concrete"],
  ...["grout", "levelling", "template"],
];

function inOrder(base: SourceNode): SourceNode {
  if (base.kind !== "map") return base;
  const rank = (key: string): number => (ORDER.includes(key) ? ORDER.indexOf(key) : ORDER.length);
  const entries = base.entries.map((entry) => ({ ...entry, value: kindFirst(entry.value) }));
  return { ...base, entries: entries.sort((a, b) => rank(a.key) - rank(b.key)) };
}

/** What kind of a thing it is comes before its measures. */
function kindFirst(node: SourceNode): SourceNode {
  if (node.kind === "scalar") return node;
  if (node.kind === "list") return { ...node, items: node.items.map(kindFirst) };
  const entries = node.entries.map((entry) => ({ ...entry, value: kindFirst(entry.value) }));
  return { ...node, entries: entries.sort((a, b) => Number(b.key === "kind") - Number(a.key === "kind")) };
}

function withoutEmpty(node: SourceNode): SourceNode {
  if (node.kind === "scalar") return node;
  if (node.kind === "list") return { ...node, items: node.items.map(withoutEmpty) };
  const entries = node.entries.map((entry) => ({ ...entry, value: withoutEmpty(entry.value) }));
  return { ...node, entries: entries.filter(({ value }) => value.kind !== "map" || value.entries.length > 0) };
}

/**
 * A job file that names a schedule -> the same with `readFrom` in its place, every other byte as it is; null where the file
 * is written in such a way that this cannot be done by lines.
 */
export function namingReadFrom(text: string): string | null {
  const read = readYaml(text, "job");
  const entry = read.ok ? findEntry(read.value, "schedule") : undefined;
  if (entry === undefined) return null;
  const lines = text.split("\n");
  const at = entry.place.line - 1;
  const [, rest] = /^schedule[ \t]*:(.*)$/s.exec(lines[at] ?? "") ?? [];
  if (rest === undefined) return null;
  lines[at] = entry.value.kind === "scalar" ? `readFrom:\n  file:${rest}` : `readFrom:${rest}`;
  return lines.join("\n");
}
