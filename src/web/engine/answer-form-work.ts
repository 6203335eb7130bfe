/** An answer form that came back, read as a job that names it reads it: every fault of it is told with its cell. */
import type { Answer } from "../../job/index.js";
import { spliced, spliceOf } from "../../readers/yaml-edit.js";
import type { AnswerDraft } from "../../tasks/live/model.js";
import { openJob } from "../../tasks/open.js";
import { inputsOf } from "./inputs.js";
import type { JobFiles } from "./protocol.js";
import { Refused } from "./refused.js";
import type { TaskKinds, TaskWork } from "./task-model.js";

type Ask = TaskKinds["answer-form"]["ask"];

/** Answers of the form by the numbers of their questions, with the values that were answered. */
export const readAnswers: TaskWork<"answer-form"> = async ({ files, date, name }, tell) => {
  tell({ done: 0, of: 2, what: "the job" });
  const own = await answersOf(files, date, null);
  tell({ done: 1, of: 2, what: name });
  const both = await answersOf(files, date, name);
  const read = both.slice(own.length);
  if (read.length === 0) throw new Refused([`${name} has no answer: fill in Answer, By and Date of a question`]);
  return read.map(draftOf);
};

/** Answers of the job with this form, or with none; those of a form come last. */
async function answersOf(files: JobFiles, date: Ask["date"], form: string | null): Promise<readonly Answer[]> {
  const opened = openJob(await inputsOf(withForm(files, form)), { date });
  if (!opened.ok) {
    const faults = opened.findings.filter(({ severity }) => severity === "error");
    const where = (place: { readonly cell?: string; readonly line?: number }): string =>
      place.cell ?? (place.line === undefined ? "" : `line ${place.line}`);
    throw new Refused(faults.map(({ at, message }) => `${where(at)}: ${message}`.replace(/^: /, "")));
  }
  return opened.value.job.answers.filter(({ kind }) => kind === "answered");
}

function withForm(files: JobFiles, form: string | null): JobFiles {
  const content = files.files.get(files.job) ?? "";
  const text = typeof content === "string" ? content : new TextDecoder().decode(content);
  const path = ["answersFrom"];
  const edit = form === null ? ({ kind: "remove", path } as const) : ({ kind: "set", path, text: form } as const);
  const splice = spliceOf(text, edit);
  const now = splice === null ? text : spliced(text, splice);
  return { ...files, files: new Map([...files.files, [files.job, now]]) };
}

function draftOf({ question, by, date, text, value }: Answer): AnswerDraft {
  const answered = value.kind === "given" ? { value: value.value } : {};
  return { kind: "answered", number: question, by, date, text, ...answered };
}
