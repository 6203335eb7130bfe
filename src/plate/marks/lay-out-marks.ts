/** Marks. */
import type { Contour } from "../../geometry/index.js";
import type { Base, Job } from "../../job/model.js";
import type { Hole, Mark, OmittedMark } from "../model.js";

/** Marks. */
export function layOutMarks(
  _job: Job,
  _base: Base,
  _outer: Contour,
  _holes: readonly Hole[],
): { readonly marks: readonly Mark[]; readonly omitted: readonly OmittedMark[] } {
  return { marks: [], omitted: [] };
}
