/** Short paragraphs, each after its label in bold capitals, in columns of like height. */
import { greatestOf } from "../../units/extremes.js";
import { at, group, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import type { Piece } from "../table.js";
import { textWidth, wrap } from "../text-metrics.js";
import type { Paragraph } from "./rod-words.js";

/** Between baselines, and between paragraphs, in letters. */
const [LEADING, APART] = [1.42, 0.35];
const INDENT = 2.5;
const COLUMN_GAP = 5;

interface SetParagraph {
  readonly label: string;
  /** The first stands beside the label. */
  readonly lines: readonly string[];
  readonly height: number;
}

/** In so many columns, filled from the left. */
export function paragraphsPiece(
  paragraphs: readonly Paragraph[],
  width: number,
  columns: number,
  letter: number,
): Piece {
  const own = (width - (columns - 1) * COLUMN_GAP) / columns;
  const set = paragraphs.map((each) => setParagraph(each, own, letter));
  const parts = shareOut(set, columns);
  const height = greatestOf(parts.map(heightOf), 0);
  const draw = (x: number, top: number) =>
    group(
      "paragraphs",
      parts.flatMap((part, i) => columnItems(part, x + i * (own + COLUMN_GAP), top, letter)),
    );
  return { height, draw };
}

function heightOf(part: readonly SetParagraph[]): number {
  return part.reduce((sum, { height }) => sum + height, 0);
}

function setParagraph({ label, words }: Paragraph, width: number, letter: number): SetParagraph {
  const beside = width - textWidth(`${label} `, letter, true) - letter * 0.4;
  const [first = ""] = wrap(words, beside, letter);
  const rest = words.replace(/\s+/g, " ").trim().slice(first.length).trim();
  const lines = [first, ...(rest === "" ? [] : wrap(rest, width - INDENT, letter))];
  return { label, lines, height: (lines.length * LEADING + APART) * letter };
}

/** So that the highest column is as low as it may be, the order kept. */
function shareOut(set: readonly SetParagraph[], columns: number): readonly (readonly SetParagraph[])[] {
  const fill = (most: number) => {
    const parts: SetParagraph[][] = [[]];
    for (const each of set) {
      const last = parts.at(-1) ?? [];
      if (last.length > 0 && heightOf(last) + each.height > most + 1e-6) parts.push([each]);
      else last.push(each);
    }
    return parts;
  };
  const heights = set.flatMap((_, i) => set.slice(0, i + 1).map((__, k) => heightOf(set.slice(k, i + 1))));
  const most = heights.sort((a, b) => a - b).find((each) => fill(each).length <= columns);
  return fill(most ?? heightOf(set));
}

function columnItems(part: readonly SetParagraph[], x: number, top: number, letter: number): readonly SceneItem[] {
  let y = top;
  return part.flatMap(({ label, lines }) => {
    const beside = x + textWidth(`${label} `, letter, true) + letter * 0.4;
    const items = lines.map((words, i) => {
      y -= LEADING * letter;
      return text("note", words, at(i === 0 ? beside : x + INDENT, y + 0.25 * letter), letter);
    });
    const first = items[0]?.at.y ?? y;
    y -= APART * letter;
    return [text("note", label, at(x, first), letter, { bold: true }), ...items];
  });
}
