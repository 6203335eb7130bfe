/**
 * A template with the rods and nuts that it holds while concrete is placed, for reference: each a shell of its own. Rods are
 * plain round bars of nominal diameter from top to lower end, without thread or hook; nuts and washers fit them closely.
 */
import { templateWasherOf } from "../checks/stack-terms.js";
import { circle, onCircle, point } from "../geometry/index.js";
import type { Contour, Point } from "../geometry/vocabulary.js";
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Input, RodGroup, Washer } from "../job/model/job.js";
import { given } from "../job/model/values.js";
import { detailRod } from "../rods/detail/index.js";
import type { PlacedRod } from "../rods/model.js";
import type { Plate } from "../template/model.js";
import { greatestOf } from "../units/extremes.js";
import { type Length, nanometres, toMillimetres } from "../units/length.js";
import { extrude } from "./extrude.js";
import { flatRings } from "./flat-rings.js";
import type { Ring, Solid } from "./model.js";
import { drawUp } from "./plate-solid.js";

/** Farthest that a chord lies from its arc where rods and nuts are shown, millimetres. */
export const ASSEMBLY_CHORD = 0.1;

type AssemblyOf = Parameters<typeof templateWasherOf>[0] & {
  readonly plate: Plate;
  readonly rods: readonly PlacedRod[];
};

/** A shell of the assembly, and what it is. */
export interface AssemblyPart extends Solid {
  readonly part: "template" | "rod" | "washer" | "nut";
}

/** Several formats write the same. */
const made = new WeakMap<AssemblyOf, { readonly solids: readonly AssemblyPart[] | null }>();

/** The template first; null where a height that it takes is not known, or the template is no one thing. */
export function assemblyOf(of: AssemblyOf): readonly AssemblyPart[] | null {
  const known = made.get(of);
  if (known !== undefined) return known.solids;
  const solids = assemble(of);
  made.set(of, { solids });
  return solids;
}

function assemble(of: AssemblyOf): readonly AssemblyPart[] | null {
  const template = drawUp(of.plate, ASSEMBLY_CHORD);
  const levels = levelsOf(of);
  if (template === null || levels === null) return null;
  const feet = new Map(of.base.groups.map((group) => [group, lowerEnd(of, group)] as const));
  const parts = of.rods.map((rod) => partsOfRod(rod, levels, feet.get(rod.group) ?? null));
  return parts.some((each) => each === null)
    ? null
    : [{ ...template, part: "template" }, ...parts.flatMap((each) => each ?? [])];
}

/**
 * Where the underside of the lower template stands above that of the template, millimetres; null where a height that it takes is
 * not known. Lower ends are those of the longest rods.
 */
export function lowerPlateLevel(of: AssemblyOf): number | null {
  const level = of.base.template.lower?.level;
  const height = of.base.template.height;
  if (level === undefined || level.kind === "missing" || height.kind === "missing") return null;
  const distance = toMillimetres(level.value.distance);
  if (level.value.from === "top of concrete") return -toMillimetres(height.value) - distance;
  const feet = of.base.groups.map((group) => lowerEnd(of, group));
  return feet.some((foot) => foot === null)
    ? null
    : distance - toMillimetres(height.value) - greatestOf(feet.map((foot) => foot ?? 0));
}

/** Keys of the job, the first of each kind, that would supply the heights of rods and nuts; empty where all are known. */
export function missingHeights(of: AssemblyOf): readonly string[] {
  const { base } = of;
  const isNutted = !isSetOverCastRods(base.template);
  const inputs = [
    isNutted ? base.template.height : base.grout,
    ...(isNutted ? [templateWasherOf(of)] : []),
    ...base.groups.flatMap(({ rod }) => [rod.projection, rod.embedment, ...(isNutted ? [rod.nut] : [])]),
  ];
  return [...new Set(inputs.flatMap((input) => (input.kind === "missing" ? [input.key] : [])))];
}

/** Millimetres; `underside` of the template above the top of concrete. */
interface Levels {
  readonly underside: number;
  readonly thickness: number;
  /** null: the nut itself bears. */
  readonly washer: Washer | null;
  readonly washerThickness: number;
  /** False of a plate that is set over cast rods. */
  readonly isNutted: boolean;
}

function levelsOf(of: AssemblyOf): Levels | null {
  const { base, plate, job } = of;
  const isNutted = !isSetOverCastRods(base.template);
  const underside = isNutted ? base.template.height : base.grout;
  const thick: Input<Length> = isNutted ? templateWasherOf(of) : given(nanometres(0), "no washer");
  if (underside.kind === "missing" || thick.kind === "missing") return null;
  const { templateWasher } = job.shop;
  return {
    underside: toMillimetres(underside.value),
    thickness: toMillimetres(plate.thickness),
    washer: isNutted && templateWasher.kind === "given" ? templateWasher.value : null,
    washerThickness: toMillimetres(thick.value),
    isNutted,
  };
}

/** `foot` is its lower end, below the top of concrete. */
function partsOfRod(placed: PlacedRod, levels: Levels, foot: number | null): readonly AssemblyPart[] | null {
  const { tag, group } = placed;
  const { projection, nut } = group.rod;
  if (projection.kind === "missing" || foot === null) return null;
  const top = toMillimetres(projection.value) - levels.underside;
  const rod = extrude(`rod ${tag}`, flatRings(boreOf(placed), [], ASSEMBLY_CHORD), -levels.underside - foot, top);
  if (rod === null) return null;
  if (!levels.isNutted) return [{ ...rod, part: "rod" }];
  if (nut.kind === "missing") return null;
  const height = toMillimetres(nut.value.height);
  const hexagon = hexagonOf(placed, toMillimetres(nut.value.acrossCorners) / 2);
  const { thickness, washer, washerThickness: washed } = levels;
  const pairs = (part: "washer" | "nut", outer: Ring, from: number, high: number) => [
    as(part, ring(`${part} above ${tag}`, placed, outer, thickness + from, high)),
    as(part, ring(`${part} below ${tag}`, placed, outer, -from - high, high)),
  ];
  const washers = washer === null ? [] : pairs("washer", washerOutline(placed, washer), 0, washed);
  const all = [as("rod", rod), ...washers, ...pairs("nut", hexagon, washed, height)];
  return all.every((each) => each !== null) ? all : null;
}

function as(part: AssemblyPart["part"], solid: Solid | null): AssemblyPart | null {
  return solid === null ? null : { ...solid, part };
}

/**
 * Below the top of concrete, millimetres: of a rod that goes straight down by its length, given or worked out; where that is not
 * known, and of a hooked rod, by its embedment.
 */
function lowerEnd({ job, base }: AssemblyOf, group: RodGroup): number | null {
  const { projection, embedment, overall, hook } = detailRod(job, base, group);
  if (hook === null && overall.kind === "given" && projection.kind === "given")
    return toMillimetres(overall.value.value) - toMillimetres(projection.value);
  return embedment.kind === "missing" ? null : toMillimetres(embedment.value);
}

function boreOf({ center, group }: PlacedRod): Contour {
  return circle(center, group.rod.diameter);
}

/** Around the rod, from a level up. */
function ring(name: string, placed: PlacedRod, outer: Ring, low: number, height: number): Solid | null {
  const [bore = []] = flatRings(boreOf(placed), [], ASSEMBLY_CHORD);
  return extrude(name, [outer, bore.toReversed()], low, low + height);
}

function hexagonOf({ center }: PlacedRod, radius: number): Ring {
  return Array.from({ length: 6 }, (_, i) => corner(center, radius, (i * Math.PI) / 3));
}

function washerOutline({ center }: PlacedRod, { shape, size }: Washer): Ring {
  if (shape === "round") return flatRings(circle(center, size), [], ASSEMBLY_CHORD)[0] ?? [];
  const half = toMillimetres(size) / 2;
  return Array.from({ length: 4 }, (_, i) => corner(center, half * Math.SQRT2, ((2 * i + 1) * Math.PI) / 4));
}

/** On the lattice: sines differ in their last digit from one version of the platform to another, and bytes must not. */
function corner(center: Point, radius: number, angle: number): Point {
  const { x, y } = onCircle(center, radius, angle);
  return point(x, y);
}
