/** Tolerances and remarks for the detail of a rod, each with its source. */

import { isSetOverCastRods } from "../../job/model/base-hole.js";
import type { Base, Job } from "../../job/model/job.js";
import {
  bendAngle,
  bendArea,
  findGrade,
  findLengthTolerance,
  hookLength,
  threadLonger,
} from "../../standards/index.js";
import { greatestOf } from "../../units/extremes.js";
import type { Length } from "../../units/index.js";
import { formatWithUnit } from "../../units/index.js";
import { inches, subtract } from "../../units/length.js";
import type { RodToMake } from "./operations.js";

/** The F1554 tolerances stand on rods of its grades alone. */
export function notesOf(job: Job, base: Base, rod: RodToMake): readonly string[] {
  return [
    `Embedment is measured from the top of concrete ${rod.embedmentTo}.`,
    ...(rod.hook === null
      ? []
      : ["Overall length goes to the outside of the hook; ASTM F1554 measures a bent rod to the inside of its bend."]),
    ...f1554Notes(job, rod),
    ...coatingNotes(rod),
    ...templateNotes(base, rod),
    ...(rod.tackWelds.length === 0
      ? []
      : [
          "Tack welds only as ordered and approved by the engineer of record; none on the stressed thread above the nut (common practice).",
        ]),
  ];
}

function f1554Notes({ unit }: Job, rod: RodToMake): readonly string[] {
  const { grade, hook } = rod;
  const known = grade.kind === "given" ? findGrade(grade.value) : null;
  if (known === null || !known.found || known.row.specification !== "ASTM F1554") return [];
  const ordered = orderedLength(rod);
  const length = ordered === null ? null : findLengthTolerance(known.row, ordered);
  const say = (value: Length) => formatWithUnit(value, unit);
  return [
    ...(length?.found === true ? [`Length +/- ${say(length.row.plusMinus)} (ASTM F1554).`] : []),
    ...(rod.fullThread ? [] : [`Thread length + ${say(threadLonger.value)} - 0 (ASTM F1554).`]),
    ...(hook?.kind === "given" ? hookNotes(hook.value.reach, say) : []),
  ];
}

/** The length that F1554 measures: end to end, of a bent rod to the inside of its bend. */
function orderedLength({ overall, hook, bar }: RodToMake): Length | null {
  if (overall.kind === "missing") return null;
  if (hook === null) return overall.value.value;
  return bar.kind === "missing" ? null : subtract(overall.value.value, bar.value);
}

function hookNotes(reach: Length, say: (length: Length) => string): readonly string[] {
  const { perCent, least } = hookLength.value;
  const share = Math.round((reach * perCent) / 100) as Length;
  return [
    `Hook length +/- ${say(greatestOf([share, least]) as Length)}, bend angle +/- ${bendAngle.value} degrees, section at the bend at least ${bendArea.value} % of the body (ASTM F1554).`,
  ];
}

/** American Galvanizers Association, over-tapping guidelines: above this size the rod may be undercut in place of the nut. */
const UNDERCUT_ABOVE = inches(1.5);
const UNDERCUT = inches(0.031);

function coatingNotes({ zincProcess, thread, threadCallout, diameter }: RodToMake): readonly string[] {
  if (zincProcess === null) return [];
  const isMetric = thread === "metric coarse";
  return [
    `Thread ${threadCallout} is that before coating; the nuts are tapped over size (${isMetric ? "ISO 10684, from memory" : "ASTM A563"}), the rod is not chased.`,
    ...(diameter > UNDERCUT_ABOVE
      ? [
          `A thread of this size may be cut ${formatWithUnit(UNDERCUT, "in")} undersize in place of tapping the nut over, where the engineer of record allows it (American Galvanizers Association).`,
        ]
      : []),
    `Rods, nuts and washers are coated by one process (${isMetric ? "common practice" : "ASTM F1554"}).`,
  ];
}

/** Which nuts hold the template while the concrete is placed. */
function templateNotes({ template }: Base, { hardware }: RodToMake): readonly string[] {
  if (isSetOverCastRods(template)) return [];
  const count = (place: string) =>
    hardware.filter((each) => each.what === "nut" && each.place === place).reduce((sum, each) => sum + each.count, 0);
  const under =
    count("levelling") > 0
      ? "the nut that levels the base plate"
      : count("base plate") > 1
        ? "a nut of the base plate"
        : "a nut of its own";
  return [
    `The template is held by two nuts of the rod: above it the nut of the base plate, below it ${under}. Both are used again.`,
  ];
}
