/** What a process can cut and what its taper takes away, by the shop's own figures or by ISO 9013; all doubled lengths. */
import type { Shop } from "../job/model/job.js";
import { iso9013Perpendicularity } from "../standards/index.js";
import type { Length } from "../units/index.js";
import { roundSymmetric } from "../units/index.js";

/** Twice a length, with where it comes from. */
export interface Effect {
  readonly twice: number;
  readonly from: string;
}

/** Twice the least size of a process: a multiple of the thickness or an absolute size, whichever is more. */
export function leastTwice(rule: { readonly perThickness: number; readonly least: Length }, thickness: Length): number {
  return Math.max(roundSymmetric(2 * rule.perThickness * thickness), 2 * rule.least);
}

/** Loss of diameter on the narrow side: the shop's own, or twice the perpendicularity u = base + factor x thickness. */
export function taperOf({ taper }: Shop, thickness: Length): Effect {
  if (taper.kind === "own") return { twice: 2 * taper.value, from: "shop" };
  const { base, perThickness } = iso9013Perpendicularity(taper.range);
  return { twice: roundSymmetric(4 * (base + perThickness * thickness)), from: `2 u, ISO 9013 range ${taper.range}` };
}

/** True when the process cuts a hole of this size in this thickness: its narrow side governs. */
export function canCut(shop: Shop, thickness: Length, size: Length): boolean {
  if (shop.process === "drill") return false;
  return 2 * size - taperOf(shop, thickness).twice >= leastTwice(shop.smallestHole, thickness);
}
