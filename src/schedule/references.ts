/** Cells that refer to others instead of saying it: ditto signs, SAME AS a base, SEE NOTE a number. */
import { markKey } from "./mark-key.js";
import type { Reference } from "./model.js";
import type { KnownRow } from "./row-kinds.js";
import type { SheetCell } from "./sheet-cell.js";
import { isOfGroup } from "./sheet-cell.js";
import type { NoteAnswer, UsedAnswers } from "./used-answers.js";
import { nearestThree } from "./used-answers.js";

/** What a reference leads to. */
export type Resolution =
  | { readonly kind: "text"; readonly text: string; readonly remark: string }
  | { readonly kind: "note"; readonly note: string; readonly answer: NoteAnswer; readonly remark: string }
  /** A note that the job does not answer. */
  | { readonly kind: "open note"; readonly note: string }
  | { readonly kind: "fault"; readonly message: string };

/** A cell by its row. */
interface At {
  readonly row: number;
  readonly cell: SheetCell;
}

type Step = { readonly to: At } | { readonly end: Resolution };

/** So many unknown marks are told with the nearest that there are. */
const MOST_NEAR = 20;

/** Follows the references of a table's rows; what a cell leads to is found once. */
export class References {
  private readonly found = new Map<SheetCell, Resolution>();
  private readonly rowOfMark = new Map<string, number>();
  /** Marks so far that no row has. */
  private unknown = 0;

  constructor(
    private readonly rows: readonly KnownRow[],
    private readonly answers: UsedAnswers,
  ) {
    rows.forEach(({ marks }, row) => {
      for (const mark of marks) if (!this.rowOfMark.has(markKey(mark))) this.rowOfMark.set(markKey(mark), row);
    });
  }

  /** The row that a mark stands in; undefined where none does. */
  rowOf(mark: string): number | undefined {
    return this.rowOfMark.get(markKey(mark));
  }

  /** What the cell leads to in the end. Chains are followed; a circle is a fault. */
  resolve(row: number, cell: SheetCell): Resolution {
    const way: At[] = [{ row, cell }];
    const passed = new Set([cell]);
    for (;;) {
      const at = way.at(-1) ?? { row, cell };
      const known = this.found.get(at.cell);
      const step = known === undefined ? this.step(at) : { end: known };
      if ("end" in step) return this.keep(way, step.end);
      if (passed.has(step.to.cell)) return this.keep(way, circleFault(way, step.to));
      passed.add(step.to.cell);
      way.push(step.to);
    }
  }

  private keep(way: readonly At[], end: Resolution): Resolution {
    for (const { cell } of way) this.found.set(cell, end);
    return end;
  }

  private step(at: At): Step {
    const { cell } = at;
    const { reading } = cell;
    if (reading?.kind !== "reference") return { end: textOf(at) };
    switch (reading.to.kind) {
      case "above":
        return this.above(at);
      case "base":
        return this.ofBase(at, reading.to.mark);
      case "note":
        return { end: this.ofNote(cell, reading.to) };
    }
  }

  /** The nearest row above that may fill the column: of what holds for the whole base, the nearest with a mark. */
  private above({ row, cell }: At): Step {
    const ofGroup = cell.column.role.kind === "value" && isOfGroup(cell.column.role.key);
    const fits = ({ kind }: KnownRow) => kind === "base" || ((kind === "more rods" || kind === "asked") && ofGroup);
    let from = row - 1;
    for (let known = this.rows[from]; known !== undefined && !fits(known); known = this.rows[from]) from -= 1;
    const to = this.rows[from]?.cells.find(({ column }) => column === cell.column);
    if (to !== undefined) return { to: { row: from, cell: to } };
    const message = `"${cell.text}" repeats the cell above, and that is blank; allowed is the value itself`;
    return { end: { kind: "fault", message } };
  }

  private ofBase({ cell }: At, mark: string): Step {
    const row = this.rowOf(mark);
    if (row === undefined) return { end: this.unknownMark(cell, mark) };
    const to = this.rows[row]?.cells.find(({ column }) => column === cell.column);
    if (to !== undefined) return { to: { row, cell: to } };
    const message = `"${cell.text}": ${mark} says nothing in this column; allowed is the value itself, or a base that has one`;
    return { end: { kind: "fault", message } };
  }

  /** A mark that no row has, with the nearest that rows have. */
  unknownMark(cell: SheetCell, mark: string): Extract<Resolution, { kind: "fault" }> {
    const near = this.nearMarks(mark).join(", ");
    const message = `"${cell.text}": no row has the mark ${mark}; allowed is the mark of a base of this table${near === "" ? "" : `, as ${near}`}`;
    return { kind: "fault", message };
  }

  /** Of the first faults alone: a sheet of unknown marks would else be searched for each. */
  private nearMarks(mark: string): readonly string[] {
    if (++this.unknown > MOST_NEAR) return [];
    return nearestThree(
      mark,
      this.rows.flatMap(({ marks }) => marks),
    );
  }

  private ofNote(cell: SheetCell, { note }: Extract<Reference, { kind: "note" }>): Resolution {
    const answer = this.answers.ofNote(note);
    if (answer === undefined) return { kind: "open note", note };
    return { kind: "note", note, answer, remark: `"${cell.text}", by the job's answer` };
  }
}

function textOf({ cell }: At): Resolution {
  const { reading, text, place } = cell;
  if (reading?.kind === "fault")
    return { kind: "fault", message: `repeats ${place.cell ?? "a cell"}, which cannot be read: ${reading.message}` };
  return { kind: "text", text, remark: `as ${place.cell ?? ""}` };
}

function circleFault(way: readonly At[], to: At): Resolution {
  const cells = [...way, to].map(({ cell }) => cell.place.cell ?? cell.text).slice(0, 6);
  const message = `leads to itself: ${cells.join(", ")}; allowed is a value in one of them`;
  return { kind: "fault", message };
}
