/** What goes on the truck: rods, hardware and templates, by delivery and base, with weights. */
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
  weightSumCell,
  weightTotalCell,
  weightUnit,
} from "./cells.js";
import { compareDeliveries, type Delivered, type DeliveryShare, shareDeliveries } from "./deliveries.js";
import { type HardwareKind, hardwareKey } from "./hardware-list.js";
import type { ListCell, ListTable } from "./model.js";
import { sizeFigure } from "./plate-list.js";
import { stockWords } from "./plate-rows.js";
import { rodWeight } from "./rod-list.js";
import type { SplicePiece } from "./splice-bolts.js";

/** What a packing list is made of. */
export interface PackingOf {
  readonly job: Delivered & { readonly unit: Unit };
  readonly lots: readonly RodLot[];
  readonly hardware: readonly HardwareKind[];
  readonly facts: readonly BaseFacts[];
  readonly splices: readonly SplicePiece[];
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
  /** Marks of the bases that it is for, that with which it is packed first: a few templates may serve several. */
  readonly bases: readonly string[];
  /** How many bases these are, of those that go with this delivery; of all of them where a template is used again. */
  readonly quantity: number;
  readonly what: PackedWhat;
  /** Lot, number of the hardware, or mark of the piece. */
  readonly mark: string;
  readonly words: string;
  readonly perBase: number | null;
  readonly count: number;
  /** Of one, in thousandths of the unit. */
  readonly weight: number | null;
}

type Own = readonly { readonly lot: RodLot; readonly use: RodUse }[];

/** By delivery, then by base in the order of the job. */
export function packedLines(of: PackingOf): readonly Packed[] {
  const shares = shareDeliveries(of.job);
  const byBase = groupBy(
    of.lots.flatMap((lot) => lot.uses.map((use) => ({ lot, use }))),
    ({ use }) => use.base,
  );
  const items = new Map(of.hardware.map((kind) => [hardwareKey(kind), kind.item]));
  const templates = new TemplateLines(of, shares, items);
  const facts = new Map(of.facts.map((each) => [each.mark, each]));
  const lines = of.job.bases.flatMap(({ mark }) => {
    const own = shares.get(mark) ?? [];
    const rods = own.flatMap((share) => rodLines(mark, share, byBase.get(mark) ?? [], of.job.unit, items));
    return [...rods, ...templates.of(facts.get(mark), own)];
  });
  const deliveries = [...groupBy(lines, ({ delivery }) => delivery)];
  return deliveries.sort(([a], [b]) => compareDeliveries(a, b)).flatMap(([, own]) => inOrderOfBases(own));
}

/** What goes with one base stands together. */
function inOrderOfBases(lines: readonly Packed[]): readonly Packed[] {
  return [...groupBy(lines, ({ bases }) => bases[0]).values()].flat();
}

type Items = ReadonlyMap<string, string>;

function rodLines(
  base: string,
  { delivery, count: quantity }: DeliveryShare,
  own: Own,
  unit: Unit,
  items: Items,
): readonly Packed[] {
  const packed = { delivery, bases: [base], quantity };
  const rods = own.map(({ lot, use: { perBase } }): Packed => {
    const { kind } = lot.detail;
    const size = sizeWords(lot.detail, unit);
    const words = [size, kind.kind === "given" ? kind.value : `kind ${NOT_GIVEN}`].join(", ");
    const counted = { perBase, count: perBase * quantity, weight: rodWeight(lot, unit) };
    return { ...packed, what: "rods", mark: lot.mark, words, ...counted };
  });
  const pieces = own.flatMap(({ lot, use }) => lot.detail.hardware.map((hardware) => ({ hardware, use })));
  const hardware = [...groupBy(pieces, ({ hardware: each }) => hardwareKey(each))].flatMap(
    ([key, group]): readonly Packed[] => {
      const [first] = group;
      if (first === undefined) return [];
      const { what, words, kilograms } = first.hardware;
      const perBase = group.reduce((sum, each) => sum + each.hardware.count * each.use.perBase, 0);
      const weight = kilograms === null ? null : thousandths(kilograms, unit);
      const counted = { perBase, count: perBase * quantity, weight };
      return [{ ...packed, what, mark: items.get(key) ?? "", words, ...counted }];
    },
  );
  return [...rods, ...hardware];
}

/** With which base a template goes that is used again. */
interface FirstServed {
  readonly base: string;
  readonly delivery: string;
}

type TemplatePart = Pick<Packed, "what" | "mark" | "words" | "weight"> & { readonly total: number };

/**
 * Where every base has its own, pieces of a template go with their base; fewer are used again, and go with the first delivery that
 * they serve.
 */
class TemplateLines {
  private readonly firsts = new Map<string, FirstServed>();
  private readonly quantities: ReadonlyMap<string, number>;

  constructor(
    private readonly packing: PackingOf,
    private readonly shares: ReadonlyMap<string, readonly DeliveryShare[]>,
    private readonly items: Items,
  ) {
    this.quantities = new Map(packing.job.bases.map(({ mark, quantity }) => [mark, quantity]));
  }

  of(facts: BaseFacts | undefined, shares: readonly DeliveryShare[]): readonly Packed[] {
    if (facts === undefined) return [];
    const { quantity, bases } = facts.template;
    const served = bases.reduce((sum, base) => sum + (this.quantities.get(base) ?? 0), 0);
    const parts = this.partsOf(facts);
    if (quantity % served === 0) return shares.flatMap((share) => ownParts(parts, facts.mark, share, served));
    const first = this.firstOf(facts.template);
    if (first.base !== facts.mark) return [];
    const others = bases.filter((base) => base !== first.base);
    const packed = { delivery: first.delivery, bases: [first.base, ...others], quantity: served, perBase: null };
    return parts.map(({ total, ...part }) => ({ ...packed, ...part, count: total }));
  }

  private firstOf({ mark, bases }: BaseFacts["template"]): FirstServed {
    const known = this.firsts.get(mark);
    if (known !== undefined) return known;
    const [first = { base: "", delivery: "" }] = bases
      .flatMap((base) => (this.shares.get(base) ?? []).map(({ delivery }) => ({ base, delivery })))
      .sort((a, b) => compareDeliveries(a.delivery, b.delivery));
    this.firsts.set(mark, first);
    return first;
  }

  private partsOf({ pieces, bolted }: BaseFacts): readonly TemplatePart[] {
    const { splices, job } = this.packing;
    const plates = pieces.map((piece): TemplatePart => {
      const weight = piece.weight === null ? null : Math.round(piece.weight.value * 1000);
      const words = pieceWords(piece, job.unit);
      return { what: "template", mark: piece.mark, words, weight, total: piece.quantity };
    });
    const marks = new Set(bolted.map(({ mark }) => mark));
    const bolts = splices.filter(({ mark }) => marks.has(mark));
    return [...plates, ...bolts.map((piece) => this.boltPart(piece))];
  }

  private boltPart(piece: SplicePiece): TemplatePart {
    const { what, words, count, kilograms } = piece;
    const weight = kilograms === null ? null : thousandths(kilograms, this.packing.job.unit);
    return { what, mark: this.items.get(hardwareKey(piece)) ?? "", words, weight, total: count };
  }
}

function ownParts(
  parts: readonly TemplatePart[],
  base: string,
  { delivery, count }: DeliveryShare,
  served: number,
): readonly Packed[] {
  const packed = { delivery, bases: [base], quantity: count };
  return parts.map(({ total, ...part }) => {
    const perBase = total / served;
    return { ...packed, ...part, perBase, count: perBase * count };
  });
}

/** `template, PL 3/8 A36, 34 x 30`: as the cut list has it. */
function pieceWords(piece: PieceFacts, unit: Unit): string {
  const { role, material, grade, width, height } = piece;
  const size = `${sizeFigure(width, unit).text} x ${sizeFigure(height, unit).text}`;
  return `${role}, ${stockWords(piece, unit)} ${grade ?? material}, ${size}`;
}

/** A row a line; a total for each delivery where there are several, and for the whole. Its pages are others: `packingPages`. */
export function packingList(lines: readonly Packed[], { job: { unit }, stops }: PackingOf): ListTable {
  const weight = weightUnit(unit);
  const deliveries = [...groupBy(lines, ({ delivery }) => delivery)];
  const isNamed = deliveries.some(([name]) => name !== "");
  return {
    key: "packing",
    name: "Packing",
    title: "PACKING LIST",
    columns: [
      { heading: "delivery", width: 12, isWrapped: true },
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
    rows: lines.map((line) => [isNamed ? deliveryName(line.delivery) : null, ...packedRow(line, stops)]),
    totals: [
      ...(deliveries.length > 1 ? deliveries.flatMap(([name, own]) => totalRows(deliveryName(name), own)) : []),
      ...totalRows("TOTAL", lines),
    ],
    views: [],
    remarks: packingRemarks(lines),
  };
}

/** As it is written, or that nobody names one. */
export function deliveryName(delivery: string): string {
  return delivery === "" ? NOT_GIVEN : delivery;
}

function packedRow(line: Packed, stops: ListedStops): readonly ListCell[] {
  const { bases, quantity, what, mark, words, perBase, count, weight } = line;
  return [
    ...[bases.join(" "), quantity, what, mark, words, perBase, count],
    weightEachCell(weight),
    weightTotalCell(weight === null ? null : weight * count),
    heldWords(bases, stops),
  ];
}

/** What is summed by itself. */
export const PACKED_GROUPS = [
  ["rods", (what: PackedWhat) => what === "rods"],
  ["hardware", (what: PackedWhat) => what !== "rods" && what !== "template"],
  ["templates", (what: PackedWhat) => what === "template"],
] as const;

/** Pieces of these lines. */
export function countPacked(lines: readonly Packed[]): number {
  return lines.reduce((sum, { count }) => sum + count, 0);
}

/** Weight of these lines. */
export function weighPacked(lines: readonly Packed[]): ListCell {
  return weightSumCell(lines.map(({ weight, count }) => (weight === null ? null : weight * count)));
}

/** Rods, hardware and templates, and all together. */
function totalRows(name: string, lines: readonly Packed[]): readonly (readonly ListCell[])[] {
  const row = (words: string, own: readonly Packed[], count: number | null): readonly ListCell[] => {
    return [name, null, null, words, null, null, null, count, null, weighPacked(own), null];
  };
  const parts = PACKED_GROUPS.flatMap(([words, isOf]) => {
    const own = lines.filter(({ what }) => isOf(what));
    return own.length === 0 ? [] : [row(words, own, countPacked(own))];
  });
  return [...parts, row("all", lines, null)];
}

/** What is to be known of all of it. */
export function packingRemarks(lines: readonly Packed[]): readonly string[] {
  const { unknown } = sumKnown(lines.map(({ weight }) => weight));
  const isNamed = lines.some(({ delivery }) => delivery !== "");
  const without = new Set(isNamed ? lines.flatMap(({ delivery, bases }) => (delivery === "" ? bases : [])) : []);
  return [
    "Templates go with their bases; fewer than bases are used again, and go with the first delivery and base that they serve. Weights are nominal: without zinc, threads, pallets and packing.",
    ...(isNamed ? [] : ["One delivery: where bases or placements name theirs (delivery), the list is parted by them."]),
    ...(without.size === 0
      ? []
      : [`Without a delivery (key delivery of base or placement), all or in part: ${[...without].join(" ")}.`]),
    ...(unknown === 0 ? [] : [`The weight of ${unknown} of ${lines.length} lines is not known and not in the totals.`]),
  ];
}
