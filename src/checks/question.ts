/** Questions to the engineer of record. They ask; they never say that a change would be acceptable. */
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import type { CheckRow, Quantity, Sense } from "./model.js";
import { comparedTexts, limitWords, marginText } from "./words.js";

/** What one question is about: the subjects of a base, or of the layout, whose rows say the same. */
export interface AskedPlace {
  /** null: the layout. */
  readonly base: { readonly mark: string; readonly quantity: number } | null;
  /** Each with what its row notes; one or more. */
  readonly subjects: readonly { readonly subject: string; readonly note: string }[];
}

/** Rows that say the same of several places as one question, which names every place. */
export function questionAt(places: readonly AskedPlace[], row: CheckRow, unit: Unit): string {
  const where = whereWords(places);
  const notes = notesWords(places);
  if (row.value === null || row.limit === null || row.sense === null) return `${where}: ${notes}. What is required?`;
  const [found, limit] = comparedTexts(row.value, row.limit, unit);
  const asked = limitWords(row.sense, limit);
  const note = notes === "" ? "" : ` (${notes})`;
  return `${where}: ${row.measured} is ${found}; ${authorityOf(row)} asks for ${asked}${note}. What is required here?`;
}

/** The same in parts, for a letter: what is so and what is asked for in a sentence, the notes, and the figures apart. */
export interface QuestionParts {
  readonly said: string;
  /** "" where nothing is noted. */
  readonly notes: string;
  /** null where nothing was compared. */
  readonly figures: { readonly found: string; readonly asked: string; readonly missed: string } | null;
}

/** Rows that say the same of several places, in parts. */
export function questionParts(places: readonly AskedPlace[], row: CheckRow, unit: Unit): QuestionParts {
  const notes = notesWords(places);
  const { value, limit, sense, margin } = row;
  if (value === null || limit === null || sense === null) return { said: row.plainName, notes, figures: null };
  const [found, bound] = comparedTexts(value, limit, unit);
  const asked = limitWords(sense, bound);
  const said = `${capital(row.measured)} is ${found}; ${authorityOf(row)} asks for ${asked}.`;
  return { said, notes, figures: { found, asked, missed: missedWords(margin, sense, unit) } };
}

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

const MISSED: Readonly<Record<Sense, string>> = { ">=": "short by", "<=": "over by", "=": "off by" };

function missedWords(margin: Quantity | null, sense: Sense, unit: Unit): string {
  if (margin === null) return "";
  const size: Quantity =
    margin.kind === "length"
      ? { ...margin, twice: Math.abs(margin.twice) }
      : { ...margin, count: Math.abs(margin.count) };
  return `${MISSED[sense]} ${marginText(size, unit)}`;
}

function whereWords(places: readonly AskedPlace[]): string {
  const [first] = places;
  if (first?.base === null) return `Layout, ${places.flatMap(({ subjects }) => subjects.map(nameOf)).join("; ")}`;
  const alike = groupBy(places, ({ subjects }) =>
    subjects
      .map(nameOf)
      .filter((subject) => subject !== "")
      .join(" "),
  );
  const each = [...alike].map(([own, at]) => [...at.map(baseWords), ...ownWords(own, at.length)].join(", "));
  return `${places.length === 1 ? "Base" : "Bases"} ${each.join("; ")}`;
}

const baseWords = ({ base }: AskedPlace): string => `${base?.mark} (quantity ${base?.quantity})`;

/** `A1 A2`, of several bases `each A1 A2`. */
function ownWords(own: string, bases: number): readonly string[] {
  if (own === "") return [];
  return [bases === 1 ? own : `each ${own}`];
}

const nameOf = ({ subject }: { readonly subject: string }): string => subject;

/** The note of all; where the rows note different things, each with the subjects that it is of. */
function notesWords(places: readonly AskedPlace[]): string {
  const notes = new Map<string, string[]>();
  for (const { base, subjects } of places)
    for (const { subject, note } of subjects) {
      const name = places.length === 1 ? subject : `${base?.mark ?? ""} ${subject}`;
      notes.set(note, [...(notes.get(note) ?? []), name.trim()]);
    }
  if (notes.size <= 1) return [...notes.keys()].join("");
  return [...notes].map(([note, names]) => `${names.join(" ")}: ${note === "" ? "nothing noted" : note}`).join("; ");
}

/** Places for a column of a table: the subjects of one base, or of several each after its mark. */
export function subjectsText(places: readonly AskedPlace[]): string {
  const [first] = places;
  if (first?.base === null) return places.flatMap(({ subjects }) => subjects.map(nameOf)).join("; ");
  const own = ({ subjects }: AskedPlace): string => subjects.map(nameOf).join(" ");
  return places.length === 1 && first !== undefined
    ? own(first)
    : places.map((place) => `${place.base?.mark} ${own(place)}`.trimEnd()).join("; ");
}

/** Edition and clause in words. */
function authorityOf({ edition, clause }: CheckRow): string {
  switch (edition) {
    case "shop":
      return `the shop's rule (${clause})`;
    case "geometry":
      return `geometry (${clause})`;
    default:
      return clause.startsWith(edition) ? clause : `${edition}, ${clause},`;
  }
}
