import { twiceDepthInside } from "../../geometry/index.js";
import type { Input, Washer } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import type { SizedPart } from "../../template/model.js";
import { isSized } from "../../template/model.js";
import { sweptAcross } from "../../template/reach.js";
import { twiceOutside } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, missingAmong } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, perRod, playOf } from "../rods.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Nut or washer on the template, moved by the radial play, stays on the plate and off the opening. */
export const seatOnPlate: Rule<"seat-on-plate"> = {
  id: "seat-on-plate",
  plainName: "seat of nut on template",
  title: "centre of a rod to edge or opening >= half the nut or washer + radial play",
  severity: "stop",
  measured: "the room for the nut or washer on the template",
  takes: PLATE,
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

/** A nut that is not known is no narrower than its rod; a washer may be no wider than the nut. */
function seat(context: CheckContext, rodHole: RodHole): RuleResult {
  const { shop, unit } = context.job;
  const { nut } = rodHole.rod;
  const bare = context.base.template.material === "steel" && shop.templateWasher.kind === "missing";
  const washer: Input<Washer | null> = bare ? given(null, "") : shop.templateWasher;
  const least: Seat =
    nut.kind === "given"
      ? { across: nut.value.acrossCorners, name: "nut across corners" }
      : { across: rodHole.diameter, name: "nut no narrower than rod" };
  const { across, name } = widest(least, washer.kind === "given" ? washer.value : null);
  const { part, to, twice } = nearest(context, rodHole);
  const say = wordsIn(unit);
  const note = `${name} ${say.length(across)} / 2 + play ${say.length(playOf(rodHole))} / 2, rod to ${to} ${say.twice(twice)}`;
  const row = compare(rodHole.tag, twice, ">=", across + playOf(rodHole), note, {
    chosen: isSized(context.plate, part),
  });
  return inBestCase(row, missingAmong({ nut, washer }));
}

/** A square washer may turn: its corner governs. The nut governs where it is wider than the washer. */
function widest(nut: Seat, washer: Washer | null): Seat {
  if (washer === null) return nut;
  const across = sweptAcross(washer);
  const name = washer.shape === "square" ? "corner to corner of the square washer" : "washer";
  return across > nut.across ? { across, name } : nut;
}

interface Nearest {
  readonly part: SizedPart;
  readonly to: string;
  readonly twice: number;
}

function nearest({ plate }: CheckContext, rodHole: RodHole): Nearest {
  const edge: Nearest = {
    part: "outline",
    to: "the edge",
    twice: twiceDepthInside(rodHole.center, plate.region.outer),
  };
  return plate.holes.reduce<Nearest>((least, hole) => {
    if (hole.role !== "opening") return least;
    const twice = twiceOutside(rodHole.center, hole.contour);
    return twice < least.twice ? { part: "opening", to: hole.tag, twice } : least;
  }, edge);
}
