/** Signatures in words, a line each. */
import { listed } from "../diagnostics/listed.js";
import type { ChangedBase, SignatureChanges, SignatureState } from "./model.js";

const [MOST_BASES, MOST_MARKS, MOST_WHY] = [20, 12, 10];

/** `signed by J. Doe on 2026-11-29: VOID`, then why, what is to be looked at again, and how much is untouched. */
export function signatureLines({ path, by, date, note, state, why, changes }: SignatureState): readonly string[] {
  const who = by === "" ? `a record that cannot be read (${path})` : `signed by ${by} on ${date}`;
  const said = note === "" ? "" : ` (${note})`;
  if (state === "valid") return [`${who}${said}: stands: nothing of what was signed is changed`];
  const told = why.length > MOST_WHY ? [...why.slice(0, MOST_WHY), `and ${why.length - MOST_WHY} more`] : why;
  return [
    `${who}${said}: VOID`,
    ...told.map((each) => `  ${each}`),
    ...changeLines(changes).map((each) => `  ${each}`),
  ];
}

/** What is changed and what is not; none of a record that cannot be read. */
function changeLines(changes: SignatureChanges | null): readonly string[] {
  if (changes === null) return [];
  const { job, again, otherBytes, untouched, signed, layout, documents } = changes;
  const shown = again.slice(0, MOST_BASES).map(baseWords);
  const more = again.length > MOST_BASES ? [`and ${again.length - MOST_BASES} more bases`] : [];
  return [
    ...(job.length === 0 ? [] : [`job: ${job.join("; ")}`]),
    ...(again.length === 0 ? [] : [`to be looked at again: ${[...shown, ...more].join("; ")}`]),
    ...(layout.length === 0 ? [] : [`to be looked at again: rows of the layout ${layout.join(", ")}`]),
    ...(otherBytes.length === 0
      ? []
      : [`other files for the same plate, rods and rows: ${listed(otherBytes, MOST_MARKS)}`]),
    ...(documents.length === 0 ? [] : [`documents of the job that are others: ${documents.join(", ")}`]),
    `untouched: ${untouched} of ${signed} bases that were signed`,
  ];
}

function baseWords({ mark, what }: ChangedBase): string {
  return `${mark} (${what.join("; ")})`;
}

/** True for a void signature whose signer has not signed again what is there now. */
export function isUnrenewed(each: SignatureState, all: readonly SignatureState[]): boolean {
  return each.state === "void" && !all.some(({ by, state }) => state === "valid" && by === each.by);
}
