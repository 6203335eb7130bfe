/** Findings of this stage: shapes that cannot be. */
import type { Finding } from "../diagnostics/finding.js";
import type { Base } from "../job/model/job.js";

/** An error at a part of a base's template, as `outline` or `opening`. */
export function templateError({ place }: Base, part: string, code: string, message: string): Finding {
  const path = place.path === undefined ? `template.${part}` : `${place.path}.template.${part}`;
  return { code, severity: "error", at: { ...place, path }, message };
}
