/** What the operator of a cutting table looks for before the first pierce: where 0,0 is, how large, which layers, how long. */
import { joinExtents } from "../geometry/index.js";
import type { Extent } from "../geometry/vocabulary.js";
import { formatDecimals, formatLength, nanometres, type Unit } from "../units/index.js";
import { NM_PER_MM, roundSymmetric } from "../units/length.js";
import { at, group, line, stroke, text } from "./items.js";
import { onceFor } from "./once.js";
import type { LayersByUse, SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { headingItems, type Piece, rowHeight } from "./table.js";
import { textWidth, wrap } from "./text-metrics.js";
import { unitWord } from "./unit-word.js";

/** A line of the box: what it is, and its value in lines. */
interface Line {
  readonly label: string;
  readonly lines: readonly string[];
}

/** The box as a piece of a panel, `width` wide; null where there is no cut file. */
export function operatorBox(request: SheetRequest, width: number, lettering: Lettering): Piece | null {
  if (request.cutFiles.length === 0) return null;
  const { small, body } = lettering;
  const values = valuesOf(request);
  const indent = values.reduce((most, [label]) => Math.max(most, textWidth(label, small)), 0) + 2.5 * PAD;
  const lines = values.map(([label, value]): Line => ({ label, lines: wrap(value, width - indent - PAD, small) }));
  const count = lines.reduce((sum, each) => sum + each.lines.length, 0);
  const row = rowHeight(lettering);
  const height = body * 2 + count * row + 1;
  const draw = (x: number, top: number): SceneItem => {
    let y = top - body * 2;
    const texts = lines.flatMap(({ label, lines: words }) =>
      words.flatMap((each, i) => {
        y -= row;
        const base = y + (row - small) / 2;
        return [
          ...(i === 0 ? [text("table", label, at(x + PAD, base), small)] : []),
          text("table", each, at(x + indent, base), small),
        ];
      }),
    );
    const end = top - body * 2 - count * row;
    const foot = stroke("table", line(at(x, end), at(x + width, end)));
    return group("operator-box", [...headingItems("FOR THE CUTTING TABLE", x, top, width, lettering), ...texts, foot]);
  };
  return { height, draw };
}

const PAD = 0.8;

const valuesOf = onceFor(operatorValues);

/** Labels and values, in the job's unit; figures are those of the summary. */
function operatorValues(request: SheetRequest): readonly (readonly [string, string])[] {
  const { job, plate, measures, base } = request;
  const { unit } = job;
  const { x0, y0, x1, y1 } = drawnExtent(request);
  const isLowerLeft = job.shop.cutFile.origin === "lower left";
  const [left, low] = isLowerLeft ? [measures.extent.x0, measures.extent.y0] : [0, 0];
  const pair = (x: number, y: number): string => `${inUnit(x, unit)}, ${inUnit(y, unit)}`;
  const wp = isLowerLeft ? `LOWER LEFT OF THE OUTLINE; W.P. AT ${pair(-left, -low)}` : "THE WORKING POINT (W.P.)";
  return [
    ["FILE 0,0", wp],
    ["EXTENTS", `${pair(x0 - left, y0 - low)} TO ${pair(x1 - left, y1 - low)} ${unitWord(unit)}`],
    ...layerValues(request.cutFiles.find(({ layers }) => layers !== undefined)?.layers),
    ["CUT", `${lengthInUnit(measures.cutLength, unit)} ${unit} IN ALL, ${measures.pierces} PIERCES`],
    ["STEEL", `${formatLength(plate.thickness, unit)}, STEEL GRADE NOT GIVEN`],
    ["QUANTITY", `${base.template.quantity}; NET ${weightWords(request)}`],
  ];
}

function layerValues(layers: LayersByUse | undefined): readonly (readonly [string, string])[] {
  if (layers === undefined) return [];
  const mark = layers.mark.length === 0 ? "NONE" : layers.mark.join(", ");
  return [["LAYERS", `CUT ${layers.cut.join(", ")}; SCRIBE ${mark}`]];
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
