/**
 * The budget of a base: how far its rods may be off, against the base plate's clearance. Doubled lengths in nanometres are
 * exact integers, so that nothing is halved; `spare` is a radial clearance left, in nanometres, negative where it is lacking.
 */
import type { Point } from "../geometry/index.js";
import type { BudgetSpec, PlateFreedom } from "../job/model/budget.js";
import type { Length, Unit } from "../units/index.js";

export type { BudgetSpec, PlateFreedom } from "../job/model/budget.js";

/** Causes of error, in the order in which they are listed. */
export const TERM_NAMES = ["placing", "setting", "template play", "cutting", "lean", "base-plate hole"] as const;

/** One cause of error. */
export type TermName = (typeof TERM_NAMES)[number];

/** One cause of error of one rod. `twice`: twice its reach; `commonTwice`: twice the part that moves the whole group alike. */
export interface BudgetTerm {
  readonly name: TermName;
  readonly zone: "round" | "square";
  readonly twice: number;
  readonly commonTwice: number;
  readonly from: string;
}

/** A rod with its errors and the clearance of its base-plate hole. `at` in millimetres, base axes; `clearanceTwice`: twice (H - d)/2. */
export interface BudgetRod {
  readonly tag: string;
  readonly size: string;
  readonly at: Point;
  readonly diameter: Length;
  readonly hole: Length;
  /** H - d. */
  readonly clearanceTwice: number;
  /** The same names in the same order for each rod of a base. */
  readonly terms: readonly BudgetTerm[];
}

/** Where a closed form is decided: a rod, or the pair with the least to spare. `errorTwice`: twice the error, or the sum of two. */
export interface Governing {
  readonly subject: string;
  readonly tags: readonly string[];
  readonly errorTwice: number;
  readonly clearanceTwice: number;
  readonly holds: boolean;
  readonly spare: number;
}

/** `held`: each error radius against its clearance. `free`: for each pair, the sum of both against the sum of both. */
export interface ClosedForm {
  readonly held: Governing;
  readonly free: Governing;
}

/** Shares of the trials in which the plate drops on. */
export interface Probability {
  readonly held: number;
  readonly shifted: number;
  readonly free: number;
  /** Binomial, of the freedom that the job asks for. */
  readonly standardError: number;
  readonly samples: number;
}

/** Trials by spare clearance: bin i holds from `from + i` to `from + i + 1` steps; 0 is an edge. Steps in nanometres. */
export interface Histogram {
  readonly step: number;
  readonly from: number;
  readonly counts: readonly number[];
  readonly samples: number;
  readonly drops: number;
  readonly mean: number;
}

/** What decides: in the worst case, and among the trials. */
export interface Governs {
  /** The rod or pair of the worst case, the term with the largest part of its error, and that part. */
  readonly subject: string;
  readonly term: TermName | null;
  readonly share: number;
  /** How often each rod is among those that decide a trial, most often first; shares of all trials, together 1. */
  readonly rods: readonly { readonly tag: string; readonly share: number }[];
}

/** A change that meets the target, with the probability then. */
export interface Remedy<T> {
  readonly change: T;
  readonly probability: number;
}

/** The base-plate hole that the rods of a size would need. */
export interface HoleChange {
  readonly size: string;
  readonly hole: Length;
}

/** The reach that a term could have for the rods of a size. */
export interface PlacingChange {
  readonly size: string;
  readonly term: "placing" | "setting";
  readonly reach: Length;
}

/** What would reach the probability asked for; shares from 0 to 1. */
export interface TargetAnswer {
  readonly target: number;
  readonly probability: number;
  readonly met: boolean;
  /** Smallest holes, by steps of 1/16 in or 1 mm from the present ones, all changed alike. */
  readonly holes: Remedy<readonly HoleChange[]>;
  /** The widest placing or setting, by steps of 1/32 in or 0.5 mm down from the present, that does it; null: not even 0. */
  readonly placing: Remedy<readonly PlacingChange[]> | null;
  readonly samples: number;
}

/** The budget of a base whose errors are known. */
export interface ReckonedBase {
  readonly kind: "reckoned";
  readonly mark: string;
  readonly quantity: number;
  readonly unit: Unit;
  readonly spec: BudgetSpec;
  readonly rods: readonly BudgetRod[];
  readonly worst: ClosedForm;
  readonly rss: ClosedForm;
  readonly probability: Probability;
  readonly histogram: Histogram;
  readonly governs: Governs;
  /** null: the job asks for no probability. */
  readonly target: TargetAnswer | null;
  readonly notes: readonly string[];
}

/** What is wanting, and the key that would supply it. */
export interface UnreckonedBase {
  readonly kind: "not-checked";
  readonly mark: string;
  readonly quantity: number;
  readonly unit: Unit;
  readonly why: readonly string[];
}

/** The budget of a base, or why it has none. */
export type BaseBudget = ReckonedBase | UnreckonedBase;

/** The probability for the freedom that the job asks for. */
export function askedShare({ probability, spec }: Pick<ReckonedBase, "probability" | "spec">): number {
  return probability[spec.plate];
}

/** The closed form for that freedom: a plate that may only shift is judged as a free one, since turning is not needed. */
export function askedForm(form: ClosedForm, plate: PlateFreedom): Governing {
  return plate === "held" ? form.held : form.free;
}
