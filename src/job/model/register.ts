/** Questions that earlier packages of a job asked, by their numbers: a number stays with its cause over all revisions. */

/** open: nobody has said anything. closed: its rows no longer fail, or are no more. */
export type QuestionState = "open" | "answered" | "accepted" | "closed";

/** What a question asked about, as it stood in one revision; in `unit`, which is "" for a count. */
export interface AskedFigures {
  readonly revision: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  /** By which number it was asked then: a part goes on from that of the question which it was a part of. */
  readonly number: string;
}

/** Rows of one base that a question is about; `mark` "": of the layout. */
export interface QuestionPlace {
  readonly mark: string;
  readonly subjects: readonly string[];
}

/** A question as the package before has it. */
export interface RegisteredQuestion {
  /** `Q-7`; `Q-7.2` for a part of it whose figures or answer became others. */
  readonly number: string;
  readonly rule: string;
  readonly clause: string;
  readonly edition: string;
  /** What the value is, as a noun phrase. */
  readonly measured: string;
  readonly places: readonly QuestionPlace[];
  /** Oldest first, one or more; a revision whose figures are those of the one before is not listed. */
  readonly asked: readonly AskedFigures[];
  readonly text: string;
  readonly status: QuestionState;
  /** The revision in which it was closed; "" where it is not. */
  readonly closedIn: string;
}

/** Every number that was ever given in a job. */
export interface QuestionRegister {
  /** Of the package that it is from. */
  readonly job: string;
  readonly revision: string;
  readonly questions: readonly RegisteredQuestion[];
}

/** Numbers of all that a job asks, by base, "" for the layout: one a row that is put to the engineer of record, worst first. */
export type QuestionNumbers = ReadonlyMap<string, readonly string[]>;

/** A number taken apart: `Q-7` is part 1 of 7. */
export interface QuestionNumber {
  readonly question: number;
  readonly part: number;
}

/** null for a text that is no number of a question; `q7`, `Q 7` and `7` are understood too, as people write them. */
export function parseQuestionNumber(text: string): QuestionNumber | null {
  const [, question, part] = /^\s*(?:Q\s*-?\s*)?0*([1-9]\d{0,5})(?:\.0*([1-9]\d{0,5}))?\s*$/i.exec(text) ?? [];
  if (question === undefined) return null;
  return { question: Number(question), part: part === undefined ? 1 : Number(part) };
}

/** `Q-7`, `Q-7.2`. */
export function questionNumber({ question, part }: QuestionNumber): string {
  return part === 1 ? `Q-${question}` : `Q-${question}.${part}`;
}

/** Negative where `a` comes before `b`. */
export function compareQuestionNumbers(a: string, b: string): number {
  const [one, other] = [parseQuestionNumber(a), parseQuestionNumber(b)];
  if (one === null || other === null) return a < b ? -1 : a > b ? 1 : 0;
  return one.question - other.question || one.part - other.part;
}

/** The figures that a question stood at in the package before. */
export function lastAsked({ asked }: Pick<RegisteredQuestion, "asked">): AskedFigures | undefined {
  return asked.at(-1);
}

/** One that was closed in this same revision was not issued as closed yet: its number comes back with its cause. */
export function isToGoOn({ status, closedIn }: RegisteredQuestion, revision: string): boolean {
  return status !== "closed" || closedIn === revision;
}
