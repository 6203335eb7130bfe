/** Ledger rows. Rules compare integers; twice a length is carried so that nothing is ever halved. */
import type { Answer, Base, Editions, Job, Severity } from "../job/model/job.js";
import type { PlacedRod } from "../rods/model.js";
import { columnAnchorage } from "../standards/index.js";
import type { Plate } from "../template/model.js";

/** Twice a length in nanometres (integer), or a plain count; `noun`: what is counted, in the singular. */
export type Quantity =
  | { readonly kind: "length"; readonly twice: number }
  | { readonly kind: "count"; readonly count: number; readonly noun?: string };

/** What the rule asks: value >= limit, value <= limit, or both equal; exact, without a tolerance. */
export type Sense = ">=" | "<=" | "=";

/** not-applicable: the rule does not ask this of the subject. not-checked: an input or a table row is missing. */
export type CheckStatus = "pass" | "fail" | "not-applicable" | "not-checked";

/** What a rule returns for one subject; the runner adds margin and status. */
export type RuleResult =
  | {
      readonly kind: "compared";
      readonly subject: string;
      readonly value: Quantity;
      readonly limit: Quantity;
      readonly sense: Sense;
      readonly note: string;
      readonly severity?: Severity;
      readonly clause?: string;
      readonly edition?: string;
      readonly measured?: string;
      /** True where the piece was chosen or sized to meet its limit: that it meets it exactly is then no close call. */
      readonly chosen?: boolean;
    }
  | {
      readonly kind: "not-applicable";
      readonly subject: string;
      readonly note: string;
      readonly severity?: Severity;
      readonly clause?: string;
      readonly edition?: string;
      readonly measured?: string;
    }
  | {
      readonly kind: "not-checked";
      readonly subject: string;
      readonly note: string;
      /** Keys of the job or shop file that would supply what is missing; none where no key would. */
      readonly missing?: readonly string[];
      readonly severity?: Severity;
      readonly clause?: string;
      readonly edition?: string;
      readonly measured?: string;
    };

/** What a rule of one base sees: the job, the base, its rods as placed and its template. */
export interface CheckContext {
  readonly job: Job;
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
}

/** One rule: one file, named by its id. */
export interface Rule<Id extends string = string> {
  readonly id: Id;
  /** The rule in words of the trade, as sheets and questions say it: at most 28 characters, lower case. */
  readonly plainName: string;
  /** One line for the README table: what is held against what. */
  readonly title: string;
  /** What a failing row does; the one place where it is written. The job may raise it. */
  readonly severity: Severity;
  /** What the value is where a result does not say it, as a noun phrase for questions: "the size of the washer on the base plate". */
  readonly measured: string;
  /**
   * Keys of the base in the job file that value, limit and status may hang on, each with all below it: the ledger says who gave
   * them. A key that is not named here never changes a row.
   */
  readonly takes: readonly string[];
  /** Clause printed in the ledger when a result does not name its own. */
  clause(context: CheckContext): string;
  /** Edition printed in the ledger: one of the job's editions, or "shop", "geometry". */
  edition(context: CheckContext): string;
  /** One result a subject; never empty: a rule that does not apply says so. */
  check(context: CheckContext): readonly RuleResult[];
}

/** One row of the ledger: a rule's result for one subject, with margin, status and answer. */
export interface CheckRow {
  readonly rule: string;
  /** The rule in words of the trade. */
  readonly plainName: string;
  readonly clause: string;
  readonly edition: string;
  readonly subject: string;
  readonly severity: Severity;
  /** What the value is, as a noun phrase for questions. */
  readonly measured: string;
  /** null where nothing was compared. */
  readonly value: Quantity | null;
  readonly limit: Quantity | null;
  readonly sense: Sense | null;
  /** Positive where the rule holds with something to spare; for `=` minus the difference. */
  readonly margin: Quantity | null;
  readonly status: CheckStatus;
  readonly note: string;
  /** Keys that would supply what a row that is not checked lacks; empty on any other row, and where no key would. */
  readonly missing: readonly string[];
  /** True where the piece was chosen or sized to meet its limit: a margin of 0 is then no close call. */
  readonly chosen: boolean;
  /** Who gave what the rule takes of its base: `row`, or `row; default: template.thickness`; "" for rows of the job. */
  readonly givenBy: string;
  /** The answer of the engineer of record, when there is one and the value has not changed since. */
  readonly answer: Answer | null;
  /** Number in the register of what it asks, `Q-7`; null of a row that asks nothing, or that is asked for the first time. */
  readonly askedAs: string | null;
  /** Number of the question that it is part of now, `Q-7.2`; null of a row that asks nothing, and until the job has its numbers. */
  readonly question: string | null;
}

/** What no rule looks at; printed on every ledger and sheet. */
export const NOT_CHECKED_AT_ALL = [
  "anchorage strength in concrete",
  "rod strength",
  "welds",
  "bearing under the base plate",
  "reinforcement",
  `column anchorage for ${columnAnchorage.value} (29 CFR ${columnAnchorage.clause})`,
] as const;

export type { Editions };
