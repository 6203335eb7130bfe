/** Keys of the `rodShop` block about bars in stock, and the `rates` block of a shop file. */
import { countLeaf, keys, leaf, lengthLeaf, rows, textLeaf } from "../../leaves/leaves.js";
import type { Unit } from "../../units/index.js";
import type { RateName } from "../model/rates.js";

/** Bars in stock and how they are cut. */
export function rodStockShape(unit: Unit) {
  const list = rows(lengthLeaf(unit, "above zero", "A length of bar."), "a list of lengths of bar").min(1, {
    error: () => "a list of one length of bar or more",
  });
  const own = keys(
    { diameter: lengthLeaf(unit, "above zero", "Diameter of the rod."), lengths: list },
    "Lengths of bar for rods of one diameter.",
  );
  const spare = (what: string) =>
    countLeaf(
      0,
      100,
      `Spare ${what} for each hundred, rounded up to whole pieces of each kind; omitted: none.`,
    ).optional();
  return {
    stock: list.describe("Lengths of bar in stock; omitted: bars are not planned, and the list says so.").optional(),
    stockOf: rows(own, "a list of groups of keys: diameter, lengths")
      .describe("Lengths of bar for rods of one diameter, instead of `stock`.")
      .optional(),
    kerf: lengthLeaf(unit, "zero or above", "Lost at every saw cut; a shear loses nothing.").optional(),
    endTrim: lengthLeaf(
      unit,
      "zero or above",
      "Taken off each bar before its first piece, its cut included; omitted: nothing.",
    ).optional(),
    leastRemnant: lengthLeaf(unit, "zero or above", "Shortest rest of a bar that is kept.").optional(),
    spareNuts: spare("nuts"),
    spareWashers: spare("washers"),
  };
}

const RATE_WORDS: Readonly<Record<RateName, string>> = {
  perLot: "Setting up, for each lot of rods.",
  perBarWeight: "Bar as it is cut, each lb or kg.",
  perCut: "Each cut of a bar.",
  perThreadEnd: "Each threaded end; a rod that is threaded in full counts as one.",
  perBend: "Each bend.",
  perSwedge: "Each swedged end.",
  perWeld: "Each welded or tack welded place of a rod.",
  perGalvanizedWeight: "Rods that are galvanized, each lb or kg.",
  perNut: "Each nut.",
  perWasher: "Each washer.",
  perPlateWasher: "Each plate washer.",
  perEndPlate: "Each plate at the lower end of a rod.",
  perTemplate: "Setting up, for each template or piece of one that differs.",
  perPlateWeight: "Plate of the templates, by its net area, each lb or kg.",
  perPierce: "Each pierce.",
  perLengthCut: "Each ft or m that is cut.",
  perLengthScribed: "Each ft or m that is scribed.",
  perHole: "Each hole of a template.",
  perDelivery: "Each delivery, or the whole where the job names none.",
};

/** What the shop asks for its work. */
export function ratesBlock() {
  const rate = (name: RateName) => amountLeaf(RATE_WORDS[name]).optional();
  return keys(
    {
      currency: textLeaf("Name of the currency, as the shop writes it.", 12),
      decimals: countLeaf(0, 3, "Decimals of a sum; omitted: 2.").optional(),
      perLot: rate("perLot"),
      perBarWeight: rate("perBarWeight"),
      perCut: rate("perCut"),
      perThreadEnd: rate("perThreadEnd"),
      perBend: rate("perBend"),
      perSwedge: rate("perSwedge"),
      perWeld: rate("perWeld"),
      perGalvanizedWeight: rate("perGalvanizedWeight"),
      perNut: rate("perNut"),
      perWasher: rate("perWasher"),
      perPlateWasher: rate("perPlateWasher"),
      perEndPlate: rate("perEndPlate"),
      perTemplate: rate("perTemplate"),
      perPlateWeight: rate("perPlateWeight"),
      perPierce: rate("perPierce"),
      perLengthCut: rate("perLengthCut"),
      perLengthScribed: rate("perLengthScribed"),
      perHole: rate("perHole"),
      perDelivery: rate("perDelivery"),
    },
    "Rates of the shop; one that is left out is named in the quote and not guessed. Weights are in lb or kg and lengths in ft or m, by the units of the shop file.",
  );
}

/** In ten-thousandths. */
function amountLeaf(description: string) {
  const allowed = "an amount of zero or above with at most 4 decimals, as 0.85";
  return leaf<number>(allowed, description, (text) => {
    const parts = /^(\d{1,9})(?:\.(\d{1,4}))?$/.exec(text.trim());
    if (parts === null) return { ok: false, message: `"${text}" is not ${allowed}` };
    return { ok: true, value: Number(parts[1]) * 10_000 + Number((parts[2] ?? "").padEnd(4, "0")) };
  });
}
