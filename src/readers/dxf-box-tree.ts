/**
 * Boxes packed into a tree, sorted into tiles (sort-tile-recursive packing, Leutenegger 1997): finds the boxes that meet a
 * box in time that grows with their number and the logarithm of all.
 */
import type { CutBox } from "./dxf-measures.js";

const FANOUT = 8;

/** A tree over boxes, in any one unit; boxes are named by their index in the list that it was made from. */
export class BoxTree {
  /** Level 0 holds the boxes in packed order, the last level one box; four numbers a box. */
  private readonly levels: Float64Array[] = [];
  /** What box stands at each place of level 0. */
  private readonly order: Int32Array;

  constructor(boxes: readonly CutBox[]) {
    this.order = tileOrder(boxes);
    const leaves = new Float64Array(4 * boxes.length);
    this.order.forEach((index, place) => {
      const box = boxes[index];
      if (box !== undefined) leaves.set([box.x0, box.y0, box.x1, box.y1], 4 * place);
    });
    this.levels.push(leaves);
    for (let level: Float64Array = leaves; level.length > 4; ) {
      level = coverLevel(level);
      this.levels.push(level);
    }
  }

  /** Calls `visit` with the index of every box that meets `box`, touching included; ends early where it returns false. */
  search(box: CutBox, visit: (index: number) => boolean): void {
    this.searchIn(this.levels.length - 1, 0, 1, box, visit);
  }

  private searchIn(level: number, first: number, end: number, box: CutBox, visit: (index: number) => boolean): boolean {
    const values = this.levels[level];
    if (values === undefined) return true;
    for (let place = first; place < end && 4 * place < values.length; place++) {
      const at = 4 * place;
      if ((values[at] ?? 0) > box.x1 || (values[at + 1] ?? 0) > box.y1) continue;
      if ((values[at + 2] ?? 0) < box.x0 || (values[at + 3] ?? 0) < box.y0) continue;
      const goesOn =
        level === 0
          ? visit(this.order[place] ?? 0)
          : this.searchIn(level - 1, place * FANOUT, (place + 1) * FANOUT, box, visit);
      if (!goesOn) return false;
    }
    return true;
  }
}

/** Sorted by x into strips, each strip by y. */
function tileOrder(boxes: readonly CutBox[]): Int32Array {
  const count = boxes.length;
  const [xs, ys] = [new Float64Array(count), new Float64Array(count)];
  boxes.forEach(({ x0, y0, x1, y1 }, index) => {
    xs[index] = x0 + x1;
    ys[index] = y0 + y1;
  });
  const order = Int32Array.from({ length: count }, (_, index) => index);
  order.sort((a, b) => (xs[a] ?? 0) - (xs[b] ?? 0) || a - b);
  const strip = FANOUT * Math.max(1, Math.ceil(Math.sqrt(count / FANOUT)));
  for (let first = 0; first < count; first += strip) {
    order.subarray(first, first + strip).sort((a, b) => (ys[a] ?? 0) - (ys[b] ?? 0) || a - b);
  }
  return order;
}

function coverLevel(level: Float64Array): Float64Array {
  const count = Math.ceil(level.length / (4 * FANOUT));
  const cover = new Float64Array(4 * count);
  for (let place = 0; place < count; place++) {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    const end = Math.min(level.length, 4 * FANOUT * (place + 1));
    for (let at = 4 * FANOUT * place; at < end; at += 4) {
      x0 = Math.min(x0, level[at] ?? 0);
      y0 = Math.min(y0, level[at + 1] ?? 0);
      x1 = Math.max(x1, level[at + 2] ?? 0);
      y1 = Math.max(y1, level[at + 3] ?? 0);
    }
    cover.set([x0, y0, x1, y1], 4 * place);
  }
  return cover;
}
