/** What parts the cells of a text: decided over all its lines, since titles stand above a table and notes below it. */
import { literalCells } from "./quoted-cells.js";

/** A sign between cells, or two blanks and more. */
export type Separator = "," | ";" | "\t" | "|" | "aligned";

/** Lines that are looked at, and how much of each: a table shows early how it is parted. */
const [MOST_LINES, MOST_LETTERS] = [5000, 4000];

/** The lines of a text that are looked at, blank ones and rules left out. */
export function sampleLines(text: string): readonly string[] {
  const lines: string[] = [];
  for (const [line] of text.matchAll(/[^\r\n]+/g)) {
    if (line.trim() !== "" && !isRule(line)) lines.push(line.slice(0, MOST_LETTERS));
    if (lines.length >= MOST_LINES) break;
  }
  return lines;
}

/** A rule below headings or around a table: dashes, bars and crosses alone. */
export function isRule(line: string): boolean {
  return /^[\s|+:=_\u2010-\u2015\u2500-\u257F-]+$/.test(line) && /[-=_\u2010-\u2015\u2500-\u257F]{3}/.test(line);
}

/** Pieces of a line parted by two blanks and more, with where they start. */
export function piecesOf(line: string): readonly { readonly text: string; readonly start: number }[] {
  return [...line.matchAll(/\S+(?:[ \u00A0]\S+)*/g)].map(({ 0: text, index }) => ({ text, start: index }));
}

/** A line between bars without its outer ones. */
export function withoutOuterBars(line: string): string {
  return line.trim().replace(/^\|/, "").replace(/\|$/, "");
}

/** How many cells a line has. */
export function countCells(line: string, separator: Separator): number {
  if (separator === "aligned") return piecesOf(line).length;
  if (separator === "|") return line.includes("|") ? withoutOuterBars(line).split("|").length : 1;
  return literalCells(line, separator);
}

/** How a separator would part the lines. */
interface Parting {
  readonly separator: Separator;
  /** Cells of most of the lines that it parts; 1 where it parts none. */
  readonly cells: number;
  /** Lines with so many cells, and the first of them. */
  readonly lines: number;
  readonly first: string;
}

/** The count that most lines of more than one cell have, the greater of two that are as common; null where there is none. */
export function commonCount(counts: readonly number[]): number | null {
  const tally = new Map<number, number>();
  for (const count of counts) if (count > 1) tally.set(count, (tally.get(count) ?? 0) + 1);
  const ranked = [...tally].sort(([a, many], [b, others]) => others - many || b - a);
  return ranked[0]?.[0] ?? null;
}

function partingOf(separator: Separator, lines: readonly string[]): Parting {
  const counts = lines.map((line) => countCells(line, separator));
  const cells = commonCount(counts) ?? 1;
  const parted = cells === 1 ? [] : lines.filter((_, index) => counts[index] === cells);
  return { separator, cells, lines: parted.length, first: parted[0] ?? "" };
}

/** The separator of these lines among those that may be; null where none parts a line. */
export function chooseSeparator(lines: readonly string[], among: readonly Separator[]): Separator | null {
  const partings = among.map((separator) => partingOf(separator, lines)).filter(({ cells }) => cells > 1);
  const plain = partings.find((parting) => isPlain(parting, lines.length));
  if (plain !== undefined) return plain.separator;
  const able = partings.filter(({ separator, lines: parted }) => separator !== "aligned" || parted > 1);
  return (
    able.reduce<Parting | null>((best, each) => (best === null || isBetter(each, best) ? each : best), null)
      ?.separator ?? null
  );
}

/** Tabs and bars part cells wherever they stand in lines alike; one bar a line may be a sign inside a cell. */
function isPlain({ separator, cells, lines }: Parting, all: number): boolean {
  if (lines < 2) return false;
  return separator === "\t" ? cells > 2 || 2 * lines >= all : separator === "|" && cells > 2;
}

/** The true one parts the headings, which the other does not, and the rows that the other parts too; else that with more cells. */
function isBetter(one: Parting, other: Parting): boolean {
  if (leads(one, other)) return true;
  if (leads(other, one)) return false;
  if (one.separator === "aligned" && other.lines >= one.lines) return false;
  return one.lines * (one.cells - 1) > other.lines * (other.cells - 1);
}

function leads(one: Parting, other: Parting): boolean {
  return countCells(one.first, other.separator) === 1 && countCells(other.first, one.separator) > 1;
}
