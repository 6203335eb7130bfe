/** What a signature answers. */
import type { AnswerFile } from "./answer-file.js";
import type { ShownSignature } from "./shown-signature.js";

/** A package with its new record. */
export interface SignAnswer {
  readonly sentence: string;
  /** True where something is held, asked or not released, and signed as such. */
  readonly isQualified: boolean;
  readonly lines: readonly string[];
  readonly sha256: string;
  readonly means: readonly string[];
  /** Signatures that stood before, in lines. */
  readonly before: readonly ShownSignature[];
  readonly package: AnswerFile;
  readonly record: AnswerFile;
}
