import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Input, Missing } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { governingPairs, pairsThatFailAnyway } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { NamedMissing } from "../results.js";
import { compare, inBestCase, lacking, missingAmong, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, playOf, rodHoles } from "../rods.js";
import { HOLE, NUT } from "../takes.js";
import { wordsIn } from "../words.js";

/** Nuts of neighbouring rods clear each other by the shop's gap; a wrench or socket clears the neighbour's nut. */
export const nutRoom: Rule<"nut-room"> = {
  id: "nut-room",
  plainName: "room for nuts and wrench",
  title: "spacing of two rods >= (G1 + G2)/2 + mean play + gap, and room for a wrench or socket",
  severity: "stop",
  measured: "the spacing of two rods, for the room around their nuts on the template,",
  takes: ["pattern", ...HOLE, ...NUT, "rods.wrenchRoom"],
  clause: ({ job }) => `(G1 + G2)/2 + mean play + gap <= s; gap: ${job.shop.nutGap.from}`,
  edition: () => "shop",
  check(context) {
    if (isOverCastRods(context)) return [notForSettingPlate("plate")];
    const rods = rodHoles(context);
    if (rods.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
    return [...nutRows(context, rods), ...wrenchRows(context, rods)];
  },
};

/** A rod with the width of its nut across corners; of one that is not known the rod's own, which it is never less than. */
interface Fitted {
  readonly hole: RodHole;
  readonly across: number;
  readonly missing: readonly NamedMissing[];
}

function fittedOf(hole: RodHole): Fitted {
  const { nut } = hole.rod;
  const across = nut.kind === "given" ? nut.value.acrossCorners : hole.diameter;
  return { hole, across, missing: missingAmong({ [`nut of ${hole.tag}`]: nut }) };
}

function nutRows(context: CheckContext, rods: readonly RodHole[]): readonly RuleResult[] {
  const fitted = rods.map(fittedOf);
  const spare = (a: Fitted, b: Fitted) =>
    twiceDistanceBetweenPoints(a.hole.center, b.hole.center) - nutLimit(context, a, b);
  const known = fitted.filter(({ missing }) => missing.length === 0);
  const pairs = [...governingPairs(known, spare), ...pairsThatFailAnyway(fitted, ({ missing }) => missing, spare)];
  return [...lackingOf(rods, "nut"), ...pairs.map(({ first, second }) => nutPair(context, first, second))];
}

/** Twice the least spacing: G1 + G2 + both plays + two gaps. */
function nutLimit({ job }: CheckContext, a: Fitted, b: Fitted): number {
  return a.across + b.across + playOf(a.hole) + playOf(b.hole) + 2 * job.shop.nutGap.value;
}

function nutPair(context: CheckContext, a: Fitted, b: Fitted): RuleResult {
  const { job } = context;
  const say = wordsIn(job.unit);
  const missing = [...a.missing, ...b.missing];
  const nuts = missing.length === 0 ? "nuts" : "nuts no smaller than their rods";
  const note =
    `${nuts} (${say.length(a.across)} + ${say.length(b.across)}) / 2 ` +
    `+ mean play ${say.twice(playOf(a.hole) + playOf(b.hole))} + gap ${say.length(job.shop.nutGap.value)}`;
  const spacing = twiceDistanceBetweenPoints(a.hole.center, b.hole.center);
  return inBestCase(compare(`${a.hole.tag}-${b.hole.tag}`, spacing, ">=", nutLimit(context, a, b), note), missing);
}

/** A rod with what a wrench beside it meets, and the room that its own wrench takes, where one is named. */
interface Beside {
  readonly hole: RodHole;
  /** Width across: the nut's corners; of a rod whose nut is not known its own diameter, which it is never less than. */
  readonly across: number;
  readonly what: string;
  readonly room: Length | null;
}

function besideOf(hole: RodHole): Beside {
  const { nut, wrenchRoom } = hole.rod;
  const room = wrenchRoom.kind === "given" ? wrenchRoom.value : null;
  return nut.kind === "given"
    ? { hole, across: nut.value.acrossCorners, what: "nut", room }
    : { hole, across: hole.diameter, what: "bare rod", room };
}

/**
 * Every rod whose wrench is named against every other rod, also of groups that name none. A wrench is no narrower than its nut:
 * where none is named, the row of the nuts holds all that is certain.
 */
function wrenchRows(context: CheckContext, rods: readonly RodHole[]): readonly RuleResult[] {
  const spare = (a: Beside, b: Beside) => {
    const worst = wrenchBeside(a, b);
    return worst === null ? null : twiceDistanceBetweenPoints(a.hole.center, b.hole.center) - worst.limit;
  };
  const pairs = governingPairs(rods.map(besideOf), spare);
  return [
    ...lackingOf(rods, "wrenchRoom"),
    ...pairs.flatMap(({ first, second }) => {
      const worst = wrenchBeside(first, second);
      return worst === null ? [] : [wrenchPair(context, first, second, worst)];
    }),
  ];
}

interface WrenchBeside {
  readonly turned: Beside;
  readonly room: Length;
  readonly beside: Beside;
  /** Twice the least spacing. */
  readonly limit: number;
}

/** The wider of: wrench on the first beside the second, and the other way round; mean play both ways. null without a wrench. */
function wrenchBeside(a: Beside, b: Beside): WrenchBeside | null {
  const play = playOf(a.hole) + playOf(b.hole);
  const ways = [
    [a, b],
    [b, a],
  ].flatMap(([turned, beside]): WrenchBeside[] => {
    if (turned === undefined || beside === undefined || turned.room === null) return [];
    return [{ turned, room: turned.room, beside, limit: turned.room + beside.across + play }];
  });
  return ways.reduce<WrenchBeside | null>((most, way) => (most === null || way.limit > most.limit ? way : most), null);
}

/** Beside a rod whose nut is not known it is held where even the bare rod stands in the wrench's way. */
function wrenchPair({ job }: CheckContext, a: Beside, b: Beside, worst: WrenchBeside): RuleResult {
  const { turned, room, beside, limit } = worst;
  const say = wordsIn(job.unit);
  const subject = `${a.hole.tag}-${b.hole.tag}`;
  const spacing = twiceDistanceBetweenPoints(a.hole.center, b.hole.center);
  const own = { clause: "(wrench room + G)/2 + mean play <= s" };
  const { nut } = beside.hole.rod;
  if (nut.kind === "missing" && spacing >= limit) return lacking(subject, [nut], own);
  const note =
    `wrench room ${say.length(room)} on ${turned.hole.tag} beside ${beside.what} ${say.length(beside.across)} of ` +
    `${beside.hole.tag}, both / 2, + mean play ${say.twice(playOf(a.hole) + playOf(b.hole))}`;
  return compare(subject, spacing, ">=", limit, note, own);
}

/** One not-checked row for each group whose input is missing. */
function lackingOf(rods: readonly RodHole[], key: "nut" | "wrenchRoom"): readonly RuleResult[] {
  const groups = new Map(rods.map(({ group }) => [group.letter, group.rod[key] as Input<unknown>]));
  const missing = [...groups].filter((entry): entry is [string, Missing] => entry[1].kind === "missing");
  return missing.map(([letter, input]) => lacking(`group ${letter}`, [input]));
}
