/** What was understood of a sheet in machine form: what `read --json` prints. */
import type { Finding } from "../diagnostics/finding.js";
import type { ReadAsEntry, ReadAsForm, ReadAsQuestion } from "./read-as-form.js";

/** Texts, lists and groups of keys. */
type Plain = string | readonly Plain[] | { readonly [key: string]: Plain };

/** `schema` grows by one when a key changes its meaning. */
export interface ReadForm {
  readonly schema: 1;
  readonly file: string;
  readonly sheet: string;
  /** in or mm; null where it is asked. */
  readonly unit: string | null;
  /** True where nothing is asked and nothing is at fault: the bases hold. */
  readonly understood: boolean;
  /** As a job file has them, texts as written. */
  readonly bases: readonly Plain[];
  readonly lines: readonly ReadAsEntry[];
  readonly questions: readonly ReadAsQuestion[];
  readonly findings: readonly Finding[];
}

/** The machine form; `bases` as plain values. */
export function readForm(
  { file, sheet, unit, entries, questions }: ReadAsForm,
  rest: Pick<ReadForm, "understood" | "bases" | "findings">,
): ReadForm {
  const { understood, bases, findings } = rest;
  return {
    schema: 1,
    file,
    sheet,
    unit: unit === "" ? null : unit,
    understood,
    bases,
    lines: entries,
    questions,
    findings,
  };
}
