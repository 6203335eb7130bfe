/** The points to set out: names, places, elevations and descriptions, in a fixed order. */
import { pointInNanometres, toLattice } from "../geometry/point.js";
import type { Point } from "../geometry/vocabulary.js";
import { greatestOf } from "../units/extremes.js";
import type { Length } from "../units/length.js";
import { add, NM_PER_MM, toMillimetres } from "../units/length.js";
import type { PlacedBase, Plan, PlannedRod, SitePoint, SiteTransform } from "./model.js";
import { planToSite } from "./transform.js";

/** One point to be set out, or to set out from. */
export interface SettingOutPoint {
  readonly kind: "rod" | "centre" | "working point" | "control";
  /** Unique in its file whatever the case, 1 to 16 signs of A-Z a-z 0-9 . - _ */
  readonly name: string;
  /** Plan position; null for a control point that is known on the site only. */
  readonly plan: Point | null;
  /** Site position as given, for control points. */
  readonly given: SitePoint | null;
  /** Top of the rod, or T.O.C. for centres and working points; null: not known. */
  readonly elevation: Length | null;
  /** Plain ASCII without commas or quotation marks. */
  readonly description: string;
}

/** Which coordinates a point is set out by: `local`, plan north for north and plan east for east, or those of the site. */
export type CoordinateSystem = "local" | "site";

/** A point in one coordinate system. */
export interface LocatedPoint extends Pick<SettingOutPoint, "name" | "elevation" | "description"> {
  readonly at: SitePoint;
}

/** Longest point name: what data collectors take at least (common practice). */
export const LONGEST_NAME = 16;

/** True for the mark of a base that is held: its points say so. */
export type IsHeld = (mark: string) => boolean;

const nothingHeld: IsHeld = () => false;

/**
 * Every rod by placement and then by tag, then the centre of every group, then the working points that lie elsewhere, then
 * the control points.
 */
export function settingOutPoints(plan: Plan, isHeld: IsHeld = nothingHeld): readonly SettingOutPoint[] {
  const taken = new Set<string>();
  const stems = stemsOf(plan.bases, taken);
  const named = plan.bases.map((base, index): Named => {
    const held = isHeld(base.base.mark) ? " HELD" : "";
    return { base, stem: stems[index] ?? "", words: `${base.name}${held}` };
  });
  return [
    ...named.flatMap((each) => each.base.rods.map((rod) => rodPoint(each, rod))),
    ...named.map(centrePoint),
    ...named.filter(({ base }) => !isCentred(base)).map(workingPoint),
    ...plan.control.map((control, index) => controlPoint(control, index, taken)),
  ];
}

/** The coordinate systems that a plan has points in: site only where plan and site are tied to each other. */
export function coordinateSystems({ transform }: Pick<Plan, "transform">): readonly CoordinateSystem[] {
  return transform === null ? ["local"] : ["local", "site"];
}

/** The points of a plan in one coordinate system. A point that is not known in it is left out. */
export function locatedPoints(plan: Plan, system: CoordinateSystem, isHeld?: IsHeld): readonly LocatedPoint[] {
  return settingOutPoints(plan, isHeld).flatMap((point) => {
    const at = placeIn(system, plan.transform, point);
    return at === null ? [] : [{ name: point.name, at, elevation: point.elevation, description: point.description }];
  });
}

function placeIn(
  system: CoordinateSystem,
  transform: SiteTransform | null,
  { plan, given }: SettingOutPoint,
): SitePoint | null {
  switch (system) {
    case "local":
      return plan === null ? null : { northing: toLattice(plan.y), easting: toLattice(plan.x) };
    case "site":
      return given ?? (transform === null || plan === null ? null : planToSite(transform, plan));
  }
}

/** The name of a group's centre by base, in the order of the placements: for lists that refer to the points. */
export function pointStems(plan: Plan): readonly string[] {
  return stemsOf(plan.bases, new Set());
}

/** Name of a rod's point: `A-1_A2`. */
export const rodName = (stem: string, tag: string): string => `${stem}_${tag}`;
/** Name of a group centre's point: `A-1_C`. Tags have a number, so that it is no rod's. */
export const centreName = (stem: string): string => `${stem}_C`;

/** Centre of a group: the working point where the rods balance about it, else the mean of the rods' places on the plan. */
export function groupCentre(base: PlacedBase): Point {
  return isCentred(base) ? base.workingPoint : meanOf(base.rods.map(({ plan }) => plan));
}

function isCentred({ ownRods }: PlacedBase): boolean {
  const { x, y } = meanOf(ownRods.map(({ center }) => center));
  return x === 0 && y === 0;
}

function meanOf(points: readonly Point[]): Point {
  const sum = (pick: (point: Point) => number): number =>
    points.reduce((total, point) => total + Math.round(pick(point) * NM_PER_MM), 0);
  return pointInNanometres(sum(({ x }) => x) / points.length, sum(({ y }) => y) / points.length);
}

interface Named {
  readonly base: PlacedBase;
  readonly stem: string;
  /** Mark, crossing, and HELD. */
  readonly words: string;
}

function rodPoint({ base, stem, words }: Named, { rod, plan }: PlannedRod): SettingOutPoint {
  const { topOfConcrete } = base.placement;
  const { projection, size } = rod.group.rod;
  const isKnown = topOfConcrete.kind === "given" && projection.kind === "given";
  return {
    kind: "rod",
    name: rodName(stem, rod.tag),
    plan,
    given: null,
    elevation: isKnown ? add(topOfConcrete.value, projection.value) : null,
    description: plainText(`ROD ${words} ${rod.tag} ${size}`),
  };
}

function centrePoint({ base, stem, words }: Named): SettingOutPoint {
  const at = { name: centreName(stem), plan: groupCentre(base), given: null, elevation: concreteOf(base) };
  return { kind: "centre", ...at, description: plainText(`CENTRE ${words}`) };
}

function workingPoint({ base, stem, words }: Named): SettingOutPoint {
  const at = { name: `${stem}_WP`, plan: base.workingPoint, given: null, elevation: concreteOf(base) };
  return { kind: "working point", ...at, description: plainText(`WORKING POINT ${words}`) };
}

function concreteOf({ placement }: PlacedBase): Length | null {
  return placement.topOfConcrete.kind === "given" ? placement.topOfConcrete.value : null;
}

function controlPoint(control: Plan["control"][number], index: number, taken: Set<string>): SettingOutPoint {
  const { name, plan, northing, easting, elevation } = control;
  return {
    kind: "control",
    name: controlName(name, index, taken),
    plan: plan.kind === "given" ? { x: toMillimetres(plan.value.x), y: toMillimetres(plan.value.y) } : null,
    given: { northing, easting },
    elevation: elevation.kind === "given" ? elevation.value : null,
    description: plainText(`CONTROL ${name}`),
  };
}

/** The control point's own name where a logger takes it and no other point has it; else CP and its number in the job. */
function controlName(name: string, index: number, taken: Set<string>): string {
  const own = loggerText(name);
  const isFree = own !== "" && own.length <= LONGEST_NAME && !taken.has(own.toUpperCase());
  return take(isFree ? own : firstFree(`CP${index + 1}`, taken), taken);
}

/** The wanted name, or with the first number that makes it free; `taken` in capitals. */
export function firstFree(wanted: string, taken: ReadonlySet<string>): string {
  return startNumbering(taken)(wanted);
}

/** As `firstFree`, for many: names once found taken are not looked at again. */
function startNumbering(taken: ReadonlySet<string>): (wanted: string) => string {
  const reached = new Map<string, number>();
  return (wanted) => {
    const key = wanted.toUpperCase();
    let count = reached.get(key) ?? 1;
    const nameOf = (): string => (count === 1 ? wanted : `${wanted}_${count}`);
    while (taken.has(nameOf().toUpperCase())) count += 1;
    reached.set(key, count);
    return nameOf();
  };
}

function take(name: string, taken: Set<string>): string {
  taken.add(name.toUpperCase());
  return name;
}

/**
 * The part of a point's name that says where: the two grid lines, `A-1`; at a crossing that is taken already `A-1_2` and so
 * on; where that leaves no room for the tag, `P` and the number of the placement. Fills `taken` with every point's name.
 */
function stemsOf(bases: readonly PlacedBase[], taken: Set<string>): readonly string[] {
  const stems = new Set<string>();
  const longestTag = greatestOf(
    bases.map(({ rods }) => greatestOf(rods.map(({ rod }) => rod.tag.length))),
    2,
  );
  const free = startNumbering(stems);
  return bases.map((base, index) => {
    const wanted = free(crossingText(base));
    const fits = wanted.length + 1 + longestTag <= LONGEST_NAME;
    const stem = take(fits ? wanted : firstFree(`P${index + 1}`, stems), stems);
    for (const { rod } of base.rods) take(rodName(stem, rod.tag), taken);
    take(centreName(stem), taken);
    take(`${stem}_WP`, taken);
    return stem;
  });
}

function crossingText({ placement }: PlacedBase): string {
  return placement.lines.map((name) => loggerText(name) || "X").join("-");
}

/** What any logger takes of a name: letters, digits, dot, hyphen; the rest is left out. */
function loggerText(text: string): string {
  return plainPrimes(text)
    .replace(/[^A-Za-z0-9.-]/g, "")
    .replace(/^[.-]+/, "");
}

/** Lines A and A' are two: a prime becomes `p`, a double prime `pp`, however it is typed. */
export function plainPrimes(text: string): string {
  return text.replace(/['\u2019\u2032]/g, "p").replace(/["\u201D\u2033]/g, "pp");
}

/** A description that needs no quoting anywhere: other signs become a space. */
function plainText(text: string): string {
  return plainPrimes(text)
    .replace(/[^ -~]|[,;]/g, " ")
    .replace(/ +/g, " ")
    .trim();
}
