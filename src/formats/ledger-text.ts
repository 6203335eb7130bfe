/** The ledger for a terminal: worst first, aligned, wrapped to the width; colour only where the shell asks for it. */
import type { CheckRow, Quantity } from "../checks/model.js";
import { isWithoutMargin } from "../checks/run.js";
import { answerReach, comparedTexts, counted, isGroup, marginText, subjectWords } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import type { SummaryBase } from "../summary/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/length.js";

/** How the terminal shows a ledger. */
export interface LedgerTextOptions {
  readonly unit: Unit;
  /** Columns of the terminal. */
  readonly width: number;
  readonly color: boolean;
  /** Every row on its own line; otherwise failing rows, alike ones joined, and the others counted. */
  readonly all: boolean;
  /** Where not every row is shown: all that are not checked or have a margin too, not failing rows alone. */
  readonly telling?: boolean;
}

/** Bases of one template whose rows say the same, as the terminal heads them. */
export interface LedgerHeading {
  /** In the order of the job. */
  readonly bases: readonly Pick<SummaryBase, "mark" | "quantity">[];
  readonly template: Pick<SummaryBase["template"], "mark" | "quantity" | "bases" | "heldBy">;
  readonly held: boolean;
}

type Style = "bold" | "red" | "yellow" | "cyan" | "green" | "dim";
const STYLE_CODES: Readonly<Record<Style, string>> = {
  bold: "1",
  red: "31",
  yellow: "33",
  cyan: "36",
  green: "32",
  dim: "2",
};

/** Text in a style, by the select-graphic-rendition sequences of ECMA-48, or plain. */
export function styled(text: string, style: Style, color: boolean): string {
  return color ? `\u001b[${STYLE_CODES[style]}m${text}\u001b[0m` : text;
}

const INDENT = "  ";
const LEAST_WIDTH = 40;

/** The line above the rows of bases, which `writeRowsText` gives. */
export const writeHeadingText = terminalText(headingText);

function headingText(heading: LedgerHeading, options: LedgerTextOptions): string {
  return `${wrap(headingLine(heading, options), options.width).join("\n")}\n`;
}

/** Rows under a heading, worst first, ending with an empty line. */
export const writeRowsText = terminalText(rowsText);

function rowsText(rows: readonly CheckRow[], options: LedgerTextOptions): string {
  const isShown = options.telling === true ? isTelling : isFailing;
  const shown = options.all ? rows.map(alone) : joinAlike(rows.filter(isShown));
  const lines = [...tableLines(shown, options), ...(options.all ? [] : countLines(rows, options))];
  return `${lines.join("\n")}\n\n`;
}

/** Heading and rows that belong to no base, ending with an empty line. */
export const writeLedgerRowsText = terminalText(ledgerRowsText);

function ledgerRowsText(heading: string, rows: readonly CheckRow[], options: LedgerTextOptions): string {
  return `${styled(heading, "bold", options.color)}\n${rowsText(rows, options)}`;
}

function headingLine({ bases, template, held }: LedgerHeading, { color }: LedgerTextOptions): string {
  const marks = bases.map(({ mark }) => mark);
  const hold = held ? ` ${styled(` HELD${heldBy(marks, template)}`, "red", color)}` : "";
  const count = counted(
    bases.reduce((sum, { quantity }) => sum + quantity, 0),
    "base",
  );
  const { mark, quantity } = template;
  const named = styled(listed(marks, MOST_HEADED), "bold", color);
  return `${named}${hold}  ${count}, template ${mark}${alsoFor(marks, template)}, quantity ${quantity}`;
}

/** Bases are named here alone, the others of their template with their own rows too. */
const MOST_HEADED = 60;
const MOST_MARKS = 8;

/** Only where their own rows do not hold it. */
function heldBy(marks: readonly string[], { heldBy: holding = [] }: LedgerHeading["template"]): string {
  return holding.length === 0 || holding.some((mark) => marks.includes(mark))
    ? ""
    : ` by ${listed(holding, MOST_MARKS)}`;
}

function alsoFor(marks: readonly string[], { bases }: LedgerHeading["template"]): string {
  const others = bases.filter((mark) => !marks.includes(mark));
  return others.length === 0 ? "" : ` (also of ${listed(others, MOST_MARKS)})`;
}

interface JoinedRow {
  readonly row: CheckRow;
  readonly subjects: readonly string[];
}

const alone = (row: CheckRow): JoinedRow => ({ row, subjects: [row.subject] });

/** Rows that say the same of several subjects become one, at the place of the first. */
function joinAlike(rows: readonly CheckRow[]): readonly JoinedRow[] {
  const groups = new Map<string, { row: CheckRow; subjects: string[] }>();
  for (const row of rows) {
    const { rule, status, severity, value, limit, sense, note, clause, answer, subject } = row;
    const own = isGroup(subject) ? subject : "";
    const key = JSON.stringify([rule, status, severity, value, limit, sense, note, clause, answer, own]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { row, subjects: [row.subject] });
    else group.subjects.push(row.subject);
  }
  return [...groups.values()];
}

interface TableRow {
  readonly cells: readonly string[];
  readonly style: Style;
  readonly note: string;
}

function tableLines(joined: readonly JoinedRow[], options: LedgerTextOptions): string[] {
  const rows = joined.map((one) => tableRow(one, options));
  const widths = [0, 1, 2, 3, 4].map((column) =>
    greatestOf(
      rows.map(({ cells }) => (cells[column] ?? "").length).filter((length) => length <= WIDEST_CELL),
      0,
    ),
  );
  return rows.flatMap((row) => rowLines(row, widths, options));
}

function answeredWords(answer: NonNullable<CheckRow["answer"]>): string {
  const said = answer.kind === "answered" ? "answered" : "release accepted with the question open";
  return `${said} by ${answer.by}, ${answer.date}: ${answer.text}${answerReach(answer)}`;
}

function tableRow({ row, subjects }: JoinedRow, { unit, all }: LedgerTextOptions): TableRow {
  const answered = row.answer === null ? "" : answeredWords(row.answer);
  const given = all ? giverWords(row) : "";
  return {
    cells: [statusWords(row), row.rule, subjectWords(subjects), comparison(row, unit), marginWords(row, unit)],
    style: statusStyle(row),
    note: [sourceWords(row), row.note, given, answered].filter((part) => part !== "").join("; "),
  };
}

/** Who gave what the rule takes, where it is not all the base's own. */
function giverWords({ givenBy }: CheckRow): string {
  return ["", "row"].includes(givenBy) ? "" : `given by ${givenBy}`;
}

/** `ACI 318-19, s.25.2.1`: the clause after the edition that has it, once where the clause says both. */
export function sourceWords({ clause, edition }: Pick<CheckRow, "clause" | "edition">): string {
  return clause.includes(edition) || edition === "" ? clause : `${edition}${clause === "" ? "" : `, ${clause}`}`;
}

/** A longer cell, as a list of many marks, does not widen the column of the others. */
const WIDEST_CELL = 48;

/** One row: its cells aligned when they fit the width, then source and note wrapped below. */
function rowLines({ cells, style, note }: TableRow, widths: readonly number[], options: LedgerTextOptions): string[] {
  const { color } = options;
  const padded = cells.map((cell, column) => cell.padEnd(widths[column] ?? 0));
  const [status = "", ...rest] = padded;
  const line = rest.join("  ").trimEnd();
  const indent = INDENT.length + status.length + 2;
  const fits = indent + line.length <= options.width;
  const body = fits
    ? [line]
    : wrap(
        cells
          .slice(1)
          .filter((cell) => cell !== "")
          .join("  "),
        options.width - indent,
      );
  const notes = wrap(note, options.width - indent).map((text) => styled(text, "dim", color));
  const [first = "", ...others] = [...body, ...notes];
  return [
    `${INDENT}${styled(status, style, color)}  ${first}`.trimEnd(),
    ...others.map((text) => " ".repeat(indent) + text),
  ];
}

function statusWords(row: CheckRow): string {
  if (row.status === "fail") return `FAIL ${row.severity}${row.answer === null ? "" : `, ${row.answer.kind}`}`;
  return row.status.replace("-", " ");
}

function statusStyle(row: CheckRow): Style {
  switch (row.status) {
    case "fail":
      return row.severity === "stop" ? "red" : row.severity === "ask" ? "yellow" : "cyan";
    case "pass":
      return "green";
    case "not-checked":
    case "not-applicable":
      return "dim";
  }
}

/** `2 in >= 1-7/8 in`; "" where nothing was compared. */
export function comparison(row: CheckRow, unit: Unit): string {
  if (row.value === null || row.limit === null) return "";
  const [value, limit] = comparedTexts(row.value, row.limit, unit);
  return `${value} ${row.sense ?? ""} ${limit}`;
}

/** `1/8 in to spare`, `exactly`, `short by 1/4 in`; "" where nothing was compared. */
export function marginWords(row: CheckRow, unit: Unit): string {
  if (row.margin === null) return "";
  const amount = row.margin.kind === "length" ? row.margin.twice : row.margin.count;
  const size: Quantity =
    row.margin.kind === "length"
      ? { kind: "length", twice: Math.abs(amount) }
      : { kind: "count", count: Math.abs(amount) };
  if (amount >= 0) return amount === 0 ? "exactly" : `${marginText(size, unit)} to spare`;
  const word = row.sense === ">=" ? "short by" : row.sense === "<=" ? "over by" : "differs by";
  return `${word} ${marginText(size, unit)}`;
}

const isFailing = ({ status }: CheckRow): boolean => status === "fail";

/** Every row but those that do not apply, and passes that can have no margin. */
const isTelling = (row: CheckRow): boolean => row.status !== "not-applicable" && !isWithoutMargin(row);

const CLOSEST = 3;

/** How many rows passed, were not checked and did not apply, and the passes with the least to spare. */
function countLines(rows: readonly CheckRow[], options: LedgerTextOptions): string[] {
  const passes = rows.filter((row) => row.status === "pass");
  const count = (status: CheckRow["status"]): number => rows.filter((row) => row.status === status).length;
  const others = `${count("not-checked")} not checked, ${count("not-applicable")} not applicable`;
  const counts = `${INDENT}${styled(`${passes.length} passed`, "green", options.color)}, ${others}`;
  const closest = joinAlike(passes.filter(hasSpare).map((row) => ({ ...row, note: "" }))).slice(0, CLOSEST);
  if (options.telling === true) return untoldLines(counts, rows, options);
  if (closest.length === 0) return [counts];
  const words = closest.map(({ row, subjects }) =>
    [row.rule, subjectWords(subjects), comparison(row, options.unit), `(${marginWords(row, options.unit)})`].join(" "),
  );
  const wrapped = words.flatMap((text) => wrap(text, options.width - 4));
  return [`${counts}; closest:`, ...wrapped.map((text) => `    ${text}`)];
}

/** Counts, and what is not shown beside them. */
function untoldLines(counts: string, rows: readonly CheckRow[], { width }: LedgerTextOptions): string[] {
  const names = [...new Set(rows.filter(isWithoutMargin).map(({ plainName }) => plainName))];
  const exact = rows.filter(isWithoutMargin).length;
  const words = `not shown: ${counted(exact, "row")} that ${exact === 1 ? "holds" : "hold"} with no margin to tell (${names.join(", ")}), and what does not apply`;
  return [
    `${counts};`,
    ...wrap(exact === 0 ? "not shown: what does not apply" : words, width - 4).map((text) => `    ${text}`),
  ];
}

/** Rows come worst first, so that the first passes are the closest. */
const hasSpare = (row: CheckRow): boolean => row.margin?.kind === "length" && row.sense !== "=";

/** Words in lines of at most `width` characters; a longer word stands alone. */
export function wrap(text: string, width: number): string[] {
  const room = Math.max(width, LEAST_WIDTH);
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" ? lines : [...lines, line];
}

/** A heading and a list of texts, wrapped with a hanging indent; empty without items. */
export const writeTextList = terminalText(textList);

function textList(heading: string, items: readonly string[], options: LedgerTextOptions): string {
  if (items.length === 0) return "";
  const lines = items.flatMap((item) =>
    wrap(item, options.width - 4).map((text, index) => `${index === 0 ? "  - " : "    "}${text}`),
  );
  return `${[styled(heading, "bold", options.color), ...lines].join("\n")}\n\n`;
}
