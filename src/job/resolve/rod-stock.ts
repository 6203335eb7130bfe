/** Bars in stock and rates of a shop file -> what of them is known. */
import type { Length, Unit } from "../../units/index.js";
import { nanometres } from "../../units/length.js";
import { RATE_NAMES, type RateName, type Rates } from "../model/rates.js";
import type { RodStock } from "../model/rod-stock.js";
import { given, type Input, missing } from "../model/values.js";

/** What the block says of the stock, as its schema has read it. */
export interface RodStockDocument {
  readonly stock?: readonly Length[] | undefined;
  readonly stockOf?: readonly { readonly diameter: Length; readonly lengths: readonly Length[] }[] | undefined;
  readonly kerf?: Length | undefined;
  readonly endTrim?: Length | undefined;
  readonly leastRemnant?: Length | undefined;
  readonly spareNuts?: number | undefined;
  readonly spareWashers?: number | undefined;
}

/** `from`: the shop's name. */
export function makeRodStock(document: RodStockDocument = {}, from: string): RodStock {
  const own = <T>(value: T | undefined, key: string, what: string): Input<T> =>
    value === undefined
      ? missing(`rodShop.${key} of the shop file`, `the shop file gives no ${what}`)
      : given(value, from);
  const { endTrim } = document;
  return {
    lengths: own(document.stock, "stock", "lengths of bar in stock"),
    byDiameter: (document.stockOf ?? []).map(({ diameter, lengths }) => ({ diameter, lengths: given(lengths, from) })),
    kerf: own(document.kerf, "kerf", "width of a saw cut"),
    endTrim: endTrim === undefined ? given(nanometres(0), "default: nothing is trimmed") : given(endTrim, from),
    leastRemnant: own(document.leastRemnant, "leastRemnant", "length from which a rest is kept"),
    spareNuts: own(document.spareNuts, "spareNuts", "spare nuts"),
    spareWashers: own(document.spareWashers, "spareWashers", "spare washers"),
  };
}

/** The block as its schema has read it. */
export type RatesDocument = { readonly currency: string; readonly decimals?: number | undefined } & {
  readonly [Name in RateName]?: number | undefined;
};

const DECIMALS = 2;

/** `unit`: that of the shop file. */
export function makeRates(document: RatesDocument | undefined, from: string, unit: Unit): Rates {
  const rate = (name: RateName): Input<number> => {
    const value = document?.[name];
    return value === undefined ? missing(`rates.${name}`, `the shop file sets no rate ${name}`) : given(value, from);
  };
  const currency = document?.currency;
  const of = Object.fromEntries(RATE_NAMES.map((name) => [name, rate(name)])) as Record<RateName, Input<number>>;
  return {
    currency:
      currency === undefined ? missing("rates.currency", "the shop file names no currency") : given(currency, from),
    decimals: document?.decimals ?? DECIMALS,
    ...{ unit, of },
  };
}
