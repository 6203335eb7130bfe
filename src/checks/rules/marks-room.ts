import type { MarkKind, OmittedMark } from "../../template/model.js";
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
    if (plate.omitted.length > 0) return plate.omitted.map(leftOut);
    return [compareCounts("plate", 0, "<=", 0, `${counted(plate.marks.length, "mark")} placed, none left out`)];
  },
};

const CAUSES: Readonly<Record<OmittedMark["cause"], string>> = {
  room: "found no room clear of holes, edges and other marks; paint it by hand",
  font: "has letters that the scribed font does not have; paint it by hand",
  "off plate": "has no place: the axis does not meet the plate",
};

/** What each kind of mark is called before its own text. */
const NAMES: Readonly<Record<MarkKind, string>> = {
  joint: "joint number ",
  mark: "piece mark ",
  top: "",
  tag: "tag ",
  size: "",
  axis: "axis ",
  north: "north arrow ",
  grid: "",
  punch: "note ",
  "centre-line": "",
};

function leftOut({ kind, text, cause }: OmittedMark): RuleResult {
  return compareCounts(`${NAMES[kind]}${text.replace(/^ROD /, "")}`, 1, "<=", 0, CAUSES[cause]);
}
