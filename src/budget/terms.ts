/** What may put each rod off the base plate's hole, by the job, the placing edition and the shop. */
import { baseHoleOf, isSetOverCastRods } from "../job/model/base-hole.js";
import type { Base, Input, Job, Missing, RodGroup } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { findIso9013Deviation, findPlacing } from "../standards/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import { formatWithUnit, nanometres } from "../units/index.js";
import type { BudgetRod, BudgetTerm } from "./model.js";

/** The rods with their terms, or what is wanting. */
export type Terms =
  | { readonly ok: true; readonly rods: readonly BudgetRod[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly why: readonly string[] };

/** Twice a reach with its origin, or the reason why there is none. */
type Reach =
  | { readonly ok: true; readonly twice: number; readonly from: string }
  | { readonly ok: false; readonly why: string };

/** Terms of all the rods of a base. */
export function budgetTerms(job: Job, base: Base, placed: readonly PlacedRod[]): Terms {
  const rods = placed.map((rod) => rodTerms(job, base, placed, rod));
  const why = [...new Set(rods.flatMap((rod) => (rod.ok ? [] : rod.why)))];
  if (why.length > 0) return { ok: false, why };
  const whole = rods.flatMap((rod) => (rod.ok ? [rod.rod] : []));
  return { ok: true, rods: shareCommon(whole, job.budget.common), notes: notesOf(job) };
}

type RodTerms =
  | { readonly ok: true; readonly rod: BudgetRod }
  | { readonly ok: false; readonly why: readonly string[] };

function rodTerms(job: Job, base: Base, rods: readonly PlacedRod[], { tag, group, center }: PlacedRod): RodTerms {
  const { rod } = group;
  const baseHole = baseHoleOf(group, { orTable: false });
  const reaches = job.budget.rods === "edition" ? [placingOf(job, group)] : componentsOf(job, base, rods, group);
  const hole = holeReach(job);
  const terms = [...reaches, ...(hole === null ? [] : [hole])];
  const why = terms.flatMap(({ reach }) => (reach.ok ? [] : [reach.why]));
  if (baseHole.kind === "missing") why.unshift(lack(baseHole));
  if (baseHole.kind === "missing" || why.length > 0) return { ok: false, why };
  return {
    ok: true,
    rod: {
      tag,
      size: rod.size,
      at: center,
      diameter: rod.diameter,
      hole: baseHole.value,
      clearanceTwice: baseHole.value - rod.diameter,
      terms: terms.flatMap(({ name, zone, reach }) =>
        reach.ok ? [{ name, zone, twice: reach.twice, commonTwice: 0, from: reach.from }] : [],
      ),
    },
  };
}

interface NamedReach extends Pick<BudgetTerm, "name" | "zone"> {
  readonly reach: Reach;
}

const lack = ({ key, why }: Missing): string => `${why} (${key})`;

function given(input: Input<Length>): Reach {
  return input.kind === "given"
    ? { ok: true, twice: 2 * input.value, from: input.from }
    : { ok: false, why: lack(input) };
}

/** The job's own as-placed tolerance, or the edition's; an edition that limits spacings leaves half to each rod of a pair. */
function placingOf({ budget, editions }: Job, { rod }: RodGroup): NamedReach {
  const named = { name: "placing", zone: budget.zone } as const;
  if (budget.placing.kind === "given") return { ...named, reach: given(budget.placing) };
  const found = findPlacing(editions.placing, rod.diameter, "fixed");
  if (!found.found) {
    const nearest = found.nearest.length === 0 ? "" : `; nearest ${found.nearest.join(" and ")}`;
    const why = `${editions.placing} has no placing tolerance for rod ${rod.size}${nearest} (budget.placing)`;
    return { ...named, reach: { ok: false, why } };
  }
  const { limits, tolerance } = found.row;
  const from = `${found.edition} ${found.clause}`;
  return limits === "position"
    ? { ...named, reach: { ok: true, twice: 2 * tolerance, from } }
    : { ...named, zone: "round", reach: { ok: true, twice: tolerance, from: `half the spacing tolerance of ${from}` } };
}

function componentsOf(job: Job, base: Base, rods: readonly PlacedRod[], group: RodGroup): readonly NamedReach[] {
  const { budget } = job;
  if (isSetOverCastRods(base.template)) {
    const why = "the plate is set over cast rods and holds none: components do not apply (budget.rods)";
    return [{ name: "setting", zone: "round", reach: { ok: false, why } }];
  }
  const play: Reach = {
    ok: true,
    twice: Math.max(0, group.hole.value - group.rod.diameter),
    from: `(h - d)/2, template hole ${formatWithUnit(group.hole.value, job.unit)}`,
  };
  const lean = leanOf(job, base);
  return [
    { name: "setting", zone: budget.zone, reach: given(budget.setting) },
    { name: "template play", zone: "round", reach: play },
    { name: "cutting", zone: "round", reach: cuttingOf(job, base, rods) },
    ...(lean === null ? [] : [{ name: "lean", zone: "round", reach: lean } as const]),
  ];
}

/** Two holes share what the shop's cutting lets the distance between them be off: half of it for each. */
function cuttingOf({ budget, shop }: Job, base: Base, rods: readonly PlacedRod[]): Reach {
  const { material, thickness } = base.template;
  if (budget.cutting.kind === "given" || shop.process === "drill" || material === "plywood")
    return given(budget.cutting);
  if (shop.deviation.kind === "own")
    return { ok: true, twice: shop.deviation.value, from: `half the deviation of shop ${shop.name}` };
  const grade = shop.deviation.class;
  const found = findIso9013Deviation(grade, thickness, farthest(rods));
  if (!found.found)
    return { ok: false, why: `ISO 9013 class ${grade} has no deviation for this pattern (budget.cutting)` };
  return { ok: true, twice: found.row.plusMinus, from: `half of ISO 9013 class ${grade}, farthest rods` };
}

function farthest(rods: readonly PlacedRod[]): Length {
  const distances = rods.flatMap(({ center: a }, i) =>
    rods.slice(i + 1).map(({ center: b }) => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2)),
  );
  return nanometres(1e6 * greatestOf(distances, 0));
}

/** Over the thickness of the base plate, rounded up to 1 nm. */
function leanOf({ budget }: Job, { basePlate }: Base): Reach | null {
  if (budget.lean.kind === "missing") return null;
  if (basePlate.thickness.kind === "missing") return { ok: false, why: lack(basePlate.thickness) };
  const { by, per } = budget.lean.value;
  const thickness = basePlate.thickness.value;
  return { ok: true, twice: Math.ceil((2 * by * thickness) / per), from: "lean over the base plate's thickness" };
}

function holeReach({ budget }: Job): NamedReach | null {
  if (budget.baseHoles.kind === "missing") return null;
  return { name: "base-plate hole", zone: "round", reach: given(budget.baseHoles) };
}

/** The common part is the same for every rod: a share of the least reach among them. */
function shareCommon(rods: readonly BudgetRod[], share: number): readonly BudgetRod[] {
  const least = leastOf(rods.flatMap(({ terms }) => terms.filter(isShared).map(({ twice }) => twice)));
  const common = Number.isFinite(least) ? Math.floor(share * least) : 0;
  return rods.map((rod) => ({
    ...rod,
    terms: rod.terms.map((term) =>
      isShared(term) ? { ...term, twice: term.twice - common, commonTwice: common } : term,
    ),
  }));
}

/** Placing and setting: what the field does to the group. */
export function isShared({ name }: BudgetTerm): boolean {
  return name === "placing" || name === "setting";
}

function notesOf({ budget }: Job): readonly string[] {
  const absent = [
    ...(budget.baseHoles.kind === "missing" ? ["position error of the base plate's holes (budget.baseHoles)"] : []),
    ...(budget.rods === "components" && budget.lean.kind === "missing" ? ["lean of the rods (budget.lean)"] : []),
  ];
  const square =
    budget.zone === "square"
      ? ["Closed forms take a square zone by the circle around it: safe for a free plate, exact for one that is fixed."]
      : [];
  return [...absent.map((what) => `Not in the budget, for want of a value: ${what}.`), ...square];
}
