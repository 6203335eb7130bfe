/**
 * A rod in its template as the carpenter measures it: nuts on both faces, height of the template above the concrete, and from
 * the template to the top of the rod. Not to scale. Places in letter heights, see `Frame`.
 */
import type { RodGroup } from "../../job/model/job.js";
import { fill, strokeOf, text } from "../items.js";
import type { SheetRequest } from "../request.js";
import type { SceneItem } from "../scene.js";
import {
  box,
  breakLine,
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
  rodItems,
  type Span,
  spot,
  uprightItems,
  uprightReach,
  WASHER,
  washerItem,
  widestLine,
} from "../section-shapes.js";
import {
  fastenerWords,
  lengthWords,
  type Phrase,
  projectionWords,
  templateWords,
  undersideWords,
} from "../section-words.js";
import { spellingOf } from "../spelling.js";
import { gaugeFromTop, rodTopRange } from "./gauge.js";

const UNDERSIDE = 9.4;
const PLATE = 1;
const FACE = UNDERSIDE + PLATE;
const LEAST_TOP = 20;
const FOOT = -3;
const PLATE_LEFT = -4.6;
const PLATE_RIGHT = 4.6;
const CONCRETE: Span = [-5.4, 5];
const INNER_LINE = -6.2;
const WORDS = 5.8;
const WORDS_WIDTH = 11;

interface Laid {
  readonly request: SheetRequest;
  readonly top: number;
  readonly gauge: readonly string[];
  readonly underside: readonly string[];
  readonly projection: readonly string[];
  /** Lines at the right: of the upper nut, the template and the lower nut. */
  readonly labels: readonly (readonly string[])[];
  readonly washers: boolean;
}

/** The figure for a rod of this group, lettered `letter` millimetres high. */
export function gaugeFigure(request: SheetRequest, own: RodGroup, letter: number): Figure {
  const laid = layOut(request, own, letter);
  const outer = outerLine(laid);
  return {
    extent: {
      x0: (outer - uprightReach(laid.projection)) * letter,
      x1: (WORDS + widestLine(laid.labels.flat(), letter) + 0.2) * letter,
      y0: (FOOT - 0.6) * letter,
      y1: (laid.top + 0.6) * letter,
    },
    draw: (x, y) => drawLaid(laid, { x, y, letter }),
  };
}

function layOut(request: SheetRequest, own: RodGroup, letter: number): Laid {
  const { shop } = request.job;
  const words = gaugeWords(request, own);
  const longest = Math.max(widestLine(partLines(words, 0, letter), letter), LEAST_TOP - FACE - 0.8);
  const gauge = partLines(words, longest, letter);
  const projection = partLines(projectionWords(request, own), FACE + longest, letter);
  const [nut = "NUT", ...washer] = fastenerWords(request, own).filter((part) => !/^(ON BOTH|FACES)$/.test(part));
  const label = (phrase: Phrase) => phraseLines(phrase, WORDS_WIDTH, letter);
  return {
    request,
    top: FACE + longest + 0.8,
    gauge,
    underside: partLines(undersideWords(request), UNDERSIDE - 0.8, letter),
    projection,
    labels: [
      label([nut, ...washer, "ABOVE, TIGHT"]),
      label([...templateWords(request), "TOP UP"]),
      label([nut, ...washer, "BELOW, TIGHT"]),
    ],
    washers: shop.templateWasher.kind === "given" || request.base.template.material === "plywood",
  };
}

/** `GAUGE 5-3/4`, and what the tolerance of rod tops makes of it. */
function gaugeWords(request: SheetRequest, own: RodGroup): Phrase {
  const gauge = gaugeFromTop(request.base, own);
  return lengthWords(spellingOf(request.job.editions).gauge, gauge, request.job.unit, rodTopRange(request, gauge));
}

function outerLine({ gauge, underside }: Laid): number {
  return INNER_LINE - Math.max(uprightReach(gauge), uprightReach(underside)) - 0.7;
}

function drawLaid(laid: Laid, frame: Frame): readonly SceneItem[] {
  const { top, request } = laid;
  return [
    ...concreteItems(frame, CONCRETE),
    breakLine(frame, [CONCRETE[0], FOOT], [CONCRETE[1], FOOT]),
    text("label", "T.O.C.", spot(frame, -1, 0.45), frame.letter, { anchor: "end" }),
    ...plateItems(request, frame),
    ...fastened(laid, frame, top),
    ...dimensions(laid, frame),
    ...labelled(laid, frame),
  ];
}

function plateItems({ base }: SheetRequest, frame: Frame): readonly SceneItem[] {
  const sides: readonly Span[] = [
    [PLATE_LEFT, -ROD - 0.25],
    [ROD + 0.25, PLATE_RIGHT],
  ];
  const face: Span = [UNDERSIDE, FACE];
  if (base.template.material === "plywood") return sides.map((side) => strokeOf("outline", box(frame, side, face)));
  return sides.map(([x0, x1]) =>
    fill("bar", spot(frame, x0, face[0]), spot(frame, x1, face[0]), spot(frame, x1, face[1]), spot(frame, x0, face[1])),
  );
}

interface Fastened {
  readonly nuts: readonly [Span, Span];
  readonly washers: readonly Span[];
}

/** Lower nut, upper nut, and their washers. */
function spansOf({ washers }: Laid): Fastened {
  const thick = washers ? WASHER.height : 0;
  return {
    nuts: [
      [UNDERSIDE - thick - NUT.height, UNDERSIDE - thick],
      [FACE + thick, FACE + thick + NUT.height],
    ],
    washers: washers
      ? [
          [UNDERSIDE - thick, UNDERSIDE],
          [FACE, FACE + thick],
        ]
      : [],
  };
}

/** Where the thread is drawn to end: below the lower nut, not to scale. */
const THREAD = 4;

function fastened(laid: Laid, frame: Frame, top: number): readonly SceneItem[] {
  const { nuts, washers } = spansOf(laid);
  return [
    ...rodItems(frame, [FOOT, top], THREAD, [...nuts, ...washers]),
    ...nuts.flatMap((nut) => nutItems(frame, nut)),
    ...washers.map((washer) => washerItem(frame, washer)),
  ];
}

function dimensions(laid: Laid, frame: Frame): readonly SceneItem[] {
  const { top, gauge, underside, projection } = laid;
  const outer = outerLine(laid);
  return [
    extensionItem(frame, -ROD - 0.4, outer - 0.6, top),
    extensionItem(frame, PLATE_LEFT - 0.3, INNER_LINE - 0.6, FACE),
    extensionItem(frame, PLATE_LEFT - 0.3, INNER_LINE - 0.6, UNDERSIDE),
    extensionItem(frame, CONCRETE[0] - 0.3, outer - 0.6, 0),
    uprightItems(frame, { x: INNER_LINE, between: [FACE, top], lines: gauge }),
    uprightItems(frame, { x: INNER_LINE, between: [0, UNDERSIDE], lines: underside }),
    uprightItems(frame, { x: outer, between: [0, top], lines: projection }),
  ];
}

/** Words at the right, each with a leader to what it names. */
function labelled(laid: Laid, frame: Frame): readonly SceneItem[] {
  const [above = [], plate = [], below = []] = laid.labels;
  const { nuts } = spansOf(laid);
  const high = (lines: readonly string[]) => (lines.length - 1) * LEADING;
  const first = { plate: (UNDERSIDE + FACE) / 2 - 0.5 + high(plate) / 2, above: 0, below: 0 };
  first.above = Math.max(nuts[1][1] + 0.4, first.plate + LEADING + 0.6) + high(above);
  first.below = Math.min(nuts[0][0] - 0.4, first.plate - high(plate) - LEADING - 0.6);
  const led = (lines: readonly string[], at: number, to: readonly [number, number]) => [
    ...labelItems(frame, lines, WORDS, at),
    leaderItems(frame, [WORDS - 0.3, at + 0.5 - high(lines) / 2], to),
  ];
  return [
    ...led(above, first.above, [NUT.half, (nuts[1][0] + nuts[1][1]) / 2 + 0.3]),
    ...led(plate, first.plate, [PLATE_RIGHT, (UNDERSIDE + FACE) / 2]),
    ...led(below, first.below, [NUT.half, (nuts[0][0] + nuts[0][1]) / 2 - 0.3]),
  ];
}
