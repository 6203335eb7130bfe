/** Title block after the fields of ISO 7200. CHECKED BY and APPROVED BY are left blank: only a person fills them in. */

import { listed } from "../diagnostics/listed.js";
import { isShared } from "../job/model/shared.js";
import { greatestOf } from "../units/extremes.js";
import { formatLength } from "../units/index.js";
import { at, circle, group, line, rectangle, stroke, text } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering, Scale, SheetSize } from "./sheet-sizes.js";
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
}

/** Fields side by side. */
export interface Row {
  readonly height: number;
  readonly fields: readonly Field[];
}

/** A field of a title block; `share` of the row's width. */
export function field(label: string, value: string, share: number, size: Field["size"] = "body", lines = 1): Field {
  return { label, value, share, size, lines };
}

const PAD = 1;
/** Between a field's label and its value. */
const LABEL_GAP = 1.1;
const LEADING = 1.45;

function titleRows(request: SheetRequest, sheet: SheetSize, scale: Scale, width: number): readonly Row[] {
  const { job, base, plate, weight, sheetNumber, sheetCount, programVersion } = request;
  const { lettering } = sheet;
  const weightText = weight === null ? "NOT KNOWN" : `${Math.round(weight.value * 10) / 10} ${weight.unit} EACH`;
  const source =
    job.drawing.number === ""
      ? "NOT GIVEN"
      : `${job.drawing.number}${job.drawing.revision === "" ? "" : ` REV ${job.drawing.revision}`}`;
  const { row, signed } = rowMakers(width, lettering);
  return [
    row(field("JOB NO.", job.number, 0.26), field("TITLE", job.title, 0.74, "body", 2)),
    row(field("SETTING TEMPLATE, MARK", plate.mark, 0.8, "title"), field("REV", plate.revision, 0.2, "title")),
    ...(isShared(base)
      ? [
          row(
            field(
              "WHERE USED, AND FOR HOW MANY COLUMNS",
              whereUsed(request, width - 2 * PAD, lettering),
              1,
              "small",
              MOST_USED,
            ),
          ),
        ]
      : []),
    row(
      isShared(base)
        ? field("COLUMNS", `QTY ${columnsOf(request)}, ${base.template.sharedBy.length} MARKS`, 0.27, "body", 8)
        : field("WHERE USED", `${base.mark}, QTY ${base.quantity}`, 0.27, "body", 8),
      field("TEMPLATES", `QTY ${plate.quantity}`, 0.19),
      field("MATERIAL", `${plate.material.toUpperCase()} ${formatLength(plate.thickness, job.unit)}`, 0.27),
      field("WEIGHT", weightText, 0.27),
    ),
    row(
      field("STATUS", job.status.toUpperCase(), 0.36),
      field("SOURCE DRAWING", source, 0.36),
      field("DATE", job.date, 0.28),
    ),
    row(
      field("GENERAL TOLERANCES", job.tolerances === "" ? "NOT SPECIFIED" : job.tolerances, 0.36),
      field("SCALE", scaleWords(scale), 0.36),
      field("UNITS", unitWord(job.unit), 0.28),
    ),
    signed(row(field("DRAWN", job.drawnBy, 0.36), field("CHECKED BY", "", 0.36), field("APPROVED BY", "", 0.28))),
    row(field(filesLabel(request), fileLines(request), 1, "small", 4)),
    row(field("RULES AND EDITIONS", editionWords(request), 1, "small", 4)),
    row(
      field("OWNER", job.owner, 0.27),
      field("THIRD ANGLE", "", 0.19),
      field("PROGRAM", `rodplate ${programVersion}`, 0.27),
      field("SIZE", sheet.name, 0.1),
      field("SHEET", `${sheetNumber} OF ${sheetCount}`, 0.17),
    ),
  ];
}

/** Lines of a small field, and of the bases of a shared template. */
const MOST_SMALL = 6;
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
  return cutFiles.length === 0 && drillListName !== null
    ? "DRILL LIST"
    : "CUT FILES AND FIRST 12 DIGITS OF THEIR SHA-256";
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

function valueLines(
  entry: Field,
  width: number,
  lettering: Lettering,
): { readonly lines: readonly string[]; readonly letter: number } {
  const room = width * entry.share - 2 * PAD;
  const bold = isBold(entry);
  if (entry.size === "small") {
    const lines = entry.value.split("\n").flatMap((part) => wrap(part, room, lettering.small));
    const most = Math.max(MOST_SMALL, entry.lines);
    const last = most - 1;
    return {
      lines:
        lines.length > most
          ? [...lines.slice(0, last), shorten(lines.slice(last).join(" "), room, lettering.small)]
          : lines,
      letter: lettering.small,
    };
  }
  const ladder =
    entry.size === "title" ? [lettering.title, lettering.heading, lettering.body] : [lettering[entry.size]];
  const whole = ladder.find((letter) => textWidth(entry.value, letter, bold) <= room);
  if (whole !== undefined) return { lines: [entry.value], letter: whole };
  return {
    lines: wrapAtMost(entry.value, room, lettering.small, Math.max(2, entry.lines), bold),
    letter: lettering.small,
  };
}

function isBold({ size, label }: Field): boolean {
  return size === "title" || label === "STATUS" || label === "TITLE";
}

function rowNeed(fields: readonly Field[], width: number, lettering: Lettering): number {
  const labels = PAD + lettering.small + LABEL_GAP;
  return greatestOf(
    fields.map((entry) => {
      const { lines, letter } = valueLines(entry, width, lettering);
      return (
        labels +
        Math.max(lettering.body, letter + (lines.length - 1) * letter * LEADING) +
        letter * 0.22 +
        lettering.body * 0.3
      );
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
    signed: ({ fields, height }) => ({ fields, height: height + lettering.body * 0.6 }),
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
  const symbol = entry.label === "THIRD ANGLE" ? projectionSymbol(x + PAD, top - height, lettering) : [];
  return [label, ...values, ...symbol];
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
