/** Rods by lot: what each is, and where it goes. */
import { orderedGrade, sizeWords } from "../rods/index.js";
import type { RodLot } from "../rods/lots.js";
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import {
  heldWords,
  type ListedStops,
  lengthCell,
  lengthInputCell,
  NOT_GIVEN,
  sumKnown,
  textCell,
  thousandths,
  UNIT_WORDS,
  weightEachCell,
  weightSumCell,
  weightTotalCell,
  weightUnit,
} from "./cells.js";
import type { ListCell, ListColumn, ListTable, PageView } from "./model.js";

/** What a list of rods is made of. */
export interface RodListOf {
  readonly lots: readonly RodLot[];
  readonly unit: Unit;
  readonly stops: ListedStops;
}

/** Weight of one rod as it is cut, in thousandths of the unit; null where it is not known. */
export function rodWeight({ detail }: RodLot, unit: Unit): number | null {
  return detail.kilograms.kind === "given" ? thousandths(detail.kilograms.value, unit) : null;
}

/** A row a lot. */
export function rodList({ lots, unit, stops }: RodListOf): ListTable {
  const weights = lots.map((lot) => {
    const each = rodWeight(lot, unit);
    return each === null ? null : each * lot.total;
  });
  const { unknown } = sumKnown(weights);
  const total = columns(unit).map(({ heading }): ListCell => {
    if (heading === "lot") return "TOTAL";
    if (heading === "quantity") return lots.reduce((count, lot) => count + lot.total, 0);
    return heading.startsWith("weight total") ? weightSumCell(weights) : null;
  });
  return {
    key: "rods",
    name: "Rods",
    title: "ANCHOR RODS BY LOT",
    columns: columns(unit),
    rows: lots.map((lot) => rodRow(lot, unit, stops)),
    totals: [total],
    views: views(unit),
    remarks: [
      "Rods that are made alike are one lot, whatever bases they stand on. Weights are of the bar as it is cut.",
      ...embedmentRemarks(lots),
      ...(unknown === 0 ? [] : [`The weight of ${unknown} of ${lots.length} lots is not known and not in the total.`]),
    ],
  };
}

/** The trade has no one meaning of embedment: which is taken here, and for which lots. */
function embedmentRemarks(lots: readonly RodLot[]): readonly string[] {
  const known = lots.filter(({ detail }) => detail.embedment.kind === "given");
  const alike = groupBy(known, ({ detail }) => detail.embedmentTo);
  return [...alike].map(
    ([to, own]) => `Embedment of ${own.map(({ mark }) => mark).join(" ")}: from the top of concrete ${to}.`,
  );
}

/** Two tables, so that no cell of the first is broken for want of room. */
function views(unit: Unit): readonly PageView[] {
  const weight = weightUnit(unit);
  return [
    {
      title: `ANCHOR RODS BY LOT (${UNIT_WORDS[unit]}, ${weight})`,
      columns: [
        ["lot", "LOT"],
        ["size", "SIZE"],
        ["quantity", "QTY"],
        [`projection, ${unit}`, "PROJ."],
        [`embedment, ${unit}`, "EMBED."],
        [`overall, ${unit}`, "OVERALL"],
        [`cut length, ${unit}`, "CUT LENGTH"],
        [`top thread, ${unit}`, "TOP THREAD"],
        [`lower thread, ${unit}`, "LOWER"],
        [`weight each, ${weight}`, "EACH"],
        [`weight total, ${weight}`, "TOTAL"],
      ],
    },
    {
      title: "WHAT THEY ARE AND WHERE THEY GO",
      columns: ["lot", "size", "kind", "grade", "color", "finish", "bases", "status"].map(
        (heading) => [heading, heading] as const,
      ),
    },
  ];
}

function columns(unit: Unit): readonly ListColumn[] {
  const weight = weightUnit(unit);
  const length = (what: string): ListColumn => ({ heading: `${what}, ${unit}`, width: 11, isFigure: true });
  return [
    { heading: "lot", width: 7 },
    { heading: "quantity", width: 9, isFigure: true },
    { heading: "size", width: 8 },
    { heading: "kind", width: 18, isWrapped: true },
    { heading: "grade", width: 14, isWrapped: true },
    { heading: "color", width: 8 },
    { heading: "finish", width: 20, isWrapped: true },
    length("projection"),
    length("embedment"),
    length("overall"),
    length("cut length"),
    length("top thread"),
    length("lower thread"),
    { heading: `weight each, ${weight}`, width: 10, isFigure: true },
    { heading: `weight total, ${weight}`, width: 11, isFigure: true },
    { heading: "bases", width: 26, isWrapped: true },
    { heading: "status", width: 14, isWrapped: true },
  ];
}

function rodRow(lot: RodLot, unit: Unit, stops: ListedStops): readonly ListCell[] {
  const { detail, mark, total, uses } = lot;
  const { overall, cut } = detail;
  const each = rodWeight(lot, unit);
  return [
    mark,
    total,
    sizeWords(detail, unit),
    textCell(detail.kind),
    textCell(orderedGrade(detail)),
    detail.endColor.kind === "given" ? detail.endColor.value : detail.grade.kind === "given" ? "none kept" : NOT_GIVEN,
    textCell(detail.finish),
    lengthInputCell(detail.projection, unit),
    lengthInputCell(detail.embedment, unit),
    overall.kind === "given" ? lengthCell(overall.value.value, unit) : NOT_GIVEN,
    cut.kind === "given" ? lengthCell(cut.value.value, unit) : NOT_GIVEN,
    lengthInputCell(detail.topThread, unit),
    lengthInputCell(detail.bottomThread, unit),
    weightEachCell(each),
    weightTotalCell(each === null ? null : each * total),
    usesWords(lot),
    heldWords(
      uses.map(({ base }) => base),
      stops,
    ),
  ];
}

/** `B1: 24, B2 A: 8`: rods for all bases of each mark; the group where a base has several of the lot. */
function usesWords({ uses }: RodLot): string {
  return uses
    .map(({ base, group, quantity }) => {
      const several = uses.filter((use) => use.base === base).length > 1;
      return `${base}${several ? ` group ${group}` : ""}: ${quantity}`;
    })
    .join(", ");
}
