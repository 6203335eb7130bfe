/**
 * What somebody signs when he has checked a package: a record of names, figures and hashes that stands beside the package. It
 * says which bytes were looked at. It is no proof of who looked, and no seal of a licensed engineer.
 */

/** What stands of one base in a package, each part by the first signs of a hash: what is changed later can be named. */
export interface SignedBase {
  readonly mark: string;
  readonly template: string;
  readonly held: boolean;
  /** How many bases and templates; the template as it is drawn and measured; the rods. */
  readonly quantity: string;
  readonly plate: string;
  readonly rods: string;
  /** Files that it is cut or drilled by; null: none were handed out. */
  readonly cut: string | null;
  /** Its other files; null where none were made to compare, as of a job. */
  readonly papers: string | null;
  /** Rows of the ledger by their rule. */
  readonly rows: Readonly<Record<string, string>>;
}

/** A file of the package at the time, with the bases that it is for; none: of the job. */
export interface SignedFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly bases: readonly string[];
}

/** Failing `ask` rows of one rule that nobody has answered; a base without a mark is the layout. */
export interface OpenRows {
  readonly rule: string;
  readonly bases: readonly string[];
  readonly rows: number;
  /** Of their questions; none of a job, and of packages that had none. */
  readonly numbers: readonly string[];
}

/** A job as it is signed. */
export interface SignedJob {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly status: string;
}

/** A package or a job as it can be signed, or be held against what was. */
export interface SignedState {
  readonly job: SignedJob;
  /** null: of a job, which has none. */
  readonly summary: { readonly path: string; readonly bytes: number; readonly sha256: string } | null;
  readonly held: readonly string[];
  readonly layoutHeld: readonly string[];
  readonly open: readonly OpenRows[];
  /** The same, where somebody has accepted the release by name. */
  readonly accepted: readonly OpenRows[];
  /** Rows that were not checked, of all bases and the layout. */
  readonly notChecked: number;
  readonly bases: readonly SignedBase[];
  /** Rows of the layout by their rule. */
  readonly layout: Readonly<Record<string, string>>;
  readonly files: readonly SignedFile[];
}

/** A signature. `date` by the clock and in the time zone of who signed; `instant` the same in universal time. */
export interface SignatureRecord extends SignedState {
  readonly by: string;
  readonly date: string;
  readonly instant: string;
  readonly note: string;
  readonly program: string;
}

/** One base in which something is not as it was signed, and what. */
export interface ChangedBase {
  readonly mark: string;
  /** `plate`, `rods`, `rows washer-cover, rod-cover`; `new`, `gone`. */
  readonly what: readonly string[];
}

/** What lies between what was signed and what is there now. */
export interface SignatureChanges {
  /** Of the job's head: `revision A, now B`. */
  readonly job: readonly string[];
  /** To be looked at again: their plate, rods, quantity or rows are others, or they are new or gone. */
  readonly again: readonly ChangedBase[];
  /** The same plate, rods and rows in files of other bytes, as a revision letter makes them. */
  readonly otherBytes: readonly string[];
  /** Nothing of them is changed. */
  readonly untouched: number;
  /** How many bases were signed. */
  readonly signed: number;
  /** Rules of the layout whose rows are others. */
  readonly layout: readonly string[];
  /** Kinds of files of the job that are others, new or gone; not looked at where NEW is a job. */
  readonly documents: readonly string[];
}

/** A signature as it stands today. */
export interface SignatureState {
  /** Of the record, in the package. */
  readonly path: string;
  readonly by: string;
  readonly date: string;
  readonly note: string;
  readonly state: "valid" | "void";
  /** Why it is void, a sentence each. */
  readonly why: readonly string[];
  /** null where it is valid, or where the record cannot be read. */
  readonly changes: SignatureChanges | null;
}
