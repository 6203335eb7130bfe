/** The letter to the engineer of record as text, to be pasted into a message. */
import { readable } from "../diagnostics/printable.js";
import type { Letter, LetterQuestion, SettledQuestion } from "../summary/letter.js";
import { acceptedWords, LETTER_CAUTIONS, openingWords } from "../summary/letter.js";
import { wrap } from "./ledger-text.js";

/** Whose letter it is. */
export interface LetterHead {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  /** Of the release: never `released` alone where something is not. */
  readonly status: string;
  readonly date: string;
  readonly drawing: { readonly number: string; readonly revision: string };
}

const WIDTH = 76;

/** Lines of at most 76 characters; every question with its number. */
export function writeLetterText(job: LetterHead, letter: Letter, form: string): string {
  const { number, title, revision, status, date, drawing } = job;
  const source = drawing.number === "" ? [] : [`Drawing ${drawing.number}, revision ${drawing.revision}`];
  const lines = [
    "QUESTIONS TO THE ENGINEER OF RECORD",
    `Job ${number}  ${title}`.trimEnd(),
    `Revision ${revision}, ${status}, ${date}`,
    ...source,
    "",
    ...wrap(
      `${openingWords(letter)} Please answer below, or in ${form}: a number stays with its question over all revisions.`,
      WIDTH,
    ),
    ...letter.asked.flatMap(questionLines),
    ...settledLines("ANSWERED", letter.answered),
    ...settledLines("CLOSED (numbers are not used again)", letter.closed),
    "",
    "CAUTIONS",
    ...LETTER_CAUTIONS.flatMap((caution) => indented(caution, "- ")),
  ];
  return `${lines.map(readable).join("\n")}\n`;
}

function questionLines(asked: LetterQuestion): readonly string[] {
  const { figures } = asked;
  const compared = figures === null ? "" : `${figures.found}, asked for: ${figures.asked}; ${figures.missed}.`;
  const paragraphs = [asked.where, asked.said, compared, asked.notes, asked.past, asked.request, acceptedWords(asked)];
  return [
    "",
    `${asked.number}  ${asked.about}`,
    ...paragraphs.flatMap((words) => (words === "" ? [] : indented(words, "  "))),
    "  Answer:",
    "  By:                              Date:",
  ];
}

function settledLines(heading: string, questions: readonly SettledQuestion[]): readonly string[] {
  if (questions.length === 0) return [];
  return [
    "",
    heading,
    ...questions.flatMap(({ number, about, what }) => indented(`${number}  ${about}: ${what}`, "- ")),
  ];
}

function indented(words: string, first: string): readonly string[] {
  return wrap(words, WIDTH - first.length).map((each, i) => `${i === 0 ? first : " ".repeat(first.length)}${each}`);
}
