/** Texts as files. */
import type { PathAndBytes } from "./model.js";

const encoder = new TextEncoder();

/** A text in UTF-8 at its path inside the package. */
export function textFile(path: string, text: string): PathAndBytes {
  return { path, bytes: encoder.encode(text) };
}
