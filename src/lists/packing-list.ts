/** What goes on the truck: rods, hardware and templates, by delivery and base, with weights. */
import type { Base } from "../job/model/job.js";
import { sizeWords } from "../rods/index.js";
import type { RodLot, RodUse } from "../rods/lots.js";
import type { BaseFacts, PieceFacts } from "../summary/facts.js";
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import {
  heldWords,
  type ListedStops,
  NOT_GIVEN,
  sumKnown,
  thousandths,
  weightEachCell,
  weightTotalCell,
  weightUnit,
} from "./cells.js";
import type { ListCell, ListTable } from "./model.js";
import { sizeFigure } from "./plate-list.js";
import { stockWords } from "./plate-rows.js";
import { rodWeight } from "./rod-list.js";
import type { SplicePiece } from "./splice-bolts.js";

/** What a packing list is made of. */
export interface PackingOf {
  readonly bases: readonly Pick<Base, "mark" | "quantity" | "delivery">[];
  readonly lots: readonly RodLot[];
  readonly facts: readonly BaseFacts[];
  readonly splices: readonly SplicePiece[];
  readonly unit: Unit;
  readonly stops: ListedStops;
}

/** What is counted on a packing list. */
export type PackedWhat =
  | "rods"
  | "nut"
  | "washer"
  | "plate washer"
  | "plate"
  | "bolt"
  | "thread protector"
  | "template";

/** One line. */
export interface Packed {
  readonly delivery: string;
  /** Marks of the bases that it is for; a template may serve several. */
  readonly bases: readonly string[];
  readonly what: PackedWhat;
  /** Lot or mark; empty of hardware of rods. */
  readonly mark: string;
  readonly words: string;
  readonly perBase: number | null;
  readonly count: number;
  /** Of one, in thousandths of the unit. */
  readonly weight: number | null;
}

/** By delivery, then by base in the order of the job. */
export function packedLines(of: PackingOf): readonly Packed[] {
  const taken = new Set<string>();
  const byBase = groupBy(
    of.lots.flatMap((lot) => lot.uses.map((use) => ({ lot, use }))),
    ({ use }) => use.base,
  );
  const facts = new Map(of.facts.map((each) => [each.mark, each]));
  const lines = of.bases.flatMap((base) => [
    ...rodLines(base, byBase.get(base.mark) ?? [], of.unit),
    ...templateLines(base, facts.get(base.mark), taken, of),
  ]);
  return [...groupBy(lines, ({ delivery }) => delivery).values()].flat();
}

type Own = readonly { readonly lot: RodLot; readonly use: RodUse }[];

function rodLines({ mark, quantity, delivery }: PackingOf["bases"][number], own: Own, unit: Unit): readonly Packed[] {
  const rods = own.map(({ lot, use }): Packed => {
    const { kind } = lot.detail;
    const size = sizeWords(lot.detail, unit);
    const words = [size, kind.kind === "given" ? kind.value : `kind ${NOT_GIVEN}`].join(", ");
    return {
      delivery,
      bases: [mark],
      what: "rods",
      mark: lot.mark,
      words,
      perBase: use.perBase,
      count: use.quantity,
      weight: rodWeight(lot, unit),
    };
  });
  const pieces = own.flatMap(({ lot, use }) => lot.detail.hardware.map((hardware) => ({ hardware, use })));
  const alike = groupBy(pieces, ({ hardware }) => JSON.stringify([hardware.what, hardware.words]));
  const hardware = [...alike.values()].flatMap((group): readonly Packed[] => {
    const [first] = group;
    if (first === undefined) return [];
    const { what, words, kilograms } = first.hardware;
    const perBase = group.reduce((sum, each) => sum + each.hardware.count * each.use.perBase, 0);
    const weight = kilograms === null ? null : thousandths(kilograms, unit);
    return [{ delivery, bases: [mark], what, mark: "", words, perBase, count: perBase * quantity, weight }];
  });
  return [...rods, ...hardware];
}

/** Pieces of a template stand with the first base that it serves. */
function templateLines(
  { delivery }: PackingOf["bases"][number],
  facts: BaseFacts | undefined,
  taken: Set<string>,
  { unit, splices }: PackingOf,
): readonly Packed[] {
  if (facts === undefined) return [];
  const { bases } = facts.template;
  const plates = facts.pieces.flatMap((piece): readonly Packed[] => {
    if (taken.has(piece.mark)) return [];
    taken.add(piece.mark);
    const weight = piece.weight === null ? null : Math.round(piece.weight.value * 1000);
    return [
      {
        delivery,
        bases,
        what: "template",
        mark: piece.mark,
        words: pieceWords(piece, unit),
        perBase: null,
        count: piece.quantity,
        weight,
      },
    ];
  });
  const bolted = facts.bolted.filter(({ mark }) => !taken.has(boltsOf(mark)));
  for (const { mark } of bolted) taken.add(boltsOf(mark));
  const bolts = splices.filter((piece) => bolted.some(({ mark }) => mark === piece.mark));
  return [...plates, ...bolts.map((piece) => ({ delivery, bases, ...boltLine(piece, unit) }))];
}

/** What stands for the bolts of a template among what is packed already: no mark of a piece. */
function boltsOf(mark: string): string {
  return `bolts of ${mark}`;
}

function boltLine({ what, words, mark, count, kilograms }: SplicePiece, unit: Unit) {
  const weight = kilograms === null ? null : thousandths(kilograms, unit);
  return { what, mark, words, perBase: null, count, weight };
}

/** `template, PL 3/8 A36, 34 x 30`: as the cut list has it. */
function pieceWords(piece: PieceFacts, unit: Unit): string {
  const { role, material, grade, width, height } = piece;
  const size = `${sizeFigure(width, unit).text} x ${sizeFigure(height, unit).text}`;
  return `${role}, ${stockWords(piece, unit)} ${grade ?? material}, ${size}`;
}

/** A row a line; a total for each delivery where there are several, and for the whole. */
export function packingList(of: PackingOf): ListTable {
  const lines = packedLines(of);
  const weight = weightUnit(of.unit);
  const quantities = new Map(of.bases.map(({ mark, quantity }) => [mark, quantity]));
  const deliveries = [...groupBy(lines, ({ delivery }) => delivery)];
  const isParted = deliveries.length > 1;
  const isNamed = deliveries.some(([name]) => name !== "");
  return {
    key: "packing",
    name: "Packing",
    title: "PACKING LIST",
    columns: [
      { heading: "delivery", width: 12 },
      { heading: "base", width: 12, isWrapped: true },
      { heading: "bases", width: 8, isFigure: true },
      { heading: "what", width: 13 },
      { heading: "mark", width: 9 },
      { heading: "size and kind", width: 58, isWrapped: true },
      { heading: "a base", width: 8, isFigure: true },
      { heading: "count", width: 9, isFigure: true },
      { heading: `weight each, ${weight}`, width: 10, isFigure: true },
      { heading: `weight total, ${weight}`, width: 11, isFigure: true },
      { heading: "status", width: 14, isWrapped: true },
    ],
    rows: lines.map((line) => [isNamed ? deliveryName(line.delivery) : null, ...packedRow(line, quantities, of.stops)]),
    totals: [
      ...(isParted ? deliveries.flatMap(([name, own]) => totalRows(deliveryName(name), own)) : []),
      ...totalRows("TOTAL", lines),
    ],
    views: [
      {
        title: `PACKING LIST (${weight})`,
        columns: [
          ...(isNamed ? [["delivery", "DELIVERY"] as const] : []),
          ...["base", "what", "mark", "size and kind", "status", "a base", "count"].map(
            (heading) => [heading, heading] as const,
          ),
          [`weight total, ${weight}`, "WEIGHT"],
        ],
      },
    ],
    remarks: packingRemarks(lines, isNamed),
  };
}

function deliveryName(delivery: string): string {
  return delivery === "" ? NOT_GIVEN : delivery;
}

function packedRow(line: Packed, quantities: ReadonlyMap<string, number>, stops: ListedStops): readonly ListCell[] {
  const { bases, what, mark, words, perBase, count, weight } = line;
  return [
    bases.join(" "),
    bases.reduce((sum, base) => sum + (quantities.get(base) ?? 0), 0),
    ...[what, mark, words, perBase, count],
    weightEachCell(weight),
    weightTotalCell(weight === null ? null : weight * count),
    heldWords(bases, stops),
  ];
}

const GROUPS = [
  ["rods", (what: PackedWhat) => what === "rods"],
  ["hardware", (what: PackedWhat) => what !== "rods" && what !== "template"],
  ["templates", (what: PackedWhat) => what === "template"],
] as const;

/** Rods, hardware and templates, and all together. */
function totalRows(name: string, lines: readonly Packed[]): readonly (readonly ListCell[])[] {
  const row = (words: string, own: readonly Packed[], count: number | null): readonly ListCell[] => {
    const { sum } = sumKnown(own.map(({ weight, count: pieces }) => (weight === null ? null : weight * pieces)));
    return [name, null, null, words, null, null, null, count, null, weightTotalCell(sum), null];
  };
  const parts = GROUPS.flatMap(([words, isOf]) => {
    const own = lines.filter(({ what }) => isOf(what));
    return own.length === 0
      ? []
      : [
          row(
            words,
            own,
            own.reduce((sum, { count }) => sum + count, 0),
          ),
        ];
  });
  return [...parts, row("all", lines, null)];
}

function packingRemarks(lines: readonly Packed[], isNamed: boolean): readonly string[] {
  const { unknown } = sumKnown(lines.map(({ weight }) => weight));
  return [
    "Templates stand with the first base that they serve. Weights are nominal: without zinc, threads, pallets and packing.",
    ...(isNamed ? [] : ["One delivery: where bases name theirs (delivery), the list is parted by them."]),
    ...(unknown === 0 ? [] : [`The weight of ${unknown} of ${lines.length} lines is not known and not in the totals.`]),
  ];
}
