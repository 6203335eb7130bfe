/**
 * What lies on a rod between the top of concrete and its top, upwards: grout, a setting plate that stays, base plate, washer,
 * nut, stick-out. Every height that hangs on it is worked out from here. Lengths are heights; a levelling nut stands inside
 * the grout.
 */
import type { Length } from "../../units/length.js";
import { add, nanometres, scale } from "../../units/length.js";
import type { Base, Bottom, Rod, RodGroup } from "./job.js";
import type { Input } from "./values.js";
import { given } from "./values.js";

/** One layer of the stack, by its name in notes. */
export interface StackPart {
  readonly name: "grout" | "setting plate" | "base plate" | WasherName | "nut" | `${number} nuts` | "stick-out";
  readonly height: Input<Length>;
}

/** A washer of a table by the end of its range, another as it is given. */
export type WasherName = "washer" | "thickest washer" | "thinnest washer";

/** Which end of a range a figure is taken at. */
export type Extreme = "least" | "greatest";

type Standing = Pick<Base, "grout" | "basePlate" | "template">;

/** True where the template, or the plate set over cast rods, stays under the base plate. */
export function staysUnderBasePlate({ template }: Pick<Base, "template">): boolean {
  return template.use !== "template";
}

/** Thickness of the setting plate that stays between grout and base plate; zero where the template comes off. */
export function settingPlateThickness(base: Pick<Base, "template">): Length {
  return staysUnderBasePlate(base) ? base.template.thickness : nanometres(0);
}

/** Underside of the base plate above the top of concrete: grout, and the setting plate that stays. */
export function heightOfBasePlate(base: Pick<Base, "grout" | "template">): Input<Length> {
  const { grout } = base;
  if (grout.kind === "missing" || !staysUnderBasePlate(base)) return grout;
  return given(add(grout.value, settingPlateThickness(base)), `${grout.from}, and the setting plate`);
}

/** Where a bottom of base plate comes from that nobody wrote: the layers beneath it. */
export function originOfBasePlateBottom(base: Pick<Base, "template">): string {
  return staysUnderBasePlate(base) ? "top of concrete, grout and setting plate" : "top of concrete and grout";
}

/** Thickness of the washer on the base plate: an end of its table's range where one is held, else as it is given. */
export function washerThickness({ washer }: Pick<RodGroup, "washer">, at: Extreme): Input<Length> {
  if (washer.kind === "missing") return washer;
  const { thickness, limits } = washer.value;
  return limits === undefined ? thickness : given(limits[at], washer.from);
}

/** What notes call the washer at that end of its range. */
export function washerName({ washer }: Pick<RodGroup, "washer">, at: Extreme): WasherName {
  if (washer.kind === "missing" || washer.value.limits === undefined) return "washer";
  return at === "least" ? "thinnest washer" : "thickest washer";
}

function washerPart(group: Pick<RodGroup, "washer">, at: Extreme): StackPart {
  return { name: washerName(group, at), height: washerThickness(group, at) };
}

/** Height of the rod's nut, the greatest of its table. */
export function nutHeight({ nut }: Pick<Rod, "nut">): Input<Length> {
  return nut.kind === "missing" ? nut : given(nut.value.height, nut.from);
}

/** Nuts that level the base plate: as many as the job says, else one on a rod whose base is levelled by nuts. */
export function levellingNutsOf(
  levelling: Base["levelling"],
  { levellingNuts }: Pick<Rod, "levellingNuts">,
): Input<number> {
  if (levellingNuts.kind === "given") return levellingNuts;
  if (levelling.kind === "missing") return levelling;
  return given(levelling.value === "nuts" ? 1 : 0, levelling.from);
}

/** True of a plate that no nut holds: it is welded to the rod. */
export function isWeldedOn(bottom: Bottom): boolean {
  return bottom.kind === "plate" && bottom.nuts === 0;
}

/** Nuts that hold a rod's lower end. */
export function nutsAtBottom(bottom: Bottom): number {
  switch (bottom.kind) {
    case "nut":
      return 1;
    case "plate":
      return bottom.nuts;
    case "straight":
    case "hook":
    case "swedged":
      return 0;
  }
}

/** The nuts on the base plate: one, or as many as the job says, one on the other. */
function nutPart(rod: Rod): StackPart {
  const count = rod.topNuts.value;
  const height = nutHeight(rod);
  if (count === 1 || height.kind === "missing") return { name: "nut", height };
  return { name: `${count} nuts`, height: given(scale(height.value, count), height.from) };
}

/** The layers under the washer, upwards from the top of concrete. */
function underWasher(base: Standing): readonly StackPart[] {
  const plate: StackPart = { name: "setting plate", height: given(settingPlateThickness(base), "template.thickness") };
  return [
    { name: "grout", height: base.grout },
    ...(staysUnderBasePlate(base) ? [plate] : []),
    { name: "base plate", height: base.basePlate.thickness },
  ];
}

/** The whole stack, upwards from the top of concrete, at its greatest: the rod stands as high as this at least. */
export function wholeStack(base: Standing, group: Pick<RodGroup, "washer" | "rod">): readonly StackPart[] {
  return [
    ...underWasher(base),
    washerPart(group, "greatest"),
    nutPart(group.rod),
    { name: "stick-out", height: group.rod.stickOut },
  ];
}

/** The layers that the top nut comes to bear on, at their least: its thread reaches down to there. */
export function seatOfNut(base: Standing, group: Pick<RodGroup, "washer">): readonly StackPart[] {
  return [...underWasher(base), washerPart(group, "least")];
}
