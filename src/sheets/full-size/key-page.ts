/** The first page of a print at full size: how its sheets are joined, and what is measured when they are. */
import { extentOf } from "../../geometry/index.js";
import type { BoardFacts } from "../../summary/facts.js";
import type { Hole } from "../../template/model.js";
import { NM_PER_MM, nanometres } from "../../units/index.js";
import { type Block, drawDocument } from "../document-pages.js";
import { at, group, line, rectangle, strokeOf, text } from "../items.js";
import { type Area, type Draft, hasRoom, put, putAll, startDraft } from "../paper.js";
import { contourParts, type View } from "../plan-shapes.js";
import type { Scene, SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, notesPiece, type Piece } from "../table.js";
import { dimensionWords } from "../taped.js";
import { printable, textWidth } from "../text-metrics.js";
import { RULERS } from "./foot.js";
import { type FullSizeRequest, statusOf } from "./request.js";
import { countOf, OVERLAP, seamsOf, type Tiling, tileName, tilesOf } from "./tiling.js";

/** One page, or more where a table runs over. */
export function keyPages(request: FullSizeRequest, tiling: Tiling): readonly Scene[] {
  const { job, version, board, held } = request;
  const status = statusOf(request);
  const blocks: readonly Block[] = [
    { kind: "piece", piece: (width, lettering) => keyPiece(board, tiling, width, lettering) },
    {
      kind: "piece",
      piece: (width, lettering) => notesPiece("how-to", "HOW TO USE IT", notes(request, tiling), width, lettering),
    },
    { kind: "table", table: checkTable(request) },
  ];
  return drawDocument({
    job,
    version,
    title: `${board.mark} AT FULL SIZE${status === "" ? "" : `: ${status}`}`,
    way: "upright",
    blocks,
    held,
  });
}

function notes({ job, board }: FullSizeRequest, tiling: Tiling): readonly string[] {
  const count = countOf(tiling);
  const { words } = RULERS[job.unit];
  const paper = `${tiling.paper.name}, ${tiling.paper.width > tiling.paper.height ? "landscape" : "upright"}`;
  return [
    count === 1
      ? `The next page is the whole template at full size, as seen from above. ${tiling.paper.name === "plotter" ? "It takes more sheets than are glued together: plot it on a roll." : ""}`.trim()
      : `${count} tiles on ${paper}: ${tiling.rows} rows of ${tiling.columns}. Each shows the template as seen from above, TOP face.`,
    `Print at 100 % ("actual size"), never fitted to the page. On every sheet measure both bars with a tape: ${words}. A sheet that is off is not used.`,
    ...(count === 1
      ? []
      : [
          "Begin with tile 1-1. Of every other tile cut off the paper at its dashed lines (left, top) and glue it over the tiles beside and above: heavy crosses and lines of the drawing meet, and its edge lies on their thin line.",
        ]),
    "Before it is glued to the board measure what the table below lists, over all sheets: paper grows and shrinks with damp. Dimensions of the sheet and the drill list go before what is measured on paper.",
    `Drill through the middle of each cross at the size that stands beside it. Letters of single lines are painted on the board, TOP and ${printable(board.mark)} at least, on the face that the paper is on.`,
  ];
}

/** Most of the page's height that the key takes. */
const KEY_HEIGHT = 95;

function keyPiece(board: BoardFacts, tiling: Tiling, width: number, lettering: Lettering): Piece {
  const { stepX, stepY, left, top, rows, columns } = tiling;
  const { before, above } = seamsOf(tiling);
  const edges = {
    x: [left, ...Array.from({ length: columns - 1 }, (_, i) => before(i + 1)), left + columns * stepX + OVERLAP],
    y: [top, ...Array.from({ length: rows - 1 }, (_, i) => above(i + 1)), top - rows * stepY - OVERLAP],
  };
  const [wide, high] = [columns * stepX + OVERLAP, rows * stepY + OVERLAP];
  const scale = Math.min((width - 4) / wide, KEY_HEIGHT / high);
  const head = lettering.body * 2 + 3;
  const draw = (x: number, y: number): SceneItem => {
    const view: View = { origin: at(x + 2 - left * scale, y - head - top * scale), scale };
    const px = (at: number) => view.origin.x + at * scale;
    const py = (at: number) => view.origin.y + at * scale;
    const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [px(left), px(left + wide), py(top - high), py(top)];
    const lines = [
      ...edges.x.slice(1, -1).map((each) => line(at(px(each), y0), at(px(each), y1))),
      ...edges.y.slice(1, -1).map((each) => line(at(x0, py(each)), at(x1, py(each)))),
    ];
    const drawn = [
      ...headingItems(countOf(tiling) === 1 ? "THE TEMPLATE" : "TILES: ROW-COLUMN", x, y, width, lettering),
      strokeOf("table", rectangle(x0, y0, x1, y1)),
      ...(lines.length === 0 ? [] : [strokeOf("extension", lines)]),
      strokeOf("outline", contourParts(view, board.region.outer)),
      ...board.holes.map(({ contour }) => strokeOf("fine", contourParts(view, contour))),
    ];
    const draft = startDraft({ x0, y0, x1, y1 });
    putAll(draft, drawn);
    for (const tile of tilesOf(tiling)) {
      const [left, right] = [px(edges.x[tile.column] ?? 0), px(edges.x[tile.column + 1] ?? 0)];
      const [high, low] = [py(edges.y[tile.row] ?? 0), py(edges.y[tile.row + 1] ?? 0)];
      nameTile(draft, { x0: left, y0: low, x1: right, y1: high }, tileName(tiling, tile), lettering.small);
    }
    return group("tile-key", draft.items);
  };
  return { height: head + high * scale + 2, draw };
}

/** Nearest the upper left where it stands clear; none of a tile too small on the key to be named. */
function nameTile(draft: Draft, { x0, y0, x1, y1 }: Area, name: string, letter: number): void {
  for (let y = y1 - 1.2 - letter; y > y0; y -= letter / 2)
    for (let x = x0 + 1.2; x < x1; x += letter / 2) {
      const item = text("tag", name, at(x, y), letter);
      if (x + textWidth(name, letter) > x1 - 0.8) break;
      if (!hasRoom(draft, item)) continue;
      put(draft, item);
      return;
    }
}

/** The size of it, and its rods across both ways. */
function checkTable({ job, board }: FullSizeRequest) {
  const { x0, y0, x1, y1 } = extentOf(board.region.outer);
  const say = (mm: number) => dimensionWords(nanometres(Math.round(mm * NM_PER_MM)), job.unit);
  const rows = [
    ["width of the template", say(x1 - x0)],
    ["height of the template", say(y1 - y0)],
    ...(isSquareCornered(board) ? [["both diagonals of the template", say(Math.hypot(x1 - x0, y1 - y0))]] : []),
    ...diagonals(board.holes).map(([a, b]) => [
      `center of ${a.tag} to center of ${b.tag}`,
      say(Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y)),
    ]),
  ].map(([what = "", length = ""]) => [what, length, ""]);
  return {
    name: "full-size-checks",
    heading: "MEASURE WHEN IT IS JOINED",
    columns: [
      { title: "WHAT", share: 0.5, align: "start" as const },
      { title: `TRUE, ${job.unit}`, share: 0.25, align: "end" as const },
      { title: "MEASURED", share: 0.25, align: "end" as const },
    ],
    rows,
    foot: [],
    under: [],
    strong: new Set<number>(),
  };
}

/** A rectangle along the axes whose corners are left: they are what a tape is held to. */
function isSquareCornered({ region }: BoardFacts): boolean {
  const { outer } = region;
  if (outer.kind === "circle" || outer.segments.length !== 4) return false;
  const { x0, y0, x1, y1 } = extentOf(outer);
  return outer.segments.every(
    ({ from, bulge }) => bulge === 0 && [x0, x1].includes(from.x) && [y0, y1].includes(from.y),
  );
}

/** The rods farthest apart along either slanting way, each pair once. */
function diagonals(holes: readonly Hole[]): readonly (readonly [Hole, Hole])[] {
  const rods = holes.filter(({ role }) => role === "rod");
  const ends = ([1, -1] as const).flatMap((sign) => {
    const along = ({ center }: Hole) => center.x + sign * center.y;
    const [first] = rods;
    if (first === undefined) return [];
    const low = rods.reduce((best, hole) => (along(hole) < along(best) ? hole : best), first);
    const high = rods.reduce((best, hole) => (along(hole) > along(best) ? hole : best), first);
    return low === high ? [] : [[low, high] as const];
  });
  const [a, b] = ends;
  const isSame = a !== undefined && b !== undefined && new Set([...a, ...b]).size === 2;
  return isSame ? ends.slice(0, 1) : ends;
}
