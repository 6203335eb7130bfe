/** Growth of a galvanized rod by its zinc, as is typical of bolts coated to ASTM F2329. */
import { inches, type Length } from "../../units/length.js";
import type { Sourced } from "../model.js";

/** A span of lengths. */
export interface ZincRow extends Sourced {
  readonly specification: string;
  readonly item: string;
  readonly least: Length;
  readonly greatest: Length;
}

/** Growth of the diameter, over thread flats and body: least and greatest. */
export const zincGrowth: ZincRow = {
  specification: "typical bolts",
  item: "diameter growth over thread flats/body",
  least: inches(0.0036),
  greatest: inches(0.007),
  source: "secondary copy (2 x thickness)",
  confidence: "medium-high",
  note: "",
};
