/** What cutting does to a hole, by the shop's own figures or by ISO 9013; all doubled lengths. */
import type { Shop } from "../job/model/job.js";
import { findIso9013Deviation } from "../standards/index.js";
import type { Effect } from "../template/cutting.js";
import { taperOf } from "../template/cutting.js";
import type { Length } from "../units/index.js";
import type { CheckContext } from "./model.js";
import type { RodHole } from "./rods.js";
import type { Words } from "./words.js";

/** What a hole loses on its diameter when it is cut, or the table that does not say. */
export type CutLoss =
  | { readonly known: true; readonly twice: number; readonly edition: string; readonly text: (say: Words) => string }
  | { readonly known: false; readonly what: string; readonly nearest: readonly string[] };

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
