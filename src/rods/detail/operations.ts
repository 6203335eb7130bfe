/** The way of a lot of rods through the shop, in order: what each station is set to, and who says so. */
import type { Job } from "../../job/model/job.js";
import { isWeldedOn } from "../../job/model/stack.js";
import type { Input } from "../../job/model/values.js";
import type { Length } from "../../units/index.js";
import { formatLength, formatWithUnit } from "../../units/index.js";
import type { Operation, RodDetail } from "./model.js";
import { orderedGrade, S1_MARK, weldCaution } from "./welding.js";

/** The detail but for its operations. */
export type RodToMake = Omit<RodDetail, "operations" | "notes">;

const HABIT = "common practice";

/** Only those that the rod needs. */
export function operationsOf(job: Job, rod: RodToMake): readonly Operation[] {
  return [
    ...cutting(job, rod),
    ...threading(job, rod),
    ...bending(job, rod),
    ...swedging(job, rod),
    ...welding(rod),
    ...galvanizing(job, rod),
    ...marking(rod),
    ...assembling(rod),
    ...packing(rod),
  ];
}

/** A length with its unit, or that it is not given. */
function lengthWords(input: Input<Length>, { unit }: Job): string {
  return input.kind === "given" ? formatWithUnit(input.value, unit) : `not given (${input.key})`;
}

function cutting(job: Job, { size, bar, cut, separation }: RodToMake): readonly Operation[] {
  const how = separation.kind === "given" ? (separation.value === "sheared" ? "shear" : "saw") : "cut";
  const length = cut.kind === "given" ? formatWithUnit(cut.value.value, job.unit) : `length not known (${cut.key})`;
  const thick = bar.kind === "given" ? `bar of ${barWords(bar.value, job)}` : `bar for ${size}`;
  const words = `${how} ${thick} to ${length}, chamfer the ends`;
  return [{ name: "cut", words, from: separation.kind === "given" ? separation.from : HABIT }];
}

function barWords(bar: Length, { unit }: Job): string {
  return `diameter ${formatLength(bar, unit)} ${unit}`;
}

function threading(job: Job, rod: RodToMake): readonly Operation[] {
  const { threading: how, threadCallout, kind, topThread, bottomThread } = rod;
  const verb = how.kind === "given" && how.value === "rolled" ? "roll" : "cut";
  const from = how.kind === "given" ? how.from : HABIT;
  if (rod.fullThread) return [{ name: "thread", words: `${verb} ${threadCallout} over the whole length`, from }];
  const lower =
    bottomThread.kind === "given" && bottomThread.value === 0
      ? ""
      : `, ${lengthWords(bottomThread, job)} at the lower end`;
  const early = kind.kind === "given" && kind.value === "hooked" ? ", before bending" : "";
  return [
    {
      name: "thread",
      words: `${verb} ${threadCallout}, ${lengthWords(topThread, job)} at the top${lower}${early}`,
      from,
    },
  ];
}

function bending(job: Job, { hook }: RodToMake): readonly Operation[] {
  if (hook === null) return [];
  if (hook.kind === "missing")
    return [{ name: "bend", words: `bend the hook: ${hook.why} (${hook.key})`, from: HABIT }];
  const { reach, insideRadius, radiusFrom } = hook.value;
  const words = `bend 90 degrees, inside radius ${formatWithUnit(insideRadius, job.unit)}, reach ${formatWithUnit(reach, job.unit)} from the axis to the end of the leg`;
  return [{ name: "bend", words, from: radiusFrom }];
}

function swedging(job: Job, { bottom }: RodToMake): readonly Operation[] {
  if (bottom.kind === "missing" || bottom.value.kind !== "swedged") return [];
  return [
    {
      name: "swedge",
      words: `swedge ${formatWithUnit(bottom.value.length, job.unit)} at the lower end`,
      from: bottom.from,
    },
  ];
}

function welding(rod: RodToMake): readonly Operation[] {
  const { bottom, tackWelds } = rod;
  const from = bottom.kind === "given" ? bottom.from : HABIT;
  const isPlate = bottom.kind === "given" && isWeldedOn(bottom.value);
  const whole = isPlate ? ["weld the plate to the lower end, weld as the engineer of record gives it"] : [];
  const words = [...whole, ...tackWelds.map((place) => `tack weld ${place}`)];
  const caution = weldCaution(rod);
  return words.map((each) => ({ name: "weld", words: caution === "" ? each : `${each}: ${caution}`, from }));
}

/** A rod that the order leaves open, and that is too long or heavy for the barrel, is dipped by the shop's own limits. */
function galvanizing({ shop }: Job, { finish, zincProcess }: RodToMake): readonly Operation[] {
  if (finish.kind === "missing" || zincProcess === null) return [];
  const { mechanicalLongest, mechanicalHeaviest } = shop.rodShop.making;
  const from = zincProcess.kind === "missing" ? "order without preference" : zincProcess.from;
  const isForced = [mechanicalLongest.from, mechanicalHeaviest.from].includes(from);
  const more = isForced ? ", the rod is too long or too heavy for the barrel" : "";
  return [{ name: "galvanize", words: `${finish.value}${more}; nuts and washers by the same process`, from }];
}

function marking(rod: RodToMake): readonly Operation[] {
  const { endColor, weldable } = rod;
  if (endColor.kind === "missing") return [];
  const grade = orderedGrade(rod);
  const named = grade.kind === "given" ? ` (${grade.value})` : "";
  const side = weldable === "S1" ? `; ${S1_MARK}` : "";
  return [{ name: "mark", words: `paint the projecting end ${endColor.value}${named}${side}`, from: endColor.from }];
}

function assembling({ hardware, protectors }: RodToMake): readonly Operation[] {
  const pieces = hardware.filter(({ place }) => place === "lower end").map(({ count, words }) => `${count} x ${words}`);
  const lower = pieces.length === 0 ? [] : [`${pieces.join("; ")} on the lower end`];
  const words = [...lower, "run the other nuts and washers up by hand", ...(protectors ? ["cover the threads"] : [])];
  return [{ name: "assemble", words: words.join("; "), from: HABIT }];
}

function packing({ protectors }: RodToMake): readonly Operation[] {
  const covered = protectors ? ", thread protectors on" : "";
  return [{ name: "pack", words: `bundle and tag by lot${covered}`, from: HABIT }];
}
