import { twiceDepthInside } from "../../geometry/index.js";
import type { Washer } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import { sweptAcross } from "../../template/reach.js";
import { twiceOutside } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, perRod, playOf } from "../rods.js";
import { wordsIn } from "../words.js";

/** Nut or washer on the template, moved by the radial play, stays on the plate and off the opening. */
export const seatOnPlate: Rule = {
  id: "seat-on-plate",
  title: "centre of a rod to edge or opening >= half the nut or washer + radial play",
  severity: "stop",
  measured: "the room for the nut or washer on the template",
  clause: () => "W/2 + (h - d)/2 <= distance to edge and opening",
  edition: () => "geometry",
  check: (context) =>
    isOverCastRods(context) ? [notForSettingPlate("plate")] : perRod(context, (rod) => seat(context, rod)),
};

interface Seat {
  /** Diameter of the circle it sweeps when it turns. */
  readonly across: number;
  readonly name: string;
}

function seat(context: CheckContext, rodHole: RodHole): RuleResult {
  const { shop, unit } = context.job;
  const bare = context.base.template.material === "steel" && shop.templateWasher.kind === "missing";
  const needs = known({ nut: rodHole.rod.nut, washer: bare ? given(null, "") : shop.templateWasher });
  if (!needs.all) return lacking(rodHole.tag, needs.missing);
  const { across, name } = widest(needs.values.nut.acrossCorners, needs.values.washer);
  const { to, twice } = nearest(context, rodHole);
  const say = wordsIn(unit);
  const note = `${name} ${say.length(across)} / 2 + play ${say.length(playOf(rodHole))} / 2, rod to ${to} ${say.twice(twice)}`;
  return compare(rodHole.tag, twice, ">=", across + playOf(rodHole), note);
}

/** A square washer may turn: its corner governs. The nut governs where it is wider than the washer. */
function widest(acrossCorners: number, washer: Washer | null): Seat {
  const nut: Seat = { across: acrossCorners, name: "nut across corners" };
  if (washer === null) return nut;
  const across = sweptAcross(washer);
  const name = washer.shape === "square" ? "corner to corner of the square washer" : "washer";
  return across > nut.across ? { across, name } : nut;
}

function nearest({ plate }: CheckContext, rodHole: RodHole): { readonly to: string; readonly twice: number } {
  const edge = { to: "the edge", twice: twiceDepthInside(rodHole.center, plate.region.outer) };
  return plate.holes.reduce((least, hole) => {
    if (hole.role !== "opening") return least;
    const twice = twiceOutside(rodHole.center, hole.contour);
    return twice < least.twice ? { to: hole.tag, twice } : least;
  }, edge);
}
