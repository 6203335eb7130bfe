/** A schedule as it was sent with the answers that were given to what it leaves open, and the job file that holds both. */
import type { Outcome } from "../diagnostics/finding.js";
import { answersOf } from "../formats/answer-lines.js";
import { yamlNode } from "../formats/source-yaml.js";
import type { InputFile } from "../readers/inputs.js";
import { readYaml } from "../readers/yaml.js";
import { spliced, spliceOf } from "../readers/yaml-edit.js";
import type { Unit } from "../units/index.js";
import { splitJob } from "./job-parts.js";
import type { SheetReading } from "./read.js";
import { readSheetAsSent } from "./read.js";
import { writeJobAgain, writeNewJob } from "./read-job.js";

/** An answer as it stands in the job file: keys from its root, and the value as YAML on one line; null where it is filled in. */
export interface WrittenAnswer<Text = string> {
  readonly path: readonly string[];
  readonly text: Text;
}

/** What the line of a choice answers; words in capitals that stand for a text, MARK and TEXT, are to be filled in. */
export function answersInLine(line: string): readonly WrittenAnswer<string | null>[] {
  return answersOf(line).map(({ path, value }) => {
    const isOpen = value === null || (value.kind === "scalar" && /^(MARK|TEXT)$/.test(value.text));
    return { path, text: isOpen ? null : yamlNode(value) };
  });
}

/** A sheet, and what the job says of it. */
export interface AnsweredSheet {
  /** Its name, as the job file will have it. */
  readonly name: string;
  readonly file: InputFile;
  readonly answers: readonly WrittenAnswer[];
  /** The job that an earlier reading of the sheet gave, with what it says of it; absent: there is none yet. */
  readonly into?: string;
}

/** Reads the sheet with its answers, as a job that holds them would; `unit` goes before what they and the cells say. */
export function readAnswered(
  { name, file, answers, into }: AnsweredSheet,
  unit: Unit | null = null,
): Outcome<SheetReading> {
  const naming = withAnswers("", [{ path: ["readFrom", "file"], text: JSON.stringify(name) }]);
  const job = readYaml(withAnswers(into === undefined ? naming : ownPart(into), answers), "job.yaml");
  if (!job.ok) return job;
  return readSheetAsSent({ name, file, job: job.value, unit });
}

/** Keys of the head that a person gives. */
export interface JobTitle {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
}

/** The job file of what was read: a person's part with answers, the bases below it; a new one has the title that is given. */
export function writeAnsweredJob(
  sheet: AnsweredSheet & { readonly jobName: string; readonly title: JobTitle },
  reading: SheetReading,
): Uint8Array {
  const { jobName, name, answers, title, into } = sheet;
  if (into !== undefined) return writeJobAgain(encoder.encode(withAnswers(ownPart(into), answers)), jobName, reading);
  const first = writeNewJob({ name: jobName, schema: null, file: name }, reading);
  const own = new TextDecoder().decode(splitJob(first)?.own ?? first);
  const titles = (["number", "title", "revision"] as const).map((key) => ({
    path: ["job", key],
    text: JSON.stringify(title[key]),
  }));
  return writeJobAgain(encoder.encode(withAnswers(own, [...titles, ...answers])), jobName, reading);
}

const encoder = new TextEncoder();

/** What a person wrote of a job that reading wrote. */
function ownPart(job: string): string {
  const bytes = encoder.encode(job);
  return new TextDecoder().decode(splitJob(bytes)?.own ?? bytes);
}

/** What becomes of a job when a newer sheet is read into it. `changed`: its bases are none that reading wrote. */
export type ReadingInto = "as it was read" | "changed" | "no reading wrote it";

/** By the marker line, and the hash in it. */
export function readingInto(job: string): ReadingInto {
  const parts = splitJob(encoder.encode(job));
  if (parts === null) return "no reading wrote it";
  return parts.isUnchanged ? "as it was read" : "changed";
}

/** A text with each answer where its keys lead; later ones go before earlier ones. */
export function withAnswers(text: string, answers: readonly WrittenAnswer[]): string {
  return answers.reduce((now, { path, text: value }, index) => {
    // a value may be a list or group, which an edit cannot write: its place is marked, then filled
    const mark = `answer-${index}-to-be-put-here`;
    const edit = { kind: "set", path, text: mark } as const;
    if (now.trim() === "") return blockOf(path, value);
    const splice = spliceOf(now, edit);
    return splice === null ? now : spliced(now, splice).replace(mark, () => value);
  }, text);
}

/** A key at the root in a line of its own. */
function blockOf([first = "", ...under]: readonly string[], value: string): string {
  const inner = under.reduceRight((held, key) => `{ ${JSON.stringify(key)}: ${held} }`, value);
  return `${first}: ${inner}\n`;
}
