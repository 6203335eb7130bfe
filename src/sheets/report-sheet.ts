/** A sheet of a report, a budget's or a survey's: a picture, and beside it tables and notes over the title block. */

import type { Job } from "../job/model/job.js";
import { frameOf, insideBorder } from "./border.js";
import { at, line, stroke } from "./items.js";
import type { Area } from "./paper.js";
import type { Scene, SceneItem } from "./scene.js";
import type { Lettering, SheetSize } from "./sheet-sizes.js";
import { sheetSizes } from "./sheet-sizes.js";
import type { Piece } from "./table.js";
import { printable } from "./text-metrics.js";
import type { Field } from "./title-block.js";
import { blockOfRows, field, rowMakers } from "./title-block.js";
import { unitWord } from "./unit-word.js";

/** Number of a sheet, from 1, and how many there are. */
export interface SheetPlace {
  readonly number: number;
  readonly count: number;
}

/** What differs from report to report. */
export interface Report extends Pick<Scene, "title" | "description"> {
  readonly job: Job;
  /** Of the program. */
  readonly version: string;
  /** Title block: what the sheet is about, above the revision, and the row under it. */
  readonly about: Field;
  readonly facts: readonly Field[];
  /** Beside them; left out: the day of the job. */
  readonly day?: Field;
  /** Number and count of the sheets of its kind; left out where there is one alone. */
  readonly sheet?: SheetPlace | undefined;
  /** Tables and notes from the top down, drawn `width` wide. */
  readonly pieces: (width: number, lettering: Lettering) => readonly Piece[];
  readonly picture: (area: Area, lettering: Lettering) => readonly SceneItem[];
}

const MARGIN = 2;
const GAP = 2;
/** Between the picture and what is around it. */
const PICTURE_MARGIN = 4;

/** Draws the sheet on the smallest of these sizes on which its tables stand, else on the largest. */
export function drawReport(report: Report, isMeant: (size: SheetSize) => boolean = () => true): Scene {
  const sizes = sheetSizes(report.job.unit);
  const sheet = sizes.find((size) => isMeant(size) && hasRoom(report, size)) ?? sizes.at(-1);
  if (sheet === undefined) throw new RangeError("no sheet sizes");
  const { lettering } = sheet;
  const inside = insideBorder(sheet);
  const left = inside.x1 - sheet.panel;
  const picture: Area = {
    x0: inside.x0 + PICTURE_MARGIN,
    y0: inside.y0 + PICTURE_MARGIN,
    x1: left - PICTURE_MARGIN,
    y1: inside.y1 - PICTURE_MARGIN,
  };
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: report.title,
    description: report.description,
    items: [
      frameOf(sheet),
      stroke("table-heavy", line(at(left, inside.y0), at(left, inside.y1))),
      ...report.picture(picture, lettering),
      ...panel(report, sheet, left, inside),
    ],
  };
}

function hasRoom(report: Report, sheet: SheetSize): boolean {
  const { y0, y1 } = insideBorder(sheet);
  const pieces = piecesOf(report, sheet).reduce((sum, { height }) => sum + height + GAP, 0);
  return pieces + titleOf(report, sheet).height <= y1 - y0 - 2 * MARGIN;
}

function piecesOf({ pieces }: Report, { panel: width, lettering }: SheetSize): readonly Piece[] {
  return pieces(width - 2 * MARGIN, lettering);
}

function panel(report: Report, sheet: SheetSize, x: number, inside: Area): readonly SceneItem[] {
  let y = inside.y1 - MARGIN;
  const pieces = piecesOf(report, sheet).map((piece) => {
    const item = piece.draw(x + MARGIN, y);
    y -= piece.height + GAP;
    return item;
  });
  const title = titleOf(report, sheet);
  return [...pieces, title.draw(x, inside.y0 + title.height)];
}

function titleOf(
  { job, version, about, facts, day, sheet }: Report,
  { panel: width, lettering, name }: SheetSize,
): Piece {
  const { row, signed } = rowMakers(width, lettering);
  const rows = [
    row(field("JOB NO.", printable(job.number), 0.26), field("TITLE", printable(job.title), 0.74, "body", 2)),
    row(about, field("REV", job.revision, 0.2, "title")),
    row(...facts, day ?? field("DATE", job.date, 0.28)),
    row(field("PLACING EDITION", job.editions.placing, 0.72), field("UNITS", unitWord(job.unit), 0.28)),
    signed(
      row(field("DRAWN", printable(job.drawnBy), 0.36), field("CHECKED BY", "", 0.36), field("DECIDED BY", "", 0.28)),
    ),
    row(
      field("OWNER", printable(job.owner), 0.4),
      field("PROGRAM", `rodplate ${version}`, 0.3),
      field("SIZE", name, 0.1),
      field("SHEET", sheet === undefined ? "1 OF 1" : `${sheet.number} OF ${sheet.count}`, 0.2),
    ),
  ];
  return blockOfRows(rows, lettering, width);
}
