/** How far from each hole's centre the plate must go on: what sizes outlines and openings. Doubled lengths, nothing is halved. */
import type { Point } from "../geometry/index.js";
import { acrossCorners, pointAt } from "../geometry/index.js";
import type { Base, Input, Job, Nut, RodGroup, Shop, TemplateSpec, Washer } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import type { Length } from "../units/length.js";

/** A hole's centre and twice the least distance from it to an edge of the plate, in nanometres. */
export interface Need {
  readonly center: Point;
  readonly twice: number;
}

/**
 * Width of the circle that nut and washer on the template sweep when they turn: the nut across corners or the washer, a
 * square one corner to corner, whichever is wider. 0 where neither is known.
 */
function seatAcross(nut: Input<Nut>, washer: Input<Washer>): number {
  const acrossNut = nut.kind === "given" ? nut.value.acrossCorners : 0;
  return Math.max(acrossNut, washer.kind === "given" ? sweptAcross(washer.value) : 0);
}

/** Width of the circle that a washer sweeps when it turns. */
export function sweptAcross({ shape, size }: Pick<Washer, "shape" | "size">): Length {
  return shape === "square" ? acrossCorners(size) : size;
}

/** Width of the circle that a rod's seat may reach when the rod stands off by its radial play: seat + play. */
export function seatReach({ rod, hole }: RodGroup, shop: Shop): number {
  const across = seatAcross(rod.nut, shop.templateWasher);
  return across === 0 ? 0 : across + Math.max(0, hole.value - rod.diameter);
}

/** The needs of every rod, nail and grout hole where `clear` of material must be left beside each. */
export function needsOf(job: Job, base: Base, rods: readonly PlacedRod[], clear: Length): readonly Need[] {
  const large = rods.map(({ center, group }) => ({
    center,
    twice: Math.max(group.hole.value + 2 * clear, seatReach(group, job.shop)),
  }));
  const small = [...base.template.nailHoles, ...base.template.groutHoles].map(({ at, diameter }) => ({
    center: pointAt(at.x, at.y),
    twice: diameter + 2 * clear,
  }));
  return [...large, ...small];
}

/** Least material at an edge: the shop's edge rule; in steel never less than what its process can leave. */
export function leastEdge({ shop }: Job, { material, thickness }: TemplateSpec): Length {
  const { perThickness, least } = shop.smallestWeb;
  if (material === "plywood") return shop.edge.value;
  return Math.max(shop.edge.value, least, Math.ceil(perThickness * thickness)) as Length;
}
