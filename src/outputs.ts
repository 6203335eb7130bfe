/** The list of everything a package can hold: what each file is, for which templates it is written, and by whom. */
import type { CheckRow } from "./checks/index.js";
import { writeCheckDistances } from "./formats/check-distances-csv.js";
import { writeJoinedDxf } from "./formats/cut-dxf-joined.js";
import { writeR12Dxf } from "./formats/cut-dxf-r12.js";
import type { CutFileOptions } from "./formats/cut-file.js";
import { cutFileLayers } from "./formats/cut-file.js";
import { writeDrillList } from "./formats/drill-list-csv.js";
import { writePlanDxf } from "./formats/plan-dxf.js";
import type { SettingOutTexts } from "./formats/setting-out-csv.js";
import { writeSettingOut } from "./formats/setting-out-csv.js";
import { writeSheetSvg } from "./formats/sheet-svg.js";
import { surveyUnitName } from "./formats/survey-unit-name.js";
import type { Base, Job } from "./job/model/job.js";
import { checkDistances, coordinateSystems, locatedPoints } from "./plan/index.js";
import type { Plan } from "./plan/model.js";
import type { PlacedRod } from "./rods/model.js";
import { drawPlanSheets, drawSheet } from "./sheets/index.js";
import type { SummaryFile } from "./summary.js";
import type { Plate, PlateMeasures } from "./template/model.js";

/** A document for svg.js: a browser's own, or svgdom's. */
export type SvgDocument = Parameters<typeof writeSheetSvg>[1];

/** A finished file: `path` is inside the package, with forward slashes. */
export interface OutputFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly layers?: NonNullable<SummaryFile["layers"]>;
}

/** One base, computed and ready to be written. */
export interface Product {
  readonly job: Job;
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
  readonly measures: PlateMeasures;
  /** Worst first. */
  readonly rows: readonly CheckRow[];
  /** Why the base is held, one sentence each; empty when it is not. */
  readonly held: readonly string[];
  readonly weight: { readonly value: number; readonly unit: "lb" | "kg" } | null;
}

/** What a writer may use beside the product. */
export interface Surroundings {
  /** null where no sheet is wanted. */
  readonly document: SvgDocument | null;
  readonly version: string;
  readonly includeHeld: boolean;
  /** Files of the same base that are made already. */
  readonly made: readonly OutputFile[];
}

export type BaseOutputKind = "cut-joined" | "cut-r12" | "drill-list" | "sheet-svg";
export type JobDocumentKind =
  | "setting-out-csv"
  | "setting-out-bare-csv"
  | "check-distances-csv"
  | "plan-svg"
  | "plan-dxf";
export type JobOutputKind = "ledger" | "questions" | "summary";
export type OutputKind = BaseOutputKind | JobDocumentKind | JobOutputKind;

/** A file that a base may have in its folder. */
export interface BaseOutput {
  readonly kind: BaseOutputKind;
  /** For README: what it is and for whom. */
  readonly title: string;
  /** Name by pattern, for README. */
  readonly named: string;
  applies(product: Product, includeHeld: boolean): boolean;
  fileName(product: Product): string;
  write(product: Product, around: Surroundings): Uint8Array;
  /** Present for cut files, whose bytes are read back. */
  readonly cut?: (product: Product) => CutFileOptions;
}

/** The whole job, when all its bases are made: what its documents are written from. Plates are not kept: they are large. */
export interface JobProduct {
  readonly job: Job;
  readonly plan: Plan;
  /** Rows of the job itself, not of its bases. */
  readonly rows: readonly CheckRow[];
  /** Marks of the held bases, and why, one sentence each. */
  readonly held: ReadonlyMap<string, readonly string[]>;
}

/** What the writer of a document may use beside the product. */
export interface DocumentSurroundings extends Pick<Surroundings, "document" | "version"> {
  /** Documents that are made already. */
  readonly made: readonly Omit<OutputFile, "bytes">[];
}

/** A document that a job with a layout has beside the folders of its bases, in one file or several. */
export interface JobDocument {
  readonly kind: JobDocumentKind;
  /** For README: what it is and for whom. */
  readonly title: string;
  /** Name by pattern, for README. */
  readonly named: string;
  /** Paths inside the package, none twice. One file at a time, so that memory holds one. */
  write(
    product: JobProduct,
    around: DocumentSurroundings,
  ): Iterable<{ readonly path: string; readonly bytes: Uint8Array }>;
}

/** A file that the job has once; written in pieces as the bases go by. `summary.json` lists the others, not itself. */
export interface JobOutput {
  readonly kind: JobOutputKind;
  readonly title: string;
  readonly path: string;
}

const encoder = new TextEncoder();

/** In the order in which they are made: cut files first, since the sheet carries their names and hashes. */
export const baseOutputs: readonly BaseOutput[] = [
  {
    kind: "cut-joined",
    title: "Cut file: one closed LWPOLYLINE a contour, holes as CIRCLE",
    named: "MARK/TEMPLATE_rev-REVISION[_HELD][_NOT-RELEASED]_joined.dxf",
    applies: hasCutFile,
    fileName: (product) => `${cutFileStem(product)}_joined.dxf`,
    write: (product) => writeJoinedDxf(product.plate, cutFileOptions(product.job)),
    cut: (product) => cutFileOptions(product.job),
  },
  {
    kind: "cut-r12",
    title: "Cut file for older readers: LINE, ARC and CIRCLE",
    named: "MARK/TEMPLATE_rev-REVISION[_HELD][_NOT-RELEASED]_r12.dxf",
    applies: hasCutFile,
    fileName: (product) => `${cutFileStem(product)}_r12.dxf`,
    write: (product) => writeR12Dxf(product.plate, cutFileOptions(product.job)),
    cut: (product) => cutFileOptions(product.job),
  },
  {
    kind: "drill-list",
    title: "Drill list of a plywood template, instead of cut files",
    named: "MARK/TEMPLATE_rev-REVISION[_HELD][_NOT-RELEASED]_drill-list.csv",
    applies: hasDrillList,
    fileName: drillListName,
    write: ({ plate, measures, job }) => encoder.encode(writeDrillList(plate, measures, job.unit)),
  },
  {
    kind: "sheet-svg",
    title: "Dimensioned sheet of the template, for the shop, the checker and the field",
    named: "MARK/TEMPLATE_rev-REVISION_sheet.svg",
    applies: () => true,
    fileName: (product) => `${stem(product)}_sheet.svg`,
    write: writeSheet,
  },
];

/** In the order in which they are made: plan sheets last, since they name the others. */
export const jobDocuments: readonly JobDocument[] = [
  {
    kind: "setting-out-csv",
    title:
      "Points to set out, with a header row: in site coordinates, and in local ones (north and east are plan y and x)",
    named: "setting-out/JOB_rev-REVISION[_NOT-RELEASED]_(site|local)_ORDER_UNIT.csv",
    write: (product) => settingOutFiles(product, "", ({ headed }) => headed),
  },
  {
    kind: "setting-out-bare-csv",
    title: "The same points without the header row, for loggers that take nothing else",
    named: "setting-out/JOB_rev-REVISION[_NOT-RELEASED]_(site|local)_ORDER_UNIT_bare.csv",
    write: (product) => settingOutFiles(product, "_bare", ({ bare }) => bare),
  },
  {
    kind: "check-distances-csv",
    title: "Distances to check: two diagonals of every group, and centre to centre along every grid line",
    named: "setting-out/JOB_rev-REVISION[_NOT-RELEASED]_check-distances_UNIT.csv",
    write: (product) => [checkDistanceFile(product)],
  },
  {
    kind: "plan-dxf",
    title: "Anchor-rod plan for other programs: R2000 at true scale, plan coordinates, rods as CIRCLE; not a cut file",
    named: "plan/anchor-rod-plan_rev-REVISION[_NOT-RELEASED].dxf",
    write: ({ job, plan }) => [{ path: `${planStem(job)}.dxf`, bytes: writePlanDxf(plan, job.unit) }],
  },
  {
    kind: "plan-svg",
    title: "Anchor-rod plan in sheets: plan with grid and placements, a detail of every type, schedules",
    named: "plan/anchor-rod-plan_rev-REVISION[_NOT-RELEASED]_SHEET-of-SHEETS.svg",
    write: writePlanSheets,
  },
];

export const jobOutputs: readonly JobOutput[] = [
  { kind: "ledger", title: "Every check of every base, worst first, with what was not checked", path: "ledger.csv" },
  { kind: "questions", title: "Questions for the engineer of record, one a line", path: "questions.csv" },
  {
    kind: "summary",
    title: "The package in machine form, with the size and hash of every other file",
    path: "summary.json",
  },
];

/** The layers of a cut file, for the summary. */
export function layersOf(product: Product): NonNullable<SummaryFile["layers"]> {
  return cutFileLayers(product.plate, cutFileOptions(product.job));
}

function cutFileOptions({ unit, shop }: Job): CutFileOptions {
  const { layers, origin } = shop.cutFile;
  return { unit, layers, origin, marks: shop.marking.how === "scribe" };
}

function hasCutFile({ plate, held }: Product, includeHeld: boolean): boolean {
  return plate.material === "steel" && (held.length === 0 || includeHeld);
}

function hasDrillList({ plate, held }: Product, includeHeld: boolean): boolean {
  return plate.material === "plywood" && (held.length === 0 || includeHeld);
}

function writeSheet(product: Product, { made, document, version }: Surroundings): Uint8Array {
  const { job, base, rods, plate, measures, rows, held, weight } = product;
  if (document === null) throw new TypeError("a sheet is drawn with svg.js, which needs a document");
  const cutFiles = made.filter(({ kind }) => kind === "cut-joined" || kind === "cut-r12");
  const drillList = made.find(({ kind }) => kind === "drill-list");
  const scene = drawSheet({
    ...{ job, base, rods, plate, measures, rows, held, weight },
    cutFiles: cutFiles.map(({ path, sha256 }) => ({ name: nameIn(path), sha256 })),
    drillListName: drillList === undefined ? null : nameIn(drillList.path),
    sheetNumber: 1,
    sheetCount: 1,
    programVersion: version,
  });
  return encoder.encode(writeSheetSvg(scene, document));
}

/** One file a coordinate system; order and unit stand in its name. */
function settingOutFiles(
  { job, plan, held }: JobProduct,
  ending: string,
  pick: (texts: SettingOutTexts) => string,
): { readonly path: string; readonly bytes: Uint8Array }[] {
  const { order, unit } = plan.spec.settingOut;
  return coordinateSystems(plan).map((system) => ({
    path: `${settingOutStem(job)}_${system}_${order}_${surveyUnitName(unit)}${ending}.csv`,
    bytes: encoder.encode(
      pick(
        writeSettingOut(
          locatedPoints(plan, system, (mark) => held.has(mark)),
          plan.spec.settingOut,
        ),
      ),
    ),
  }));
}

function checkDistanceFile({ job, plan }: JobProduct): { readonly path: string; readonly bytes: Uint8Array } {
  const { unit } = plan.spec.settingOut;
  const path = `${settingOutStem(job)}_check-distances_${surveyUnitName(unit)}.csv`;
  return { path, bytes: encoder.encode(writeCheckDistances(checkDistances(plan), job.unit, unit)) };
}

function* writePlanSheets(
  { job, plan, held }: JobProduct,
  { made, document, version }: DocumentSurroundings,
): Generator<{ readonly path: string; readonly bytes: Uint8Array }> {
  if (document === null) throw new TypeError("a plan is drawn with svg.js, which needs a document");
  const dxf = made.find(({ kind }) => kind === "plan-dxf");
  const scenes = drawPlanSheets({
    ...{ job, plan, held },
    coordinateFiles: made.filter(({ kind }) => kind === "setting-out-csv").map(({ path }) => nameIn(path)),
    dxfName: dxf === undefined ? null : nameIn(dxf.path),
    programVersion: version,
  });
  for (const [i, scene] of scenes.entries()) {
    const path = `${planStem(job)}_${i + 1}-of-${scenes.length}.svg`;
    yield { path, bytes: encoder.encode(writeSheetSvg(scene, document)) };
  }
}

function planStem({ revision, status }: Job): string {
  const released = status === "released" ? "" : "_NOT-RELEASED";
  return `plan/anchor-rod-plan_rev-${safeForFileName(revision)}${released}`;
}

function settingOutStem({ number, revision, status }: Job): string {
  const released = status === "released" ? "" : "_NOT-RELEASED";
  return `setting-out/${safeForFileName(number)}_rev-${safeForFileName(revision)}${released}`;
}

const nameIn = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

function stem({ plate, job }: Product): string {
  return `${plate.mark}_rev-${safeForFileName(job.revision)}`;
}

/** Held and not-released stand in the name of whatever is cut or drilled by. */
function cutFileStem(product: Product): string {
  const held = product.held.length > 0 ? "_HELD" : "";
  const released = product.job.status === "released" ? "" : "_NOT-RELEASED";
  return `${stem(product)}${held}${released}`;
}

function drillListName(product: Product): string {
  return `${cutFileStem(product)}_drill-list.csv`;
}

const LONGEST_REVISION = 32;

/**
 * A revision as part of a file name that every system takes: letters, digits, dot and hyphen as they are, spaces and
 * punctuation as a hyphen, other letters as `u` and their code point in hexadecimal.
 */
export function safeForFileName(text: string): string {
  const safe = [...text.trim()].map(safeCharacter).join("").replace(/-+/g, "-");
  const trimmed = safe.replace(/^[-.]+|[-.]+$/g, "").slice(0, LONGEST_REVISION);
  return trimmed === "" ? "none" : trimmed;
}

function safeCharacter(character: string): string {
  if (/[A-Za-z0-9.-]/.test(character)) return character;
  const code = character.codePointAt(0) ?? 0;
  return code < 128 ? "-" : `u${code.toString(16)}`;
}
