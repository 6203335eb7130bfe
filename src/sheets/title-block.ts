/** Title block after the fields of ISO 7200. CHECKED BY and APPROVED BY are left blank: only a person fills them in. */

import { listed } from "../diagnostics/listed.js";
import { isShared } from "../job/model/shared.js";
import { greatestOf } from "../units/extremes.js";
import { formatLength } from "../units/index.js";
import { at, circle, group, line, rectangle, stroke, text } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering, Scale, SheetSize } from "./sheet-sizes.js";
import { DOCUMENT_TYPE, drawingNumber, statusWords } from "./status-words.js";
import type { Piece } from "./table.js";
import { shorten, textWidth, wrap, wrapAtMost } from "./text-metrics.js";
import { unitWord } from "./unit-word.js";

/** A labelled value of a title block. */
export interface Field {
  readonly label: string;
  readonly value: string;
  /** Share of the row's width. */
  readonly share: number;
  readonly size: "small" | "body" | "heading" | "title";
  readonly lines: number;
  /** A word in a box at the right end of the field, in the letters of a title; "" for none. */
  readonly flag: string;
}

/** Fields side by side. */
export interface Row {
  readonly height: number;
  readonly fields: readonly Field[];
}

/** A field of a title block; `share` of the row's width. */
export function field(label: string, value: string, share: number, size: Field["size"] = "body", lines = 1): Field {
  return { label, value, share, size, lines, flag: "" };
}

const PAD = 0.8;
/** Between a field's label and its value. */
const LABEL_GAP = 0.9;
const LEADING = 1.4;

function titleRows(request: SheetRequest, sheet: SheetSize, scale: Scale, width: number): readonly Row[] {
  const { job, base, plate, held, sheetNumber, sheetCount, programVersion } = request;
  const { lettering } = sheet;
  const { row, signed } = rowMakers(width, lettering);
  const flag = held.length > 0 ? "HELD" : "";
  return [
    row(field("TITLE", job.title, 0.62, "body", MOST_WRAPPED), field("OWNER", job.owner, 0.38, "body", MOST_WRAPPED)),
    row(
      { ...field(`${DOCUMENT_TYPE[base.template.use]}, MARK`, plate.mark, 0.56, "title"), flag },
      field("DRAWING NUMBER", drawingNumber(request), 0.3, "heading", MOST_WRAPPED),
      field("REV", plate.revision, 0.14, "title"),
    ),
    ...pieceRows(request, width, lettering).map((fields) => row(...fields)),
    row(
      field("STATUS", statusWords(request), 0.4, "body", MOST_WRAPPED),
      field("SOURCE DRAWING", sourceWords(request), 0.36, "body", MOST_WRAPPED),
      field("DATE", job.date, 0.24),
    ),
    row(
      field("TOLERANCES", job.tolerances === "" ? "NOT SPECIFIED" : job.tolerances, 0.33, "body", MOST_WRAPPED),
      field("SCALE", scaleWords(scale), 0.29),
      field("UNITS", unitWord(job.unit), 0.21),
      field(THIRD_ANGLE, "", 0.17),
    ),
    signed(
      row(
        field("DRAWN", job.drawnBy, 0.22, "body", MOST_WRAPPED),
        field("CHECKED BY", "", 0.23),
        field("DATE", "", 0.16),
        field("APPROVED BY", "", 0.23),
        field("DATE", "", 0.16),
      ),
    ),
    row(
      field(filesLabel(request), fileLines(request), 0.45, "small", MOST_SMALL),
      field("RULES AND EDITIONS", editionWords(request), 0.55, "small", MOST_SMALL),
    ),
    row(
      field("JOB NO.", job.number, 0.28, "body", MOST_WRAPPED),
      field("PROGRAM", `rodplate ${programVersion}`, 0.27),
      field("SIZE", sheet.name, 0.22),
      field("SHEET", `${sheetNumber} OF ${sheetCount}`, 0.23),
    ),
  ];
}

/** Lines of a value that is longer than its field: what the job may say is never cut off. */
const MOST_WRAPPED = 9;
const THIRD_ANGLE = "3RD ANGLE";

/** Where the template is used, how many, of what and how heavy. */
function pieceRows(request: SheetRequest, width: number, lettering: Lettering): readonly (readonly Field[])[] {
  const { job, base, plate, weight } = request;
  const facts = [
    field("TEMPLATES", `QTY ${plate.quantity}`, 0.19),
    field("MATERIAL", `${plate.material.toUpperCase()} ${formatLength(plate.thickness, job.unit)}`, 0.27),
    field("WEIGHT", weight === null ? "NOT KNOWN" : `${Math.round(weight.value * 10) / 10} ${weight.unit} EACH`, 0.27),
  ];
  if (!isShared(base)) return [[field("WHERE USED", `${base.mark}, QTY ${base.quantity}`, 0.27, "body", 8), ...facts]];
  const used = whereUsed(request, width - 2 * PAD, lettering);
  const columns = `QTY ${columnsOf(request)}, ${base.template.sharedBy.length} MARKS`;
  return [
    [field("WHERE USED, AND FOR HOW MANY COLUMNS", used, 1, "small", MOST_USED)],
    [field("COLUMNS", columns, 0.27, "body", 8), ...facts],
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
function fileLines({ cutFiles, drillListName, held }: SheetRequest): string {
  if (cutFiles.length > 0) return cutFiles.map(({ name, sha256 }) => `${name}  ${sha256.slice(0, 12)}`).join("\n");
  if (drillListName !== null) return drillListName;
  return held.length > 0 ? "NOT WRITTEN: HELD" : "NONE";
}

/** The named editions, in one sentence. */
export function editionWords({ job }: Pick<SheetRequest, "job">): string {
  const { templateHoles, baseHoles, placing, edges, concrete } = job.editions;
  return `Template holes ${templateHoles}; base-plate holes ${baseHoles}; placing ${placing}; edges ${edges}; concrete ${concrete}.`;
}

interface ValueLines {
  readonly lines: readonly string[];
  readonly letter: number;
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

function valueLines(entry: Field, width: number, lettering: Lettering): ValueLines {
  const room = width * entry.share - 2 * PAD - flagWidth(entry, lettering);
  const { small } = lettering;
  if (entry.size === "small") return smallLines(entry, room, small);
  const bold = isBold(entry);
  const whole = ladderOf(entry, lettering).find((letter) => textWidth(entry.value, letter, bold) <= room);
  if (whole !== undefined) return { lines: [entry.value], letter: whole };
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
function flagWidth({ flag }: Field, { title }: Lettering): number {
  return flag === "" ? 0 : textWidth(flag, title, true) + title * 0.9;
}

function isBold({ size, label }: Field): boolean {
  return size === "title" || label === "STATUS" || label === "TITLE";
}

function rowNeed(fields: readonly Field[], width: number, lettering: Lettering): number {
  const labels = PAD + lettering.small + LABEL_GAP;
  return greatestOf(
    fields.map((entry) => {
      const { lines, letter } = valueLines(entry, width, lettering);
      const value = letter + (lines.length - 1) * letter * LEADING;
      const flag = entry.flag === "" ? 0 : lettering.title * 1.25 - labels + PAD;
      return labels + Math.max(lettering.body, value, flag) + letter * 0.22 + lettering.body * 0.2;
    }),
  );
}

/** The block as a piece of the panel. */
export function titleBlock(request: SheetRequest, sheet: SheetSize, scale: Scale, width: number): Piece {
  return blockOfRows(titleRows(request, sheet, scale, width), sheet.lettering, width);
}

/** Ways to make rows as high as their fields need; `signed` ones leave room for a signature. */
export function rowMakers(
  width: number,
  lettering: Lettering,
): { readonly row: (...fields: readonly Field[]) => Row; readonly signed: (row: Row) => Row } {
  return {
    row: (...fields) => ({ fields, height: rowNeed(fields, width, lettering) }),
    signed: ({ fields, height }) => ({ fields, height: height + lettering.body * 0.5 }),
  };
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
  return row.fields.flatMap((entry, i) => {
    const from = left;
    left += entry.share * width;
    const divider = i === 0 ? [] : [stroke("table", line(at(from, top), at(from, top - row.height)))];
    return [...divider, ...fieldItems(entry, from, top, row.height, width, lettering)];
  });
}

function fieldItems(
  entry: Field,
  x: number,
  top: number,
  height: number,
  width: number,
  lettering: Lettering,
): readonly SceneItem[] {
  const { lines, letter } = valueLines(entry, width, lettering);
  const room = width * entry.share - 2 * PAD;
  const label = text(
    "label",
    shorten(entry.label, room, lettering.small),
    at(x + PAD, top - PAD - lettering.small),
    lettering.small,
  );
  const first = top - PAD - lettering.small - LABEL_GAP - letter;
  const values = lines
    .filter((words) => words !== "")
    .map((words, i) =>
      text("title", words, at(x + PAD, first - i * letter * LEADING), letter, { bold: isBold(entry) }),
    );
  const symbol = entry.label.endsWith("ANGLE") ? projectionSymbol(x + PAD, top - height, lettering) : [];
  return [label, ...values, ...symbol, ...flagItems(entry, x + width * entry.share, top, height, lettering)];
}

/** The flag of a field in a box of its own, against the field's right end. */
function flagItems(
  { flag }: Field,
  right: number,
  top: number,
  height: number,
  { title, small }: Lettering,
): readonly SceneItem[] {
  if (flag === "") return [];
  const [box, gap] = [textWidth(flag, title, true) + title * 0.5, title * 0.2];
  const [x1, y1, y0] = [right - gap, top - PAD - small - LABEL_GAP * 0.5, top - height + gap];
  const center = at(x1 - box / 2, (y0 + y1) / 2 - title / 2);
  return [
    stroke("held", ...rectangle(x1 - box, y0, x1, y1)),
    text("held", flag, center, title, { anchor: "middle", bold: true }),
  ];
}

/** Third-angle symbol (ISO 5456-2): circles left, cone frustum right with its small end at the left. */
function projectionSymbol(x: number, bottom: number, lettering: Lettering): readonly SceneItem[] {
  const r = lettering.body * 0.62;
  const y = bottom + r + 0.8;
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
