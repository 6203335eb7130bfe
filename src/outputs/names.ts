/** Names of files and folders: revision and status stand in them, in signs that every system takes. */
import type { CheckedBase } from "../checks/checked.js";
import type { OpenQuestion } from "../checks/release.js";
import { isReleased } from "../checks/release.js";
import type { CutNamePart, Job, Material } from "../job/model/job.js";
import type { Plate } from "../template/index.js";
import { formatStock, type Unit } from "../units/index.js";

/** Folder of a package for the revisions before it: nobody cuts from there. */
export const SUPERSEDED = "superseded";

/** Folder of a package for files of earlier ones that somebody changed. */
export const SET_ASIDE = "set-aside";

/** Folders of a package, by who opens them: table operator, whoever reads drawings, rod shop, field, engineer and checker, other machines. */
export const FOLDERS = {
  cut: "cut",
  sheets: "sheets",
  rods: "rods",
  field: "field",
  engineer: "engineer",
  machine: "machine",
} as const;

/** Folder of a package for what people signed of it: records that no summary lists, and that are never lost. */
export const SIGNED = `${FOLDERS.engineer}/signed`;

/** `T1_rev-B`: the template's mark and the job's revision. */
function templateStem({ plate, job }: Pick<CheckedBase, "plate" | "job">): string {
  return `${plate.mark}_rev-${safeForFileName(job.revision)}`;
}

/** Which sheet of its template is that of this base, from 1, and of how many. */
export interface SheetPlace {
  readonly number: number;
  readonly count: number;
  /** Marks of the bases that it is for. */
  readonly bases: readonly string[];
}

/** A template has one sheet, but where it serves bases that are not alike in all that a sheet says. */
export function sheetPlace({ base, shared }: Pick<CheckedBase, "base" | "shared">): SheetPlace {
  const sheets = shared?.sheets ?? [[base.mark]];
  const at = sheets.findIndex((bases) => bases.includes(base.mark));
  return { number: at + 1, count: sheets.length, bases: sheets[at] ?? [base.mark] };
}

/** `T1_rev-B`; with the first base that it is for, where the template has several sheets: `T1_rev-B_for-B9`. */
export function sheetStem(checked: Pick<CheckedBase, "plate" | "job" | "base" | "shared">): string {
  const { count, bases } = sheetPlace(checked);
  return count === 1 ? templateStem(checked) : `${templateStem(checked)}_for-${bases[0] ?? ""}`;
}

/** `24-118_rev-B`, and that the job is not released where it is not: of a document of the whole job. */
export function jobStem(job: Pick<Job, "number" | "revision" | "status">): string {
  return `${safeForFileName(job.number)}_rev-${safeForFileName(job.revision)}${releaseEnding(job)}`;
}

/** `T1-S2_rev-B`: of the sheet of a piece. */
export function pieceStem(
  { job }: Pick<CheckedBase, "job">,
  { plate }: { readonly plate: CheckedBase["plate"] },
): string {
  return templateStem({ plate, job });
}

/**
 * `cut/T9_2-off_PL3-8_A36_rev-B`, of what a piece is cut or drilled by: the parts that the shop wants, then held and not
 * released. What is held lies apart, so that nobody who takes the whole folder cuts it. Only the mark may hold `_`, so that
 * two marks never give one name.
 */
export function makingPath(
  { job, held, open }: Pick<CheckedBase, "job" | "held" | "open">,
  { plate }: { readonly plate: CutNamed },
  folder?: string,
): string {
  return makingPathOf(job, plate, { held: held.length > 0, released: isReleased(job, open) }, folder);
}

/** What of a state stands in names. */
export interface NamedState {
  readonly held: boolean;
  readonly released: boolean;
}

/** As `makingPath`, where no more is known of the base than its state. */
export function makingPathOf(
  job: Pick<Job, "shop" | "unit">,
  plate: CutNamed,
  state: NamedState,
  folder?: string,
): string {
  const folders = [FOLDERS.cut, ...(state.held ? [HELD_FOLDER] : []), ...(folder === undefined ? [] : [folder])];
  return `${folders.join("/")}/${pieceName(job, plate, state)}`;
}

/** `machine/T9_2-off_PL3-8_A36_rev-B`, of what shows a piece to other programs: named as what it is cut by. */
export function solidPath(
  { job, held, open }: Pick<CheckedBase, "job" | "held" | "open">,
  { plate }: { readonly plate: CutNamed },
): string {
  return `${FOLDERS.machine}/${pieceName(job, plate, { held: held.length > 0, released: isReleased(job, open) })}`;
}

/** `machine/T9_rev-B_with-rods`, of what shows a whole template: named as its sheet. */
export function assemblyPath(checked: CheckedBase): string {
  return `${FOLDERS.machine}/${sheetStem(checked)}_with-rods${heldEnding(checked)}${releaseEnding(checked.job, checked.open)}`;
}

function pieceName({ shop, unit }: Pick<Job, "shop" | "unit">, plate: CutNamed, state: NamedState): string {
  const parts = shop.cutFile.name.map((part) => CUT_NAMES[part](plate, unit));
  return `${parts.join("_")}${state.held ? HELD_ENDING : ""}${state.released ? "" : NOT_RELEASED_ENDING}`;
}

const HELD_ENDING = "_HELD";
const NOT_RELEASED_ENDING = "_NOT-RELEASED";

const HELD_FOLDER = "held";

/** What of a plate stands in names. */
export type CutNamed = Pick<Plate, "mark" | "revision" | "quantity" | "material" | "grade" | "thickness">;

const CUT_NAMES: Readonly<Record<CutNamePart, (plate: CutNamed, unit: Unit) => string>> = {
  mark: ({ mark }) => mark,
  quantity: ({ quantity }) => `${quantity}-off`,
  thickness: ({ material, thickness }, unit) =>
    `${STOCK[material]}${formatStock(thickness, unit).replaceAll("/", "-").replace(" ", "")}`,
  material: ({ material, grade }) => safeForFileName(grade ?? material),
  revision: ({ revision }) => `rev-${safeForFileName(revision)}`,
};

/** Plate and board, before their thickness. */
const STOCK: Readonly<Record<Material, string>> = { steel: "PL", plywood: "PLY" };

/** By pattern, for README. */
export const MAKING_PATTERN = `${FOLDERS.cut}/[held/]TEMPLATE_QTY-off_PLTHICKNESS_MATERIAL_rev-REVISION[_HELD][_NOT-RELEASED]`;

/** The same for other programs. */
export const SOLID_PATTERN = `${FOLDERS.machine}/TEMPLATE_QTY-off_PLTHICKNESS_MATERIAL_rev-REVISION[_HELD][_NOT-RELEASED]`;

/** Of a template with its rods. */
export const ASSEMBLY_PATTERN = `${FOLDERS.machine}/TEMPLATE_rev-REVISION[_for-BASE]_with-rods[_HELD][_NOT-RELEASED]`;

/** Of every file of a template that may not be cut: empty for one that is not held. */
export function heldEnding({ held }: Pick<CheckedBase, "held">): string {
  return held.length > 0 ? HELD_ENDING : "";
}

/** Of every document that people build by: empty for a released job, but where a question about what it shows is open. */
export function releaseEnding(job: Pick<Job, "status">, open: readonly OpenQuestion[] = []): string {
  return isReleased(job, open) ? "" : NOT_RELEASED_ENDING;
}

/** Of a sheet, which has a banner where the whole job is not released: where a question alone stops it, its name says so too. */
export function openEnding({ job, open }: Pick<CheckedBase, "job" | "open">): string {
  return job.status === "released" ? releaseEnding(job, open) : "";
}

/** The last part of a path. */
export function nameIn(path: string): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

const LONGEST = 32;

/**
 * A revision as part of a file name that every system takes: letters, digits, dot and hyphen as they are, spaces and
 * punctuation as a hyphen, other letters as `u` and their code point in hexadecimal.
 */
export function safeForFileName(text: string): string {
  const safe = [...text.trim()].map(safeCharacter).join("").replace(/-+/g, "-");
  const trimmed = safe.replace(/^[-.]+|[-.]+$/g, "").slice(0, LONGEST);
  return trimmed === "" ? "none" : trimmed;
}

function safeCharacter(character: string): string {
  if (/[A-Za-z0-9.-]/.test(character)) return character;
  const code = character.codePointAt(0) ?? 0;
  return code < 128 ? "-" : `u${code.toString(16)}`;
}
