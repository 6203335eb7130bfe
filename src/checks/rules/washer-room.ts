import type { Contour } from "../../geometry/index.js";
import { acrossCorners, twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Washer } from "../../job/model/job.js";
import { sweptAcross } from "../../template/reach.js";
import { columnContour, twiceOutside } from "../geometry/measure.js";
import { governingPairs, pairsThatFailAnyway } from "../geometry/pairs.js";
import { squareRoom, twiceAlongAxes, twiceToSquare } from "../geometry/square-washer.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { NamedMissing } from "../results.js";
import { compare, inBestCase, known, lacking, missingAmong, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { holeAndWasher, rodHoles, washerText, widestWasher } from "../rods.js";
import { BASE_HOLE, WASHER } from "../takes.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/**
 * Washers on the base plate clear each other and the column, each moved by the radial play of its hole. Square ones are held
 * with their sides along the base's axes, as they are drawn.
 */
export const washerRoom: Rule<"washer-room"> = {
  id: "washer-room",
  plainName: "room between washers",
  title:
    "spacing of two rods >= (W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2, of square washers along x or y; washers clear of the column",
  severity: "ask",
  measured: "the room for the washers on the base plate",
  takes: ["pattern", ...WASHER, ...BASE_HOLE, "column"],
  clause: () => "(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= s",
  edition: () => "geometry",
  check(context) {
    const rods = rodHoles(context);
    const washered = rods.map(withWasher);
    return [...lackingRows(rods), ...pairRows(context, washered), ...columnRows(context, washered)];
  },
};

interface Washered extends RodHole {
  readonly washer: Pick<Washer, "shape" | "size" | "series">;
  /** Play H - d in the base plate's hole. */
  readonly basePlay: number;
  /** What stands in at its best. */
  readonly missing: readonly NamedMissing[];
}

/** A washer that is not known covers its rod at least, and a hole takes it. */
function withWasher(rod: RodHole): Washered {
  const { tag, diameter, group } = rod;
  const { hole, washer } = holeAndWasher(group);
  return {
    ...rod,
    washer: washer.kind === "given" ? widestWasher(washer.value) : { shape: "round", size: diameter },
    basePlay: hole.kind === "given" ? hole.value - diameter : 0,
    missing: missingAmong({ [`hole of ${tag}`]: hole, [`washer of ${tag}`]: washer }),
  };
}

function isKnown({ missing }: Washered): boolean {
  return missing.length === 0;
}

/** Said of a row in which something stands in at its best. */
function atBest(missing: readonly NamedMissing[]): string {
  return missing.length === 0 ? "" : "what is not known no larger than its rod: ";
}

function lackingRows(rods: readonly RodHole[]): readonly RuleResult[] {
  return rods.flatMap(({ tag, group }) => {
    const needs = known(holeAndWasher(group));
    return needs.all ? [] : [lacking(tag, needs.missing)];
  });
}

/** What two washers are held by, doubled. */
interface Room {
  readonly value: number;
  readonly limit: number;
}

function pairRows({ job }: CheckContext, washered: readonly Washered[]): readonly RuleResult[] {
  if (washered.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
  const say = wordsIn(job.unit);
  const spare = (a: Washered, b: Washered) => {
    const { value, limit } = roomBetween(a, b);
    return value - limit;
  };
  const pairs = [
    ...governingPairs(washered.filter(isKnown), spare),
    ...pairsThatFailAnyway(washered, ({ missing }) => missing, spare),
  ];
  return pairs.map(({ first, second }) => pairRow(first, second, say));
}

function pairRow(a: Washered, b: Washered, say: Words): RuleResult {
  const { value, limit } = roomBetween(a, b);
  const { words, clause } = PAIR_WORDS[pairOf(a, b)];
  const missing = [...a.missing, ...b.missing];
  const play = `play (${say.length(a.basePlay)} + ${say.length(b.basePlay)}) / 2`;
  const note = `${atBest(missing)}${words(a, b, say)} + ${play}${cornersOf(a, b, say)}`;
  return inBestCase(compare(`${a.tag}-${b.tag}`, value, ">=", limit, note, { clause }), missing);
}

type PairKind = "round" | "square" | "round beside square";

function pairOf(a: Washered, b: Washered): PairKind {
  if (a.washer.shape !== b.washer.shape) return "round beside square";
  return a.washer.shape;
}

/** Squares lie with their sides along the base's axes; how much they reach when turned is told beside it. */
function roomBetween(a: Washered, b: Washered): Room {
  const play = a.basePlay + b.basePlay;
  switch (pairOf(a, b)) {
    case "round":
      return { value: twiceDistanceBetweenPoints(a.center, b.center), limit: a.washer.size + b.washer.size + play };
    case "square":
      return { value: twiceAlongAxes(a.center, b.center), limit: a.washer.size + b.washer.size + play };
    case "round beside square": {
      const [round, square] = a.washer.shape === "round" ? [a, b] : [b, a];
      const value = twiceToSquare(round.center, square.center, square.washer.size);
      return { value, limit: round.washer.size + play };
    }
  }
}

interface PairWords {
  readonly clause: string;
  readonly words: (a: Washered, b: Washered, say: Words) => string;
}

const bothHalf = (a: Washered, b: Washered, say: Words) =>
  `washers (${say.length(a.washer.size)} + ${say.length(b.washer.size)}) / 2`;

const PAIR_WORDS: Readonly<Record<PairKind, PairWords>> = {
  round: { clause: "(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= s", words: bothHalf },
  square: {
    clause: "(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= the larger of dx and dy",
    words: (a, b, say) => `square washers with their sides along the base's axes, ${bothHalf(a, b, say)}`,
  },
  "round beside square": {
    clause: "W1/2 + ((H1 - d1) + (H2 - d2))/2 <= rod to the square washer beside it",
    words: (a, b, say) => {
      const [round, square] = a.washer.shape === "round" ? [a, b] : [b, a];
      const beside = `square washer ${say.length(square.washer.size)} of ${square.tag}, its sides along the base's axes`;
      return `round washer ${say.length(round.washer.size)} / 2 of ${round.tag} beside ${beside}`;
    },
  },
};

/** What square washers do when they turn; reported, not held. */
function cornersOf(a: Washered, b: Washered, say: Words): string {
  if (pairOf(a, b) === "round") return "";
  const reach = sweptAcross(a.washer) + sweptAcross(b.washer) + a.basePlay + b.basePlay;
  const apart = twiceDistanceBetweenPoints(a.center, b.center);
  const meet = reach > apart ? "meet" : "stay clear";
  return `; turned, their corners reach ${say.twice(reach)} of ${say.twice(apart)} between the rods and ${meet}`;
}

const COLUMN_CLAUSE = "W/2 + (H - d)/2 <= distance to flange and web";

function columnRows({ job, base }: CheckContext, washered: readonly Washered[]): readonly RuleResult[] {
  if (base.column.kind === "missing") return [lacking("column", [base.column], { clause: COLUMN_CLAUSE })];
  const column = columnContour(base.column.value);
  return washered
    .map((rod) => ({ rod, row: besideColumn(rod, column, wordsIn(job.unit)) }))
    .filter(({ rod, row }) => isKnown(rod) || row.kind === "compared")
    .map(({ row }) => row);
}

/** A rod whose hole or washer is not known is held by its own width. */
function besideColumn({ tag, washer, basePlay, center, missing }: Washered, column: Contour, say: Words): RuleResult {
  const outside = twiceOutside(center, column);
  const twice = washer.shape === "round" || outside < 0 ? outside : squareRoom(center, column);
  const inside = twice < 0 ? "; the rod stands within the column's outline" : "";
  const along = washer.shape === "round" ? "" : ", along x or y, the washer's sides along the base's axes";
  const note =
    `${atBest(missing)}${washerText(washer, say.length)} / 2 + play ${say.length(basePlay)} / 2 against ${say.twice(twice)} ` +
    `to the column${along}, fillets and welds not taken${corner(washer, basePlay, outside, say)}${inside}`;
  const row = compare(`${tag}-column`, twice, ">=", washer.size + basePlay, note, { clause: COLUMN_CLAUSE });
  return inBestCase(row, missing);
}

function corner(washer: Washered["washer"], play: number, distance: number, say: Words): string {
  if (washer.shape === "round") return "";
  const reach = acrossCorners(washer.size) + play;
  return `; turned, its corner reaches ${say.twice(reach)}${reach > distance ? " and meets the column" : ""}`;
}
