/** Reads a schedule as it was sent, with the answers that were given so far; once nothing is open, the job file that it gives. */

import type { Outcome } from "../../diagnostics/finding.js";
import { formatFinding } from "../../diagnostics/finding.js";
import { readable } from "../../diagnostics/printable.js";
import type { ReadAsEntry, ReadAsForm } from "../../formats/read-as-form.js";
import type { InputFile } from "../../readers/inputs.js";
import { spreadsheetKind } from "../../readers/spreadsheet-kind.js";
import { HEADINGS } from "../../schedule/index.js";
import type { AnsweredSheet } from "../../tasks/answered-sheet.js";
import { readAnswered, writeAnsweredJob } from "../../tasks/answered-sheet.js";
import { openQuestions } from "../../tasks/read-job.js";
import type { TaskWork } from "./task-model.js";
import { Refused } from "./task-model.js";

/** `title` null: the job file is not asked for. */
export const readSchedule: TaskWork<"read"> = async ({ name, content, answers, jobName, title }, tell) => {
  tell({ done: 0, of: 2, what: `opening ${name}` });
  const file = await given(openSheet(name, content));
  tell({ done: 1, of: 2, what: "reading its cells" });
  const sheet = { name, file, answers };
  const reading = await given(readAnswered(sheet));
  const { form, findings, unit, unitBecause, bases, isUnderstood } = reading;
  const job = title === null || !isUnderstood ? null : writeAnsweredJob({ ...sheet, jobName, title }, reading);
  return {
    ...{ unit, unitBecause, isUnderstood, findings, baseCount: bases.length },
    form: shown(unit === null ? { ...form, entries: bareCells(sheet) } : form),
    questions: openQuestions(reading),
    headings: [...HEADINGS.map((heading) => heading.name), "note", "left out"],
    job: job === null ? null : new TextDecoder().decode(job),
  };
};

/** A workbook is opened by a reader of its own, loaded when there is one. */
async function openSheet(name: string, content: string | Uint8Array): Promise<Outcome<InputFile>> {
  if (spreadsheetKind(name, content) !== "xlsx" || typeof content === "string")
    return { ok: true, value: content, findings: [] };
  const { openWorkbook } = await import("../../readers/workbook.js");
  return openWorkbook(content, name);
}

async function given<T>(outcome: Outcome<T> | Promise<Outcome<T>>): Promise<T> {
  const come = await outcome;
  if (come.ok) return come.value;
  throw new Refused(come.findings.map(formatFinding));
}

/** While the unit is asked nothing is taken: what the cells say, to answer by. */
function bareCells(sheet: AnsweredSheet): ReadAsForm["entries"] {
  const read = readAnswered(sheet, "in");
  const cells = (read.ok ? read.value.form.entries : []).filter(({ cell }) => cell !== "");
  return cells.map((entry): ReadAsEntry => {
    const isAsked = entry.key !== "" || entry.givenBy === "asked";
    const nothing = { name: "", key: "", value: "", unit: "" };
    return isAsked ? { ...entry, ...nothing, givenBy: "asked", remark: "the unit of bare numbers" } : entry;
  });
}

/** Signs of a sheet that cannot be seen, or that reorder what stands around them, are shown as escapes. */
function shown({ entries, ...form }: ReadAsForm): ReadAsForm {
  return {
    ...form,
    entries: entries.map((entry) => ({
      ...entry,
      heading: readable(entry.heading),
      written: readable(entry.written),
      value: readable(entry.value),
    })),
  };
}
