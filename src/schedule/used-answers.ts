/** The job's answers about a table, with what of them was used: an answer that answers nothing is a fault. */
import { nearestWords } from "../diagnostics/nearest.js";
import { cellInSheet } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { TableAnswers } from "./model.js";

/** An answer that answers nothing, or is not filled in, by its path in the block of the job file. */
export interface UnusedAnswer {
  readonly path: readonly string[];
  readonly message: string;
  readonly hint?: string;
}

/** What a note gives: a text, or texts by the names of headings. */
export type NoteAnswer = string | ReadonlyMap<string, string>;

/** The answers for cells and notes; asking for one uses it. */
export class UsedAnswers {
  private readonly cells: ReadonlyMap<string, { readonly key: string; readonly text: string }>;
  private readonly notes: ReadonlyMap<string, { readonly key: string; readonly answer: NoteAnswer }>;
  private readonly used = new Set<string>();

  constructor({ cells, notes }: TableAnswers) {
    this.cells = new Map([...cells].map(([key, text]) => [cellKey(key), { key, text }]));
    this.notes = new Map([...notes].map(([key, answer]) => [noteKey(key), { key, answer }]));
  }

  /** What the job says for a cell. */
  ofCell(cell: Pick<Cell, "line" | "row" | "column">): string | undefined {
    if (this.cells.size === 0) return undefined;
    const found = this.cells.get(cellInSheet(cell));
    if (found !== undefined) this.used.add(`cells ${found.key}`);
    return found?.text;
  }

  /** What the job says for a numbered note. */
  ofNote(note: string): NoteAnswer | undefined {
    const found = this.notes.get(noteKey(note));
    if (found !== undefined) this.used.add(`notes ${found.key}`);
    return found?.answer;
  }

  /** Answers that are not filled in, and those that were not asked for; `cells` are those of the table, `notes` those that its cells name. */
  unused(known: {
    readonly cells: () => readonly string[];
    readonly notes: () => readonly string[];
  }): readonly UnusedAnswer[] {
    const ofCells = [...this.cells.values()].filter(({ key }) => !this.used.has(`cells ${key}`));
    const ofNotes = [...this.notes.values()].filter(({ key }) => !this.used.has(`notes ${key}`));
    return [
      ...[...this.cells.values()].flatMap(({ key, text }) => unfilled("cells", key, text)),
      ...[...this.notes.values()].flatMap(({ key, answer }) => unfilled("notes", key, answer)),
      ...ofCells.map(({ key }) => unusedAnswer("cells", key, "is no cell of the table", known.cells())),
      ...ofNotes.map(({ key }) => unusedAnswer("notes", key, "is a note that no cell names", known.notes())),
    ];
  }
}

/** Words that the lines to fill in have in the place of an answer. */
const STAND_INS: ReadonlySet<string> = new Set(["TEXT", "MARK"]);

function unfilled(group: string, key: string, answer: NoteAnswer): readonly UnusedAnswer[] {
  const texts = typeof answer === "string" ? [answer] : [...answer.values()];
  return texts
    .filter((text) => STAND_INS.has(text))
    .map((text) => ({
      path: [group, key],
      message: `"${text}" stands where the answer belongs; write the answer in its place, or put the sign # back`,
    }));
}

/** The fault of an answer that answers nothing, with the three nearest that would. */
function unusedAnswer(group: string, key: string, what: string, known: readonly string[]): UnusedAnswer {
  const near = nearestThree(key, known);
  const message = `"${key}" ${what}, so that this answers nothing`;
  return { path: [group, key], message, ...(near.length === 0 ? {} : { hint: `the nearest are ${near.join(", ")}` }) };
}

const MOST_COMPARED = 2_000;

/** The three that take the fewest changed letters; of very many only the first are looked at. */
export function nearestThree(word: string, known: readonly string[]): readonly string[] {
  return nearestWords(word, [...new Set(known)].slice(0, MOST_COMPARED), 3);
}

/** `Bases!E7`, `$E$7` and `e7` are E7. */
function cellKey(text: string): string {
  return text
    .slice(text.lastIndexOf("!") + 1)
    .replaceAll("$", "")
    .trim()
    .toUpperCase();
}

function noteKey(text: string): string {
  return text.trim().toUpperCase();
}
