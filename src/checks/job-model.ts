/** Rules about the whole job: what bases are to each other. Their rows name the bases in the subject. */
import type { Job, Severity } from "../job/model/job.js";
import type { Plan } from "../plan/model.js";
import type { OutlinedBase } from "../rods/model.js";
import type { RuleResult } from "./model.js";

/** What a rule of the job sees: the job, its plan and every base with its rods and outline. */
export interface JobContext {
  readonly job: Job;
  /** null for a job without placements. */
  readonly plan: Plan | null;
  /** In the order of the job's bases. */
  readonly bases: readonly OutlinedBase[];
}

/** One rule of the job: one file, named by its id. */
export interface JobRule<Id extends string = string> {
  readonly id: Id;
  /** The rule in words of the trade, as sheets and questions say it: at most 28 characters, lower case. */
  readonly plainName: string;
  /** One line for the README table: what is held against what. */
  readonly title: string;
  readonly severity: Severity;
  /** What the value is, as a noun phrase for questions. */
  readonly measured: string;
  /** Keys of bases in the job file that value, limit and status may hang on, each with all below it. */
  readonly takes: readonly string[];
  /** Clause printed in the ledger when a result does not name its own. */
  clause(context: JobContext): string;
  /** Edition printed in the ledger: one of the job's editions, or "job", "geometry", "common practice". */
  edition(context: JobContext): string;
  /** Results whose subjects name bases; none only where the job has nothing that the rule is about. */
  check(context: JobContext): readonly RuleResult[];
}
