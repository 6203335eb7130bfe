import type { OmittedMark } from "../../template/model.js";
import type { Rule, RuleResult } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";
import { PLATE } from "../takes.js";
import { counted } from "../words.js";

/** Every mark that the plate should carry found room. */
export const marksRoom: Rule<"marks-room"> = {
  id: "marks-room",
  plainName: "room for scribing",
  title: "every mark of the template found room on it",
  severity: "advise",
  measured: "the number of marks left out",
  takes: PLATE,
  clause: () => "marks clear of holes, opening and edge",
  edition: () => "shop",
  check({ job, plate }) {
    if (job.shop.marking.how === "none") return [notApplicable("plate", "the shop puts no marks on templates")];
    const note = `${counted(plate.marks.length, "mark")} placed, ${plate.omitted.length} left out`;
    return [compareCounts("plate", plate.omitted.length, "<=", 0, note), ...plate.omitted.map(leftOut)];
  },
};

function leftOut({ kind, text, why }: OmittedMark): RuleResult {
  const isNamed = text.startsWith(kind.replaceAll("-", " "));
  return compareCounts(text === "" || isNamed ? text || kind : `${kind} ${text}`, 1, "<=", 0, `left out: ${why}`);
}
