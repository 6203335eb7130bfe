/** The rod, its template and what carries it, as they stand when the concrete is placed. Letter heights, see `Frame`. */
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Bottom, RodGroup } from "../job/model/job.js";
import { fill, strokeOf, text } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import {
  bearerItems,
  boardItems,
  box,
  breakLine,
  captionItem,
  concreteItems,
  extensionItem,
  type Figure,
  type Frame,
  LEADING,
  labelItems,
  leaderItems,
  NUT,
  nutItems,
  partLines,
  phraseLines,
  ROD,
  rodBreak,
  rodItems,
  type Span,
  spot,
  uprightItems,
  uprightReach,
  WASHER,
  washerItem,
  widestLine,
} from "./section-shapes.js";
import {
  bottomWords,
  embedmentWords,
  fastenerWords,
  lowerTemplateWords,
  projectionWords,
  rodWords,
  supportWords,
  templateWords,
  threadWords,
  undersideWords,
} from "./section-words.js";

/** Heights: top of the rod, underside of the template, its thickness. */
const TOP = 14.6;
const UNDERSIDE = 7.2;
const PLATE = 0.9;
const FACE = UNDERSIDE + PLATE;

/** Left ends of plate and concrete, the first dimension line, and where words at the right of the rod begin. */
const PLATE_LEFT = -5.4;
const CONCRETE_LEFT = -6;
const THREAD_LINE = -7;
const UNDERSIDE_LINE = 3.3;
const WORDS = 4;
/** Words in the concrete stand nearer to the rod. */
const DEEP_WORDS = 2.6;
const LEAST_DEPTH = 9;

/** What stands at the right, by what carries the template: inner face of the form, end of plate, end of everything. */
interface Right {
  readonly face: number;
  readonly plate: number;
  readonly end: number;
  /** Words beside the rod end here. */
  readonly words: number;
}

type Carried = "form" | "bearers" | "unknown" | "grout";

const RIGHT: Readonly<Record<Carried, Right>> = {
  form: { face: 14.2, plate: 16, end: 16, words: 13.8 },
  bearers: { face: 15.6, plate: 15.2, end: 17.4, words: 12.6 },
  unknown: { face: 14.2, plate: 14.2, end: 14.2, words: 13.8 },
  grout: { face: 14.2, plate: 13.6, end: 14.2, words: 13.2 },
};

const BEARER: Span = [13, 15];
const BEARER_FOOT = 4.4;

/** All that is worked out before it is drawn. */
interface Placed {
  readonly request: SheetRequest;
  readonly carried: Carried;
  readonly right: Right;
  readonly threadFrom: number;
  readonly washers: boolean;
  readonly deep: Deep;
  readonly thread: readonly string[];
  readonly projection: readonly string[];
  readonly embedment: readonly string[];
  readonly underside: readonly string[];
  readonly above: readonly string[];
  readonly template: readonly string[];
}

/** Words in the concrete, and how deep the rod is drawn for them. */
interface Deep {
  readonly support: readonly string[];
  readonly rod: readonly string[];
  readonly bottom: readonly string[];
  readonly lower: readonly string[];
  readonly depth: number;
  /** Right edge of what stands at the lower end of the rod. */
  readonly edge: number;
  /** How far above the lower end of the rod its embedment ends. */
  readonly anchored: number;
}

/** The figure for this rod, lettered `letter` millimetres high. */
export function placedFigure(request: SheetRequest, own: RodGroup, letter: number): Figure {
  const placed = workOut(request, own, letter);
  const { deep, right, template, above } = placed;
  const line = projectionLine(placed);
  const reach = Math.max(uprightReach(placed.projection), uprightReach(placed.embedment));
  const projection = END_GAP + widestLine(placed.projection, letter);
  const top = Math.max(TOP, projection, FACE + 0.5 + (template.length + above.length) * LEADING) + 0.6;
  const low = -deep.depth - BELOW_ROD;
  return {
    extent: {
      x0: (line - reach) * letter,
      x1: (right.end + 0.3) * letter,
      y0: (low - 2.4) * letter,
      y1: top * letter,
    },
    draw: (x, y) => drawPlaced(placed, { x, y, letter }, own, low),
  };
}

function workOut(request: SheetRequest, own: RodGroup, letter: number): Placed {
  const { template } = request.base;
  const over = isSetOverCastRods(template);
  const carried = over ? "grout" : template.support.kind === "missing" ? "unknown" : template.support.value;
  const right = RIGHT[carried];
  const threadFrom = over ? THREAD_ELSE : threadLevel(request, own);
  const deep = deepWords(request, own, right, over, letter);
  const beside = right.end - WORDS;
  return {
    request,
    carried,
    right,
    threadFrom,
    washers: !over && (request.job.shop.templateWasher.kind === "given" || template.material === "plywood"),
    deep,
    thread: partLines(threadWords(request, own), TOP - threadFrom - 0.6, letter),
    projection: partLines(projectionWords(request, own), TOP - 0.8, letter),
    embedment: partLines(embedmentWords(request, own), deep.depth - deep.anchored - 0.8, letter),
    underside: phraseLines(undersideWords(request), right.words - WORDS, letter),
    above: over ? [] : phraseLines(fastenerWords(request, own), beside, letter),
    template: phraseLines(templateWords(request), beside, letter),
  };
}

function deepWords(request: SheetRequest, own: RodGroup, right: Right, over: boolean, letter: number): Deep {
  const width = right.face - 0.8 - DEEP_WORDS;
  const support = over ? [] : phraseLines(supportWords(request), width, letter);
  const rod = phraseLines(rodWords(request, own), width, letter);
  const bottom = phraseLines(bottomWords(request, own), width, letter);
  const lower = over ? [] : phraseLines(lowerTemplateWords(request), width, letter);
  const lines = support.length + rod.length + bottom.length + lower.length;
  const anchored = anchoredAt(own.rod);
  const words = anchored + widestLine(embedmentWords(request, own), letter) + 1.4;
  const depth = Math.max(
    LEAST_DEPTH,
    words,
    SUPPORT_TOP + lines * LEADING + 0.4 + (lower.length === 0 ? 0 : LOWER_ROOM),
  );
  const edge = own.rod.bottom.kind === "missing" || own.rod.bottom.value.kind === "hook" ? ROD : NUT.half;
  return { support, rod, bottom, lower, depth, edge, anchored };
}

/** Depth that a lower template with its nuts takes beside its words, and its underside above the lower end. */
const LOWER_ROOM = 3;
const LOWER_LEVEL = 5.6;
/** Its half width: what shows of it beside the rod. */
const LOWER_HALF = 2;

/** Clear of an extension line. */
const END_GAP = 0.5;
/** Concrete that is drawn under the rod. */
const BELOW_ROD = 1.6;
/** First baseline of words under the top of concrete, below its stones. */
const SUPPORT_TOP = 2.6;
/** Upper faces of what anchors a rod, above its lower end. */
const ANCHOR: Readonly<Record<Bottom["kind"], number>> = { nut: 2.4, plate: 2.1, hook: 0, straight: 0, swedged: 0 };

/** A rod that is longer than projection and embedment has its embedment to what anchors it, else to its lower end. */
function anchoredAt({ length, projection, embedment, bottom }: RodGroup["rod"]): number {
  if (length.kind === "missing" || projection.kind === "missing" || embedment.kind === "missing") return 0;
  if (bottom.kind === "missing" || length.value <= projection.value + embedment.value) return 0;
  return ANCHOR[bottom.value.kind];
}

/** Where the thread ends that nobody gave. */
const THREAD_ELSE = 3.7;

/** End of the thread, in the order in which it lies to nuts, template and concrete. */
function threadLevel({ base, job }: SheetRequest, { rod }: RodGroup): number {
  const { projection, threadLength, nut } = rod;
  const { height, thickness } = base.template;
  if (projection.kind === "missing" || threadLength.kind === "missing") return THREAD_ELSE;
  const end = projection.value - threadLength.value;
  if (end <= 0) return end < 0 ? -2.4 : 0;
  if (height.kind === "missing") return THREAD_ELSE;
  const washer = job.shop.templateWasher;
  const washed = washer.kind === "given" && washer.value.thickness.kind === "given" ? washer.value.thickness.value : 0;
  const under = washed + (nut.kind === "given" ? nut.value.height : 0);
  if (end <= height.value - under) return THREAD_ELSE;
  if (end < height.value + thickness) return UNDERSIDE - 1;
  return TOP - 2.6;
}

function projectionLine({ thread }: Placed): number {
  return THREAD_LINE - uprightReach(thread) - 0.6;
}

function drawPlaced(placed: Placed, frame: Frame, own: RodGroup, low: number): readonly SceneItem[] {
  const { right, carried } = placed;
  const caption = carried === "grout" ? "WHEN THE PLATE IS SET" : "WHEN CONCRETE IS PLACED";
  const middle = Math.min((CONCRETE_LEFT + right.end) / 2, right.end - widestLine([caption], frame.letter) / 2);
  return [
    ...concreteItems(frame, [CONCRETE_LEFT, right.face]),
    breakLine(frame, [CONCRETE_LEFT, 0], [CONCRETE_LEFT, low]),
    breakLine(frame, [CONCRETE_LEFT, low], [right.face, low]),
    text("label", "T.O.C.", spot(frame, -1, 0.45), frame.letter, { anchor: "end" }),
    ...carrierItems(placed, frame, low),
    ...plateItems(placed, frame),
    ...rodAndNuts(placed, frame, own),
    ...dimensionItems(placed, frame),
    ...wordsAbove(placed, frame),
    ...wordsBelow(placed, frame),
    captionItem(frame, caption, middle, low - 2),
  ];
}

/** The form, the bearer across it, or the grout that the plate lies on. */
function carrierItems({ carried, right }: Placed, frame: Frame, low: number): readonly SceneItem[] {
  const board: Span = [right.face, right.end];
  switch (carried) {
    case "form":
      return boardItems(frame, board, [low, UNDERSIDE]);
    case "bearers":
      return [...boardItems(frame, board, [low, BEARER_FOOT]), ...bearerItems(frame, BEARER, [BEARER_FOOT, UNDERSIDE])];
    case "unknown":
      return [breakLine(frame, [right.face, low], [right.face, 0])];
    case "grout":
      return [
        breakLine(frame, [right.face, low], [right.face, 0]),
        strokeOf("fine", box(frame, [PLATE_LEFT, right.plate], [0, UNDERSIDE])),
      ];
  }
}

/** The template cut through its hole: steel in solid black, plywood by its plies. */
function plateItems({ request, right }: Placed, frame: Frame): readonly SceneItem[] {
  const sides: readonly Span[] = [
    [PLATE_LEFT, -ROD - 0.25],
    [ROD + 0.25, right.plate],
  ];
  return sides.flatMap(([x0, x1]): readonly SceneItem[] => {
    if (request.base.template.material === "steel")
      return [
        fill(
          "bar",
          ...[
            [x0, UNDERSIDE],
            [x1, UNDERSIDE],
            [x1, FACE],
            [x0, FACE],
          ].map(([a = 0, b = 0]) => spot(frame, a, b)),
        ),
      ];
    const plies = [1, 2].flatMap((i) => {
      const y = UNDERSIDE + (i * PLATE) / 3;
      return box(frame, [x0, x1], [y, y]).slice(0, 1);
    });
    return [strokeOf("outline", box(frame, [x0, x1], [UNDERSIDE, FACE])), strokeOf("fine", plies)];
  });
}

/** Spans of nuts and washers, from the lower nut up; none on a plate that is set over cast rods. */
function fasteners({ washers, carried }: Placed): {
  readonly nuts: readonly Span[];
  readonly washers: readonly Span[];
} {
  if (carried === "grout") return { nuts: [], washers: [] };
  const thick = washers ? WASHER.height : 0;
  const nuts: readonly Span[] = [
    [UNDERSIDE - thick - NUT.height, UNDERSIDE - thick],
    [FACE + thick, FACE + thick + NUT.height],
  ];
  if (!washers) return { nuts, washers: [] };
  return {
    nuts,
    washers: [
      [UNDERSIDE - thick, UNDERSIDE],
      [FACE, FACE + thick],
    ],
  };
}

function rodAndNuts(placed: Placed, frame: Frame, { rod }: RodGroup): readonly SceneItem[] {
  const { depth } = placed.deep;
  const { nuts, washers } = fasteners(placed);
  const end = lowerEnd(frame, rod, depth);
  const lower = placed.deep.lower.length === 0 ? NO_LOWER : lowerTemplate(frame, LOWER_LEVEL - depth);
  const low = lower === NO_LOWER ? -depth * 0.62 : (LOWER_LEVEL + LOWER_ROOM - depth) * 0.8;
  const cut: Span = [low, low + 0.7];
  return [
    ...rodItems(frame, [end.from, TOP], placed.threadFrom, [...nuts, ...washers, cut, ...lower.hidden, ...end.hidden]),
    rodBreak(frame, cut),
    ...nuts.flatMap((nut) => nutItems(frame, nut)),
    ...washers.map((washer) => washerItem(frame, washer)),
    ...lower.items,
    ...end.items,
  ];
}

type InConcrete = Pick<LowerEnd, "hidden" | "items">;

const NO_LOWER: InConcrete = { hidden: [], items: [] };

/** The lower template between its nuts, cut through its hole. */
function lowerTemplate(frame: Frame, underside: number): InConcrete {
  const face = underside + PLATE;
  const nuts: readonly Span[] = [
    [underside - NUT.height, underside],
    [face, face + NUT.height],
  ];
  const sides: readonly Span[] = [
    [-LOWER_HALF, -ROD - 0.25],
    [ROD + 0.25, LOWER_HALF],
  ];
  const plates = sides.map(([x0, x1]) => {
    const corners = [
      spot(frame, x0, underside),
      spot(frame, x1, underside),
      spot(frame, x1, face),
      spot(frame, x0, face),
    ];
    return fill("bar", ...corners);
  });
  return { hidden: nuts, items: [...plates, ...nuts.flatMap((nut) => nutItems(frame, nut))] };
}

interface LowerEnd {
  /** Where the rod's sides begin. */
  readonly from: number;
  readonly hidden: readonly Span[];
  readonly items: readonly SceneItem[];
}

/** A nut, a plate between two nuts, or a hook; where nothing is known the rod is cut short. */
function lowerEnd(frame: Frame, { bottom }: RodGroup["rod"], depth: number): LowerEnd {
  const foot = -depth;
  const flat = strokeOf("hole", box(frame, [-ROD, ROD], [foot, foot]).slice(0, 1));
  if (bottom.kind === "missing")
    return { from: foot, hidden: [], items: [breakLine(frame, [-1.1, foot], [1.1, foot])] };
  switch (bottom.value.kind) {
    case "straight":
    case "swedged":
      return { from: foot, hidden: [], items: [flat] };
    case "nut": {
      const nut: Span = [foot + 0.5, foot + ANCHOR.nut];
      return { from: foot, hidden: [nut], items: [...nutItems(frame, nut), flat] };
    }
    case "plate": {
      const low: Span = [foot + 0.3, foot + 1.5];
      const plate: Span = [foot + 1.5, foot + ANCHOR.plate];
      const high: Span = [foot + ANCHOR.plate, foot + 3.3];
      const items = [...nutItems(frame, low), washerItem(frame, plate, 2.3), ...nutItems(frame, high), flat];
      return { from: foot, hidden: [low, plate, high], items };
    }
    case "hook": {
      const parts = [
        ...box(frame, [-2.3, ROD], [foot, foot]).slice(0, 1),
        ...box(frame, [-2.3, -ROD], [foot + 2 * ROD, foot + 2 * ROD]).slice(0, 1),
      ];
      const ends = [
        ...box(frame, [-2.3, -2.3], [foot, foot + 2 * ROD]).slice(1, 2),
        ...box(frame, [ROD, ROD], [foot, foot + 2 * ROD]).slice(1, 2),
      ];
      return { from: foot + 2 * ROD, hidden: [], items: [strokeOf("hole", [...parts, ...ends])] };
    }
  }
}

/** Thread on the inner line; projection and embedment on the outer; the underside between concrete and template. */
function dimensionItems(placed: Placed, frame: Frame): readonly SceneItem[] {
  const { deep, threadFrom, thread, projection, embedment, underside } = placed;
  const outer = projectionLine(placed);
  const past = outer - 0.6;
  const foot = deep.anchored - deep.depth;
  const half = (lines: readonly string[]) => widestLine(lines, frame.letter) / 2 + END_GAP;
  const threadMiddle = Math.min((threadFrom + TOP) / 2, TOP - half(thread));
  const middle = Math.max(TOP / 2, half(projection));
  const high = (TOP_OF_UNDERSIDE + (underside.length - 1) * LEADING) / 2;
  return [
    extensionItem(frame, -ROD - 0.4, past, TOP),
    extensionItem(frame, CONCRETE_LEFT - 0.4, past, 0),
    extensionItem(frame, -2.7, past, foot),
    extensionItem(
      frame,
      -(threadFrom > UNDERSIDE - 2.5 && threadFrom < FACE ? NUT.half : ROD) - 0.4,
      THREAD_LINE - 0.4,
      threadFrom,
    ),
    uprightItems(frame, { x: THREAD_LINE, between: [threadFrom, TOP], lines: thread, middle: threadMiddle }),
    uprightItems(frame, { x: outer, between: [0, TOP], lines: projection, middle }),
    uprightItems(frame, { x: outer, between: [foot, 0], lines: embedment }),
    uprightItems(frame, { x: UNDERSIDE_LINE, between: [0, UNDERSIDE], lines: [] }),
    ...labelItems(frame, underside, WORDS, high),
  ];
}

/** Twice the baseline of the one line of words that stands in the middle of the underside's height. */
const TOP_OF_UNDERSIDE = UNDERSIDE - 1;

/** TOP at the left of the rod, what the plate is and what holds it at the right. */
function wordsAbove(placed: Placed, frame: Frame): readonly SceneItem[] {
  const { template, above } = placed;
  const first = FACE + 1.1 + (template.length - 1) * LEADING;
  const upper = first + above.length * LEADING;
  const nut = fasteners(placed).nuts[1];
  return [
    text("label", "TOP", spot(frame, -3.9, FACE + 2), frame.letter, { anchor: "middle", bold: true }),
    leaderItems(frame, [-3.9, FACE + 1.7], [-3.9, FACE]),
    ...labelItems(frame, template, WORDS, first),
    leaderItems(frame, [WORDS - 0.3, FACE + 1.6], [2.8, FACE]),
    ...labelItems(frame, above, WORDS, upper),
    ...(nut === undefined ? [] : [leaderItems(frame, [WORDS - 0.3, first + LEADING + 0.5], [NUT.half, nut[1] - 0.6])]),
  ];
}

/** What carries the template, what the rod is, and its lower end. */
function wordsBelow({ deep, carried, right }: Placed, frame: Frame): readonly SceneItem[] {
  const { support, rod, bottom, lower, depth, edge } = deep;
  const rodTop = -SUPPORT_TOP - support.length * LEADING - 0.8;
  const end = DEEP_WORDS + widestLine(support.slice(0, 1), frame.letter) + 0.3;
  const level = -SUPPORT_TOP + 0.5;
  const carrier = {
    form: [leaderItems(frame, [end, level], [right.face, level])],
    bearers: [leaderItems(frame, [end, level], [(BEARER[0] + BEARER[1]) / 2, BEARER_FOOT])],
    unknown: [],
    grout: [],
  }[carried];
  return [
    ...labelItems(frame, support, DEEP_WORDS, -SUPPORT_TOP),
    ...carrier,
    ...labelItems(frame, rod, DEEP_WORDS, rodTop),
    leaderItems(frame, [DEEP_WORDS - 0.3, rodTop + 0.5], [ROD, rodTop + 0.5]),
    ...lowerItems(frame, lower, depth, bottom.length),
    ...labelItems(frame, bottom, DEEP_WORDS, -depth + 0.2 + (bottom.length - 1) * LEADING),
    leaderItems(frame, [DEEP_WORDS - 0.3, -depth + 0.7], [edge, -depth + 0.7]),
  ];
}

/** The words of the lower template above those of the lower end, from its plate. */
function lowerItems(frame: Frame, lower: readonly string[], depth: number, under: number): readonly SceneItem[] {
  if (lower.length === 0) return [];
  const least = 0.2 + under * LEADING + (lower.length - 1) * LEADING + 0.4;
  const first = Math.max(least, LOWER_LEVEL) - depth;
  const from = [DEEP_WORDS - 0.3, first + 0.5] as const;
  return [
    ...labelItems(frame, lower, DEEP_WORDS, first),
    leaderItems(frame, from, [LOWER_HALF - 0.3, LOWER_LEVEL + PLATE / 2 - depth]),
  ];
}
