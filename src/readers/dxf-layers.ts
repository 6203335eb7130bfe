/** Which layers are cut and which are scribed: by the names that are handed in, by words of the trade, else by what they hold. */
import type { OpenStroke } from "./dxf-contours.js";
import {
  type CutBox,
  coverBoxes,
  distance,
  EMPTY_BOX,
  isBoxInside,
  segmentBox,
  segmentLength,
} from "./dxf-measures.js";

/** Names of layers that decide, in any case of their letters. */
export interface LayerRoles {
  readonly cut: readonly string[];
  readonly mark: readonly string[];
}

/** What a layer is, how that is known, and its open strokes that would be cut. */
export interface LayerUse {
  readonly isMark: boolean;
  readonly why: "named" | "words" | "content";
  readonly leftOpen: readonly OpenStroke[];
}

/** A chain that misses closing by less than 1 mm was meant to be closed (common practice). */
const GAP_MM = 1;

const MARK_WORDS = /MARK|SCRIBE|ETCH|ENGRAV|STAMP|TEXT|CENT(ER|RE)/;
const CUT_WORDS = /CUT|HOLE|OUTLINE|PROFILE|CONTOUR|OPENING|PLATE/;

/** What stands on one layer: open strokes, the number of closed contours, and whether the outline is among them. */
export interface LayerContent {
  readonly name: string;
  readonly open: readonly OpenStroke[];
  readonly closed: number;
  readonly hasOutline: boolean;
}

/** Judges one layer. `mm` is how many millimetres the file's unit has; `outline` the box of the outline. */
export function judgeLayer(
  content: LayerContent,
  outline: CutBox | null,
  mm: number,
  known: LayerRoles | undefined,
): LayerUse {
  const { name, open, hasOutline } = content;
  const use = (isMark: boolean, why: LayerUse["why"]): LayerUse => ({ isMark, why, leftOpen: isMark ? [] : open });
  if (hasOutline) return use(false, "content");
  const has = (names: readonly string[] | undefined) =>
    names?.some((each) => each.toUpperCase() === name.toUpperCase());
  if (has(known?.mark)) return use(true, "named");
  if (has(known?.cut)) return use(false, "named");
  const upper = name.toUpperCase();
  if (MARK_WORDS.test(upper)) return use(true, "words");
  if (CUT_WORDS.test(upper)) return use(false, "words");
  return use(looksLikeMarks(content, outline, mm), "content");
}

/** Open strokes inside the outline, as many as closed ones or more, none of which all but closes. */
function looksLikeMarks({ open, closed }: LayerContent, outline: CutBox | null, mm: number): boolean {
  if (open.length === 0 || open.length < closed || outline === null) return false;
  return open.every((stroke) => isBoxInside(boxOfStroke(stroke), outline, 0) && !allButCloses(stroke, mm));
}

function allButCloses({ segments }: OpenStroke, mm: number): boolean {
  const [from, to] = [segments[0]?.from, segments.at(-1)?.to];
  if (from === undefined || to === undefined) return false;
  const gap = distance(from, to);
  const length = segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
  return length >= 10 * gap || (gap <= GAP_MM / mm && length > 3 * gap);
}

/** The box around a stroke. */
export function boxOfStroke({ segments }: OpenStroke): CutBox {
  return segments.map(segmentBox).reduce(coverBoxes, EMPTY_BOX);
}
