/** Revisions of a small job, one package after the other, for tests of questions. Invented data. */
import { newLeanDocument } from "../src/formats/lean-document.js";
import type { PdfMaker } from "../src/formats/pdf-maker.js";
import type { Table, Workbook } from "../src/readers/inputs.js";
import { type Build, build } from "../src/tasks/build.js";
import { inputsOf } from "./unit/job/files.js";

/** A base whose washer is too small for its hole (2-7/8 in is asked for) where it is not said otherwise. */
export interface AskedBase {
  readonly mark: string;
  readonly washer?: string;
  readonly hole?: string;
  readonly template?: string;
  readonly quantity?: number;
}

export interface Revision {
  readonly revision: string;
  readonly bases: readonly AskedBase[];
  readonly head?: readonly string[];
  readonly status?: string;
  readonly unit?: "in" | "mm";
  /** summary.json of the package before. */
  readonly before?: string | undefined;
  readonly files?: Readonly<Record<string, string | Uint8Array | Table | Workbook>>;
  readonly pdf?: PdfMaker;
  /** Checks only, which is sooner done. */
  readonly unwritten?: boolean;
}

export function jobText({ revision, bases, head = [], status = "released" }: Revision): string {
  return [
    `job: { number: "24-118", title: Cold store, revision: ${revision}, status: ${status}, date: 2026-11-24 }`,
    "units: in",
    ...head,
    "bases:",
    ...bases.map(
      ({ mark, washer = "2-1/2", hole = "2-1/16", template = `T-${mark}`, quantity = 1 }) =>
        `  - { mark: ${mark}, quantity: ${quantity}, rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { x: 18, y: 16, thickness: 1, hole: ${hole}, washer: { shape: square, size: ${washer}, thickness: 1/2 } }, template: { mark: ${template}, thickness: 1/4 } }`,
    ),
    "",
  ].join("\n");
}

/** Its package; `outputs` as the pdf that is handed in allows. */
export function packageOf(revision: Revision) {
  const built = tryPackage(revision);
  const ofBases = [...built.bases].flatMap((base) => base.files);
  const { summary, questions, files: ofJob } = built.finish();
  const files = [...ofBases, ...ofJob];
  const text = (ending: string): string => {
    const file = files.find(({ path }) => path.endsWith(ending));
    if (file === undefined) throw new Error(`no ${ending} among ${files.map(({ path }) => path).join(" ")}`);
    return new TextDecoder().decode(file.bytes);
  };
  const bytes = (ending: string) => files.find(({ path }) => path.endsWith(ending))?.bytes ?? new Uint8Array();
  const baseFiles = summary.bases.flatMap((base) => base.files.map(({ path }) => path));
  return { summary, questions, files, text, bytes, baseFiles, json: JSON.stringify(summary), findings: built.findings };
}

export function tryPackage(revision: Revision): Build {
  const { before, files = {}, pdf = null, unwritten = false } = revision;
  const inputs = { ...inputsOf(jobText(revision), files), ...(before === undefined ? {} : { register: before }) };
  const options = { date: "2026-11-24", version: "1", document: newLeanDocument(), pdf };
  return build(inputs, unwritten ? { ...options, outputs: [] } : options);
}

/** `Q-1 open 2.5 B1 B2`, one a question, closed ones too. */
export function numbersOf({ summary }: ReturnType<typeof packageOf>): readonly string[] {
  return summary.questions.map(({ number, status, value, bases }) =>
    `${number} ${status} ${value} ${bases.join(" ")}`.trim(),
  );
}
