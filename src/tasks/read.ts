/** A schedule as it was sent: what is understood of it, what is asked, and the job that it gives. Pure. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { ReadAsForm } from "../formats/read-as-form.js";
import { laidAsWritten, markFaults, markUses, sheetOfJob, withGivenLines } from "../job/index.js";
import { readAsForm } from "../outputs/read-as.js";
import { nameCell } from "../readers/cell-place.js";
import type { InputFile, Table } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { ReadQuestion, Schedule, UnitProof } from "../schedule/index.js";
import { openTables, provedUnits, readSchedule } from "../schedule/index.js";
import type { Unit } from "../units/index.js";
import { askLacking } from "./lacking-keys.js";
import { rodCountDoubts } from "./rod-count-doubts.js";

/** A sheet as it is handed in. */
export interface SheetInput {
  /** Its name, as the job file has it or will have it. */
  readonly name: string;
  /** Bytes or text of a text file; a workbook opened beforehand. */
  readonly file: InputFile;
  /** The job that names it, with its answers; null where there is none. */
  readonly job: SourceNode | null;
  /** Unit of bare lengths as the user states it; null: as the job says, else as the cells prove. */
  readonly unit: Unit | null;
}

/** What was understood of a sheet. */
export interface SheetReading {
  /** null where it is asked. */
  readonly unit: Unit | null;
  /** What says so: an option, the job, or a cell. */
  readonly unitBecause: string;
  readonly form: ReadAsForm;
  /** As a job file would have them; of faulty cells what could be read. */
  readonly bases: readonly SourceNode[];
  /** What is wrong or doubtful beside what is asked. */
  readonly findings: readonly Finding[];
  /** True where nothing is asked and nothing is wrong: the bases hold. */
  readonly isUnderstood: boolean;
}

/** Reads a sheet: every fault that keeps it from being read at all, or what was understood. */
export function readSheetAsSent(input: SheetInput): Outcome<SheetReading> {
  const said = sheetOfJob(input.job);
  if (!said.ok) return said;
  const { answers, beside } = said.value;
  const opened = openTables(input.file, input.name, answers.sheet);
  if (!opened.ok) return opened;
  const sheetMeant = (): string => readSchedule(opened.value, input.name, "in", answers, beside).readAs.sheet;
  const settled = settleUnit(input, opened.value, sheetMeant);
  const schedule = readSchedule(opened.value, input.name, settled.unit ?? "in", answers, beside);
  const isNoSchedule = schedule.bases.length === 0 && schedule.readAs.lines.length === 0;
  if (isNoSchedule && schedule.readAs.questions.length === 0) return { ok: false, findings: schedule.findings };
  if (settled.unit === null) return { ok: true, value: askUnit(input, settled.proofs), findings: [] };
  return { ok: true, value: readingOf(input, settled.unit, settled.because, opened.findings, schedule), findings: [] };
}

function readingOf(
  { job }: SheetInput,
  unit: Unit,
  unitBecause: string,
  opening: readonly Finding[],
  { bases, readAs, findings: told, headingOf: nameOf, columnOf }: Schedule,
): SheetReading {
  const laid = laidAsWritten(bases, job);
  const questions = [...readAs.questions, ...askLacking(laid, readAs.questions)];
  const doubts = readAs.questions.length === 0 ? rodCountDoubts(laid) : [];
  const twice = markFaults(markUses(bases.map((root) => ({ root, path: "", nameOf, columnOf }))));
  const findings = [...opening, ...told, ...doubts, ...twice].filter(({ code }) => !code.startsWith("asked-"));
  const form = { ...readAsForm(withGivenLines(readAs, laid), unit), questions };
  const isUnderstood = questions.length === 0 && !hasErrors(findings) && bases.length > 0;
  return { unit, unitBecause, form, bases, findings, isUnderstood };
}

interface SettledUnit {
  readonly unit: Unit | null;
  readonly because: string;
  readonly proofs: readonly Proof[];
}

interface Proof extends UnitProof {
  readonly sheet: string;
}

/**
 * What is stated goes before the job, the job before what the cells prove; cells that prove both prove none. Where sheets of
 * a workbook differ, those of the sheet that is meant count.
 */
function settleUnit({ unit, job }: SheetInput, tables: readonly Table[], sheetMeant: () => string): SettledUnit {
  const all = tables.flatMap((table) => provedUnits(table).map((proof) => ({ ...proof, sheet: table.sheet })));
  const meant = tables.length > 1 && new Set(all.map((proof) => proof.unit)).size > 1 ? sheetMeant() : "";
  const proofs = all.filter(({ sheet }) => meant === "" || sheet === meant);
  if (unit !== null) return { unit, because: "as stated", proofs };
  const written = findNode(job ?? undefined, "units");
  const ofJob = written?.kind === "scalar" ? written.text : "";
  if (ofJob === "in" || ofJob === "mm") return { unit: ofJob, because: "as the job says", proofs };
  const [proof] = proofs;
  if (proof === undefined || proofs.some((other) => other.unit !== proof.unit))
    return { unit: null, because: "", proofs };
  return { unit: proof.unit, because: proofWords(proof), proofs };
}

function proofWords({ sheet, cell, because }: Proof): string {
  return `${because}, "${cell.text}" in ${nameCell(sheet, cell)}`;
}

function askUnit({ name }: SheetInput, proofs: readonly Proof[]): SheetReading {
  const both = (["in", "mm"] as const).flatMap((unit) => proofs.find((proof) => proof.unit === unit) ?? []);
  const why = both.length === 0 ? "no cell says it" : `cells say both: ${both.map(proofWords).join("; ")}`;
  const question: ReadQuestion = {
    cells: [],
    text: `bare numbers are inches or millimetres? ${why}`,
    choices: [
      { line: "units: in", means: "inches; on the command line --unit in" },
      { line: "units: mm", means: "millimetres; on the command line --unit mm" },
    ],
  };
  const form: ReadAsForm = { file: name, sheet: "", unit: "", entries: [], questions: [question] };
  return { unit: null, unitBecause: "", form, bases: [], findings: [], isUnderstood: false };
}
