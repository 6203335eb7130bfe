/** Footnotes and general notes: which texts are some, and what stands after their numbers. */
import type { Cell } from "../readers/inputs.js";
import { NOTE_START, oneLine } from "./sheet-words.js";

/** Gathers notes line by line; a line without a number goes on with the note above it. */
export class NoteReading {
  private readonly notes = new Map<string, string>();
  private readonly doubtful = new Set<string>();
  private open: string | null = null;

  /** Takes the texts of one row, or of one cell with line breaks. */
  take(cells: readonly Cell[]): void {
    const lines = cells
      .map(({ text }) => text)
      .join(" ")
      .split(/\r\n|\n|\r/);
    for (const line of lines) this.takeLine(oneLine(line).replace(/^(?:general |foot)?\s*notes?\s*:\s*(?=\S)/i, ""));
  }

  /** A blank row ends a note. */
  end(): void {
    this.open = null;
  }

  private takeLine(line: string): void {
    const start = NOTE_START.exec(line);
    const key = start?.slice(1).find((part) => part !== undefined);
    if (start === null || key === undefined) this.goOn(line);
    else this.begin(key.toUpperCase(), line.slice(start[0].length).trim());
  }

  private goOn(line: string): void {
    if (this.open === null || line === "") return;
    this.notes.set(this.open, `${this.notes.get(this.open) ?? ""} ${line}`.trim());
  }

  private begin(key: string, text: string): void {
    this.open = key;
    const before = this.notes.get(key);
    if (before !== undefined && before !== text) this.doubtful.add(key);
    this.notes.set(key, text);
  }

  /** By number; a number that stands before two different notes is left out, so that what cites it is asked. */
  finish(): ReadonlyMap<string, string> {
    return new Map([...this.notes].filter(([key, text]) => text !== "" && !this.doubtful.has(key)));
  }
}
