import { greatestOf, leastOf } from "../../units/extremes.js";
import type { Length } from "../../units/index.js";
import type { CheckContext, Rule } from "../model.js";
import { lengthsOf } from "../proportions.js";
import { compare, lacking } from "../results.js";
import { favouredPair, suspectSlip } from "../slips.js";
import { wordsIn } from "../words.js";

/** The template's thickness is one that the shop has in stock. */
export const stockThickness: Rule<"stock-thickness"> = {
  id: "stock-thickness",
  plainName: "stock thickness",
  title: "thickness of the template = one that the shop stocks",
  severity: "stop",
  measured: "the thickness of the template",
  takes: ["template.thickness", "template.material"],
  clause: ({ job, plate }) => {
    const stocked = job.shop.thicknesses[plate.material];
    return stocked.kind === "given" ? `thicknesses: ${stocked.from}` : "thicknesses of the shop file";
  },
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    const { material, thickness } = plate;
    const stocked = job.shop.thicknesses[material];
    if (stocked.kind === "missing") return [lacking("plate", [stocked])];
    const say = wordsIn(job.unit);
    const nearest = nearestTo(thickness, stocked.value);
    const list = `stocked ${material}: ${stocked.value.map(say.length).join(", ")}`;
    if (nearest === thickness) return [compare("plate", 2 * thickness, "=", 2 * nearest, list)];
    const slip = suspectSlip(thickness, rangeOf(stocked.value), job.unit, favouredPair(lengthsOf(context)));
    const hints = [slip?.words, stockedOtherwise(context)].filter((hint) => typeof hint === "string");
    const note = [`${say.length(thickness)} is not stocked`, `nearest ${say.length(nearest)}`, list, ...hints].join(
      "; ",
    );
    return [compare("plate", 2 * thickness, "=", 2 * nearest, note)];
  },
};

/** A template without `material` is of steel. */
function stockedOtherwise({ job, plate }: CheckContext): string | null {
  const other = plate.material === "steel" ? "plywood" : "steel";
  const stocked = job.shop.thicknesses[other];
  if (stocked.kind === "missing" || !stocked.value.includes(plate.thickness)) return null;
  return `stocked as ${other}: is template.material: ${other} meant?`;
}

/** The thinner of two that are as near. */
function nearestTo(thickness: Length, stocked: readonly Length[]): Length {
  const ranked = stocked.toSorted((a, b) => Math.abs(a - thickness) - Math.abs(b - thickness) || a - b);
  return ranked[0] ?? thickness;
}

function rangeOf(stocked: readonly Length[]): { readonly from: number; readonly to: number } {
  return { from: leastOf(stocked), to: greatestOf(stocked) };
}
