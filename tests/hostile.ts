/** Signs in names that would write on a reader's screen (ECMA-48 sequences, C1, bidirectional and unseen signs), and what may be shown. */
import { existsSync, readFileSync } from "node:fs";
import { parse } from "yaml";

/** Clears the screen, hides what follows, rings, goes to the start of the line, reorders, breaks a line. */
export const HOSTILE = "X\u001b[2J\u001b[8m\u0007\rno STOP\n\u009b1A\u202eZ\u200b\u2028\u007f";
/** As HOSTILE, without what ends a line of a text file or of CSV. */
export const HOSTILE_LINE = HOSTILE.replace(/[\r\n\u2028]/g, "");

/** Select graphic rendition, as the program uses it. */
const STYLES = new RegExp(`${String.fromCharCode(27)}\\[(0|1|2|31|32|33|36)m`, "g");

/** Signs of an output that no reader should get: all that cannot be seen but line breaks, and the program's own styles in colour. */
export function unseenIn(output: string, color = false): readonly string[] {
  const plain = color ? output.replace(STYLES, "") : output;
  return [...new Set(plain.match(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu))]
    .filter((sign) => sign !== "\n")
    .map(JSON.stringify as (sign: string) => string);
}

/** Plain values of a document. */
export type Value = string | number | boolean | null | readonly Value[] | { readonly [key: string]: Value };

/** A job file that comes with the program, as plain values; JSON of it is a job file again. */
export function starterValue(name: string): Value {
  const file = new URL(`../templates/start/${name}.yaml`, import.meta.url);
  if (!existsSync(file)) throw new Error(`no starter ${name}`);
  return parse(readFileSync(file, "utf8"), { schema: "failsafe" });
}

/** The document once for each of its leaves and keys, with that one changed; what is not there stays out. */
export function* eachChanged(
  value: Value,
  changeLeaf: (text: string) => string,
  changeKey: ((key: string) => string) | null,
): Generator<Value> {
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries())
      for (const changed of eachChanged(item, changeLeaf, changeKey)) yield value.with(index, changed);
  } else if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value);
    for (const [index, [key, item]] of entries.entries()) {
      for (const changed of eachChanged(item, changeLeaf, changeKey))
        yield Object.fromEntries(entries.with(index, [key, changed]));
      if (changeKey !== null) yield Object.fromEntries(entries.with(index, [changeKey(key), item]));
    }
  } else yield changeLeaf(String(value));
}
