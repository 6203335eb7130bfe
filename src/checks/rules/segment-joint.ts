import { nearestOnSegment, twiceToLattice } from "../../geometry/index.js";
import type { Hole, Joint, Parted } from "../../template/model.js";
import { seatReach } from "../../template/reach.js";
import { greatestOf } from "../../units/extremes.js";
import { twiceOutside } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, compareCounts, notApplicable } from "../results.js";
import { type RodHole, rodHoles } from "../rods.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Joints of a template in segments run clear of its holes, and splice plates lie clear of nuts, washers and wrenches. */
export const segmentJoint: Rule<"segment-joint"> = {
  id: "segment-joint",
  plainName: "joints clear of holes",
  title:
    "joint between segments to every hole >= the shop's least edge; splice plate to the centre of a rod >= half its nut, washer or wrench + radial play; nothing but the segments is left",
  severity: "stop",
  measured: "the steel between a joint and a hole",
  takes: [...PLATE, "rods.wrenchRoom"],
  clause: ({ job }) => `least edge: ${job.shop.edge.from}`,
  edition: () => "shop",
  check(context) {
    const { parted } = context.plate;
    if (parted === null) return [notApplicable("plate", "the template is one piece")];
    const joints = parted.joints.flatMap((joint) => [...holeRow(context, joint), ...seatRow(context, joint)]);
    return [...joints, wholeRow(parted)];
  },
};

function wholeRow({ loose, segments }: Parted): RuleResult {
  const note = `${segments.length} segments; pieces of the plate that belong to none`;
  return compareCounts("segments", loose, "<=", 0, note, "piece");
}

interface Near {
  readonly tag: string;
  readonly twice: number;
}

function nearest(places: readonly Near[]): Near | null {
  return places.reduce<Near | null>((least, each) => (least === null || each.twice < least.twice ? each : least), null);
}

/** From the joint to the edge of the nearest hole; what an opening is cut by is meant. */
function holeRow({ job, plate }: CheckContext, joint: Joint): readonly RuleResult[] {
  const near = nearest(plate.holes.filter(({ role }) => role !== "opening").map((hole) => toJoint(hole, joint)));
  if (near === null) return [];
  const say = wordsIn(job.unit);
  const note = `${say.full(near.twice)} clear from joint to ${near.tag}; shop asks for ${say.length(job.shop.edge.value)}`;
  return [compare(`J${joint.number}`, near.twice, ">=", 2 * job.shop.edge.value, note)];
}

function toJoint({ tag, center, shape }: Hole, { stretches }: Joint): Near {
  const away = stretches.map(({ from, to }) => nearestOnSegment(center, { from, to, bulge: 0 }).distance);
  const across = shape.kind === "circle" ? shape.diameter : Math.max(shape.width, shape.height);
  const least = away.reduce((a, b) => Math.min(a, b), Infinity);
  return { tag, twice: twiceToLattice(Math.min(least, FARTHEST)) - across };
}

/** A joint without a stretch is nowhere, millimetres. */
const FARTHEST = 1e8;

const SEAT = {
  clause: "splice plate to rod >= seat / 2 + play / 2",
  edition: "geometry",
  measured: "the room between a splice plate and a nut of the template",
};

function seatRow(context: CheckContext, joint: Joint): readonly RuleResult[] {
  const near = nearest(rodHoles(context).flatMap((rod) => toSplices(context, rod, joint)));
  if (near === null) return [];
  const say = wordsIn(context.job.unit);
  const note = `${say.twice(near.twice)} between splice plate and the nut, washer or wrench of ${near.tag}, moved by its radial play`;
  return [compare(`J${joint.number} splice`, near.twice, ">=", 0, note, SEAT)];
}

/** What is left between the outline of a splice plate and what sweeps around a rod. */
function toSplices({ job }: CheckContext, { tag, center, group }: RodHole, { splices }: Joint): readonly Near[] {
  const { wrenchRoom } = group.rod;
  const seat = greatestOf([seatReach(group, job.shop), wrenchRoom.kind === "given" ? wrenchRoom.value : 0]);
  return splices.map(({ outline }) => ({ tag, twice: twiceOutside(center, outline) - seat }));
}
