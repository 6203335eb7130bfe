import { acrossCorners, twiceDepthInside } from "../../geometry/index.js";
import type { Bottom, EndPlate, Exposure, Missing, Nut } from "../../job/model/job.js";
import { detailRod, steelBelowEmbedment } from "../../rods/index.js";
import { concreteClauses, findCover, findSpacing } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, known, lacking, missingAmong, notApplicable, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { nutIfAnchor, rodHoles } from "../rods.js";
import { CONCRETE, NUT } from "../takes.js";
import { wordsIn } from "../words.js";

/** Cover of concrete to the rod and to what anchors it, sideways and below; 6 d to the edge when torqued. */
export const rodCover: Rule<"rod-cover"> = {
  id: "rod-cover",
  plainName: "cover of rods in concrete",
  title:
    "concrete cover to the rod and to its bottom, sideways and below, >= that of the edition; 6 d to the edge when torqued",
  severity: "ask",
  measured: "the concrete cover or edge distance",
  takes: [
    "pattern",
    ...["projection", "embedment", "length", "bottom", "thread", "threading", "torqued"].map((key) => `rods.${key}`),
    ...NUT,
    ...CONCRETE,
    "concrete.depth",
    "concrete.exposure",
  ],
  clause: ({ job }) => {
    const { spacing, cover } = concreteClauses(job.editions.concrete);
    return `${spacing}, ${cover}`;
  },
  edition: ({ job }) => job.editions.concrete,
  check(context) {
    const { base } = context;
    const { shape, at } = base.concrete;
    const rods = rodHoles(context);
    if (shape.kind === "missing") return rods.map(({ tag }) => lacking(tag, [shape, ...exposureIfMissing(context)]));
    const pier = planContour(shape.value, at);
    const placed = rods.map((rod) => ({ ...rod, toEdge: twiceDepthInside(rod.center, pier) }));
    return [besideRod, besideBottom, belowRod, torquedEdge].flatMap((row) => placed.map((rod) => row(context, rod)));
  },
};

/** `20.5.1.3: cover below the rod`: the clause of the job's edition, and what is covered. */
function coverClause({ job }: CheckContext, what: string): string {
  return `${concreteClauses(job.editions.concrete).cover}: cover ${what}`;
}

/** A rod, and twice the distance from its centre to the edge of the concrete. */
interface PlacedRod extends RodHole {
  readonly toEdge: number;
}

interface Cover {
  readonly cover: Length;
  readonly item: string;
}

/** The cover for this rod, classed like a bar by its diameter; null where the edition has none. */
function coverOf({ job }: CheckContext, { diameter }: RodHole, exposure: Exposure): Cover | null {
  const found = findCover(job.editions.concrete, exposure, diameter);
  return found.found ? found.row : null;
}

function besideRod(context: CheckContext, rod: PlacedRod): RuleResult {
  const say = wordsIn(context.job.unit);
  const twice = rod.toEdge - rod.diameter;
  const how = `rod to edge ${say.twice(rod.toEdge)} - ${say.length(rod.diameter)} / 2`;
  return coverRow(context, rod, twice, how, coverClause(context, "beside the rod"));
}

/** A cover against that of the edition, by exposure and the diameter of the rod; `twice` is what there is. */
export function coverRow(context: CheckContext, rod: RodHole, twice: number, how: string, clause: string): RuleResult {
  const { exposure } = context.base.concrete;
  if (exposure.kind === "missing") return heldWhatever(context, rod, exposure, twice, how, clause);
  const cover = coverOf(context, rod, exposure.value);
  const { concrete } = context.job.editions;
  if (cover === null) return notChecked(rod.tag, `${concrete}: no cover is tabulated here`, { clause });
  const note = `${how}; ${cover.item}${standsIn(context)}`;
  return compare(rod.tag, twice, ">=", 2 * cover.cover, note, { clause });
}

/** Said where a job by European editions is held against an American cover. */
function standsIn({ job: { editions } }: CheckContext): string {
  const european = [editions.placing, editions.edges].some((edition) => edition.startsWith("EN "));
  return european ? "; by ACI: EN 1992-1-1 asks by exposure class and is not kept here" : "";
}

const EXPOSURES: readonly Exposure[] = ["against ground", "exposed", "not exposed"];

/** Without the exposure: what falls short of the least cover of all falls short. */
function heldWhatever(
  context: CheckContext,
  rod: RodHole,
  exposure: Missing,
  twice: number,
  how: string,
  clause: string,
): RuleResult {
  const covers = EXPOSURES.flatMap((each) => coverOf(context, rod, each) ?? []);
  const [least] = covers.toSorted((a, b) => a.cover - b.cover);
  if (least === undefined) return lacking(rod.tag, [exposure], { clause });
  const row = compare(
    rod.tag,
    twice,
    ">=",
    2 * least.cover,
    `${how}; at the least, ${least.item}${standsIn(context)}`,
    { clause },
  );
  return inBestCase(row, missingAmong({ exposure }));
}

function besideBottom(context: CheckContext, rod: PlacedRod): RuleResult {
  const own = { clause: coverClause(context, "beside the bottom of the rod") };
  const needs = known({ bottom: rod.rod.bottom, nut: nutIfAnchor(rod.rod) });
  if (!needs.all) return lacking(rod.tag, [...needs.missing, ...exposureIfMissing(context)], own);
  const { across, name } = reachOf(needs.values.bottom, needs.values.nut, rod.diameter);
  const say = wordsIn(context.job.unit);
  const how = `rod to edge ${say.twice(rod.toEdge)} - ${name} ${say.twice(across)}`;
  return coverRow(context, rod, rod.toEdge - across, how, own.clause);
}

/** Every row but that of a torqued rod hangs on it. */
function exposureIfMissing({ base }: CheckContext): readonly Missing[] {
  const { exposure } = base.concrete;
  return exposure.kind === "missing" ? [exposure] : [];
}

interface Reach {
  /** Twice how far it reaches sideways from the rod's centre. */
  readonly across: number;
  readonly name: string;
}

/** A square plate and a hook may stand any way round. */
function reachOf(bottom: Bottom, nut: Nut | null, diameter: Length): Reach {
  switch (bottom.kind) {
    case "nut":
      return bottom.washer === null
        ? { across: nut?.acrossCorners ?? 0, name: "half the nut across corners" }
        : acrossPlate(bottom.washer, "plate washer");
    case "plate":
      return acrossPlate(bottom, "plate");
    case "hook":
      return { across: 2 * bottom.reach, name: "reach of the hook" };
    case "straight":
    case "swedged":
      return { across: diameter, name: "half the rod" };
  }
}

function acrossPlate({ shape, size }: Pick<EndPlate, "shape" | "size">, name: string): Reach {
  if (shape === "round") return { across: size, name: `half the ${name}` };
  return { across: acrossCorners(size), name: `half the ${name} corner to corner` };
}

/** Below the lowest steel: of an anchored rod that is what anchors it, and the rod that stands out of it. */
function belowRod(context: CheckContext, rodHole: RodHole): RuleResult {
  const { tag, rod, group } = rodHole;
  const clause = coverClause(context, "below the rod");
  const needs = known({ depth: context.base.concrete.depth, embedment: rod.embedment });
  const below = steelBelowEmbedment(rod, detailRod(context.job, context.base, group));
  if (!needs.all) {
    const more = [below, nutIfAnchor(rod)].flatMap((input) => (input.kind === "missing" ? [input] : []));
    return lacking(tag, [...needs.missing, ...more, ...exposureIfMissing(context)], { clause });
  }
  const { depth, embedment } = needs.values;
  const steel = below.kind === "given" ? below.value : 0;
  const say = wordsIn(context.job.unit);
  const how =
    `depth ${say.length(depth)} - embedment ${say.length(embedment)}` +
    (steel === 0 ? "" : ` - ${say.length(steel)} of steel below it`);
  const row = coverRow(context, rodHole, 2 * (depth - embedment - steel), how, clause);
  return inBestCase(
    row,
    missingAmong({ "steel below it": below, ...(below.kind === "missing" ? { nut: nutIfAnchor(rod) } : {}) }),
  );
}

function torquedEdge(context: CheckContext, rod: PlacedRod): RuleResult {
  const own = { clause: `${concreteClauses(context.job.editions.concrete).spacing}: edge of a torqued rod` };
  const { torqued } = rod.rod;
  if (torqued.kind === "given" && !torqued.value)
    return notApplicable(rod.tag, "the rod is not torqued: cover governs", own);
  const found = findSpacing(context.job.editions.concrete, true);
  const factor = found.found ? found.row.edgeFactor : null;
  if (factor === null)
    return notChecked(rod.tag, `${context.job.editions.concrete}: no edge distance is tabulated here`, own);
  const twice = rod.toEdge;
  const limit = 2 * factor * rod.diameter;
  if (torqued.kind === "missing" && twice < limit) return lacking(rod.tag, [torqued], own);
  const say = wordsIn(context.job.unit);
  const why = torqued.kind === "missing" ? "holds even when torqued" : "torqued";
  return compare(rod.tag, twice, ">=", limit, `${factor} x rod ${say.length(rod.diameter)}, ${why}`, own);
}
