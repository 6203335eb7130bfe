/** Where the keys of a table lead. */
import { type Layout, lastSpot, moved, type Spot } from "./layout.js";

/** A cell: its line, and its column among those that are shown. */
export interface At {
  readonly spot: Spot;
  readonly column: number;
}

/** Lines of a page. */
const PAGE = 20;

/** The cell that a key leads to; null: the key is none of these. */
export function ledTo(key: string, isFar: boolean, { spot, column }: At, layout: Layout, columns: number): At | null {
  const line = (by: number): At => ({ spot: moved(layout, spot, by), column });
  const along = (to: number): At => ({ spot, column: Math.min(Math.max(0, to), columns - 1) });
  const first: Spot = { at: 0, sub: 0 };
  switch (key) {
    case "ArrowDown":
      return isFar ? { spot: lastSpot(layout), column } : line(1);
    case "ArrowUp":
      return isFar ? { spot: first, column } : line(-1);
    case "ArrowRight":
      return along(isFar ? columns - 1 : column + 1);
    case "ArrowLeft":
      return along(isFar ? 0 : column - 1);
    case "Home":
      return isFar ? { spot: first, column: 0 } : along(0);
    case "End":
      return isFar ? { spot: lastSpot(layout), column: columns - 1 } : along(columns - 1);
    case "PageDown":
      return line(PAGE);
    case "PageUp":
      return line(-PAGE);
    default:
      return null;
  }
}
