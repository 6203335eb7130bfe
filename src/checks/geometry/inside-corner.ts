/** Inside corners against what the process can leave. */

import type { CheckContext, RuleResult } from "../model.js";
import { compare } from "../results.js";
import { wordsIn } from "../words.js";

const CORNER_CLAUSE = "smallest inside corner";

/** The row of a contour's smallest inside corner (its radius; 0 when sharp); none where the contour has no such corner. */
export function cornerRow({ job }: CheckContext, subject: string, radius: number | null): readonly RuleResult[] {
  if (radius === null) return [];
  const { least, from } = job.shop.smallestCorner;
  const say = wordsIn(job.unit);
  const clause = `${CORNER_CLAUSE}: ${from}`;
  const found = radius === 0 ? "sharp inside corner: it comes out rounded" : `inside radius ${say.length(radius)}`;
  return [compare(subject, 2 * radius, ">=", 2 * least, `${found}; least ${say.length(least)}`, { clause })];
}
