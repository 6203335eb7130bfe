import type { RodGroup } from "../../job/model/job.js";
import { isWeldedOn } from "../../job/model/stack.js";
import { weldability } from "../../rods/index.js";
import { findGrade, type GradeRow, recommendedNut } from "../../standards/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own } from "../results.js";
import { compare, compareCounts, inBestCase, lacking, missingAmong, notApplicable, notChecked } from "../results.js";
import { counted, wordsIn } from "../words.js";

const SIZES = "sizes of the grade";
const WELDING = "welding to the rods";
const NUT = "nut recommended with the grade";
const WEAKER = "the number of rods with a hex nut in place of a heavy hex one";
const WELDED = "the number of rods that are welded and may not be";

/** The grade is one that its specification has in this size, and nothing is welded to rods that it does not call weldable. */
export const rodGrade: Rule<"rod-grade"> = {
  id: "rod-grade",
  plainName: "rod grade and diameter",
  title:
    "rod diameter <= the greatest of its grade; nothing welded or tack welded to F1554 grade 105, nor to 55 without supplement S1; no hex nut where F1554 recommends a heavy hex one",
  severity: "ask",
  measured: "the diameter of the rods",
  takes: [
    "pattern",
    "rods.diameter",
    "rods.grade",
    "rods.welded",
    "rods.weldable",
    "rods.bottom",
    "rods.nut",
    "rods.finish",
    "rods.thread",
  ],
  clause: () => `${SIZES}; ${WELDING}; ${NUT}`,
  edition: ({ job }) => (job.editions.set === "us" ? "ASTM F1554" : "ISO 898-1"),
  check: (context) => {
    const groups = context.base.groups;
    return [size, welding, nutKind].flatMap((row) => groups.map((group) => row(context, group)));
  },
};

/** All rods of a group have one grade: a row says it once for them. */
function subjectOf({ letter }: RodGroup): string {
  return `group ${letter}`;
}

/** What is held of the grade of a group, with the authority of its rows; or why nothing is. */
type Grade =
  | { readonly held: true; readonly row: GradeRow; readonly own: Own }
  | { readonly held: false; readonly row: RuleResult; readonly own: Own };

function gradeOf(group: RodGroup, clause: string): Grade {
  const { grade } = group.rod;
  const subject = subjectOf(group);
  if (grade.kind === "missing") return { held: false, row: lacking(subject, [grade], { clause }), own: { clause } };
  const found = findGrade(grade.value);
  if (found.found) return { held: true, row: found.row, own: { clause, edition: found.edition } };
  const own = { clause, edition: "shop" };
  const why = `${grade.value} is a grade of the shop's own: what its specification says is not kept here`;
  return { held: false, row: notChecked(subject, why, own), own };
}

/** Larger metric rods are made to the strengths of ISO 898-1 by agreement: beyond its sizes it is advice. */
function size({ job }: CheckContext, group: RodGroup): RuleResult {
  const grade = gradeOf(group, SIZES);
  if (!grade.held) return grade.row;
  const { row } = grade;
  const own: Own = row.system === "metric" ? { ...grade.own, severity: "advise" } : grade.own;
  const say = wordsIn(job.unit);
  const beyond = group.rod.diameter > row.greatest && row.note !== "" ? `; ${row.note}` : "";
  const note = `rod ${group.rod.size} of ${row.grade}, which goes to ${say.length(row.greatest)}${beyond}`;
  return compare(subjectOf(group), 2 * group.rod.diameter, "<=", 2 * row.greatest, note, own);
}

function welding({ rods }: CheckContext, group: RodGroup): RuleResult {
  const subject = subjectOf(group);
  const grade = gradeOf(group, WELDING);
  const { own } = grade;
  const what = weldedTo(group);
  if (what === null && group.rod.weldable && grade.held && grade.row.weldable === "no")
    return orderedInVain(rods, group, grade.row, own);
  if (what === null)
    return notApplicable(subject, "the job says of nothing that it is welded to the rods (rods.welded)", own);
  if (!grade.held) return grade.row;
  const { row } = grade;
  if (row.weldable === "") return notChecked(subject, `whether ${row.grade} is weldable is not kept here`, own);
  const welded = rods.filter((rod) => rod.group === group).length;
  const may = weldability(group.rod) === "may";
  const note = `${counted(welded, "rod")} of ${row.grade} ${what}; weldable: ${row.weldable}${orderedText(row, group)}`;
  return { ...compareCounts(subject, may ? 0 : welded, "<=", 0, note), ...weldingOwn(row, own), measured: WELDED };
}

/** That a property class is not welded to is common practice. */
function weldingOwn({ system }: GradeRow, own: Own): Own {
  return system === "metric" ? { ...own, edition: "common practice" } : own;
}

function orderedInVain(rods: CheckContext["rods"], group: RodGroup, row: GradeRow, own: Own): RuleResult {
  const count = rods.filter((rod) => rod.group === group).length;
  const note = `${counted(count, "rod")} of ${row.grade} ordered weldable (rods.weldable), which the grade is not`;
  const result = compareCounts(subjectOf(group), count, "<=", 0, note);
  return { ...result, ...weldingOwn(row, own), measured: "the number of rods that are ordered weldable and cannot be" };
}

/** A hex nut where the standard recommends a heavy hex one is weaker; a heavy hex nut serves in place of a hex one. */
function nutKind({ rods }: CheckContext, group: RodGroup): RuleResult {
  const subject = subjectOf(group);
  const grade = gradeOf(group, NUT);
  const { nut, finish, diameter, size } = group.rod;
  if (!grade.held) return inBestCase(grade.row, missingAmong({ finish }));
  const { row, own } = grade;
  if (row.system === "metric" || group.rod.thread === "metric coarse")
    return notApplicable(subject, "nuts of metric rods have one kind", own);
  if (nut.kind === "missing") return lacking(subject, [nut], own);
  const recommended = recommendedNut(row, diameter, finish.kind === "given" ? finish.value : undefined);
  if (recommended === "by finish" && finish.kind === "missing") return lacking(subject, [finish], own);
  const weaker = recommended === "heavy hex" && nut.value.kind === "hex";
  const count = weaker ? rods.filter((rod) => rod.group === group).length : 0;
  const note = `${nut.value.kind} nuts on rods ${size} of ${row.grade}; recommended: ${row.nut}`;
  return { ...compareCounts(subject, count, "<=", 0, note), ...own, measured: WEAKER };
}

/** How something is welded to the rods of a group; null where nothing is. */
function weldedTo({ rod }: RodGroup): string | null {
  const bottom = rod.bottom.kind === "given" ? rod.bottom.value : null;
  if (rod.welded) return "welded";
  if ((bottom?.kind === "nut" || bottom?.kind === "plate") && bottom.tackWelded) return "with a nut tack welded";
  return bottom !== null && isWeldedOn(bottom) ? "with a plate welded on" : null;
}

function orderedText({ weldable }: GradeRow, { rod }: RodGroup): string {
  if (!weldable.startsWith("only")) return "";
  return rod.weldable ? ", ordered so" : ", and the job does not say that they are ordered so (rods.weldable)";
}
