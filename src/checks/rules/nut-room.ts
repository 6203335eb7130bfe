import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Input, Missing, Nut } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, playOf, rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

/** Nuts of neighbouring rods clear each other by the shop's gap; a wrench or socket clears the neighbour's nut. */
export const nutRoom: Rule = {
  id: "nut-room",
  title: "spacing of two rods >= (G1 + G2)/2 + mean play + gap, and room for a wrench or socket",
  severity: "stop",
  measured: "the spacing of two rods, for the room around their nuts on the template,",
  clause: ({ job }) => `(G1 + G2)/2 + mean play + gap <= s; gap: ${job.shop.nutGap.from}`,
  edition: () => "shop",
  check(context) {
    if (isOverCastRods(context)) return [notForSettingPlate("plate")];
    const rods = rodHoles(context);
    if (rods.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
    return [...nutRows(context, rods), ...wrenchRows(context, rods)];
  },
};

interface Fitted {
  readonly hole: RodHole;
  readonly nut: Nut;
}

function nutRows(context: CheckContext, rods: readonly RodHole[]): readonly RuleResult[] {
  const fitted = rods.flatMap((hole) => (hole.rod.nut.kind === "given" ? [{ hole, nut: hole.rod.nut.value }] : []));
  const limit = (a: Fitted, b: Fitted) => nutLimit(context, a, b);
  const pairs = governingPairs(
    fitted,
    (a, b) => twiceDistanceBetweenPoints(a.hole.center, b.hole.center) - limit(a, b),
  );
  return [
    ...lackingOf(rods, "nut"),
    ...pairs.map(({ first, second }) => nutPair(context, first, second, limit(first, second))),
  ];
}

/** Twice the least spacing: G1 + G2 + both plays + two gaps. */
function nutLimit({ job }: CheckContext, a: Fitted, b: Fitted): number {
  return a.nut.acrossCorners + b.nut.acrossCorners + playOf(a.hole) + playOf(b.hole) + 2 * job.shop.nutGap.value;
}

function nutPair({ job }: CheckContext, a: Fitted, b: Fitted, limit: number): RuleResult {
  const say = wordsIn(job.unit);
  const nuts = `nuts (${say.length(a.nut.acrossCorners)} + ${say.length(b.nut.acrossCorners)}) / 2`;
  const note = `${nuts} + mean play ${say.twice(playOf(a.hole) + playOf(b.hole))} + gap ${say.length(job.shop.nutGap.value)}`;
  return compare(
    `${a.hole.tag}-${b.hole.tag}`,
    twiceDistanceBetweenPoints(a.hole.center, b.hole.center),
    ">=",
    limit,
    note,
  );
}

interface Turned extends Fitted {
  readonly room: Length;
}

function wrenchRows(context: CheckContext, rods: readonly RodHole[]): readonly RuleResult[] {
  const turned = rods.flatMap((hole): Turned[] => {
    const { nut, wrenchRoom } = hole.rod;
    return nut.kind === "given" && wrenchRoom.kind === "given"
      ? [{ hole, nut: nut.value, room: wrenchRoom.value }]
      : [];
  });
  const pairs = governingPairs(
    turned,
    (a, b) => twiceDistanceBetweenPoints(a.hole.center, b.hole.center) - wrenchLimit(a, b),
  );
  return [...lackingOf(rods, "wrenchRoom"), ...pairs.map(({ first, second }) => wrenchPair(context, first, second))];
}

/** The wider of: wrench on the first beside the nut of the second, and the other way round. Mean play both ways. */
function wrenchLimit(a: Turned, b: Turned): number {
  const reach = Math.max(a.room + b.nut.acrossCorners, b.room + a.nut.acrossCorners);
  return reach + playOf(a.hole) + playOf(b.hole);
}

function wrenchPair({ job }: CheckContext, a: Turned, b: Turned): RuleResult {
  const say = wordsIn(job.unit);
  const [turned, beside] = a.room + b.nut.acrossCorners >= b.room + a.nut.acrossCorners ? [a, b] : [b, a];
  const note =
    `wrench room ${say.length(turned.room)} on ${turned.hole.tag} beside nut ${say.length(beside.nut.acrossCorners)} of ` +
    `${beside.hole.tag}, both / 2, + mean play ${say.twice(playOf(a.hole) + playOf(b.hole))}`;
  const spacing = twiceDistanceBetweenPoints(a.hole.center, b.hole.center);
  const clause = "(wrench room + G)/2 + mean play <= s";
  return compare(`${a.hole.tag}-${b.hole.tag}`, spacing, ">=", wrenchLimit(a, b), note, { clause });
}

/** One not-checked row for each group whose input is missing. */
function lackingOf(rods: readonly RodHole[], key: "nut" | "wrenchRoom"): readonly RuleResult[] {
  const groups = new Map(rods.map(({ group }) => [group.letter, group.rod[key] as Input<unknown>]));
  const missing = [...groups].filter((entry): entry is [string, Missing] => entry[1].kind === "missing");
  return missing.map(([letter, input]) => lacking(`group ${letter}`, [input]));
}
