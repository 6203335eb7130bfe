/** Notes and cautions of a sheet. */
import { CAUTION } from "../checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../checks/model.js";
import { listed } from "../diagnostics/listed.js";
import { keyWords } from "../template/index.js";
import type { Hole } from "../template/model.js";
import { formatLength } from "../units/index.js";
import { alikeHoles, sizeText } from "./callouts.js";
import type { SheetRequest } from "./request.js";
import { spellingOf } from "./spelling.js";

/** What the shop and the field must know of this plate. */
export function plateNotes(request: SheetRequest, unplaced: readonly string[]): readonly string[] {
  const { plate, base, job, drillListName } = request;
  const scribed = markWords(request);
  const punched = plate.material === "plywood" ? [] : plate.holes.filter(({ made }) => made === "drill");
  const drilled = alikeHoles(punched, job.unit);
  return [
    axesNote(request),
    ...(plate.material === "plywood"
      ? plywoodNotes(drillListName)
      : ["Sizes are nominal, without kerf. Cut from the cut file, do not scale this print."]),
    ...drilled.map((alike) => punchNote(alike, job)),
    ...(scribed === "" ? [] : [scribed]),
    ...plate.sized.map(({ what, how }) => `Size of ${what}: ${how}.`),
    ...polygonNotes(request),
    ...(plate.keyed === null
      ? []
      : [
          `Orientation ${keyWords(plate.keyed, job.unit)}. A template that lies any other way round shows it at the edge.`,
        ]),
    ...(base.columnName === "" ? [] : [`Column: ${base.columnName}.`]),
    ...sharedNotes(request),
    ...(base.note === "" ? [] : [base.note]),
    ...unplaced.slice(0, MOST_UNPLACED),
  ];
}

/** Which face is up, and what the axes have to do with north. */
function axesNote({ plate }: SheetRequest): string {
  const axes = "Set with the face TOP up. +X and +Y are the template's own axes";
  return plate.marks.some(({ kind }) => kind === "north")
    ? `${axes}. N points to plan north wherever this template is set: all its places are turned alike.`
    : `${axes}, not north: the anchor-rod plan gives the turn.`;
}

const MOST_UNPLACED = 8;
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

const MOST_CORNERS = 24;

/** The corners of a polygon, before their treatment: dimensions give no more than its overall size. */
function polygonNotes({ base, job }: SheetRequest): readonly string[] {
  const { outline } = base.template;
  if (outline.kind !== "polygon") return [];
  const corners = outline.at.map(({ x, y }) => `${formatLength(x, job.unit)}, ${formatLength(y, job.unit)}`);
  const more = corners.length > MOST_CORNERS ? `; ${corners.length - MOST_CORNERS} more in the cut file` : "";
  return [`Corners of the outline, X, Y from W.P.: ${corners.slice(0, MOST_CORNERS).join("; ")}${more}.`];
}

const MOST_TAGS = 12;

function punchNote(alike: readonly Hole[], { unit, editions }: SheetRequest["job"]): string {
  const more = alike.length > MOST_TAGS ? ` and ${alike.length - MOST_TAGS} more` : "";
  const tags = alike
    .slice(0, MOST_TAGS)
    .map(({ tag }) => tag)
    .join(", ");
  const sizes = [...new Set(alike.map((hole) => sizeText(hole, unit)))].join(", ");
  const punch = spellingOf(editions).center === "CENTER" ? "Center punch" : "Centre punch";
  return `${punch} and drill ${tags}${more}: ${sizes}.`;
}

function plywoodNotes(drillListName: string | null): readonly string[] {
  const list = drillListName === null ? "the hole table" : drillListName;
  return [`Plywood: drill to ${list}. Marks are painted. Plate washers on both faces at every rod.`];
}

function markWords({ plate, job }: SheetRequest): string {
  const words = [...new Set(plate.marks.filter(({ text }) => text !== "").map(({ text }) => text))];
  const how = plate.material === "plywood" || job.shop.marking.how === "paint" ? "Painted" : "Scribed";
  return words.length === 0 || job.shop.marking.how === "none"
    ? ""
    : `${how} on the top face: ${words.slice(0, MOST_TAGS).join("; ")}${words.length > MOST_TAGS ? "; ..." : "."}`;
}

/** Printed on every sheet. */
export const SHEET_CAUTIONS: readonly string[] = [
  `NOT CHECKED AT ALL: ${NOT_CHECKED_AT_ALL.join(", ")}.`,
  CAUTION.fieldChange,
  `${CAUTION.guardRods} ${CAUTION.noLifting}`,
  `${CAUTION.releasedOnly} ${CAUTION.surveyAgain}`,
  CAUTION.localCodes,
];
