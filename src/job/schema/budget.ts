/** The budget as a schema: how far rods may be off, and how that is reckoned. */
import type { z } from "zod";
import { countLeaf, keys, leaf, lengthLeaf, wordLeaf } from "../../leaves/leaves.js";
import type { Unit } from "../../units/index.js";
import { parseAngle } from "../../units/index.js";

/** The `budget` key of a job whose bare numbers are in `unit`. */
export function budgetBlock(unit: Unit) {
  const reach = (what: string) => lengthLeaf(unit, "zero or above", what).optional();
  const lean = keys(
    {
      by: lengthLeaf(unit, "zero or above", "Out of plumb by this much"),
      per: lengthLeaf(unit, "above zero", "over this length."),
    },
    "Lean of a rod, counted over the thickness of the base plate.",
  );
  return keys(
    {
      rods: wordLeaf(
        ["edition", "components"],
        "edition: the as-placed tolerance. components: setting, template play, cutting and lean, which make it up. Omitted: edition.",
      ).optional(),
      placing: reach("As-placed tolerance of a rod, instead of the placing edition's."),
      setting: reach("With components: how far the template is set off its place, at a rod."),
      cutting: reach(
        "With components: how far a template hole is cut off its place; omitted: half of what the shop's cutting lets a distance be off.",
      ),
      lean: lean.optional(),
      baseHoles: reach("How far a hole of the base plate is off its place; omitted: not in the budget."),
      zone: wordLeaf(
        ["round", "square"],
        "Zone of placing or setting: a radius, or along x and y; omitted: round.",
      ).optional(),
      spread: wordLeaf(
        ["uniform", "normal"],
        "Errors even over their zones, or normal and cut off at the edges; omitted: uniform.",
      ).optional(),
      sigmas: numberLeaf(
        0.5,
        6,
        "With normal: deviations from the place to the edge of the zone; omitted: 3.",
      ).optional(),
      common: shareLeaf("Share of placing or setting that moves the whole group alike; omitted: 0.", true).optional(),
      plate: wordLeaf(
        ["free", "shifted", "held"],
        "What the target is for: a plate that may shift and turn, only shift, or is fixed in place; omitted: free.",
      ).optional(),
      turn: turnLeaf("How far the plate may turn either way, in degrees; omitted: 0.05 rad, 2.86 degrees.").optional(),
      target: shareLeaf("Probability wanted that the plate drops on, as 99 %; omitted: none.", false).optional(),
      seed: countLeaf(0, 4_294_967_295, "Seed of the trials; omitted: 1.").optional(),
      standardError: numberLeaf(
        0.0002,
        0.1,
        "Standard error of the probability at which the trials end; omitted: 0.002.",
      ).optional(),
    },
    "Budget of position errors against the base plate's clearance.",
  );
}

/** `budget` as written. */
export type BudgetDocument = z.output<ReturnType<typeof budgetBlock>>;

function numberLeaf(least: number, most: number, description: string) {
  const allowed = `a number from ${least} to ${most}`;
  return leaf(allowed, description, (text) => {
    const value = /^\d{1,4}(\.\d{1,8})?$/.test(text.trim()) ? Number(text) : Number.NaN;
    return value >= least && value <= most
      ? { ok: true, value }
      : { ok: false, message: `"${text}" is not ${allowed}` };
  });
}

/** `99 %`, `99.5%` or `0.99`. `whole`: 0 and 1 are allowed too. */
function shareLeaf(description: string, whole: boolean) {
  const allowed = `a share ${whole ? "from 0 to 1" : "between 0 and 1"}, as ${whole ? "0.5 or 50 %" : "0.99 or 99 %"}`;
  return leaf(allowed, description, (text) => {
    const parts = /^(\d{1,3}(?:\.\d{1,6})?|\.\d{1,6}) ?(%?)$/.exec(text.trim());
    const value = parts === null ? Number.NaN : Number(parts[1]) / (parts[2] === "%" ? 100 : 1);
    const inside = whole ? value >= 0 && value <= 1 : value > 0 && value < 1;
    return inside ? { ok: true, value } : { ok: false, message: `"${text}" is not ${allowed}` };
  });
}

function turnLeaf(description: string) {
  const allowed = "degrees from 0 to 10";
  return leaf(allowed, description, (text) => {
    const reading = parseAngle(text);
    if (!reading.ok) return reading;
    return reading.value >= 0 && reading.value <= 10 ? reading : { ok: false, message: `"${text}" is not ${allowed}` };
  });
}
