/** The cut list as it is printed: for each stock what to cut by which file, then its figures with their sums, then all together. */
import { listed } from "../diagnostics/listed.js";
import { formatLength, type Unit } from "../units/index.js";
import { millimetres } from "../units/length.js";
import { weightUnit } from "./cells.js";
import type { ListCell, ListColumn, ListTable } from "./model.js";
import {
  boardWords,
  countDrilled,
  drillWords,
  filesOf,
  holeWords,
  type PlateListOf,
  statusWords,
  stockTitle,
  unknownWeights,
} from "./plate-list.js";
import {
  AREA_UNITS,
  countPieces,
  eachFigure,
  type PlateMeasure,
  type PlateRow,
  type PlateStock,
  plateStocks,
  totalFigure,
} from "./plate-rows.js";

/** So many marks stand in a row; workbook, CSV and sheet have all. */
const MOST_BASES = 16;

/** Tables of the pages: what the operator cuts by, what is added up of it, and the sums of all stocks. */
export interface PlatePages {
  readonly toCut: readonly ListTable[];
  readonly figures: readonly ListTable[];
  readonly all: ListTable;
}

/** In the order of the stocks. */
export function platePages(of: PlateListOf): PlatePages {
  const stocks = plateStocks(of.rows);
  return {
    toCut: stocks.map((stock, i) => onPage(toCutTable(stock, i, of))),
    figures: stocks.map((stock, i) => onPage(figureTable(stock, i, of))),
    all: onPage(allTable(stocks, of)),
  };
}

type BareTable = Omit<ListTable, "views">;

/** All its columns under their own headings. */
function onPage(table: BareTable): ListTable {
  const columns = table.columns.map(({ heading }) => [heading, heading] as const);
  return { ...table, views: [{ title: table.title, columns }] };
}

const number = (heading: string): ListColumn => ({ heading, width: 8, isFigure: true });
const words = (heading: string): ListColumn => ({ heading, width: 12 });

/** `PL 3/8, STEEL, A36: 8 pieces`. */
function titleOf(stock: PlateStock, unit: Unit): string {
  const count = countPieces(stock.rows);
  return `${stockTitle(stock, unit)}: ${count} ${count === 1 ? "PIECE" : "PIECES"}`;
}

function toCutTable(stock: PlateStock, at: number, { unit, status }: PlateListOf): BareTable {
  const isParted = stock.rows.some(({ role }) => role !== "template");
  const isDrilled = stock.rows.some((row) => countDrilled(row) > 0);
  return {
    key: `plates-${at + 1}`,
    name: stockTitle(stock, unit),
    title: titleOf(stock, unit),
    columns: [
      words("mark"),
      ...(isParted ? [words("piece")] : []),
      words("qty"),
      words("size"),
      words("holes"),
      ...(isDrilled ? [words("of them drill")] : []),
      words("status"),
      words("file in cut/"),
    ],
    rows: stock.rows.map((row): readonly ListCell[] => [
      row.mark,
      ...(isParted ? [row.role] : []),
      row.quantity,
      `${sizeText(row.width, unit)} x ${sizeText(row.height, unit)}`,
      holeWords(row),
      ...(isDrilled ? [drillWords(row, unit)] : []),
      statusWords(row, status),
      filesOf(row)[0] ?? "NONE IS WRITTEN",
    ]),
    totals: [],
    remarks: [],
  };
}

const SUMMED: readonly PlateMeasure[] = ["gross", "net", "cut", "pierces", "scribe"];

/** Of all pieces of a row. */
function summedColumns(unit: Unit): readonly ListColumn[] {
  const area = AREA_UNITS[unit];
  return [
    number(`gross ${area}`),
    number(`net ${area}`),
    number(`cut ${unit}`),
    number("pierces"),
    number(`scribe ${unit}`),
  ];
}

function figureTable(stock: PlateStock, at: number, { unit }: PlateListOf): BareTable {
  const { rows } = stock;
  const held = rows.filter((row) => row.held);
  return {
    key: `figures-${at + 1}`,
    name: stockTitle(stock, unit),
    title: titleOf(stock, unit),
    columns: [
      words("mark"),
      words("bases"),
      number("qty"),
      number(`${weightUnit(unit)} each`),
      number(weightUnit(unit)),
      ...summedColumns(unit),
    ],
    rows: rows.map((row): readonly ListCell[] => [
      row.mark,
      listed(row.bases, MOST_BASES, " "),
      row.quantity,
      eachFigure(row, "weight", unit),
      totalFigure([row], "weight", unit),
      ...SUMMED.map((measure) => totalFigure([row], measure, unit)),
    ]),
    totals: [sumCells("TOTAL", rows, unit), ...(held.length === 0 ? [] : [sumCells("HELD", held, unit)])],
    remarks: [],
  };
}

function sumCells(name: string, rows: readonly PlateRow[], unit: Unit): readonly ListCell[] {
  const sums = SUMMED.map((measure) => totalFigure(rows, measure, unit));
  return [name, null, countPieces(rows), null, totalFigure(rows, "weight", unit), ...sums];
}

function allTable(stocks: readonly PlateStock[], { rows, unit }: PlateListOf): BareTable {
  const row = (name: string, own: readonly PlateRow[]): readonly ListCell[] => [
    name,
    own.length,
    countPieces(own),
    countPieces(own.filter(({ held }) => held)),
    totalFigure(own, "weight", unit),
    ...SUMMED.map((measure) => totalFigure(own, measure, unit)),
  ];
  return {
    key: "all-plates",
    name: "All plates",
    title: "ALL PLATES BY MATERIAL AND THICKNESS",
    columns: [
      words("stock"),
      ...["marks", "pieces", "of them held", weightUnit(unit)].map(number),
      ...summedColumns(unit),
    ],
    rows: stocks.map((stock) => row(stockTitle(stock, unit), stock.rows)),
    totals: [row("TOTAL", rows)],
    remarks: [
      ...boardWords(rows),
      "Figures are of all pieces of a row. Gross: inside the outline; net: without what is cut out of it, drilled holes not taken off. Boards have no cut length.",
      ...unknownWeights(rows),
    ],
  };
}

/** Of a box in millimetres. */
function sizeText(size: number, unit: Unit): string {
  return formatLength(millimetres(size), unit);
}
