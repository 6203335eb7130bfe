/** The same rod as it stands under the column: grout, plates, washer and nut. Letter heights, see `Frame`. */
import type { Base, RodGroup } from "../job/model/job.js";
import { seatOfNut } from "../job/model/stack.js";
import { fill, line, strokeOf } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import {
  box,
  breakLine,
  captionItem,
  concreteItems,
  type Figure,
  type Frame,
  LEADING,
  labelItems,
  leaderItems,
  NUT,
  nutItems,
  phraseLines,
  ROD,
  rodBreak,
  rodItems,
  type Span,
  spot,
  WASHER,
  washerItem,
  widestLine,
} from "./section-shapes.js";
import { type StackLayer, stackWords } from "./section-words.js";

const HALF = 4.5;
const CONCRETE = 5.2;
/** Where leaders bend, and where words begin. */
const BEND = 5.8;
const WORDS = 7;
const FOOT = -4.5;
const TOP = 14.6;

/** A layer with the heights between which it is drawn, and where its words stand. */
interface Laid extends StackLayer {
  readonly span: Span;
  readonly half: number;
  readonly lines: readonly string[];
  /** First baseline. */
  readonly first: number;
}

/** Something is known of what lies on the concrete. */
export function isStackKnown({ grout, basePlate }: Base, { washer }: RodGroup): boolean {
  return [grout, basePlate.thickness, washer].some(({ kind }) => kind === "given");
}

/** The figure, its words no wider than `width` millimetres; null where nothing of the stack is known. */
export function standingFigure(request: SheetRequest, own: RodGroup, letter: number, width: number): Figure | null {
  if (!isStackKnown(request.base, own)) return null;
  const laid = layOut(stackWords(request, own), width / letter, letter);
  const widest = laid.reduce((most, { lines }) => Math.max(most, widestLine(lines, letter)), 0);
  const [top, low] = [Math.max(TOP, ...ends(laid, "top")), Math.min(FOOT, ...ends(laid, "low"))];
  return {
    extent: {
      x0: -CONCRETE * letter - caption(letter),
      x1: (WORDS + widest) * letter,
      y0: (low - 2.4) * letter,
      y1: (top + 0.3) * letter,
    },
    draw: (x, y) => drawStanding(request, own, laid, { x, y, letter }, low),
  };
}

const CAPTION = "UNDER THE COLUMN";

/** What the words under the figure need at its left. */
function caption(letter: number): number {
  return Math.max(0, widestLine([CAPTION], letter) / 2 - CONCRETE) * letter;
}

function ends(laid: readonly Laid[], side: "top" | "low"): readonly number[] {
  return laid.map(({ first, lines }) => (side === "top" ? first + 1 : first - (lines.length - 1) * LEADING - 0.4));
}

const HEIGHTS: Readonly<Record<StackLayer["name"], number>> = {
  grout: 4.6,
  levelling: 0,
  "setting plate": 0.9,
  "base plate": 2.2,
  washer: WASHER.height,
  nut: NUT.height,
  "stick-out": 0,
};

const HALVES: Readonly<Record<StackLayer["name"], number>> = {
  grout: HALF,
  levelling: WASHER.half,
  "setting plate": HALF,
  "base plate": HALF,
  washer: WASHER.half,
  nut: NUT.half,
  "stick-out": ROD,
};

/** Layers one on the other, their words beside them: at their heights where these stand clear of each other. */
function layOut(layers: readonly StackLayer[], width: number, letter: number): readonly Laid[] {
  let low = 0;
  const laid = layers.map((layer): Laid => {
    const lines = phraseLines(layer.words, width, letter);
    const span = spanOf(layer, low);
    low = layer.name === "levelling" ? low : span[1];
    const first = (span[0] + span[1]) / 2 - 0.5 + ((lines.length - 1) * LEADING) / 2;
    return { ...layer, span, half: HALVES[layer.name], lines, first };
  });
  return pushedDown(pushedUp(laid));
}

/** Each clear of the words under it. */
function pushedUp(laid: readonly Laid[]): readonly Laid[] {
  let free = -Infinity;
  return laid.map((each) => {
    const first = Math.max(each.first, free + (each.lines.length - 1) * LEADING);
    free = first + LEADING + APART;
    return { ...each, first };
  });
}

/** None above the top of the rod. */
function pushedDown(laid: readonly Laid[]): readonly Laid[] {
  let free = TOP - 1;
  return laid
    .toReversed()
    .map((each) => {
      const first = Math.min(each.first, free);
      free = first - each.lines.length * LEADING - APART;
      return { ...each, first };
    })
    .toReversed();
}

const APART = 0.35;

/** A levelling nut stands in the grout, close under its top. */
function spanOf({ name, isFlat }: StackLayer, low: number): Span {
  if (isFlat) return [low, low];
  if (name === "levelling") return [low - WASHER.height - NUT.height, low - WASHER.height];
  if (name === "stick-out") return [low, TOP];
  return [low, low + HEIGHTS[name]];
}

function drawStanding(
  request: SheetRequest,
  own: RodGroup,
  laid: readonly Laid[],
  frame: Frame,
  low: number,
): readonly SceneItem[] {
  const hidden = laid.filter(({ name }) => name === "washer" || name === "nut").map(({ span }) => span);
  const levelling = levellingItems(request, laid, frame);
  const cut: Span = [-3.2, -2.5];
  return [
    ...concreteItems(frame, [-CONCRETE, CONCRETE]),
    ...[-CONCRETE, CONCRETE].map((x) => strokeOf("fine", box(frame, [x, x], [FOOT, 0]).slice(1, 2))),
    breakLine(frame, [-CONCRETE, FOOT], [CONCRETE, FOOT]),
    ...laid.flatMap((each) => layerItems(each, frame)),
    ...levelling.items,
    ...rodItems(frame, [FOOT, TOP], threadLevel(request, own, laid), [...hidden, ...levelling.hidden, cut]),
    rodBreak(frame, cut),
    ...laid.flatMap((each) => wordsOf(each, frame, request.base.levelling)),
    captionItem(frame, CAPTION, 0, low - 2),
  ];
}

/** Thread that does not reach down to the seat of its nut ends above it; else in the grout, or in the concrete. */
function threadLevel({ base }: SheetRequest, { rod, ...group }: RodGroup, laid: readonly Laid[]): number {
  const { projection, threadLength } = rod;
  if (projection.kind === "missing" || threadLength.kind === "missing") return THREAD_END;
  const end = projection.value - threadLength.value;
  if (end < 0) return THREAD_DEEP;
  const seat = seatOfNut(base, group).reduce(
    (sum, { height }) => sum + (height.kind === "given" ? height.value : 0),
    0,
  );
  const isKnown = seatOfNut(base, group).every(({ height }) => height.kind === "given");
  const nut = laid.find(({ name }) => name === "nut");
  return isKnown && end > seat && nut !== undefined ? nut.span[1] + 0.6 : THREAD_END;
}

const THREAD_END = 1.4;
const THREAD_DEEP = -1.8;

function layerItems({ name, span }: Laid, frame: Frame): readonly SceneItem[] {
  switch (name) {
    case "grout":
      return [strokeOf("fine", box(frame, [-HALF, HALF], span))];
    case "setting plate":
      return sides(frame, span).map((corners) => fill("bar", ...corners));
    case "base plate":
      return BASE_PLATE.flatMap((part) => [
        strokeOf("outline", box(frame, part, span)),
        strokeOf("fine", hatch(frame, part, span)),
      ]);
    case "washer":
      return [washerItem(frame, span)];
    case "nut":
      return nutItems(frame, span);
    case "levelling":
    case "stick-out":
      return [];
  }
}

/** Cut faces at the left and the right of the hole. */
const BASE_PLATE: readonly Span[] = [
  [-HALF, -ROD - 0.6],
  [ROD + 0.6, HALF],
];

function sides(frame: Frame, [y0, y1]: Span) {
  const parts: readonly Span[] = [
    [-HALF, -ROD - 0.25],
    [ROD + 0.25, HALF],
  ];
  return parts.map(([x0, x1]) => [spot(frame, x0, y0), spot(frame, x1, y0), spot(frame, x1, y1), spot(frame, x0, y1)]);
}

/** Slanting lines from the lower to the upper edge. */
function hatch(frame: Frame, [x0, x1]: Span, [y0, y1]: Span) {
  const slope = (y1 - y0) * 0.8;
  const count = Math.max(1, Math.floor((x1 - x0 - slope) / 0.7));
  return Array.from({ length: count + 1 }, (_, i) => {
    const x = x0 + (i * (x1 - x0 - slope)) / count;
    return line(spot(frame, x, y0), spot(frame, x + slope, y1));
  });
}

interface Levelling {
  readonly items: readonly SceneItem[];
  /** Spans of the rod that it hides. */
  readonly hidden: readonly Span[];
}

/** A nut and its washer, shims, or a plate on the grout, as the job says. */
function levellingItems({ base }: SheetRequest, laid: readonly Laid[], frame: Frame): Levelling {
  const own = laid.find(({ name }) => name === "levelling");
  if (own === undefined || own.span[0] < 0 || base.levelling.kind === "missing") return { items: [], hidden: [] };
  const [low, high] = own.span;
  const top = high + WASHER.height;
  switch (base.levelling.value) {
    case "nuts":
      return { items: [...nutItems(frame, own.span), washerItem(frame, [high, top])], hidden: [[low, top]] };
    case "shims": {
      const shim = (x: number) => [top - 0.5, top - 1].flatMap((y) => box(frame, [x, x + 1.4], [y, y + 0.5]));
      return { items: [strokeOf("fine", [...shim(-3.9), ...shim(2.5)])], hidden: [] };
    }
    case "plate":
      return { items: [washerItem(frame, [high, top], HALF - 0.4)], hidden: [] };
  }
}

/** Right edges of what levels the base plate. */
const LEVELLED = { nuts: NUT.half, shims: 3.9, plate: HALF - 0.4 } as const;

/** Words of a layer, with a leader along it to its edge that bends beside the concrete. */
function wordsOf(
  { name, span, half, lines, first }: Laid,
  frame: Frame,
  levelling: Base["levelling"],
): readonly SceneItem[] {
  const level = (span[0] + span[1]) / 2;
  const middle = first + 0.5 - ((lines.length - 1) * LEADING) / 2;
  const edge = name === "levelling" ? (levelling.kind === "missing" ? HALF : LEVELLED[levelling.value]) : half;
  return [
    ...labelItems(frame, lines, WORDS, first),
    leaderItems(frame, [WORDS - 0.3, middle], [BEND, level], [edge, level]),
  ];
}
