/** Values of a job that remember where they came from, or say what would supply them. */
export type { Offset } from "../../patterns/index.js";

/**
 * A value and where it came from: "job" (the base's own), "default", "kind heavy", "note 2" (written in the job for many
 * bases), "shop plasma", or a publication with edition and clause.
 */
export interface Given<T> {
  readonly kind: "given";
  readonly value: T;
  readonly from: string;
}

/**
 * A value that is not known. `key` is the place in the job file that would supply it, or several between commas; empty where
 * none would. `why` is a sentence for the ledger.
 */
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

/** A value as the job gives it, or what is missing under `key`; `from`: who gave it. */
export function optional<T>(value: T | undefined, key: string, why: string, from = "job"): Input<T> {
  return value === undefined ? missing(key, why) : given(value, from);
}

/** True for a value that the job file gives: in the base's own row, or for many bases. */
export function isOfJobFile({ from }: Pick<Given<unknown>, "from">): boolean {
  return from === "job" || from === "default" || /^(kind|note) /.test(from);
}

/** Shorthand for a value that is not known. */
export function missing(key: string, why: string): Missing {
  return { kind: "missing", key, why };
}

/** Every key that is to be given for it; none where no key would supply it. */
export function keysOfMissing({ key }: Missing): readonly string[] {
  return key === "" ? [] : key.split(", ");
}
