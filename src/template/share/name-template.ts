/** The mark of a template that serves several bases: the same whatever the order of the bases. */
import { compareMarks } from "../../job/model/mark-order.js";
import { markFault, markKey } from "../../job/schema/marks.js";

/** Bases that get one template: their marks, and the marks that the job gives their templates. */
export interface ToName {
  readonly bases: readonly string[];
  readonly templates: readonly string[];
}

/**
 * The least mark that the job gives one of the templates, in natural order; where it gives none, `T-` and the least mark of
 * the bases, or of the next one where that is in use or no file name. null where none of them will do. `used`: by their keys,
 * marks that the job gives bases and templates.
 */
export function nameTemplate({ bases, templates }: ToName, used: ReadonlySet<string>): string | null {
  const [given] = [...templates].sort(compareMarks);
  if (given !== undefined) return given;
  const names = [...bases].sort(compareMarks).map((mark) => `T-${mark}`);
  return names.find((name) => !used.has(markKey(name)) && markFault(name) === null) ?? null;
}
