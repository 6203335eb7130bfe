/** Splices of texts, and the changes of keys that become splices. */

/** `at`: characters from the start; `was` stands there, and `now` is put in its place. */
export interface Splice {
  readonly at: number;
  readonly was: string;
  readonly now: string;
}

/** Keys and indices from the root. */
export type KeyPath = readonly (string | number)[];

/**
 * What is changed: a value as a person types it, or, where it is `flow`, a list or group as YAML on one line; a key or item
 * taken out; an item of a list as its YAML lines; an item put elsewhere in its list; an item written once more, below itself,
 * with these values in it. `everywhere`: within a value that is named (`&name`) too, so that it changes wherever it is repeated.
 */
export type KeyEdit =
  | {
      readonly kind: "set";
      readonly path: KeyPath;
      readonly text: string;
      readonly flow?: true;
      readonly everywhere?: boolean;
    }
  | { readonly kind: "remove"; readonly path: KeyPath; readonly everywhere?: boolean }
  | { readonly kind: "insert"; readonly path: KeyPath; readonly index: number; readonly lines: string }
  | { readonly kind: "move"; readonly path: KeyPath; readonly from: number; readonly to: number }
  | {
      readonly kind: "duplicate";
      readonly path: KeyPath;
      readonly sets: readonly { readonly path: KeyPath; readonly text: string }[];
    };

/** The text after a splice. */
export function spliced(text: string, { at, was, now }: Splice): string {
  return text.slice(0, at) + now + text.slice(at + was.length);
}

/** What takes a splice back. */
export function inverse({ at, was, now }: Splice): Splice {
  return { at, was: now, now: was };
}

/** The splice between two texts: what they have in common at their ends stays. */
export function spliceBetween(old: string, now: string): Splice {
  const most = Math.min(old.length, now.length);
  let from = 0;
  while (from < most && old[from] === now[from]) from += 1;
  let same = 0;
  while (same < most - from && old.at(-1 - same) === now.at(-1 - same)) same += 1;
  return { at: from, was: old.slice(from, old.length - same), now: now.slice(from, now.length - same) };
}

/** A text as YAML reads it back unchanged, wherever it stands. */
export function scalarText(text: string): string {
  const isPlain =
    /^[A-Za-z0-9./+-][^#:,[\]{}&*!|>'"%@`\n\r\t]*$/.test(text) &&
    text === text.trim() &&
    !/^[-?.](\s|$|-|\.)/.test(text);
  return isPlain && !/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(text) && text !== "~" && text !== "null"
    ? text
    : quotedText(text);
}

/** Between double quotes; JSON reads it too. */
export function quotedText(text: string): string {
  return JSON.stringify(text).replace(/[\u007f-\u009f\u2028\u2029\ufeff\ufffe\uffff]/g, (sign) => {
    return `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`;
  });
}
