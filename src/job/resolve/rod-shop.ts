/** The `rodShop` block of a shop file -> how its rods are made: each value the shop's own, or common practice. */

import type { Length, Unit } from "../../units/index.js";
import { inches, millimetres } from "../../units/length.js";
import { POUND_IN_KG } from "../../units/weight.js";
import type { RodMaking, RodShop } from "../model/rod-shop.js";
import type { Given } from "../model/values.js";
import { given } from "../model/values.js";
import type { ShopDocument } from "../schema/shop.js";
import { makeRodStock } from "./rod-stock.js";

/** What a value is from that no shop file gives. */
export const COMMON_PRACTICE = "common practice";

interface Habits extends Readonly<Record<Exclude<keyof RodMaking, "bendRadius" | "mechanicalHeaviest">, Length>> {
  readonly bendRadius: number;
  readonly mechanicalHeaviest: number;
}

/**
 * Habits of the trade, no publication's: shears take bar to 1-1/4 in; threads are rolled to 1-1/2 in and cut to 4 in; a bend
 * is no tighter inside than the bar is thick; barrels for mechanical plating take small parts (from memory).
 */
const HABITS: Readonly<Record<Unit, Habits>> = {
  in: {
    shearedUpTo: inches(1.25),
    rolledUpTo: inches(1.5),
    cutUpTo: inches(4),
    bendRadius: 1,
    belowNut: inches(0.5),
    lengthStep: inches(0.125),
    mechanicalLongest: inches(9),
    mechanicalHeaviest: POUND_IN_KG,
  },
  mm: {
    shearedUpTo: millimetres(32),
    rolledUpTo: millimetres(39),
    cutUpTo: millimetres(100),
    bendRadius: 1,
    belowNut: millimetres(12),
    lengthStep: millimetres(1),
    mechanicalLongest: millimetres(230),
    mechanicalHeaviest: 0.5,
  },
};

/** `from`: the shop's name, for what it gives itself. */
export function makeRodShop(document: ShopDocument["rodShop"], from: string, unit: Unit): RodShop {
  const habits = HABITS[unit];
  const own = document ?? {};
  const taken = <T>(value: T | undefined, habit: T): Given<T> =>
    value === undefined ? given(habit, COMMON_PRACTICE) : given(value, from);
  return {
    stock: makeRodStock(own, from),
    making: {
      shearedUpTo: taken(own.shearedUpTo, habits.shearedUpTo),
      rolledUpTo: taken(own.rolledUpTo, habits.rolledUpTo),
      cutUpTo: taken(own.cutUpTo, habits.cutUpTo),
      bendRadius: taken(own.bendRadius, habits.bendRadius),
      belowNut: taken(own.belowNut, habits.belowNut),
      lengthStep: taken(own.lengthStep, habits.lengthStep),
      mechanicalLongest: taken(own.mechanicalLongest, habits.mechanicalLongest),
      mechanicalHeaviest: taken(own.mechanicalHeaviest, habits.mechanicalHeaviest),
    },
  };
}
