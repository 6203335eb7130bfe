/** Rules about the whole job: what bases are to each other. Their rows name the bases in the subject. */
import type { Contour } from "../geometry/vocabulary.js";
import type { Base, Job, Severity } from "../job/model/job.js";
import type { Layout } from "../rods/layout.js";
import type { Plan } from "../plan/model.js";
import type { Verdict } from "./model.js";

/** What is kept of a base for the job's rules: its rods and its template's outline, in its own axes. */
export interface MadeBase {
  readonly base: Base;
  readonly layout: Layout;
  readonly outline: Contour;
}

export interface JobContext {
  readonly job: Job;
  /** null for a job without placements. */
  readonly plan: Plan | null;
  /** In the order of the job's bases. */
  readonly made: readonly MadeBase[];
}

/** One rule of the job: one file, named by its id. */
export interface JobRule {
  readonly id: string;
  /** One line for the README table: what is held against what. */
  readonly title: string;
  readonly severity: Severity;
  /** What the value is, as a noun phrase for questions. */
  readonly measured: string;
  /** Clause printed in the ledger when a verdict does not name its own. */
  clause(context: JobContext): string;
  /** Edition printed in the ledger: one of the job's editions, or "job", "geometry", "common practice". */
  edition(context: JobContext): string;
  /** Verdicts whose subjects name bases; none only where the job has nothing that the rule is about. */
  check(context: JobContext): readonly Verdict[];
}
