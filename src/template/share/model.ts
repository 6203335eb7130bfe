/** What is known of a template of several bases beside its plate. */

/** A base whose own rows hold its template, and why, one sentence each. */
export interface HoldingBase {
  readonly mark: string;
  readonly reasons: readonly string[];
}

/** A template of several bases. It is held as a whole: where one of its bases is held, nothing is cut for the others. */
export interface SharedTemplate {
  /** In the order of the job; empty where nothing holds it. */
  readonly held: readonly HoldingBase[];
  /** Marks of the bases by sheet: those on one sheet are alike in all that it says. In the order of the job. */
  readonly sheets: readonly (readonly string[])[];
}
