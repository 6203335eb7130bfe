/**
 * Labels on the office's paper, in a grid with cut marks: one for each bundle of rods, which are the rods of one lot on one
 * base, and one for each piece of a template. Each has a code that names its sheet and a hash.
 */
import type { Job } from "../../job/model/job.js";
import { leastOf } from "../../units/extremes.js";
import { documentPage } from "../document-pages.js";
import { at, fill, group, line, strokeOf, text } from "../items.js";
import { type QrCode, qrCode } from "../qr.js";
import type { Scene, SceneItem } from "../scene.js";
import type { Lettering, SheetSize } from "../sheet-sizes.js";
import { printable, shorten, textWidth } from "../text-metrics.js";

/** One sort of label, printed `count` times. */
export interface LabelText {
  /** In large letters, the first largest: `B1`, `R1`. */
  readonly large: readonly string[];
  /** In the order of weight; what does not fit is cut. */
  readonly lines: readonly string[];
  /** What the code says. */
  readonly code: string;
  readonly count: number;
  /** What one of them is: `BUNDLE # OF 6`. */
  readonly each: string;
  /** Number of the first, where others of the same stand before. */
  readonly from: number;
  readonly isHeld: boolean;
  /** For programs: what it is for. */
  readonly data: Readonly<Record<string, string | number>>;
}

/** Labels of a job. */
export interface LabelsOf {
  readonly job: Pick<Job, "number" | "title" | "revision" | "status" | "date" | "unit">;
  readonly version: string;
  readonly labels: readonly LabelText[];
}

/** Columns and rows of a page; paper beside the grid, which printers leave white and cut marks stand in. */
const [COLUMNS, ROWS] = [2, 4];
const [MARGIN, FOOT] = [9, 14];
/** A cut mark, from the grid outward, mm. */
const [MARK_FROM, MARK_TO] = [1, 5];
const PAD = 4;
const QR_ROOM = 34;

/** Pages with the labels in their order, row by row, each drawn when it is asked for; none where there is no label. */
export function* drawLabels(labels: LabelsOf): Generator<Scene> {
  const sheet = documentPage(labels.job.unit, "upright");
  const perPage = COLUMNS * ROWS;
  const total = labels.labels.reduce((sum, { count }) => sum + count, 0);
  const count = Math.ceil(total / perPage);
  const each = eachLabel(labels.labels);
  for (let number = 1; number <= count; number += 1) {
    const own: DrawnLabel[] = [];
    while (own.length < perPage) {
      const next = each.next();
      if (next.done === true) break;
      own.push(next.value);
    }
    yield labelPage(labels, sheet, own, `PAGE ${number} OF ${count}`);
  }
}

function* eachLabel(labels: readonly LabelText[]): Generator<DrawnLabel> {
  for (const label of labels) {
    const code = qrCode(label.code, QR_ROOM);
    for (let k = 0; k < label.count; k += 1) yield { label, code, number: label.from + k };
  }
}

interface DrawnLabel {
  readonly label: LabelText;
  readonly code: QrCode;
  readonly number: number;
}

function labelPage({ job, version }: LabelsOf, sheet: SheetSize, own: readonly DrawnLabel[], page: string): Scene {
  const { width, height, lettering } = sheet;
  const [cell, row] = [(width - 2 * MARGIN) / COLUMNS, (height - MARGIN - FOOT) / ROWS];
  const items = own.map((each, i) => {
    const x = MARGIN + (i % COLUMNS) * cell;
    const top = height - MARGIN - Math.floor(i / COLUMNS) * row;
    return drawLabel(each, job, { x, top, width: cell, height: row }, lettering);
  });
  const title = `LABELS, job ${printable(job.number)} rev ${job.revision}`;
  const small = lettering.small;
  const foot = `JOB ${printable(job.number)} REV ${printable(job.revision)} LABELS, ${page}, ${job.date}, rodplate ${version}`;
  return {
    size: sheet.name,
    width,
    height,
    title: `${title}, ${page.toLowerCase()}`,
    description: `${printable(job.title)}. Status: ${job.status}.`,
    listing: { about: "LABELS", scale: "" },
    items: [
      ...cutMarks(sheet, cell, row),
      ...items,
      text("note", shorten(foot, width - 4 * MARGIN, small), at(width / 2, 5), small, { anchor: "middle" }),
    ],
  };
}

/** In the margins at every line of the grid, and a small cross where lines meet. */
function cutMarks({ width, height }: SheetSize, cell: number, row: number): readonly SceneItem[] {
  const xs = Array.from({ length: COLUMNS + 1 }, (_, i) => MARGIN + i * cell);
  const ys = Array.from({ length: ROWS + 1 }, (_, i) => FOOT + i * row);
  const [left, right, low, high] = [MARGIN, width - MARGIN, FOOT, height - MARGIN];
  return [
    group("cut-marks", [
      strokeOf("fine", [
        ...xs.flatMap((x) => [
          line(at(x, high + MARK_FROM), at(x, high + MARK_TO)),
          line(at(x, low - MARK_FROM), at(x, low - MARK_TO)),
        ]),
        ...ys.flatMap((y) => [
          line(at(left - MARK_FROM, y), at(left - MARK_TO, y)),
          line(at(right + MARK_FROM, y), at(right + MARK_TO, y)),
        ]),
        ...xs.slice(1, -1).flatMap((x) => ys.slice(1, -1).flatMap((y) => cross(x, y))),
      ]),
    ]),
  ];
}

const CROSS = 1.5;

function cross(x: number, y: number) {
  return [line(at(x - CROSS, y), at(x + CROSS, y)), line(at(x, y - CROSS), at(x, y + CROSS))];
}

interface Cell {
  readonly x: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The largest letter of marks, mm. */
const LARGEST = 13;
const LEADING = 1.55;
/** Letters that are set smaller to fit are so by whole steps, mm: none fills its room to the last. */
const LETTER_STEP = 0.1;

function drawLabel(
  { label, code, number }: DrawnLabel,
  job: LabelsOf["job"],
  cell: Cell,
  lettering: Lettering,
): SceneItem {
  const { small } = lettering;
  const [x0, x1] = [cell.x + PAD, cell.x + cell.width - PAD];
  const large = largeItems(label.large, x0, x1 - code.side, cell.top - PAD, lettering);
  const which = label.each.replace("#", String(number));
  const first = `JOB ${printable(job.number)}, REV ${printable(job.revision)}, ${which}`;
  const lines = [first, ...label.lines];
  const beside = Math.min(large.y, cell.top - PAD - code.side);
  const words = lines.map((each, i) =>
    text(
      "label",
      shorten(printable(each), x1 - x0, small, i === 0),
      at(x0, beside - small * (1.3 + i * LEADING)),
      small,
      { bold: i === 0 },
    ),
  );
  return group(
    "label",
    [
      ...large.items,
      ...warnings(label, job, x0, cell, lettering, large.y),
      code.draw(x1 - code.side, cell.top - PAD),
      ...words,
    ],
    {
      ...label.data,
      number,
      of: label.count,
    },
  );
}

/** One under the other, as large as there is room; `y`: their foot. */
function largeItems(words: readonly string[], x: number, right: number, top: number, { body }: Lettering) {
  let y = top;
  const items = words.map((each, i) => {
    const most = i === 0 ? LARGEST : LARGEST * 0.6;
    const fitting = (most * (right - x - 2)) / textWidth(each, most, true);
    const letter = leastOf([most, Math.floor(fitting / LETTER_STEP) * LETTER_STEP]);
    const set = Math.max(letter, body);
    y -= set + (i === 0 ? 0 : 3);
    return text("title", shorten(each, right - x - 2, set, true), at(x, y), set, { bold: true });
  });
  return { items, y };
}

/** HELD, and that the job is not released, under the large letters. */
function warnings(
  { isHeld }: LabelText,
  job: LabelsOf["job"],
  x: number,
  cell: Cell,
  { body }: Lettering,
  under: number,
): readonly SceneItem[] {
  const y = Math.max(under - 3 - body * 1.5, cell.top - PAD - QR_ROOM + 1.5);
  const words = [...(isHeld ? ["HELD"] : []), ...(job.status === "released" ? [] : ["NOT RELEASED"])];
  let from = x;
  return words.flatMap((each) => {
    const width = textWidth(each, body, true) + 2.4;
    const left = from;
    from += width + 2;
    return [
      fill(
        "held",
        at(left, y - 0.3 * body),
        at(left + width, y - 0.3 * body),
        at(left + width, y + 1.3 * body),
        at(left, y + 1.3 * body),
      ),
      text("reversed", each, at(left + width / 2, y), body, { anchor: "middle", bold: true }),
    ];
  });
}
