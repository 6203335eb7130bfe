import type { Contour, Extent } from "../../geometry/index.js";
import type { PlanShape } from "../../job/model/job.js";
import type { Plate } from "../../template/model.js";
import { twiceChordBearing, twiceExtent, twiceFarthest, twiceRoundBearing } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notApplicable, notChecked } from "../results.js";
import { isOverCastRods } from "../rods.js";
import { wordsIn } from "../words.js";

/** The template is carried by the form on two opposite sides, or by bearers across it with a gap all round. */
export const templateInForm: Rule<"template-in-form"> = {
  id: "template-in-form",
  title: "template bears on two opposite sides of the form, or clears it all round when carried by bearers",
  severity: "stop",
  measured: "the bearing of the template on the form, or its gap inside it,",
  clause: ({ job, base }) =>
    base.template.support.kind === "given" && base.template.support.value === "bearers"
      ? `gap inside the form: ${job.shop.formGap.from}`
      : `bearing on the form: ${job.shop.bearing.from}`,
  edition: () => "shop",
  check(context) {
    const { base } = context;
    if (isOverCastRods(context)) return [notApplicable("plate", "the plate is set over cast rods: no form carries it")];
    const needs = known({ support: base.template.support, shape: base.concrete.shape });
    if (!needs.all) return [lacking("plate", needs.missing)];
    const { support, shape } = needs.values;
    return [support === "form" ? carriedByForm(context, shape) : insideForm(context, shape)];
  },
};

/** The better of the two directions; in each, the lesser of two opposite sides. */
function carriedByForm(context: CheckContext, shape: PlanShape): RuleResult {
  const { job, base, plate } = context;
  const { outer } = plate.region;
  const { bearing } = job.shop;
  const say = wordsIn(job.unit);
  const found =
    shape.kind === "circle" ? onRoundForm(plate, shape.diameter, base) : onStraightForm(context, outer, shape);
  if (found === null) {
    return notChecked("plate", "the plate has no corner in one quarter of the round form: its bearing is not measured");
  }
  const bears =
    found.twice < 0 ? `falls short of the form by ${say.twice(-found.twice)}` : `bears ${say.twice(found.twice)}`;
  const note = `${found.how}: ${bears} on opposite sides, ${say.length(bearing.value)} asked for`;
  return compare("plate", found.twice, ">=", 2 * bearing.value, note);
}

interface Bearing {
  readonly twice: number;
  readonly how: string;
}

function onStraightForm({ base }: CheckContext, outer: Contour, shape: PlanShape): Bearing {
  const [plate, form] = [twiceExtent(outer), twiceFormExtent(shape, base.concrete.at)];
  const x = Math.min(form.x0 - plate.x0, plate.x1 - form.x1);
  const y = Math.min(form.y0 - plate.y0, plate.y1 - form.y1);
  return x >= y ? { twice: x, how: "along x" } : { twice: y, how: "along y" };
}

/** A round plate with a notch as its key bears like a whole one on two sides that the notch is not on. */
function onRoundForm({ region, keyed }: Plate, diameter: number, { concrete }: CheckContext["base"]): Bearing | null {
  const { outer } = region;
  const round = keyed?.bare ?? outer;
  if (round.kind === "circle") {
    const how = keyed === null ? "round plate on a round form" : "round plate on a round form, beside its key";
    return { twice: twiceRoundBearing(round, concrete.at, diameter), how };
  }
  if (outer.kind === "circle") return null;
  const twice = twiceChordBearing(outer, concrete.at, diameter);
  return twice === null ? null : { twice, how: "corners past the chords of the round form" };
}

function insideForm({ job, base, plate }: CheckContext, shape: PlanShape): RuleResult {
  const { formGap } = job.shop;
  const outer = plate.keyed?.bare.kind === "circle" ? plate.keyed.bare : plate.region.outer;
  const twice =
    shape.kind === "circle"
      ? shape.diameter - twiceFarthest(outer, base.concrete.at)
      : leastGap(twiceExtent(outer), twiceFormExtent(shape, base.concrete.at));
  const say = wordsIn(job.unit);
  const note = `gap ${say.twice(twice)} between template and form where it is least, ${say.length(formGap.value)} asked for`;
  return compare("plate", twice, ">=", 2 * formGap.value, note);
}

function leastGap(plate: Extent, form: Extent): number {
  return Math.min(plate.x0 - form.x0, form.x1 - plate.x1, plate.y0 - form.y0, form.y1 - plate.y1);
}

/** Inner faces of a straight form, doubled nanometres: exact, since twice a half side is the side. */
function twiceFormExtent(shape: PlanShape, at: { readonly x: number; readonly y: number }): Extent {
  const [x, y] = shape.kind === "circle" ? [shape.diameter, shape.diameter] : [shape.x, shape.y];
  return { x0: 2 * at.x - x, y0: 2 * at.y - y, x1: 2 * at.x + x, y1: 2 * at.y + y };
}
