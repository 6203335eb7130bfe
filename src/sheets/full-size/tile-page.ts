/** One sheet of paper of a board at full size: what of it lies there, and what the sheet is joined and checked by. */
import { extentOf, line as lineOf, segmentsOf } from "../../geometry/index.js";
import type { Contour, Segment } from "../../geometry/vocabulary.js";
import type { Hole } from "../../template/model.js";
import { sizeText } from "../callouts.js";
import { at, circle, group, line, strokeOf, text } from "../items.js";
import type { Box } from "../occupied.js";
import { type Area, type Draft, hasRoom, isInside, put, putAll, startDraft, withGaps } from "../paper.js";
import { CROSS_REACH, holeSpan, onPaper, type View } from "../plan-shapes.js";
import type { PaperPoint, PathPart, Scene, SceneItem, StrokeRole } from "../scene.js";
import { type Lettering, sheetSizes } from "../sheet-sizes.js";
import { printable } from "../text-metrics.js";
import { clipSegments } from "./clip.js";
import { footItems, rulerItems } from "./foot.js";
import { type FullSizeRequest, statusOf } from "./request.js";
import { OVERLAP, registersOf, seamsOf, type Tile, type Tiling, tileName, windowOf } from "./tiling.js";

/** The sheet of a tile; `scale` 1: a millimetre of the board is one of the paper. */
export function tilePage(request: FullSizeRequest, tiling: Tiling, tile: Tile): Scene {
  const { job, board } = request;
  const { paper, window } = tiling;
  const shown = windowOf(tiling, tile);
  const view: View = { origin: at(window.x0 - shown.x0, window.y0 - shown.y0), scale: 1 };
  const lettering = letteringOf(request);
  const name = tileName(tiling, tile);
  const draft = startDraft(window);
  const draw: Drawing = { request, tiling, tile, view, shown, lettering, draft };
  putAll(draft, boardItems(draw));
  putAll(draft, joiningItems(draw));
  nameItem(draw, name);
  for (const hole of board.holes) labelHole(draw, hole);
  const of = name === "" ? "" : `, tile ${name}`;
  return {
    ...{ size: paper.name, width: paper.width, height: paper.height },
    title: `Template ${board.mark} rev ${printable(board.revision)} at full size${of}`,
    description: `Job ${printable(job.number)}: ${printable(job.title)}. To be printed at 100 %.`,
    listing: { about: `TEMPLATE ${board.mark} AT FULL SIZE${name === "" ? "" : `, TILE ${name}`}`, scale: "FULL SIZE" },
    items: [
      group("plan", draft.items, { scale: 1, x: view.origin.x, y: view.origin.y }),
      ...footItems(request, tiling, tile, lettering),
      ...rulerItems(tiling, job.unit, lettering),
    ],
  };
}

/** Those of the smallest sheets. */
export function letteringOf({ job }: Pick<FullSizeRequest, "job">): Lettering {
  const [sheet] = sheetSizes(job.unit);
  if (sheet === undefined) throw new RangeError("no sheet sizes");
  return sheet.lettering;
}

/** What a tile is drawn with. */
interface Drawing {
  readonly request: FullSizeRequest;
  readonly tiling: Tiling;
  readonly tile: Tile;
  readonly view: View;
  /** In plate axes. */
  readonly shown: Area;
  readonly lettering: Lettering;
  readonly draft: Draft;
}

/** Outline, axes, marks to be painted, holes and their centres, cut off at the window. */
function boardItems(draw: Drawing): readonly SceneItem[] {
  const { board } = draw.request;
  const { x0, y0, x1, y1 } = extentOf(board.region.outer);
  const axes = [lineOf({ x: x0, y: 0 }, { x: x1, y: 0 }), lineOf({ x: 0, y: y0 }, { x: 0, y: y1 })];
  const painted = board.marks.flatMap(({ strokes }) =>
    strokes.flatMap((points) => points.slice(1).map((to, i) => lineOf(points[i] ?? to, to))),
  );
  return [
    ...clipped(draw, "outline", segmentsOf(board.region.outer)),
    ...withGaps(clipped(draw, "centre", axes), lettersOf(draw)),
    ...clipped(draw, "scribe", painted),
    ...board.holes.flatMap((hole) => holeItems(draw, hole)),
  ];
}

/** Boxes of painted letters on paper: no axis is drawn through them. */
function lettersOf({ request, view }: Drawing): readonly Box[] {
  return request.board.marks
    .filter(({ text: words }) => words !== "")
    .map(({ extent }) => {
      const low = onPaper(view, { x: extent.x0 - CLEAR, y: extent.y0 - CLEAR });
      const high = onPaper(view, { x: extent.x1 + CLEAR, y: extent.y1 + CLEAR });
      return [low, at(high.x, low.y), high, at(low.x, high.y)];
    });
}

const CLEAR = 2;

function clipped({ shown, view }: Drawing, role: StrokeRole, segments: readonly Segment[]): readonly SceneItem[] {
  const parts = clipSegments(segments, shown).map(({ from, to, bulge }): PathPart => {
    const ends = { from: onPaper(view, from), to: onPaper(view, to) };
    return bulge === 0 ? { kind: "line", ...ends } : { kind: "arc", ...ends, bulge };
  });
  return parts.length === 0 ? [] : [strokeOf(role, parts)];
}

function holeItems(draw: Drawing, hole: Hole): readonly SceneItem[] {
  const edge = contourItems(draw, hole.contour);
  const cross = hole.role === "opening" ? [] : clipped(draw, "fine", crossOf(hole));
  const items = [...edge, ...cross];
  return items.length === 0 ? [] : [group("hole", items, { tag: hole.tag })];
}

/** A circle that lies wholly in the window stays one. */
function contourItems(draw: Drawing, contour: Contour): readonly SceneItem[] {
  const { shown, view } = draw;
  const { x0, y0, x1, y1 } = extentOf(contour);
  const whole = isInside(shown, at(x0, y0)) && isInside(shown, at(x1, y1));
  if (contour.kind === "circle" && whole)
    return [strokeOf("hole", [circle(onPaper(view, contour.center), (x1 - x0) / 2)])];
  return clipped(draw, "hole", segmentsOf(contour));
}

/** Past the edge of the hole, so that a drill is set true by what is left of it. */
function crossOf(hole: Hole): readonly Segment[] {
  const { x, y } = hole.center;
  const span = holeSpan(hole);
  const [dx, dy] = [span.x + CENTRE_REACH, span.y + CENTRE_REACH];
  return [lineOf({ x: x - dx, y }, { x: x + dx, y }), lineOf({ x, y: y - dy }, { x, y: y + dy })];
}

const CENTRE_REACH = 4 * CROSS_REACH;

/** Register crosses, the line to cut along at the left and the top, the line to lie to at the right and the foot. */
function joiningItems(draw: Drawing): readonly SceneItem[] {
  const { tiling, tile, view, shown } = draw;
  const { before, above } = seamsOf(tiling);
  const { row, column } = tile;
  const upright = (x: number) => lineOf({ x, y: shown.y0 }, { x, y: shown.y1 });
  const level = (y: number) => lineOf({ x: shown.x0, y }, { x: shown.x1, y });
  const cut = [...(column > 0 ? [upright(before(column))] : []), ...(row > 0 ? [level(above(row))] : [])];
  const meet = [
    ...(column + 1 < tiling.columns ? [upright(before(column + 1))] : []),
    ...(row + 1 < tiling.rows ? [level(above(row + 1))] : []),
  ];
  const crosses = registersOf(tiling, tile).map(({ x, y }) => {
    const { x: px, y: py } = onPaper(view, { x, y });
    const parts = [line(at(px - ARM, py), at(px + ARM, py)), line(at(px, py - ARM), at(px, py + ARM))];
    return group("register", [strokeOf("hole", parts)], { x, y });
  });
  return [...clipped(draw, "concrete", cut), ...clipped(draw, "extension", meet), ...crosses];
}

/** Half of a register cross. */
const ARM = OVERLAP / 2 - 1;

/** In the window too, since bands are covered by neighbours; where there is room. */
function nameItem({ request, tiling, draft, lettering }: Drawing, name: string): void {
  const status = statusOf(request);
  const words = [...(name === "" ? [] : [`TILE ${name}`]), ...(status === "" ? [] : [status])].join("  ");
  if (words === "") return;
  const letter = lettering.heading;
  const { x0, y0, x1, y1 } = tiling.window;
  const inner = OVERLAP + 2;
  for (let y = y1 - inner - letter; y > y0 + inner; y -= 2 * letter)
    for (let x = x0 + inner; x < x1 - inner; x += 3 * letter) {
      const item = text(status !== "" ? "held" : "label", words, at(x, y), letter, { bold: true });
      if (!hasRoom(draft, item, letter / 2)) continue;
      put(draft, item);
      return;
    }
}

/** At the hole, in whatever direction there is room, nearest first; farther off with a leader. */
function labelHole({ request, view, shown, lettering, draft }: Drawing, hole: Hole): void {
  if (!isInside(shown, at(hole.center.x, hole.center.y))) return;
  const words = `${hole.tag} ${hole.made === "drill" ? "DRILL" : "CUT OUT"} ${sizeText(hole, request.job.unit)}`;
  const center = onPaper(view, hole.center);
  const span = holeSpan(hole);
  const letter = lettering.body;
  for (const away of [2, 5, 9, 14, 20, 28, 40, 60])
    for (const { x, y } of DIRECTIONS) {
      const from = at(center.x + x * span.x, center.y + y * span.y);
      const place = at(from.x + x * away, from.y + y * away - letter / 2);
      const item = text("label", words, place, letter, { anchor: x > 0 ? "start" : "end" });
      if (!hasRoom(draft, item)) continue;
      if (away > NEAR) put(draft, leader(from, at(place.x - x, place.y + letter / 2)));
      put(draft, group("hole-label", [item], { tag: hole.tag }));
      return;
    }
}

const NEAR = 9;
const HALF_ROOT = Math.SQRT1_2;

const DIRECTIONS: readonly PaperPoint[] = [
  [HALF_ROOT, HALF_ROOT],
  [HALF_ROOT, -HALF_ROOT],
  [-HALF_ROOT, HALF_ROOT],
  [-HALF_ROOT, -HALF_ROOT],
  [0.92, 0.38],
  [0.92, -0.38],
  [-0.92, 0.38],
  [-0.92, -0.38],
].map(([x = 0, y = 0]) => at(x, y));

function leader(from: PaperPoint, to: PaperPoint): SceneItem {
  return strokeOf("leader", [line(from, to)]);
}
