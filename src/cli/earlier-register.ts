/** The register of questions of the package that stands where the next one goes, or of the newest superseded one in it. */
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod";
import { splitSummary } from "../compare/split-summary.js";
import { compareMarks } from "../job/model/mark-order.js";
import { parseQuestionNumber } from "../job/model/register.js";
import { SUPERSEDED } from "../outputs/index.js";
import { greatestOf } from "../units/extremes.js";
import { chunksOf } from "./file-system.js";
import { SUMMARY } from "./package-contents.js";

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

/** null where no package is there, or none that has questions by numbers; what cannot be read is none. */
export function findEarlierRegister(folder: string): EarlierRegister | null {
  const own = registerIn(folder, "");
  return own ?? newestSuperseded(folder);
}

/** Numbers only grow: the one that has given most is the newest; of several the last by the name of its folder. */
function newestSuperseded(folder: string): EarlierRegister | null {
  const shelf = join(folder, SUPERSEDED);
  if (!isFolder(shelf)) return null;
  const names = readdirSync(shelf).sort(compareMarks);
  const found = names.flatMap((name) => registerIn(folder, `${SUPERSEDED}/${name}`) ?? []);
  const most = greatestOf(found.map(greatest), 0);
  return found.findLast((register) => greatest(register) === most) ?? null;
}

function greatest({ content }: EarlierRegister): number {
  const read = head.safeParse(JSON.parse(content));
  const numbers = read.success
    ? read.data.questions.map(({ number }) => parseQuestionNumber(number)?.question ?? 0)
    : [];
  return numbers.reduce((most, number) => Math.max(most, number), 0);
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

function registerIn(folder: string, where: string): EarlierRegister | null {
  const path = join(folder, where, SUMMARY);
  if (!existsSync(path) || !statSync(path).isFile()) return null;
  const content = [...splitSummary(chunksOf(path))].find(({ kind }) => kind === "rest")?.text ?? "";
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
