/** What the operator of a cutting table looks for before the first pierce: where 0,0 is, how large, which layers, how long. */
import { joinExtents } from "../geometry/index.js";
import type { Extent } from "../geometry/vocabulary.js";
import { greatestOf } from "../units/extremes.js";
import { formatDecimals, formatLength, formatStock, nanometres, type Unit } from "../units/index.js";
import { NM_PER_MM, roundSymmetric } from "../units/length.js";
import { onceFor } from "../units/once.js";
import { at, group, line, stroke, text } from "./items.js";
import { isPart, type LayersByUse, type SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { headingItems, type Piece, rowHeight } from "./table.js";
import { printable, textWidth, wrap } from "./text-metrics.js";
import { unitWord } from "./unit-word.js";

/** A value in lines with what it is before it; `half`: short enough to stand beside another. */
interface Entry {
  readonly label: string;
  readonly lines: readonly string[];
  readonly half: boolean;
}

/** The box as a piece of a panel, `width` wide; null where there is no cut file. */
export function operatorBox(request: SheetRequest, width: number, lettering: Lettering): Piece | null {
  if (request.cutFiles.length === 0) return null;
  const { small, body } = lettering;
  const values = valuesOf(request);
  const indent = values.reduce((most, [label]) => Math.max(most, ownIndent({ label }, small)), 0);
  const rows = paired(
    values.map(([label, value]): Entry => {
      const half = textWidth(value, small) <= width / 2 - indent - small;
      return { label, lines: wrap(value, width - indent - PAD, small), half };
    }),
  );
  const heights = rows.map((row) => greatestOf(row.map(({ lines }) => lines.length)) * rowHeight(lettering));
  const end = body * 2 + heights.reduce((sum, each) => sum + each, 0);
  const draw = (x: number, top: number): SceneItem => {
    let y = top - body * 2;
    const texts = rows.flatMap((row, i) => {
      const items = row.flatMap((entry, k) =>
        entryItems(entry, x + (k * width) / 2, y, k === 0 ? indent : ownIndent(entry, small), lettering),
      );
      y -= heights[i] ?? 0;
      return items;
    });
    const foot = stroke("table", line(at(x, top - end), at(x + width, top - end)));
    return group("operator-box", [...headingItems("FOR THE CUTTING TABLE", x, top, width, lettering), ...texts, foot]);
  };
  return { height: end + 1, draw };
}

/** Of the value after its label. */
function ownIndent({ label }: Pick<Entry, "label">, small: number): number {
  return textWidth(label, small) + PAD + small;
}

/** Two that are short stand beside each other where one comes after the other. */
function paired(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const rows: Entry[][] = [];
  for (const entry of entries) {
    const last = rows.at(-1);
    if (entry.half && last?.length === 1 && last[0]?.half === true) last.push(entry);
    else rows.push([entry]);
  }
  return rows;
}

function entryItems(
  { label, lines }: Entry,
  x: number,
  top: number,
  indent: number,
  lettering: Lettering,
): readonly SceneItem[] {
  const { small } = lettering;
  const row = rowHeight(lettering);
  const base = (i: number) => top - i * row - (row + small) / 2;
  return [
    text("table", label, at(x + PAD, base(0)), small),
    ...lines.map((words, i) => text("table", words, at(x + indent, base(i)), small)),
  ];
}

const PAD = 0.8;

const valuesOf = onceFor(operatorValues);

/** Labels and values, in the job's unit; figures are those of the summary. */
function operatorValues(request: SheetRequest): readonly (readonly [string, string])[] {
  const { job, plate, measures, base } = request;
  const { unit } = job;
  const { x0, y0, x1, y1 } = drawnExtent(request);
  const { x, y } = originOf(request);
  return [
    ["FILE 0,0", originWords(request)],
    ["EXTENTS", `${pairInUnit(x0 - x, y0 - y, unit)} TO ${pairInUnit(x1 - x, y1 - y, unit)} ${unitWord(unit)}`],
    ...layerValues(request.cutFiles.find(({ layers }) => layers !== undefined)?.layers),
    ["CUT", `${lengthInUnit(measures.cutLength, unit)} ${unit}, ${measures.pierces} PIERCES`],
    ["STEEL", `${formatStock(plate.thickness, unit)}, ${gradeWords(plate)}`],
    ["QUANTITY", `${base.template.quantity}; NET ${weightWords(request)}`],
  ];
}

/** `GRADE A36`. */
function gradeWords({ grade }: SheetRequest["plate"]): string {
  return `GRADE ${grade === null ? "NOT GIVEN" : printable(grade)}`;
}

/** Where 0,0 of the cut file lies, and where the working point is from there. */
export function originWords(request: SheetRequest): string {
  if (request.job.shop.cutFile.origin !== "lower left" && !isPart(request.piece)) return "THE WORKING POINT (W.P.)";
  if (isPart(request.piece)) return "LOWER LEFT OF THE OUTLINE, AS ON THIS SHEET";
  const { x, y } = originOf(request);
  return `LOWER LEFT OF THE OUTLINE; W.P. AT ${pairInUnit(-x, -y, request.job.unit)}`;
}

/** Millimetres, base axes. */
function originOf({ job, measures: { extent } }: SheetRequest): { readonly x: number; readonly y: number } {
  return job.shop.cutFile.origin === "lower left" ? { x: extent.x0, y: extent.y0 } : { x: 0, y: 0 };
}

function pairInUnit(x: number, y: number, unit: Unit): string {
  return `${inUnit(x, unit)}, ${inUnit(y, unit)}`;
}

function layerValues(layers: LayersByUse | undefined): readonly (readonly [string, string])[] {
  if (layers === undefined) return [];
  const mark = layers.mark.length === 0 ? "NONE" : layers.mark.join(", ");
  return [["LAYERS", `TO CUT: ${layers.cut.join(", ")}. TO SCRIBE: ${mark}.`]];
}

/** Of one template, and of all; rounded as a scale shows it. */
function weightWords({ weight, base }: SheetRequest): string {
  if (weight === null) return "WEIGHT NOT KNOWN";
  const { value, unit } = weight;
  const rounded = (each: number): number => roundSymmetric(each * 10) / 10;
  const each = `${rounded(value)} ${unit} EACH`;
  return base.template.quantity === 1 ? each : `${each}, ${rounded(value * base.template.quantity)} ${unit} IN ALL`;
}

/** Everything that the file draws: the outline, and marks that are scribed or punched. Millimetres, base axes. */
function drawnExtent({ plate, measures, job }: SheetRequest): Extent {
  const isScribed = job.shop.marking.how === "scribe";
  return plate.marks
    .filter(({ kind, strokes }) => strokes.length > 0 && (kind === "punch" || isScribed))
    .reduce((all, { extent }) => joinExtents(all, extent), measures.extent);
}

/** Millimetres as a coordinate in the job's unit. */
function inUnit(millimetres: number, unit: Unit): string {
  return formatLength(roundSymmetric(millimetres * NM_PER_MM), unit);
}

/** A length of many cuts: hundredths of an inch, tenths of a millimetre. */
function lengthInUnit(millimetres: number, unit: Unit): string {
  return formatDecimals(nanometres(roundSymmetric(millimetres * NM_PER_MM)), unit, unit === "in" ? 2 : 1);
}
