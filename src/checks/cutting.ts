/** What cutting does to a hole, by the shop's own figures or by ISO 9013; all doubled lengths. */
import type { Shop } from "../job/model.js";
import { findIso9013Deviation, iso9013Perpendicularity } from "../standards/index.js";
import type { Length } from "../units/index.js";
import { roundSymmetric } from "../units/index.js";
import type { CheckContext } from "./model.js";
import type { RodHole } from "./rods.js";
import type { Words } from "./words.js";

/** Twice a length, with where it comes from. */
export interface Effect {
  readonly twice: number;
  readonly from: string;
}

/** What a hole loses on its diameter when it is cut, or the table that does not say. */
export type CutLoss =
  | { readonly known: true; readonly twice: number; readonly edition: string; readonly text: (say: Words) => string }
  | { readonly known: false; readonly what: string; readonly nearest: readonly string[] };

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

/** Deviation and taper of a rod hole; none where it is drilled. */
export function cutLoss({ job, plate }: CheckContext, { hole, made }: RodHole): CutLoss {
  if (made === "drill" || plate.material === "plywood" || job.shop.process === "drill") {
    return { known: true, twice: 0, edition: "shop", text: () => ", drilled: no cutting deviation or taper taken," };
  }
  const deviation = deviationOf(job.shop, plate.thickness, hole);
  if (!deviation.known) return deviation;
  const taper = taperOf(job.shop, plate.thickness);
  const text = (say: Words) =>
    ` - ${say.twice(deviation.twice)} deviation (${deviation.from}) - ${say.twice(taper.twice)} taper (${taper.from})`;
  const edition = job.shop.deviation.kind === "iso9013" ? "ISO 9013:2017" : "shop";
  return { known: true, twice: deviation.twice + taper.twice, edition, text };
}

type Deviation = ({ readonly known: true } & Effect) | Extract<CutLoss, { readonly known: false }>;

function deviationOf({ deviation }: Shop, thickness: Length, hole: Length): Deviation {
  if (deviation.kind === "own") return { known: true, twice: 2 * deviation.value, from: "shop" };
  const found = findIso9013Deviation(deviation.class, thickness, hole);
  return found.found
    ? { known: true, twice: 2 * found.row.plusMinus, from: `ISO 9013 class ${deviation.class}` }
    : {
        known: false,
        what: `ISO 9013 class ${deviation.class} has no deviation for this hole in this thickness`,
        nearest: found.nearest,
      };
}
