/** The signer's block: the checks of a base in the order in which a signer wants them, as much of it as its room takes. */
import type { CheckRow } from "../checks/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { at, group, line, stroke, text } from "./items.js";
import { once, onceFor } from "./once.js";
import type { CheckLine, Prepared } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import type { SignerLine, SignerText } from "./signer-lines.js";
import { bareTexts, signerText, spareText } from "./signer-lines.js";
import type { Column, Piece } from "./table.js";
import { headingItems } from "./table.js";
import { shortenAtWord, textWidth, wrap, wrapAtWords } from "./text-metrics.js";

/** Lines of checks, in the order of the rows, which are worst first: rows that agree but for their subject are one line. */
export function checkLines(rows: readonly CheckRow[], unit: Unit): readonly CheckLine[] {
  const lines = new Map<string, { row: CheckRow; subjects: string[] }>();
  for (const row of rows) {
    if (row.status === "not-applicable") continue;
    const key = keyOf(row, unit);
    const known = lines.get(key);
    if (known === undefined) lines.set(key, { row, subjects: [row.subject] });
    else known.subjects.push(row.subject);
  }
  return [...lines.values()];
}

function keyOf(row: CheckRow, unit: Unit): string {
  const { rule, severity, status, clause, edition, answer, value, limit, sense, margin, missing } = row;
  const by = answer === null ? "" : `${answer.by} ${answer.date}`;
  const figures = value === null || limit === null ? missing : bareTexts(value, limit, unit);
  const spare = margin === null ? "" : spareText(margin, unit);
  return [rule, severity, status, clause, edition, by, sense, spare, ...figures].join("|");
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

/** Of the least margins this many are wanted before what holds exactly is named. */
const WANTED_MARGINS = 2;
const MOST_MARGINS = 30;

/**
 * All fails, what was not checked, then least margins and what holds exactly as there is room. `room` is the height, mm; null
 * where not even the fails and what was not checked fit.
 */
export function signersBlock(request: Prepared, width: number, lettering: Lettering, room: number): Piece | null {
  const setting = settingOf(request, width, lettering);
  for (const detail of DETAILS) {
    const parts = partsIn(setting, detail, room);
    if (parts !== null) return pieceOf(setting, parts);
  }
  return null;
}

/** The block with all that it must say and no more, as low as it can be: for a sheet that has no other place to put it. */
export function leastSignersBlock(request: Prepared, width: number, lettering: Lettering): Piece {
  const setting = settingOf(request, width, lettering);
  const { failsByRule, margins, exact } = setting.said;
  const fails = failsByRule.map((each) => setFail(setting, each, { lines: 0, gathered: true }));
  return pieceOf(setting, { fails, margins: [], exact: [], foot: footWords(margins.length + exact.length) });
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
  return once((lettering: Lettering) => once((width: number) => setFor(said, width, lettering)));
});

function settingOf(request: Prepared, width: number, lettering: Lettering): Setting {
  return settingsOf(request)(lettering)(width);
}

function setFor(said: SignerText, width: number, lettering: Lettering): Setting {
  const paragraph = (lead: string, words: readonly string[]): readonly string[] =>
    words.length === 0 ? [] : wrap(`${lead}: ${words.join("; ")}.`, width - 2 * PAD, lettering.small);
  return {
    said,
    width,
    lettering,
    columns: columnsFor(said, width, lettering),
    notChecked: paragraph("NOT CHECKED", said.notChecked),
    exact: paragraph("HOLDS EXACTLY, AS MEANT", said.exact),
  };
}

const PAD = 0.8;

/** Every column as wide as what stands in it; the subjects have what is left. */
function columnsFor(said: SignerText, width: number, { small }: Lettering): readonly Column[] {
  const lines = [...said.fails, ...said.failsByRule, ...said.margins.slice(0, MOST_MARGINS)];
  const widest = (title: string, cell: (each: SignerLine) => string): number =>
    greatestOf(
      lines.map((each) => textWidth(cell(each), small, each.effect !== "")),
      textWidth(title, small),
    ) +
    2 * PAD;
  const [value, limit, margin, status] = [
    widest("VALUE", (each) => each.value),
    widest("LIMIT", (each) => each.limit),
    widest("MARGIN", (each) => each.margin),
    textWidth("FAIL", small, true) + 2 * PAD,
  ];
  const rest = width - value - limit - margin - status;
  const least = textWidth("SUBJECT", small) + 2 * PAD;
  const name = Math.min(
    widest("RULE", (each) => each.name),
    rest - least,
  );
  return [
    { title: "RULE", share: name / width, align: "start" },
    { title: "SUBJECT", share: (rest - name) / width, align: "start" },
    { title: "VALUE", share: value / width, align: "end" },
    { title: "LIMIT", share: limit / width, align: "end" },
    { title: "MARGIN", share: margin / width, align: "end" },
    { title: "", share: status / width, align: "end" },
  ];
}

/** A line with what stands under it. */
interface SetLine {
  readonly cells: readonly string[];
  readonly under: readonly string[];
  readonly bold: boolean;
}

interface Parts {
  readonly fails: readonly SetLine[];
  readonly margins: readonly SetLine[];
  readonly exact: readonly string[];
  readonly foot: string;
}

function partsIn(setting: Setting, detail: Detail, room: number): Parts | null {
  const { said, lettering } = setting;
  const foot = paragraphHeight([""], lettering);
  const spare = room - frameHeight(lettering) - paragraphHeight(setting.notChecked, lettering) - foot;
  const own = detail.gathered ? said.failsByRule : said.fails;
  if (own.length * heightWith(Math.min(1, detail.lines), lettering) > spare) return null;
  const fails = own.map((each) => setFail(setting, each, detail));
  const left = spare - linesHeight(fails, lettering);
  if (left < 0) return null;
  const wanted = marginsIn(setting, left);
  const beside = marginsIn(setting, left - paragraphHeight(setting.exact, lettering));
  const isNamed = setting.exact.length > 0 && beside >= Math.min(WANTED_MARGINS, wanted);
  const count = isNamed ? beside : wanted;
  return {
    fails,
    margins: said.margins.slice(0, count).map((each) => setMargin(setting, each)),
    exact: isNamed ? setting.exact : [],
    foot: footWords(said.margins.length - count + (isNamed ? 0 : said.exact.length)),
  };
}

/** How many margins fit this height, each with the line under it; -1 for a height that is none. */
function marginsIn({ said, lettering }: Setting, height: number): number {
  if (height < 0) return -1;
  return Math.min(MOST_MARGINS, said.margins.length, Math.floor(height / heightWith(1, lettering)));
}

const footWords = (rest: number): string => (rest > 0 ? `+ ${rest} more in ledger.csv` : "Every row is in ledger.csv");

/** With no line under it, a subject that is too long for its column is counted in the heading alone. */
function setFail(setting: Setting, said: SignerLine, { lines }: Detail): SetLine {
  const { cells, beside } = cellsOf(setting, said, "FAIL");
  const { small } = setting.lettering;
  const about = [...beside, said.effect, `${said.rule}: ${said.clause}`].join("; ");
  return { cells, under: lines === 0 ? [] : wrapAtWords(about, underRoom(setting), small, lines), bold: true };
}

function setMargin(setting: Setting, said: SignerLine): SetLine {
  const { cells, beside } = cellsOf(setting, said, "");
  const { small } = setting.lettering;
  const room = underRoom(setting);
  const about = [...beside, `${said.rule}: ${said.clause}`].join("; ");
  const whole = `${about}; ${said.edition}`;
  const under = textWidth(whole, small) <= room ? whole : shortenAtWord(about, room, small);
  return { cells, under: [under], bold: false };
}

function underRoom({ width, lettering }: Setting): number {
  return width - 3 * PAD - lettering.small;
}

/** Subjects that are too long for their column stand under the line instead, and where a name runs on into it. */
function cellsOf({ columns, width, lettering }: Setting, said: SignerLine, status: string) {
  const { small } = lettering;
  const [nameRoom = 0, room = 0] = columns.map(({ share }) => share * width - 2 * PAD);
  const bold = status !== "";
  const runsOn = textWidth(said.name, small, bold) > nameRoom;
  const subject = runsOn ? undefined : said.subjects.find((words) => textWidth(words, small, bold) <= room);
  const name = shortenAtWord(said.name, runsOn ? nameRoom + room : nameRoom, small, bold);
  const cells = [name, subject ?? "", said.value, said.limit, said.margin, status];
  return { cells, beside: subject === undefined ? said.subjects.slice(-1) : [] };
}

function rowOf({ small }: Lettering): number {
  return small * 1.75;
}

function underOf({ small }: Lettering): number {
  return small * 1.5;
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
    items.push(...more);
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

function lineItems(setting: Setting, { cells, under, bold }: SetLine, x: number, top: number): readonly SceneItem[] {
  const { small } = setting.lettering;
  const below = top - rowOf(setting.lettering);
  const step = underOf(setting.lettering);
  return [
    ...cellItems(setting, cells, x, top, bold),
    ...under.map((words, i) => text("table", words, at(x + PAD + small, below - i * step - small * 1.1), small)),
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
