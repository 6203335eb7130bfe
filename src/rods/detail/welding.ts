/** Whether rods may be welded to, by their grade and how they are ordered. */
import type { Rod } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import { given } from "../../job/model/values.js";
import { findGrade } from "../../standards/index.js";

/** `S1`: F1554 grade 55 with its supplement. `weldable`: of a grade whose specification is not known to say it. null: nothing is ordered beside the grade. */
export type OrderedWeldable = "S1" | "weldable" | null;

/** ASTM F1554, supplement S1: how a weldable rod of grade 55 is told from another (secondary copy). */
export const S1_MARK = "white paint on the side of the rod near its lower end (S1)";

/** What the order of weldable rods adds to their grade: nothing to one that is weldable in any case, or in none. */
export function orderedWeldable({ grade, weldable }: Pick<Rod, "grade" | "weldable">): OrderedWeldable {
  if (!weldable) return null;
  const words = weldableWords(grade);
  if (words.startsWith("only")) return "S1";
  return words === "" ? "weldable" : null;
}

/** By the specification of the grade: no weld on F1554 105, on 55 with supplement S1 alone; none on a property class that is quenched and tempered. */
export function weldability({ grade, weldable }: Pick<Rod, "grade" | "weldable">): "may" | "may not" | "not known" {
  const words = weldableWords(grade);
  if (words === "") return "not known";
  return words === "yes" || (words.startsWith("only") && weldable) ? "may" : "may not";
}

/** What a station must know before it welds what the order says; empty where the grade may be welded to. */
export function weldCaution({
  grade,
  weldable,
}: {
  readonly grade: Input<string>;
  readonly weldable: OrderedWeldable;
}): string {
  switch (weldability({ grade, weldable: weldable !== null })) {
    case "may":
      return "";
    case "may not":
      return weldableWords(grade).startsWith("only")
        ? "NOT WITHOUT S1: ask the engineer"
        : "NOT ON THIS GRADE: ask the engineer";
    case "not known":
      return "only as the engineer approves";
  }
}

/** A grade as it is ordered and certified: `F1554 55 S1`. */
export function orderedGrade({
  grade,
  weldable,
}: {
  readonly grade: Input<string>;
  readonly weldable: OrderedWeldable;
}): Input<string> {
  return grade.kind === "missing" || weldable === null ? grade : given(`${grade.value} ${weldable}`, grade.from);
}

/** The same of a rod as the job has it. */
export function orderedGradeOf(rod: Pick<Rod, "grade" | "weldable">): Input<string> {
  return orderedGrade({ grade: rod.grade, weldable: orderedWeldable(rod) });
}

function weldableWords(grade: Rod["grade"]): string {
  const found = grade.kind === "given" ? findGrade(grade.value) : null;
  return found?.found === true ? found.row.weldable : "";
}
