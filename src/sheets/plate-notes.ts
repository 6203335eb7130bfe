/** Notes and cautions of a sheet. */
import { CAUTION } from "../checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../checks/model.js";
import { listed } from "../diagnostics/listed.js";
import { keyWords } from "../template/index.js";
import type { Hole, Keyed } from "../template/model.js";
import type { Unit } from "../units/index.js";
import { alikeHoles, sizeText } from "./callouts.js";
import { assemblyNote, lowerLevelWords } from "./piece-request.js";
import { isPart, type SheetRequest } from "./request.js";
import { scribingNotes, settingNote } from "./scribing-notes.js";
import { respelled } from "./spelling.js";

/** What the shop and the field must know of this plate. */
export function plateNotes(request: SheetRequest, unplaced: readonly string[]): readonly string[] {
  const { plate, base, job, drillListName } = request;
  const punched = plate.material === "plywood" ? [] : plate.holes.filter(({ made }) => made === "drill");
  const drilled = alikeHoles(punched, job.unit);
  return [
    ...(request.piece?.notes ?? []),
    ...(isPart(request.piece) ? [] : [settingNote(request)]),
    ...scribingNotes(request),
    ...piecesNotes(request),
    ...(plate.material === "plywood"
      ? plywoodNotes(drillListName)
      : ["Sizes are nominal, without kerf. Cut from the cut file, do not scale this print."]),
    "Figures in brackets are for reference: what is left of a size, or the exact value of a rounded one.",
    ...drilled.map((alike) => punchNote(alike, job)),
    ...plate.sized.map(({ what, how }) => `Size of ${what}: ${how}.`),
    ...(plate.keyed === null ? [] : [orientationNote(plate.keyed, job.unit)]),
    ...(base.columnName === "" ? [] : [`Column: ${base.columnName}.`]),
    ...sharedNotes(request),
    ...(base.note === "" ? [] : [base.note]),
    ...unplaced.filter((words) => words !== ""),
  ];
}

/** What the sheet of a template says of the pieces that have sheets of their own. */
function piecesNotes({ plate: { parted, lower }, job, base, piece }: SheetRequest): readonly string[] {
  const below =
    lower === null ? [] : [`LOWER TEMPLATE ${lower.mark}: ${lowerLevelWords(job, base)}; sheet and files of its own.`];
  if (isPart(piece)) return below;
  if (parted === null) return [...below, ...wholeNote(base, job)];
  const splices = parted.splices.map(
    ({ mark, quantity }) => `${mark} (${quantity / Math.max(1, plateCount(base))} a template)`,
  );
  return [
    `CUT IN SEGMENTS ${listed(
      parted.segments.map(({ plate }) => plate.mark),
      MOST_MARKS,
    )} with splice plates ${listed(splices, MOST_MARKS)}: sheets and files of their own, none of the whole. ${sentence(parted.how)}.`,
    assemblyNote(parted),
    ...below,
  ];
}

/** Where the program was asked for segments, and made none. */
function wholeNote({ template: { segments } }: SheetRequest["base"], { shop }: SheetRequest["job"]): readonly string[] {
  if (segments === null) return [];
  return shop.table.kind === "missing"
    ? ["SEGMENTS auto: not cut in segments, since the shop file gives no size of its table."]
    : [`SEGMENTS auto: one piece, it lies on the table (${shop.table.from}).`];
}

function plateCount({ template: { quantity } }: SheetRequest["base"]): number {
  return quantity;
}

function sentence(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

const MOST_MARKS = 40;

/** Which bases this sheet is for, where it is not for all that the template serves. */
function sharedNotes({ base, sheetBases, sheetCount }: SheetRequest): readonly string[] {
  const { mark, sharedBy } = base.template;
  const others = sharedBy.filter((each) => !sheetBases.includes(each));
  if (sharedBy.length === 0 || others.length === 0) return [];
  const [own, rest] = [sheetBases, others].map((marks) => listed(marks, MOST_MARKS));
  return [
    `Rods, levels and checks of this sheet are those of ${own}. ${mark} serves ${rest} too: ${sheetCount} sheets in all.`,
  ];
}

/** What tells the right way round at the edge: never called a key, which a shear key could be taken for. */
function orientationNote(keyed: Keyed, unit: Unit): string {
  const word = keyed.kind === "corner cut" ? "cut" : "notch";
  return `Orientation ${word}: ${keyWords(keyed, unit)}. A template that lies any other way round shows it at the edge.`;
}

const MOST_TAGS = 12;

function punchNote(alike: readonly Hole[], { unit, editions }: SheetRequest["job"]): string {
  const more = alike.length > MOST_TAGS ? ` and ${alike.length - MOST_TAGS} more` : "";
  const tags = alike
    .slice(0, MOST_TAGS)
    .map(({ tag }) => tag)
    .join(", ");
  const sizes = [...new Set(alike.map((hole) => sizeText(hole, unit)))].join(", ");
  return `${respelled("Centre punch", editions)} and drill ${tags}${more}: ${sizes}.`;
}

function plywoodNotes(drillListName: string | null): readonly string[] {
  const list = drillListName === null ? "the hole table" : drillListName;
  return [`Plywood: drill to ${list}. Plate washers on both faces at every rod.`];
}

/** Printed on every sheet. */
export const SHEET_CAUTIONS: readonly string[] = [
  `NOT CHECKED AT ALL: ${NOT_CHECKED_AT_ALL.join(", ")}.`,
  CAUTION.fieldChange,
  `${CAUTION.guardRods} ${CAUTION.noLifting}`,
  `${CAUTION.releasedOnly} ${CAUTION.surveyAgain}`,
  CAUTION.localCodes,
];
