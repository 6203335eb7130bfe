/** Files that a piece of work leaves, to be looked at and saved. */
import { newLeanDocument } from "../../formats/lean-document.js";
import type { ResultOutput } from "../../outputs/index.js";
import { VERSION } from "../app/version.js";

/** One of them. */
export interface AnswerFile {
  readonly path: string;
  /** What it is, in a few words. */
  readonly title: string;
  readonly blob: Blob;
}

/** All that a result leaves; the writer of PDF is loaded for it. */
export async function resultFiles<Result>(
  outputs: readonly ResultOutput<Result>[],
  result: Result,
  tell: (path: string) => void,
): Promise<readonly AnswerFile[]> {
  const { pdfMaker } = await import("./pdf-maker.js");
  const around = { document: newLeanDocument(), version: VERSION, pdf: pdfMaker };
  const files: AnswerFile[] = [];
  for (const output of outputs)
    for (const { path, bytes } of output.write(result, around)) {
      files.push(answerFile(path, output.title, bytes));
      tell(path);
    }
  return files;
}

/** Bytes as a file of the page. */
export function answerFile(path: string, title: string, content: Uint8Array | string): AnswerFile {
  return { path, title, blob: new Blob([typeof content === "string" ? content : content.slice()]) };
}
