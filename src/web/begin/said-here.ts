/** Sentences about a sheet as the page says them: without lines of the job file, which the page writes itself. */
import { readable } from "../../diagnostics/printable.js";

/** Ways out that are lines of a job file, each with what stands in its place. */
const OF_THE_JOB_FILE: readonly RegExp[] = [
  /,? or in the job,? as cells: \{[^}]*\}/g,
  / in the job,? as cells: \{[^}]*\}/g,
  /, as cells: \{[^}]*\}/g,
  /, or name the sheet that is meant: sheet: NAME/g,
  / ?\((?:answer in the job: |columns: \{).*\)$/g,
];

/** The sentence; signs that cannot be seen are shown as escapes. */
export function saidHere(sentence: string): string {
  return readable(OF_THE_JOB_FILE.reduce((text, line) => text.replace(line, ""), sentence));
}
