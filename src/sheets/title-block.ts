/** Title block after the fields of ISO 7200. CHECKED BY and APPROVED BY are left blank: only a person fills them in. */
import { listed } from "../diagnostics/listed.js";
import { isShared } from "../job/model/shared.js";
import { greatestOf } from "../units/extremes.js";
import { formatStock, type Unit } from "../units/index.js";
import { once, onceFor } from "../units/once.js";
import { at, circle, fill, group, line, rectangle, stroke, text } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering, Scale, SheetSize } from "./sheet-sizes.js";
import { documentType, drawingNumber, statusWords } from "./status-words.js";
import type { Piece } from "./table.js";
import { measureText, printable, shorten, textWidth, wrap, wrapAtMost } from "./text-metrics.js";
import { unitWord } from "./unit-word.js";

/** A labelled value of a title block. */
export interface Field {
  readonly label: string;
  readonly value: string;
  /** Share of the row's width. */
  readonly share: number;
  readonly size: "small" | "body" | "heading" | "title";
  readonly lines: number;
  /** A word in a filled box at the right end of the field, in the letters of a title; "" for none. */
  readonly flag: string;
}

/** Fields side by side, their first lines on one baseline. */
export interface Row {
  readonly height: number;
  /** From the top of the row down to the baseline of the first line of every value. */
  readonly base: number;
  readonly fields: readonly SetField[];
}

/** A field in lines, as wide as its share: the caption over the value. */
interface SetField {
  readonly entry: Field;
  readonly caption: readonly string[];
  readonly lines: readonly string[];
  readonly letter: number;
  /** Between baselines of the value. */
  readonly leading: number;
  /** From the top of the row to the first baseline that is clear of the caption, and from that to the foot of the field. */
  readonly above: number;
  readonly below: number;
}

/** A field of a title block; `share` of the row's width. */
export function field(label: string, value: string, share: number, size: Field["size"] = "body", lines = 1): Field {
  return { label, value, share, size, lines, flag: "" };
}

/** Between rules and letters. */
function padOf({ small }: Lettering): number {
  return small * 0.34;
}

/** Between the foot of a caption and the head of what its value has of ink. */
function captionGap({ small }: Lettering): number {
  return small * 0.5;
}

/** Lines of a caption, and of a value whose letters stand no higher than capitals. */
const [CAPTION_LEADING, LEADING] = [1.4, 1.45];
/** Between the ink of two lines, in letters. */
const LINE_GAP = 0.15;

function titleRows(request: SheetRequest, sheet: SheetSize, scale: Scale): readonly Row[] {
  const { above, below } = fixedRows(request)(sheet);
  const { row } = rowMakers(sheet.panel, sheet.lettering);
  const { tolerances, unit } = request.job;
  return [
    ...above,
    row(
      field("TOLERANCES", tolerances === "" ? "NOT SPECIFIED" : tolerances, 0.3, "body", MOST_WRAPPED),
      field("SCALE", scaleWords(scale), 0.325),
      field("UNITS", unitWord(unit), 0.235),
      field(THIRD_ANGLE, "", 0.14),
    ),
    ...below,
  ];
}

/** The rows over and under the one that names the scale. */
const fixedRows = onceFor((request: SheetRequest) =>
  once((sheet: SheetSize) => ({ above: rowsAbove(request, sheet), below: rowsBelow(request, sheet) })),
);

function rowsAbove(request: SheetRequest, { panel, lettering }: SheetSize): readonly Row[] {
  const { job, plate, held } = request;
  const { row } = rowMakers(panel, lettering);
  const flag = held.length > 0 ? "HELD" : "";
  return [
    row(field("TITLE", job.title, 0.625, "body", MOST_WRAPPED), field("OWNER", job.owner, 0.375, "body", MOST_WRAPPED)),
    row(
      { ...field(`${documentType(request)}, MARK`, plate.mark, 0.5, "title"), flag },
      field("DRAWING NUMBER", drawingNumber(request), 0.36, "heading", MOST_WRAPPED),
      field("REV", plate.revision, 0.14, "heading"),
    ),
    ...pieceRows(request, panel, lettering).map((fields) => row(...fields)),
    row(
      field("STATUS", statusWords(request), 0.44, "body", MOST_WRAPPED),
      field("SOURCE DRAWING", sourceWords(request), 0.36, "body", MOST_WRAPPED),
      field("DATE", job.date, 0.2),
    ),
  ];
}

function rowsBelow(request: SheetRequest, { name, panel, lettering }: SheetSize): readonly Row[] {
  const { job, sheetNumber, sheetCount, programVersion } = request;
  const { row, signed } = rowMakers(panel, lettering);
  return [
    signed(
      row(
        field("DRAWN", job.drawnBy, 0.205, "body", MOST_WRAPPED),
        field("CHECKED BY", "", 0.25),
        field("DATE", "", 0.1325),
        field("APPROVED BY", "", 0.28),
        field("DATE", "", 0.1325),
      ),
    ),
    row(
      field(filesLabel(request), fileLines(request), 0.58, "small", MOST_SMALL),
      field("RULES AND EDITIONS", editionWords(request), 0.42, "small", MOST_SMALL),
    ),
    row(
      field("JOB NO.", job.number, 0.25, "body", MOST_WRAPPED),
      field("PROGRAM", `rodplate ${programVersion}`, 0.25),
      field("SIZE", name, 0.25),
      field("SHEET", `${sheetNumber} OF ${sheetCount}`, 0.25),
    ),
  ];
}

/** The title block of a template's sheet has at least so many rows. */
const LEAST_ROWS = 8;

/** No title block of a template's sheet is lower, whatever it says: each row with its caption over one line, and room to sign. */
export function leastTitleHeight(lettering: Lettering): number {
  const { small, body } = lettering;
  const row = 2 * padOf(lettering) + small + captionGap(lettering) + body;
  return (LEAST_ROWS - 1) * row + Math.max(row, padOf(lettering) + small + SIGNATURE);
}

/** Lines of a value that is longer than its field: what the job may say is never cut off. */
const MOST_WRAPPED = 9;
/** Caption over the symbol of third-angle projection, which says the rest. */
const THIRD_ANGLE = "VIEWS";

/** `STEEL 3/8, A36`. */
function materialWords({ material, thickness, grade }: SheetRequest["plate"], unit: Unit): string {
  const size = `${material.toUpperCase()} ${formatStock(thickness, unit)}`;
  return grade === null ? size : `${size}, ${printable(grade)}`;
}

/** Where the template is used, how many, of what and how heavy. */
function pieceRows(request: SheetRequest, width: number, lettering: Lettering): readonly (readonly Field[])[] {
  const { job, base, plate, weight } = request;
  const facts = [
    field(request.piece === null ? "TEMPLATES" : "PIECES", `QTY ${plate.quantity}`, 0.25),
    field("MATERIAL", materialWords(plate, job.unit), 0.25),
    field("WEIGHT", weight === null ? "NOT KNOWN" : `${Math.round(weight.value * 10) / 10} ${weight.unit} EACH`, 0.25),
  ];
  if (!isShared(base)) return [[field("WHERE USED", `${base.mark}, QTY ${base.quantity}`, 0.25, "body", 8), ...facts]];
  const used = whereUsed(request, width - 2 * padOf(lettering), lettering);
  const columns = `QTY ${columnsOf(request)}, ${base.template.sharedBy.length} MARKS`;
  return [
    [field("WHERE USED, AND FOR HOW MANY COLUMNS", used, 1, "small", MOST_USED)],
    [field("COLUMNS", columns, 0.25, "body", 8), ...facts],
  ];
}

function sourceWords({ job: { drawing } }: SheetRequest): string {
  if (drawing.number === "") return "NOT GIVEN";
  return `${drawing.number}${drawing.revision === "" ? "" : ` REV ${drawing.revision}`}`;
}

/** Lines of a small field, and of the bases of a shared template. */
const LEAST_SMALL = 6;
const MOST_SMALL = 12;
const MOST_USED = 8;
/** More marks are not written out. */
const MOST_MARKS = 120;

/** `B3: 2, B9: 4`: the bases that the template serves, in the order of the job, as many as there is room for. */
function whereUsed({ job, base }: SheetRequest, room: number, lettering: Lettering): string {
  const quantities = new Map(job.bases.map(({ mark, quantity }) => [mark, quantity]));
  const words = base.template.sharedBy.map((mark) => `${mark}: ${quantities.get(mark) ?? 0}`);
  for (let most = Math.min(words.length, MOST_MARKS); most > 0; most -= 1) {
    const text = `${listed(words, most)}${most < words.length ? " in summary.json" : ""}`;
    if (wrap(text, room, lettering.small).length <= MOST_USED) return text;
  }
  return `${words.length} bases, listed in summary.json`;
}

function columnsOf({ job, base }: SheetRequest): number {
  const own = new Set(base.template.sharedBy);
  return job.bases.reduce((sum, { mark, quantity }) => (own.has(mark) ? sum + quantity : sum), 0);
}

/** `1-1/2" = 1'-0" (1:8)`. */
export function scaleWords(scale: Scale): string {
  const ratio = `1:${Math.round(1 / scale.factor)}`;
  return scale.name === ratio ? ratio : `${scale.name} (${ratio})`;
}

function filesLabel({ cutFiles, drillListName }: SheetRequest): string {
  return cutFiles.length === 0 && drillListName !== null ? "DRILL LIST" : "CUT FILES, START OF SHA-256";
}

/** One file a line; lines are joined by newlines. */
function fileLines({ cutFiles, drillListName, held, plate }: SheetRequest): string {
  if (cutFiles.length > 0) return cutFiles.map(({ name, sha256 }) => `${name}  ${sha256.slice(0, 12)}`).join("\n");
  if (drillListName !== null) return drillListName;
  if (held.length > 0) return "NOT WRITTEN: HELD";
  return plate.parted === null ? "NONE" : "ON THE SHEETS OF ITS SEGMENTS";
}

/** The named editions, in one sentence. */
export function editionWords({ job }: Pick<SheetRequest, "job">): string {
  const { templateHoles, baseHoles, placing, edges, concrete } = job.editions;
  return `Template holes ${templateHoles}; base-plate holes ${baseHoles}; placing ${placing}; edges ${edges}; concrete ${concrete}.`;
}

/** Letters of a value, the largest in which it fits its field first. */
function ladderOf({ size }: Field, { title, heading, body, small }: Lettering): readonly number[] {
  switch (size) {
    case "title":
      return [title, heading, body];
    case "heading":
      return [heading, body];
    case "body":
      return [body];
    case "small":
      return [small];
  }
}

type ValueLines = Pick<SetField, "lines" | "letter">;

function valueLines(entry: Field, room: number, lettering: Lettering): ValueLines {
  const { small } = lettering;
  if (entry.size === "small") return smallLines(entry, room, small);
  const bold = isBold(entry);
  const whole = ladderOf(entry, lettering).find((letter) => textWidth(entry.value, letter, bold) <= room);
  if (whole !== undefined) return { lines: entry.value === "" ? [] : [entry.value], letter: whole };
  return { lines: wrapAtMost(entry.value, room, small, Math.max(2, entry.lines), bold), letter: small };
}

function smallLines({ value, lines: wanted }: Field, room: number, small: number): ValueLines {
  const most = Math.max(LEAST_SMALL, wanted);
  const lines = value.split("\n").flatMap((part) => wrap(part, room, small));
  const last = most - 1;
  const rest = () => [...lines.slice(0, last), shorten(lines.slice(last).join(" "), room, small)];
  return { lines: lines.length > most ? rest() : lines, letter: small };
}

/** Of the box around a flag, with the gap before it. */
function flagWidth({ flag }: Field, lettering: Lettering): number {
  return flag === "" ? 0 : flagBox(flag, lettering) + padOf(lettering);
}

function flagBox(flag: string, { title }: Lettering): number {
  return textWidth(flag, title, true) + title * 0.5;
}

/** The mark, the revision, the title and the status: what is looked for first. */
function isBold({ size, label }: Field): boolean {
  return size === "title" || BOLD.has(label);
}

const BOLD: ReadonlySet<string> = new Set(["STATUS", "TITLE", "REV"]);

/** Sets a field: a caption that is too long for it goes on in a second line, and the value keeps clear of it in any script. */
function setField(entry: Field, width: number, lettering: Lettering): SetField {
  const { small, body } = lettering;
  const pad = padOf(lettering);
  const room = width * entry.share - 2 * pad - flagWidth(entry, lettering);
  const caption = wrap(entry.label, room, small);
  const { lines, letter } = valueLines(entry, room, lettering);
  const sizes = lines.map((words) => measureText(words, letter, isBold(entry)));
  const drop = greatestOf(
    sizes.map((size) => size.drop),
    0,
  );
  const rise = greatestOf(
    sizes.map((size) => size.rise),
    letter,
  );
  const leading = Math.max(letter * LEADING, rise + drop + letter * LINE_GAP);
  const head = pad + small + (caption.length - 1) * small * CAPTION_LEADING;
  const above = head + captionGap(lettering) + Math.max(body, rise);
  return { entry, caption, lines, letter, leading, above, below: Math.max(0, lines.length - 1) * leading + drop + pad };
}

/** The block as a piece of the panel, as wide as it. */
export function titleBlock(request: SheetRequest, sheet: SheetSize, scale: Scale): Piece {
  return blockOfRows(titleRows(request, sheet, scale), sheet.lettering, sheet.panel);
}

/** Ways to make rows as high as their fields need; `signed` ones leave room for a signature. */
export function rowMakers(
  width: number,
  lettering: Lettering,
): { readonly row: (...fields: readonly Field[]) => Row; readonly signed: (row: Row) => Row } {
  return {
    row: (...entries) => rowOf(entries.map((entry) => setField(entry, width, lettering))),
    signed: (row) => ({ ...row, height: Math.max(row.height, captionsOf(row, lettering) + SIGNATURE) }),
  };
}

/** Height left free under a caption for a name to be written by hand, mm (common practice). */
const SIGNATURE = 8;

function rowOf(fields: readonly SetField[]): Row {
  const base = greatestOf(fields.map(({ above }) => above));
  return { fields, base, height: base + greatestOf(fields.map(({ below }) => below)) };
}

/** From the top of the row to the foot of its lowest caption. */
function captionsOf({ fields }: Row, lettering: Lettering): number {
  const lines = greatestOf(fields.map(({ caption }) => caption.length));
  return padOf(lettering) + lettering.small * (1 + (lines - 1) * CAPTION_LEADING);
}

/** Rows of fields under each other in a heavy frame. */
export function blockOfRows(rows: readonly Row[], lettering: Lettering, width: number): Piece {
  const height = rows.reduce((sum, row) => sum + row.height, 0);
  const draw = (x: number, top: number) => {
    const items: SceneItem[] = [];
    let y = top;
    for (const row of rows) {
      for (const item of rowItems(row, x, y, width, lettering)) items.push(item);
      y -= row.height;
      if (y > top - height + 1e-6) items.push(stroke("table", line(at(x, y), at(x + width, y))));
    }
    return group("title-block", [stroke("table-heavy", ...rectangle(x, top - height, x + width, top)), ...items]);
  };
  return { height, draw };
}

function rowItems(row: Row, x: number, top: number, width: number, lettering: Lettering): readonly SceneItem[] {
  let left = x;
  return row.fields.flatMap((set, i) => {
    const from = left;
    left += set.entry.share * width;
    const divider = i === 0 ? [] : [stroke("table", line(at(from, top), at(from, top - row.height)))];
    return [...divider, ...fieldItems(set, row, from, left, top, lettering)];
  });
}

function fieldItems(
  { entry, caption, lines, letter, leading }: SetField,
  { height, base }: Row,
  left: number,
  right: number,
  top: number,
  lettering: Lettering,
): readonly SceneItem[] {
  const { small } = lettering;
  const x = left + padOf(lettering);
  const first = top - padOf(lettering) - small;
  const labels = caption.map((words, i) => text("label", words, at(x, first - i * small * CAPTION_LEADING), small));
  const bold = isBold(entry);
  const values = lines.map((words, i) => text("title", words, at(x, top - base - i * leading), letter, { bold }));
  const symbol = entry.label === THIRD_ANGLE ? projectionSymbol(x, top - base, lettering) : [];
  return [...labels, ...values, ...symbol, ...flagItems(entry, right, top, height, lettering)];
}

/** The flag of a field in letters of the paper on a filled box, against the field's right end. */
function flagItems(
  { flag }: Field,
  right: number,
  top: number,
  height: number,
  lettering: Lettering,
): readonly SceneItem[] {
  if (flag === "") return [];
  const { title } = lettering;
  const [box, pad] = [flagBox(flag, lettering), padOf(lettering)];
  const [x0, x1, y0, y1] = [right - pad - box, right - pad, top - height + pad, top - pad];
  return [
    fill("held", at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)),
    text("reversed", flag, at((x0 + x1) / 2, (y0 + y1 - title) / 2), title, { anchor: "middle", bold: true }),
  ];
}

/** Third-angle symbol (ISO 5456-2) on a baseline: circles left, cone frustum right with its small end at the left. */
function projectionSymbol(x: number, bottom: number, lettering: Lettering): readonly SceneItem[] {
  const r = lettering.body * 0.6;
  const y = bottom + lettering.body / 2;
  const cx = x + r + 0.6;
  const left = cx + r * 2.2;
  const right = left + r * 2.2;
  const [small, large] = [r * 0.5, r];
  return [
    stroke("fine", circle(at(cx, y), small), circle(at(cx, y), large)),
    stroke(
      "fine",
      line(at(left, y - small), at(left, y + small)),
      line(at(left, y + small), at(right, y + large)),
      line(at(right, y + large), at(right, y - large)),
      line(at(right, y - large), at(left, y - small)),
    ),
  ];
}
