/** What was understood of a sheet, for a terminal: headings, a row a base as on the print, and what a checker has to look at. */
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import { nameCell } from "../readers/cell-place.js";
import { greatestOf } from "../units/extremes.js";
import { groupBy } from "../units/group-by.js";
import type { LedgerTextOptions } from "./ledger-text.js";
import { styled, wrap } from "./ledger-text.js";
import type { TakenHeading, TakenTable, TakenValue } from "./read-as-columns.js";
import { dittos, isTaken, rewordings, takenHeadings, takenTable } from "./read-as-columns.js";
import type { ReadAsEntry, ReadAsForm, ReadAsQuestion } from "./read-as-form.js";
import { unitWord } from "./read-as-form.js";

/** How the terminal shows it. */
export type ReadAsTextOptions = Pick<LedgerTextOptions, "width" | "color">;

/** Bases, and lines of one list, that are shown; the table on request has all. */
const MOST_BASES = 200;
const MOST_LISTED = 60;
const MOST_MARKS = 8;
const MOST_DITTOS = 16;

/** The whole text, ending with a line that says what is open. */
export const writeReadAsText = terminalText(readAsText);

function readAsText(form: ReadAsForm, options: ReadAsTextOptions): string {
  const { entries, questions } = withBareCells(form);
  const blocks = [
    [headLine(form, options)],
    headingLines(takenHeadings(entries), options),
    baseLines(takenTable(entries), options),
    rewordingLines(entries, options),
    untakenLines(entries, options),
    questionLines(questions, options),
  ];
  const shown = blocks.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
  return `${shown.join("\n\n")}\n\n`;
}

/** Cells without the sheet that the first line names; those of other sheets keep it. */
function withBareCells(form: ReadAsForm): Pick<ReadAsForm, "entries" | "questions"> {
  const { sheet, entries, questions } = form;
  if (sheet === "") return form;
  const before = nameCell(sheet, { line: 1, column: 1 }).slice(0, -"A1".length);
  const bare = (text: string): string => text.replaceAll(before, "");
  return {
    entries: entries.map((entry) => ({ ...entry, cell: bare(entry.cell), remark: bare(entry.remark) })),
    questions: questions.map((question) => ({ ...question, cells: question.cells.map(bare) })),
  };
}

function headLine({ file, sheet, unit, entries }: ReadAsForm, { color }: ReadAsTextOptions): string {
  const from = sheet === "" ? file : `${file}, sheet ${sheet}`;
  const lengths = unit === "" ? "" : `, bare numbers in ${unitWord(unit)}`;
  return styled(`${from}: ${counted(takenTable(entries).rows.length, "base")}${lengths}`, "bold", color);
}

/** Headings that are our own are named in one line: there is nothing to look up. */
function headingLines(headings: readonly TakenHeading[], options: ReadAsTextOptions): string[] {
  if (headings.length === 0) return [];
  const own = headings.filter(isOwn);
  const others = headings.filter((each) => !isOwn(each));
  const widest = greatestOf(
    others.map(({ heading }) => heading.length),
    "as it says:".length,
  );
  const width = Math.min(widest, Math.floor(options.width / 3));
  const lines = others.flatMap((each) =>
    hanging(clipped(each.heading, width).padEnd(width), headingWords(each), options),
  );
  const alike = own.map(({ heading }) => heading).join(", ");
  const last = own.length === 0 ? [] : hanging("as it says:".padEnd(width), alike, options);
  return [styled("Headings, and what they were taken as", "bold", options.color), ...lines, ...last];
}

function isOwn({ heading, names, besides }: TakenHeading): boolean {
  return names.length === 1 && names[0]?.toLowerCase() === heading.toLowerCase() && besides.length === 0;
}

function headingWords({ names, units, besides }: TakenHeading): string {
  const taken = [names.join(", "), ...(units.length === 0 ? [] : [`in ${units.map(unitWord).join(", ")}`])];
  return [...(names.length === 0 ? [] : [taken.join(", ")]), ...besides].join("; ");
}

/** A first column, and words beside it that are wrapped below themselves. */
function hanging(first: string, words: string, { width }: ReadAsTextOptions): string[] {
  const indent = first.length + 4;
  const [line = "", ...others] = wrap(words, width - indent);
  return [`  ${first}  ${line}`.trimEnd(), ...others.map((text) => " ".repeat(indent) + text)];
}

function clipped(text: string, width: number): string {
  const line = text.replace(/\s+/g, " ");
  return line.length <= width ? line : `${line.slice(0, Math.max(1, width - 2))}..`;
}

const WIDEST_VALUE = 22;

function baseLines(table: TakenTable, options: ReadAsTextOptions): string[] {
  const { rows } = table;
  if (rows.length === 0) return [];
  const { same, names } = splitNames(table);
  const shown = rows.slice(0, MOST_BASES);
  const columns = [
    columnOf(
      "Mark",
      shown.map(({ mark }) => mark),
    ),
    ...names.map((name) =>
      columnOf(
        name,
        shown.map(({ values }) => cellText(values.get(name))),
      ),
    ),
  ];
  const more = rows.length - shown.length;
  const alike = same.map(([name, value]) => `${name} ${cellText(value)}`).join("; ");
  return [
    styled("Bases, as they were taken", "bold", options.color),
    ...wrap(
      "* other words in the cell, see below; (in brackets) from elsewhere than the base's own row; ? asked",
      options.width - 2,
    ).map((text) => `  ${styled(text, "dim", options.color)}`),
    "",
    ...blocksOf(columns, options).flatMap((block, index) => [
      ...(index === 0 ? [] : [""]),
      ...tableLines(block, options),
    ]),
    ...(more > 0 ? [`  and ${counted(more, "more base")}: --table FILE has them all`] : []),
    ...(alike === "" ? [] : hanging("every base:", alike, options)),
  ];
}

/** What is the same in every base of several is said once. */
function splitNames({ names, rows }: TakenTable) {
  const same: [string, TakenValue][] = [];
  const others: string[] = [];
  for (const name of names) {
    const first = rows[0]?.values.get(name);
    const isSame =
      rows.length > 2 &&
      first !== undefined &&
      rows.every(({ values }) => cellText(values.get(name)) === cellText(first));
    if (isSame) same.push([name, first]);
    else others.push(name);
  }
  return { same, names: others };
}

function cellText(value: TakenValue | undefined): string {
  if (value === undefined) return "-";
  const text = `${clipped(value.text, WIDEST_VALUE)}${value.isReworded ? "*" : ""}`;
  return value.isFromElsewhere ? `(${text})` : text;
}

interface TextColumn {
  readonly width: number;
  /** The heading in lines, so that a column is as narrow as its values. */
  readonly heading: readonly string[];
  readonly cells: readonly string[];
}

function columnOf(name: string, cells: readonly string[]): TextColumn {
  const widest = greatestOf(
    cells.map((cell) => cell.length),
    0,
  );
  const heading = stacked(name, Math.max(widest, 6));
  return { width: greatestOf([widest, ...heading.map((line) => line.length)]), heading, cells };
}

/** Words one below the other, as many on a line as the width takes. */
function stacked(name: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of name.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Columns that fit side by side; every block begins with the marks. */
function blocksOf([marks, ...columns]: readonly TextColumn[], { width }: ReadAsTextOptions): TextColumn[][] {
  if (marks === undefined) return [];
  const blocks: TextColumn[][] = [[marks]];
  let used = marks.width + 2;
  for (const column of columns) {
    const isFull = used + 2 + column.width > width && (blocks.at(-1)?.length ?? 0) > 1;
    if (isFull) blocks.push([marks]);
    used = (isFull ? marks.width + 2 : used) + 2 + column.width;
    blocks.at(-1)?.push(column);
  }
  return blocks;
}

function tableLines(columns: readonly TextColumn[], { color }: ReadAsTextOptions): string[] {
  const height = greatestOf(
    columns.map(({ heading }) => heading.length),
    1,
  );
  const count = columns[0]?.cells.length ?? 0;
  const line = (textOf: (column: TextColumn) => string): string =>
    `  ${columns.map((column) => textOf(column).padEnd(column.width)).join("  ")}`.trimEnd();
  const heads = Array.from({ length: height }, (_, at) =>
    line(({ heading }) => heading[at - height + heading.length] ?? ""),
  );
  const body = Array.from({ length: count }, (_, at) => line(({ cells }) => cells[at] ?? ""));
  return [...heads.map((text) => styled(text, "bold", color)), ...body];
}

function rewordingLines(entries: readonly ReadAsEntry[], options: ReadAsTextOptions): string[] {
  const lines = rewordings(entries).map(({ heading, written, taken, remarks, marks }) => {
    const why = remarks.length === 0 ? "" : `; ${remarks.join("; ")}`;
    const ofMarks = marks.length === 0 ? "" : `   ${listed(marks, MOST_MARKS, " ")}`;
    return [`${taken} <- "${clipped(written, 60)}"${why}`, `under ${heading}:${ofMarks}`] as const;
  });
  const shown = lines
    .slice(0, MOST_LISTED)
    .flatMap(([first, second]) => [
      ...wrap(`* ${first}`, options.width - 4).map((text, index) => `${index === 0 ? "  " : "    "}${text}`),
      ...wrap(second, options.width - 8).map((text) => `      ${styled(text, "dim", options.color)}`),
    ]);
  const others = dittos(entries).flatMap(({ written, cells }) => {
    const words = `* what another cell says <- "${clipped(written, 20)}" in ${counted(cells.length, "cell")}: ${listed(cells, MOST_DITTOS)}`;
    return wrap(words, options.width - 4).map((text, index) => `${index === 0 ? "  " : "    "}${text}`);
  });
  return listOf("Taken otherwise than written", [...shown, ...others], lines.length, options);
}

/** Texts that gave no value, and what became of them, each reason once. */
function untakenLines(entries: readonly ReadAsEntry[], options: ReadAsTextOptions): string[] {
  const untaken = entries.filter(
    (entry) =>
      !isTaken(entry) && entry.givenBy !== "asked" && entry.written !== "" && !entry.remark.startsWith("heading"),
  );
  const reasons = groupBy(untaken, ({ givenBy, remark, heading }) => JSON.stringify([givenBy, remark, heading]));
  const lines = [...reasons.values()].map((alike) => untakenLine(alike));
  const shown = lines
    .slice(0, MOST_LISTED)
    .flatMap((text) => wrap(text, options.width - 4).map((line, index) => `${index === 0 ? "  - " : "    "}${line}`));
  return listOf("Not taken as a value, and why", shown, lines.length, options);
}

const MOST_TEXTS = 4;

function untakenLine(alike: readonly ReadAsEntry[]): string {
  const [first] = alike;
  const texts = alike.map(({ written, cell }) => `"${clipped(written, 40)}" ${cell}`.trimEnd());
  const { givenBy = "", remark = "" } = first ?? {};
  const why = remark.startsWith(givenBy) ? remark : [givenBy, remark].filter((word) => word !== "").join(": ");
  const under = first === undefined || first.heading === "" ? "" : ` under ${first.heading}`;
  return `${why}${under}: ${listed(texts, MOST_TEXTS)}`;
}

function listOf(title: string, shown: readonly string[], all: number, { color }: ReadAsTextOptions): string[] {
  if (shown.length === 0) return [];
  const more = all - MOST_LISTED;
  return [
    styled(title, "bold", color),
    ...shown,
    ...(more > 0 ? [`  and ${more} more: --table FILE has them all`] : []),
  ];
}

function questionLines(questions: readonly ReadAsQuestion[], options: ReadAsTextOptions): string[] {
  if (questions.length === 0) return [];
  const lines = questions.slice(0, MOST_LISTED).flatMap(({ cells, text, choices }, index) => {
    const where = cells.length === 0 ? "" : ` (${listed(cells, MOST_MARKS)})`;
    return [
      ...hanging(String(index + 1).padStart(2), `${text}${where}`, options),
      ...choices.flatMap(({ line, means }) => choiceLines(line, means, options)),
    ];
  });
  const heading = styled("Asked; each is answered by one of its lines in the job file", "bold", options.color);
  return [
    heading,
    ...lines,
    ...(questions.length > MOST_LISTED ? [`  and ${questions.length - MOST_LISTED} more`] : []),
  ];
}

function choiceLines(line: string, means: string, { width, color }: ReadAsTextOptions): string[] {
  const shown = line.split("\n").map((text) => `        ${styled(text, "cyan", color)}`);
  if (means === "") return shown;
  const last = line.split("\n").at(-1) ?? "";
  const beside = 8 + last.length + 3 + means.length <= width;
  if (beside) return [...shown.slice(0, -1), `${shown.at(-1)}   ${means}`];
  return [...shown, ...wrap(means, width - 12).map((text) => `            ${text}`)];
}
