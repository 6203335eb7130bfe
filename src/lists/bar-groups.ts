/** Lots by the bar that they are cut from, and how its bars are cut. */
import { type RodStock, stockLengths } from "../job/model/rod-stock.js";
import type { Input, Missing } from "../job/model/values.js";
import { given } from "../job/model/values.js";
import { cutBars } from "../rods/bars/cut-bars.js";
import type { BarPlan, BarStock } from "../rods/bars/model.js";
import { orderedGrade } from "../rods/index.js";
import type { RodLot } from "../rods/lots.js";
import type { ThreadSeries } from "../standards/index.js";
import { groupBy } from "../units/group-by.js";
import type { Length } from "../units/index.js";
import { nanometres } from "../units/length.js";
import { NOT_GIVEN, textCell } from "./cells.js";

/** Lots whose bars are alike. */
export interface BarGroup {
  readonly lots: readonly RodLot[];
  readonly size: string;
  readonly thread: ThreadSeries;
  readonly bar: Input<Length>;
  readonly grade: string;
  readonly separation: Input<"sheared" | "sawn">;
  /** Saw cut that was reckoned with; zero of bar that is sheared. */
  readonly stock: Input<BarStock>;
  /** null where stock or cut lengths are not known, all of them. */
  readonly plan: BarPlan | null;
  /** Lots that are not in the plan, and what would put them there. */
  readonly left: readonly { readonly lot: RodLot; readonly lacks: Missing }[];
}

/** In the order of the lots. Bars are alike that have the same diameter and grade. */
export function barGroups(lots: readonly RodLot[], stock: RodStock): readonly BarGroup[] {
  const groups = groupBy(lots, ({ detail }) =>
    JSON.stringify([
      detail.bar.kind === "given" ? detail.bar.value : detail.size,
      textCell(orderedGrade(detail)),
      detail.size,
    ]),
  );
  return [...groups.values()].flatMap((own) => barGroup(own, stock));
}

function barGroup(lots: readonly RodLot[], shop: RodStock): readonly BarGroup[] {
  const [first] = lots;
  if (first === undefined) return [];
  const { bar, separation, size, thread, diameter } = first.detail;
  const grade = orderedGrade(first.detail);
  const stock = barStock(shop, diameter, separation);
  const left = lots.flatMap((lot) => (lot.detail.cut.kind === "missing" ? [{ lot, lacks: lot.detail.cut }] : []));
  const pieces = lots.flatMap(({ mark, detail: { cut }, total }) =>
    cut.kind === "given" ? [{ name: mark, length: cut.value.value, quantity: total }] : [],
  );
  return [
    {
      ...{
        lots,
        size,
        thread,
        bar,
        grade: grade.kind === "given" ? grade.value : `grade ${NOT_GIVEN}`,
        separation,
        stock,
        left,
      },
      plan: stock.kind === "given" && pieces.length > 0 ? cutBars(stock.value, pieces) : null,
    },
  ];
}

/** Of bar whose way of cutting is not known the saw cut is reckoned: what fits then fits a shear too. */
function barStock(shop: RodStock, diameter: Length, separation: BarGroup["separation"]): Input<BarStock> {
  const lengths = stockLengths(shop, diameter);
  if (lengths.kind === "missing") return lengths;
  const isSheared = separation.kind === "given" && separation.value === "sheared";
  if (!isSheared && shop.kerf.kind === "missing") return shop.kerf;
  const kerf = isSheared || shop.kerf.kind === "missing" ? nanometres(0) : shop.kerf.value;
  return given({ lengths: lengths.value, kerf, endTrim: shop.endTrim.value }, lengths.from);
}
