/** Lengths of a base in proportion to its rods and its pattern: wide proportions, no rule of design, common practice. */

import type { EndPlate, Input, PlanShape, RodGroup, Severity } from "../job/model/job.js";
import { greatestOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import { inches } from "../units/index.js";
import { largestDiameter, patternSides } from "./misfit.js";
import type { CheckContext } from "./model.js";
import type { Plausible } from "./slips.js";

/** A length of the base, what is plausible for it, and what a slip in it does. */
export interface Proportioned {
  readonly name: string;
  readonly value: Length;
  readonly plausible: Plausible;
  readonly severity: Severity;
}

/** Every length that the base gives and that has a proportion. */
export function lengthsOf(context: CheckContext): readonly Proportioned[] {
  const { groups } = context.base;
  const several = groups.length > 1;
  return [
    ...groups.flatMap((group) => ofRods(group, several ? ` ${group.letter}` : "")),
    ...groups.flatMap((group) => pitchOf(group, several ? ` ${group.letter}` : "")),
    ...ofPlates(context),
  ];
}

/** Multiples of the rod's diameter. */
const RODS = {
  projection: [1, 30],
  embedment: [2, 100],
  length: [3, 130],
  threadLength: [0.5, 60],
  wrenchRoom: [1, 10],
} as const;

const ROD_WORDS: Readonly<Record<keyof typeof RODS, string>> = {
  projection: "projection",
  embedment: "embedment",
  length: "rod length",
  threadLength: "thread length",
  wrenchRoom: "wrench room",
};

const KEYS = ["projection", "embedment", "length", "threadLength", "wrenchRoom"] as const;

/** Multiples of the diameter for a washer's size and thickness. */
const WASHER = { size: [1, 6], thickness: [0.05, 1.5] } as const;
/** The same of a plate at the lower end, and of a hook's reach. */
const BOTTOM = { size: [1, 12], thickness: [0.1, 4], reach: [1, 25] } as const;

function ofRods({ rod, washer }: RodGroup, group: string): readonly Proportioned[] {
  const { diameter } = rod;
  const plausible = (key: (typeof KEYS)[number]): Plausible =>
    key === "threadLength" ? threadOf(rod) : times(diameter, RODS[key]);
  const own = KEYS.flatMap((key) => given(`${ROD_WORDS[key]}${group}`, rod[key], plausible(key), "ask"));
  return [...own, ...ofWasher(washer, diameter, group), ...ofBottom(rod, group)];
}

/** Multiples of the diameter that a lower end may take beyond the embedment: two nuts, a plate, and what sticks out of them. */
const LOWER_END = 8;

/** A thread is no longer than the rod, as far as its length is known. */
function threadOf({ diameter, projection, embedment }: RodGroup["rod"]): Plausible {
  const wide = times(diameter, RODS.threadLength);
  if (projection.kind === "missing" || embedment.kind === "missing") return wide;
  return { ...wide, to: Math.min(wide.to, projection.value + embedment.value + LOWER_END * diameter) };
}

function ofBottom({ bottom, diameter }: RodGroup["rod"], group: string): readonly Proportioned[] {
  if (bottom.kind === "missing") return [];
  const row = (name: string, value: Length, range: readonly [number, number]): Proportioned => {
    return { name: `${name}${group}`, value, plausible: times(diameter, range), severity: "ask" };
  };
  const plate = (name: string, { size, thickness }: EndPlate) => [
    row(`${name} size`, size, BOTTOM.size),
    row(`${name} thickness`, thickness, BOTTOM.thickness),
  ];
  switch (bottom.value.kind) {
    case "straight":
      return [];
    case "nut":
      return bottom.value.washer === null ? [] : plate("bottom washer", bottom.value.washer);
    case "plate":
      return plate("bottom plate", bottom.value);
    case "hook":
      return [row("hook", bottom.value.reach, BOTTOM.reach)];
    case "swedged":
      return [row("swedged part", bottom.value.length, BOTTOM.reach)];
  }
}

function ofWasher(washer: RodGroup["washer"], diameter: Length, group: string): readonly Proportioned[] {
  if (washer.kind === "missing") return [];
  const { size, thickness } = washer.value;
  return [
    { name: `washer size${group}`, value: size, plausible: times(diameter, WASHER.size), severity: "ask" },
    ...given(`washer thickness${group}`, thickness, times(diameter, WASHER.thickness), "ask"),
  ];
}

/** Most diameters from rod to rod. */
const MOST_PITCH = 60;

/** Rods of a rectangle or on a circle, from one to the next; of a circle about a third of it goes round. */
function pitchOf({ pattern, rod: { diameter } }: RodGroup, group: string): readonly Proportioned[] {
  if (pattern.kind === "circle") {
    const plausible = times(diameter, [0, (MOST_PITCH * pattern.count) / 3]);
    return [{ name: `bolt circle${group}`, value: pattern.diameter, plausible, severity: "ask" }];
  }
  if (pattern.kind !== "rectangle") return [];
  return (["x", "y"] as const).map((axis) => ({
    name: `pattern ${axis}${group}`,
    value: pattern[axis],
    plausible: times(diameter, [0, MOST_PITCH * (pattern[axis === "x" ? "nx" : "ny"] - 1)]),
    severity: "ask",
  }));
}

/** Multiples of the largest diameter for the base plate's thickness and for grout. */
const THICKNESS = [0.2, 6] as const;
const GROUT = [0, 8] as const;
/** Multiples of the pattern's larger side. */
const PLATE = 6;
const PIER = 15;
/** Most nail hole. */
const NAIL = inches(1);

/** A form that is not given may be as wide as this, and a template that bears on it wider: common practice. */
const FORM = inches(48);

function ofPlates(context: CheckContext): readonly Proportioned[] {
  const { basePlate, concrete, grout, template } = context.base;
  const diameter = largestDiameter(context);
  const { x, y } = patternSides(context);
  const pattern = Math.max(x, y, 4 * diameter);
  const form = concrete.shape.kind === "missing" ? FORM : 2 * greatestSide(concrete.shape);
  // no slip is guessed that would leave a plate smaller than this
  const upTo = (to: number, from = 2 * diameter): Plausible => ({ from, to });
  const outline = upTo(Math.max(form, PLATE * pattern), Math.min(x, y) + diameter);
  const nails = template.nailHoles.slice(0, 1).map((nail) => ({ name: "nail hole", value: nail.diameter }));
  return [
    ...all(sidesOf("base plate", basePlate.shape), upTo(PLATE * pattern), "ask"),
    ...given("base plate thickness", basePlate.thickness, times(diameter, THICKNESS), "advise"),
    ...given("grout", grout, times(diameter, GROUT), "ask"),
    ...all(sidesOf("concrete", concrete.shape), upTo(PIER * pattern), "advise"),
    ...all(columnSides(context.base), upTo(greatestSide(basePlate.shape) || PLATE * pattern, 0), "ask"),
    ...all(nails, upTo(NAIL, 0), "ask"),
    ...all(outlineSides(template.outline), outline, "stop"),
  ];
}

/** 0 where the shape is not given. */
function greatestSide(shape: Input<PlanShape>): number {
  return greatestOf(
    sidesOf("", shape).map(({ value }) => value),
    0,
  );
}

function all(sides: readonly Side[], plausible: Plausible, severity: Severity): readonly Proportioned[] {
  return sides.map((side) => ({ ...side, plausible, severity }));
}

type Side = Pick<Proportioned, "name" | "value">;

function sidesOf(name: string, shape: Input<PlanShape>): readonly Side[] {
  if (shape.kind === "missing") return [];
  if (shape.value.kind === "circle") return [{ name: `${name} diameter`, value: shape.value.diameter }];
  return [
    { name: `${name} x`, value: shape.value.x },
    { name: `${name} y`, value: shape.value.y },
  ];
}

/** A column is not larger than its base plate. */
function columnSides({ column }: CheckContext["base"]): readonly Side[] {
  if (column.kind === "missing") return [];
  const { value } = column;
  switch (value.kind) {
    case "wide flange":
      return [
        { name: "column depth", value: value.depth },
        { name: "column width", value: value.width },
      ];
    case "tube":
      return [
        { name: "column x", value: value.x },
        { name: "column y", value: value.y },
      ];
    case "pipe":
      return [{ name: "column diameter", value: value.diameter }];
  }
}

function outlineSides(outline: CheckContext["base"]["template"]["outline"]): readonly Side[] {
  switch (outline.kind) {
    case "rectangle":
      return [
        { name: "outline x", value: outline.x },
        { name: "outline y", value: outline.y },
      ];
    case "circle":
      return [{ name: "outline diameter", value: outline.diameter }];
    case "ring":
      return [{ name: "outline outer", value: outline.outer }];
    case "auto":
    case "polygon":
      return [];
  }
}

function times(length: number, [from, to]: readonly [number, number]): Plausible {
  return { from: Math.ceil(from * length), to: Math.floor(to * length) };
}

function given(name: string, input: Input<Length>, plausible: Plausible, severity: Severity): readonly Proportioned[] {
  return input.kind === "given" ? [{ name, value: input.value, plausible, severity }] : [];
}
