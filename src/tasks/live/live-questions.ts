/** Questions of a job as they are answered in place, and answers that answer none of them. */
import { startAnswerBook } from "../../checks/answers.js";
import type { CheckRow } from "../../checks/index.js";
import { ruleSeverities } from "../../checks/index.js";
import type { Answer, Job } from "../../job/index.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { KeyEdit } from "../../readers/yaml-edit.js";
import { letterOf, letterQuestion } from "../../summary/letter.js";
import type { Question, Questions } from "../../summary/questions.js";
import { summarizeAnswer } from "../../summary/summarize.js";
import type { RowsOf } from "./ledger.js";
import type { AskedQuestion, LiveQuestions } from "./model.js";

/** `root`: of the job file as it stands; null where it is not that of the job. */
export function liveQuestions(
  job: Job,
  parts: readonly RowsOf[],
  questions: Questions,
  root: SourceNode | null,
): Omit<LiveQuestions, "turn" | "isSettled"> {
  const places = placesOfAnswers(job, root);
  return {
    asked: questions.list().map((question) => askedQuestion(question, job, places, root)),
    closed: letterOf([], questions.closed()).closed,
    unused: unusedAnswers(job, parts).map((unused) => ({
      ...summarizeAnswer(unused),
      withdrawal: withdrawalOf([unused.answer], places, root),
    })),
  };
}

function unusedAnswers(job: Job, parts: readonly RowsOf[]) {
  const book = startAnswerBook(job, ruleSeverities);
  for (const { path, mark, rows } of parts) {
    if (path === null) book.addLayout(rows);
    else book.addBase(mark, rows);
  }
  return book.unused();
}

function askedQuestion(
  question: Question,
  { answers }: Job,
  places: AnswerPlaces,
  root: SourceNode | null,
): AskedQuestion {
  const { status, check, places: asked } = question;
  const own = answers.filter((answer) => isTo(answer, question));
  return { ...letterQuestion(question), status, check, places: asked, withdrawal: withdrawalOf(own, places, root) };
}

/** True of the answers that were taken as the question's. */
function isTo(answer: Answer, { number, check, places }: Question): boolean {
  const said = answer.kind === "answered" ? check.answer : check.accepted;
  const isSame = said?.by === answer.by && said.date === answer.date && said.text === answer.text;
  if (answer.question !== "") return isSame && answer.question === number;
  const isLayout = places.some(({ mark }) => mark === "");
  return isSame && answer.rule === check.rule && (isLayout || places.some(({ mark }) => mark === answer.mark));
}

/** Lists of the job file that answers stand in. */
type AnswerList = "answers" | "accepted";

/** Where answers stand in the job file; those of a form stand nowhere in it. */
type AnswerPlaces = ReadonlyMap<Answer, { readonly list: AnswerList; readonly index: number }>;

const LISTS: Readonly<Record<Answer["kind"], AnswerList>> = { answered: "answers", accepted: "accepted" };

/** Those of the job file come before those of a form. */
function placesOfAnswers({ answers }: Job, root: SourceNode | null): AnswerPlaces {
  const kinds: readonly Answer["kind"][] = ["answered", "accepted"];
  return new Map(
    kinds.flatMap((kind) => {
      const list = LISTS[kind];
      const own = answers.filter((answer) => answer.kind === kind).slice(0, countIn(root, list));
      return own.map((answer, index) => [answer, { list, index }] as const);
    }),
  );
}

/** Items of a list of the job file. */
function countIn(root: SourceNode | null, list: AnswerList): number {
  const node = findNode(root ?? undefined, list);
  return node?.kind === "list" ? node.items.length : 0;
}

/** From the last on, so that those before keep their places; a list that would be left empty goes whole. */
function withdrawalOf(answers: readonly Answer[], places: AnswerPlaces, root: SourceNode | null): readonly KeyEdit[] {
  const own = answers.flatMap((answer) => places.get(answer) ?? []);
  return (["accepted", "answers"] as const).flatMap((list): KeyEdit[] => {
    const indices = own.filter((place) => place.list === list).map(({ index }) => index);
    if (indices.length > 0 && indices.length === countIn(root, list)) return [{ kind: "remove", path: [list] }];
    return indices.toSorted((a, b) => b - a).map((index) => ({ kind: "remove", path: [list, index] }));
  });
}

/** Rows of every base and of the layout, as questions are gathered from. */
export function addParts(questions: Questions, job: Job, parts: readonly RowsOf[]): void {
  const bases = new Map(job.bases.map((base) => [base.mark, base]));
  for (const { path, mark, rows } of parts) {
    const base = bases.get(mark);
    if (path === null) questions.addLayout(rows satisfies readonly CheckRow[]);
    else if (base !== undefined) questions.addBase({ base, rows });
  }
}
