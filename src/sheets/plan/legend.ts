/** What the symbols of the plan mean. */
import { arrowHead, at, circle, group, line, rectangle, stroke, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece } from "../table.js";

/** How a symbol is drawn about a point, and what it stands for. */
interface Entry {
  readonly words: string;
  readonly draw: (x: number, y: number) => readonly SceneItem[];
}

const ENTRIES: readonly Entry[] = [
  {
    words: "Concrete, column, rods at their places. Strong axis: along the flanges",
    draw: (x, y) => [
      stroke("fine", ...rectangle(x - 2.4, y - 2.4, x + 2.4, y + 2.4)),
      stroke("hole", line(at(x - 1.1, y - 1), at(x + 1.1, y - 1)), line(at(x - 1.1, y + 1), at(x + 1.1, y + 1))),
      stroke("hole", line(at(x, y - 1), at(x, y + 1))),
      stroke("fine", ...[-1.7, 1.7].flatMap((dx) => [-1.7, 1.7].map((dy) => circle(at(x + dx, y + dy), 0.35)))),
    ],
  },
  {
    words: "Type's own +x (arrow) and +y (tick)",
    draw: (x, y) => [
      stroke("fine", line(at(x - 2.4, y - 1.6), at(x + 1, y - 1.6)), line(at(x - 2.4, y - 1.6), at(x - 2.4, y + 1.6))),
      arrowHead(at(x + 2.8, y - 1.6), 1, 0, 2),
    ],
  },
  {
    words: "Control point",
    draw: (x, y) => [
      stroke(
        "hole",
        line(at(x - 2, y - 1.4), at(x + 2, y - 1.4)),
        line(at(x + 2, y - 1.4), at(x, y + 2)),
        line(at(x, y + 2), at(x - 2, y - 1.4)),
      ),
    ],
  },
];

const ROW = 6.2;

/** Symbols at the left, words beside. */
export function legendPiece(withControl: boolean, width: number, lettering: Lettering): Piece {
  const entries = withControl ? ENTRIES : ENTRIES.slice(0, -1);
  const height = lettering.body * 2 + entries.length * ROW + 1;
  const draw = (x: number, top: number) => {
    const items = entries.flatMap((entry, i) => {
      const y = top - lettering.body * 2 - (i + 0.55) * ROW;
      const words = text("note", entry.words, at(x + 9, y - lettering.small / 2), lettering.small);
      return [...entry.draw(x + 3.6, y), words];
    });
    return group("legend", [...headingItems("SYMBOLS", x, top, width, lettering), ...items]);
  };
  return { height, draw };
}
