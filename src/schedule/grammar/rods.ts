/**
 * Rods as a callout has them: `(4) 3/4"`, `4 - 1" Ø x 2'-0"`, `4 NO. M24 GR 8.8`, `1"Ø A.R. W/ 12" EMBED`.
 *
 * A count is read where a sign or word parts it from the size: brackets, NO., EA, a bar, a dash or a space before a size that
 * does not join it to one number. `4 - 1"` is four rods of 1 in, since 4-1 is no number of inches; `2-1/2"` is a mixed number
 * too, and so is a choice, with spaces about the dash or without. `4-3/4"` is four rods of 3/4 in: no rod is larger than 4 in.
 * One rod is no group: `1-1/4"` is 1-1/4 in.
 */
import { findThreadInSeries } from "../../standards/index.js";
import { nanometres, parseCount, quote } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText, Way } from "./answers.js";
import { readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { holdUnits, takeLength } from "./lengths.js";
import { materialValues, takeMaterial } from "./material.js";
import type { Scan } from "./scan.js";
import { phrases } from "./scan.js";

/** Diameter, before a number or after it. */
export const DIAMETER = phrases("\u00F8", "DIA", "DIAM", "DIAMETER");
const COUNTED = phrases("NO", "NOS", "NR", "EA", "EACH", "PCS", "PC", "OFF", "REQ'D", "REQD", "TOTAL");
const NAMES = phrases(
  "ROD",
  "RODS",
  "ANCHOR ROD",
  "ANCHOR RODS",
  "ANCHOR BOLT",
  "ANCHOR BOLTS",
  "ANCHORS",
  "BOLT",
  "BOLTS",
  "A.R.",
  "A.R.S",
  "AR",
  "ARS",
  "A.B.",
  "AB",
  "ABS",
  "A. RODS",
  "A. BOLTS",
  "H.D.",
  "HD",
  "H.D. BOLT",
  "HD BOLT",
  "H.D. BOLTS",
  "HD BOLTS",
  "HOLDING DOWN BOLT",
  "FOUNDATION BOLTS",
  "HOLDING DOWN BOLTS",
  "STUDS",
); // prettier-ignore
const LONG = phrases("LG", "LONG", "LENGTH", "O.A.L.", "OAL", "OVERALL", "LGTH");
const EMBEDMENT = phrases("EMBED", "EMBEDMENT", "EMB", "EMBEDDED", "EMBED'T", "EMBMT");
const PROJECTION = phrases("PROJ", "PROJECTION", "PROJECTING");
const THREAD = phrases("THREAD", "THREADED", "THREAD LENGTH", "THD");
const WITH = phrases("W/", "WITH", "X", ",", "&", "AND", "-", "+");
/** Property classes of ISO 898-1: behind the name of a metric thread such a number is one. */
const CLASSES = new Set(["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"]);

/** A size and how many of it are said. */
interface Sized {
  readonly count: string | null;
  readonly size: string;
  /** Set for an inch or millimetre size; null for one that is named by its thread. */
  readonly written: Written | null;
}

/** Takes `1-1/4"Ø`, `Ø1-1/4`, `1 1/4 DIA.`, `M24`; `isMarked` tells whether a sign says that it is a size: Ø, M or a unit. */
function takeSize(scan: Scan): (Omit<Sized, "count"> & { readonly isMarked: boolean }) | null {
  const named = scan.attempt(() => takeThreadName(scan));
  if (named !== null) return { size: named, written: null, isMarked: true };
  const isBefore = scan.phrase(DIAMETER);
  const length = takeLength(scan);
  if (length === null) return null;
  const isAfter = scan.phrase(DIAMETER);
  return { size: length.text, written: length, isMarked: isBefore || isAfter || !length.isBare };
}

function takeThreadName(scan: Scan): string | null {
  const first = scan.at;
  if (!scan.take("m") || scan.peek()?.kind !== "number") return null;
  scan.at += 1;
  const name = scan.textFrom(first).replace(/\s/g, "").toUpperCase();
  scan.phrase(DIAMETER);
  return name;
}

/** Takes a whole number of 1 and more. */
function takeCount(scan: Scan, least: number): string | null {
  const token = scan.peek();
  const isCount = token?.kind === "number" && parseCount(token.key, least, 200).ok && !token.key.includes(".");
  if (!isCount) return null;
  scan.at += 1;
  return token.key;
}

/** `(4) `, `(4)-` */
export function takeCountInBrackets(scan: Scan): string | null {
  const count = scan.take("(") ? takeCount(scan, 1) : null;
  if (count === null || !scan.take(")")) return null;
  scan.take("-");
  return count;
}

/** `QTY 4 - `, `(4) `, `4 NO. `, `4 EA `: a count that its sign marks. */
function takeMarkedCount(scan: Scan): string | null {
  return scan.either(
    () => {
      if (!scan.take("qty")) return null;
      scan.take(":");
      const count = takeCount(scan, 1);
      scan.take("-");
      return count;
    },
    () => takeCountInBrackets(scan),
    () => {
      const count = takeCount(scan, 1);
      if (count === null) return null;
      const isNamed = scan.phrase(COUNTED) || isNamesOf(scan);
      scan.take("-");
      return isNamed ? count : null;
    },
  );
}

/** `RODS OF` behind a count, which is left for the size to follow. */
function isNamesOf(scan: Scan): boolean {
  const ahead = scan.attempt(() => (scan.phrase(NAMES) && scan.peek()?.key === "of" ? scan.at : null));
  if (ahead !== null) scan.at = ahead + 1;
  return ahead !== null;
}

/** One size alone, or behind a count that a sign marks. */
function takeSized(scan: Scan): Sized | null {
  const count = scan.attempt(() => takeMarkedCount(scan));
  const isSaid = count === null && scan.take("size");
  if (count !== null && scan.phrase(NAMES)) scan.take("of");
  const size = takeSize(scan);
  if (size === null || (count === null && !size.isMarked && isNumbering(scan, size.size))) return null;
  return count === null && !isSaid && isCountAndSize(size) ? null : { ...size, count };
}

/** Largest anchor rod of ASTM F1554, which covers 1/4 in to 4 in. */
const LARGEST_ROD = 101_600_000;

/** `4-3/4"`, `8 - 1/2"`: no rod is so large, so that the whole number is how many. `4-1/4"` is too near to the largest for that. */
function isCountAndSize({ size, written }: Omit<Sized, "count">): boolean {
  const [, whole, over, under] = /^(\d+)(?: ?- ?| )(\d+) ?\/ ?(\d+)\b/.exec(size) ?? [];
  return whole !== undefined && written !== null && written.nm > LARGEST_ROD && Number(over) * 8 >= Number(under) * 3;
}

/** `4 ANCHOR RODS`: a whole number before the name is how many there are, and no size. */
function isNumbering(scan: Scan, size: string): boolean {
  return /^\d+$/.test(size) && [...NAMES.keys()].includes(scan.peek()?.key ?? "");
}

/** `4 ANCHOR RODS`, `(4) RODS`: how many, without a size. */
function takeCountOnly(scan: Scan): Way | null {
  const count = scan.attempt(() => takeMarkedCount(scan)) ?? takeCount(scan, 2);
  if (count === null || !scan.phrase(NAMES)) return null;
  return { values: { "rods.count": count }, how: `${count} rods` };
}

/** `4 - 1"`, `4-3/4"Ø`, `4 M24`, `4 HD BOLTS M24`, `4 1"`: two rods and more before a size that is marked as one. */
function takeLooselyCounted(scan: Scan): Sized | null {
  const count = takeCount(scan, 2);
  if (count === null) return null;
  if (!scan.take("-")) scan.phrase(NAMES);
  const size = takeSize(scan);
  return size !== null && (size.isMarked || size.written?.text.includes("/")) ? { ...size, count } : null;
}

/** Larger than any rod with a thread, 4 in or M100: 6 in. */
const LARGEST_SIZE = 152_400_000;

/** `4 x M24`, `4 x 1"`: the size alone may be a size with its length, so that `1 x 24` is none of it. */
function takeTimesCounted(scan: Scan): Sized | null {
  const count = takeCount(scan, 2);
  if (count === null || !scan.take("x")) return null;
  const size = takeSize(scan);
  const isRod = size !== null && !(size.written !== null && size.written.nm > LARGEST_SIZE);
  return isRod ? { ...size, count } : null;
}

/** `4/1"`, `4/3/4"`: where the bar cannot be that of a fraction whose digits lost their space, as in `11/4"`. */
function takeBarCounted(scan: Scan): Sized | null {
  const count = takeCount(scan, 2);
  if (count === null || !scan.take("/")) return null;
  const first = scan.peek();
  const isFraction = first?.kind === "number" && isDenominator(first.key) && !isNumberGoingOn(scan);
  const size = isFraction ? null : takeSize(scan);
  return size?.isMarked ? { ...size, count } : null;
}

function isDenominator(key: string): boolean {
  const value = Number(key);
  return Number.isInteger(value) && value > 1 && Number.isInteger(Math.log2(value));
}

/** True for `1-1/4` and `3/4` where the scan stands: a fraction follows, so that the bar before it is none. */
function isNumberGoingOn(scan: Scan): boolean {
  return scan.peek(1)?.key === "/" || (["-"].includes(scan.peek(1)?.key ?? "") && scan.peek(3)?.key === "/");
}

interface Details {
  readonly count: string | null;
  readonly length: Written | null;
  readonly embedment: Written | null;
  readonly projection: Written | null;
  readonly threads: Written | null;
  readonly values: Way["values"];
}

/** What stands behind the size: names, material, lengths, each once. */
function takeDetails(scan: Scan, sized: Sized): Details {
  let found: Details = { count: null, length: null, embedment: null, projection: null, threads: null, values: {} };
  while (!scan.isDone) {
    const next = scan.either(
      () => (scan.phrase(NAMES) ? found : null),
      () => takeMeasure(scan, found),
      () => takeRodMaterial(scan, found),
      () => (sized.written === null ? takeClass(scan, found) : takeThread(scan, sized.written, found)),
      () => (sized.count === null ? takeCountBehind(scan, found) : null),
    );
    if (next === null) break;
    found = next;
  }
  return found;
}

function takeRodMaterial(scan: Scan, found: Details): Details | null {
  scan.take(",") || scan.take("-");
  const material = takeMaterial(scan, false);
  if (material === null) return null;
  const values = materialValues(material);
  const isTwice = Object.entries(values).some(
    ([key, value]) => value !== null && typeof found.values[key] === "string",
  );
  const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null));
  return isTwice ? null : { ...found, values: { ...found.values, ...given } };
}

const OF_COUNT = phrases("TYP OF", "TOTAL OF", "QTY", "QTY OF");

/** `(4 REQ'D)`, `- 4 EA`, `(TYP OF 4)`: a count behind the size, with a word that says so. */
function takeCountBehind(scan: Scan, found: Details): Details | null {
  if (!scan.take("-")) scan.take(",");
  const isOpen = scan.take("(");
  const isBefore = scan.phrase(OF_COUNT);
  const count = found.count === null ? takeCount(scan, 1) : null;
  const isSaid = count !== null && (scan.phrase(COUNTED) || isBefore);
  if (!isSaid || (isOpen && !scan.take(")"))) return null;
  return { ...found, count };
}

/** `-10 UNC`, `UNC`, `-8UN`: the series, its threads to an inch held against its table. */
function takeThread(scan: Scan, { nm, text }: Written, found: Details): Details | null {
  if (!scan.take("-")) scan.take(",");
  const pitch = scan.peek()?.kind === "number" ? scan.peek()?.key : undefined;
  if (pitch !== undefined) scan.at += 1;
  const series = scan.take("unc") ? "UNC" : pitch === "8" && scan.take("un") ? "8UN" : null;
  if (series === null || found.values["rods.thread"] !== undefined) return null;
  const thread = findThreadInSeries(series, nanometres(Number.isNaN(nm) ? 0 : nm));
  if (!thread.found)
    scan.fault(`${quote(scan.plain)}: ${series} has no thread of size ${text}; allowed is its size without a thread`);
  else if (pitch !== undefined && thread.row.threadsPerInch !== Number(pitch)) {
    const held = thread.row.threadsPerInch;
    scan.fault(
      `${quote(scan.plain)}: ${series} has ${held} threads to an inch at ${text}, and ${pitch} are written; allowed is ${held}`,
    );
  }
  return { ...found, values: { ...found.values, "rods.thread": series } };
}

/** `M24 8.8`, `M24-8.8`, `M24 (8.8)` */
function takeClass(scan: Scan, found: Details): Details | null {
  if (!scan.take("-")) scan.take(",");
  const isOpen = scan.take("(");
  const grade = scan.peek()?.key ?? "";
  if (!CLASSES.has(grade) || found.values["rods.grade"] !== undefined) return null;
  scan.at += 1;
  if (isOpen && !scan.take(")")) return null;
  return { ...found, values: { ...found.values, "rods.grade": grade } };
}

/** `x 2'-0"`, `x 24" LG`, `W/ 12" EMBED`, `24" LONG`. */
function takeMeasure(scan: Scan, found: Details): Details | null {
  const isJoined = scan.peek()?.key === "x";
  scan.phrase(WITH);
  const length = takeLength(scan);
  if (length === null) return null;
  if (scan.phrase(EMBEDMENT)) return found.embedment === null ? { ...found, embedment: length } : null;
  if (scan.phrase(PROJECTION)) return found.projection === null ? { ...found, projection: length } : null;
  if (scan.phrase(THREAD)) return found.threads === null ? { ...found, threads: length } : null;
  const isNamed = scan.phrase(LONG);
  return (isNamed || isJoined) && found.length === null ? { ...found, length } : null;
}

function takeWay(scan: Scan, takeHead: (scan: Scan) => Sized | null): Way | null {
  scan.phrase(NAMES);
  const sized = takeHead(scan);
  if (sized === null) return null;
  const details = takeDetails(scan, sized);
  const { length, embedment, projection, threads, values } = details;
  const count = sized.count ?? details.count;
  holdPitch(scan, sized, length);
  holdShort(scan, sized, length);
  holdMetric(scan, sized, [length, embedment, projection, threads]);
  holdUnits(
    scan,
    [sized.written, length, embedment, projection, threads].filter((side) => side !== null),
  );
  return {
    values: {
      "rods.count": count,
      "rods.diameter": sized.size,
      ...values,
      "rods.length": length?.text ?? null,
      "rods.embedment": embedment?.text ?? null,
      "rods.projection": projection?.text ?? null,
      "rods.threads": threads?.text ?? null,
    },
    how: wordsOf({ ...sized, count }, details),
  };
}

/** `M24 x 3` names the pitch of the thread (ISO 261: 6 mm at most), and no length. */
function holdPitch(scan: Scan, { size, written }: Sized, length: Written | null): void {
  if (written !== null || length === null || !(length.nm <= 10_000_000)) return;
  scan.fault(
    `${quote(scan.plain)} has ${length.text} behind ${size}: the pitch of a thread, or a length? allowed is ${size}, with the length in full, as ${size} x 600 mm`,
  );
}

/** A rod is many times as long as it is thick: `12 x 12` is something else. */
function holdShort(scan: Scan, { size, written }: Sized, length: Written | null): void {
  const isMixed = /\d[ -]+\d+ ?\//.test(size);
  if (written === null || length === null || isMixed || !(length.nm < 4 * written.nm)) return;
  scan.fault(
    `${quote(scan.plain)} has ${length.text} behind ${size}, which is short for the length of a rod; allowed is a size and a length, as 1"\u00D8 x 24" LG`,
  );
}

/** A bare number behind a metric size, where bare numbers are inches: which is meant is not written. */
function holdMetric(scan: Scan, { size, written }: Sized, sides: readonly (Written | null)[]): void {
  const bare = sides.find((side) => side?.isBare && side.family !== "mm");
  if (written !== null || bare === undefined || bare === null) return;
  scan.fault(
    `${quote(scan.plain)} has ${bare.text} without a unit behind ${size}; allowed is a length with its unit, as ${size} x 600 mm`,
  );
}

/** Reads back to the same. */
function wordsOf(sized: Sized, { length, embedment, projection, threads, values }: Details): string {
  const rods =
    sized.count === null
      ? `size ${sized.size}`
      : `${sized.count} ${sized.count === "1" ? "rod" : "rods"} of ${sized.size}`;
  const { "rods.grade": grade, "rods.finish": finish, "rods.weldable": weldable, "rods.thread": thread } = values;
  return [
    rods,
    typeof thread === "string" ? thread : "",
    typeof grade === "string" ? `GR ${grade}`.replace(/^GR (?=[A-Z])/, "") : "",
    weldable === "yes" ? "weldable" : "",
    typeof finish === "string" ? finish : "",
    length === null ? "" : `${length.text} long`,
    embedment === null ? "" : `${embedment.text} embedded`,
    projection === null ? "" : `${projection.text} projecting`,
    threads === null ? "" : `${threads.text} thread`,
  ]
    .filter((words) => words !== "")
    .join(", ");
}

const ALLOWED_RODS = `a count, a size, a length and a grade, as (4) 3/4", 4 NO. M24 GR 8.8, (4) 1"\u00D8 x 24" LG, 1"\u00D8 W/ 12" EMBED`;

/** Rods with their number, length, grade and finish, as far as the cell says them. */
export function readRods(cell: CellText): CellReading {
  return readWays(
    cell,
    ALLOWED_RODS,
    takeCountOnly,
    ...[takeSized, takeLooselyCounted, takeTimesCounted, takeBarCounted].map(
      (head) => (scan: Scan) => takeWay(scan, head),
    ),
  );
}

const ALLOWED_ROD = `a rod size, as 1-1/4, 1 1/4"\u00D8, M30 or 30 mm; with its number, as (4) 3/4", where there is no other column for it`;

/** A rod size. A mixed number is one size here, as long as rods of that size are made with a thread: below 4-1/4 in. */
export function readRod(cell: CellText): CellReading {
  const rods = readRods(cell);
  if (rods.kind === "fault") return { ...rods, message: rods.message.replace(ALLOWED_RODS, ALLOWED_ROD) };
  if (rods.kind === "choice" && wholeOf(cell) > 3) return rods;
  const size = readWays(cell, ALLOWED_ROD, (scan) => takeWay(scan, takeSized));
  const isPlain = size.kind === "value" && size.parts.length === 1;
  return isPlain ? { ...size, how: cell.said } : rods;
}

/** The first whole number of the cell. */
function wholeOf({ tokens }: CellText): number {
  return Number(tokens.find(({ kind }) => kind === "number")?.key ?? 0);
}
