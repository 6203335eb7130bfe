/** One cell of a schedule by the form of its column: a value, a blank, a reference, a choice, or a fault. */
import { quote } from "../../units/index.js";
import type { CellReading, FormName } from "../model.js";
import type { CellText } from "./answers.js";
import { one, refuse } from "./answers.js";
import { isBlank, isDitto, readEverywhere, withoutTypical } from "./everywhere.js";
import { readBottom, readNut, readWasher } from "./fastenings.js";
import { readMarkCell } from "./marks.js";
import { readFinish, readGrade, readMaterial } from "./material.js";
import { readHole, readPier, readPlate, readThickness } from "./plates.js";
import { readHoles, readLengths, readPoint, readPoints } from "./points.js";
import { readRod, readRods } from "./rods.js";
import type { CellContext } from "./scan.js";
import { readSection } from "./sections.js";
import { readCorner, readOpening, readOutline } from "./shapes.js";
import { readCount, readElevation, readLength, readWord, readYesNo, synonymOf } from "./singles.js";
import { readPattern, readPitch, readSpacing } from "./spacing.js";
import { plainCell, tokenize } from "./tokens.js";

/** How the cells of a form are read, once it is known that they hold a value. */
const FORMS: Readonly<Record<FormName, (cell: CellText) => CellReading>> = {
  text: (cell) => one(cell, cell.text),
  note: (cell) => one(cell, cell.text),
  word: readWord,
  yesNo: readYesNo,
  count: readCount,
  mark: (cell) => readMarkCell(cell),
  length: readLength,
  lengths: readLengths,
  point: readPoint,
  points: readPoints,
  elevation: readElevation,
  thickness: readThickness,
  rod: readRod,
  rods: readRods,
  grade: readGrade,
  finish: readFinish,
  material: readMaterial,
  pattern: readPattern,
  spacing: readSpacing,
  pitch: readPitch,
  plate: readPlate,
  pier: readPier,
  hole: readHole,
  holes: readHoles,
  washer: readWasher,
  nut: readNut,
  bottom: readBottom,
  section: readSection,
  outline: readOutline,
  corner: readCorner,
  opening: readOpening,
};

/** Forms whose cells hold free text or lists without end: they are not held to a length. */
const LONG_FORMS: ReadonlySet<FormName> = new Set(["text", "note", "mark", "lengths", "points", "holes", "outline"]);
/** Longest cell of the other forms, in characters. */
const LONGEST = 300;
/** Forms in which everything is text, but for nothing and ditto marks. */
const FREE_FORMS: ReadonlySet<FormName> = new Set(["text", "note"]);
/** Forms that have the word NONE. */
const WITH_NONE: ReadonlySet<FormName> = new Set(["word", "opening"]);
/** Forms in which TYP behind a value is a part of it. */
const KEEPS_TYP: ReadonlySet<FormName> = new Set(["text", "note", "grade"]);

/** Forms that are one length. */
const ONE_LENGTH: ReadonlySet<FormName> = new Set(["length", "thickness", "spacing", "pitch", "hole", "elevation"]);

/** Reads the text of a cell by its form. Never throws; its time grows with the text alone. */
export function readCell(text: string, form: FormName, context: CellContext): CellReading {
  const comma = context.unit === "mm" && ONE_LENGTH.has(form) ? commaIn(text) : null;
  return comma === null ? readPlain(text, form, context) : readComma(text, comma, form, context);
}

interface Comma {
  readonly before: string;
  readonly after: string;
  readonly unit: string;
}

/** `300,5` and `1,200 mm`: one number with one comma in it. */
function commaIn(text: string): Comma | null {
  const [, before, after, unit = ""] = /^\s*([+-]?\d{1,6}),(\d{1,4})(\s*(?:mm|cm|m)?)\s*$/.exec(text) ?? [];
  return before === undefined || after === undefined ? null : { before, after, unit };
}

/** A comma before one or two digits, or four, can only be a decimal comma; before three it may be one of thousands. */
function readComma(text: string, { before, after, unit }: Comma, form: FormName, context: CellContext): CellReading {
  if (after.length === 3) {
    const ways = `${before}${after}${unit} or ${before}.${after}${unit}`;
    return { kind: "fault", message: `${quote(text)} may be ${ways}; allowed is one of the two, without a comma` };
  }
  const reading = readPlain(`${before}.${after}${unit}`, form, context);
  if (reading.kind !== "value") return reading;
  return { ...reading, how: [reading.how, "with a decimal comma"].filter((words) => words !== "").join("; ") };
}

function readPlain(text: string, form: FormName, context: CellContext): CellReading {
  const isLong = text.length > LONGEST;
  if (isLong && !LONG_FORMS.has(form)) {
    return { kind: "fault", message: `${quote(text)} has ${text.length} characters; at most ${LONGEST} are read here` };
  }
  if (text.trim() === "") return { kind: "blank" };
  const plain = plainCell(text);
  const cell: CellText = { text, plain, tokens: isLong ? [] : tokenize(plain), context, said: "" };
  if (isLong) return readLong(cell, form);
  if (FREE_FORMS.has(form)) return readFree(cell, form);
  if (form === "finish" && isWordNone(cell)) return refuse(cell, "plain, galvanized, or - where it is not known");
  if (synonymOf(cell) !== undefined || isNone(cell, form)) return FORMS[form](cell);
  return readEverywhere(cell) ?? FORMS[form](KEEPS_TYP.has(form) ? cell : withoutTypical(cell));
}

/** A long list or text: it is no blank and no reference. */
function readLong(cell: CellText, form: FormName): CellReading {
  return FORMS[form](form === "outline" ? { ...cell, tokens: tokenize(cell.plain.slice(0, LONGEST)) } : cell);
}

function readFree(cell: CellText, form: FormName): CellReading {
  if (isBlank(cell)) return { kind: "blank" };
  return isDitto(cell) ? { kind: "reference", to: { kind: "above" } } : FORMS[form](cell);
}

function isNone(cell: CellText, form: FormName): boolean {
  return WITH_NONE.has(form) && isWordNone(cell);
}

const isWordNone = ({ plain }: CellText): boolean => plain.toLowerCase() === "none";
