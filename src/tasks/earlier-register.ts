/** The register of questions of a package, which the numbers of the next one go on from. */
import * as z from "zod";
import { splitSummary } from "../compare/split-summary.js";
import { parseQuestionNumber } from "../job/model/register.js";

/** What was found: the summary without its bases, and what is said of it. */
export interface EarlierRegister {
  readonly content: string;
  /** Path inside the folder, "" for the package itself. */
  readonly where: string;
  readonly job: string;
  readonly revision: string;
  /** How many questions it has. */
  readonly questions: number;
}

const head = z.object({
  job: z.object({ number: z.string(), revision: z.string() }),
  questions: z.array(z.object({ number: z.string() })),
});

/** The greatest number that a register has given; 0: none. */
export function greatestNumber({ content }: EarlierRegister): number {
  const read = head.safeParse(JSON.parse(content));
  const numbers = read.success
    ? read.data.questions.map(({ number }) => parseQuestionNumber(number)?.question ?? 0)
    : [];
  return numbers.reduce((most, number) => Math.max(most, number), 0);
}

/** null where this is no summary of a package, or of one that has no questions by numbers. */
export function readEarlierRegister(summary: Iterable<Uint8Array>, where: string): EarlierRegister | null {
  const content = [...splitSummary(summary)].find(({ kind }) => kind === "rest")?.text ?? "";
  const read = head.safeParse(parsed(content));
  if (!read.success) return null;
  const { job, questions } = read.data;
  return { content, where, job: job.number, revision: job.revision, questions: questions.length };
}

function parsed(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return null;
  }
}
