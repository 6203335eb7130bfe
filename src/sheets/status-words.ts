/** What a sheet is and whether it may be used, in words: the same in title block, title of the document and description. */
import type { OpenQuestion } from "../checks/release.js";
import { openQuestionWords } from "../checks/release.js";
import type { Job, TemplateUse } from "../job/model/job.js";
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

/** `RELEASED`, `NOT RELEASED, QUESTION OPEN: Q-7`, `HELD (JOB RELEASED)`, `HELD, QUESTION OPEN (JOB FOR APPROVAL)`. */
export function statusWords({ job, held, open }: Pick<SheetRequest, "job" | "held" | "open">): string {
  const status = job.status.toUpperCase();
  const question = openQuestionWords(open);
  if (held.length > 0) return `HELD${question === "" ? "" : `, ${question}`} (JOB ${status})`;
  if (question === "") return status;
  return job.status === "released" ? `NOT RELEASED, ${question}` : `${question} (${status})`;
}

/** Of the plan: `RELEASED`, `NOT RELEASED (PRELIMINARY)`, `NOT RELEASED, QUESTION OPEN: Q-7`. */
export function releaseWords({ status }: Pick<Job, "status">, open: readonly OpenQuestion[]): string {
  const words = status.toUpperCase();
  if (status !== "released") return `NOT RELEASED (${words})`;
  return open.length === 0 ? words : `NOT RELEASED, ${openQuestionWords(open)}`;
}
