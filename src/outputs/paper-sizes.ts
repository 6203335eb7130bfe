/** How a sheet stands on the paper of an office. */
import type { Placement } from "../formats/sheet-pdf.js";
import type { OfficePaper } from "../sheets/full-size/index.js";
import { at, text } from "../sheets/items.js";
import type { Scene, SceneItem } from "../sheets/scene.js";
import { asmeSheets, isoSheets } from "../standards/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { toMillimetres } from "../units/index.js";
import type { PaperName } from "./paper-names.js";

const SIZES = { letter: asmeSheets.A, tabloid: asmeSheets.B, a4: isoSheets.A4, a3: isoSheets.A3 } as const;

/** A paper that prints at full size are made for. */
export function officePaper(name: PaperName): OfficePaper {
  const { short, long } = SIZES[name];
  return {
    name: name.startsWith("a") ? name.toUpperCase() : name,
    short: toMillimetres(short),
    long: toMillimetres(long),
  };
}

/**
 * Printers leave this much of the paper's edge white, millimetres (common practice: 1/6 in, 4.2 mm, on laser printers). A sheet
 * of twice the paper's sides thus stands at half its size exactly: a D sheet on 11 x 17, an A1 sheet on A3.
 */
const UNPRINTED = 5;
/** Left of a reduced sheet, for the line that says so. */
const SIDE = 4.5;
const SIDE_LETTER = 3;

/** How a scene stands on a paper, and its size there in whole percent: 100 where its border fits, 50 where half is nearly all. */
export function placeOn(name: PaperName, scene: Scene): { readonly placement: Placement; readonly percent: number } {
  const paper = pageFor(name, scene);
  const frame = frameOf(scene);
  const [width, height] = [frame.x1 - frame.x0, frame.y1 - frame.y0];
  if (paper.width === scene.width && paper.height === scene.height)
    return { placement: { ...paper, x: 0, y: 0, factor: 1, over: [] }, percent: 100 };
  const fits = width + 2 * UNPRINTED <= paper.width && height + 2 * UNPRINTED <= paper.height;
  const room = { x: paper.width - 2 * UNPRINTED - SIDE, y: paper.height - 2 * UNPRINTED };
  const percent = fits ? 100 : percentFor(Math.min(room.x / width, room.y / height));
  const factor = percent / 100;
  const side = fits ? 0 : SIDE;
  const [left, bottom] = [(paper.width + side - width * factor) / 2, (paper.height - height * factor) / 2];
  const [x, y] = [left - frame.x0 * factor, bottom - frame.y0 * factor];
  return { placement: { ...paper, x, y, factor, over: fits ? [] : [reducedLine(percent, left, bottom)] }, percent };
}

/** A scale ruler reads a print of half size: up to this, no more than half is taken. */
const NEARLY_HALF = 54;

function percentFor(factor: number): number {
  const most = Math.min(99, Math.floor(factor * 100 + 1e-6));
  return most >= 50 && most <= NEARLY_HALF ? 50 : most;
}

/** The paper, the way round that the sheet lies. */
function pageFor(name: PaperName, scene: Scene): { readonly width: number; readonly height: number } {
  const [short, long] = [toMillimetres(SIZES[name].short), toMillimetres(SIZES[name].long)];
  return scene.width >= scene.height ? { width: long, height: short } : { width: short, height: long };
}

/** Upwards beside the border's lower left corner, clear of its centring mark. */
function reducedLine(percent: number, left: number, bottom: number): SceneItem {
  const words =
    percent === 50 ? "HALF SIZE: SCALES ARE HALF OF THOSE STATED" : `REDUCED TO ${percent} %: NOT AT THE SCALES STATED`;
  return text("held", words, at(left - SIDE / 2 + SIDE_LETTER / 2, bottom), SIDE_LETTER, { turn: 90, bold: true });
}

interface Frame {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The border, or the whole sheet where it has none: what must be on the paper. */
function frameOf({ items, width, height }: Scene): Frame {
  const frame = items.find((item) => item.kind === "group" && item.name === "frame");
  const edge = frame?.kind === "group" ? frame.items.find((item) => item.kind === "stroke") : undefined;
  const corners =
    edge?.kind === "stroke" ? edge.parts.flatMap((part) => (part.kind === "line" ? [part.from] : [])) : [];
  if (corners.length === 0) return { x0: 0, y0: 0, x1: width, y1: height };
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { x0: leastOf(xs), y0: leastOf(ys), x1: greatestOf(xs), y1: greatestOf(ys) };
}
