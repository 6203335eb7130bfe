import { millimetresBetween, type Point, twiceDepthInside, twiceToLattice } from "../../geometry/index.js";
import type { SpliceBolt } from "../../job/model/job.js";
import { findHoleSpacing } from "../../standards/index.js";
import type { Joint, Parted } from "../../template/model.js";
import { seatReach } from "../../template/reach.js";
import { leastOf } from "../../units/extremes.js";
import { leastEdge } from "../edges.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { placingOf } from "../placing.js";
import { compare, known, lacking, notApplicable, notTabulated } from "../results.js";
import { rodHoles } from "../rods.js";
import { CONCRETE, PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Bolts of splice plates: edge distances and spacing of the edition; clear of nuts on the rods, and of the form that carries the template. */
export const segmentBolts: Rule<"segment-bolts"> = {
  id: "segment-bolts",
  plainName: "bolts of splice plates",
  title:
    "bolt of a splice plate to joint and edges, and to the next bolt, >= those of the edition; to the nut of a rod >= both halves across corners + gap; heads under the template inside the form that carries it, and above the concrete; shift that bolts allow at one joint <= placing tolerance (advice)",
  severity: "stop",
  measured: "the distance of a bolt of a splice plate",
  takes: [...PLATE, ...CONCRETE, "template.height"],
  clause: ({ job }) => job.editions.edges,
  edition: ({ job }) => job.editions.edges,
  check(context) {
    const { parted } = context.plate;
    if (parted === null) return [notApplicable("plate", "the template is one piece")];
    const forms = parted.joints.map((joint) => formRow(context, parted, joint));
    return [...boltRows(context), playRow(context, parted), ...forms, headRow(context, parted)];
  },
};

/** Edge distances, spacing and room for nuts at every joint; none of a plate that is one piece. */
export function boltRows(context: CheckContext): readonly RuleResult[] {
  const { parted } = context.plate;
  if (parted === null) return [];
  return parted.joints.flatMap((joint) => [edgeRow, spacingRow, nutRow].map((row) => row(context, parted, joint)));
}

type JointRow = (context: CheckContext, parted: Parted, joint: Joint) => RuleResult;

const edgeRow: JointRow = ({ job, plate }, { bolt: { value } }, joint) => {
  const say = wordsIn(job.unit);
  const subject = `J${joint.number} edge`;
  const least = leastEdge(job.editions.edges, value.size, value.diameter, value.hole.value, say);
  if (!least.found) return notTabulated(subject, least.what, least.nearest, "rules.edges");
  const twice = leastOf(
    joint.splices.flatMap(({ outline, bolts }) => bolts.map((at) => edgeOf(plate.region.outer, outline, joint, at))),
  );
  return compare(
    subject,
    twice,
    ">=",
    least.twice,
    `${say.twice(twice)} from bolt to joint or edge; ${least.note.replace("for rod", "for bolt")}`,
    {
      clause: least.clause,
    },
  );
};

/** Twice the least distance of a bolt: to the edge of the splice plate, of the template, and to the joint. */
function edgeOf(
  outer: Parameters<typeof twiceDepthInside>[1],
  outline: Parameters<typeof twiceDepthInside>[1],
  { from, to }: Joint,
  at: Point,
): number {
  const length = millimetresBetween(from, to);
  const off = Math.abs((at.x - from.x) * (to.y - from.y) - (at.y - from.y) * (to.x - from.x)) / length;
  return Math.min(twiceDepthInside(at, outline), twiceDepthInside(at, outer), twiceToLattice(off));
}

const spacingRow: JointRow = ({ job }, { bolt: { value } }, joint) => {
  const say = wordsIn(job.unit);
  const { edition, clause, rows } = findHoleSpacing(job.editions.edges);
  const subject = `J${joint.number} spacing`;
  const row = rows.find(({ what }) => what === "spacing");
  if (row === undefined) return notTabulated(subject, `${edition} has no spacing of bolts`, [], "rules.edges");
  const own = row.of === "rod" ? value.diameter : value.hole.value;
  const twice = leastOf(
    joint.splices.map(({ bolts }) => leastApart(bolts)),
    Infinity,
  );
  if (!Number.isFinite(twice)) return notApplicable(subject, "one bolt alone");
  const note = `${say.twice(twice)} from bolt to bolt; ${row.printed} of bolt ${value.size}`;
  return compare(subject, twice, ">=", Math.ceil((2 * row.times * own) / row.per), note, { clause, edition });
};

function leastApart(places: readonly Point[]): number {
  const apart = places.flatMap((a, i) => places.slice(i + 1).map((b) => twiceToLattice(millimetresBetween(a, b))));
  return leastOf(apart, Infinity);
}

const NUTS = { clause: "(G1 + G2) / 2 + play / 2 + gap <= distance", edition: "geometry" };

const nutRow: JointRow = (context, { bolt: { value } }, joint) => {
  const { job } = context;
  const subject = `J${joint.number} nuts`;
  const needs = known({ nut: value.nut });
  if (!needs.all) return lacking(subject, needs.missing, NUTS);
  const say = wordsIn(job.unit);
  const bolts = joint.splices.flatMap((splice) => splice.bolts);
  const near = rodHoles(context).flatMap(({ tag, center, group }) =>
    bolts.map((at) => ({
      tag,
      twice: twiceToLattice(millimetresBetween(at, center)),
      seat: seatReach(group, job.shop),
    })),
  );
  const [first, ...others] = near;
  if (first === undefined) return notApplicable(subject, "no rod stands on the template", NUTS);
  const least = others.reduce((a, b) => (b.twice - b.seat < a.twice - a.seat ? b : a), first);
  const limit = least.seat + needs.values.nut.acrossCorners + 2 * job.shop.nutGap.value;
  const note = `bolt to rod ${least.tag} ${say.twice(least.twice)}, nut of bolt ${value.size} across corners ${say.length(needs.values.nut.acrossCorners)}`;
  return compare(subject, least.twice, ">=", limit, note, NUTS);
};

const PLAY = {
  severity: "advise",
  clause: "2 (hole - bolt) at one joint <= placing tolerance",
  measured: "the shift of a segment that its bolts allow",
} as const;

/**
 * How far a segment can slide along a closed joint: on either side of it the bolt has its play in the segment and in the
 * splice plate. Rods of the segment shift with it.
 */
function playRow(context: CheckContext, { bolt: { value } }: Parted): RuleResult {
  const subject = "bolt play";
  const [rod, ...others] = rodHoles(context);
  if (rod === undefined) return notApplicable(subject, "no rod stands on the template", PLAY);
  const least = others.reduce((a, b) => (b.diameter < a.diameter ? b : a), rod);
  const placing = placingOf(context, least);
  if (!placing.found) return { ...placing.result, subject, severity: PLAY.severity };
  const { tolerance, item } = placing.row;
  const say = wordsIn(context.job.unit);
  const shift = 2 * (value.hole.value - value.diameter);
  const note = `2 x (${say.length(value.hole.value)} - ${say.length(value.diameter)}) along one closed joint against ${say.length(tolerance)}, ${item}; shifts of several joints add up: tape the whole when its bolts are tight`;
  return compare(subject, 2 * shift, "<=", 2 * tolerance, note, { ...PLAY, edition: context.job.editions.placing });
}

const FORM = { clause: "head under the template, inside the form", edition: "geometry" };

/** The heads are under the template, where the form must not stand. */
const formRow: JointRow = ({ job, base }, { bolt: { value } }, joint) => {
  const subject = `J${joint.number} form`;
  const { support } = base.template;
  if (support.kind === "given" && support.value === "bearers")
    return notApplicable(subject, "bearers are set beside the joints", FORM);
  const needs = known({ shape: base.concrete.shape, nut: value.nut, support });
  if (!needs.all) return lacking(subject, needs.missing, FORM);
  const form = planContour(needs.values.shape, base.concrete.at);
  const twice = leastOf(joint.splices.flatMap(({ bolts }) => bolts.map((at) => twiceDepthInside(at, form))));
  const say = wordsIn(job.unit);
  const note = `bolt ${say.twice(twice)} inside the form, head no wider than its nut ${say.length(needs.values.nut.acrossCorners)}`;
  return compare(subject, twice, ">=", needs.values.nut.acrossCorners, note, FORM);
};

const HEAD = { clause: "head above the concrete, with room to finish it", edition: "shop" };

/** No head is higher than its nut. */
function headRow({ job, base }: CheckContext, { bolt }: Parted): RuleResult {
  const { nut }: SpliceBolt = bolt.value;
  const needs = known({ height: base.template.height, nut });
  if (!needs.all) return lacking("bolt heads", needs.missing, HEAD);
  const { height } = needs.values;
  const room = job.shop.finishingRoom.value;
  const say = wordsIn(job.unit);
  const note = `underside ${say.length(height)} above T.O.C. against head ${say.length(needs.values.nut.height)} + finishing room ${say.length(room)}`;
  return compare("bolt heads", 2 * height, ">=", 2 * (needs.values.nut.height + room), note, HEAD);
}
