/** Parts of a setting sheet that are written on by hand: lines to tick, blanks for what is measured, signatures. */
import { greatestOf } from "../../units/extremes.js";
import { at, group, line, rectangle, stroke, strokeOf, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece } from "../table.js";
import { textWidth, wrap } from "../text-metrics.js";
import type { Step } from "./setting-words.js";

/** From line to line of words, and of lines that are written on, in letters. */
const [LEADING, WRITING] = [1.55, 2.6];

/** Lines to tick under a heading, each a box, its key word and what is to be seen. */
export function ticksPiece(heading: string, steps: readonly Step[], width: number, lettering: Lettering): Piece {
  const { small, body } = lettering;
  const indent = small * 1.9;
  const laid = steps.map(({ key, words }) => ({ key, lines: keyedLines(key, words, width - indent, small) }));
  const heights = laid.map(({ lines }) => lines.length * small * LEADING + small * 0.45);
  const height = body * 2 + heights.reduce((sum, each) => sum + each, 0) + 1;
  const draw = (x: number, top: number): SceneItem => {
    let y = top - body * 2 - small * 0.5;
    const items = laid.flatMap(({ key, lines }, i) => {
      const first = y - small * 1.1;
      y -= heights[i] ?? 0;
      return [tickBox(x, first, small), ...tickWords(key, lines, x + indent, first, small)];
    });
    return group("setting-ticks", [...headingItems(heading, x, top, width, lettering), ...items], { heading });
  };
  return { height, draw };
}

/** Words after their key, which stands bold in front of the first line. */
function keyedLines(key: string, words: string, width: number, small: number): readonly string[] {
  const taken = keyWidth(key, small);
  const [first = "", ...rest] = wrap(words, width - taken, small);
  const left = words.slice(first.length).trim();
  return rest.length === 0 ? [first] : [first, ...wrap(left, width, small)];
}

const keyWidth = (key: string, small: number): number => textWidth(key, small, true) + small * 0.8;

function tickBox(x: number, y: number, small: number): SceneItem {
  return strokeOf("outline", rectangle(x, y - small * 0.1, x + small * 1.2, y + small * 1.1));
}

function tickWords(key: string, lines: readonly string[], x: number, y: number, small: number): readonly SceneItem[] {
  return [
    text("label", key, at(x, y), small, { bold: true }),
    ...lines.map((words, i) =>
      text("label", words, at(i === 0 ? x + keyWidth(key, small) : x, y - i * small * LEADING), small),
    ),
  ];
}

/** Blanks side by side, as many in a row as have room, each with `least` millimetres to write on. */
export function blanksPiece(name: string, rows: readonly BlankRow[], width: number, { small }: Lettering): Piece {
  const step = small * WRITING;
  const indent = greatestOf(
    rows.map(({ label }) => (label === "" ? 0 : textWidth(label, small, true) + GAP)),
    0,
  );
  const laid = rows.flatMap((row) => blankLines(row, width, indent, small));
  const height = laid.length * step + 1;
  const draw = (x: number, top: number): SceneItem =>
    group(
      name,
      laid.flatMap((cells, i) =>
        cells.flatMap((cell) => blankItems(cell, x, top - (i + 1) * step + small * 0.6, small)),
      ),
    );
  return { height, draw };
}

/** Blanks that belong together after what they are. */
export interface BlankRow {
  readonly label: string;
  readonly names: readonly string[];
  /** Line to write on, millimetres. */
  readonly least: number;
}

interface BlankCell {
  readonly words: string;
  readonly bold: boolean;
  readonly x0: number;
  readonly from: number;
  readonly x1: number;
}

const GAP = 2.5;

/** Columns of one width, the label before the first. */
function blankLines(
  { label, names, least }: BlankRow,
  width: number,
  indent: number,
  small: number,
): readonly (readonly BlankCell[])[] {
  const widest = greatestOf(names.map((name) => textWidth(name, small)));
  const column = widest + 1 + least + GAP;
  const count = Math.max(1, Math.min(names.length, Math.floor((width - indent + GAP) / column)));
  const each = Math.max(widest + 1 + least, Math.min(column * 1.6, (width - indent + GAP) / count - GAP));
  const lines: BlankCell[][] = [];
  names.forEach((words, i) => {
    const x0 = indent + (i % count) * (each + GAP);
    const cell = { words, bold: false, x0, from: x0 + textWidth(words, small) + 1, x1: x0 + each };
    if (i % count === 0) lines.push([cell]);
    else lines.at(-1)?.push(cell);
  });
  const head = { words: label, bold: true, x0: 0, from: 0, x1: 0 };
  return label === "" ? lines : lines.map((cells, i) => (i === 0 ? [head, ...cells] : cells));
}

function blankItems(
  { words, bold, x0, from, x1 }: BlankCell,
  x: number,
  y: number,
  small: number,
): readonly SceneItem[] {
  const lined = x1 > from ? [stroke("fine", line(at(x + from, y - 0.6), at(x + x1, y - 0.6)))] : [];
  return [...(words === "" ? [] : [text("label", words, at(x + x0, y), small, { bold })]), ...lined];
}

/** Lines of words, the first ones bold. */
export function wordsPiece(
  name: string,
  paragraphs: readonly { readonly words: string; readonly bold: boolean }[],
  width: number,
  letter: number,
): Piece {
  const lines = paragraphs.flatMap(({ words, bold }) =>
    wrap(words, width, letter, bold).map((each) => ({ each, bold })),
  );
  const step = letter * LEADING;
  const draw = (x: number, top: number): SceneItem =>
    group(
      name,
      lines.map(({ each, bold }, i) => text("label", each, at(x, top - letter * 1.05 - i * step), letter, { bold })),
    );
  return { height: lines.length * step + letter * 0.3, draw };
}
