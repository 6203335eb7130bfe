/**
 * Texts for a terminal. What people and files hand over may hold signs that move the cursor, hide or reorder what stands
 * around them: they are shown as escapes. A text for a terminal is made in two ways only, and both escape every value first:
 * `terminalText` around a function that writes one, and `terminalLine` around a template. Streams take nothing else.
 */

declare const isPrintable: unique symbol;

/** A text without control signs, but for line breaks and the styles that the program itself put there. */
export type Printable = string & { readonly [isPrintable]: true };

/** Control signs of C0, DEL and C1, formats (bidirectional, zero-width, tags), half signs, line and paragraph separators. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
const HAS_UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;

/** A text on one line, every sign that cannot be seen as `\u001b`, above U+FFFF as `\u{e0001}`. Again gives the same. */
export function printable(text: string): Printable {
  return (HAS_UNPRINTABLE.test(text) ? text.replace(UNPRINTABLE, escaped) : text) as Printable;
}

function escaped(sign: string): string {
  const code = (sign.codePointAt(0) ?? 0).toString(16);
  return code.length > 4 ? `\\u{${code}}` : `\\u${code.padStart(4, "0")}`;
}

/** Controls but breaks and tabs, signs that reorder, half signs and what XML cannot hold (XML 1.0, 2.2). */
const ACTING = /[^\P{Cc}\t\r\n]|[\p{Bidi_Control}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/gu;

/** A text for a file that people open: its breaks and the joiners of its script stay, what acts on its reader is escaped. */
export function readable(text: string): string {
  return text.replace(ACTING, escaped);
}

/** A function that writes a text for a terminal: every text in its arguments, however deep, is made printable before it sees it. */
export function terminalText<Args extends readonly unknown[]>(
  write: (...args: Args) => string,
): (...args: Args) => Printable {
  return (...args) => {
    const known = new Map<object, unknown>();
    return write(...(args.map((arg) => printableValue(arg, known)) as unknown as Args)) as Printable;
  };
}

/** A template as a text for a terminal: what is put into it is made printable, what stands in it is kept. */
export function terminalLine(parts: TemplateStringsArray, ...values: readonly (string | number)[]): Printable {
  return parts.map((part, index) => part + printable(String(values[index] ?? ""))).join("") as Printable;
}

/** Texts for a terminal, one after the other. */
export function joinPrintable(texts: readonly Printable[], separator: "" | "\n" | "\n\n" = ""): Printable {
  return texts.join(separator) as Printable;
}

/** JSON with every unprintable sign in its texts escaped, as JSON itself allows; line breaks between values stay. */
export function printableJson(value: unknown, indent?: number): Printable {
  const json = JSON.stringify(value, null, indent);
  return json.replace(/[\p{Cf}\p{Zl}\p{Zp}\u007F-\u009F]/gu, (sign) =>
    Array.from({ length: sign.length }, (_, at) => escaped(String.fromCharCode(sign.charCodeAt(at)))).join(""),
  ) as Printable;
}

/** A value in machine form for a stream, indented by two, with a line break at its end. */
export function terminalJson(value: unknown): Printable {
  return `${printableJson(value, 2)}\n` as Printable;
}

/** The value itself where nothing in it has to be escaped, else a copy. Plain data alone is looked into. */
function printableValue(value: unknown, known: Map<object, unknown>): unknown {
  if (typeof value === "string") return printable(value);
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return value;
  if (known.has(value)) return known.get(value);
  known.set(value, value);
  const copy = printableCopy(value, known);
  known.set(value, copy);
  return copy;
}

function printableCopy(value: object, known: Map<object, unknown>): unknown {
  const each = (part: unknown): unknown => printableValue(part, known);
  if (Array.isArray(value)) {
    const items = value.map(each);
    return items.some((item, index) => item !== value[index]) ? items : value;
  }
  if (value instanceof Map) return new Map([...value].map(([key, part]) => [each(key), each(part)]));
  if (value instanceof Set) return new Set([...value].map(each));
  if (!isPlain(value)) return value;
  const entries = Object.entries(value);
  const printed = entries.map(([key, part]) => [printable(key), each(part)] as const);
  const isSame = printed.every(([key, part], index) => key === entries[index]?.[0] && part === entries[index]?.[1]);
  return isSame ? value : Object.fromEntries(printed);
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
