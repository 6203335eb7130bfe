/** A mark on its ground: candidates are tried in order, the first free one is taken. */
import type { Extent, Point } from "../../geometry/index.js";
import { extentOfPoints, joinExtents } from "../../geometry/index.js";
import type { Length } from "../../units/length.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Mark, MarkKind } from "../model.js";
import type { Ground, Taken } from "./ground.js";
import { isFree } from "./ground.js";
import type { Block } from "./lettering.js";

/** A block with the lower left of its box at `at`. */
export interface Candidate {
  readonly block: Block;
  readonly at: Point;
}

/** The box that a candidate takes. */
export function boxOf({ block, at }: Candidate): Extent {
  return { x0: at.x, y0: at.y, x1: at.x + block.width, y1: at.y + block.height };
}

/** A word space of the font is about one letter height: neighbours on one line stand this much further apart. */
const WORD_GAP = 1;

/** What a placed candidate keeps free of other marks: more where its text begins and ends. */
export function roomOf(candidate: Candidate, textHeight: Length): Taken {
  const { x0, y0, x1, y1 } = boxOf(candidate);
  const letters = textHeight / NM_PER_MM;
  const gap = WORD_GAP * letters;
  const box = candidate.block.upwards ? { x0, y0: y0 - gap, x1, y1: y1 + gap } : { x0: x0 - gap, y0, x1: x1 + gap, y1 };
  return { box, letters };
}

/** The first candidate that is free, with letters of this height in mm. */
export function firstFree(
  ground: Ground,
  candidates: Iterable<Candidate>,
  letters: number,
  offSeats: boolean,
): Candidate | null {
  for (const candidate of candidates) if (isFree(ground, boxOf(candidate), letters, offSeats)) return candidate;
  return null;
}

/** The mark that a placed candidate becomes. */
export function toMark(kind: MarkKind, text: string, { block, at }: Candidate, textHeight: Length): Mark {
  const strokes = block.strokesAt(at);
  const [first, ...rest] = strokes.map(extentOfPoints);
  const extent = first === undefined ? boxOf({ block, at }) : rest.reduce(joinExtents, first);
  return { kind, text, strokes, extent, textHeight };
}

/** Letter heights to try, from the shop's own down to its least, in nanometres. */
export function heightsToTry(most: Length, least: Length): readonly [Length, ...Length[]] {
  if (least >= most) return [most];
  const steps = 3;
  const between = Array.from({ length: steps - 1 }, (_, i) =>
    Math.round(most - ((most - least) * (i + 1)) / steps),
  ) as Length[];
  return [most, ...between, least];
}
