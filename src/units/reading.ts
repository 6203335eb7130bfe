/** What a reading of text gives: the value, or one sentence that says what was read and what is allowed. */
export type Reading<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

/** A reading that failed, with its sentence. */
export function refuse(message: string): { readonly ok: false; readonly message: string } {
  return { ok: false, message };
}

/** The offending text in quotes, control characters replaced, cut to 40 characters. */
export function quote(text: string): string {
  const shown = text.replace(/\p{C}/gu, "?");
  return `"${shown.length > 40 ? `${shown.slice(0, 40)}...` : shown}"`;
}

const DASHES = /[\u2010-\u2015\u2212\uFE63\uFF0D]/g;
const SPACES = /[\s\u00A0\u2000-\u200A\u202F\u205F\u3000]+/g;
const SINGLE_PRIMES = /[\u2032\u2018\u2019\u02B9\u00B4`]/g;
const DOUBLE_PRIMES = /[\u2033\u201C\u201D\u02BA]|''/g;
const FRACTIONS = /[\u00BC-\u00BE\u2150-\u215E]/g;

/** Plain text for typographic dashes, spaces, primes, and vulgar fractions: `1½″` becomes `1 1/2"`. */
export function plainText(text: string): string {
  return text
    .replace(FRACTIONS, (sign) => ` ${sign.normalize("NFKC")}`)
    .replace(/\u2044/g, "/")
    .replace(DASHES, "-")
    .replace(SINGLE_PRIMES, "'")
    .replace(DOUBLE_PRIMES, '"')
    .replace(SPACES, " ")
    .replace(/- (?=\d+\/\d)/g, (dash, at: number, whole: string) => (whole[at - 1] === " " ? dash : "-"))
    .trim();
}
