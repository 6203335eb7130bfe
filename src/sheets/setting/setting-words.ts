/** What has to be looked after before, while and after concrete is placed: one line each, in the order of the work. */
import { templateWasherOf } from "../../checks/stack-terms.js";
import { isSetOverCastRods } from "../../job/model/base-hole.js";
import type { Base, Job, RodGroup } from "../../job/model/job.js";
import { levellingNutsOf, staysUnderBasePlate } from "../../job/model/stack.js";
import { countRods } from "../../patterns/index.js";
import { detailRod, orderedGrade } from "../../rods/detail/index.js";
import { rodLots } from "../../rods/lots.js";
import { templateRemoval } from "../../standards/index.js";
import { formatLength } from "../../units/index.js";
import { onceFor } from "../../units/once.js";
import { respelled } from "../spelling.js";
import { printable } from "../text-metrics.js";
import { directionWords, type Facing } from "./places.js";
import type { SettingRequest } from "./request.js";
import { asSheetRequest } from "./request.js";
import { sideOf } from "./side-words.js";

/** A line to tick: what it is about, and what is to be seen. */
export interface Step {
  readonly key: string;
  readonly words: string;
}

/** Parts of the work. */
export type Stage = "before" | "during" | "after";

/** Lines to tick, by the part of the work. */
export function stepsOf(request: SettingRequest, facing: Facing): Readonly<Record<Stage, readonly Step[]>> {
  if (isSetOverCastRods(request.base.template)) return overCastRods(request, facing);
  return {
    before: [
      markStep(request, facing),
      ...segmentSteps(request),
      topStep(request, facing),
      turnStep(request, facing),
      ...rodSteps(request),
      ...lowerSteps(request),
      step("NUTS", `tight above and below the template on every rod${washerWords(request)}`),
      heightStep(request),
      step("PLUMB", "every rod plumb"),
      step("MEASURED", "height above template and tape check, written on this sheet"),
    ],
    during: [step("WATCH", "template and rods while concrete is placed and vibrated")],
    after: [
      step("AGAIN", "height, tape check and place, while the concrete can still be moved"),
      removalStep(request),
      ...nutSteps(request),
      step("THREADS", "cleaned, nuts run by hand, rods capped"),
      SURVEY,
    ],
  };
}

const step = (key: string, words: string): Step => ({ key, words });

const SURVEY = step("SURVEY", "every rod surveyed, grid lines marked");

/** A plate that comes when the rods are cast: it holds none of them. */
function overCastRods(request: SettingRequest, facing: Facing): Readonly<Record<Stage, readonly Step[]>> {
  return {
    before: [
      step("RODS", "this plate does not hold them: ask the office what does"),
      ...rodSteps(request),
      step("PLUMB", "every rod plumb"),
    ],
    during: [step("WATCH", "rods while concrete is placed and vibrated")],
    after: [
      SURVEY,
      markStep(request, facing),
      topStep(request, facing),
      turnStep(request, facing),
      step("LEVEL", "plate level on its grout, at its height"),
      step("THREADS", "cleaned, nuts run by hand, rods capped"),
    ],
  };
}

function markStep({ plate, base }: SettingRequest, facing: Facing): Step {
  const name = `${plate.mark} rev ${printable(plate.revision)}`;
  const mark = plate.marks.find(({ kind }) => kind === "mark");
  const what = isSetOverCastRods(base.template) ? "PLATE" : "TEMPLATE";
  if (mark === undefined) return step(what, `${name}: it bears no mark, so ask the office which it is`);
  const { x0, y0, x1, y1 } = mark.extent;
  const place = sideOf({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 }, plate, facing);
  return step(what, `reads ${name}, as this sheet; piece mark at the ${place}`);
}

function topStep({ plate }: SettingRequest, facing: Facing): Step {
  const key = plate.keyed === null ? "" : `, orientation notch at the ${sideOf(plate.keyed.at, plate, facing)}`;
  const top = plate.marks.some(({ kind }) => kind === "top") ? "side marked TOP is up" : "side as drawn here is up";
  return step("TOP UP", `${top}${key}`);
}

function turnStep({ plate }: SettingRequest, facing: Facing): Step {
  const arrow = plate.marks.some(({ kind }) => kind === "north");
  switch (facing.kind) {
    case "alike":
      return step("NORTH", `${arrow ? "arrow N to plan north, " : ""}+X points ${directionWords(facing.turn)}`);
    case "different":
      return step("TURN", "+X as this sheet says for the place");
    case "no layout":
      return step("TURN", "which way +X points is not given: ask the office");
  }
}

function rodSteps({ job, base }: SettingRequest): readonly Step[] {
  return base.groups.map((group) => {
    const detail = detailRod(job, base, group);
    const grade = orderedGrade(detail);
    const length = detail.overall.kind === "given" ? ` x ${formatLength(detail.overall.value.value, job.unit)}` : "";
    const lot = lotsOf(job).get(`${base.mark} ${group.letter}`);
    const said = [
      ...(lot === undefined ? [] : [`lot ${lot}`]),
      `${countRods(group.pattern)} off ${group.rod.size}${length}`,
      grade.kind === "given" ? printable(grade.value) : "grade not given: ask the office",
      ...(detail.endColor.kind === "given" ? [`${detail.endColor.value} end up`] : []),
      ...(group.rod.finish.kind === "given" ? [group.rod.finish.value] : []),
    ];
    return step(base.groups.length === 1 ? "RODS" : `RODS ${group.letter}`, said.join(", "));
  });
}

/** Marks of the lots that the rods of each group are of, by base and group. */
const lotsOf = onceFor(
  (job: Job): ReadonlyMap<string, string> =>
    new Map(rodLots(job).flatMap(({ mark, uses }) => uses.map(({ base, group }) => [`${base} ${group}`, mark]))),
);

function lowerSteps(request: SettingRequest): readonly Step[] {
  return request.pieces
    .filter(({ role }) => role === "lower template")
    .map(({ plate }) =>
      step("LOWER TEMPLATE", `${plate.mark} on the rods, same way round, level; ${lowerLevel(request)}`),
    );
}

function lowerLevel({ base, job }: SettingRequest): string {
  const level = base.template.lower?.level;
  if (level === undefined || level.kind === "missing") return "its height is not given: ask the office";
  const { from, distance } = level.value;
  const to = from === "lower ends" ? "above the lower ends of the rods" : "below T.O.C.";
  return `underside ${formatLength(distance, job.unit)} ${to}`;
}

function segmentSteps({ pieces }: SettingRequest): readonly Step[] {
  const { length } = pieces.filter(({ role }) => role === "segment");
  return length === 0 ? [] : [step("SEGMENTS", `all ${length}, bolted with their splice plates`)];
}

function washerWords(request: SettingRequest): string {
  const washer = templateWasherOf(asSheetRequest(request));
  if (request.job.shop.templateWasher.kind === "given") return ", washer under each";
  return washer.kind === "missing" ? ", washer under each (size: ask the office)" : "";
}

function heightStep({ base, job }: SettingRequest): Step {
  const { height } = base.template;
  if (height.kind === "missing") return step("HEIGHT", "of the underside above T.O.C. is not given: ask the office");
  return step("HEIGHT", `underside ${formatLength(height.value, job.unit)} above T.O.C.`);
}

function removalStep({ base }: SettingRequest): Step {
  if (staysUnderBasePlate(base)) return step("TEMPLATE", "stays as setting plate: leave it on");
  return step(
    "TEMPLATE OFF",
    `not before ${templateRemoval.value} hours (${templateRemoval.edition}); not pried against a rod`,
  );
}

/** Which nuts stay, and what the others are for; one line for groups that say the same. */
function nutSteps({ base, job }: SettingRequest): readonly Step[] {
  const said = new Map<string, string[]>();
  for (const group of base.groups) {
    const words = nutWords(base, group);
    said.set(words, [...(said.get(words) ?? []), group.letter]);
  }
  return [...said].map(([words, letters]) =>
    step(said.size === 1 ? "NUTS" : `NUTS ${letters.join(", ")}`, respelled(words, job.editions)),
  );
}

/** On each rod: those that level the base plate, those that go on it, and those that only held the template. */
export function nutWords(base: Base, { rod }: RodGroup): string {
  const levelling = levellingNutsOf(base.levelling, rod);
  if (levelling.kind === "missing") return "which nuts stay is not given: ask the office";
  const top = rod.topNuts.value;
  const spare = Math.max(0, 2 - top - levelling.value);
  return [
    levelling.value > 0
      ? `lower nut stays: it is the levelling nut${levelling.value > 1 ? ` (${levelling.value} a rod)` : ""}`
      : "lower nut comes off: none levels the base plate",
    `upper nut kept for the base plate${top > 1 ? ` (${top} a rod)` : ""}`,
    ...(spare > 0 ? [`${spare} a rod only for the template`] : []),
  ].join("; ");
}

/** Cautions of whoever sets the rods: short, since they are read on a form in the rain. */
export const FIELD_CAUTIONS: readonly string[] = [
  "Never tack or weld rods to the template, to reinforcement or to each other.",
  "Template is no lifting point and no platform.",
  "Cap every projecting rod.",
  "Set from released drawings only.",
  "Rod or hole wrong? STOP. Do not bend, cut, heat or weld a rod, nor enlarge a hole, without the engineer of record (rods: 29 CFR 1926.755(b)).",
  "Survey after the pour. Local codes and licensed practice govern; engineer to decide.",
];
