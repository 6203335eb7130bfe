/** The text of a job, opened whole. */
import type { Finding } from "../../diagnostics/finding.js";
import type { BaseReader, JobFile } from "../../job/index.js";
import { readJobFile, startBaseReader } from "../../job/index.js";
import type { Inputs } from "../../readers/inputs.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { ItemPlaces } from "../../readers/yaml.js";
import { placesOfItems } from "../../readers/yaml.js";
import type { Unit } from "../../units/index.js";
import { openJob, vocabulary } from "../open.js";
import type { OpenedJob } from "../opened-job.js";
import type { WrittenLine } from "./base-line.js";
import { headTexts, writtenLine } from "./base-line.js";

/** A text of a job and what it gives. */
export interface OpenText {
  readonly text: string;
  readonly inputs: Inputs;
  /** null: at fault. */
  readonly opened: OpenedJob | null;
  readonly findings: readonly Finding[];
  /** Of bases in the job file, in their order; of a schedule by its bases. */
  readonly lines: readonly WrittenLine[];
  /** Bases that are at fault, by their index. */
  readonly faulty: ReadonlySet<number>;
  readonly basesIn: "job" | "sheet";
  readonly unit: Unit;
  readonly root: SourceNode | null;
  /** Texts of the head as written, by key path. */
  readonly said: Readonly<Record<string, string>>;
  /** Files that the job names. */
  readonly requests: JobFile["requests"];
  /** How one base is read by itself; null where none can be. */
  readonly alone: { readonly places: ItemPlaces; readonly read: BaseReader } | null;
}

/** What is opened. */
export interface TextInput {
  readonly inputs: Inputs;
  readonly text: string;
  readonly date: string;
}

/** Opens a text; lines that are written as before are those of before. */
export function openText({ inputs: given, text, date }: TextInput, before: OpenText | null): OpenText {
  const file = readJobFile(text, given.job);
  const inputs = { ...given, files: new Map([...given.files, [given.job, file]]) };
  const opened = openJob(inputs, { date });
  const root = rootOf(file);
  const items = basesOf(root);
  const unit = findNode(root ?? undefined, "units");
  return {
    said: root === null ? {} : headTexts(root),
    ...{ text, inputs, root, findings: opened.findings, requests: file.requests },
    opened: opened.ok ? opened.value : null,
    lines: items === null ? linesOfSheet(opened.ok ? opened.value : null, before) : linesOf(items, root),
    faulty: faultyOf(opened.findings),
    basesIn: items === null && findNode(root ?? undefined, "schedule") !== undefined ? "sheet" : "job",
    unit: opened.ok ? opened.value.job.unit : unit?.kind === "scalar" && unit.text === "mm" ? "mm" : "in",
    alone: opened.ok && items !== null ? aloneOf(text, items, inputs) : null,
  };
}

function rootOf({ root }: JobFile): SourceNode | null {
  return root.ok ? root.value : null;
}

function basesOf(root: SourceNode | null): readonly SourceNode[] | null {
  const bases = findNode(root ?? undefined, "bases");
  return bases?.kind === "list" ? bases.items : null;
}

function linesOf(items: readonly SourceNode[], root: SourceNode | null): readonly WrittenLine[] {
  return items.map((node, index) => writtenLine(node, index, root));
}

/** Of a schedule: nothing of it is written in the job. */
function linesOfSheet(opened: OpenedJob | null, before: OpenText | null): readonly WrittenLine[] {
  if (opened === null) return before?.basesIn === "sheet" ? before.lines : [];
  return opened.bases.map(({ base }, index) => ({ path: `bases[${index}]`, mark: base.mark, written: {}, given: {} }));
}

function faultyOf(findings: readonly Finding[]): ReadonlySet<number> {
  const indices = findings.flatMap(({ severity, at }) => {
    const index = /^bases\[(\d+)\]/.exec(at.path ?? "")?.[1];
    return severity === "error" && index !== undefined ? [Number(index)] : [];
  });
  return new Set(indices);
}

function aloneOf(text: string, items: readonly SourceNode[], inputs: Inputs): OpenText["alone"] {
  const [first] = items;
  const places = first === undefined ? null : placesOfItems(text, first.place.line);
  const read = places?.dashes.length === items.length ? startBaseReader(inputs, { vocabulary }) : null;
  return places === null || read === null ? null : { places, read };
}
