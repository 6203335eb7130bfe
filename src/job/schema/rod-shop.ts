/** The `rodShop` block of a shop file: how rods are made. */

import { keys, leaf, lengthLeaf, ratioLeaf } from "../../leaves/leaves.js";
import type { Unit } from "../../units/index.js";
import { POUND_IN_KG } from "../../units/weight.js";
import { rodStockShape } from "./rod-stock.js";

/** The block, its bare numbers in `unit`. */
export function rodShopBlock(unit: Unit) {
  return keys({ ...makingShape(unit), ...rodStockShape(unit) }, "How rods are made, and from what stock.");
}

/** What saw, threader, bender and plating barrel take. */
function makingShape(unit: Unit) {
  const upTo = (what: string) => lengthLeaf(unit, "above zero", what).optional();
  return {
    shearedUpTo: upTo("Thickest bar that is sheared, thicker is sawn; omitted: 1-1/4 in, 32 mm."),
    rolledUpTo: upTo("Largest rolled thread, on bar of the pitch diameter; omitted: 1-1/2 in, 39 mm."),
    cutUpTo: upTo("Largest cut thread, on bar of the full size; omitted: 4 in, 100 mm."),
    bendRadius: ratioLeaf("Inside radius of a bend as a multiple of the rod's diameter; omitted: 1.").optional(),
    belowNut: lengthLeaf(
      unit,
      "zero or above",
      "Rod below the nut at its lower end, where the length is worked out; omitted: 1/2 in, 12 mm.",
    ).optional(),
    lengthStep: upTo("Lengths that are worked out are rounded up to this; omitted: 1/8 in, 1 mm."),
    mechanicalLongest: upTo("Longest rod that is galvanized mechanically; omitted: 9 in, 230 mm."),
    mechanicalHeaviest: weightLeaf("Heaviest rod that is galvanized mechanically; omitted: 1 lb, 0.5 kg.").optional(),
  };
}

/** A weight with its unit, in kilograms. */
export function weightLeaf(description: string) {
  const allowed = "a weight, as 2 lb or 1 kg";
  return leaf<number>(allowed, description, (text) => {
    const parts = /^(\d{1,6}(?:\.\d{1,4})?) ?(lb|kg)$/.exec(text.trim());
    const value = Number(parts?.[1] ?? 0);
    if (value <= 0) return { ok: false, message: `"${text}" is not ${allowed}` };
    return { ok: true, value: parts?.[2] === "lb" ? value * POUND_IN_KG : value };
  });
}
