/** Results of rules: constructors, and the way missing input becomes a not-checked row. Lengths are doubled nanometres. */
import type { Given, Input, Missing, Severity } from "../job/model/job.js";
import type { RuleResult, Sense } from "./model.js";

/** What a result may set for itself instead of taking it from its rule. */
export interface Own {
  readonly severity?: Severity;
  readonly clause?: string;
  readonly edition?: string;
}

/** Two doubled lengths held against each other. */
export function compare(
  subject: string,
  value: number,
  sense: Sense,
  limit: number,
  note: string,
  own: Own = {},
): RuleResult {
  return {
    kind: "compared",
    subject,
    value: { kind: "length", twice: value },
    limit: { kind: "length", twice: limit },
    sense,
    note,
    ...own,
  };
}

/** Two counts held against each other. */
export function compareCounts(subject: string, value: number, sense: Sense, limit: number, note: string): RuleResult {
  return {
    kind: "compared",
    subject,
    value: { kind: "count", count: value },
    limit: { kind: "count", count: limit },
    sense,
    note,
  };
}

/** The rule has nothing to hold here. */
export function notApplicable(subject: string, note: string, own: Own = {}): RuleResult {
  return { kind: "not-applicable", subject, note, ...own };
}

/** The rule applies, and something that it needs is not known. */
export function notChecked(subject: string, note: string, own: Own = {}): RuleResult {
  return { kind: "not-checked", subject, note, ...own };
}

/** A not-checked row that names each missing key and why it is missing. */
export function lacking(subject: string, missing: readonly Missing[], own: Own = {}): RuleResult {
  return notChecked(subject, missing.map(({ why, key }) => `${why} (${key})`).join("; "), own);
}

/** A not-checked row for a size that a table does not hold. */
export function notTabulated(subject: string, what: string, nearest: readonly string[], own: Own = {}): RuleResult {
  const near = nearest.length === 0 ? "" : `; nearest: ${nearest.join(", ")}`;
  return notChecked(subject, `${what}${near}`, own);
}

type NamedInputs = Readonly<Record<string, Input<unknown>>>;
type Values<T extends NamedInputs> = { readonly [K in keyof T]: Extract<T[K], Given<unknown>>["value"] };

/** Every value, or every input that is missing. */
export type Known<T extends NamedInputs> =
  | { readonly all: true; readonly values: Values<T> }
  | { readonly all: false; readonly missing: readonly Missing[] };

/** Takes the values out of the inputs when all of them are given. */
export function known<T extends NamedInputs>(inputs: T): Known<T> {
  const values: Record<string, unknown> = {};
  const missing: Missing[] = [];
  for (const key of Object.keys(inputs)) {
    const input = inputs[key] as Input<unknown>;
    if (input.kind === "given") values[key] = input.value;
    else missing.push(input);
  }
  return missing.length > 0 ? { all: false, missing } : { all: true, values: values as Values<T> };
}
