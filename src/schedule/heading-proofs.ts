/** What the other columns and the cells prove of a heading with several meanings. Each proof is exact; without one there is none. */

import { greatestOf, leastOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import { lengthIn, shapeOf } from "./cell-shapes.js";
import type { Doubt, HeadingName } from "./heading-synonyms.js";
import { NOTE } from "./heading-synonyms.js";
import { isSameThing } from "./same-thing.js";
import type { KnownHeading } from "./settled-column.js";
import type { ColumnFit, TableView } from "./table-view.js";

/** What has been settled, and what the job says beside the sheet. */
export interface Settling {
  readonly view: TableView;
  readonly named: (name: HeadingName) => KnownHeading | undefined;
  /** Headings -> the columns that stand for them, from the left. */
  readonly settled: ReadonlyMap<HeadingName, readonly number[]>;
  /** Headings -> the columns that are not settled and may stand for them. */
  readonly open: ReadonlyMap<HeadingName, readonly number[]>;
  /** Columns that are not settled -> what they may stand for. */
  readonly meanings: ReadonlyMap<number, readonly HeadingName[]>;
  /** Keys that the job gives every base, as `rods.diameter`. */
  readonly given: ReadonlySet<string>;
  /** Names of the job's kinds, in small letters. */
  readonly kinds: ReadonlySet<string>;
}

/** A meaning that is proved, and how, in a few words. */
export interface Proved {
  readonly name: HeadingName;
  readonly how: string;
}

type Proof = (column: number, names: readonly HeadingName[], state: Settling) => Proved | null;

/** How each doubt may be settled. */
export const PROOFS: Readonly<Record<Doubt, Proof>> = {
  form: byForm,
  shown: byShown,
  narrowest: byNarrowest,
  "bases or rods": basesNotRods,
  "rods or bases": rodsNotBases,
  "overall or pitch": overallOrPitch,
  "x or y": axisOf,
  "which length": rodLength,
  "which hole": whichHole,
  "which diameter": rodDiameter,
  "which mark": whichMark,
  "which count": whichCount,
  "which grade": byForm,
  "footing or pier": footingOrPier,
  "only asked": () => null,
};

/** Columns that stand for the heading, settled. */
function columnsOf(name: HeadingName, { settled }: Settling): readonly number[] {
  return settled.get(name) ?? [];
}

function columnOf(name: HeadingName, state: Settling): number | null {
  return columnsOf(name, state)[0] ?? null;
}

/** True where another column is settled to the same thing. */
export function isTaken(name: HeadingName, column: number, { settled }: Settling): boolean {
  for (const [meant, columns] of settled) if (isSameThing(meant, name) && hasOther(columns, column)) return true;
  return false;
}

function hasOther(columns: readonly number[], column: number): boolean {
  return columns.length > 1 || (columns.length === 1 && columns[0] !== column);
}

function fitOf(column: number, name: HeadingName, { view, named }: Settling): ColumnFit | null {
  const heading = named(name);
  return heading === undefined ? null : view.fitOf(column, heading);
}

/** Meanings whose form every cell can have. */
function fitting(column: number, names: readonly HeadingName[], state: Settling): readonly HeadingName[] {
  return names.filter((name) => name !== NOTE && fitOf(column, name, state)?.refusedAt === null);
}

/** Cells that are plainly of one form, and of no other that is meant; a note where no cell is of any. */
function byForm(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  return byShown(column, names, state) ?? (names.includes(NOTE) ? noteWhereNone(column, names, state) : null);
}

/** The one meaning that every cell allows, where against each of the others a cell is plainly of its form. */
function byShown(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const fits = fitting(column, names, state);
  const only = fits.length === 1 ? (fits[0] ?? null) : narrowestOf(fits);
  if (only === null || fitOf(column, only, state)?.isShown !== true) return null;
  if (only === "Mark" && hasOther(state.open.get(only) ?? [], column)) return null;
  const others = names.filter((name) => name !== NOTE && !fits.includes(name));
  return others.every((name) => isShownAgainst(column, only, name, state))
    ? { name: only, how: "its cells can be nothing else" }
    : null;
}

/** A cell that is plainly of the one form and cannot be of the other: a slip is no proof. */
function isShownAgainst(column: number, name: HeadingName, other: HeadingName, state: Settling): boolean {
  const [own, its] = [fitOf(column, name, state)?.byRow ?? [], fitOf(column, other, state)?.byRow ?? []];
  return own.some((fit, row) => fit === "yes" && its[row] === "no");
}

/** A note where no cell is of any form that is meant; where several are meant, only where each cell refuses them all. */
function noteWhereNone(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const fits = names.flatMap((name) => fitOf(column, name, state) ?? []);
  const isNone = fits.every(({ isShown, isRefusedByAll }) => !isShown && (fits.length === 1 || isRefusedByAll));
  return isNone ? { name: NOTE, how: "no cell is of its form" } : null;
}

function noteWhereNoneShown(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const isNone = names.every((name) => fitOf(column, name, state)?.isShown !== true);
  return isNone ? { name: NOTE, how: "no cell is of its form" } : null;
}

/** One value and several of the same thing: the one value, where every cell can be that. */
const NARROWER: readonly (readonly [HeadingName, HeadingName])[] = [
  ["Rod dia", "Rods"],
  ["Grade", "Rod material"],
];

function narrowestOf(names: readonly HeadingName[]): HeadingName | null {
  if (names.length !== 2) return null;
  return NARROWER.find((pair) => pair.every((name) => names.includes(name)))?.[0] ?? null;
}

function byNarrowest(column: number, names: readonly HeadingName[], state: Settling): Proved {
  const [first = NOTE] = fitting(column, names, state);
  return { name: first === NOTE ? (names[0] ?? NOTE) : first, how: "" };
}

/** Bare QTY counts bases where a row's number cannot be the rods of its pattern; else it is asked. */
function basesNotRods(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  if (names.includes(NOTE)) return null;
  if (columnsOf("Rods", state).some((rods) => isCounted(rods, state)))
    return { name: "Qty", how: "the number of rods stands with their size" };
  const counts = state.view.countsOf(column);
  const rods = rodCounts(state);
  const row = counts.findIndex((count, at) => count !== null && !canBeRods(count, rods[at] ?? null));
  return row < 0 ? null : { name: "Qty", how: `${counts[row]} cannot be the number of rods` };
}

/** Whether so many rods may stand on a pattern: as it says, or where it does not say, any number of crossings. */
function canBeRods(count: number, pattern: RodCount | null): boolean {
  if (pattern === null) return count > 1;
  if (pattern.isSure) return count === pattern.rods;
  return count >= 4 && !isPrime(count);
}

function isPrime(count: number): boolean {
  for (let factor = 2; factor * factor <= count; factor++) if (count % factor === 0) return false;
  return true;
}

/** QTY of rods is the number of rods where it is that of the pattern in every row, in more than one or with bases counted elsewhere. */
function rodsNotBases(column: number, _names: readonly HeadingName[], state: Settling): Proved | null {
  const counts = state.view.countsOf(column);
  const rods = rodCounts(state);
  const texts = state.view.textsOf(column);
  const filled = counts.flatMap((count, row) => (texts[row] === "" ? [] : [{ count, of: rods[row]?.rods ?? null }]));
  if (filled.length === 0 || filled.some(({ count, of }) => count === null || count !== of)) return null;
  return filled.length > 1 || columnOf("Qty", state) !== null
    ? { name: "Rod count", how: "equals the rods of the pattern in every row" }
    : null;
}

/** Rods of a pattern; sure where the row says how many stand each way, else two each way. */
interface RodCount {
  readonly rods: number;
  readonly isSure: boolean;
}

/** Rods that the columns of the pattern give, by row; null where they do not say. */
function rodCounts(state: Settling): readonly (RodCount | null)[] {
  const known = RODS.get(state) ?? countRods(state);
  RODS.set(state, known);
  return known;
}

/** Counted once for each state. */
const RODS = new WeakMap<Settling, readonly (RodCount | null)[]>();

function countRods(state: Settling): readonly (RodCount | null)[] {
  const { view } = state;
  const cellsOf = (...names: readonly HeadingName[]) => meantColumns(names, state).map((at) => view.textsOf(at));
  const columns: PatternTexts = {
    x: [...cellsOf("X", "Pitch X"), ...cellsOf("Pattern size", "Pattern pitch")],
    y: [...cellsOf("Y", "Pitch Y"), ...cellsOf("Pattern size", "Pattern pitch")],
    circle: cellsOf("Bolt circle"),
    points: cellsOf("Points"),
    linesX: cellsOf("Lines X"),
    linesY: cellsOf("Lines Y"),
    perimeter: cellsOf("Perimeter"),
  };
  const counts = { x: countsUnder("nx", state), y: countsUnder("ny", state), circle: countsUnder("Count", state) };
  return Array.from({ length: view.rows }, (_, row) =>
    rodsOf((key) => columns[key].map((texts) => texts[row] ?? "").find((text) => text !== ""), {
      x: counts.x[row] ?? null,
      y: counts.y[row] ?? null,
      circle: counts.circle[row] ?? null,
    }),
  );
}

type PatternTexts = Readonly<
  Record<"x" | "y" | "circle" | "points" | "linesX" | "linesY" | "perimeter", readonly (readonly string[])[]>
>;

function rodsOf(
  text: (key: keyof PatternTexts) => string | undefined,
  counts: Readonly<Record<"x" | "y" | "circle", number | null>>,
): RodCount | null {
  const [points, linesX, linesY, x, y] = [text("points"), text("linesX"), text("linesY"), text("x"), text("y")];
  const isOpen = /^(?:y|yes|true)$/i.test(text("perimeter") ?? "");
  if (points !== undefined) return { rods: listed(points), isSure: true };
  if (text("circle") !== undefined) return counts.circle === null ? null : { rods: counts.circle, isSure: true };
  if (linesX !== undefined && linesY !== undefined)
    return { rods: crossings(listed(linesX), listed(linesY), isOpen), isSure: true };
  if (x === undefined || y === undefined || isZero(x) || isZero(y)) return null;
  const [nx, ny] = [counts.x ?? spacesIn(x, 0), counts.y ?? spacesIn(y, 1)];
  const isSure = (counts.x !== null || x.includes("@")) && (counts.y !== null || y.includes("@"));
  return nx === null || ny === null ? null : { rods: crossings(nx, ny, isOpen), isSure };
}

/** Columns that stand for one of the names, or may stand for nothing but these. */
function meantColumns(names: readonly HeadingName[], { settled, open, meanings }: Settling): readonly number[] {
  const sure = names.flatMap((name) => settled.get(name) ?? []);
  const maybe = new Set(names.flatMap((name) => open.get(name) ?? []));
  const isMeant = (column: number) => meanings.get(column)?.every((name) => names.includes(name)) === true;
  return [...sure, ...[...maybe].filter(isMeant)];
}

function countsUnder(name: HeadingName, state: Settling): readonly (number | null)[] {
  const column = columnOf(name, state);
  return column === null ? [] : state.view.countsOf(column);
}

function listed(text: string): number {
  return text.split(/[;\n]/).filter((part) => part.trim() !== "").length;
}

/** No gauge one way: rods on one line, of which the length overall does not say how many there are. `6 x 0` says it in one text. */
function isZero(text: string): boolean {
  return /(?:^|x\s*)0["']?(?:$|\s*x)/i.test(text.trim());
}

/** Rods of `3 @ 6`, or of each part of `2 @ 6 x 3 @ 5`; a length alone has two. */
function spacesIn(text: string, part: 0 | 1): number | null {
  const parts = text.split(/\s[x\u00d7]\s?|(?<=["\d'])\s?[x\u00d7]\s?/i);
  const own = parts.length > 1 ? (parts[part] ?? "") : text;
  const spaces = /^\D{0,2}(\d{1,3})[^@]{0,12}@/.exec(own.trim())?.[1];
  return spaces === undefined ? (own.includes("@") ? null : 2) : Number(spaces) + 1;
}

function crossings(nx: number, ny: number, isOpen: boolean): number {
  return nx * ny - (isOpen ? Math.max(0, nx - 2) * Math.max(0, ny - 2) : 0);
}

interface Reading {
  readonly name: HeadingName;
  /** Row that cannot be so; null where every row can. */
  readonly refusedAt: number | null;
  readonly why: string;
}

/** The one reading that every row allows, where a row refuses the other. */
function onlyPossible(readings: readonly Reading[]): Proved | null {
  const [possible, ...others] = readings.filter(({ refusedAt }) => refusedAt === null);
  const refused = readings.find(({ refusedAt }) => refusedAt !== null);
  if (possible === undefined || others.length > 0 || refused === undefined) return null;
  return { name: possible.name, how: `${refused.name} cannot be: ${refused.why}` };
}

/** Two rods in a direction: overall and pitch are one. More: the plate, the edge distance or the rod refuses one of the two. */
function overallOrPitch(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const [overall = NOTE, pitch = NOTE] = names;
  if (names.length !== 2) return null;
  const rods = rodsAlong(column, overall, state);
  if (rods === null) return null;
  const cells = state.view.textsOf(column);
  const inAll = rodsSaid(state);
  const isPair = (row: number) => rods[row] === 2 || inAll.some((counts) => counts[row] === 2);
  const isTwo = (row: number) => isPair(row) || isWideForThree(column, row, state);
  if (cells.every((text, row) => text === "" || text.includes("@") || isCircle(text) || isTwo(row)))
    return { name: overall, how: twoRodsWords(isPair, cells) };
  const axis = overall === "X" || overall === "Y" ? overall : null;
  return axis === null ? null : onlyPossible(spacingReadings(column, [overall, pitch], axis, rods, state));
}

function twoRodsWords(isPair: (row: number) => boolean, cells: readonly string[]): string {
  const isCounted = cells.every((text, row) => text === "" || text.includes("@") || isPair(row));
  return isCounted
    ? "with two rods overall and pitch are the same"
    : "three rods so far from each other would stand off the base plate";
}

/** True where two such spacings reach over the base plate whichever way it lies, so that no third rod stands so far on. */
function isWideForThree(column: number, row: number, { view, ...state }: Settling): boolean {
  const spacings = sidesIn(view.textsOf(column)[row] ?? "", column, view);
  const sides = ["Base plate size", "Base plate X", "Base plate Y", "Base plate dia"].flatMap((name) =>
    columnsOf(name, { view, ...state }).flatMap((at) => sidesIn(view.textsOf(at)[row] ?? "", at, view)),
  );
  const [least, most] = [leastOf(spacings), greatestOf(sides)];
  return spacings.length > 0 && sides.length > 0 && 2 * least >= most;
}

/** The lengths of `14 x 16 x 1`; not a number where a part is none. */
function sidesIn(text: string, column: number, view: TableView): readonly number[] {
  if (text === "") return [];
  const unit = view.table.columns[column]?.unit ?? null;
  return text
    .replace(/\bSQ(?:UARE)?\b\.?/gi, "")
    .split(/x|\u00d7|\bPL\b/i)
    .filter((part) => part.trim() !== "")
    .map((part) => lengthIn(part, unit, view.unit) ?? Number.NaN);
}

/** True for a text of a bolt circle, as `24"Ø B.C.`, which is neither overall nor a pitch. */
function isCircle(text: string): boolean {
  return shapeOf(text) === "circle";
}

/** How many rods stand in the direction of a spacing, by row; null where a column says otherwise than the counts by axis. */
function rodsAlong(column: number, overall: HeadingName, state: Settling): readonly (number | null)[] | null {
  const cells = state.view.textsOf(column);
  const count = overall === "X" ? "nx" : overall === "Y" ? "ny" : null;
  const counted = count === null ? null : columnOf(count, state);
  if (counted !== null) {
    const counts = state.view.countsOf(counted);
    const texts = state.view.textsOf(counted);
    return cells.map((text, row) => (texts[row] === "" ? spacesIn(text, 0) : (counts[row] ?? null)));
  }
  const isByAxis = count === null && (columnOf("nx", state) !== null || columnOf("ny", state) !== null);
  const written = rodsWritten(state);
  return cells.map((text, row) => (isByAxis || isMoreThanFour(written, row) ? null : spacesIn(text, 0)));
}

/** Columns that say, or may say, how many rods a base has. */
function rodsWritten(state: Settling): readonly (readonly (number | null)[])[] {
  const maySay = countsIn(state.open.get("Rod count") ?? [], state.open.get("Rods") ?? [], state);
  return [...rodsSaid(state), ...maySay];
}

/** Columns that say how many rods a base has. */
function rodsSaid(state: Settling): readonly (readonly (number | null)[])[] {
  return countsIn(columnsOf("Rod count", state), columnsOf("Rods", state), state);
}

function countsIn(
  counts: readonly number[],
  rods: readonly number[],
  { view }: Settling,
): readonly (readonly (number | null)[])[] {
  const inRods = rods.map((column) => view.textsOf(column).map(countBefore));
  return [...counts.map((column) => view.countsOf(column)), ...inRods];
}

/** True where every text of the column begins with a number of rods, as `(4) 3/4`. */
function isCounted(column: number, { view }: Settling): boolean {
  return view.textsOf(column).every((text) => text === "" || countBefore(text) !== null);
}

function countBefore(text: string): number | null {
  const digits = /^\((\d{1,3})\)|^(\d{1,3}) ?(?:-|no\.?|nos\.?|x) /i.exec(text.trim());
  const found = digits?.[1] ?? digits?.[2];
  return found === undefined ? null : Number(found);
}

function isMoreThanFour(written: readonly (readonly (number | null)[])[], row: number): boolean {
  return written.some((counts) => counts[row] != null && counts[row] !== 4);
}

function spacingReadings(
  column: number,
  [overall, pitch]: readonly [HeadingName, HeadingName],
  axis: "X" | "Y",
  rods: readonly (number | null)[],
  state: Settling,
): readonly Reading[] {
  const spacing = state.view.lengthsOf(column);
  const plate = plateAlong(axis, state);
  const diameter = lengthsUnder("Rod dia", state);
  const tooWide = spacing.findIndex((length, row) => {
    const [count, side] = [rods[row], plate[row]];
    return length !== null && count != null && side != null && length * (count - 1) >= side;
  });
  const tooClose = spacing.findIndex((length, row) => {
    const [count, size] = [rods[row], diameter[row]];
    return length !== null && count != null && count > 1 && size != null && length <= size * (count - 1);
  });
  const rowOrNull = (row: number) => (row < 0 ? null : row);
  return [
    { name: overall, refusedAt: rowOrNull(tooClose), why: "the rods would touch each other" },
    { name: pitch, refusedAt: rowOrNull(tooWide), why: "the rods would stand off the base plate" },
  ];
}

/** A side of the base plate by row; null where none is given along that axis. */
function plateAlong(axis: "X" | "Y", state: Settling): readonly (Length | null)[] {
  return lengthsUnder(`Base plate ${axis}`, state);
}

function lengthsUnder(name: HeadingName, state: Settling): readonly (Length | null)[] {
  const column = columnOf(name, state);
  return column === null ? [] : state.view.lengthsOf(column);
}

/** Width and length of a plate or pier: one axis each where they are equal, or where the rods stand on it one way only. */
function axisOf(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const [x, y] = names.toSorted();
  const partner = partnerOf(column, names, state);
  if (x === undefined || y === undefined || names.length !== 2 || partner === null) return null;
  const [own, other] = [state.view.lengthsOf(column), state.view.lengthsOf(partner)];
  const isSquare = own.some((length) => length !== null) && own.every((length, row) => length === (other[row] ?? null));
  if (isSquare && isReadWhole(column, state) && isReadWhole(partner, state))
    return { name: isFirst(column, partner, state) ? x : y, how: "equal to the other side in every row" };
  const along = { x: lengthsUnder("X", state), y: lengthsUnder("Y", state) };
  return onlyPossible([
    { name: x, refusedAt: rowOff(own, other, along), why: "rods would stand off it" },
    { name: y, refusedAt: rowOff(other, own, along), why: "rods would stand off it" },
  ]);
}

type Lengths = readonly (Length | null)[];

/** The first row whose rods do not stand between the sides. */
function rowOff(x: Lengths, y: Lengths, along: { readonly x: Lengths; readonly y: Lengths }): number | null {
  const isOff = (rods: Length | null | undefined, side: Length | null | undefined) =>
    rods != null && side != null && rods >= side;
  const row = x.findIndex((side, at) => isOff(along.x[at], side) || isOff(along.y[at], y[at]));
  return row < 0 ? null : row;
}

function isReadWhole(column: number, { view }: Settling): boolean {
  const lengths = view.lengthsOf(column);
  return view.textsOf(column).every((text, row) => text === "" || lengths[row] !== null);
}

/** The other open column with the same two meanings, where there is one. */
function partnerOf(column: number, names: readonly HeadingName[], { open, meanings }: Settling): number | null {
  let partner: number | null = null;
  for (const other of open.get(names[0] ?? "") ?? []) {
    const among = meanings.get(other) ?? [];
    if (other === column || among.length !== names.length || !among.every((name) => names.includes(name))) continue;
    if (partner !== null) return null;
    partner = other;
  }
  return partner;
}

/** Of two equal sides, that whose heading comes first by its words. */
function isFirst(column: number, other: number, { view: { table } }: Settling): boolean {
  const words = (at: number) => `${table.columns[at]?.words ?? ""}`.toLowerCase();
  return words(column) === words(other) ? column < other : words(column) < words(other);
}

/** A length that is embedment and projection together in every row is the rod's. */
function rodLength(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  if (!names.includes("Rod length")) return null;
  const [above, below] = [lengthsUnder("Projection", state), lengthsUnder("Embedment", state)];
  const texts = state.view.textsOf(column);
  const filled = state.view.lengthsOf(column).flatMap((length, row) => (texts[row] === "" ? [] : [{ length, row }]));
  const isSum = ({ length, row }: { readonly length: Length | null; readonly row: number }) => {
    const [proj, emb] = [above[row], below[row]];
    return length !== null && proj != null && emb != null && length === proj + emb;
  };
  return filled.length > 0 && filled.every(isSum)
    ? { name: "Rod length", how: "equals embedment and projection together in every row" }
    : null;
}

/** A sheet that gives the templates' holes elsewhere leaves those of the base plates. No value proves which hole it is. */
function whichHole(column: number, _names: readonly HeadingName[], state: Settling): Proved | null {
  const isOwn = isTaken("Template hole", column, state) && !isTaken("Base plate hole", column, state);
  return isOwn ? { name: "Base plate hole", how: "the template's has a column of its own" } : null;
}

/** Thread sizes are rods. Else sizes of rods are, where no other column and nothing in the job gives the rods' diameter. */
function rodDiameter(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const fits = fitting(column, names, state);
  const rods = (["Rod dia", "Rods"] as const).find((name) => fits.includes(name));
  const isOnlyRods = fits.every((name) => name === "Rod dia" || name === "Rods");
  if (rods !== undefined && isOnlyRods) return byForm(column, fits, state);
  if (rods !== undefined && isNeeded(column, ["Rod dia", "Rods"], "rods.diameter", state)) {
    if (isOfRods(column, state)) return { name: rods, how: "sizes of rods, which no other column gives" };
    return null;
  }
  const others = names.filter((name) => name !== "Rod dia" && name !== "Rods");
  return rods === undefined ? byForm(column, others, state) : null;
}

/** Sizes that rods have: 1/4 to 4 in, M6 to M100. */
const SMALLEST_ROD = 6_000_000;
const LARGEST_ROD = 101_600_000;

function isOfRods(column: number, { view }: Settling): boolean {
  const lengths = view.lengthsOf(column);
  return view.textsOf(column).every((text, row) => {
    const length = lengths[row];
    return text === "" || (length != null && length >= SMALLEST_ROD && length <= LARGEST_ROD);
  });
}

/** True where nothing else, settled or open, can give a base what it cannot be without. */
function isNeeded(column: number, names: readonly HeadingName[], key: string, state: Settling): boolean {
  if (state.given.has(key) || names.some((name) => isTaken(name, column, state))) return false;
  return names.every((name) => !hasOther(state.open.get(name) ?? [], column));
}

/** The column of marks is the one of all different texts, where there is no other; then by the form of the cells. */
function whichMark(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  const { view, kinds } = state;
  const isMark = names.includes("Mark") && fitting(column, ["Mark"], state).length > 0;
  if (isMark && isNeeded(column, ["Mark"], "mark", state))
    return view.isDistinct(column)
      ? { name: "Mark", how: "every base needs a mark, and no other column gives it" }
      : null;
  if (names.includes("Mark") && isMark && !isTaken("Mark", column, state)) return null;
  const texts = view.textsOf(column).filter((text) => text !== "");
  if (names.includes("Kind") && texts.every((text) => kinds.has(text.toLowerCase())))
    return { name: "Kind", how: "its cells are kinds of the job" };
  const others = names.filter((name) => name !== "Mark" && name !== "Kind");
  return byShown(column, others, state) ?? noteWhereNoneShown(column, others, state);
}

/** COUNT beside a bolt circle counts its rods. NO. over texts is a mark. */
function whichCount(column: number, names: readonly HeadingName[], state: Settling): Proved | null {
  if (names.includes("Count") && columnOf("Bolt circle", state) !== null)
    return { name: "Count", how: "stands beside a bolt circle" };
  const isNumbers = fitting(column, ["Qty"], state).length > 0;
  if (isNumbers || !names.includes(NOTE)) return null;
  return whichMark(
    column,
    names.filter((name) => name === "Mark" || name === NOTE),
    state,
  );
}

/** A sheet that gives its piers has their sizes there. */
function footingOrPier(column: number, _names: readonly HeadingName[], state: Settling): Proved | null {
  const isGiven = (["Pier size", "Pier X", "Pier dia"] as const).some((name) => isTaken(name, column, state));
  return isGiven ? { name: NOTE, how: "the pier has columns of its own" } : null;
}
