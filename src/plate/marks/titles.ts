/** What stands once on a plate: mark and revision, TOP, the two arrows. Tried about an ideal place, then further and further off. */
import type { Point } from "../../geometry/index.js";
import type { Length } from "../../units/length.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import { take } from "./ground.js";
import type { Block } from "./lettering.js";
import type { Candidate } from "./placing.js";
import { boxOf, firstFree, toMark } from "./placing.js";

/** A title: how it looks at a letter height in mm (several shapes, best first), and where its middle would best stand. */
export interface Title {
  readonly kind: MarkKind;
  readonly text: string;
  shapes(height: number): readonly Block[];
  ideal(block: Block): Point;
}

/** Titles placed one after another, each as large as it goes. */
export interface PlacedTitles {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
}

/** Places titles in order of importance. */
export function placeTitles(bare: Ground, titles: readonly Title[], heights: readonly Length[]): PlacedTitles {
  let ground = bare;
  const marks: Mark[] = [];
  const omitted: OmittedMark[] = [];
  for (const title of titles) {
    const found = placeTitle(ground, title, heights);
    if (found === null) {
      omitted.push({
        kind: title.kind,
        text: title.text,
        why: "no room on the plate clear of holes, edges and other marks",
      });
      continue;
    }
    marks.push(toMark(title.kind, title.text, found.candidate, found.height));
    ground = take(ground, [boxOf(found.candidate)]);
  }
  return { marks, omitted };
}

interface Found {
  readonly candidate: Candidate;
  readonly height: Length;
}

function placeTitle(ground: Ground, title: Title, heights: readonly Length[]): Found | null {
  for (const offSeats of [true, false]) {
    for (const height of heights) {
      for (const block of title.shapes(height / NM_PER_MM)) {
        const candidate = firstFree(ground, around(ground, block, title.ideal(block)), offSeats);
        if (candidate !== null) return { candidate, height };
      }
    }
  }
  return null;
}

/** Places on a grid through the ideal one, those in its own column first among equals. */
function around(ground: Ground, block: Block, ideal: Point): Iterable<Candidate> {
  const { extent } = ground;
  const [left, low] = [ideal.x - block.width / 2, ideal.y - block.height / 2];
  const xs = stations(left, extent.x0, extent.x1 - block.width);
  const ys = stations(low, extent.y0, extent.y1 - block.height);
  return xs
    .flatMap((x) => ys.map((y) => ({ x, y, cost: 1.5 * Math.abs(x - left) + Math.abs(y - low) })))
    .sort((a, b) => a.cost - b.cost || b.y - a.y || a.x - b.x)
    .map(({ x, y }) => ({ block, at: { x, y } }));
}

/** Grid steps a side: fine enough to find the gaps between rods, few enough to be quick. */
const STEPS = 20;

/** `ideal` and places on both sides of it within from..to, evenly spaced. */
function stations(ideal: number, from: number, to: number): readonly number[] {
  if (to < from) return [];
  const step = (to - from) / STEPS || 1;
  const inside = Math.min(to, Math.max(from, ideal));
  const before = Math.floor((inside - from) / step);
  const after = Math.floor((to - inside) / step);
  return Array.from({ length: before + after + 1 }, (_, i) => inside + (i - before) * step);
}
