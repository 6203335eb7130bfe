import type { Input } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import { extraThread, findElevation } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { formatWithUnit, nanometres } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles, staysInPlace } from "../rods.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

const LOW = "stack on the rod, with the rod set low by the elevation tolerance";

/** The rod stands high enough for all that goes on it, as specified and when it is set low. */
export const projection: Rule = {
  id: "projection",
  title: "projection >= grout + plates + washer + nut + stick-out, also with the rod low by its tolerance",
  severity: "ask",
  measured: "the projection of the rod",
  clause: () => "stack on the rod, from the specified T.O.C.",
  edition: () => "geometry",
  check(context) {
    const rods = rodHoles(context);
    return [asSpecified, setLow].flatMap((row) => rods.map((rod) => row(context, rod)));
  },
};

interface Stack {
  readonly grout: Length;
  readonly plate: Length;
  readonly washer: Length;
  readonly nut: Length;
  readonly stickOut: Length;
  readonly template: Length;
  readonly projection: Length;
}

/** A levelling nut stands inside the grout. */
function stackOf(context: CheckContext, { group, rod }: RodHole) {
  const { base, plate } = context;
  const nut: Input<Length> = rod.nut.kind === "given" ? given(rod.nut.value.height, rod.nut.from) : rod.nut;
  return known({
    projection: rod.projection,
    grout: base.grout,
    template: given(staysInPlace(context) ? plate.thickness : nanometres(0), "the plate"),
    plate: base.basePlate.thickness,
    washer: group.washer.kind === "given" ? group.washer.value.thickness : group.washer,
    nut,
    stickOut: rod.stickOut,
  });
}

function heightOf(stack: Stack): number {
  return stack.grout + stack.template + stack.plate + stack.washer + stack.nut + stack.stickOut;
}

function stackText(stack: Stack, say: Words): string {
  const left = stack.template === 0 ? "" : ` + setting plate ${say.length(stack.template)}`;
  return (
    `grout ${say.length(stack.grout)}${left} + base plate ${say.length(stack.plate)} + washer ${say.length(stack.washer)} + ` +
    `nut ${say.length(stack.nut)} + stick-out ${say.length(stack.stickOut)}`
  );
}

function asSpecified(context: CheckContext, rodHole: RodHole): RuleResult {
  const needs = stackOf(context, rodHole);
  if (!needs.all) return lacking(rodHole.tag, needs.missing);
  const stack = needs.values;
  const say = wordsIn(context.job.unit);
  const note = `${say.length(stack.projection)} against ${stackText(stack, say)}${threadText(context, rodHole, stack, say)}`;
  return compare(rodHole.tag, 2 * stack.projection, ">=", 2 * heightOf(stack), note);
}

/** Thread is needed down to the underside of the nut on the plate, or of the levelling nut where there is one. */
function threadText({ base }: CheckContext, { rod }: RodHole, stack: Stack, say: Words): string {
  if (rod.threadLength.kind === "missing") return "";
  const toPlate = stack.projection - heightOf(stack) + stack.nut + stack.stickOut;
  const nuts = base.levelling.kind === "given" && base.levelling.value === "nuts";
  const toLevelling = stack.washer + stack.plate + stack.template + stack.washer + stack.nut;
  const spare = rod.threadLength.value - (nuts ? toPlate + toLevelling : toPlate);
  const said = spare < 0 ? `${say.length(-spare)} short of what is needed` : `${say.length(spare)} more than needed`;
  return `; thread ${said}, Design Guide 1 advises ${formatWithUnit(extraThread.value, "in")} more`;
}

function setLow(context: CheckContext, rodHole: RodHole): RuleResult {
  const { placing } = context.job.editions;
  const needs = stackOf(context, rodHole);
  const found = findElevation(placing);
  const own = { clause: LOW, edition: placing };
  if (!needs.all) return lacking(rodHole.tag, needs.missing, own);
  if (!found.found) return notChecked(rodHole.tag, `${placing}: no tolerance of rod tops is tabulated`, own);
  const stack = needs.values;
  const say = wordsIn(context.job.unit);
  const note = `${say.length(stack.projection)} - ${say.length(found.row.low)} low (${found.clause}) against ${stackText(stack, say)}`;
  return compare(rodHole.tag, 2 * (stack.projection - found.row.low), ">=", 2 * heightOf(stack), note, own);
}
