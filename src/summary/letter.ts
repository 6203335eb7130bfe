/** The letter to the engineer of record as data: what each question says, whoever sets it. */
import { requestWords } from "../checks/proposals.js";
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import type { RegisteredQuestion } from "../job/model/register.js";
import { lastAsked } from "../job/model/register.js";
import type { BaseFacts } from "./facts.js";
import type { SummaryAnswer } from "./model.js";
import type { Question } from "./questions.js";

/** A question as the letter puts it. */
export interface LetterQuestion {
  readonly number: string;
  /** The rule in words of the trade. */
  readonly about: string;
  /** Where: bases and how many, and what of each. */
  readonly where: string;
  /** What is so and what is asked for, by which clause and edition. */
  readonly said: string;
  readonly figures: Question["parts"]["figures"];
  readonly notes: string;
  readonly past: string;
  readonly request: string;
  /** Who accepts the release meanwhile; null where nobody does. */
  readonly accepted: SummaryAnswer | null;
  /** The place that is drawn: a base's mark, "" for the layout; and what of it is marked. */
  readonly drawn: { readonly mark: string; readonly subjects: readonly string[] };
}

/** A question that needs no answer any more. */
export interface SettledQuestion {
  readonly number: string;
  readonly about: string;
  readonly what: string;
}

/** What a letter says beside its head and its cautions. */
export interface Letter {
  /** Open, and accepted meanwhile; in the order of their numbers. */
  readonly asked: readonly LetterQuestion[];
  readonly answered: readonly SettledQuestion[];
  readonly closed: readonly SettledQuestion[];
}

const [MOST_BASES, MOST_SUBJECTS, LONGEST_NOTE] = [16, 24, 700];

/** From the questions of a package. */
export function letterOf(questions: readonly Question[], closed: readonly RegisteredQuestion[]): Letter {
  return {
    asked: questions.filter(({ status }) => status !== "answered").map(letterQuestion),
    answered: questions.flatMap(({ number, places, plainName, check: { answer } }) =>
      answer === undefined
        ? []
        : [{ number, about: aboutWords(places, plainName), what: `${answer.text} (${answer.by}, ${answer.date})` }],
    ),
    closed: closed.map((question) => {
      const { number, places, rule, closedIn } = question;
      const value = lastAsked(question)?.value ?? null;
      const stood = value === null ? "" : `; last asked with ${value} ${lastAsked(question)?.unit ?? ""}`.trimEnd();
      return { number, about: aboutWords(places, rule), what: `closed in revision ${closedIn}${stood}` };
    }),
  };
}

/** `released; 3 questions open; 2 templates not released`: never released alone where something is not. */
export function letterStatus(status: string, { asked }: Letter, facts: readonly LetterFacts[]): string {
  const open = asked.filter(({ accepted }) => accepted === null).length;
  const accepted = asked.length - open;
  const stopped = new Set(facts.flatMap(({ released, template }) => (released ? [] : [template.mark]))).size;
  return [
    status,
    ...(open === 0 ? [] : [`${counted(open, "question")} open`]),
    ...(accepted === 0 ? [] : [`${accepted} accepted`]),
    ...(status !== "released" || stopped === 0 ? [] : [`${counted(stopped, "template")} not released`]),
  ].join("; ");
}

/** `2 questions open`, `1 question open, accepted`: what the head of a letter has room for. */
export function askedStatus({ asked }: Letter): string {
  const open = asked.filter(({ accepted }) => accepted === null).length;
  return open > 0 ? `${counted(open, "question")} open` : `${counted(asked.length, "question")} open, accepted`;
}

/** Who accepted the release meanwhile, and that the question stands; "" where nobody did. */
export function acceptedWords({ accepted }: Pick<LetterQuestion, "accepted">): string {
  if (accepted === null) return "";
  const { by, date, text } = accepted;
  return `Released with this question open, accepted by ${by}, ${date}: ${text.trim().replace(/[.;]?$/, ".")} An answer is still asked for.`;
}

/** How many are open and what that stops, and how many are accepted meanwhile. */
export function openingWords({ asked }: Letter): string {
  const open = asked.filter(({ accepted }) => accepted === null).length;
  const accepted = asked.length - open;
  const stops = `${open === 1 ? "1 question is" : `${open} questions are`} open. The templates and the layout that ${open === 1 ? "it is" : "they are"} about are not released until ${open === 1 ? "it" : "each"} is answered, or somebody accepts by name that they are.`;
  const told = `${accepted === 1 ? "1 question is" : `${accepted} questions are`} open with the release accepted by name: an answer is still asked for.`;
  return [...(open === 0 ? [] : [stops]), ...(accepted === 0 ? [] : [told])].join(" ");
}

/** What tells which templates are stopped. */
type LetterFacts = Pick<BaseFacts, "released" | "template">;

function aboutWords(places: readonly { readonly mark: string }[], name: string): string {
  const marks = places.map(({ mark }) => mark).filter((mark) => mark !== "");
  return `${marks.length === 0 ? "layout" : listed(marks, MOST_BASES)}: ${name}`;
}

/** A question whatever its state, as the letter puts it. */
export function letterQuestion({ number, plainName, places, parts, past, check }: Question): LetterQuestion {
  const [first] = places;
  return {
    ...{ number, about: plainName, where: whereWords(places), said: parts.said, figures: parts.figures },
    ...{ notes: cut(parts.notes), past, request: requestWords(check.rule), accepted: check.accepted ?? null },
    drawn: { mark: first?.mark ?? "", subjects: first?.subjects ?? [] },
  };
}

function cut(words: string): string {
  return words.length <= LONGEST_NOTE
    ? words
    : `${words.slice(0, LONGEST_NOTE).trimEnd()} [cut; questions.csv has all of it]`;
}

/** `Bases B3 (2), B4 (1): 3 places. Each: A1 A2.` */
function whereWords(places: Question["places"]): string {
  const [first] = places;
  if (first === undefined || first.mark === "")
    return `Layout: ${listed(
      places.flatMap(({ subjects }) => subjects),
      MOST_SUBJECTS,
      "; ",
    )}.`;
  const count = places.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
  const marks = listed(
    places.map(({ mark, quantity }) => `${mark} (${quantity})`),
    MOST_BASES,
  );
  const bases = `${places.length === 1 ? "Base" : "Bases"} ${marks}: ${count} ${count === 1 ? "place" : "places"}`;
  const own = (subjects: readonly string[]) =>
    listed(
      subjects.filter((subject) => subject !== ""),
      MOST_SUBJECTS,
      " ",
    );
  const isAlike = places.every(({ subjects }) => subjects.join(" ") === first.subjects.join(" "));
  const what = isAlike
    ? own(first.subjects)
    : listed(
        places.map(({ mark, subjects }) => `${mark} ${own(subjects)}`.trim()),
        MOST_BASES,
        "; ",
      );
  return what === "" ? `${bases}.` : `${bases}. ${places.length > 1 && isAlike ? "Each" : "At"}: ${what}.`;
}

/** What a letter never leaves out. */
export const LETTER_CAUTIONS = [
  "The engineer of record decides. These are figures held against clauses; nothing here says that a detail is acceptable.",
  "Local codes and licensed practice govern.",
  "Anchorage strength, rod strength, welds, bearing and reinforcement are not checked.",
  "Rods are not bent, cut, welded or replaced, and holes are not enlarged, without the engineer of record's approval (29 CFR 1926.755(b)).",
] as const;
