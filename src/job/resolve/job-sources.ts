/** What every part of a job is read from. */
import type { Inputs } from "../../readers/inputs.js";
import type { Unit } from "../../units/index.js";
import type { SourceDocument } from "../document.js";

/** The job file as a document, the unit of its bare numbers, and the files that it may name. */
export interface JobSources {
  readonly document: SourceDocument;
  readonly unit: Unit;
  readonly inputs: Inputs;
}
