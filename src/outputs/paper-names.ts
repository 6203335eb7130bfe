/** Papers that offices print on, by name. */

/** As printers name them. */
export type PaperName = "letter" | "tabloid" | "a4" | "a3";

/** Every paper, smallest first of each system. */
export const PAPER_NAMES: readonly PaperName[] = ["letter", "tabloid", "a4", "a3"];

/** `11x17` and `ledger` are other names of tabloid; null for a paper that there is not. */
export function paperNamed(words: string): PaperName | null {
  const wanted = words.toLowerCase().replace(/[ "×]/g, (sign) => (sign === "×" ? "x" : ""));
  if (["11x17", "17x11", "ledger"].includes(wanted)) return "tabloid";
  return PAPER_NAMES.find((name) => name === wanted) ?? null;
}
