/** Plates and boards of a job, each once however many bases share its template, in figures that add up as they are shown. */
import type { BaseFacts, PieceFacts } from "../summary/facts.js";
import { groupBy } from "../units/group-by.js";
import { formatStock, type Unit } from "../units/index.js";
import type { ListFigure } from "./model.js";

/** A piece with the bases that it is for. */
export interface PlateRow extends PieceFacts {
  readonly bases: readonly string[];
  readonly held: boolean;
  /** True where the job is released and no question stops it. */
  readonly released: boolean;
}

/** Pieces that are cut from one stock: of one material, grade and thickness. */
export interface PlateStock extends Pick<PieceFacts, "material" | "grade" | "thickness"> {
  readonly rows: readonly PlateRow[];
}

/** In the order of the job. */
export function plateRows(facts: readonly BaseFacts[]): readonly PlateRow[] {
  const taken = new Set<string>();
  return facts.flatMap(({ held, released, pieces, template: { bases } }) =>
    pieces.flatMap((piece): readonly PlateRow[] => {
      const key = piece.mark.toUpperCase();
      if (taken.has(key)) return [];
      taken.add(key);
      return [{ ...piece, bases, held, released }];
    }),
  );
}

/** Steel before board, then by grade, those without one last, then by thickness. A grade is the same in any case and spacing. */
export function plateStocks(rows: readonly PlateRow[]): readonly PlateStock[] {
  const groups = groupBy(rows, ({ material, grade, thickness }) =>
    JSON.stringify([material, gradeKey(grade), thickness]),
  );
  return [...groups.values()]
    .flatMap((own): readonly PlateStock[] => {
      const [first] = own;
      if (first === undefined) return [];
      const { material, grade, thickness } = first;
      return [{ material, grade, thickness, rows: own }];
    })
    .sort((a, b) => compareStocks(a, b));
}

const gradeKey = (grade: string | null): string => grade?.replace(/\s+/g, "").toUpperCase() ?? "";

function compareStocks(a: PlateStock, b: PlateStock): number {
  if (a.material !== b.material) return a.material === "steel" ? -1 : 1;
  const [one, other] = [gradeKey(a.grade), gradeKey(b.grade)];
  if (one !== other && (one === "" || other === "")) return one === "" ? 1 : -1;
  if (one !== other) return one < other ? -1 : 1;
  return a.thickness - b.thickness;
}

/** `PL 3/8`, `PLY 3/4`. */
export function stockWords({ material, thickness }: Pick<PieceFacts, "material" | "thickness">, unit: Unit): string {
  return `${material === "steel" ? "PL" : "PLY"} ${formatStock(thickness, unit)}`;
}

/** Unit of areas in a list of that unit of lengths. */
export const AREA_UNITS: Readonly<Record<Unit, string>> = { in: "in2", mm: "m2" };

/** What is added up of plates. */
export type PlateMeasure = "weight" | "gross" | "net" | "cut" | "pierces" | "scribe";

/** Decimals that lists show, and sums have: of each measure, by the unit of lengths. */
const DECIMALS: Readonly<Record<PlateMeasure, Readonly<Record<Unit, number>>>> = {
  weight: { in: 3, mm: 3 },
  gross: { in: 2, mm: 4 },
  net: { in: 2, mm: 4 },
  cut: { in: 2, mm: 1 },
  pierces: { in: 0, mm: 0 },
  scribe: { in: 2, mm: 1 },
};

const MM_PER_IN = 25.4;
const MM2_PER: Readonly<Record<Unit, number>> = { in: MM_PER_IN ** 2, mm: 1e6 };

/** Of one piece; null where it is not known, or nothing is cut by a table. */
function measured({ weight, outlineArea, netArea, cutLength, pierces, scribeLength, material }: PlateRow, unit: Unit) {
  const isCut = material === "steel";
  const length = (millimetres: number) => (isCut ? (unit === "in" ? millimetres / MM_PER_IN : millimetres) : null);
  return {
    weight: weight?.value ?? null,
    gross: outlineArea / MM2_PER[unit],
    net: netArea / MM2_PER[unit],
    cut: length(cutLength),
    pierces: isCut ? pierces : null,
    scribe: length(scribeLength),
  } satisfies Record<PlateMeasure, number | null>;
}

/** A measure of one piece in whole steps of what lists show; null where there is none. */
function stepsOf(row: PlateRow, measure: PlateMeasure, unit: Unit): number | null {
  const value = measured(row, unit)[measure];
  return value === null ? null : Math.round(value * 10 ** DECIMALS[measure][unit]);
}

function figure(steps: number, measure: PlateMeasure, unit: Unit): ListFigure {
  const places = DECIMALS[measure][unit];
  const value = steps / 10 ** places;
  return { value, text: value.toFixed(places) };
}

/** As weights of every list: those of one piece are told apart, sums stand to the tenth on pages. */
function totalOf(steps: number, measure: PlateMeasure, unit: Unit): ListFigure {
  const sum = figure(steps, measure, unit);
  return measure === "weight" ? { ...sum, text: sum.value.toFixed(1) } : sum;
}

/** Of one piece. */
export function eachFigure(row: PlateRow, measure: PlateMeasure, unit: Unit): ListFigure | null {
  const steps = stepsOf(row, measure, unit);
  return steps === null ? null : figure(steps, measure, unit);
}

/** Of all pieces of these rows: the sum of what their rows show, of those that have it; null where none has. */
export function totalFigure(rows: readonly PlateRow[], measure: PlateMeasure, unit: Unit): ListFigure | null {
  const known = rows.flatMap((row) => {
    const steps = stepsOf(row, measure, unit);
    return steps === null ? [] : [steps * row.quantity];
  });
  if (known.length === 0) return null;
  return totalOf(
    known.reduce((sum, each) => sum + each, 0),
    measure,
    unit,
  );
}

/** How many pieces these rows are. */
export function countPieces(rows: readonly PlateRow[]): number {
  return rows.reduce((sum, { quantity }) => sum + quantity, 0);
}
