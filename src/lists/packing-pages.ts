/** The packing list on paper: a part for each delivery, which goes with it, and before them which deliveries there are. */
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import { heldWords, type ListedStops, NOT_GIVEN, weightUnit } from "./cells.js";
import type { ListCell, ListColumn, ListTable } from "./model.js";
import { countPacked, deliveryName, PACKED_GROUPS, type Packed, packingRemarks, weighPacked } from "./packing-list.js";

/** Pages that go together. */
export interface PackingPart {
  /** `pour 1`; empty where the list is not parted. */
  readonly name: string;
  readonly tables: readonly ListTable[];
}

/** What the pages are made of. */
export interface PackingPagesOf {
  readonly lines: readonly Packed[];
  readonly unit: Unit;
  readonly stops: ListedStops;
}

/** A part for each delivery; where there are several, the first says which they are. */
export function packingPages(of: PackingPagesOf): readonly PackingPart[] {
  const deliveries = [...groupBy(of.lines, ({ delivery }) => delivery)];
  const isNamed = deliveries.some(([name]) => name !== "");
  const elsewhere = servedBy(of.lines);
  const parts = deliveries.map(([delivery, lines]): PackingPart => {
    const name = delivery === "" && isNamed ? `delivery ${NOT_GIVEN}` : delivery;
    return { name, tables: [wholeTable({ ...of, lines }), basesTable({ ...of, lines }, elsewhere)] };
  });
  return deliveries.length > 1 ? [{ name: "", tables: [deliveriesTable(of)] }, ...parts] : parts;
}

/** All columns under their own headings. */
function onPage(table: Omit<ListTable, "views" | "name">): ListTable {
  const columns = table.columns.map(({ heading }) => [heading, heading] as const);
  return { ...table, name: table.title, views: [{ title: table.title, columns }] };
}

const figure = (heading: string): ListColumn => ({ heading, width: 9, isFigure: true });
const words = (heading: string): ListColumn => ({ heading, width: 14 });

/** Bases that stand on these lines, each with how many go with them. */
function countBases(lines: readonly Packed[]): ReadonlyMap<string, number> {
  return new Map(
    lines.flatMap(({ what, bases: [base = ""], quantity }) => (what === "rods" ? [[base, quantity] as const] : [])),
  );
}

function sum(counts: Iterable<number>): number {
  return [...counts].reduce((all, count) => all + count, 0);
}

/** A row a delivery. */
function deliveriesTable({ lines, unit }: PackingPagesOf): ListTable {
  const row = (name: string, own: readonly Packed[]): readonly ListCell[] => {
    const bases = countBases(own);
    const counts = PACKED_GROUPS.map(([, isOf]) => countPacked(own.filter(({ what }) => isOf(what))));
    return [name, bases.size, sum(bases.values()), ...counts, weighPacked(own)];
  };
  const deliveries = [...groupBy(lines, ({ delivery }) => delivery)];
  const all = PACKED_GROUPS.map(([, isOf]) => countPacked(lines.filter(({ what }) => isOf(what))));
  const marks = new Set(lines.flatMap(({ bases }) => bases));
  const bases = deliveries.map(([, own]) => sum(countBases(own).values()));
  return onPage({
    key: "deliveries",
    title: "DELIVERIES",
    columns: [
      words("delivery"),
      ...["marks", "bases", ...PACKED_GROUPS.map(([name]) => name), weightUnit(unit)].map(figure),
    ],
    rows: deliveries.map(([name, own]) => row(deliveryName(name), own)),
    totals: [["TOTAL", marks.size, sum(bases), ...all, weighPacked(lines)]],
    remarks: [
      "Each delivery has its own pages, which go with it. Marks are those of bases; one that goes with several deliveries counts once in the total.",
      ...packingRemarks(lines),
    ],
  });
}

/** All that is on it: rods by lot, hardware by item, how many templates. */
function wholeTable({ lines, unit }: PackingPagesOf): ListTable {
  const loose = groupBy(
    lines.filter(({ what }) => what !== "template"),
    ({ what, mark, words: kind }) => JSON.stringify([what, mark, kind]),
  );
  const rows = [...loose.values()].sort(([a], [b]) => Number(a?.what !== "rods") - Number(b?.what !== "rods"));
  const totals = PACKED_GROUPS.flatMap(([name, isOf]) => {
    const own = lines.filter(({ what }) => isOf(what));
    return own.length === 0 ? [] : [[name.toUpperCase(), null, null, countPacked(own), weighPacked(own)]];
  });
  return onPage({
    key: "packed",
    title: `ALL TOGETHER (${weightUnit(unit)})`,
    columns: [words("what"), words("mark"), words("size and kind"), figure("count"), figure("weight")],
    rows: rows.map((own): readonly ListCell[] => {
      const [first] = own;
      return [first?.what ?? null, first?.mark ?? null, first?.words ?? null, countPacked(own), weighPacked(own)];
    }),
    totals: [...totals, ["ALL", null, null, null, weighPacked(lines)]],
    remarks: [],
  });
}

/** A row a base: what its bundles hold, which templates go with it. */
function basesTable({ lines, unit, stops }: PackingPagesOf, elsewhere: ReturnType<typeof servedBy>): ListTable {
  const bases = countBases(lines);
  const own = groupBy(lines, ({ bases: [base = ""] }) => base);
  const rods = lines.filter(({ what }) => what === "rods");
  return onPage({
    key: "packed-by-base",
    title: `BASE BY BASE (${weightUnit(unit)})`,
    columns: [
      words("base"),
      words("rods a base"),
      words("hardware a base"),
      words("templates for all"),
      words("status"),
      figure("bases"),
      figure("rods"),
      figure("weight"),
    ],
    rows: [...own].map(([base, packed]): readonly ListCell[] => {
      const of = (k: 0 | 1 | 2) => packed.filter(({ what }) => PACKED_GROUPS[k][1](what));
      return [
        base,
        countedWords(of(0)),
        countedWords(of(1).filter(({ perBase }) => perBase !== null)),
        templateWords(packed) || elsewhere(base, packed[0]?.delivery ?? ""),
        heldWords([base], stops),
        bases.get(base) ?? null,
        countPacked(of(0)),
        weighPacked(packed),
      ];
    }),
    totals: [["TOTAL", null, null, null, null, sum(bases.values()), countPacked(rods), weighPacked(lines)]],
    remarks: [...packingRemarks(lines), ...starWords(lines)],
  });
}

/** `4 x R1 + 2 x R3`: of one base. */
function countedWords(lines: readonly Packed[]): string {
  return lines.map(({ perBase, mark }) => `${perBase} x ${mark}`).join(" + ");
}

/** `5 x T1`: for all bases of the row, and what is bolted to those of which there are fewer than bases. */
function templateWords(packed: readonly Packed[]): string {
  return packed
    .filter(({ what, perBase }) => what === "template" || perBase === null)
    .map(({ count, mark }) => `${count} x ${mark}`)
    .join(" + ");
}

/** `T1 with B1`, of bases whose template goes with another, and by which delivery where that is another too. */
function servedBy(all: readonly Packed[]): (base: string, delivery: string) => string {
  const shared = all.filter(({ what, perBase }) => what === "template" && perBase === null);
  const lines = groupBy(
    shared.flatMap((line) => line.bases.map((base) => ({ base, line }))),
    ({ base }) => base,
  );
  return (base, delivery) =>
    (lines.get(base) ?? [])
      .map(({ line: { mark, bases, delivery: by } }) =>
        [`${mark} with ${bases[0]}`, ...(by === delivery ? [] : [by === "" ? `delivery ${NOT_GIVEN}` : by])].join(", "),
      )
      .join("; ");
}

/** On which lines a star stands in a weight. */
function starWords(lines: readonly Packed[]): readonly string[] {
  return lines.some(({ weight }) => weight === null) ? ["* without what has no weight."] : [];
}
