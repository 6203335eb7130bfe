/** What a comparison answers. */
import type { AnswerFile } from "./answer-file.js";
import type { AnswerTable } from "./answer-table.js";
import type { ShownSignature } from "./shown-signature.js";

/** The answer sheet of a comparison. */
export interface CompareAnswer {
  readonly sentence: string;
  readonly isBad: boolean;
  /** Job, revision and status of both. */
  readonly sides: readonly string[];
  readonly templates: AnswerTable;
  readonly rods: AnswerTable | null;
  /** What the words of the tables mean. */
  readonly meanings: readonly (readonly [string, string])[];
  /** Signatures of the old one, for the new one. */
  readonly signatures: readonly ShownSignature[];
  readonly said: readonly string[];
  /** As a terminal shows it. */
  readonly text: string;
  readonly files: readonly AnswerFile[];
}
