/** What a proof answers. */
import type { CutFilePicture } from "../../formats/dxf-picture.js";
import type { ProvedFile, ProvedPackage } from "../../proof/index.js";
import type { AnswerFile } from "./answer-file.js";
import type { ShownSignature } from "./shown-signature.js";

/** A cut file with its picture; null: there is nothing to draw, or it is one of many that are as they should be. */
export interface ProvedPicture {
  readonly file: ProvedFile;
  /** Its figures, and which plate of the job it is. */
  readonly facts: readonly string[];
  readonly picture: CutFilePicture | null;
}

/** A package with its signatures in words. */
export interface ProvedArchive {
  readonly proved: ProvedPackage;
  readonly signatures: readonly ShownSignature[];
}

/** The answer sheet of a proof: files with a stop first. */
export interface ProofAnswer {
  readonly sentence: string;
  readonly isStopped: boolean;
  readonly proved: readonly ProvedPicture[];
  readonly packages: readonly ProvedArchive[];
  /** Files that could not be read, and what is said of the job. */
  readonly said: readonly string[];
  /** As a terminal shows it. */
  readonly text: string;
  readonly files: readonly AnswerFile[];
}
