/** Nuts, washers and plates that go with one rod. */

import { isSetOverCastRods } from "../../job/model/base-hole.js";
import type { Base, EndPlate, Job, Rod, RodGroup, Washer } from "../../job/model/job.js";
import { levellingNutsOf, nutsAtBottom } from "../../job/model/stack.js";
import type { Missing } from "../../job/model/values.js";
import { findGrade, findNut, findOverTap, type NutStandard } from "../../standards/index.js";
import { formatLength, formatWithUnit, type Unit } from "../../units/index.js";
import { add, type Length } from "../../units/length.js";
import { sizeWords } from "./bar.js";
import type { Hardware } from "./model.js";
import { HOLE_PLAY, weighNut, weighPiece } from "./weights.js";

/** What goes on a rod, and what would have to be known to say more. */
export interface HardwareList {
  readonly hardware: readonly Hardware[];
  readonly open: readonly Missing[];
}

/** One above the lower template and one below it: they stay in the concrete. */
const LOWER_NUTS = 2;

/** From the top down: base plate, levelling, template, lower template, lower end. */
export function hardwareOf(job: Job, base: Base, group: RodGroup): HardwareList {
  const { rod } = group;
  const levelling = levellingNutsOf(base.levelling, rod);
  const levels = levelling.kind === "given" ? levelling.value : 0;
  const top = rod.topNuts.value;
  const nut = (place: string, count: number, more = ""): readonly Hardware[] => nutsAt(job, rod, place, count, more);
  const washer = (place: string, count: number) => washersAt(job, group, place, count);
  const spare = isSetOverCastRods(base.template) ? 0 : Math.max(0, 2 - top - levels);
  const hardware = [
    ...nut("base plate", top),
    ...washer("base plate", 1),
    ...nut("levelling", levels),
    ...washer("levelling", levels > 0 ? 1 : 0),
    ...nut("template", spare, ", for the template alone"),
    ...templateWashers(job, base, rod),
    ...nut("lower template", base.template.lower === null ? 0 : LOWER_NUTS),
    ...bottomHardware(job, rod),
    ...protector(job, rod),
  ];
  const lacks = [levelling, rod.nut, rod.finish, group.washer, rod.bottom];
  return { hardware, open: lacks.flatMap((input) => (input.kind === "missing" ? [input] : [])) };
}

/** On the thread that stands out. No weight of one is kept. */
function protector({ unit }: Job, rod: Rod): readonly Hardware[] {
  if (!rod.protectors) return [];
  const words = `thread protector for ${sizeWords(rod, unit)} rod`;
  return [{ what: "thread protector", place: "top", words, count: 1, kilograms: null }];
}

function nutsAt(job: Job, rod: Rod, place: string, count: number, more = ""): readonly Hardware[] {
  if (count === 0) return [];
  return [{ what: "nut", place, words: `${nutWords(rod, job.unit)}${more}`, count, kilograms: nutKilograms(job, rod) }];
}

function nutKilograms({ shop }: Job, rod: Rod): number | null {
  const { nut, diameter } = rod;
  if (nut.kind === "missing") return null;
  const row = findNut(nutStandard(rod, nut.value.kind), diameter);
  return row.found ? weighNut(row.row.acrossFlats, row.row.height, diameter, shop.density.steel.value) : null;
}

function nutStandard({ thread }: Rod, kind: "hex" | "heavy hex"): NutStandard {
  return thread === "metric coarse" ? "ISO 4032" : `ASME B18.2.2 ${kind}`;
}

/** `1-1/4 heavy hex nut, ASTM A563 DH, hot-dip galvanized, over-tapped 0.024 in`. */
function nutWords(rod: Rod, unit: Unit): string {
  const kind = rod.nut.kind === "given" ? `${rod.nut.value.kind} nut` : "nut (kind not given)";
  return [`${sizeWords(rod, unit)} ${kind}`, ...nutGrade(rod), ...nutCoating(rod)].join(", ");
}

/** By the grade of the rod: A563 A with F1554 36 and 55, DH with 105; ISO 898-2 classes. */
function nutGrade({ grade }: Rod): readonly string[] {
  if (grade.kind === "missing") return [];
  const found = findGrade(grade.value);
  if (!found.found) return [];
  const named = /^(A563 [A-Z]+)|(class \d+)/.exec(found.row.nut.replace(/^ISO 4032 /, ""));
  if (named === null) return [];
  return [named[1] === undefined ? `ISO 898-2 ${named[2]}` : `ASTM ${named[1]}`];
}

/** How its nuts are coated: as the job says of them, else as the rods. */
export function nutFinishOf(rod: Rod): "plain" | "hot-dip" | "mechanical" | "galvanized" | null {
  if (rod.nutFinish.kind === "given") return rod.nutFinish.value;
  if (rod.finish.kind === "missing") return null;
  if (rod.finish.value === "plain") return "plain";
  return rod.zincProcess.kind === "given" ? rod.zincProcess.value : "galvanized";
}

const COATINGS = {
  plain: "plain",
  "hot-dip": "hot-dip galvanized",
  mechanical: "mechanically galvanized",
  galvanized: "galvanized as the rods",
} as const;

/** A nut for a galvanized rod is tapped over size, whether it is coated itself or not. */
function nutCoating(rod: Rod): readonly string[] {
  const finish = nutFinishOf(rod);
  if (finish === null) return [];
  const zinc = rod.finish.kind === "given" && rod.finish.value === "galvanized";
  return [COATINGS[finish], ...(zinc ? [overTapWords(rod)] : [])];
}

function overTapWords({ thread, diameter }: Rod): string {
  if (thread === "metric coarse") return "over-tapped for the zinc (ISO 10684, from memory)";
  const found = findOverTap(diameter);
  return found.found ? `over-tapped ${formatWithUnit(found.row.allowance, "in")}` : "over-tapped for the zinc";
}

/** On both faces of a template that has them: those of the shop, and of plywood in any case. */
function templateWashers({ shop, unit }: Job, { template }: Base, rod: Rod): readonly Hardware[] {
  const { templateWasher } = shop;
  if (isSetOverCastRods(template) || (templateWasher.kind === "missing" && template.material !== "plywood")) return [];
  const known = templateWasher.kind === "given" ? templateWasher.value : null;
  const words =
    known === null ? `washer (size not given) for ${sizeWords(rod, unit)} rod` : washerWords(known, "", rod, unit);
  const kilograms = known === null ? null : washerKilograms(shop, known, rod);
  return [{ what: "washer", place: "template", words: `${words}, for the template alone`, count: 2, kilograms }];
}

function washerKilograms({ density }: Job["shop"], washer: Washer, { diameter }: Rod): number | null {
  const { thickness } = washer;
  if (thickness.kind === "missing") return null;
  return weighPiece({ ...washer, thickness: thickness.value }, add(diameter, HOLE_PLAY), density.steel.value);
}

function washersAt({ shop, unit }: Job, { washer, rod }: RodGroup, place: string, count: number): readonly Hardware[] {
  if (count === 0 || washer.kind === "missing") return [];
  const square = washer.value.shape === "square";
  const kilograms = washerKilograms(shop, washer.value, rod);
  const words = [washerWords(washer.value, washer.from, rod, unit), ...washerCoating(rod)].join(", ");
  return [{ what: square ? "plate washer" : "washer", place, words, count, kilograms }];
}

/** `plate washer 3 x 3 x 1/2 for 1-1/4 rod`, `washer F436 for 1-1/4 rod, 2-1/2 x 0.136`. */
function washerWords(washer: Washer, from: string, rod: Rod, unit: Unit): string {
  const size = sizeWords(rod, unit);
  const figure = formatLength(washer.size, unit);
  const thick = washer.thickness.kind === "given" ? ` x ${formatLength(washer.thickness.value, unit)}` : "";
  if (washer.shape === "square") return `plate washer ${figure} x ${figure}${thick} for ${size} rod`;
  const table = /^(ASTM|ASME|ISO)/.test(from)
    ? `${from}${washer.series === undefined ? "" : ` (${washer.series})`}, `
    : "";
  return `round washer ${table}diameter ${figure}${thick} for ${size} rod`;
}

function washerCoating(rod: Rod): readonly string[] {
  const finish = nutFinishOf(rod);
  return finish === null ? [] : [COATINGS[finish]];
}

function bottomHardware(job: Job, rod: Rod): readonly Hardware[] {
  if (rod.bottom.kind === "missing") return [];
  const bottom = rod.bottom.value;
  const nuts = nutsAt(job, rod, "lower end", nutsAtBottom(bottom));
  if (bottom.kind === "nut" && bottom.washer !== null)
    return [...nuts, endPiece(job, rod, "plate washer", bottom.washer)];
  if (bottom.kind === "plate") return [...nuts, endPiece(job, rod, "plate", bottom)];
  return nuts;
}

function endPiece({ shop, unit }: Job, rod: Rod, what: "plate washer" | "plate", plate: EndPlate): Hardware {
  const hole: Length = add(rod.diameter, HOLE_PLAY);
  const say = (length: Length) => formatLength(length, unit);
  const sides = plate.shape === "square" ? `${say(plate.size)} x ${say(plate.size)}` : `diameter ${say(plate.size)}`;
  const words = [
    `${what} ${sides} x ${say(plate.thickness)} for ${sizeWords(rod, unit)} rod`,
    ...washerCoating(rod),
  ].join(", ");
  return { what, place: "lower end", words, count: 1, kilograms: weighPiece(plate, hole, shop.density.steel.value) };
}
