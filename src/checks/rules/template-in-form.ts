import type { Contour, Extent, Point } from "../../geometry/index.js";
import { toLattice } from "../../geometry/index.js";
import type { Offset, PlanShape, Support } from "../../job/model/job.js";
import { patternCenter } from "../../template/auto-outline.js";
import type { Plate } from "../../template/model.js";
import { isSized } from "../../template/model.js";
import { twiceCornerBearing, twiceSideBearing } from "../geometry/form-bearing.js";
import type { GapAt } from "../geometry/gap-inside.js";
import { leastGapInside } from "../geometry/gap-inside.js";
import { planContour, twiceChordBearing, twiceExtent, twiceRoundBearing, wholeOutline } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { NamedMissing } from "../results.js";
import { compare, inBestCase, lacking, missingAmong, notApplicable, notChecked, spareOf } from "../results.js";
import { isOverCastRods } from "../rods.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** The template is carried by the form on two opposite sides, or by bearers across it with a gap all round. */
export const templateInForm: Rule<"template-in-form"> = {
  id: "template-in-form",
  plainName: "bearing or gap in form",
  title: "template bears on two opposite sides of the form, or clears it all round when carried by bearers",
  severity: "stop",
  measured: "the bearing of the template on the form, or its gap inside it,",
  takes: PLATE,
  clause: ({ job, base }) =>
    base.template.support.kind === "given" && base.template.support.value === "bearers"
      ? `gap inside the form: ${job.shop.formGap.from}`
      : `bearing on the form: ${job.shop.bearing.from}`,
  edition: () => "shop",
  check(context) {
    const { base } = context;
    if (isOverCastRods(context)) return [notApplicable("plate", "the plate is set over cast rods: no form carries it")];
    const inputs = { support: base.template.support, shape: base.concrete.shape };
    const { support, shape } = inputs;
    if (shape.kind === "missing")
      return [
        lacking(
          "plate",
          missingAmong(inputs).map(({ input }) => input),
        ),
      ];
    if (support.kind === "missing") return [heldEitherWay(context, shape.value, missingAmong({ support }))];
    return [CARRIED[support.value](context, shape.value)];
  },
};

const CARRIED: Readonly<Record<Support, (context: CheckContext, shape: PlanShape) => RuleResult>> = {
  form: carriedByForm,
  bearers: insideForm,
};

/** Whichever carries it, the way in which it lacks less decides: what fails so fails. */
function heldEitherWay(context: CheckContext, shape: PlanShape, missing: readonly NamedMissing[]): RuleResult {
  const { bearing, formGap } = context.job.shop;
  const onForm = { ...carriedByForm(context, shape), clause: `bearing on the form: ${bearing.from}` };
  const onBearers = { ...insideForm(context, shape), clause: `gap inside the form: ${formGap.from}` };
  const [form, bearers] = [spareOf(onForm), spareOf(onBearers)];
  if (form === null || bearers === null)
    return lacking(
      "plate",
      missing.map(({ input }) => input),
    );
  const [less, more] = form >= bearers ? [onForm, onBearers] : [onBearers, onForm];
  return inBestCase({ ...less, note: `${less.note}; else, ${more.note}` }, missing);
}

/** The better of the ways in which it may bear; in each, the least of the places it needs. */
function carriedByForm(context: CheckContext, shape: PlanShape): RuleResult {
  const { job, base, plate } = context;
  const { bearing } = job.shop;
  const say = wordsIn(job.unit);
  const found = shape.kind === "circle" ? onRoundForm(plate, shape.diameter, base) : onStraightForm(context, shape);
  if (found === null) {
    return notChecked("plate", "the plate has no corner in one quarter of the round form: its bearing is not measured");
  }
  const bears =
    found.twice < 0 ? `falls short of the form by ${say.twice(-found.twice)}` : `bears ${say.twice(found.twice)}`;
  const note = `${found.how}: ${bears} on opposite sides, ${say.length(bearing.value)} asked for`;
  return compare("plate", found.twice, ">=", 2 * bearing.value, note, { chosen: isSized(plate, "outline") });
}

interface Bearing {
  readonly twice: number;
  readonly how: string;
}

type Straight = Extract<PlanShape, { readonly kind: "rectangle" }>;

function onStraightForm({ base, rods, plate }: CheckContext, shape: Straight): Bearing {
  const faces = twiceFormExtent(shape, base.concrete.at);
  const [outer, middle] = [wholeOutline(plate), patternCenter(rods)];
  const key = outer === plate.region.outer ? "" : ", beside its orientation cut";
  const sides = (["x", "y"] as const).map((axis): Bearing => {
    const twice = twiceSideBearing(outer, faces, middle, axis) ?? -Math.max(faces.x1 - faces.x0, faces.y1 - faces.y0);
    return { twice, how: `along ${axis}${key}` };
  });
  return [...sides, ...atCutCorners(outer, shape, base.concrete.at, middle)].reduce((best, each) =>
    each.twice > best.twice ? each : best,
  );
}

/** A form whose own corners are cut carries the corners of a plate that does not reach its faces. */
function atCutCorners(outer: Contour, shape: Straight, at: Offset, middle: Point): readonly Bearing[] {
  if (shape.corner.kind === "square" || outer.kind === "circle") return [];
  const form = planContour(shape, at);
  if (form.kind === "circle") return [];
  const twice = twiceCornerBearing(outer, form, middle);
  return twice === null ? [] : [{ twice, how: "corners past the cut corners of the form" }];
}

function onRoundForm(plate: Plate, diameter: number, { concrete }: CheckContext["base"]): Bearing | null {
  const round = wholeOutline(plate);
  if (round.kind === "circle") {
    const how =
      plate.keyed === null ? "round plate on a round form" : "round plate on a round form, beside its orientation cut";
    return { twice: twiceRoundBearing(round, concrete.at, diameter), how };
  }
  const twice = twiceChordBearing(round, concrete.at, diameter);
  return twice === null ? null : { twice, how: "corners past the chords of the round form" };
}

/** Held against the form's own contour: its notches, chamfers and rounds stand nearer than its faces. */
function insideForm({ job, base, plate }: CheckContext, shape: PlanShape): RuleResult {
  const { formGap } = job.shop;
  const outer = wholeOutline(plate);
  const { twice, at } = gapInForm(outer, shape, base.concrete.at);
  const say = wordsIn(job.unit);
  const where = `(${say.length(toLattice(at.x))}, ${say.length(toLattice(at.y))})`;
  const gap =
    twice < 0
      ? `the template reaches ${say.twice(-twice)} past the form at ${where}`
      : `gap ${say.twice(twice)} between template and form where it is least, at ${where}`;
  return compare("plate", twice, ">=", 2 * formGap.value, `${gap}, ${say.length(formGap.value)} asked for`);
}

/** The faces of a straight form are held in exact figures too: half of an odd side is off the lattice of its contour. */
function gapInForm(outer: Contour, shape: PlanShape, at: Offset): GapAt {
  const gap = leastGapInside(outer, planContour(shape, at));
  if (shape.kind === "circle") return gap;
  const toFaces = leastGap(twiceExtent(outer), twiceFormExtent(shape, at));
  return toFaces < gap.twice ? { ...gap, twice: toFaces } : gap;
}

function leastGap(plate: Extent, form: Extent): number {
  return Math.min(plate.x0 - form.x0, form.x1 - plate.x1, plate.y0 - form.y0, form.y1 - plate.y1);
}

/** Inner faces of a straight form, doubled nanometres: exact, since twice a half side is the side. */
function twiceFormExtent({ x, y }: Straight, at: Offset): Extent {
  return { x0: 2 * at.x - x, y0: 2 * at.y - y, x1: 2 * at.x + x, y1: 2 * at.y + y };
}
