/**
 * What the setting section says: each length with its least and most where a tolerance moves it, from the values that the rules
 * hold it against; of what the job does not give, that it is not given.
 */
import {
  concreteTopTolerance,
  type FoundTerm,
  lengthToleranceOf,
  rodTopTolerance,
  templateWasherOf,
} from "../checks/stack-terms.js";
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Input, RodGroup, Washer } from "../job/model/job.js";
import { staysUnderBasePlate, washerThickness } from "../job/model/stack.js";
import { formatLength, formatStock, type Length, type Unit } from "../units/index.js";
import type { SheetRequest } from "./request.js";
import { spellingOf } from "./spelling.js";

/** A text in parts; a line is broken rather between two parts than in one. */
export type Phrase = readonly string[];

/** A layer of the stack that stands later, from the bottom up. */
export interface StackLayer {
  readonly name: "grout" | "levelling" | "setting plate" | "base plate" | "washer" | "nut" | "stick-out";
  readonly words: Phrase;
  /** It has no height: the base plate lies on what is under it. */
  readonly isFlat: boolean;
}

/** `PROJECTION 6`, and in brackets what the tolerance of rod tops makes of it. */
export function projectionWords(request: SheetRequest, { rod }: RodGroup): Phrase {
  const { unit } = request.job;
  const [low, high] = [rodTopTolerance(request, "low"), rodTopTolerance(request, "high")];
  return lengthWords("PROJECTION", rod.projection, unit, rangeOf(rod.projection, low, high));
}

/** `EMBEDMENT 12`. */
export function embedmentWords({ job }: SheetRequest, { rod }: RodGroup): Phrase {
  return lengthWords("EMBEDMENT", rod.embedment, job.unit);
}

/** `THREAD 4-1/2`: down from the top of the rod. */
export function threadWords({ job }: SheetRequest, { rod }: RodGroup): Phrase {
  return rod.fullThread ? ["FULL THREAD"] : lengthWords("THREAD", rod.threadLength, job.unit);
}

/** Height of the template's underside; of a plate that is set over cast rods, the grout under it. */
export function undersideWords(request: SheetRequest): Phrase {
  const { base, job } = request;
  if (isSetOverCastRods(base.template)) return groutWords(request);
  const { height } = base.template;
  return [...lengthWords("UNDERSIDE", height, job.unit), ...(height.kind === "missing" ? [] : ["ABOVE T.O.C."])];
}

/** `ROD 3/4 x 18`, with the tolerance of its length where its grade has one. */
export function rodWords({ job }: SheetRequest, { rod }: RodGroup): Phrase {
  const { unit } = job;
  if (rod.length.kind === "missing") return [`ROD ${rod.size},`, "LENGTH", "NOT GIVEN"];
  const tolerance = lengthToleranceOf(rod);
  const length = formatLength(rod.length.value, unit);
  if (tolerance.kind === "missing") return [`ROD ${rod.size},`, `LENGTH ${length}`];
  const { value } = tolerance;
  return [`ROD ${rod.size},`, `LENGTH ${length}`, range(rod.length.value - value, rod.length.value + value, unit)];
}

/** What anchors the rod at its lower end. */
export function bottomWords({ job }: SheetRequest, { rod }: RodGroup): Phrase {
  const { bottom } = rod;
  if (bottom.kind === "missing") return ["LOWER END", "NOT GIVEN"];
  const say = (length: Length) => formatLength(length, job.unit);
  switch (bottom.value.kind) {
    case "nut":
      return [`${nutKind(rod)}`, "AT LOWER END"];
    case "plate": {
      const { shape, size, thickness } = bottom.value;
      return [`${shape === "round" ? "ROUND" : "SQUARE"} PLATE`, `${say(size)} x ${say(thickness)}`, "AND NUTS"];
    }
    case "hook":
      return ["HOOK,", `REACH ${say(bottom.value.reach)}`];
    case "straight":
      return ["LOWER END", "STRAIGHT"];
    case "swedged":
      return ["SWEDGED", say(bottom.value.length)];
  }
}

function nutKind({ nut }: RodGroup["rod"]): string {
  return nut.kind === "missing" ? "NUT" : `${nut.value.kind.toUpperCase()} NUT`;
}

/** Nuts, and washers where there are any, above and below the template. */
export function fastenerWords(request: SheetRequest, { rod }: RodGroup): Phrase {
  const { shop, unit } = request.job;
  const washer = shop.templateWasher;
  const both = ["ON BOTH", "FACES"];
  if (washer.kind === "given")
    return [nutKind(rod), `AND ${shapeOf(washer.value)} WASHER`, washerSize(washer.value, unit), ...both];
  return templateWasherOf(request).kind === "given"
    ? [nutKind(rod), ...both]
    : [nutKind(rod), "AND WASHER", ...both, "(WASHER", "NOT GIVEN)"];
}

/** What the plate of the template is. */
export function templateWords({ base, job }: SheetRequest): Phrase {
  const { material, thickness } = base.template;
  const figure = formatStock(thickness, job.unit);
  if (isSetOverCastRods(base.template)) return [`PLATE ${figure},`, "SET OVER", "CAST RODS"];
  return [`${material === "plywood" ? "PLYWOOD" : "TEMPLATE"} ${figure}`];
}

/** The lower template and the height of its underside. */
export function lowerTemplateWords({ base, job }: SheetRequest): Phrase {
  const { lower } = base.template;
  if (lower === null) return [];
  const name = ["LOWER TEMPLATE", formatStock(lower.thickness, job.unit)];
  if (lower.level.kind === "missing") return [...name, "HEIGHT", "NOT GIVEN"];
  const { from, distance } = lower.level.value;
  const level = from === "lower ends" ? ["ABOVE", "LOWER END"] : ["BELOW", "T.O.C."];
  return [...name, "UNDERSIDE", formatLength(distance, job.unit), ...level];
}

/** What carries it while concrete is placed. */
export function supportWords({ base }: SheetRequest): Phrase {
  const { support } = base.template;
  if (support.kind === "missing") return ["SUPPORT", "NOT GIVEN"];
  return support.value === "form" ? ["CARRIED BY", "THE FORM"] : ["CARRIED BY", "BEARERS"];
}

/** The layers under and on the base plate, from the bottom up. */
export function stackWords(request: SheetRequest, group: RodGroup): readonly StackLayer[] {
  const { base, job } = request;
  const { unit } = job;
  const { stickOut } = group.rod;
  const layer = (name: StackLayer["name"], words: Phrase, isFlat = false): StackLayer => ({ name, words, isFlat });
  const levelling = levellingWords(request);
  return [
    layer("grout", groutWords(request), isZero(base.grout)),
    ...(levelling === null ? [] : [layer("levelling", levelling)]),
    ...(staysUnderBasePlate(base) ? [layer("setting plate", settingPlateWords(request))] : []),
    layer("base plate", lengthWords("BASE PLATE", base.basePlate.thickness, unit)),
    layer("washer", baseWasherWords(group, unit)),
    layer("nut", group.rod.nut.kind === "missing" ? ["NUT", "NOT GIVEN"] : [nutKind(group.rod)]),
    ...(stickOut.kind === "given" && stickOut.value > 0
      ? [layer("stick-out", lengthWords("STICK-OUT", stickOut, unit))]
      : []),
  ];
}

function settingPlateWords({ base, job }: SheetRequest): Phrase {
  const figure = formatStock(base.template.thickness, job.unit);
  return isSetOverCastRods(base.template)
    ? ["SETTING PLATE", figure]
    : ["TEMPLATE LEFT", "AS SETTING", `PLATE ${figure}`];
}

function groutWords(request: SheetRequest): Phrase {
  const { grout } = request.base;
  const { unit } = request.job;
  if (isZero(grout)) return ["NO GROUT"];
  const [high, low] = [concreteTopTolerance(request, "high"), concreteTopTolerance(request, "low")];
  return lengthWords("GROUT", grout, unit, rangeOf(grout, high, low));
}

function isZero(length: Input<Length>): boolean {
  return length.kind === "given" && length.value === 0;
}

/** Null where nothing is to be said: no grout to level in. */
function levellingWords({ base, job }: SheetRequest): Phrase | null {
  const { levelling, grout } = base;
  if (isZero(grout) && levelling.kind === "missing") return null;
  const word = spellingOf(job.editions).leveling;
  if (levelling.kind === "missing") return [word, "NOT GIVEN"];
  switch (levelling.value) {
    case "nuts":
      return [`${word} NUT`, "AND WASHER"];
    case "shims":
      return ["ON SHIMS"];
    case "plate":
      return [`ON ${word} PLATE`];
  }
}

function baseWasherWords(group: RodGroup, unit: Unit): Phrase {
  const { washer } = group;
  if (washer.kind === "missing") return ["WASHER", "NOT GIVEN"];
  const name = `${shapeOf(washer.value)} WASHER`;
  const [least, greatest] = [washerThickness(group, "least"), washerThickness(group, "greatest")];
  const size = washerSize(washer.value, unit);
  if (least.kind === "missing" || greatest.kind === "missing" || least.value === greatest.value) return [name, size];
  return [name, size, range(least.value, greatest.value, unit)];
}

function shapeOf({ shape }: Washer): string {
  return shape === "round" ? "ROUND" : "SQUARE";
}

function washerSize({ size, thickness }: Washer, unit: Unit): string {
  return `${formatLength(size, unit)} x ${thickness.kind === "given" ? formatLength(thickness.value, unit) : "?"}`;
}

/** From least to most, in nanometres. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Nominal less and plus a tolerance; null where either is not known. */
export function rangeOf(nominal: Input<Length>, less: FoundTerm, more: FoundTerm): Range | null {
  if (nominal.kind === "missing" || !less.found || !more.found) return null;
  const [low, high] = [less.term.input, more.term.input];
  if (low.kind === "missing" || high.kind === "missing") return null;
  return { least: nominal.value - low.value, most: nominal.value + high.value };
}

/** A length by its name, its figure, and in brackets from least to most; of one that is not known, that it is not given. */
export function lengthWords(name: string, length: Input<Length>, unit: Unit, between: Range | null = null): Phrase {
  if (length.kind === "missing") return [name, "NOT GIVEN"];
  const figure = formatLength(length.value, unit);
  return [name, figure, ...(between === null ? [] : [range(between.least, between.most, unit)])];
}

function range(least: number, most: number, unit: Unit): string {
  return `(${formatLength(least, unit)} TO ${formatLength(most, unit)})`;
}
