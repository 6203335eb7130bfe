/** The key plan: how the parts of a plan lie to each other, and on which sheet each is. */
import { at, group, rectangle, stroke, text } from "../items.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece } from "../table.js";
import { textWidth } from "../text-metrics.js";
import type { Arrangement } from "./tiles.js";

/** Height of the drawn plan where its parts need no more. */
const HEIGHT = 40;

/** The parts with the numbers of their sheets, the current one in heavy lines; thin parts are drawn wider than true. */
export function keyPlanPiece(
  arrangement: Arrangement,
  current: number,
  overall: string,
  width: number,
  lettering: Lettering,
): Piece {
  const { content, tiles } = arrangement;
  const { small } = lettering;
  const scale = Math.min((width - 4) / (content.x1 - content.x0), HEIGHT / (content.y1 - content.y0));
  const least = { x: textWidth(String(tiles.length), small, true) + 2.4, y: small + 2.4 };
  const xs = edges(arrangement.columns, (i) => tiles.find(({ column }) => column === i)?.window, "x", scale, least.x);
  const ys = edges(arrangement.rows, (i) => tiles.find(({ row }) => row === i)?.window, "y", scale, least.y);
  const [w, h] = [xs.at(-1) ?? 0, ys.at(-1) ?? 0];
  const height = lettering.body * 2 + h + small * 1.6 + 6;
  const draw = (x: number, top: number) => {
    const left = x + (width - w) / 2;
    const high = top - lettering.body * 2 - 2;
    const boxes = tiles.flatMap(({ column, row }, i) => {
      const inset = i === current ? 0.4 : 0;
      const [x0, x1] = [left + (xs[column] ?? 0), left + (xs[column + 1] ?? 0)];
      const [y0, y1] = [high - (ys[row + 1] ?? 0), high - (ys[row] ?? 0)];
      return [
        stroke(i === current ? "outline" : "fine", ...rectangle(x0 + inset, y0 + inset, x1 - inset, y1 - inset)),
        text("label", String(i + 1), at((x0 + x1) / 2, (y0 + y1 - small) / 2), small, {
          anchor: "middle",
          bold: i === current,
        }),
      ];
    });
    const foot = text("note", overall, at(x + width / 2, high - h - small - 1.6), small, { anchor: "middle" });
    return group("key-plan", [
      ...headingItems("KEY PLAN (NUMBERS OF SHEETS)", x, top, width, lettering),
      ...boxes,
      foot,
    ]);
  };
  return { height, draw };
}

/** Paper edges of columns or rows, from 0; a part that is not drawn takes the least. */
function edges(
  count: number,
  windowOf: (index: number) => Arrangement["content"] | undefined,
  axis: "x" | "y",
  scale: number,
  least: number,
): readonly number[] {
  const result = [0];
  for (let i = 0; i < count; i++) {
    const window = windowOf(i);
    const size = window === undefined ? 0 : axis === "x" ? window.x1 - window.x0 : window.y1 - window.y0;
    result.push((result.at(-1) ?? 0) + Math.max(least, size * scale));
  }
  return result;
}
