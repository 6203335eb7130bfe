/** Bands at the foot and the right of a sheet at full size: what it is, how it is joined, and bars to measure it by. */
import type { Unit } from "../../units/index.js";
import { at, group, line, strokeOf, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { printable, shorten, textWidth } from "../text-metrics.js";
import { type FullSizeRequest, statusOf } from "./request.js";
import { EDGE, FOOT_BAND, RIGHT_BAND, type Tile, type Tiling, tileName } from "./tiling.js";

/** A bar that a tape shows to be true; divisions of an inch or 10 mm. */
export const RULERS: Readonly<
  Record<Unit, { readonly length: number; readonly step: number; readonly words: string }>
> = {
  in: { length: 6 * 25.4, step: 25.4, words: "6 in" },
  mm: { length: 150, step: 10, words: "150 mm" },
};

/** Title, status and how to join, from the top of the band down; the level bar has the rest. */
export function footItems(
  request: FullSizeRequest,
  tiling: Tiling,
  tile: Tile,
  { small, heading }: Lettering,
): readonly SceneItem[] {
  const { job, board } = request;
  const [left, right] = [EDGE, tiling.paper.width - EDGE - RIGHT_BAND];
  const status = statusOf(request);
  const room = right - left - textWidth(status, heading, true) - 3;
  const name = tileName(tiling, tile);
  const title = `${board.mark} REV ${printable(board.revision)}  ${name === "" ? "FULL SIZE" : `TILE ${name}`}`;
  const top = EDGE + FOOT_BAND - 1.5 - heading;
  const row = small * 1.45;
  const notes = [whatNote(request, tiling, tile), joinNote(tiling, tile), checkNote(job.unit)].map((words, i) =>
    text("note", shorten(words, right - left, small), at(left, top - row * (i + 1) - 0.4), small),
  );
  return [
    group("tile-foot", [
      text("title", shorten(title, room, heading, true), at(left, top), heading, { bold: true }),
      ...(status === "" ? [] : [text("held", status, at(right, top), heading, { anchor: "end", bold: true })]),
      ...notes,
    ]),
  ];
}

function whatNote({ job }: FullSizeRequest, tiling: Tiling, { row, column }: Tile): string {
  const where =
    tiling.rows * tiling.columns === 1
      ? "the whole of it"
      : `row ${row + 1} of ${tiling.rows}, column ${column + 1} of ${tiling.columns}`;
  return `Job ${printable(job.number)}, template at full size as seen from above, TOP face: ${where}.`;
}

function joinNote(tiling: Tiling, { row, column }: Tile): string {
  const left = column === 0 ? null : tileName(tiling, { row, column: column - 1 });
  const above = row === 0 ? null : tileName(tiling, { row: row - 1, column });
  if (left === null && above === null)
    return tiling.rows * tiling.columns === 1
      ? "One sheet: nothing is joined."
      : "First tile: the others are laid over its edges.";
  const sides = [...(left === null ? [] : ["left"]), ...(above === null ? [] : ["top"])].join(" and ");
  const under = [left, above].filter((each) => each !== null).join(" and ");
  return `Cut along the dashed line at the ${sides}, lay over ${under}: heavy crosses meet.`;
}

function checkNote(unit: Unit): string {
  return `Print at 100 %, not fitted to the page. Use it only where both bars measure ${RULERS[unit].words}.`;
}

/** The bars: level at the foot, upright at the right. */
export function rulerItems(tiling: Tiling, unit: Unit, { small }: Lettering): readonly SceneItem[] {
  const { length, step, words } = RULERS[unit];
  const { window, paper } = tiling;
  const [x, y] = [EDGE, EDGE + 1];
  const [u, v] = [paper.width - EDGE - 1, window.y0];
  const count = Math.round(length / step);
  const ticks = Array.from({ length: count + 1 }, (_, i) => ({
    by: i * step,
    reach: i % count === 0 ? TICK : TICK / 2,
  }));
  const level = [
    line(at(x, y), at(x + length, y)),
    ...ticks.map(({ by, reach }) => line(at(x + by, y), at(x + by, y + reach))),
  ];
  const upright = [
    line(at(u, v), at(u, v + length)),
    ...ticks.map(({ by, reach }) => line(at(u, v + by), at(u - reach, v + by))),
  ];
  return [
    group("ruler", [strokeOf("fine", level), text("dimension", words, at(x + length + 2, y), small)], { length }),
    group("ruler", [strokeOf("fine", upright), text("dimension", words, at(u, v + length + 2), small, { turn: 90 })], {
      length,
    }),
  ];
}

const TICK = 3.2;
