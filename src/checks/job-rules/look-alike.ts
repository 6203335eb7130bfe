import { listed } from "../../diagnostics/listed.js";
import type { LookAlike, SameTemplates } from "../../orientation/index.js";
import { findLookAlikes } from "../../orientation/index.js";
import type { Length } from "../../units/index.js";
import type { JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, compareCounts, notApplicable } from "../results.js";
import { HOLE, OUTLINE } from "../takes.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/** Marks whose patterns nearly agree under any way round, so that one template can be taken for another; and those that are one. */
export const lookAlike: JobRule<"look-alike"> = {
  id: "look-alike",
  title:
    "rod error of a template set for another mark, in its nearest way round >= the job's value; equal templates are one",
  severity: "advise",
  measured: "the rod error of a template set for another mark",
  takes: ["pattern", ...HOLE, ...OUTLINE, "template.opening"],
  clause: ({ job }) => `lookAlike: ${job.lookAlike.from}`,
  edition: () => "job",
  check({ job, bases }) {
    if (bases.length < 2) return [notApplicable("marks", "the job has one mark")];
    const limit = job.lookAlike.value;
    const say = wordsIn(job.unit);
    const { same, near } = findLookAlikes(bases, limit);
    const rows = [...nearRows(near, limit, say), ...same.map(sameRow)];
    if (rows.length > 0) return rows;
    return [compareCounts("marks", 0, "<=", 0, `no two patterns come within ${say.length(limit)} of each other`)];
  },
};

/** At most this many pairs are listed, those with the least error; how many more there are is a row of its own. */
const MOST_PAIRS = 1000;

function nearRows(near: readonly LookAlike[], limit: Length, say: Words): readonly RuleResult[] {
  if (near.length <= MOST_PAIRS) return near.map((pair) => nearRow(pair, limit, say));
  const nearest = [...near].sort((a, b) => a.errorTwice - b.errorTwice).slice(0, MOST_PAIRS);
  const more = near.length - MOST_PAIRS;
  const note = `${more} further pairs look alike; the ${MOST_PAIRS} with the least error are listed`;
  return [...nearest.map((pair) => nearRow(pair, limit, say)), compareCounts("marks", more, "<=", 0, note)];
}

function nearRow({ marks: [a, b], errorTwice, how }: LookAlike, limit: Length, say: Words): RuleResult {
  const subject = `${listed(a, MOST_LISTED)} / ${listed(b, MOST_LISTED)}`;
  return compare(subject, errorTwice, ">=", 2 * limit, `${how}: rods ${say.twice(errorTwice)} off`);
}

function sameRow({ marks, how, differs }: SameTemplates): RuleResult {
  const turned = how === "as it is" ? "" : `, ${how}`;
  if (differs.length === 0) {
    return compareCounts(
      listed(marks, MOST_LISTED),
      marks.length,
      "<=",
      1,
      `the same template${turned}: one mark would do for all`,
    );
  }
  return notApplicable(
    listed(marks, MOST_LISTED),
    `the same pattern${turned}; the templates differ in ${differs.join(", ")}`,
  );
}

/** At most this many marks are written out. */
const MOST_LISTED = 8;
