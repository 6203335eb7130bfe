/** The read-as lines gathered for the eye: what each heading was taken as, and a row a base. */
import { groupBy } from "../units/group-by.js";
import type { ReadAsEntry } from "./read-as-form.js";
import { marksOf } from "./read-as-form.js";

/** What the cells under one heading were taken as. */
export interface TakenHeading {
  readonly heading: string;
  /** Our own headings, in the order in which they were met; empty where nothing was taken. */
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** What became of cells that gave no value, with the number of them. */
  readonly besides: readonly string[];
}

/** Headings in the order of the sheet. */
export function takenHeadings(entries: readonly ReadAsEntry[]): readonly TakenHeading[] {
  const under = entries.filter(({ heading, cell }) => heading !== "" && cell !== "");
  const byHeading = groupBy(under, ({ heading }) => heading);
  return orderOf(under, ({ heading }) => heading).map((heading) => {
    const lines = byHeading.get(heading) ?? [];
    const taken = lines.filter(isTaken);
    const others = lines.filter((line) => !isTaken(line) && line.mark !== "");
    const besides = [...groupBy(others, ({ givenBy }) => givenBy)].map(([what, each]) => `${each.length} ${what}`);
    return {
      heading,
      names: distinct(taken.map(({ name }) => name)),
      units: distinct(taken.map(({ unit }) => unit)),
      besides: taken.length > 0 || besides.length > 0 ? besides : distinct(lines.map(({ givenBy }) => givenBy)),
    };
  });
}

/** True for a line that gives a value; what is only kept as a note is none. */
export function isTaken({ key, givenBy }: ReadAsEntry): boolean {
  return key !== "" && givenBy !== "kept as a note";
}

function distinct(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== "");
}

/** What one base has under one of our headings; several groups of rods are joined by a plus. */
export interface TakenValue {
  readonly text: string;
  /** True where the sheet writes it in other words. */
  readonly isReworded: boolean;
  /** True where no cell of the base's own row gives it: a default, a kind, a note, an answer. */
  readonly isFromElsewhere: boolean;
}

/** The bases as a table of our own headings. */
export interface TakenTable {
  readonly names: readonly string[];
  readonly rows: readonly { readonly mark: string; readonly values: ReadonlyMap<string, TakenValue> }[];
}

const FROM_THE_ROW: ReadonlySet<string> = new Set(["row", "cell above", "asked"]);

/** A row a base, in the order of the sheet; the mark itself is no column. */
export function takenTable(entries: readonly ReadAsEntry[]): TakenTable {
  const taken = [...entries.filter((entry) => isTaken(entry) && entry.key !== "mark"), ...askedValues(entries)];
  const marks = distinct(entries.filter(isTaken).flatMap(marksOf));
  const ofOne = taken.flatMap((entry) => marksOf(entry).map((mark) => ({ ...entry, mark })));
  const byMark = groupBy(ofOne, ({ mark }) => mark);
  const rows = marks.map((mark) => ({ mark, values: valuesOf(byMark.get(mark) ?? []) }));
  return { names: orderOf(taken, ({ name }) => name), rows };
}

/** Cells that are asked about, under what the other cells of their column were taken as. */
function askedValues(entries: readonly ReadAsEntry[]): readonly ReadAsEntry[] {
  const taken = entries.filter((entry) => isTaken(entry) && entry.heading !== "" && entry.key !== "mark");
  const names = new Map(taken.toReversed().map(({ heading, name }) => [heading, name]));
  return entries.flatMap((entry) => {
    const name = entry.givenBy === "asked" && entry.mark !== "" ? names.get(entry.heading) : undefined;
    return name === undefined ? [] : [{ ...entry, name, written: "", value: "?" }];
  });
}

/** Texts in the order that every base has them in: one that a base lacks stands where a later one has it. */
function orderOf(entries: readonly ReadAsEntry[], textOf: (entry: ReadAsEntry) => string): readonly string[] {
  const ordered: string[] = [];
  for (const lines of groupBy(entries, ({ mark }) => mark).values()) {
    let at = -1;
    for (const text of distinct(lines.map(textOf))) {
      const known = ordered.indexOf(text);
      at = known < 0 ? at + 1 : known;
      if (known < 0) ordered.splice(at, 0, text);
    }
  }
  return ordered;
}

function valuesOf(entries: readonly ReadAsEntry[]): ReadonlyMap<string, TakenValue> {
  const each = [...groupBy(entries, ({ name }) => name)].map(([name, lines]): [string, TakenValue] => [
    name,
    {
      text: [...groupBy(lines, ({ cell }) => cell).values()].map(cellValue).join(" + "),
      isReworded: lines.some(isReworded),
      isFromElsewhere: lines.some(({ givenBy }) => !FROM_THE_ROW.has(givenBy)),
    },
  ]);
  return new Map(each);
}

/** What one cell gives under one heading: `rectangle 20 18`. */
function cellValue(lines: readonly ReadAsEntry[]): string {
  return lines.map(({ value }) => value).join(" ");
}

/** True where the cell's text is not the value itself, whatever its case and blanks. */
export function isReworded({ written, value }: ReadAsEntry): boolean {
  const plain = (text: string): string => text.replace(/\s+/g, "").toLowerCase();
  return written !== "" && plain(written) !== plain(value);
}

/** Cells that say the same in the same words, and what they were taken as. */
export interface Rewording {
  readonly heading: string;
  readonly written: string;
  /** `Base plate X 18 in; Base plate Y 18 in` */
  readonly taken: string;
  readonly remarks: readonly string[];
  readonly marks: readonly string[];
}

/** What is written otherwise than it was taken, each text once; what stands for the cell above is `dittos`. */
export function rewordings(entries: readonly ReadAsEntry[]): readonly Rewording[] {
  const taken = entries.filter((entry) => isTaken(entry) && entry.cell !== "" && sourceOf(entry) === null);
  const byCell = groupBy(taken, ({ key, cell }) => `${key === "mark"} ${cell}`);
  const cells = [...byCell.values()].filter((lines) => lines.some(isReworded));
  const same = groupBy(cells.map(rewordingOf), ({ marks: _marks, ...said }) => JSON.stringify(said));
  return [...same.values()].flatMap((alike) => {
    const [first] = alike;
    return first === undefined ? [] : [{ ...first, marks: distinct(alike.flatMap(({ marks }) => marks)) }];
  });
}

/** A text that stands for what another cell says, with its cells: `E7 as E6`. */
export interface Ditto {
  readonly written: string;
  readonly cells: readonly string[];
}

/** Texts that stand for other cells, each once. */
export function dittos(entries: readonly ReadAsEntry[]): readonly Ditto[] {
  const taken = entries.flatMap((entry) => {
    const source = isTaken(entry) ? sourceOf(entry) : null;
    return source === null ? [] : [{ written: entry.written, cell: `${entry.cell} ${source}`.trimEnd() }];
  });
  const byText = groupBy(taken, ({ written }) => written);
  return [...byText].map(([written, each]) => ({ written, cells: distinct(each.map(({ cell }) => cell)) }));
}

/** `as E6` of a line that says what another cell says; null for a line of its own. */
function sourceOf({ remark, givenBy }: ReadAsEntry): string | null {
  const named = /^as \S*[A-Z]\d+(?=;|$)/.exec(remark)?.[0];
  return named ?? (givenBy === "cell above" ? "" : null);
}

function rewordingOf(lines: readonly ReadAsEntry[]): Rewording {
  const [first] = lines;
  const taken = [...groupBy(lines, ({ name }) => name)].map(
    ([name, each]) => `${name} ${each.map(valueWords).join(", ")}`,
  );
  return {
    heading: first?.heading ?? "",
    written: first?.written ?? "",
    taken: taken.join("; "),
    remarks: distinct(lines.flatMap(({ remark }) => remark.split("; "))).filter((words) =>
      saysMore(words, taken.join(" ")),
    ),
    marks: distinct(lines.flatMap(marksOf)),
  };
}

/** False for words whose figures all stand in what was taken: they say the same again. */
function saysMore(words: string, taken: string): boolean {
  const figures = words.split(/[\s,:()]+/).filter((word) => /\d/.test(word));
  return figures.length === 0 || figures.some((figure) => !taken.includes(figure));
}

/** The value with its unit, where it does not carry one itself. */
function valueWords({ value, unit }: ReadAsEntry): string {
  return unit !== "" && /^[\d\s./+-]+$/.test(value) ? `${value} ${unit}` : value;
}
