/** Foot of the drawing area: a bar to check the print's scale, and what the phantom lines are. */

import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { at, fill, group, line, rectangle, stroke, text } from "./items.js";
import type { Neighbour } from "./neighbours.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import type { Piece } from "./table.js";
import { textWidth } from "./text-metrics.js";

const STEPS = 3;
const SAMPLE = 22;

/** A piece that is so wide and no wider. */
export interface Block extends Piece {
  readonly width: number;
}

/** The bar, and over it the legend of the phantom lines: a block for a corner of the drawing area. */
export function legendBlock(
  drawn: readonly Neighbour[],
  omitted: readonly Neighbour[],
  unit: Unit,
  lettering: Lettering,
): Block {
  const { small } = lettering;
  const entries = [
    ...drawn.map((neighbour) => entryOf(neighbour, true)),
    ...omitted.map((neighbour) => entryOf(neighbour, false)),
  ];
  const widths = entries.map(({ words }) => textWidth(words, small) + SAMPLE);
  const width = greatestOf(widths, barWidth(unit, small));
  const height = barHeight(small) + entries.length * small * ROW;
  const draw = (x: number, top: number) => {
    const bottom = top - height + 1;
    return group("foot", [
      scaleBar(x, bottom, unit, lettering),
      legend(x, bottom + barHeight(small), entries, lettering),
    ]);
  };
  return { width, height, draw };
}

function entryOf(neighbour: Neighbour, isDrawn: boolean): Entry {
  return { neighbour, words: `${neighbour.words}${isDrawn ? "" : " (BEYOND THIS VIEW)"}`, line: isDrawn };
}

function barHeight(small: number): number {
  return small * 2 + 9;
}

const ROW = 1.9;

function barWidth(unit: Unit, small: number): number {
  return Math.max(STEPS * stepOf(unit) + small * 1.8, textWidth(barWords(unit), small));
}

function stepOf(unit: Unit): number {
  return unit === "in" ? 25.4 : 25;
}

function lengthWord(unit: Unit): string {
  return unit === "in" ? `${STEPS} in` : `${STEPS * 25} mm`;
}

function barWords(unit: Unit): string {
  return `PRINT CHECK: THIS BAR IS ${lengthWord(unit).toUpperCase()} LONG`;
}

/** Steps of 1 in or 25 mm, black and white in turn, with figures under them. */
function scaleBar(x: number, y: number, unit: Unit, { small }: Lettering): SceneItem {
  const step = stepOf(unit);
  const low = y + small + 1.6;
  const high = low + 2;
  const figure = (i: number) => (i === STEPS ? lengthWord(unit) : `${unit === "in" ? i : i * 25}`);
  const counts = Array.from({ length: STEPS + 1 }, (_, i) => i);
  const black = counts.filter((i) => i % 2 === 0 && i < STEPS);
  const box = (from: number, to: number) => [at(from, low), at(to, low), at(to, high), at(from, high)];
  return group("scale-bar", [
    ...black.map((i) => fill("bar", ...box(x + i * step, x + (i + 1) * step))),
    stroke("fine", ...rectangle(x, low, x + STEPS * step, high)),
    ...counts.map((i) =>
      text("label", figure(i), at(x + i * step, y), small, { anchor: i === 0 ? "start" : "middle" }),
    ),
    text("label", barWords(unit), at(x, high + 1.4), small),
  ]);
}

interface Entry {
  readonly neighbour: Neighbour;
  readonly words: string;
  readonly line: boolean;
}

/** A sample of each phantom line, and what it stands for. */
function legend(left: number, y: number, entries: readonly Entry[], { small }: Lettering): SceneItem {
  const items = entries.flatMap(({ neighbour, words, line: withLine }, i) => {
    const base = y + i * small * ROW;
    const role = neighbour.name === "BASE PLATE" ? "base-plate" : "concrete";
    const ends = [at(left, base + small / 2), at(left + SAMPLE - 2, base + small / 2)] as const;
    const label = text("label", words, at(left + (withLine ? SAMPLE : 0), base), small);
    return [label, ...(withLine ? [stroke(role, line(...ends))] : [])];
  });
  return group("legend", items);
}
