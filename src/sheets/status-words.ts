/** What a sheet is and whether it may be used, in words: the same in title block, title of the document and description. */
import { isAsking } from "../checks/run.js";
import type { TemplateUse } from "../job/model/job.js";
import type { SheetPiece, SheetRequest } from "./request.js";

/** Document type (ISO 7200) of the sheet of a template, by what becomes of it. */
export const DOCUMENT_TYPE: Readonly<Record<TemplateUse, string>> = {
  template: "SETTING TEMPLATE",
  "template left as setting plate": "TEMPLATE AND SETTING PLATE",
  "setting plate over cast rods": "PLATE OVER CAST RODS",
};

const PIECE_TYPE: Readonly<Record<SheetPiece["role"], string>> = {
  "lower template": "LOWER TEMPLATE",
  segment: "SEGMENT OF A TEMPLATE",
  "splice plate": "SPLICE PLATE",
};

/** Document type of a sheet: of a template, or of a piece of one. */
export function documentType({ base, piece }: Pick<SheetRequest, "base" | "piece">): string {
  return piece === null ? DOCUMENT_TYPE[base.template.use] : PIECE_TYPE[piece.role];
}

/** Identification number of the sheet's document (ISO 7200): the job's number and the template's mark. */
export function drawingNumber({ job, plate }: Pick<SheetRequest, "job" | "plate">): string {
  return `${job.number}-${plate.mark}`;
}

/** True where a failing row still waits for the engineer of record. */
export function hasOpenQuestion({ rows }: Pick<SheetRequest, "rows">): boolean {
  return rows.some((row) => isAsking(row) && row.answer === null);
}

/** `RELEASED`, `QUESTION OPEN (RELEASED)`, `HELD (JOB RELEASED)`, `HELD, QUESTION OPEN (JOB FOR APPROVAL)`. */
export function statusWords(request: Pick<SheetRequest, "job" | "held" | "rows">): string {
  const status = request.job.status.toUpperCase();
  const question = hasOpenQuestion(request) ? "QUESTION OPEN" : "";
  if (request.held.length > 0) return `HELD${question === "" ? "" : `, ${question}`} (JOB ${status})`;
  return question === "" ? status : `${question} (${status})`;
}
