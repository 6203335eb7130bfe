/** The corners of a polygon: numbered on the view, and where each stands in a table. */
import type { Point } from "../geometry/vocabulary.js";
import type { Base } from "../job/model/job.js";
import { formatLength, toMillimetres } from "../units/index.js";
import { at, circle, group, line, stroke, text } from "./items.js";
import { type Box, countCrossings, crossesText } from "./occupied.js";
import { type Draft, isFree, put } from "./paper.js";
import { onPaper, type View } from "./plan-shapes.js";
import { originName, type SheetRequest } from "./request.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import type { TableText } from "./table.js";
import { unitWord } from "./unit-word.js";
import { POINT_RADIUS } from "./working-point.js";

const MOST_CORNERS = 24;
const NONE: ReadonlySet<number> = new Set();

/** Where each numbered corner stands from the working point, before its treatment; null for other outlines. */
export function cornerTable({ base, job, piece }: Pick<SheetRequest, "base" | "job" | "piece">): TableText | null {
  const { outline } = base.template;
  if (outline.kind !== "polygon") return null;
  const shown = outline.at.slice(0, MOST_CORNERS);
  const more = outline.at.length - shown.length;
  return {
    name: "corner-table",
    heading: `CORNERS OF THE OUTLINE (${unitWord(job.unit)} FROM ${originName(piece)})`,
    columns: [
      { title: "CORNER", share: 0.3, align: "start" },
      { title: "X", share: 0.35, align: "end" },
      { title: "Y", share: 0.35, align: "end" },
    ],
    rows: shown.map(({ x, y }, i) => [`${i + 1}`, formatLength(x, job.unit), formatLength(y, job.unit)]),
    foot: more > 0 ? [`${more} MORE IN THE CUT FILE`] : [],
    under: [],
    strong: NONE,
  };
}

/** Sets a number in a circle at each corner of a polygon; false when one finds no room. */
export function putCornerNumbers(draft: Draft, view: View, { template }: Base, letter: number): boolean {
  const { outline } = template;
  if (outline.kind !== "polygon") return true;
  const corners = outline.at.slice(0, MOST_CORNERS).map(({ x, y }) => at(toMillimetres(x), toMillimetres(y)));
  const outward = outwardOf(corners);
  let all = true;
  corners.forEach((corner, i) => {
    const gap = corner.x === 0 && corner.y === 0 ? POINT_RADIUS + TIE_GAP : TIE_GAP;
    const number = findNumber(draft, onPaper(view, corner), outward[i] ?? 0, `${i + 1}`, letter, gap);
    if (number === null) all = false;
    else put(draft, number);
  });
  return all;
}

/** Angle of the way out of the plate at each corner, radians: between the outward normals of its two sides. */
function outwardOf(corners: readonly Point[]): readonly number[] {
  const next = (i: number) => corners[(i + 1) % corners.length] ?? at(0, 0);
  const doubled = corners.reduce((sum, a, i) => sum + a.x * next(i).y - next(i).x * a.y, 0);
  const normals = corners.map((a, i) => {
    const [dx, dy] = [next(i).x - a.x, next(i).y - a.y];
    const length = Math.hypot(dx, dy) * Math.sign(doubled);
    return at(dy / length, -dx / length);
  });
  return normals.map((after, i) => {
    const before = normals.at(i - 1) ?? after;
    return Math.atan2(before.y + after.y, before.x + after.x);
  });
}

const TURNS = [0, 30, -30, 60, -60, 90, -90, 135, -135, 180] as const;
const AWAY = [1, 2.2, 4, 6.5, 9.5, 13] as const;
/** Clear of all lines; over soft ones; and at last with its own line over soft ones. */
const WAYS = [
  { strokes: "all", ties: "clear" },
  { strokes: "hard", ties: "clear" },
  { strokes: "hard", ties: "over soft" },
] as const;
type Ties = (typeof WAYS)[number]["ties"];

/** A number that stands farther off is tied to its corner by a line. */
const BESIDE = 2.2;

function findNumber(draft: Draft, corner: PaperPoint, outward: number, words: string, letter: number, gap: number) {
  const radius = letter * (words.length > 1 ? 1.15 : 0.95);
  for (const { strokes, ties } of WAYS)
    for (const away of AWAY)
      for (const turn of TURNS) {
        const angle = outward + (turn * Math.PI) / 180;
        const along = (reach: number) => at(corner.x + reach * Math.cos(angle), corner.y + reach * Math.sin(angle));
        const middle = along(radius + away);
        if (!isFree(draft, around(middle, radius + 0.5), strokes)) continue;
        const tie = away <= BESIDE ? [] : tieTo(draft, along(gap), along(away), ties);
        if (tie !== null) return balloon(middle, radius, words, letter, tie);
      }
  return null;
}

/** Between a corner, or the target at it, and the line to its number. */
const TIE_GAP = 0.6;

/** From near the corner to the number; null where it would run through what it may not. */
function tieTo(draft: Draft, from: PaperPoint, to: PaperPoint, ties: Ties): readonly SceneItem[] | null {
  const { hard, soft } = countCrossings(draft.taken, from, to);
  const isCrossed = hard > 0 || (ties === "clear" && soft > 0) || crossesText(draft.taken, from, to);
  return isCrossed ? null : [stroke("leader", line(from, to))];
}

function around({ x, y }: PaperPoint, half: number): Box {
  return [at(x - half, y - half), at(x + half, y - half), at(x + half, y + half), at(x - half, y + half)];
}

function balloon(
  { x, y }: PaperPoint,
  radius: number,
  words: string,
  letter: number,
  tie: readonly SceneItem[],
): SceneItem {
  return group("corner", [
    ...tie,
    stroke("fine", circle(at(x, y), radius)),
    text("label", words, at(x, y - letter / 2), letter, { anchor: "middle" }),
  ]);
}
