/** Nuts and washers by standard and rod diameter. */
import type { Length } from "../units/length.js";
import { heavyHexNuts } from "./asme-b18-2-2/heavy-hex-nuts.js";
import { hexNuts } from "./asme-b18-2-2/hex-nuts.js";
import { typeBNarrowWashers, typeBRegularWashers, typeBWideWashers } from "./asme-b18-21-1/type-b-washers.js";
import { f436Washers } from "./astm-f436/washers.js";
import { f844NarrowWashers, f844Washers, f844WideWashers } from "./astm-f844/washers.js";
import { iso4032Nuts } from "./iso-4032/hex-nuts.js";
import { iso4034Nuts } from "./iso-4034/hex-nuts.js";
import { iso7089Washers } from "./iso-7089/washers.js";
import { iso7090Washers } from "./iso-7090/washers.js";
import { iso7091Washers } from "./iso-7091/washers.js";
import { iso7093Washers } from "./iso-7093/washers.js";
import type { Lookup, NutRow, NutStandard, WasherRow, WasherStandard } from "./model.js";
import { findSized, indexByDiameter, type SizedIndex } from "./sized-index.js";

const NUTS: Readonly<Record<NutStandard, SizedIndex<NutRow>>> = {
  "ASME B18.2.2 hex": indexByDiameter(hexNuts),
  "ASME B18.2.2 heavy hex": indexByDiameter(heavyHexNuts),
  "ISO 4032": indexByDiameter(iso4032Nuts),
  "ISO 4034": indexByDiameter(iso4034Nuts),
};

const WASHERS: Readonly<Record<WasherStandard, SizedIndex<WasherRow>>> = {
  "ASTM F436": indexByDiameter(f436Washers),
  "ASTM F844": indexByDiameter(f844Washers),
  "ASTM F844 narrow": indexByDiameter(f844NarrowWashers),
  "ASTM F844 wide": indexByDiameter(f844WideWashers),
  "ASME B18.21.1 Type B narrow": indexByDiameter(typeBNarrowWashers),
  "ASME B18.21.1 Type B regular": indexByDiameter(typeBRegularWashers),
  "ASME B18.21.1 Type B wide": indexByDiameter(typeBWideWashers),
  "ISO 7089": indexByDiameter(iso7089Washers),
  "ISO 7091": indexByDiameter(iso7091Washers),
  "ISO 7093": indexByDiameter(iso7093Washers),
  "ISO 7090 / DIN 125-B": indexByDiameter(iso7090Washers),
};

/** Standards that nuts are tabulated for. */
export const nutStandards = Object.keys(NUTS) as readonly NutStandard[];

/** Standards that washers are tabulated for. */
export const washerStandards = Object.keys(WASHERS) as readonly WasherStandard[];

/** A nut of a standard, by rod diameter. */
export function findNut(standard: NutStandard, diameter: Length): Lookup<NutRow> {
  return findSized(NUTS[standard], diameter);
}

/** The series that a standard has two of, by the standard without a series. */
export const washerSeries: Partial<
  Readonly<Record<WasherStandard, { readonly narrow: WasherStandard; readonly wide: WasherStandard }>>
> = { "ASTM F844": { narrow: "ASTM F844 narrow", wide: "ASTM F844 wide" } };

/**
 * A washer of a standard, by rod diameter. ASTM F844 without further word is the narrow series, as it is furnished; a wide
 * one may come all the same (`washerSeries`), since Design Guide 1 speaks of F844 as USS Standard.
 */
export function findWasher(standard: WasherStandard, diameter: Length): Lookup<WasherRow> {
  return findSized(WASHERS[standard], diameter);
}
