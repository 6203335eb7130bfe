/** Characters that the sheet font lacks. */
import { isInSheetFont } from "./text-metrics.js";

/** Each once, in the order of the text; marks that join or stand over letters are not counted. */
export function missingLetters(text: string): readonly string[] {
  const missing = [...text.normalize("NFC")].filter((sign) => !isInSheetFont(sign) && !/[\p{M}\p{C}\p{Z}]/u.test(sign));
  return [...new Set(missing)];
}
