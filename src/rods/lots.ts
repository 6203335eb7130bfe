/** Rods of the whole job by what they are: those that a shop makes alike are one lot, whatever bases they stand on. */
import type { Base, Job, RodGroup } from "../job/model/job.js";
import { countRods } from "../patterns/index.js";
import { detailRod } from "./detail/index.js";
import type { RodDetail } from "./detail/model.js";

/** Where rods of a lot stand. */
export interface RodUse {
  readonly base: string;
  /** Letter of the group of rods on that base. */
  readonly group: string;
  readonly perBase: number;
  /** On all bases of the mark together. */
  readonly quantity: number;
}

/** Rods that are made alike. */
export interface RodLot {
  /** `R1`, `R2`, ... in the order of the job. */
  readonly mark: string;
  readonly detail: RodDetail;
  /** In the order of the job; one or more. */
  readonly uses: readonly RodUse[];
  readonly total: number;
}

/** Every rod of the job is in one lot. Held bases have their rods too. */
export function rodLots(job: Job): readonly RodLot[] {
  return groupLots(
    job.bases.flatMap((base) =>
      base.groups.map((group) => ({ detail: detailRod(job, base, group), use: useOf(base, group) })),
    ),
  );
}

function useOf({ mark, quantity }: Base, { letter, pattern }: RodGroup): RodUse {
  const perBase = countRods(pattern);
  return { base: mark, group: letter, perBase, quantity: perBase * quantity };
}

/** Details that are equal but for who gave their values become one lot. */
export function groupLots(rods: readonly { readonly detail: RodDetail; readonly use: RodUse }[]): readonly RodLot[] {
  const lots = new Map<string, { readonly detail: RodDetail; readonly uses: RodUse[] }>();
  for (const { detail, use } of rods) {
    const key = lotKey(detail);
    const lot = lots.get(key);
    if (lot === undefined) lots.set(key, { detail, uses: [use] });
    else lot.uses.push(use);
  }
  return [...lots.values()].map(({ detail, uses }, i) => ({
    mark: `R${i + 1}`,
    detail,
    uses,
    total: uses.reduce((sum, { quantity }) => sum + quantity, 0),
  }));
}

/** Who gave a value, and why one is missing, makes no other rod. */
const TOLD_BESIDE: ReadonlySet<string> = new Set(["from", "radiusFrom", "why", "key"]);

/** Details that are made alike have the same. */
export function lotKey(detail: RodDetail): string {
  return JSON.stringify(detail, (name, value: unknown) => (TOLD_BESIDE.has(name) ? undefined : value));
}
