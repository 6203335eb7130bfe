/** What making a hole does to it, by the shop's own figures or by ISO 9013; all doubled lengths. */
import type { Missing, Shop } from "../job/model/job.js";
import { missing } from "../job/model/job.js";
import { findIso9013Deviation } from "../standards/index.js";
import { taperOf } from "../template/cutting.js";
import type { CheckContext } from "./model.js";
import type { RodHole } from "./rods.js";
import type { Words } from "./words.js";

/**
 * What a hole loses on its diameter when it is made: the part that is known, which is all of it where `lack` is null.
 * ISO 9013 limits parts, not holes (its limit deviations are for cuts of 350 mm and more, from memory): its figures are the
 * shop's choice, and the edition says so.
 */
export interface MakingLoss {
  readonly twice: number;
  readonly edition: string;
  readonly text: (say: Words) => string;
  readonly lack: Missing | null;
}

/** Deviation and taper of a cut rod hole; a drilled one has the shop's own deviation of drilled holes and no taper. */
export function makingLoss({ job, plate }: CheckContext, { hole, made }: RodHole): MakingLoss {
  const drilled = made === "drill" || plate.material === "plywood" || job.shop.process === "drill";
  return drilled ? drillingLoss(job.shop) : cuttingLoss(job.shop, plate.thickness, hole);
}

/** A shop that drills all its holes may give a taper of its own for them. */
function drillingLoss({ drilled, process, taper }: Shop): MakingLoss {
  const tapered = process === "drill" && taper.kind === "own" ? 2 * taper.value : 0;
  const taperText = (say: Words) => (tapered === 0 ? "" : ` - ${say.twice(tapered)} taper (shop)`);
  if (drilled.kind === "given") {
    const twice = 2 * drilled.value;
    const text = (say: Words) => ` - ${say.twice(twice)} deviation (shop, drilled)${taperText(say)}`;
    return { twice: twice + tapered, edition: "shop", text, lack: null };
  }
  return { twice: tapered, edition: "shop", text: taperText, lack: drilled };
}

function cuttingLoss(shop: Shop, thickness: RodHole["hole"], hole: RodHole["hole"]): MakingLoss {
  const taper = taperOf(shop, thickness);
  const taperText = (say: Words) => ` - ${say.twice(taper.twice)} taper (${taper.from})`;
  const { deviation } = shop;
  if (deviation.kind === "own") {
    const twice = 2 * deviation.value;
    const text = (say: Words) => ` - ${say.twice(twice)} deviation (shop)${taperText(say)}`;
    return { twice: twice + taper.twice, edition: "shop", text, lack: null };
  }
  const edition = "shop, after ISO 9013:2017";
  const found = findIso9013Deviation(deviation.class, thickness, hole);
  if (!found.found) {
    const what = `ISO 9013 class ${deviation.class} has no deviation for this hole in this thickness`;
    const why = `${what}; nearest: ${found.nearest.join(", ")}`;
    return { twice: taper.twice, edition, text: taperText, lack: missing("cut.deviation of the shop file", why) };
  }
  const twice = 2 * found.row.plusMinus;
  const text = (say: Words) =>
    ` - ${say.twice(twice)} deviation (shop's choice: ISO 9013 class ${deviation.class})${taperText(say)}`;
  return { twice: twice + taper.twice, edition, text, lack: null };
}
