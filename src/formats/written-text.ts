/** Texts as they are written on sheets, whatever the format. */
import { readable } from "../diagnostics/printable.js";

/** ASCII and Latin-1 without controls are written as they are. */
const IS_PLAIN = /^[\x20-\x7e\xa0-\xac\xae-\xff]*$/;

/** Signs that act on a reader are escaped, and an accent is one letter with its base, as fonts have it. */
export function writtenText(text: string): string {
  return IS_PLAIN.test(text) ? text : readable(text).normalize("NFC");
}
