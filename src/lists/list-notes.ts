/** What lists could not say, and the keys that would say it. */
import type { RodStock } from "../job/model/rod-stock.js";
import type { Missing } from "../job/model/values.js";
import type { RodDetail } from "../rods/detail/model.js";
import type { RodLot } from "../rods/lots.js";
import { groupBy } from "../units/group-by.js";
import { formatWithUnit, type Unit } from "../units/index.js";
import type { BarGroup } from "./bar-groups.js";
import type { ListTable } from "./model.js";

type Told = { readonly [Name in keyof RodDetail]?: string };

/** Parts of a rod that lists show, by name. */
const TOLD: Told = {
  ...{ kind: "kind", grade: "grade", finish: "finish", projection: "projection", embedment: "embedment" },
  ...{
    topThread: "thread at the top",
    bottomThread: "thread at the lower end",
    hook: "hook",
    overall: "overall length",
  },
  ...{
    cut: "cut length",
    bar: "bar diameter",
    separation: "how the bar is cut",
    kilograms: "weight",
    threading: "threading",
  },
};

/** What the notes are made of. */
export interface NotesOf {
  readonly lots: readonly RodLot[];
  readonly groups: readonly BarGroup[];
  readonly stock: RodStock;
  readonly unit: Unit;
}

/**
 * A row for each thing that lists call not given, with every lot that lacks it: what is missing is said once. And a row for rods that
 * no bar in stock is long enough for.
 */
export function notesList({ lots, groups, stock, unit }: NotesOf): ListTable {
  const lacking = lots.flatMap((lot) => missingOf(lot.detail).map(({ what, lacks }) => ({ lot, what, lacks })));
  const alike = groupBy(lacking, ({ lacks }) => JSON.stringify([lacks.why, lacks.key]));
  const ofLots = [...alike.values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const without = [...new Set(own.map(({ lot }) => lot))];
    const what = [...new Set(own.map((each) => each.what))].join(", ");
    return [[marksOf(without, lots.length), basesOf(without), what, first.lacks.why, first.lacks.key]];
  });
  const ofShop = (["lengths", "kerf", "leastRemnant"] as const).flatMap((name) => {
    const input = stock[name];
    return input.kind === "missing" ? [["shop", "", "stock", input.why, input.key]] : [];
  });
  return {
    key: "not-given",
    name: "Not given",
    title: "NOT GIVEN",
    columns: [
      { heading: "lots", width: 16, isWrapped: true },
      { heading: "bases", width: 24, isWrapped: true },
      { heading: "what", width: 26, isWrapped: true },
      { heading: "why", width: 60, isWrapped: true },
      { heading: "key that gives it", width: 34, isWrapped: true },
    ],
    rows: [...ofLots, ...tooLong(lots, groups, unit), ...ofShop],
    totals: [],
    views: [
      {
        title: "NOT GIVEN",
        columns: [
          ["lots", "LOTS"],
          ["bases", "BASES"],
          ["what", "WHAT"],
          ["why", "WHY"],
          ["key that gives it", "KEY THAT GIVES IT"],
        ],
      },
    ],
    remarks: [
      "Nothing is guessed: a cell that says not given waits for the key beside it, in the job file or the shop file.",
    ],
  };
}

function tooLong(lots: readonly RodLot[], groups: readonly BarGroup[], unit: Unit): readonly (readonly string[])[] {
  return groups.flatMap(({ plan }) =>
    (plan?.tooLong ?? []).map(({ name, length, quantity }) => {
      const why = `${quantity} x ${formatWithUnit(length, unit)}, longer than any bar in stock gives: order bar for it`;
      return [name, basesOf(lots.filter(({ mark }) => mark === name)), "bar", why, "rodShop.stock"];
    }),
  );
}

/** `all`, or their marks. */
function marksOf(lots: readonly RodLot[], count: number): string {
  return lots.length === count && count > 1 ? "all" : lots.map(({ mark }) => mark).join(" ");
}

function basesOf(lots: readonly RodLot[]): string {
  return [...new Set(lots.flatMap(({ uses }) => uses.map(({ base }) => base)))].join(" ");
}

function missingOf(detail: RodDetail): readonly { readonly what: string; readonly lacks: Missing }[] {
  const own = Object.entries(TOLD).flatMap(([name, what]) => {
    const value: unknown = detail[name as keyof RodDetail];
    return isMissing(value) ? [{ what, lacks: value }] : [];
  });
  const shown = new Set(own.map(({ lacks }) => lacks.key));
  const open = detail.open.filter(({ key }) => !shown.has(key)).map((lacks) => ({ what: "hardware", lacks }));
  return [...own, ...open];
}

function isMissing(value: unknown): value is Missing {
  return typeof value === "object" && value !== null && "kind" in value && value.kind === "missing" && "key" in value;
}
