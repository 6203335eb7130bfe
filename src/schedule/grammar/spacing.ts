/** Spacings and patterns: `12x12`, `12 x 10 C/C`, `24 SQ`, `3 SPA @ 6" = 1'-6"`, `6" O.C.`, `(8) ON 24" B.C.` */
import { formatLength, parseCount, quote } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText, Way, WayParser } from "./answers.js";
import { readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { exactText, holdUnits, takeLength, takeSides } from "./lengths.js";
import { DIAMETER } from "./rods.js";
import type { Scan } from "./scan.js";
import { phrases } from "./scan.js";
import { CIRCLE, readWord } from "./singles.js";

/** From centre to centre: a pitch, which is the length overall too where there are two rods. */
const CENTRES = phrases(
  "C/C",
  "C-C",
  "C.C.",
  "CC",
  "C TO C",
  "O.C.",
  "OC",
  "O/C",
  "ON CENTER",
  "ON CENTRE",
  "CTRS",
  "CTR",
  "CENTERS",
  "CENTRES",
  "CRS",
  "C.T.C.",
  "CTC",
  "CTR TO CTR",
  "CENTER TO CENTER",
  "CENTRE TO CENTRE",
  "PITCH",
); // prettier-ignore
/** A square of the side before it. */
export const SQUARE = phrases("SQ", "SQR", "SQUARE");
/** The same both ways, behind `O.C.`. */
const EACH_WAY = phrases(
  "EA WAY",
  "EACH WAY",
  "E.W.",
  "EW",
  "E/W",
  "BOTH WAYS",
  "B.W.",
  "BW",
  "EA DIRECTION",
  "EACH DIRECTION",
);
const SPACES = phrases(
  "SPA",
  "SPAS",
  "SPACE",
  "SPACES",
  "SPACING",
  "SPACINGS",
  "SPS",
  "SP",
  "EQ",
  "EQ SPA",
  "EQ SPACES",
  "EQUAL SPACES",
  "EQUAL SPA",
  "EQ. SP.",
  "EQUAL",
);
const RODS = phrases("RODS", "ROD", "BOLTS", "A.R.", "A.B.", "ANCHORS", "ANCHOR RODS", "ANCHOR BOLTS", "EA", "NO");

const OVERALL = phrases("OVERALL", "O.A.", "OA", "O/A", "TOTAL");
const RECTANGLE = phrases("RECT", "RECTANGLE");

/** Keys of a pitch, beside those of the length overall: with the number of rods it is the length overall. */
export const PITCH_KEYS = { x: "pattern.pitch.x", y: "pattern.pitch.y" } as const;
/** One spacing for a whole pattern: of four rods it is that of both directions. */
export const PITCH_ALONE = "pattern.pitch.alone";

const PITCH = "pattern.pitch";

type Axis = "x" | "y";
/** The axis that a column is about, by the end of its key; null for one that is about both. */
const axisOf = (key: string): Axis | null => (key.endsWith(".x") ? "x" : key.endsWith(".y") ? "y" : null);

/** `24`, `12x12`, `24 SQ`, with `C/C` behind where it is a pitch. */
function takeRectangle(scan: Scan): Way | null {
  const sides = takeSides(scan, 2);
  const isCentresFirst = scan.phrase(CENTRES);
  const isSquare = sides.length === 1 && (scan.phrase(SQUARE) || scan.phrase(EACH_WAY));
  const isCentres = isCentresFirst || scan.phrase(CENTRES);
  if (!isSquare && !isCentresFirst) scan.phrase(RECTANGLE);
  const [x, y] = isSquare ? [sides[0], sides[0]] : sides;
  if (x === undefined || y === undefined) return null;
  holdUnits(scan, sides);
  if (!isSquare) holdSides(scan, x, y);
  const isPitch = isCentres || scan.context.key.startsWith(PITCH);
  const keys = isPitch ? PITCH_KEYS : { x: "pattern.x", y: "pattern.y" };
  const words = `${x.text} in x, ${y.text} in y${isPitch ? ", centre to centre" : ""}`;
  return { values: { [keys.x]: x.text, [keys.y]: y.text }, how: words };
}

/** `4 x 6"`, `2 x 150`: a number of spaces and their pitch, or two lengths. */
function holdSides(scan: Scan, x: Written, y: Written): void {
  const isCount = x.isBare && /^\d$/.test(x.text.split(" ")[0] ?? "") && (!y.isBare || y.nm > 8 * x.nm);
  if (!isCount) return;
  scan.fault(
    `${quote(scan.plain)} may be ${x.text} spaces at ${y.text}, or two lengths; allowed is ${x.text} SPA @ ${y.text} along one axis, or a unit with each length`,
  );
}

/** `24 SQ`, in a column of one axis. */
function takeSquare(scan: Scan): Way | null {
  return scan.tokens.some(({ key }) => key === "x") ? null : takeRectangle(scan);
}

const STARTS = [
  { start: "straddle", words: phrases("STRADDLE", "STRADDLED") },
  { start: "on-axis", words: phrases("ON-AXIS", "ON AXIS") },
] as const;

/** Where the first rod of a circle stands: `straddle`, `on-axis x`. */
function takeStart(scan: Scan): string | null {
  const start = STARTS.find(({ words }) => scan.phrase(words))?.start;
  if (start === undefined) return null;
  const axis = ["x", "y"].find((name) => scan.take(name));
  return axis === undefined ? start : `${start} ${axis}`;
}

/** `24"Ø B.C.`, `(8) ON 24" B.C.`, `24" B.C. straddle` */
function takeCircle(scan: Scan): Way | null {
  const count = scan.attempt(() => takeCountOn(scan));
  const isBefore = scan.phrase(DIAMETER);
  const diameter = takeLength(scan);
  if (diameter === null) return null;
  if (!isBefore) scan.phrase(DIAMETER);
  if (!scan.phrase(CIRCLE)) return null;
  const start = takeStart(scan);
  const words = `${count === null ? "" : `${count} rods on `}a bolt circle of ${diameter.text}${start === null ? "" : `, ${start}`}`;
  return { values: { "pattern.diameter": diameter.text, "pattern.count": count, "pattern.start": start }, how: words };
}

function takeCountOn(scan: Scan): string | null {
  const isOpen = scan.take("(");
  const count = takeWhole(scan, 2);
  if (count === null || (isOpen && !scan.take(")"))) return null;
  const isNamed = scan.phrase(RODS);
  const isOn = scan.take("on") || scan.take("@");
  scan.take("a");
  return isOn || isNamed || isOpen ? String(count) : null;
}

function takeWhole(scan: Scan, least: number): number | null {
  const token = scan.peek();
  if (token?.kind !== "number" || !/^\d+$/.test(token.key)) return null;
  const count = parseCount(token.key, least, 1000);
  if (!count.ok) return null;
  scan.at += 1;
  return count.value;
}

interface Run {
  readonly count: number;
  /** True where a word or a total says that they are spaces. */
  readonly isSpaces: boolean;
  /** True where a word says that they are rods. */
  readonly isRods: boolean;
  readonly pitch: Written;
  readonly total: Written | null;
}

/** `3 @ 6"`, `3 SPA @ 6" = 1'-6"`, `2 EQ SPA @ 6`, `3 spaces at 6: 18 overall, 4 rods`, `3 rods at 6` */
function takeRun(scan: Scan): Run | null {
  const isOpen = scan.take("(");
  const count = takeWhole(scan, 1);
  if (count === null || (isOpen && !scan.take(")"))) return null;
  const isBefore = scan.phrasesAny(SPACES);
  const isRods = !isBefore && scan.phrase(RODS);
  if (!scan.take("@") && !((isBefore || isRods) && (scan.take("of") || scan.take("at")))) return null;
  const pitch = takeLength(scan);
  if (pitch === null) return null;
  const isSpaces = (!isRods && scan.phrasesAny(SPACES)) || isBefore;
  scan.phrase(CENTRES);
  const total = scan.attempt(() => takeTotal(scan));
  if (total !== null) holdLines(scan, isRods ? count : count + 1);
  return { count, pitch, total, isRods, isSpaces: isSpaces || (total !== null && !isRods) };
}

/** `= 1'-6"`, `: 18 overall` */
function takeTotal(scan: Scan): Written | null {
  const isEqual = scan.take("=");
  if (!isEqual && !scan.take(":")) return null;
  const total = takeLength(scan);
  const isNamed = scan.phrase(OVERALL);
  return isEqual || isNamed ? total : null;
}

/** `, 4 rods` behind the total: held against the spaces. */
function holdLines(scan: Scan, lines: number): void {
  const said = scan.attempt(() => {
    const count = scan.take(",") ? takeWhole(scan, 2) : null;
    return count !== null && scan.phrase(RODS) ? count : null;
  });
  if (said !== null && said !== lines)
    scan.fault(
      `${quote(scan.plain)} does not add up: ${lines} rods are counted and ${said} are written; write the one that is meant`,
    );
}

/** Spaces, where the text says so or the total proves it. */
function takeSpaces(axis: Axis): WayParser {
  return (scan) => {
    const run = takeRun(scan);
    if (run === null || run.isRods) return null;
    return spacesWay(scan, axis, run, run.count);
  };
}

/** `3 EQ SPA = 18"`: the whole, without the pitch. */
function takeEqualSpaces(axis: Axis): WayParser {
  return (scan) => {
    const count = takeWhole(scan, 1);
    if (count === null || !scan.phrasesAny(SPACES)) return null;
    const total = scan.take("=") || scan.take("in") ? takeLength(scan) : null;
    if (total === null) return null;
    const how = `${count} equal spaces in ${total.text}, ${count + 1} rods`;
    return { values: { [`pattern.${axis}`]: total.text, [`pattern.n${axis}`]: String(count + 1) }, how };
  };
}

/** Rods, where nothing says that they are spaces. */
function takeRods(axis: Axis): WayParser {
  return (scan) => {
    const run = takeRun(scan);
    if (run === null || run.isSpaces || run.count < 2) return null;
    return spacesWay(scan, axis, run, run.count - 1);
  };
}

function spacesWay(scan: Scan, axis: Axis, { pitch, total, count }: Run, spaces: number): Way {
  holdUnits(scan, total === null ? [pitch] : [pitch, total]);
  holdTotal(scan, pitch, total, spaces);
  const overall = total?.text ?? exactText(spaces * pitch.nm || 0, pitch, scan);
  const words = `${spaces} ${spaces === 1 ? "space" : "spaces"} at ${pitch.text}: ${overall} overall, ${spaces + 1} rods`;
  const how = spaces === count ? words : `${count} rods at ${pitch.text}: ${overall} overall`;
  return { values: { [`pattern.${axis}`]: overall, [`pattern.n${axis}`]: String(spaces + 1) }, how };
}

function holdTotal(scan: Scan, pitch: Written, total: Written | null, spaces: number): void {
  if (total === null || total.nm === spaces * pitch.nm) return;
  const { unit } = scan.context;
  const worked = formatLength(spaces * pitch.nm || 0, unit);
  scan.fault(
    `${quote(scan.plain)} does not add up: ${spaces} spaces at ${pitch.text} are ${worked} ${unit}, and ${total.text} is written; write the one that is meant`,
  );
}

/** `6" O.C.`: from rod to rod. */
function takePitch(key: string): WayParser {
  return (scan) => {
    const pitch = takeLength(scan);
    if (pitch === null || !scan.phrase(CENTRES)) return null;
    return { values: { [key]: pitch.text }, how: `${pitch.text} from rod to rod` };
  };
}

/** `400 CRS`, `12" O.C.`: one spacing from rod to rod, where the column is about both directions. */
function takeCentresAlone(scan: Scan): Way | null {
  const pitch = takeLength(scan);
  if (pitch === null || !scan.phrase(CENTRES)) return null;
  return { values: { [PITCH_ALONE]: pitch.text }, how: `${pitch.text} from rod to rod` };
}

function takePlain(key: string): WayParser {
  return (scan) => {
    const length = takeLength(scan);
    return length === null ? null : { values: { [key]: length.text } };
  };
}

const ALLOWED_SPACING = `a length, 6" O.C. from rod to rod, 3 SPA @ 6" = 1'-6", or 24 SQ`;

/** A spacing along one axis: `12`, `6" O.C.`, `3 SPA @ 6`; `24 SQ` says both. */
export function readSpacing(cell: CellText): CellReading {
  const { key } = cell.context;
  const axis = axisOf(key);
  if (axis === null) return readWays(cell, ALLOWED_PATTERN, takeRectangle, takeCentresAlone, takeCircle);
  const runs = [takeSpaces(axis), takeRods(axis), takeEqualSpaces(axis)];
  return readWays(cell, ALLOWED_SPACING, takePlain(key), takePitch(PITCH_KEYS[axis]), ...runs, takeSquare);
}

/** A pitch: `6`, `6" O.C.`; `3 SPA @ 6` says the whole. */
export function readPitch(cell: CellText): CellReading {
  const { key } = cell.context;
  const axis = axisOf(key);
  const whole = axis === null ? [takeRectangle, takeCentresAlone] : [takeSpaces(axis), takeRods(axis)];
  return readWays(cell, ALLOWED_SPACING, takePlain(key), takePitch(key), ...whole);
}

const ALLOWED_PATTERN = `12 x 10, 24 SQ, 24"\u00D8 B.C., (8) ON 24" B.C., or the kind: rectangle, lines, circle, points`;

/** A pattern as one text, or the word of its kind. */
export function readPattern(cell: CellText): CellReading {
  const isWords = cell.tokens.every(({ kind, key }) => kind === "word" || "-/.".includes(key));
  if (isWords) return readWord({ ...cell, context: { ...cell.context, key: "pattern.kind" } });
  return readWays(cell, ALLOWED_PATTERN, takeRectangle, takeCentresAlone, takeCircle);
}
