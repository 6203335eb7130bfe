/** Where the bases of a mark stand, as it is said to whoever sets them: grid lines, which way round, elevations. */
import type { Job } from "../../job/model/job.js";
import type { Placement } from "../../job/model/plan.js";
import { northOf } from "../../template/index.js";
import { groupBy } from "../../units/group-by.js";
import { formatDegrees } from "../../units/index.js";
import { elevationText, planLength } from "../plan/lengths.js";
import { printable } from "../text-metrics.js";

/** Which way a base lies on the plan. alike: all its places are turned by `turn`, degrees counter-clockwise. */
export type Facing =
  | { readonly kind: "alike"; readonly turn: number }
  | { readonly kind: "different" }
  | { readonly kind: "no layout" };

/** How the places of a base are turned. */
export function facingOf({ plan }: Pick<Job, "plan">, mark: string): Facing {
  const own = placesOf({ plan }, mark);
  const [first] = own;
  if (first === undefined) return { kind: "no layout" };
  return northOf(plan, [mark]) === null ? { kind: "different" } : { kind: "alike", turn: first.turn };
}

/** The places of a base, in the order of the job. */
function placesOf({ plan }: Pick<Job, "plan">, mark: string): readonly Placement[] {
  return plan === null ? [] : plan.placements.filter((placement) => placement.mark === mark);
}

/** Sentences in capitals: the grid places, which way +X points where they differ, offsets from the grid, elevations. */
export function placeWords(job: Pick<Job, "plan" | "unit">, mark: string, quantity: number): readonly string[] {
  const own = placesOf(job, mark);
  if (own.length === 0) return [`${quantity} OFF. NO LAYOUT IN THE JOB: ASK THE OFFICE WHERE AND WHICH WAY ROUND`];
  const facing = facingOf(job, mark);
  return [
    ...(facing.kind === "different" ? turnedPlaces(own) : [`${counted(own)} AT GRID ${names(own)}`]),
    ...offsetWords(own, job),
    elevationWords(own, job),
  ];
}

const counted = ({ length }: readonly unknown[]): string => `${length} ${length === 1 ? "PLACE" : "PLACES"}`;

const names = (places: readonly Placement[]): string =>
  places.map(({ lines }) => printable(lines.join("-"))).join(", ");

function turnedPlaces(own: readonly Placement[]): readonly string[] {
  return [...groupBy(own, ({ turn }) => turn)].map(
    ([turn, places]) => `${counted(places)} WITH +X ${directionWords(turn)}: GRID ${names(places)}`,
  );
}

const QUARTERS: Readonly<Record<number, string>> = { 0: "EAST", 90: "NORTH", 180: "WEST", 270: "SOUTH" };

/** Where +X points on the plan. */
export function directionWords(turn: number): string {
  const whole = ((turn % 360) + 360) % 360;
  return QUARTERS[whole] ?? `${formatDegrees(whole, 3)} FROM EAST TOWARDS NORTH`;
}

function offsetWords(own: readonly Placement[], { unit }: Pick<Job, "unit">): readonly string[] {
  const offsets = new Set(own.map(({ offset: { x, y } }) => `${x} ${y}`));
  const [first] = own;
  if (first === undefined || (offsets.size === 1 && offsets.has("0 0"))) return [];
  if (offsets.size > 1) return ["WORKING POINT OFF THE GRID BY DIFFERENT AMOUNTS: SEE THE ANCHOR-ROD PLAN"];
  const { x, y } = first.offset;
  const along = [
    ...(x === 0 ? [] : [`${planLength(Math.abs(x), unit)} ${x > 0 ? "EAST" : "WEST"}`]),
    ...(y === 0 ? [] : [`${planLength(Math.abs(y), unit)} ${y > 0 ? "NORTH" : "SOUTH"}`]),
  ];
  return [`WORKING POINT (W.P.) ${along.join(" AND ")} OF THE GRID CROSSING`];
}

function elevationWords(own: readonly Placement[], { unit }: Pick<Job, "unit">): string {
  const tops = own.map(({ topOfConcrete }) => topOfConcrete);
  const [first] = tops;
  if (first === undefined || tops.every(({ kind }) => kind === "missing"))
    return "T.O.C. ELEVATION NOT GIVEN: ASK THE OFFICE";
  const isAlike = tops.every((top) => top.kind === "given" && first.kind === "given" && top.value === first.value);
  if (!isAlike || first.kind === "missing") return "T.O.C. ELEVATIONS DIFFER: SEE THE ANCHOR-ROD PLAN";
  return `T.O.C. ELEVATION ${elevationText(first.value, unit)}`;
}
