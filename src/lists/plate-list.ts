/** The cut list of plates: a row a piece, and a row a stock that they are cut from. */
import type { Job } from "../job/model/job.js";
import type { PieceFacts } from "../summary/facts.js";
import { formatLength, toUnit, type Unit } from "../units/index.js";
import { millimetres } from "../units/length.js";
import { NOT_GIVEN, weightUnit } from "./cells.js";
import type { ListCell, ListColumn, ListFigure, ListTable } from "./model.js";
import {
  AREA_UNITS,
  countPieces,
  eachFigure,
  type PlateMeasure,
  type PlateRow,
  type PlateStock,
  plateStocks,
  stockWords,
  totalFigure,
} from "./plate-rows.js";

/** What a cut list is made of. */
export interface PlateListOf {
  readonly rows: readonly PlateRow[];
  readonly unit: Unit;
  readonly status: Job["status"];
}

const figureColumn = (heading: string, width: number): ListColumn => ({ heading, width, isFigure: true });

/** Of each measure, what it is and its unit. */
export function measureWords(unit: Unit): Readonly<Record<PlateMeasure, readonly [string, string]>> {
  return {
    weight: ["weight", `, ${weightUnit(unit)}`],
    gross: ["gross area", `, ${AREA_UNITS[unit]}`],
    net: ["net area", `, ${AREA_UNITS[unit]}`],
    cut: ["cut length", `, ${unit}`],
    pierces: ["pierces", ""],
    scribe: ["scribe length", `, ${unit}`],
  };
}

const MEASURES: readonly PlateMeasure[] = ["weight", "gross", "net", "cut", "pierces", "scribe"];

/** A row a piece, by stock. */
export function plateList({ rows, unit, status }: PlateListOf): ListTable {
  const ordered = plateStocks(rows).flatMap((stock) => stock.rows);
  const held = rows.filter((row) => row.held);
  const columns = plateColumns(unit);
  return {
    key: "plates",
    name: "Plates",
    title: "CUT LIST OF PLATES",
    columns,
    rows: ordered.map((row) => plateCells(row, unit, status)),
    totals: [
      totalCells("TOTAL", rows, unit, columns),
      ...(held.length === 0 ? [] : [totalCells("of which HELD", held, unit, columns)]),
    ],
    remarks: [...remarks(unit), ...boardWords(rows)],
    views: [],
  };
}

function remarks(unit: Unit): readonly string[] {
  const fraction = unit === "in" ? "inches" : "millimetres";
  return [
    `Lengths in ${fraction}. Each row is one plate, in the file of its name; its quantity is for all bases together. HELD: not to be cut.`,
    "Gross area is inside the outline, net without what the table cuts out of it: drilled holes are not taken off. Pierces and cut length count contours that are cut; scribe length what the file marks.",
    "Drilled holes are centre-punched by the file and drilled by hand.",
  ];
}

/** What boards are made by. */
export function boardWords(rows: readonly Pick<PlateRow, "material">[]): readonly string[] {
  if (rows.every(({ material }) => material === "steel")) return [];
  return [
    "Boards (PLY) are sawn and drilled by hand: by the drill list, or by the print at full size that lies beside it and is named alike (_full-size.pdf).",
  ];
}

function plateColumns(unit: Unit): readonly ListColumn[] {
  const words = measureWords(unit);
  return [
    { heading: "mark", width: 12 },
    { heading: "piece", width: 11 },
    figureColumn("quantity", 9),
    { heading: "material", width: 10 },
    { heading: "grade", width: 13, isWrapped: true },
    { heading: "plate", width: 10 },
    figureColumn(`thickness, ${unit}`, 10),
    figureColumn(`size x, ${unit}`, 9),
    figureColumn(`size y, ${unit}`, 9),
    ...MEASURES.flatMap((measure) => {
      const [what, of] = words[measure];
      return [figureColumn(`${what} each${of}`, 10), figureColumn(`${what} total${of}`, 11)];
    }),
    figureColumn("holes and openings each", 9),
    figureColumn("of them drilled", 8),
    { heading: "drill", width: 14, isWrapped: true },
    { heading: "bases", width: 20, isWrapped: true },
    { heading: "status", width: 14 },
    { heading: "file", width: 44 },
    { heading: "other flavour", width: 52 },
  ];
}

function plateCells(row: PlateRow, unit: Unit, status: Job["status"]): readonly ListCell[] {
  const [file = null, other = null] = filesOf(row);
  return [
    row.mark,
    row.role,
    row.quantity,
    row.material,
    row.grade ?? NOT_GIVEN,
    stockWords(row, unit),
    lengthFigure(row.thickness, unit),
    sizeFigure(row.width, unit),
    sizeFigure(row.height, unit),
    ...MEASURES.flatMap((measure) => [eachFigure(row, measure, unit), totalFigure([row], measure, unit)]),
    countHoles(row),
    countDrilled(row),
    drillWords(row, unit),
    row.bases.join(" "),
    statusWords(row, status),
    file,
    other,
  ];
}

/** Sums of a column that has them, under the row's name. */
function totalCells(
  name: string,
  rows: readonly PlateRow[],
  unit: Unit,
  columns: readonly ListColumn[],
): readonly ListCell[] {
  const sums = new Map<string, ListCell>(
    MEASURES.map((measure) => {
      const [what, of] = measureWords(unit)[measure];
      return [`${what} total${of}`, totalFigure(rows, measure, unit)];
    }),
  );
  return columns.map(({ heading }, i): ListCell => {
    if (i === 0) return name;
    if (heading === "quantity" || heading === "pieces") return countPieces(rows);
    return sums.get(heading) ?? null;
  });
}

function lengthFigure(length: number, unit: Unit): ListFigure {
  return { value: toUnit(length, unit), text: formatLength(length, unit) };
}

/** Of a box in millimetres. */
export function sizeFigure(size: number, unit: Unit): ListFigure {
  return lengthFigure(millimetres(size), unit);
}

/** `8 + 1 opening`: holes of one piece, cut and drilled, and what is open in it besides. */
export function holeWords({ holes }: Pick<PieceFacts, "holes">): string {
  const round = countHoles({ holes }) - holes.opening;
  return holes.opening === 0 ? `${round}` : `${round} + ${holes.opening} opening${holes.opening === 1 ? "" : "s"}`;
}

/** Of one piece, cut and drilled, openings among them: every contour but the outline. */
export function countHoles({ holes }: Pick<PieceFacts, "holes">): number {
  return Object.values(holes).reduce((sum, each) => sum + each, 0);
}

/** Those of them that are drilled. */
export function countDrilled({ drilled }: Pick<PieceFacts, "drilled">): number {
  return drilled.reduce((sum, { count }) => sum + count, 0);
}

/** `4 x 9/16, 2 x 1/8`. */
export function drillWords({ drilled }: Pick<PieceFacts, "drilled">, unit: Unit): string {
  return drilled.map(({ diameter, count }) => `${count} x ${formatLength(diameter, unit)}`).join(", ");
}

/** What may be done with it. */
export function statusWords(
  { held, released, material }: Pick<PlateRow, "held" | "released" | "material">,
  status: Job["status"],
): string {
  if (held) return "HELD";
  if (status !== "released" || !released) return "NOT RELEASED";
  return material === "steel" ? "to cut" : "to drill";
}

/** Its files from where the list lies, the one that the table loads first. */
export function filesOf({ files }: Pick<PieceFacts, "files">): readonly string[] {
  const depth = (path: string) => path.split("/").length;
  const paths = files.map(({ path }) => path).sort((a, b) => depth(a) - depth(b));
  return paths.map((path) => path.slice(path.indexOf("/") + 1));
}

/** A row a stock; its sums are those of its pieces. */
export function stockList({ rows, unit }: PlateListOf): ListTable {
  const stocks = plateStocks(rows);
  const words = measureWords(unit);
  const columns: readonly ListColumn[] = [
    { heading: "material", width: 12 },
    { heading: "grade", width: 14, isWrapped: true },
    { heading: "plate", width: 11 },
    figureColumn(`thickness, ${unit}`, 10),
    figureColumn("marks", 8),
    figureColumn("pieces", 8),
    figureColumn("of them held", 9),
    ...MEASURES.map((measure) => figureColumn(`${words[measure][0]} total${words[measure][1]}`, 12)),
  ];
  const held = (own: readonly PlateRow[]) => countPieces(own.filter((row) => row.held));
  const total = totalCells("TOTAL", rows, unit, columns);
  return {
    key: "by-material",
    name: "By material",
    title: "PLATES BY MATERIAL AND THICKNESS",
    columns,
    rows: stocks.map((stock): readonly ListCell[] => [
      stock.material,
      stock.grade ?? NOT_GIVEN,
      stockWords(stock, unit),
      lengthFigure(stock.thickness, unit),
      stock.rows.length,
      countPieces(stock.rows),
      held(stock.rows),
      ...MEASURES.map((measure) => totalFigure(stock.rows, measure, unit)),
    ]),
    totals: [total.map((cell, i) => (i === 4 ? rows.length : i === 6 ? held(rows) : cell))],
    remarks: unknownWeights(rows),
    views: [],
  };
}

/** What is not in the sums. */
export function unknownWeights(rows: readonly PlateRow[]): readonly string[] {
  const unknown = rows.filter(({ weight }) => weight === null).length;
  if (unknown === 0) return [];
  return [
    `The weight of ${unknown} of ${rows.length} marks is not known (density of the shop file) and not in the totals.`,
  ];
}

/** `PL 3/8, STEEL A36`. */
export function stockTitle(stock: PlateStock, unit: Unit): string {
  return `${stockWords(stock, unit)}, ${stock.material.toUpperCase()}, ${stock.grade ?? `GRADE ${NOT_GIVEN.toUpperCase()}`}`;
}
