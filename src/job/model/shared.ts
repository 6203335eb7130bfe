/** Templates of several bases. */
import type { Base } from "./job.js";

/** True where the template serves other bases too. */
export function isShared({ template }: Pick<Base, "template">): boolean {
  return template.sharedBy.length > 0;
}

/** Marks of the bases that the template of this one serves, in the order of the job. */
export function servedMarks({ mark, template }: Pick<Base, "mark" | "template">): readonly string[] {
  return template.sharedBy.length > 0 ? template.sharedBy : [mark];
}
