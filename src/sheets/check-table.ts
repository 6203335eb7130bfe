/** The signer's block: the checks of a base in the order in which a signer wants them, as much of it as its room takes. */
import type { CheckRow, Quantity } from "../checks/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { once, onceFor } from "../units/once.js";
import { at, group, line, stroke, text } from "./items.js";
import type { CheckLine, Prepared } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import type { SignerLine, SignerText } from "./signer-lines.js";
import { bareTexts, signerText, spareText } from "./signer-lines.js";
import type { Column, Piece } from "./table.js";
import { headingItems } from "./table.js";
import { shortenAtWord, textWidth, wrap, wrapAtMost } from "./text-metrics.js";

/** Lines of checks, in the order of the rows, which are worst first: rows that agree but for their subject are one line. */
export function checkLines(rows: readonly CheckRow[], unit: Unit): readonly CheckLine[] {
  const applying = rows.filter(({ status }) => status !== "not-applicable");
  return alikeRows(applying, unit).map(([row, ...others]) => ({
    row,
    subjects: [row, ...others].map(({ subject }) => subject),
  }));
}

/** Rows that agree but for subject and note, in the order of the first of each. */
export function alikeRows(
  rows: readonly CheckRow[],
  unit: Unit,
): readonly (readonly [CheckRow, ...(readonly CheckRow[])])[] {
  const alike = new Map<string, [CheckRow, ...CheckRow[]]>();
  const figures = figuresIn(unit);
  for (const row of rows) {
    const key = keyOf(row, figures);
    const known = alike.get(key);
    if (known === undefined) alike.set(key, [row]);
    else known.push(row);
  }
  return [...alike.values()];
}

type Figures = (row: CheckRow) => string;

function keyOf(row: CheckRow, figures: Figures): string {
  const { rule, severity, status, clause, edition, answer, sense } = row;
  const by = answer === null ? "" : `${answer.kind} ${answer.by} ${answer.date}`;
  return [rule, severity, status, clause, edition, by, sense, figures(row)].join("|");
}

/** Figures of a row as they are written; of rows that hold the same, written once. */
function figuresIn(unit: Unit): Figures {
  const known = new Map<string, string>();
  return ({ value, limit, margin, missing }) => {
    const held = `${amountOf(value)}|${amountOf(limit)}|${amountOf(margin)}|${missing.join("|")}`;
    const written = known.get(held) ?? figureWords(value, limit, margin, missing, unit);
    known.set(held, written);
    return written;
  };
}

function amountOf(quantity: Quantity | null): string {
  if (quantity === null) return "";
  return quantity.kind === "length" ? `${quantity.twice}` : `n${quantity.count}`;
}

function figureWords(
  value: Quantity | null,
  limit: Quantity | null,
  margin: Quantity | null,
  missing: readonly string[],
  unit: Unit,
): string {
  const spare = margin === null ? "" : spareText(margin, unit);
  return [spare, ...(value === null || limit === null ? missing : bareTexts(value, limit, unit))].join("|");
}

/** How much is said of each fail, the fullest first: so many lines stand under it; `gathered`: all of a rule are one line. */
interface Detail {
  readonly lines: number;
  readonly gathered: boolean;
}

const DETAILS: readonly Detail[] = [
  { lines: 2, gathered: false },
  { lines: 1, gathered: false },
  { lines: 1, gathered: true },
  { lines: 0, gathered: true },
];

const MOST_MARGINS = 30;

/**
 * All fails, what was not checked, then least margins and what holds exactly as there is room. `room` is the height, mm; null
 * where not even the fails and what was not checked fit. Margins lose the line that names their clause where fewer than
 * `wanted` would have room with it.
 */
export function signersBlock(
  request: Prepared,
  width: number,
  lettering: Lettering,
  room: number,
  wanted: number,
): Piece | null {
  const setting = settingOf(request, width, lettering);
  for (const detail of DETAILS) {
    const parts = partsIn(setting, detail, room, wanted);
    if (parts !== null) return pieceOf(setting, parts);
  }
  return null;
}

/** Height of the block with all that is said of each fail and so many margins, where there are as many. */
export function wantedHeight(request: Prepared, width: number, lettering: Lettering, wanted: number): number {
  const setting = settingOf(request, width, lettering);
  const fails = setting.said.fails.map((each) => setFail(setting, each, { lines: 1, gathered: false }));
  return (
    leastRoom(setting) +
    linesHeight(fails, lettering) +
    Math.min(wanted, setting.said.margins.length) * heightWith(1, lettering)
  );
}

/** Height of the block with all that it must say and no more: a line for the fails of each rule, and what was not checked. */
export function leastSignersHeight(request: Prepared, width: number, lettering: Lettering): number {
  const setting = settingOf(request, width, lettering);
  return leastRoom(setting) + setting.said.failsByRule.length * heightWith(0, lettering);
}

/** For a sheet that has no room for the least: as many fails as have, and how many more there are, and of what was not checked too. */
export function cutSignersBlock(request: Prepared, width: number, lettering: Lettering, room: number): Piece {
  const whole = settingOf(request, width, lettering);
  const { failsByRule, notChecked, margins, exact } = whole.said;
  const words = `NOT CHECKED, DATA MISSING: ${notChecked.length} rules in ledger.csv`;
  const setting = { ...whole, notChecked: notChecked.length === 0 ? [] : [words] };
  const most = Math.max(0, Math.floor((room - leastRoom(setting)) / heightWith(0, lettering)));
  const fails = failsByRule.slice(0, most).map((each) => setFail(setting, each, { lines: 0, gathered: true }));
  const left = failsByRule.length - fails.length;
  const foot = left === 0 ? footWords(margins.length + exact.length) : `+ ${left} MORE RULES FAIL: see ledger.csv`;
  return pieceOf(setting, { fails, margins: [], exact: [], foot });
}

/** The texts of a block, set for one width: measured once, whatever the room. */
interface Setting {
  readonly said: SignerText;
  readonly width: number;
  readonly lettering: Lettering;
  readonly columns: readonly Column[];
  readonly notChecked: readonly string[];
  readonly exact: readonly string[];
}

const settingsOf = onceFor((request: Prepared) => {
  const said = signerText(request);
  const widths = once((small: number) => cellWidths(said, small));
  return once((lettering: Lettering) =>
    once((width: number) => setFor(said, widths(lettering.small), width, lettering)),
  );
});

function settingOf(request: Prepared, width: number, lettering: Lettering): Setting {
  return settingsOf(request)(lettering)(width);
}

function setFor(said: SignerText, widths: CellWidths, width: number, lettering: Lettering): Setting {
  const paragraph = (lead: string, words: readonly string[]): readonly string[] =>
    words.length === 0 ? [] : wrap(`${lead}: ${words.join("; ")}.`, width - 2 * PAD, lettering.small);
  return {
    said,
    width,
    lettering,
    columns: columnsFor(widths, width),
    notChecked: paragraph("NOT CHECKED, DATA MISSING", said.notChecked),
    exact: paragraph("MET EXACTLY, NO MARGIN ASKED", said.exact),
  };
}

const PAD = 0.8;

/** Between two columns, in letters. */
const COLUMN_GAP = 1;

/** Of each column what stands in it, of the subjects the least, the gap to the next counted in. */
type CellWidths = Readonly<Record<"name" | "subject" | "value" | "limit" | "margin", number>>;

function cellWidths(said: SignerText, small: number): CellWidths {
  const lines = [...said.fails, ...said.failsByRule, ...said.margins.slice(0, MOST_MARGINS)];
  const widest = (title: string, cell: (each: SignerLine) => string): number =>
    greatestOf(
      lines.map((each) => textWidth(cell(each), small, each.effect !== "")),
      textWidth(title, small),
    ) +
    COLUMN_GAP * small;
  return {
    name: widest("RULE", (each) => each.name),
    subject: textWidth("SUBJECT", small) + COLUMN_GAP * small,
    value: widest("VALUE", (each) => each.value),
    limit: widest("LIMIT", (each) => each.limit),
    margin: widest("MARGIN", (each) => each.margin) + PAD,
  };
}

/** Every column as wide as what stands in it; the subjects have what is left. */
function columnsFor({ value, limit, margin, ...widths }: CellWidths, width: number): readonly Column[] {
  const rest = width - value - limit - margin;
  const name = Math.min(widths.name, rest - widths.subject);
  return [
    { title: "RULE", share: name / width, align: "start" },
    { title: "SUBJECT", share: (rest - name) / width, align: "start" },
    { title: "VALUE", share: value / width, align: "end" },
    { title: "LIMIT", share: limit / width, align: "end" },
    { title: "MARGIN", share: margin / width, align: "end" },
  ];
}

/** A line with what stands under it. */
interface SetLine {
  readonly cells: readonly string[];
  readonly under: readonly string[];
  /** In bold before the first line under it, and the room that it takes. */
  readonly lead: { readonly words: string; readonly width: number };
  /** In bold. */
  readonly isFail: boolean;
}

interface Parts {
  readonly fails: readonly SetLine[];
  readonly margins: readonly SetLine[];
  readonly exact: readonly string[];
  readonly foot: string;
}

function partsIn(setting: Setting, detail: Detail, room: number, wanted: number): Parts | null {
  const { said, lettering } = setting;
  const spare = room - leastRoom(setting);
  const own = detail.gathered ? said.failsByRule : said.fails;
  if (own.length * heightWith(Math.min(1, detail.lines), lettering) > spare) return null;
  const fails = own.map((each) => setFail(setting, each, detail));
  const left = spare - linesHeight(fails, lettering);
  if (left < 0) return null;
  const whole = marginsIn(setting, left, wanted);
  const above = left - paragraphHeight(setting.exact, lettering);
  const beside = marginsIn(setting, above, wanted);
  const isNamed = setting.exact.length > 0 && above >= 0 && beside.length >= Math.min(wanted, whole.length);
  const margins = isNamed ? beside : whole;
  const rest = said.margins.length - margins.length + (isNamed ? 0 : said.exact.length);
  return { fails, margins, exact: isNamed ? setting.exact : [], foot: footWords(rest) };
}

/** Height of a block without a fail or a margin. */
function leastRoom({ lettering, notChecked }: Setting): number {
  return frameHeight(lettering) + paragraphHeight(notChecked, lettering) + paragraphHeight([""], lettering);
}

/** As many margins as fit this height: each with its clause under it where that leaves as many as are wanted. */
function marginsIn(setting: Setting, height: number, wanted: number): readonly SetLine[] {
  const { said, lettering } = setting;
  const count = (under: number) =>
    Math.min(MOST_MARGINS, Math.max(0, Math.floor(height / heightWith(under, lettering))));
  const isEnough = count(1) >= Math.min(wanted, said.margins.length);
  const [own, under] = isEnough ? [said.margins, 1] : [said.marginsByRule, 0];
  return own.slice(0, count(under)).map((each) => setMargin(setting, each, under));
}

const footWords = (rest: number): string => (rest > 0 ? `+ ${rest} more in ledger.csv` : "Every row is in ledger.csv");

/** With no line under it, a subject that is too long for its column is counted in the heading alone. */
function setFail(setting: Setting, said: SignerLine, { lines }: Detail): SetLine {
  const { width, lettering } = setting;
  if (lines === 0) return { ...cellsOf(setting, { ...said, name: `FAIL ${said.name}` }, true), ...NOTHING_UNDER };
  const { cells, beside } = cellsOf(setting, said, true);
  const lead = textWidth(said.fail, lettering.small, true) + lettering.small;
  const about = [said.effect, ...beside, said.source].join("; ");
  const under = hung(about, width - 2 * PAD - lettering.small, lead, lettering.small, lines);
  return { cells, lead: { words: said.fail, width: lead }, under, isFail: true };
}

const NO_LEAD = { words: "", width: 0 } as const;
const NOTHING_UNDER = { lead: NO_LEAD, under: [], isFail: true } as const;

/** Lines of which the first leaves room for what stands before it. */
function hung(words: string, room: number, lead: number, letter: number, most: number): readonly string[] {
  const [first = ""] = wrap(words, room - lead, letter);
  if (most === 1) return [shortenAtWord(words, room - lead, letter)];
  const rest = words.slice(first.length).trim();
  return rest === "" ? [first] : [first, ...wrapAtMost(rest, room, letter, most - 1, false, shortenAtWord)];
}

function setMargin(setting: Setting, said: SignerLine, lines: number): SetLine {
  const { small } = setting.lettering;
  const { cells, beside } = cellsOf(setting, said, false);
  const about = [...beside, said.source].join("; ");
  const under =
    lines === 0 ? [] : wrapAtMost(about, setting.width - 2 * PAD - small, small, lines, false, shortenAtWord);
  return { cells, lead: NO_LEAD, under, isFail: false };
}

/** Subjects that are too long for their column stand under the line instead, and where a name runs on into it. */
function cellsOf({ columns, width, lettering }: Setting, said: SignerLine, bold: boolean) {
  const { small } = lettering;
  const [nameRoom = 0, room = 0] = columns.map(({ share }) => share * width - COLUMN_GAP * small);
  const runsOn = textWidth(said.name, small, bold) > nameRoom;
  const subject = runsOn ? undefined : said.subjects.find((words) => textWidth(words, small, bold) <= room);
  const name = shortenAtWord(said.name, runsOn ? nameRoom + room : nameRoom, small, bold);
  const cells = [name, subject ?? "", said.value, said.limit, said.margin];
  return { cells, beside: subject === undefined ? said.subjects.slice(-1) : [] };
}

function rowOf({ small }: Lettering): number {
  return small * 1.75;
}

function underOf({ small }: Lettering): number {
  return small * 1.5;
}

/** Height of a signer's block that has nothing to say: no block is lower. */
export function emptySignersHeight(lettering: Lettering): number {
  return frameHeight(lettering) + paragraphHeight([""], lettering);
}

/** Height of a line with so many under it. */
function heightWith(under: number, lettering: Lettering): number {
  return rowOf(lettering) + under * underOf(lettering);
}

function lineHeight({ under }: SetLine, lettering: Lettering): number {
  return heightWith(under.length, lettering);
}

function linesHeight(lines: readonly SetLine[], lettering: Lettering): number {
  return lines.reduce((sum, each) => sum + lineHeight(each, lettering), 0);
}

function paragraphHeight(lines: readonly string[], lettering: Lettering): number {
  return lines.length === 0 ? 0 : lines.length * underOf(lettering) + lettering.small * 0.5;
}

/** Heading, column names and the line at the end. */
function frameHeight(lettering: Lettering): number {
  return lettering.body * 2 + rowOf(lettering) + 1;
}

function pieceOf(setting: Setting, parts: Parts): Piece {
  const { lettering, notChecked } = setting;
  const paragraphs = [notChecked, parts.exact, [parts.foot]];
  const height =
    frameHeight(lettering) +
    linesHeight([...parts.fails, ...parts.margins], lettering) +
    paragraphs.reduce((sum, lines) => sum + paragraphHeight(lines, lettering), 0);
  return { height, draw: (x, top) => group("signer", blockItems(setting, parts, paragraphs, x, top)) };
}

function blockItems(
  setting: Setting,
  { fails, margins }: Parts,
  paragraphs: readonly (readonly string[])[],
  x: number,
  top: number,
): readonly SceneItem[] {
  const { said, width, lettering, columns } = setting;
  const row = rowOf(lettering);
  const items: SceneItem[] = [...headingItems(said.heading, x, top, width, lettering)];
  let y = top - lettering.body * 2;
  const put = (more: readonly SceneItem[], height: number) => {
    for (const item of more) items.push(item);
    y -= height;
  };
  const rule = () => stroke("table", line(at(x, y), at(x + width, y)));
  put(
    cellItems(
      setting,
      columns.map(({ title }) => title),
      x,
      y,
      false,
    ),
    row,
  );
  items.push(rule());
  for (const each of fails) put(lineItems(setting, each, x, y), lineHeight(each, lettering));
  if (fails.length > 0 && margins.length > 0) items.push(rule());
  for (const each of margins) put(lineItems(setting, each, x, y), lineHeight(each, lettering));
  items.push(rule());
  for (const lines of paragraphs) put(paragraphItems(lines, x, y, lettering), paragraphHeight(lines, lettering));
  return items;
}

function lineItems(setting: Setting, set: SetLine, x: number, top: number): readonly SceneItem[] {
  const { cells, under, lead, isFail } = set;
  const { small } = setting.lettering;
  const left = x + PAD + small;
  const below = top - rowOf(setting.lettering) - small * 1.1;
  const step = underOf(setting.lettering);
  return [
    ...cellItems(setting, cells, x, top, isFail),
    ...(lead.words === "" ? [] : [text("table", lead.words, at(left, below), small, { bold: true })]),
    ...under.map((words, i) => text("table", words, at(i === 0 ? left + lead.width : left, below - i * step), small)),
  ];
}

/** Cells of one row; the row's height below `top`. A rule's name may run on where no subject stands beside it. */
function cellItems(
  { columns, width, lettering }: Setting,
  cells: readonly string[],
  x: number,
  top: number,
  bold: boolean,
): readonly SceneItem[] {
  const { small } = lettering;
  const base = top - (rowOf(lettering) + small) / 2;
  let left = x;
  return columns.flatMap(({ share, align }, i) => {
    const from = left;
    left += share * width;
    const words = cells[i] ?? "";
    const place = align === "start" ? from + PAD : left - PAD;
    return words === "" ? [] : [text("table", words, at(place, base), small, { anchor: align, bold })];
  });
}

function paragraphItems(lines: readonly string[], x: number, top: number, lettering: Lettering): readonly SceneItem[] {
  const { small } = lettering;
  return lines
    .filter((words) => words !== "")
    .map((words, i) => text("table", words, at(x + PAD, top - small * 1.4 - i * underOf(lettering)), small));
}
