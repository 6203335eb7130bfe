/** Reads a schedule as it was sent, with the answers that were given so far; once nothing is open, the job file that it gives. */
import type { Finding, Outcome } from "../../diagnostics/finding.js";
import { formatFinding, hasErrors } from "../../diagnostics/finding.js";
import { readable } from "../../diagnostics/printable.js";
import type { ReadAsEntry, ReadAsForm } from "../../formats/read-as-form.js";
import type { InputFile } from "../../readers/inputs.js";
import { spreadsheetKind } from "../../readers/spreadsheet-kind.js";
import { HEADINGS } from "../../schedule/index.js";
import type { AnsweredSheet } from "../../tasks/answered-sheet.js";
import { readAnswered, readingInto, writeAnsweredJob } from "../../tasks/answered-sheet.js";
import { openJob } from "../../tasks/open.js";
import { openQuestions } from "../../tasks/read-job.js";
import { askFaulty } from "../../tasks/said-for-all.js";
import { packagedFiles } from "./packaged-files.js";
import { Refused } from "./refused.js";
import type { TaskWork } from "./task-model.js";

const STEPS = 3;
/** Of a job that is only tried. */
const TRIED = { date: "2026-01-01", title: { number: "000", title: "tried", revision: "A" } };

/** `title` null: the job file is not asked for. */
export const readSchedule: TaskWork<"read"> = async (ask, tell) => {
  const { name, content, answers, jobName, title, into } = ask;
  tell({ done: 0, of: STEPS, what: `opening ${name}` });
  const file = await given(openSheet(name, content));
  tell({ done: 1, of: STEPS, what: "its cells" });
  const sheet: AnsweredSheet = { name, file, answers, ...(into === null ? {} : { into }) };
  const reading = await given(readAnswered(sheet));
  const { form, unit, unitBecause, bases } = reading;
  tell({ done: 2, of: STEPS, what: "its bases" });
  const job = reading.isUnderstood
    ? writeAnsweredJob({ ...sheet, jobName, title: title ?? TRIED.title }, reading)
    : null;
  const faults = job === null ? [] : faultsOfJob(job, jobName, sheet);
  const findings = [...reading.findings, ...faults];
  const faulty = unit === null ? [] : askFaulty(answers, unit, packagedFiles());
  const isUnderstood = reading.isUnderstood && faults.length === 0 && faulty.length === 0;
  const isHandedOut = job !== null && title !== null && isUnderstood;
  return {
    ...{ unit, unitBecause, findings, isUnderstood, baseCount: bases.length },
    form: isHandedOut ? { ...form, entries: [] } : shown(unit === null ? { ...form, entries: bareCells(sheet) } : form),
    questions: [...faulty, ...openQuestions({ ...reading, findings })],
    overwrites: into !== null && readingInto(into) === "changed",
    headings: [...HEADINGS.map((heading) => heading.name), "note", "left out"],
    job: isHandedOut ? new TextDecoder().decode(job) : null,
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

/** What a job has against cells that were understood well; what it has against other keys is mended in the job. */
function faultsOfJob(job: Uint8Array, jobName: string, { name, file }: AnsweredSheet): readonly Finding[] {
  const files = new Map<string, InputFile>([...packagedFiles(), [jobName, job], [name, file]]);
  const opened = openJob({ job: jobName, files }, { date: TRIED.date });
  return opened.findings.filter((finding) => hasErrors([finding]) && finding.at.cell !== undefined);
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
