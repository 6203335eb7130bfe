/** Whether two templates of one pattern are the same piece of plate. */
import type { Contour, Move } from "../geometry/index.js";
import { moveContour, sameContour } from "../geometry/index.js";
import type { OpeningSpec, RoundHoleSpec } from "../job/model/job.js";
import type { OutlinedBase, PlacedRod } from "../rods/index.js";
import type { Way, WayMove } from "./model.js";
import { QUARTERS, RIGHT } from "./ways.js";

/** How the second is laid on the first so that their rods agree, and what does not agree then. */
export function sameTemplate(
  first: OutlinedBase,
  second: OutlinedBase,
): { readonly how: string; readonly differs: readonly string[] } {
  if (sameRods(second.rods, first.rods, RIGHT.move) && differences(first, second, RIGHT).length === 0) {
    return { how: RIGHT.words, differs: [] };
  }
  const fits = [RIGHT, ...QUARTERS].filter(({ move }) => sameRods(second.rods, first.rods, move));
  const compared = fits.map((way) => ({ how: way.words, differs: differences(first, second, way) }));
  const [start = { how: "", differs: ["the pattern"] }, ...others] = compared;
  return others.reduce((best, each) => (each.differs.length < best.differs.length ? each : best), start);
}

function sameRods(from: readonly PlacedRod[], to: readonly PlacedRod[], move: Move): boolean {
  const places = new Set(to.map(({ center: { x, y }, group }) => `${group.rod.diameter} ${x} ${y}`));
  return from.every(({ center, group }) => {
    const { x, y } = move.apply(center);
    return places.has(`${group.rod.diameter} ${x} ${y}`);
  });
}

function differences(first: OutlinedBase, second: OutlinedBase, way: WayMove): readonly string[] {
  const [a, b] = [first.base.template, second.base.template];
  const pairs: readonly (readonly [string, boolean])[] = [
    ["hole sizes", sameHoles(first, second)],
    ["outline", sameOutline(first.outline, second.outline, way.move)],
    ["opening", openingText(a.opening) === openingText(turnedOpening(b.opening, way))],
    ["nail holes", roundText(a.nailHoles) === roundText(b.nailHoles.map((hole) => turnedHole(hole, way)))],
    ["grout holes", roundText(a.groutHoles) === roundText(b.groutHoles.map((hole) => turnedHole(hole, way)))],
    ["thickness", a.thickness === b.thickness],
    ["material", a.material === b.material],
    ["use", a.use === b.use],
  ];
  return pairs.flatMap(([what, same]) => (same ? [] : [what]));
}

function sameHoles(first: OutlinedBase, second: OutlinedBase): boolean {
  const text = ({ rods }: OutlinedBase) =>
    [...new Set(rods.map(({ group }) => `${group.rod.diameter} ${group.hole.value}`))].sort().join();
  return text(first) === text(second);
}

function sameOutline(first: Contour, second: Contour, move: Move): boolean {
  return sameContour(first, moveContour(second, move));
}

function turnedHole(hole: RoundHoleSpec, way: Way): RoundHoleSpec {
  return { ...hole, at: turnedAt(hole.at, way) };
}

/** An exact position turned by quarters, after x has changed its sign where the plate lies face down. */
function turnedAt<T extends RoundHoleSpec["at"]>({ x, y }: T, { faceDown, degrees }: Way): RoundHoleSpec["at"] {
  const start = { x: (faceDown ? -x : x) as T["x"], y };
  const minus = (length: T["x"]) => (-length + 0) as T["x"];
  switch (degrees) {
    case 90:
      return { x: minus(start.y), y: start.x };
    case 180:
      return { x: minus(start.x), y: minus(start.y) };
    case 270:
      return { x: start.y, y: minus(start.x) };
    default:
      return start;
  }
}

function turnedOpening(opening: OpeningSpec, way: Way): OpeningSpec {
  switch (opening.kind) {
    case "none":
    case "auto":
      return opening;
    case "circle":
      return { ...opening, at: turnedAt(opening.at, way) };
    case "rectangle": {
      const across = way.degrees % 180 === 0 ? opening : { ...opening, x: opening.y, y: opening.x };
      return { ...across, at: turnedAt(opening.at, way) };
    }
  }
}

function openingText(opening: OpeningSpec): string {
  switch (opening.kind) {
    case "none":
    case "auto":
      return opening.kind;
    case "circle":
      return `circle ${opening.diameter} ${opening.at.x + 0} ${opening.at.y + 0}`;
    case "rectangle":
      return `rectangle ${opening.x} ${opening.y} ${opening.radius} ${opening.at.x + 0} ${opening.at.y + 0}`;
  }
}

function roundText(holes: readonly RoundHoleSpec[]): string {
  return holes
    .map(({ at, diameter }) => `${diameter} ${at.x + 0} ${at.y + 0}`)
    .sort()
    .join();
}
