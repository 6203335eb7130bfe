import type { Bottom, Input, Rod } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import { nutHeight, wholeStack } from "../../job/model/stack.js";
import { detailRod, isEmbeddedToEnd } from "../../rods/index.js";
import type { Length } from "../../units/index.js";
import { add } from "../../units/length.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import {
  compareSums,
  fixed,
  inBestCase,
  known,
  minus,
  missingAmong,
  notApplicable,
  plus,
  spareOf,
} from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, nutIfAnchor, rodHoles } from "../rods.js";
import { layers, lengthToleranceOf, throughTemplate } from "../stack-terms.js";
import { STACK, TEMPLATE_STACK } from "../takes.js";
import { wordsIn } from "../words.js";

const SHORT: Own = {
  severity: "advise",
  clause: "overall length at its least >= projection + embedment + what anchors the rod",
  measured: "the length of the rod, as short as it may come,",
};
const FITS: Own = {
  edition: "geometry",
  clause: "overall length >= projection + embedment + what anchors the rod",
  measured: "the length of the rod",
};
const LEFT: Own = {
  edition: "geometry",
  measured: "what a rod as short as it may come leaves above the concrete, with its embedment kept,",
};
const SHORT_BY = "rod short by the length tolerance of ASTM F1554, its embedment kept:";
const FOR_STACK: Own = { ...LEFT, clause: `${SHORT_BY} stack on the rod` };
const FOR_TEMPLATE: Own = { ...LEFT, clause: `${SHORT_BY} template and its upper nut` };
const LONG: Own = {
  severity: "advise",
  clause: "overall length <= projection + embedment + lower end, within the tolerance",
  measured: "the length of the rod",
};

/**
 * A rod as short as its specification lets it be, set to its embedment, still takes what goes on it, and the template; how much
 * it lacks of projection and embedment together is advice. None is longer than its parts account for.
 */
export const rodLength: Rule<"rod-length"> = {
  id: "rod-length",
  plainName: "length of rod",
  title:
    "rod length less its tolerance, its embedment and what anchors it >= stack on the rod, and >= template with its upper nut; " +
    "rod length >= projection + embedment + what anchors it, also less its tolerance (advise); rod length <= projection + " +
    "embedment + lower end + tolerance (advise); of a length that is worked out the first alone, as advice",
  severity: "ask",
  measured: "the length of the rod",
  takes: [
    ...["length", "projection", "embedment", "bottom", "thread", "threading"].map((key) => `rods.${key}`),
    ...TEMPLATE_STACK,
    ...STACK,
  ],
  clause: () => "overall length",
  edition: () => "ASTM F1554",
  check(context) {
    const rods = rodHoles(context);
    const rows = [atItsShortest, fitsAnchor, leftForStack, leftForTemplate, accountedFor];
    return rows.flatMap((row) => rods.flatMap((rod) => row(context, rod)));
  },
};

const WORKED_OUT = "the length is worked out of its parts";

/** The rule's edition is that of the tolerance: without one the row is the job's own sum. */
function withEdition(own: Own, tolerance: Input<Length>): Own {
  return tolerance.kind === "missing" ? { ...own, edition: "job" } : own;
}

/** As ASTM F1554 measures it, of a bent rod to the inside of its bend; worked out where it is not given. */
function orderedLength({ job, base }: CheckContext, { rod, group }: RodHole): Input<Length> {
  if (rod.length.kind === "given") return rod.length;
  const { overall, hook } = detailRod(job, base, group);
  if (overall.kind === "missing") return rod.length;
  const { projection, embedment } = rod;
  if (hook === null) return given(overall.value.value, WORKED_OUT);
  if (projection.kind === "missing" || embedment.kind === "missing") return rod.length;
  return given(add(projection.value, embedment.value), WORKED_OUT);
}

function isWorkedOut(length: Input<Length>): boolean {
  return length.kind === "given" && length.from === WORKED_OUT;
}

function atItsShortest(context: CheckContext, rodHole: RodHole): RuleResult {
  const { tag, rod } = rodHole;
  if (isWorkedOut(orderedLength(context, rodHole))) return notApplicable(tag, WORKED_OUT, SHORT);
  const tolerance = lengthToleranceOf(rod);
  const shortest = [plus("length", rod.length), minus("tolerance", tolerance)];
  const needed = [plus("projection", rod.projection), plus("embedment", rod.embedment), ...anchor(rod, plus)];
  const say = wordsIn(context.job.unit);
  const remark = (spare: number): string =>
    spare < 0 ? `; it may reach ${say.twice(-spare)} less deep, or stand as much lower` : "";
  return anchoredBy(rod, compareSums(tag, [shortest, ">=", needed], say, { ...withEdition(SHORT, tolerance), remark }));
}

/** No row where nothing is screwed or welded on, or the length is worked out. */
function fitsAnchor({ job }: CheckContext, { tag, rod }: RodHole): readonly RuleResult[] {
  const terms = anchor(rod, plus);
  if (rod.length.kind === "missing" || terms.length === 0) return [];
  const needed = [plus("projection", rod.projection), plus("embedment", rod.embedment), ...terms];
  const say = wordsIn(job.unit);
  const remark = (spare: number): string =>
    spare < 0 ? `; what anchors the rod stands ${say.twice(-spare)} above the end of its embedment` : "";
  return [compareSums(tag, [[plus("length", rod.length)], ">=", needed], say, { ...FITS, remark })];
}

function leftForStack(context: CheckContext, rodHole: RodHole): readonly RuleResult[] {
  const stack = layers(wholeStack(context.base, rodHole.group), plus);
  return leftAbove(context, rodHole, stack, FOR_STACK, "projection");
}

function leftForTemplate(context: CheckContext, rodHole: RodHole): readonly RuleResult[] {
  if (isOverCastRods(context)) return [];
  return leftAbove(context, rodHole, throughTemplate(context, rodHole), FOR_TEMPLATE, "template-height");
}

/**
 * No row where the shortest length is not known, which the row of the length itself says. A projection that is too short as
 * specified is the finding of another rule; a length that is worked out is the shop's own, which may keep closer to it.
 */
function leftAbove(
  context: CheckContext,
  rodHole: RodHole,
  needed: readonly Term[],
  own: Own,
  ruleOfProjection: string,
): readonly RuleResult[] {
  const { tag, rod } = rodHole;
  const { embedment, projection } = rod;
  const length = orderedLength(context, rodHole);
  const tolerance = lengthToleranceOf({ ...rod, length });
  if (!known({ length, tolerance, embedment, projection }).all) return [];
  const say = wordsIn(context.job.unit);
  const asSpecified = compareSums(tag, [[plus("projection", projection)], ">=", needed], say);
  if ((spareOf(asSpecified) ?? 0) < 0)
    return [notApplicable(tag, `the projection is too short as specified: ${ruleOfProjection}`, own)];
  const left = [
    plus("length", length),
    minus("tolerance", tolerance),
    minus("embedment", embedment),
    ...anchor(rod, minus),
  ];
  const advice: Own = isWorkedOut(length) ? { severity: "advise" } : {};
  return [anchoredBy(rod, compareSums(tag, [left, ">=", needed], say, { ...own, ...advice }))];
}

/** What is on the rod below its embedment: nothing where that goes to the end of the rod. */
function anchor(rod: Rod, sign: typeof plus): readonly Term[] {
  const { bottom } = rod;
  return isEmbeddedToEnd(rod) || bottom.kind === "missing" ? [] : anchorParts(rod, bottom.value, sign);
}

/** Nothing where the lower end is not known is its best case. */
function anchoredBy(rod: Rod, row: RuleResult): RuleResult {
  if (rod.bottom.kind !== "missing" || isEmbeddedToEnd(rod)) return row;
  return inBestCase(row, missingAmong({ "lower end": rod.bottom, nut: nutIfAnchor(rod) }));
}

/** A plate washer and a nut, or a plate and what holds it from below: one nut of those that it may have. */
function anchorParts(rod: Rod, bottom: Bottom, sign: typeof plus): readonly Term[] {
  const nut = sign("nut", nutHeight(rod));
  const made = (name: string, thickness: Length) => sign(name, given(thickness, name));
  switch (bottom.kind) {
    case "straight":
    case "swedged":
    case "hook":
      return [];
    case "nut": {
      const { washer } = bottom;
      return [...(washer === null ? [] : [made("plate washer", washer.thickness)]), nut];
    }
    case "plate":
      return [made("plate", bottom.thickness), ...(bottom.nuts === 0 ? [] : [nut])];
  }
}

/** Embedment is given to the lower end of the rod, or to what anchors it: then that comes on top. */
function accountedFor(context: CheckContext, rodHole: RodHole): RuleResult {
  const { tag, rod } = rodHole;
  if (isWorkedOut(orderedLength(context, rodHole))) return notApplicable(tag, WORKED_OUT, LONG);
  const tolerance = lengthToleranceOf(rod);
  const own = withEdition(LONG, tolerance);
  const parts = [
    plus("projection", rod.projection),
    plus("embedment", rod.embedment),
    ...lowerEnd(rod),
    plus("tolerance", tolerance),
  ];
  const say = wordsIn(context.job.unit);
  const remark = (spare: number): string =>
    spare > 0 ? `; nothing that is given takes the other ${say.twice(spare)}${ofBentRod(rod)}` : "";
  return anchoredBy(rod, compareSums(tag, [[plus("length", rod.length)], "<=", parts], say, { ...own, remark }));
}

function ofBentRod({ bottom }: Rod): string {
  if (bottom.kind === "missing" || bottom.value.kind !== "hook") return "";
  return "; ASTM F1554 measures a bent rod to the inside of its bend, not along its bar";
}

/** What anchors the rod, and a diameter of rod below it, since rods are ordered in round lengths: common practice. */
function lowerEnd(rod: Rod): readonly Term[] {
  const { bottom } = rod;
  if (bottom.kind === "missing") return [plus("lower end", bottom)];
  const parts = anchorParts(rod, bottom.value, plus);
  return parts.length === 0 ? [] : [...parts, fixed("rod below it", rod.diameter)];
}
