/** The cells of a row -> what is taken of them, what is kept as a note, and what must be asked. */
import type { Finding } from "../diagnostics/finding.js";
import { ownValue } from "../diagnostics/own-value.js";
import { errorAt } from "../readers/source.js";
import { readCell, scalar } from "./grammar/index.js";
import type { CellPart, CellReading, PossibleReading, ReadOrigin } from "./model.js";
import type { Questions } from "./questions.js";
import { bareCell, yamlText } from "./questions.js";
import type { References, Resolution } from "./references.js";
import type { KnownRow } from "./row-kinds.js";
import { saysSomething } from "./row-kinds.js";
import { settleChoices } from "./settle-choices.js";
import type { CellReader, ColumnRole, NotTaken, OpenChoice, SheetCell, Taken } from "./sheet-cell.js";

/** A text that has no key, for the note of the base. */
export interface Kept {
  readonly from: SheetCell;
  readonly text: string;
}

/** What a row gives. */
export interface RowValues {
  readonly row: KnownRow;
  readonly taken: readonly Taken[];
  readonly kept: readonly Kept[];
  readonly notTaken: readonly NotTaken[];
  readonly findings: readonly Finding[];
  /** The base that it repeats as a whole. */
  readonly sameAs: { readonly mark: string; readonly cell: SheetCell } | null;
}

/** What rows are read with. */
export interface RowContext {
  readonly references: References;
  readonly questions: Questions;
  /** What a note says on the sheet; undefined where it has no such note. */
  readonly footnotes: ReadonlyMap<string, string>;
  /** How cells under one of our own headings are read; undefined where there is no such heading. */
  readonly columnNamed: (name: string) => { readonly key: string; readonly read: CellReader } | undefined;
}

/** Reads a row; `index` is its place among the rows of the table. */
export function readRow(row: KnownRow, index: number, context: RowContext): RowValues {
  const reader = new RowReader(index, context);
  const sameAs = wholeBase(row);
  for (const cell of row.cells) if (cell.cell !== sameAs?.cell.cell) reader.take(cell);
  return { row, ...reader.finish(), sameAs };
}

/** Columns that a row has of its own though it repeats a base as a whole. */
const OWN = new Set(["mark", "quantity", "note", "template.mark", "template.quantity"]);

/** `SAME AS B3` beside nothing but the row's own mark, count and notes: no base is whole by these. */
function wholeBase({ kind, cells }: KnownRow): RowValues["sameAs"] {
  if (kind !== "base") return null;
  const named = cells.flatMap((cell) => {
    const mark = baseNamedIn(cell);
    return mark === null ? [] : [{ mark, cell }];
  });
  const [first] = named;
  const isOther = (cell: SheetCell) => saysSomething(cell) && !isOwn(cell) && !named.some((one) => one.cell === cell);
  if (first === undefined || cells.some(isOther)) return null;
  return named.every(({ cell }) => cell.cell === first.cell.cell) ? first : null;
}

function isOwn({ column: { role } }: SheetCell): boolean {
  return role.kind !== "value" || OWN.has(role.key);
}

/** The base that a cell refers to; in a column of words too. */
function baseNamedIn({ column: { role }, reading, text, place }: SheetCell): string | null {
  const isWords = role.kind === "note" || (role.kind === "value" && role.key === "note");
  const read = isWords ? readCell(text, "length", { unit: "in", headingUnit: null, place, key: "" }) : reading;
  return read?.kind === "reference" && read.to.kind === "base" ? read.to.mark : null;
}

/** Keys of columns that fill several, each with the one that is asked for first. */
const STANDS_IN: Readonly<Record<string, string>> = {
  rods: "rods.diameter",
  pattern: "pattern.kind",
  "pattern.pitch": "pattern.kind",
  basePlate: "basePlate.x",
  concrete: "concrete.x",
};

class RowReader {
  private readonly taken: Taken[] = [];
  private readonly kept: Kept[] = [];
  private readonly notTaken: NotTaken[] = [];
  private readonly findings: Finding[] = [];
  private readonly open: OpenChoice[] = [];

  constructor(
    private readonly index: number,
    private readonly context: RowContext,
  ) {}

  finish(): Omit<RowValues, "row" | "sameAs"> {
    const settled = settleChoices(this.open, this.taken, this.context.questions);
    return {
      taken: [...this.taken, ...settled],
      kept: this.kept,
      notTaken: this.notTaken,
      findings: this.findings,
    };
  }

  take(cell: SheetCell): void {
    const { role } = cell.column;
    switch (role.kind) {
      case "value":
        this.takeReading(cell, role.key, cell.reading, cell.isAnswered ? "answer" : "row", answerRemark(cell));
        return;
      case "note":
        this.keep(cell, role);
        return;
      case "left out":
        this.notTaken.push({ from: cell, origin: "left out", remark: role.why });
        return;
      case "asked":
        this.notTaken.push({ from: cell, origin: "asked", remark: "what its heading stands for is asked" });
    }
  }

  private takeReading(
    cell: SheetCell,
    key: string,
    reading: CellReading | null,
    origin: ReadOrigin,
    remark: string,
    givenBy?: string,
  ): void {
    switch (reading?.kind) {
      case "value":
        this.takeParts(cell, reading.parts, origin, joined(remark, howOf(reading, cell)), givenBy);
        return;
      case "choice":
        this.open.push({ from: cell, readings: reading.readings, message: reading.message });
        return;
      case "fault":
        if (key === "note" && cell.cell.isStruck === true)
          this.notTaken.push({ from: cell, origin: "left out", remark: "struck out" });
        else if (key.startsWith("check."))
          this.notTaken.push({
            from: cell,
            origin: "left out",
            remark: `not held against the others: ${reading.message}`,
          });
        else this.refuse(cell, key, reading.message);
        return;
      case "reference":
        this.follow(cell, key);
        return;
      case "blank":
      case undefined:
        this.notTaken.push({ from: cell, origin: "left out", remark: joined(remark, "says that there is none") });
    }
  }

  private takeParts(
    from: SheetCell,
    parts: readonly CellPart[],
    origin: ReadOrigin,
    remark: string,
    givenBy?: string,
  ): void {
    for (const { key, node } of parts)
      this.taken.push({ key, node, from, origin, remark, ...(givenBy === undefined ? {} : { givenBy }) });
  }

  /** The text stands in for the value, so that nothing is asked for twice. */
  private refuse(cell: SheetCell, key: string, message: string, code = "cell-fault"): void {
    this.findings.push(errorAt(cell.place, code, message));
    this.standIn(cell, key, message);
  }

  private standIn(from: SheetCell, key: string, remark: string): void {
    const node = scalar(from.text, from.place);
    this.taken.push({ key: ownValue(STANDS_IN, key) ?? key, node, from, origin: "asked", remark });
  }

  private follow(cell: SheetCell, key: string): void {
    const found = this.context.references.resolve(this.index, cell);
    switch (found.kind) {
      case "text":
        this.takeText(cell, key, found);
        return;
      case "note":
        this.takeNote(cell, key, found);
        return;
      case "open note":
        this.askNote(cell, key, found.note);
        return;
      case "fault":
        this.refuse(cell, key, found.message);
    }
  }

  private takeText(cell: SheetCell, key: string, found: Extract<Resolution, { kind: "text" }>): void {
    const { role } = cell.column;
    if (role.kind !== "value") return;
    const isOfBase = cell.reading?.kind === "reference" && cell.reading.to.kind === "base";
    this.takeReading(cell, key, role.read(found.text, cell.place), isOfBase ? "base" : "above", found.remark);
  }

  private takeNote(
    cell: SheetCell,
    key: string,
    { note, answer, remark }: Extract<Resolution, { kind: "note" }>,
  ): void {
    const texts = typeof answer === "string" ? new Map([[cell.column.name, answer]]) : answer;
    if (texts.size === 0) this.notTaken.push({ from: cell, origin: "note", remark });
    for (const [name, text] of texts) this.takeNoteText(cell, { name, text, note, remark, own: key });
  }

  private takeNoteText(
    cell: SheetCell,
    { name, text, note, remark, own }: { name: string; text: string; note: string; remark: string; own: string },
  ): void {
    const { role } = cell.column;
    const isOwn = name === cell.column.name && role.kind === "value";
    const column = isOwn ? { key: own, read: role.read } : this.context.columnNamed(name);
    if (column === undefined) {
      this.refuse(cell, own, `the job's answer for note ${note} names "${name}", which is none of our headings`);
      return;
    }
    const place = { ...cell.place, label: (cell.place.label ?? "").replace(cell.column.name, name) };
    const reading = column.read(text, place);
    if (reading.kind === "reference")
      this.refuse(cell, column.key, `the job's answer for note ${note} refers to another place; allowed is a value`);
    else this.takeReading({ ...cell, place }, column.key, reading, "note", remark, `note ${note}`);
  }

  private askNote(cell: SheetCell, key: string, note: string): void {
    const footnote = this.context.footnotes.get(note);
    const says = footnote === undefined ? "the sheet has no such note" : `the sheet has "${footnote}"`;
    const text = `${cell.column.name}: "${cell.text}" leaves the value to note ${note}, which is not interpreted; ${says}`;
    const line = `notes: { ${yamlText(note)}: TEXT }`;
    const means = `TEXT is what note ${note} gives in this column, or { HEADING: TEXT, ... } for several`;
    this.context.questions.ask("note", note, text, { place: cell.place, choices: [{ line, means }] });
    this.standIn(cell, key, `note ${note} is asked`);
  }

  /** A ditto sign repeats the words above; any other text is kept as it is. */
  private keep(cell: SheetCell, { read }: Extract<ColumnRole, { kind: "note" }>): void {
    const { reading } = cell;
    if (reading?.kind === "blank")
      this.notTaken.push({ from: cell, origin: "left out", remark: "says that there is none" });
    else if (reading?.kind === "fault") this.notTaken.push({ from: cell, origin: "left out", remark: reading.message });
    else if (reading?.kind === "reference" && reading.to.kind === "above") this.keepAbove(cell, read);
    else this.kept.push({ from: cell, text: cell.text });
  }

  private keepAbove(cell: SheetCell, read: CellReader): void {
    const found = this.context.references.resolve(this.index, cell);
    const text = found.kind === "text" && read(found.text, cell.place).kind === "value" ? found.text : cell.text;
    this.kept.push({ from: cell, text });
  }
}

/** How a cell was understood; "" where it is taken as it stands. */
function howOf({ parts, how }: PossibleReading, { text }: SheetCell): string {
  const [only, ...others] = parts;
  const isAsWritten = others.length === 0 && only?.node.kind === "scalar" && only.node.text === text.trim();
  return isAsWritten && !how.startsWith("its own unit") ? "" : how;
}

function answerRemark({ isAnswered, text, cell, place }: SheetCell): string {
  return isAnswered ? `by the job's answer for ${bareCell(place)}: "${text}" for "${cell.text}"` : "";
}

function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join("; ");
}
