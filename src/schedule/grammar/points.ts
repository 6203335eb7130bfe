/** Points and lists of lengths: `-6,5; 6,5`, `0, 3`, `-9; 0; 9`, `1/8: -9,8; 9,8`. Each number is judged where it is used. */
import type { SourceNode } from "../../readers/source.js";
import type { CellReading } from "../model.js";
import type { CellText } from "./answers.js";
import { one, refuse } from "./answers.js";
import { list, map, scalar } from "./nodes.js";
import type { CellContext } from "./scan.js";
import { plainCell } from "./tokens.js";

/** Parts between separators; empty ones stay, but for a text that is empty. */
function split(text: string, separator: "," | ";"): readonly string[] {
  const parts = text.split(separator).map((part) => part.trim());
  return parts.length === 1 && parts[0] === "" ? [] : parts;
}

/** A number with the unit of the heading where it has none of its own. */
function number(text: string, { headingUnit, unit, place }: CellContext): SourceNode {
  const isBare = /^[\d ./+-]+$/.test(plainCell(text));
  return scalar(isBare && headingUnit !== null && headingUnit !== unit ? `${text} ${headingUnit}` : text, place);
}

/** `0, 3`, with brackets or without. */
export function pointIn(text: string, context: CellContext): SourceNode {
  const plain = text.trim();
  const isOpen = plain.startsWith("(") || plain.startsWith("[");
  const isShut = plain.endsWith(")") || plain.endsWith("]");
  const bare = plain.slice(isOpen ? 1 : 0, isShut ? -1 : undefined);
  const numbers = split(bare, ",").map((part) => number(part, context));
  return list(numbers, context.place);
}

/** `-6,5; 6,5`, or a point a line. */
export function pointsIn(text: string, context: CellContext): SourceNode {
  const each = text
    .replaceAll("\n", ";")
    .split(";")
    .filter((part) => part.trim() !== "");
  return list(
    each.map((part) => pointIn(part, context)),
    context.place,
  );
}

/** `-9; 0; 9` */
export function readLengths(cell: CellText): CellReading {
  const numbers = split(cell.text, ";").map((part) => number(part, cell.context));
  return one(cell, list(numbers, cell.context.place));
}

/** `0, 3` */
export function readPoint(cell: CellText): CellReading {
  const numbers = split(cell.text, ",").map((part) => number(part, cell.context));
  return one(cell, list(numbers, cell.context.place));
}

/** `-6,5; 6,5` */
export function readPoints(cell: CellText): CellReading {
  return one(cell, pointsIn(cell.text, cell.context));
}

/** `1/8: -9,8; 9,8`: a diameter and where; holes of a second source may leave their diameter out. */
export function readHoles(cell: CellText): CellReading {
  const { context, text } = cell;
  const isSecondSource = context.key.endsWith(".pattern");
  const parts = text.split(":").map((part) => part.trim());
  const [before = "", after] = parts;
  if (parts.length > 2 || (after === undefined && !isSecondSource)) {
    return refuse(cell, "a diameter and points, as 1/8: -9,8; 9,8");
  }
  const diameter =
    after === undefined ? {} : { [isSecondSource ? "hole" : "diameter"]: number(bareDiameter(before), context) };
  return one(cell, map({ ...diameter, at: pointsIn(after ?? before, context) }, context.place));
}

function bareDiameter(text: string): string {
  const plain = plainCell(text).toLowerCase();
  const sign = ["diameter ", "dia. ", "dia ", "\u00F8 ", "\u00F8"].find((each) => plain.startsWith(each));
  return sign === undefined ? text : plain.slice(sign.length);
}
