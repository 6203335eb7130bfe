/** Bars to cut: which bars are taken from the stock, how each is cut, and how near that is to the least possible. */
import type { RodStock } from "../job/model/rod-stock.js";
import type { BarPattern, BarPlan } from "../rods/bars/model.js";
import { sizeWords } from "../rods/index.js";
import { groupBy } from "../units/group-by.js";
import { formatLength, type Unit } from "../units/index.js";
import type { BarGroup } from "./bar-groups.js";
import { lengthCell, lengthInputCell, NOT_GIVEN, UNIT_WORDS } from "./cells.js";
import type { ListCell, ListColumn, ListTable } from "./model.js";

/** What a list of bars is made of. */
export interface BarListOf {
  readonly groups: readonly BarGroup[];
  readonly stock: RodStock;
  readonly unit: Unit;
}

/** A way of cutting, by its number in the list. */
interface NumberedPattern extends BarPattern {
  readonly number: string;
  readonly group: BarGroup;
}

/** `1-1`, `1-2`: group and pattern. */
function numbered(groups: readonly BarGroup[]): readonly NumberedPattern[] {
  return groups.flatMap((group, g) =>
    (group.plan?.patterns ?? []).map((pattern, p) => ({ ...pattern, number: `${g + 1}-${p + 1}`, group })),
  );
}

/** Pieces of one bar. */
function piecesOn({ pieces }: BarPattern): number {
  return pieces.reduce((sum, { count }) => sum + count, 0);
}

const BAR_COLUMNS = (unit: Unit): readonly ListColumn[] => [
  { heading: "pattern", width: 9 },
  { heading: "rod size", width: 9 },
  { heading: `bar diameter, ${unit}`, width: 11, isFigure: true },
  { heading: "grade", width: 14, isWrapped: true },
  { heading: "cut by", width: 9 },
  { heading: `stock length, ${unit}`, width: 11, isFigure: true },
  { heading: "bars", width: 7, isFigure: true },
  { heading: "pieces of each bar", width: 52, isWrapped: true },
  { heading: "pieces a bar", width: 9, isFigure: true },
  { heading: "pieces", width: 9, isFigure: true },
  { heading: `kerf, ${unit}`, width: 8, isFigure: true },
  { heading: `rest of a bar, ${unit}`, width: 11, isFigure: true },
  { heading: "rest goes to", width: 10 },
];

/** A row a way of cutting. */
export function barList({ groups, stock, unit }: BarListOf): ListTable {
  const patterns = numbered(groups);
  return {
    key: "bars-to-cut",
    name: "Bars to cut",
    title: "BARS TO CUT",
    columns: BAR_COLUMNS(unit),
    rows: patterns.map((pattern) => barRow(pattern, stock, unit)),
    totals: [barTotals(patterns)],
    views: [
      {
        title: `BARS TO CUT (${UNIT_WORDS[unit]})`,
        columns: [
          ["pattern", "NO"],
          ["rod size", "ROD"],
          ["grade", "GRADE"],
          ["cut by", "BY"],
          ["pieces of each bar", "PIECES OF EACH BAR"],
          [`bar diameter, ${unit}`, "BAR"],
          [`stock length, ${unit}`, "STOCK"],
          ["bars", "BARS"],
          ["pieces", "PIECES"],
          [`kerf, ${unit}`, "KERF"],
          [`rest of a bar, ${unit}`, "REST"],
          ["rest goes to", "TO"],
        ],
      },
    ],
    remarks: barRemarks(groups, stock, unit),
  };
}

function barTotals(patterns: readonly BarPattern[]): readonly ListCell[] {
  const sum = (of: (pattern: BarPattern) => number) => patterns.reduce((all, pattern) => all + of(pattern), 0);
  const [bars, pieces] = [sum((each) => each.bars), sum((each) => each.bars * piecesOn(each))];
  return ["TOTAL", null, null, null, null, null, bars, null, null, pieces, null, null, null];
}

function barRow(pattern: NumberedPattern, stock: RodStock, unit: Unit): readonly ListCell[] {
  const { group, number, bars, pieces, remnant } = pattern;
  const kerf = group.stock.kind === "given" ? lengthCell(group.stock.value.kerf, unit) : NOT_GIVEN;
  return [
    number,
    sizeWords(group, unit),
    lengthInputCell(group.bar, unit),
    group.grade,
    cutBy(group),
    lengthCell(pattern.stock, unit),
    bars,
    pieces.map(({ name, length, count }) => `${count} x ${name} at ${formatLength(length, unit)}`).join(" + "),
    piecesOn(pattern),
    bars * piecesOn(pattern),
    kerf,
    lengthCell(remnant, unit),
    restGoesTo(remnant, stock),
  ];
}

function cutBy({ separation }: BarGroup): string {
  if (separation.kind === "missing") return NOT_GIVEN;
  return separation.value === "sheared" ? "shear" : "saw";
}

function restGoesTo(remnant: number, { leastRemnant }: RodStock): string {
  if (remnant === 0) return "";
  if (leastRemnant.kind === "missing") return NOT_GIVEN;
  return remnant >= leastRemnant.value ? "stock" : "scrap";
}

function barRemarks(groups: readonly BarGroup[], { endTrim, kerf }: RodStock, unit: Unit): readonly string[] {
  const trim =
    endTrim.value === 0
      ? "No end of a bar is trimmed"
      : `${formatLength(endTrim.value, unit)} ${unit} is trimmed off each bar first`;
  const cut =
    kerf.kind === "given" ? `; a saw cut takes ${formatLength(kerf.value, unit)} ${unit}, a shear nothing` : "";
  const tooLong = groups.flatMap(({ plan }) => plan?.tooLong ?? []);
  return [
    `${trim}${cut}. Bars are cut in any order; each row is one way of cutting.`,
    ...notPlannedWords(groups),
    ...notOnBarWords(groups),
    ...tooLong.map(
      ({ name, length, quantity }) =>
        `Lot ${name} (${quantity} rods of ${formatLength(length, unit)} ${unit}) is longer than any bar in stock gives: order bar for it.`,
    ),
  ];
}

/** A sentence for each thing that the stock lacks, with every kind of bar that waits for it. */
function notPlannedWords(groups: readonly BarGroup[]): readonly string[] {
  const open = groups.flatMap(({ size, grade, stock }) =>
    stock.kind === "missing" ? [{ bar: `${size} ${grade}`, words: `${stock.why} (${stock.key})` }] : [],
  );
  return [...groupBy(open, ({ words }) => words)].map(
    ([words, own]) => `Bars for ${own.map(({ bar }) => bar).join(", ")} are not planned: ${words}.`,
  );
}

/** The same of what lots lack. */
function notOnBarWords(groups: readonly BarGroup[]): readonly string[] {
  const open = groups.flatMap(({ left }) =>
    left.map(({ lot, lacks }) => ({ lot: `${lot.mark} (${lot.total} rods)`, words: `${lacks.why} (${lacks.key})` })),
  );
  return [...groupBy(open, ({ words }) => words)].map(([words, own]) => {
    const isOne = own.length === 1;
    return `Lot${isOne ? "" : "s"} ${own.map(({ lot }) => lot).join(", ")} ${isOne ? "is" : "are"} not on a bar: ${words}.`;
  });
}

/** A row a lot on a way of cutting: what adds up to the rods. */
export function barPieces({ groups, unit }: BarListOf): ListTable {
  const rows = numbered(groups).flatMap(({ number, bars, pieces, stock }) =>
    pieces.map(({ name, length, count }, i): readonly ListCell[] => [
      number,
      lengthCell(stock, unit),
      i === 0 ? bars : null,
      name,
      lengthCell(length, unit),
      count,
      count * bars,
    ]),
  );
  return {
    key: "pieces-on-bars",
    name: "Pieces on bars",
    title: "PIECES ON BARS",
    columns: [
      { heading: "pattern", width: 9 },
      { heading: `stock length, ${unit}`, width: 11, isFigure: true },
      { heading: "bars", width: 7, isFigure: true },
      { heading: "lot", width: 7 },
      { heading: `cut length, ${unit}`, width: 11, isFigure: true },
      { heading: "a bar", width: 8, isFigure: true },
      { heading: "pieces", width: 9, isFigure: true },
    ],
    rows,
    totals: [
      [
        "TOTAL",
        null,
        rows.reduce((sum, row) => sum + Number(row[2] ?? 0), 0),
        ...[null, null, null],
        rows.reduce((sum, row) => sum + Number(row[6]), 0),
      ],
    ],
    views: [],
    remarks: [
      "The same bars as in the list of bars to cut, a line for each lot on them; how many bars are cut so stands in the first line of each pattern, so that they add up.",
    ],
  };
}

/** A row a kind of bar: bars and stock used, the least that is proven, and waste. */
export function barSummary({ groups, stock, unit }: BarListOf): ListTable {
  const planned = groups.flatMap((group, i) =>
    group.plan === null ? [] : [{ group, plan: group.plan, number: `${i + 1}` }],
  );
  const stockSum = planned.reduce((sum, { plan }) => sum + plan.stockLength, 0);
  return {
    key: "bars-by-size",
    name: "Bars by size",
    title: "BARS BY SIZE",
    columns: [
      { heading: "group", width: 9 },
      { heading: "rod size", width: 9 },
      { heading: `bar diameter, ${unit}`, width: 11, isFigure: true },
      { heading: "grade", width: 14, isWrapped: true },
      { heading: "pieces", width: 9, isFigure: true },
      { heading: `length of pieces, ${unit}`, width: 12, isFigure: true },
      { heading: "bars", width: 7, isFigure: true },
      { heading: "least bars proven", width: 9, isFigure: true },
      { heading: `stock used, ${unit}`, width: 12, isFigure: true },
      { heading: `least stock proven, ${unit}`, width: 12, isFigure: true },
      { heading: "proof", width: 16, isWrapped: true },
      { heading: `rests to stock, ${unit}`, width: 12, isFigure: true },
      { heading: "waste, percent", width: 9, isFigure: true },
    ],
    rows: planned.map(({ group, plan, number }) => summaryRow(number, group, plan, stock, unit)),
    totals: [
      [
        ...["TOTAL", null, null, null],
        planned.reduce((sum, { plan }) => sum + pieceCount(plan), 0),
        null,
        planned.reduce((sum, { plan }) => sum + plan.bars, 0),
        null,
        lengthCell(stockSum, unit),
        ...[null, null, null, null],
      ],
    ],
    views: [
      {
        title: `BARS BY SIZE (${UNIT_WORDS[unit]})`,
        columns: [
          ["rod size", "ROD"],
          ["grade", "GRADE"],
          ["proof", "PROOF"],
          [`bar diameter, ${unit}`, "BAR"],
          ["pieces", "PIECES"],
          ["bars", "BARS"],
          ...(planned.some(({ group }) => isOneLength(group)) ? [["least bars proven", "LEAST"] as const] : []),
          [`stock used, ${unit}`, "STOCK USED"],
          [`least stock proven, ${unit}`, "LEAST STOCK"],
          [`rests to stock, ${unit}`, "KEPT RESTS"],
          ["waste, percent", "WASTE %"],
        ],
      },
    ],
    remarks: [
      "Least proven: no way of cutting the pieces needs less stock; it follows from worths of the pieces that no bar exceeds, reckoned in whole numbers. The least number of bars is said where one length is in stock; of several lengths it is the stock that counts.",
      "Waste is what of the stock is neither a piece nor a rest that goes back to the stock: kerf, trim and scrap.",
    ],
  };
}

function pieceCount({ patterns }: BarPlan): number {
  return patterns.reduce((sum, pattern) => sum + pattern.bars * piecesOn(pattern), 0);
}

function summaryRow(number: string, group: BarGroup, plan: BarPlan, stock: RodStock, unit: Unit): readonly ListCell[] {
  const used = plan.patterns.reduce(
    (sum, { bars, pieces }) => sum + bars * pieces.reduce((all, { length, count }) => all + length * count, 0),
    0,
  );
  const { leastRemnant } = stock;
  const kept =
    leastRemnant.kind === "missing"
      ? null
      : plan.patterns.reduce((sum, { bars, remnant }) => sum + (remnant >= leastRemnant.value ? bars * remnant : 0), 0);
  return [
    number,
    sizeWords(group, unit),
    lengthInputCell(group.bar, unit),
    group.grade,
    pieceCount(plan),
    lengthCell(used, unit),
    plan.bars,
    isOneLength(group) ? plan.leastBars : null,
    lengthCell(plan.stockLength, unit),
    lengthCell(plan.leastStockLength, unit),
    proofWords(plan, unit),
    kept === null ? NOT_GIVEN : lengthCell(kept, unit),
    percentCell(plan.stockLength - used - (kept ?? 0), plan.stockLength),
  ];
}

/** Of several lengths the number of bars says nothing: it is the stock that is least. */
function isOneLength({ stock }: BarGroup): boolean {
  return stock.kind === "given" && new Set(stock.value.lengths).size === 1;
}

function proofWords({ isProvenLeast, stockLength, leastStockLength }: BarPlan, unit: Unit): string {
  if (isProvenLeast) return "proven least";
  return `within ${formatLength(stockLength - leastStockLength, unit)} ${unit}`;
}

/** Tenths of a hundredth. */
function percentCell(part: number, whole: number): ListCell {
  const value = whole === 0 ? 0 : Math.round((part / whole) * 1000) / 10;
  return { value, text: value.toFixed(1) };
}
