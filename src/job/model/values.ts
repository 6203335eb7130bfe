/** Values of a job that remember where they came from, or say what would supply them. */
export type { Offset } from "../../patterns/index.js";

/** A value and where it came from: "job", "shop plasma", or a publication with edition and clause. */
export interface Given<T> {
  readonly kind: "given";
  readonly value: T;
  readonly from: string;
}

/** A value that is not known. `key` is the place in the job file that would supply it; `why` a sentence for the ledger. */
export interface Missing {
  readonly kind: "missing";
  readonly key: string;
  readonly why: string;
}

/** A value of a job: given with its origin, or missing with what would supply it. */
export type Input<T> = Given<T> | Missing;

/** Shorthand for a value with its origin. */
export function given<T>(value: T, from: string): Given<T> {
  return { kind: "given", value, from };
}

/** A value as the job gives it, or what is missing under `key`. */
export function optional<T>(value: T | undefined, key: string, why: string): Input<T> {
  return value === undefined ? missing(key, why) : given(value, "job");
}

/** Shorthand for a value that is not known. */
export function missing(key: string, why: string): Missing {
  return { kind: "missing", key, why };
}
