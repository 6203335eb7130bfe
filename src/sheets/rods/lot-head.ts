/** The head of a lot on paper: its mark in a box, what it is, the colour of its end as word and hatching, and how many. */

import type { Job } from "../../job/model/job.js";
import { lotHash } from "../../rods/lot-hash.js";
import type { RodLot } from "../../rods/lots.js";
import { at, circle, fill, group, line, rectangle, stroke, strokeOf, text } from "../items.js";
import type { PathPart, SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import type { Piece } from "../table.js";
import { shorten, textWidth } from "../text-metrics.js";
import { colorWords, gradeWords, heldBases, rodDrawingNumber, titleWords } from "./rod-words.js";

/** What a head is made of. */
export interface HeadOf {
  readonly lot: RodLot;
  readonly held: ReadonlySet<string>;
  readonly job: Pick<Job, "number" | "unit">;
}

const PAD = 1.6;
/** Of a drawing number that is longer, the rest is cut, mm. */
const MOST_NUMBER = 45;

/** As wide as `width`; two lines. */
export function lotHead({ lot, held, job }: HeadOf, width: number, lettering: Lettering): Piece {
  const { title, small } = lettering;
  const height = title + small + 3.2 * PAD;
  const draw = (x: number, top: number) => {
    const [first, second] = [top - PAD - title, top - height + PAD * 0.8];
    const box = textWidth(lot.mark, title, true) + 2.4 * PAD;
    const count = `${lot.total} OFF`;
    const isHeld = heldBases(lot, held).length > 0;
    const flag = isHeld ? heldFlag(x + width - textWidth(count, title, true) - 3 * PAD, top - PAD, lettering) : null;
    const from = x + box + 2 * PAD;
    const until = flag?.x ?? x + width - textWidth(count, title, true) - 3 * PAD;
    const sheet = `SHA ${lotHash(lot)}`;
    const number = shorten(rodDrawingNumber(job, lot), MOST_NUMBER, small, true);
    const grade = gradeWords(lot.detail);
    const color = colorItems(lot, from + textWidth(grade, small, true) + 3 * PAD, second, small);
    return group("lot-head", [
      strokeOf("table-heavy", rectangle(x + PAD * 0.6, top - height + PAD * 0.6, x + box + PAD * 0.6, top - PAD * 0.6)),
      text("title", lot.mark, at(x + PAD * 0.6 + box / 2, top - (height + title) / 2), title, {
        anchor: "middle",
        bold: true,
      }),
      titleText(titleWords(lot.detail, job.unit), from, first, until - from - PAD, lettering),
      text("title", count, at(x + width - PAD, first), title, { anchor: "end", bold: true }),
      ...(flag === null ? [] : flag.items),
      text("note", grade, at(from, second), small, { bold: true }),
      ...color,
      text("note", sheet, at(x + width - PAD, second), small, { anchor: "end" }),
      text("note", number, at(x + width - 2 * PAD - textWidth(sheet, small), second), small, {
        anchor: "end",
        bold: true,
      }),
      stroke("table-heavy", line(at(x, top - height), at(x + width, top - height))),
    ]);
  };
  return { height, draw };
}

/** In letters that it fits in. */
function titleText(words: string, x: number, y: number, room: number, { heading, body, small }: Lettering): SceneItem {
  const letter = [heading, body].find((each) => textWidth(words, each, true) <= room) ?? small;
  return text("heading", shorten(words, room, letter, true), at(x, y), letter, { bold: true });
}

/** Items that end at their right at a place, and where they begin. */
interface Placed {
  readonly x: number;
  readonly items: readonly SceneItem[];
}

function heldFlag(right: number, top: number, { title }: Lettering): Placed {
  const width = textWidth("HELD", title, true) + title * 0.8;
  const x = right - width;
  const [low, high] = [top - title * 1.25, top + title * 0.25];
  return {
    x,
    items: [
      fill("held", at(x, low), at(right, low), at(right, high), at(x, high)),
      text("reversed", "HELD", at(x + width / 2, top - title), title, { anchor: "middle", bold: true }),
    ],
  };
}

const SWATCH = 9;

/** Word and swatch, from their left. */
function colorItems({ detail }: RodLot, x: number, y: number, small: number): readonly SceneItem[] {
  const color = detail.endColor.kind === "given" ? detail.endColor.value : null;
  const words = (at0: number) => text("note", colorWords(detail), at(at0, y), small, { bold: true });
  return color === null ? [words(x)] : [swatch(color, x, y - 0.5, small + 1), words(x + SWATCH + 1.5)];
}

/**
 * A box hatched as its colour is told in one-bit print: blue by level lines, red by upright ones, yellow by dots (the hatchings of
 * heraldry); another colour is left plain.
 */
export function swatch(color: string, x: number, y: number, height: number): SceneItem {
  const [x1, y1] = [x + SWATCH, y + height];
  return group("color-swatch", [
    strokeOf("table", rectangle(x, y, x1, y1)),
    strokeOf("fine", hatching(color, x, y, x1, y1)),
  ]);
}

const HATCH = 0.9;

function hatching(color: string, x0: number, y0: number, x1: number, y1: number): readonly PathPart[] {
  const steps = (from: number, to: number) =>
    Array.from({ length: Math.max(0, Math.ceil((to - from) / HATCH) - 1) }, (_, i) => from + (i + 1) * HATCH);
  if (color === "blue") return steps(y0, y1).map((y) => line(at(x0, y), at(x1, y)));
  if (color === "red") return steps(x0, x1).map((x) => line(at(x, y0), at(x, y1)));
  if (color === "yellow") return steps(y0, y1).flatMap((y) => steps(x0, x1).map((x) => circle(at(x, y), 0.1)));
  return [];
}
