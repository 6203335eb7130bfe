/** What is known of a template of several bases beside its plate. */

/** Bases whose own rows hold their template for the same reasons, one sentence each. */
export interface HoldingBases {
  /** In the order of the job. */
  readonly marks: ReadonlySet<string>;
  readonly reasons: readonly string[];
}

/** An open question of one of the bases; its number is null until the job has its numbers. */
export interface OpenAtBase {
  readonly mark: string;
  readonly plainName: string;
  readonly number: string | null;
}

/** A template of several bases. It is held as a whole: where one of its bases is held, nothing is cut for the others. */
export interface SharedTemplate {
  /** Empty where nothing holds it. */
  readonly held: readonly HoldingBases[];
  /** Marks of all bases that hold it, in the order of the job. */
  readonly heldBy: readonly string[];
  /** Questions of its bases that are open: it is not released for any of them. */
  readonly open: readonly OpenAtBase[];
  /** Marks of the bases by sheet: those on one sheet are alike in all that it says. In the order of the job. */
  readonly sheets: readonly (readonly string[])[];
}
