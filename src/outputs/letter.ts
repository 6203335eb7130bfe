/** What letter and answer form share: when they are made, and their names. */
import type { Job } from "../job/model/job.js";
import type { Letter } from "../summary/letter.js";
import { letterOf } from "../summary/letter.js";
import type { Question } from "../summary/questions.js";
import type { Surroundings } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";

/** null where nothing is asked. */
export function letterIn({ questions, closedQuestions }: Surroundings): Letter | null {
  const letter = letterOf(questions(), closedQuestions());
  return letter.asked.length === 0 ? null : letter;
}

/** Questions that an answer is asked to. */
export function askedIn({ questions }: Surroundings): readonly Question[] {
  return questions().filter(({ status }) => status !== "answered");
}

/** `engineer/24-118_rev-B_letter.pdf` and its like. */
export function engineerPath(job: Job, ending: string): string {
  return `${FOLDERS.engineer}/${jobStem(job)}_${ending}`;
}

/** The form that a letter names. */
export const ANSWER_FORM = "answers.xlsx";
