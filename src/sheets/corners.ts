/** The corners of a polygon: numbered on the view, and where each stands in a table. */
import type { Point } from "../geometry/vocabulary.js";
import type { Base } from "../job/model/job.js";
import { formatLength, toMillimetres } from "../units/index.js";
import { at, circle, group, stroke, text } from "./items.js";
import type { Box } from "./occupied.js";
import { type Draft, isFree, put } from "./paper.js";
import { onPaper, type View } from "./plan-shapes.js";
import { originName, type SheetRequest } from "./request.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import type { TableText } from "./table.js";
import { unitWord } from "./unit-word.js";

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
    const number = findNumber(draft, onPaper(view, corner), outward[i] ?? 0, `${i + 1}`, letter);
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
const AWAY = [1, 2.2, 4, 6.5] as const;

function findNumber(draft: Draft, corner: PaperPoint, outward: number, words: string, letter: number) {
  const radius = letter * (words.length > 1 ? 1.15 : 0.95);
  for (const strokes of ["all", "hard"] as const)
    for (const away of AWAY)
      for (const turn of TURNS) {
        const angle = outward + (turn * Math.PI) / 180;
        const reach = radius + away;
        const middle = at(corner.x + reach * Math.cos(angle), corner.y + reach * Math.sin(angle));
        if (isFree(draft, around(middle, radius + 0.5), strokes)) return balloon(middle, radius, words, letter);
      }
  return null;
}

function around({ x, y }: PaperPoint, half: number): Box {
  return [at(x - half, y - half), at(x + half, y - half), at(x + half, y + half), at(x - half, y + half)];
}

function balloon({ x, y }: PaperPoint, radius: number, words: string, letter: number): SceneItem {
  return group("corner", [
    stroke("fine", circle(at(x, y), radius)),
    text("label", words, at(x, y - letter / 2), letter, { anchor: "middle" }),
  ]);
}
