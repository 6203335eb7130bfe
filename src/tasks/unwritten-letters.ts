/** Texts of a job with characters that the sheet font lacks: what the sheets show instead is said before they are drawn. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import type { Job } from "../job/index.js";
import { missingLetters } from "../sheets/missing-letters.js";

const MOST_LETTERS = 8;

/** A warning for each text. `file` is the job file's name. */
export function unwrittenLetters(job: Job, file: string): readonly Finding[] {
  return textsOf(job).flatMap(([path, text]) => {
    const missing = missingLetters(text);
    if (missing.length === 0) return [];
    const letters = listed(missing, MOST_LETTERS, " ");
    const message = `${path} has ${letters}, not in the sheet font: a PDF shows a box for each, an SVG what the viewer has; the sheet font has Latin, Greek and Cyrillic letters`;
    return [{ code: "letters-not-in-font", severity: "warning", at: { file, line: 1, column: 1, path }, message }];
  });
}

/** What of a job is printed as it was typed. */
function textsOf(job: Job): readonly (readonly [string, string])[] {
  return [
    ["job.number", job.number],
    ["job.title", job.title],
    ["job.revision", job.revision],
    ["job.owner", job.owner],
    ["job.drawnBy", job.drawnBy],
    ["job.tolerances", job.tolerances],
    ["job.drawing.number", job.drawing.number],
    ["job.drawing.revision", job.drawing.revision],
    ...job.revisions.map(({ revision, text }) => [`job.revisions ${revision}`, text] as const),
    ...job.bases.map(({ mark, note }) => [`note of base ${mark}`, note] as const),
    ...job.bases.flatMap(({ mark, template: { grade } }) =>
      grade.kind === "missing" ? [] : [[`template.grade of base ${mark}`, grade.value] as const],
    ),
    ...(job.plan?.lines.map(({ name }) => [`grid line ${name}`, name] as const) ?? []),
  ];
}
