/** Which trucks or pours the bases of a mark go with: their placements say so, else the base itself. */
import type { Base, Job } from "../job/model/job.js";
import { compareMarks } from "../job/model/mark-order.js";
import { groupBy } from "../units/group-by.js";

/** So many bases of one mark that go together. */
export interface DeliveryShare {
  /** Empty where neither placement nor base names one. */
  readonly delivery: string;
  readonly count: number;
}

/** The bases of a job that are parted: what they stand for, and where. */
export interface Delivered {
  readonly bases: readonly Pick<Base, "mark" | "quantity" | "delivery">[];
  readonly plan: Pick<NonNullable<Job["plan"]>, "placements"> | null;
}

/** Of each mark, in natural order; counts add up to the base's quantity. */
export function shareDeliveries({ bases, plan }: Delivered): ReadonlyMap<string, readonly DeliveryShare[]> {
  const placed = groupBy(plan?.placements ?? [], ({ mark }) => mark);
  return new Map(bases.map((base) => [base.mark, sharesOf(base, placed.get(base.mark) ?? [])] as const));
}

function sharesOf(
  { quantity, delivery: own }: Delivered["bases"][number],
  placements: readonly { readonly delivery: string }[],
): readonly DeliveryShare[] {
  if (placements.every(({ delivery }) => delivery === "")) return [{ delivery: own, count: quantity }];
  const groups = groupBy(placements, ({ delivery }) => (delivery === "" ? own : delivery));
  return [...groups]
    .map(([delivery, { length }]) => ({ delivery, count: length }))
    .sort((a, b) => compareDeliveries(a.delivery, b.delivery));
}

/** Natural order: pour 2 before pour 10; what goes with none comes last. */
export function compareDeliveries(a: string, b: string): number {
  if (a === "" || b === "") return a === b ? 0 : a === "" ? 1 : -1;
  return compareMarks(a, b);
}

/** Names of all deliveries of the job, in their order. */
export function deliveryNames(shares: ReadonlyMap<string, readonly DeliveryShare[]>): readonly string[] {
  const names = [...shares.values()].flatMap((own) => own.map(({ delivery }) => delivery));
  return [...new Set(names)].sort(compareDeliveries);
}
