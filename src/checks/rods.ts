/** Rods with the holes that the template gives them. */
import type { Point } from "../geometry/index.js";
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Input, Nut, Rod, RodGroup, Washer } from "../job/model/job.js";
import { given } from "../job/model/job.js";
import type { Length } from "../units/index.js";
import type { CheckContext, RuleResult } from "./model.js";
import { notApplicable } from "./results.js";

/** A rod and its hole in the template. */
export interface RodHole {
  /** A1, A2, ... */
  readonly tag: string;
  readonly group: RodGroup;
  readonly rod: Rod;
  readonly center: Point;
  /** Diameter d of the rod and h of its hole in the template. */
  readonly diameter: Length;
  readonly hole: Length;
  readonly made: "cut" | "drill";
}

/** Worked out once for each base: every rule asks for them. */
const KNOWN = new WeakMap<CheckContext, readonly RodHole[]>();

/** Every rod with its hole, in the order of the tags. Throws when a plate lacks the hole of a rod: a bug. */
export function rodHoles(context: CheckContext): readonly RodHole[] {
  const known = KNOWN.get(context);
  if (known !== undefined) return known;
  const found = findRodHoles(context);
  KNOWN.set(context, found);
  return found;
}

function findRodHoles({ rods, plate }: CheckContext): readonly RodHole[] {
  const holes = new Map(plate.holes.map((hole) => [hole.tag, hole]));
  return rods.map(({ tag, group, center }) => {
    const hole = holes.get(tag);
    if (hole === undefined || hole.shape.kind !== "circle")
      throw new Error(`the plate has no round hole for rod ${tag}`);
    const { diameter } = group.rod;
    return { tag, group, rod: group.rod, center, diameter, hole: hole.shape.diameter, made: hole.made };
  });
}

/** Play h - d of a rod in its template hole. */
export function playOf(rodHole: RodHole): number {
  return rodHole.hole - rodHole.diameter;
}

/** A result a rod. */
export function perRod(context: CheckContext, judge: (rodHole: RodHole) => RuleResult): readonly RuleResult[] {
  return rodHoles(context).map(judge);
}

/** True where the plate is dropped over cast rods. */
export function isOverCastRods({ base }: CheckContext): boolean {
  return isSetOverCastRods(base.template);
}

/** The row of a rule that is about holding rods during the pour, for a plate that is set afterwards. */
export function notForSettingPlate(subject: string): RuleResult {
  return notApplicable(subject, "the plate is set over cast rods: it holds no rod and no nut during the pour");
}

/** The washer on the base plate as `round washer 3` or `square washer 3`, with its series where there are two. */
export function washerText(
  { shape, size, series }: Pick<Washer, "shape" | "size" | "series">,
  length: (length: number) => string,
): string {
  return `${shape} washer ${length(size)}${series === undefined ? "" : ` (${series})`}`;
}

/** The largest washer that may come: what it needs room for is held against this one, what it must cover against itself. */
export function widestWasher(washer: Washer): Washer {
  return washer.widest ?? washer;
}

/** The inputs that a rule about base-plate holes and washers needs. */
export function holeAndWasher(group: RodGroup): { readonly hole: Input<Length>; readonly washer: Input<Washer> } {
  return { hole: group.baseHole, washer: group.washer };
}

/** The nut at the lower end, where it anchors the rod, or may; null where something else does. */
export function nutIfAnchor({ bottom, nut }: Pick<Rod, "bottom" | "nut">): Input<Nut | null> {
  return bottom.kind === "missing" || bottom.value.kind === "nut" ? nut : given(null, "");
}
