/** The text of a job as it stands, and what it gives. */
import type { Finding } from "../../diagnostics/finding.js";
import type { JobFile, Memory } from "../../job/index.js";
import { readJobFile, startMemory } from "../../job/index.js";
import type { Inputs } from "../../readers/inputs.js";
import { contentOf } from "../../readers/inputs.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { decodeText } from "../../readers/text.js";
import type { PieceReader, TextPieces } from "../../readers/yaml-pieces.js";
import { startPieceReader } from "../../readers/yaml-pieces.js";
import type { Unit } from "../../units/index.js";
import type { LaidJob } from "../open.js";
import { openParts } from "../open.js";
import type { WrittenLine } from "./base-line.js";
import { headTexts, markOf, sheetLine, startWrittenLines } from "./base-line.js";
import type { LiveRepeat } from "./model.js";
import { repeatsIn } from "./repeats.js";

/** A text of a job and what it gives. */
export interface OpenText {
  readonly text: string;
  readonly inputs: Inputs;
  /** null: at fault. */
  readonly whole: LaidJob | null;
  /** The bases without a fault; null where head, shop or marks have one. */
  readonly sound: LaidJob | null;
  readonly findings: readonly Finding[];
  /** Of bases in the job file, in their order; of a schedule by its bases. */
  readonly lines: readonly WrittenLine[];
  /** Bases that are at fault, by their index. */
  readonly faulty: ReadonlySet<number>;
  readonly basesIn: "job" | "sheet";
  readonly unit: Unit;
  readonly root: SourceNode | null;
  readonly pieces: TextPieces | null;
  /** Texts of the head as written, by key path. */
  readonly said: Readonly<Record<string, string>>;
  readonly repeats: readonly LiveRepeat[];
  /** Files that the job names. */
  readonly requests: JobFile["requests"];
}

/** Opens one text of a job after the other; what did not change is known. */
export interface TextOpener {
  readonly memory: Memory;
  open(text: string): OpenText;
}

/** `inputs`: with the files beside the job. */
export function startTextOpener(given: Inputs, { date }: { readonly date: string }): TextOpener {
  const [memory, reader] = [startMemory(), startPieceReader()];
  const lines = startWrittenLines(memory);
  return {
    memory,
    open: (text) => {
      memory.turn();
      const { file, pieces } = readText(text, given, reader);
      const inputs = { ...given, files: new Map([...given.files, [given.job, file]]) };
      const { whole, sound, findings, roots } = openParts(inputs, { date, memory });
      const root = file.root.ok ? file.root.value : null;
      const bases = findNode(root ?? undefined, "bases");
      const isInJob = bases?.kind === "list";
      const written = isInJob
        ? { lines: lines(bases.items, root), faulty: faultyOf(findings) }
        : linesOfSheet(sound, roots);
      return {
        ...{ text, inputs, root, pieces, whole, sound, findings, requests: file.requests },
        ...written,
        said: root === null ? {} : headTexts(root),
        repeats: repeatsIn(text, written.lines),
        basesIn: isInJob || namesNoSheet(root) ? "job" : "sheet",
        unit: sound?.job.unit ?? unitIn(root),
      };
    },
  };
}

/** Bytes that are no text are told as such as long as nothing is typed over them. */
function readText(
  text: string,
  { job, files }: Inputs,
  reader: PieceReader,
): { readonly file: JobFile; readonly pieces: TextPieces | null } {
  const given = contentOf(files.get(job));
  const content = given instanceof Uint8Array && new TextDecoder().decode(given) === text ? given : text;
  let pieces: TextPieces | null = null;
  const file = readJobFile(content, job, (whole, name) => {
    const decoded = decodeText(whole, name, "allowed is YAML");
    if (!decoded.ok) return { ok: false, findings: [decoded.finding] };
    const read = reader.read(decoded.text, name);
    pieces = decoded.text === text ? read.pieces : null;
    return read.root;
  });
  return { file, pieces };
}

function namesNoSheet(root: SourceNode | null): boolean {
  return ["schedule", "readFrom"].every((key) => findNode(root ?? undefined, key) === undefined);
}

function unitIn(root: SourceNode | null): Unit {
  const unit = findNode(root ?? undefined, "units");
  return unit?.kind === "scalar" && unit.text === "mm" ? "mm" : "in";
}

type LinesAndFaulty = Pick<OpenText, "lines" | "faulty">;

/** Of a schedule: what its cells say is told, though it cannot be edited in the job; rows at fault come last. */
function linesOfSheet(sound: LaidJob | null, roots: readonly SourceNode[]): LinesAndFaulty {
  const left = new Map(roots.map((root) => [markOf(root), root]));
  const known = (sound?.bases ?? []).map(({ base: { mark } }) => {
    const root = left.get(mark);
    left.delete(mark);
    return { mark, root };
  });
  const all = [...known, ...[...left].map(([mark, root]) => ({ mark, root }))];
  const faulty = all.flatMap((_, index) => (sound !== null && index >= known.length ? [index] : []));
  return { lines: all.map(({ mark, root }, index) => sheetLine(root, mark, index)), faulty: new Set(faulty) };
}

function faultyOf(findings: readonly Finding[]): ReadonlySet<number> {
  const indices = findings.flatMap(({ severity, at }) => {
    const index = /^bases\[(\d+)\]/.exec(at.path ?? "")?.[1];
    return severity === "error" && index !== undefined ? [Number(index)] : [];
  });
  return new Set(indices);
}
