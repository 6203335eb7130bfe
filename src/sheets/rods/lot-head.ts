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
  readonly job: Pick<Job, "number" | "unit" | "status">;
}

const PAD = 1.6;
/** Of a drawing number that is longer, the rest is cut, mm. */
const MOST_NUMBER = 45;

/** A line of the head: from left to right, its baseline, its letters. */
interface HeadLine {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly lettering: Lettering;
}

/** As wide as `width`: two lines, and a strip under them where the lot is held or the job not released. */
export function lotHead(of: HeadOf, width: number, lettering: Lettering): Piece {
  const { title, small, body } = lettering;
  const own = title + small + 3.2 * PAD;
  const flags = flagWords(of);
  const height = own + (flags.length === 0 ? 0 : body * STRIP);
  const draw = (x: number, top: number) => {
    const box = textWidth(of.lot.mark, title, true) + 2.4 * PAD;
    const [left, right] = [x + PAD * 0.6, x + box + PAD * 0.6];
    const first: HeadLine = { from: right + 1.4 * PAD, to: x + width - PAD, y: top - PAD - title, lettering };
    const middle = at((left + right) / 2, top - (own + title) / 2);
    return group("lot-head", [
      strokeOf("table-heavy", rectangle(left, top - own + PAD * 0.6, right, top - PAD * 0.6)),
      text("title", of.lot.mark, middle, title, { anchor: "middle", bold: true }),
      ...whatAndCount(of, first),
      ...gradeAndSheet(of, { ...first, y: top - own + PAD * 0.8 }),
      stroke("table-heavy", line(at(x, top - own), at(x + width, top - own))),
      ...flagItems(flags, x, top - own, width, body),
    ]);
  };
  return { height, draw };
}

/** Height of the strip, in letters. */
const STRIP = 1.8;
const MOST_HELD = 6;

/** `HELD: B3`, `NOT RELEASED: for approval`. */
function flagWords({ lot, held, job }: HeadOf): readonly string[] {
  const own = heldBases(lot, held);
  const more = own.length - MOST_HELD;
  const bases = `${own.slice(0, MOST_HELD).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
  return [
    ...(own.length === 0 ? [] : [`HELD: ${bases}`]),
    ...(job.status === "released" ? [] : [`NOT RELEASED: ${job.status.toUpperCase()}, DO NOT MAKE`]),
  ];
}

/** One strip of paper letters on a filled ground. */
function flagItems(
  flags: readonly string[],
  x: number,
  top: number,
  width: number,
  body: number,
): readonly SceneItem[] {
  if (flags.length === 0) return [];
  const low = top - STRIP * body;
  const words = shorten(flags.join("    "), width - 2 * PAD, body, true);
  return [
    fill("held", at(x, low), at(x + width, low), at(x + width, top), at(x, top)),
    text("reversed", words, at(x + PAD, low + (STRIP - 1) * 0.5 * body), body, { bold: true }),
  ];
}

/** What the rods are, and how many. */
function whatAndCount({ lot, job }: HeadOf, { from, to, y, lettering }: HeadLine): readonly SceneItem[] {
  const { title } = lettering;
  const count = `${lot.total} OFF`;
  const room = to - textWidth(count, title, true) - 3 * PAD - from;
  return [
    titleText(titleWords(lot.detail, job.unit), from, y, room, lettering),
    text("title", count, at(to, y), title, { anchor: "end", bold: true }),
  ];
}

/** Grade and colour; number of the drawing, where the whole grade leaves room for it, and hash. */
function gradeAndSheet({ lot, job }: HeadOf, { from, to, y, lettering: { small } }: HeadLine): readonly SceneItem[] {
  const sheet = `SHA ${lotHash(lot)}`;
  const numberEnd = to - textWidth(sheet, small) - PAD;
  const color = colorWords(lot.detail);
  const colorWidth = (color === "" ? 0 : textWidth(color, small, true) + 2 * PAD) + SWATCH + 1.5;
  const room = numberEnd - 2 * PAD - from - colorWidth;
  const grade = shorten(gradeWords(lot.detail), room, small, true);
  const own = shorten(rodDrawingNumber(job, lot), MOST_NUMBER, small, true);
  const isBeside = textWidth(grade, small, true) + textWidth(own, small, true) <= room;
  return [
    text("note", grade, at(from, y), small, { bold: true }),
    ...colorItems(lot, from + textWidth(grade, small, true) + 2 * PAD, y, small),
    ...(isBeside ? [text("note", own, at(numberEnd, y), small, { anchor: "end", bold: true })] : []),
    text("note", sheet, at(to, y), small, { anchor: "end" }),
  ];
}

/** In letters that it fits in. */
function titleText(words: string, x: number, y: number, room: number, { heading, body, small }: Lettering): SceneItem {
  const letter = [heading, body].find((each) => textWidth(words, each, true) <= room) ?? small;
  return text("heading", shorten(words, room, letter, true), at(x, y), letter, { bold: true });
}

const SWATCH = 9;

/** Word and swatch, from their left. */
function colorItems({ detail }: RodLot, x: number, y: number, small: number): readonly SceneItem[] {
  const color = detail.endColor.kind === "given" ? detail.endColor.value : null;
  const words = (at0: number) => text("note", colorWords(detail), at(at0, y), small, { bold: true });
  if (color === null) return colorWords(detail) === "" ? [] : [words(x)];
  return [swatch(color, x, y - 0.5, small + 1), words(x + SWATCH + 1.5)];
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
