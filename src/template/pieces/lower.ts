/**
 * The lower template as a base of its own: the same rods through a smaller plate of steel, open for the concrete, that nothing
 * carries but its nuts. Sized where the job does not: rods on bolt circles get a ring, others a frame.
 */
import { millimetresBetween, twiceToLattice } from "../../geometry/index.js";
import type { Base, Job, OpeningSpec, OutlineSpec } from "../../job/model/job.js";
import { missing } from "../../job/model/job.js";
import { servedMarks } from "../../job/model/shared.js";
import { boltCircleOf } from "../../patterns/index.js";
import type { PlacedRod } from "../../rods/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { inches, type Length, millimetres, NM_PER_MM, nanometres, type Unit } from "../../units/length.js";
import { patternCenter } from "../auto-outline.js";
import { leastEdge, type Need, needsOf } from "../reach.js";

/** What stands between the mark of a template and that of its lower template. */
const LOWER_ENDING = "-L";

/** The mark of a template's lower template. */
export function lowerMark(mark: string): string {
  return `${mark}${LOWER_ENDING}`;
}

/** The base with its lower template in the place of its template; null where it has none. It stays: one for each column. */
export function lowerBase(job: Job, base: Base, rods: readonly PlacedRod[]): Base | null {
  const { lower } = base.template;
  if (lower === null) return null;
  const template: Base["template"] = {
    ...base.template,
    mark: lowerMark(base.template.mark),
    quantity: columnsOf(job, base),
    use: "template",
    support: missing("template.lower", "nothing carries a lower template but its nuts"),
    material: "steel",
    thickness: lower.thickness,
    outline: lower.outline,
    opening: { kind: "none" },
    key: "none",
    height: missing("template.lower", "a lower template stands in the concrete"),
    nailHoles: [],
    groutHoles: [],
    lower: null,
    segments: base.template.segments === null ? null : { ...base.template.segments, count: "auto" },
  };
  const bare = { ...base, template };
  const needs = needsOf(job, bare, rods, leastEdge(job, template));
  const outline = lower.outline.kind === "auto" ? (ringAround(job, bare, needs) ?? lower.outline) : lower.outline;
  const opening = lower.opening.kind === "auto" ? openingFor(job, outline, rods, needs) : lower.opening;
  return { ...bare, template: { ...template, outline, opening } };
}

/** Columns that stand on the bases which the template serves. */
function columnsOf({ bases }: Job, base: Base): number {
  const served = new Set(servedMarks(base));
  const quantities = bases.filter(({ mark }) => served.has(mark)).map(({ quantity }) => quantity);
  return quantities.length === 0 ? base.quantity : quantities.reduce((sum, each) => sum + each, 0);
}

/** A smaller opening than this is not worth cutting, since concrete and vibrator hardly pass: common practice. */
const LEAST_OPENING: Readonly<Record<Unit, Length>> = { in: inches(3), mm: millimetres(75) };

/** A ring about rods that all stand on bolt circles, a round plate where nothing would be left of its opening. */
function ringAround({ shop, unit }: Job, { groups }: Base, needs: readonly Need[]): OutlineSpec | null {
  if (groups.some(({ pattern }) => boltCircleOf(pattern) === null)) return null;
  const increment = Math.max(1, shop.increment.value);
  const origin = { x: 0, y: 0 };
  const letters = shop.marking.how === "none" ? 0 : shop.marking.textHeight;
  const reach = needs.map(({ center, twice }) => ({
    across: twiceToLattice(millimetresBetween(center, origin)),
    twice: twice + letters,
  }));
  const outer = Math.ceil(greatestOf(reach.map(({ across, twice }) => across + twice)) / increment) * increment;
  const inner = Math.floor(leastOf(reach.map(({ across, twice }) => across - twice)) / increment) * increment;
  const at = { x: nanometres(0), y: nanometres(0) };
  if (inner < LEAST_OPENING[unit]) return { kind: "circle", diameter: nanometres(outer), at };
  return { kind: "ring", outer: nanometres(outer), inner: nanometres(inner), at };
}

/** The largest rectangle about the centre of the pattern that leaves every hole its room; the round one where rods stand inside. */
function openingFor(
  { shop, unit }: Job,
  outline: OutlineSpec,
  rods: readonly PlacedRod[],
  needs: readonly Need[],
): OpeningSpec {
  if (outline.kind === "ring") return { kind: "none" };
  const center = patternCenter(rods);
  const increment = Math.max(1, shop.increment.value);
  const side = (axis: "x" | "y") => Math.max(0, Math.floor(clearAlong(axis, center, needs) / increment) * increment);
  const [x, y] = [side("x"), side("y")];
  const isClear = needs.every(
    (need) => offsetTwice(need, center, "x") - need.twice >= x || offsetTwice(need, center, "y") - need.twice >= y,
  );
  if (!isClear) return { kind: "auto" };
  if (Math.min(x, y) < LEAST_OPENING[unit]) return { kind: "none" };
  const radius = Math.min(Math.max(increment, shop.smallestCorner.least), Math.floor(Math.min(x, y) / 2));
  const at = { x: nanometres(center.x * NM_PER_MM), y: nanometres(center.y * NM_PER_MM) };
  return { kind: "rectangle", x: nanometres(x), y: nanometres(y), radius: nanometres(radius), at };
}

/** Clear width between the outermost rods along an axis, nanometres. */
function clearAlong(
  axis: "x" | "y",
  center: { readonly x: number; readonly y: number },
  needs: readonly Need[],
): number {
  const far = greatestOf(needs.map((need) => offsetTwice(need, center, axis)));
  const outermost = needs.filter((need) => offsetTwice(need, center, axis) >= far - SAME_LINE);
  return leastOf(outermost.map((need) => far - need.twice));
}

/** Rods nearer than this to the outermost line stand on it, nanometres. */
const SAME_LINE = 10;

function offsetTwice({ center }: Need, middle: { readonly x: number; readonly y: number }, axis: "x" | "y"): number {
  return Math.abs(twiceToLattice(center[axis] - middle[axis]));
}
