import type { Point } from "../../geometry/index.js";
import { extentOfPoints, growExtent, twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { PlacedBase } from "../../plan/index.js";
import { greatestOf } from "../../units/extremes.js";
import { NM_PER_MM } from "../../units/index.js";
import { findNeighbours } from "../geometry/neighbours.js";
import { judgeNeighbours, placedBases } from "../geometry/placed.js";
import type { JobRule } from "../job-model.js";
import { wordsIn } from "../words.js";

/** Rods of two bases that would stand in one place. */
export const neighbourRods: JobRule<"neighbour-rods"> = {
  id: "neighbour-rods",
  plainName: "clear of next rods",
  title: "clear distance between the rods of two bases >= 0",
  severity: "ask",
  measured: "the clear distance between the rods of two bases",
  takes: ["pattern", "rods.diameter"],
  clause: () => "rods cannot pass through each other",
  edition: () => "geometry",
  check(context) {
    const bases = placedBases(context);
    if (bases.length === 0) return [];
    const say = wordsIn(context.job.unit);
    const boxed = bases.map((placed) => ({ item: { placed }, box: boxOfRods(placed) }));
    const found = findNeighbours(boxed, (a, b) => nearestRods(a.placed, b.placed).twice);
    return judgeNeighbours(found, (a, b) => {
      const { first, second, twice } = nearestRods(a.placed, b.placed);
      return `${first} and ${second}: ${say.full(twice)} clear between the shanks, nuts and plates not counted`;
    });
  },
};

function boxOfRods({ rods }: PlacedBase) {
  const most = greatestOf(
    rods.map(({ rod }) => rod.group.rod.diameter),
    0,
  );
  return growExtent(extentOfPoints(rods.map(({ plan }) => plan)), most / 2 / NM_PER_MM);
}

interface RodPair {
  readonly first: string;
  readonly second: string;
  readonly twice: number;
}

/** Every rod with every other: no pair is kept but the best. */
function nearestRods(a: PlacedBase, b: PlacedBase): RodPair {
  let [first, second, least] = ["", "", Number.MAX_SAFE_INTEGER];
  for (const one of a.rods)
    for (const other of b.rods) {
      const twice = twiceClearOfRods(one.plan, one.rod.group.rod.diameter, other.plan, other.rod.group.rod.diameter);
      if (twice < least) [first, second, least] = [one.rod.tag, other.rod.tag, twice];
    }
  return { first, second, twice: least };
}

function twiceClearOfRods(p: Point, d: number, q: Point, e: number): number {
  return twiceDistanceBetweenPoints(p, q) - d - e;
}
