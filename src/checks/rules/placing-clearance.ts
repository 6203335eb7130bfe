import type { Input } from "../../job/model/job.js";
import type { PlacingRow } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { PLACING_CLAUSE, placingOf } from "../placing.js";
import { compare, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, rodHoles } from "../rods.js";
import { HOLE } from "../takes.js";
import { wordsIn } from "../words.js";

/**
 * The base plate's holes take rods that are off by the whole placing tolerance T, and so do those of a setting plate that is
 * dropped over cast rods. T is as-built: template play and cutting error are part of it and are never added to it.
 */
export const placingClearance: Rule<"placing-clearance"> = {
  id: "placing-clearance",
  plainName: "clearance to place plate",
  title:
    "radial clearance (H - d)/2 in the base plate, (h - d)/2 in a setting plate over cast rods >= placing tolerance; by a spacing edition, the sum of two",
  severity: "ask",
  measured: "the clearance of the rod in the hole of the plate that goes over it",
  takes: ["pattern", ...HOLE],
  clause: () => PLACING_CLAUSE,
  edition: ({ job }) => job.editions.placing,
  check(context) {
    const inBasePlate = rowsIn(context, ({ tag, group }) => ({ subject: tag, hole: group.baseHole, plate: "" }));
    return isOverCastRods(context) ? [...inBasePlate, ...rowsIn(context, settingPlateHole)] : inBasePlate;
  },
};

/** The hole of a rod in one of the plates that go over it; `plate` says in which, where it is not the base plate. */
interface PlateHole {
  readonly subject: string;
  readonly hole: Input<Length>;
  readonly plate: string;
}

/** The setting plate's own hole, as the job or the rules give it. */
function settingPlateHole({ tag, group }: RodHole): PlateHole {
  return { subject: `${tag}-setting-plate`, hole: group.hole, plate: "; setting plate over rods as cast" };
}

function rowsIn(context: CheckContext, holeOf: (rod: RodHole) => PlateHole): readonly RuleResult[] {
  const rods = rodHoles(context).map((rod) => judged(context, rod, holeOf(rod)));
  const judgeable = rods.filter((rod) => rod.kind === "judged");
  const others = rods.flatMap((rod) => (rod.kind === "judged" ? [] : [rod.result]));
  const positions = judgeable.filter(({ row }) => row.limits === "position").map((rod) => position(context, rod));
  const spacings = judgeable.filter(({ row }) => row.limits === "spacing");
  return [...others, ...positions, ...spacingRows(context, spacings)];
}

interface Judged {
  readonly kind: "judged";
  readonly rod: RodHole;
  readonly row: PlacingRow;
  /** H - d: twice the radial clearance. */
  readonly clearance: number;
  readonly hole: number;
  readonly subject: string;
  readonly plate: string;
  readonly clause: string;
}

interface NotJudged {
  readonly kind: "not judged";
  readonly result: RuleResult;
}

function judged(context: CheckContext, rod: RodHole, { subject, hole, plate }: PlateHole): Judged | NotJudged {
  if (hole.kind === "missing") return { kind: "not judged", result: lacking(subject, [hole]) };
  const found = placingOf(context, rod);
  if (!found.found) return { kind: "not judged", result: { ...found.result, subject } };
  const { row, clause } = found;
  return { kind: "judged", rod, row, clause, clearance: hole.value - rod.diameter, hole: hole.value, subject, plate };
}

function position({ job }: CheckContext, { rod, row, clause, clearance, hole, subject, plate }: Judged): RuleResult {
  const say = wordsIn(job.unit);
  const note = `(${say.length(hole)} - ${say.length(rod.diameter)}) / 2 against ${say.length(row.tolerance)}, ${row.item}${plate}`;
  return compare(subject, clearance, ">=", 2 * row.tolerance, note, { clause });
}

/** Two rods may be off their spacing by the tolerance: the two radial clearances together take it up. */
function spacingRows({ job }: CheckContext, rods: readonly Judged[]): readonly RuleResult[] {
  if (rods.length === 1) return [notApplicable("plate", "the tolerance is on spacings, and there is one rod")];
  const say = wordsIn(job.unit);
  const limit = (a: Judged, b: Judged) => 2 * Math.max(a.row.tolerance, b.row.tolerance);
  return governingPairs(rods, (a, b) => a.clearance + b.clearance - limit(a, b)).map(({ first: a, second: b }) => {
    const sum = `(${say.length(a.hole)} - ${say.length(a.rod.diameter)}) / 2 + (${say.length(b.hole)} - ${say.length(b.rod.diameter)}) / 2`;
    const note = `${sum} against ${say.twice(limit(a, b))}, ${a.row.item}${a.plate}`;
    return compare(`${a.rod.tag}-${b.subject}`, a.clearance + b.clearance, ">=", limit(a, b), note, {
      clause: a.clause,
    });
  });
}
