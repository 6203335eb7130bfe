/**
 * Cells between separators, some of them in quotation marks. A mark is also the sign of inches (`1 1/4"`) and of what stands
 * above (`"`): a cell that does not start with one holds it as it is typed; one that does is quoted where its closing mark
 * ends it. Where both readings of a line part it as the other lines are parted, neither is taken.
 */

/** A row of cells, and the line where it starts. */
export interface SplitRow {
  readonly texts: readonly string[];
  readonly line: number;
}

/** A quotation mark that may be read in two ways, or in none. */
export interface QuoteFault {
  readonly line: number;
  readonly column: number;
  readonly why: "open" | "closed inside" | "two readings";
}

/** Faults that are told; the reading ends with the last. */
const MOST_FAULTS = 20;

/** Splits a text; `expected` is the number of cells of most lines, null where no line has two. */
export function splitCells(
  text: string,
  separator: string,
  expected: number | null,
): { readonly rows: readonly SplitRow[]; readonly faults: readonly QuoteFault[] } {
  const splitting = new Splitting(text, separator, expected);
  const rows: SplitRow[] = [];
  while (splitting.isOpen && splitting.faults.length < MOST_FAULTS) rows.push(splitting.takeRow());
  return { rows, faults: splitting.faults };
}

/** How many cells a line has, those in whole quotation marks taken as one. */
export function literalCells(line: string, separator: string): number {
  return new Splitting(line, separator, null).countCells(0, line.length);
}

/** Letters that are looked at again to settle what a quotation mark means. */
const MOST_EFFORT = 32_000_000;

const [LINE_FEED, RETURN] = [10, 13];

interface Closing {
  /** Where the closing mark stands. */
  readonly end: number;
  /** False where text follows it in its cell. */
  readonly isProper: boolean;
}

class Splitting {
  readonly faults: QuoteFault[] = [];
  isOpen = true;
  private readonly sign: number;
  private at = 0;
  private effort = 0;
  private line = 1;

  constructor(
    private readonly text: string,
    private readonly separator: string,
    private readonly expected: number | null,
  ) {
    this.sign = separator.charCodeAt(0);
  }

  takeRow(): SplitRow {
    const line = this.line;
    const texts: string[] = [];
    let goesOn = true;
    while (goesOn) {
      texts.push(this.takeCell(texts.length));
      goesOn = this.text[this.at] === this.separator;
      if (goesOn) this.at += 1;
    }
    this.passLineEnd();
    return { texts, line };
  }

  private passLineEnd(): void {
    if (this.at >= this.text.length) this.isOpen = false;
    else this.at += this.text.startsWith("\r\n", this.at) ? 2 : 1;
    this.line += 1;
  }

  private takeCell(before: number): string {
    const start = this.skipBlanks(this.at);
    const end = this.cellEnd(start);
    const closing = this.text[start] === '"' ? this.quotedUpTo(start, end, before) : null;
    if (closing === null) {
      const literal = this.text.slice(this.at, end);
      this.at = end;
      return literal.trim();
    }
    const content = this.text.slice(start + 1, closing);
    this.line += content.match(/\r\n|\n|\r/g)?.length ?? 0;
    this.at = this.skipBlanks(closing + 1);
    return content.replaceAll('""', '"').trim();
  }

  /** Where the closing mark of a quoted cell stands; null where the cell is read as typed, with or without a fault. */
  private quotedUpTo(start: number, end: number, before: number): number | null {
    const closing = this.findClosing(start, this.text.length);
    if (closing?.isProper === true && closing.end < end) return closing.end;
    const isLone = this.text.slice(start + 1, end).trim() === "";
    if (isLone && this.separator === "\t") return null;
    const typed = this.effort <= MOST_EFFORT && this.parts(end, before, this.lineEnd(end));
    if (closing?.isProper !== true) {
      if (typed && (isLone || closing !== null)) return null;
      return this.tell(closing === null ? "open" : "closed inside", before);
    }
    const quoted = this.parts(this.skipBlanks(closing.end + 1), before, this.text.length);
    const spans = /[\r\n]/.test(this.text.slice(start, closing.end));
    if (isLone && typed && (spans || !quoted)) return null;
    const isQuoted = spans ? !typed || !this.areLinesWhole(start, closing.end) : quoted || !typed;
    return isQuoted && (!isLone || quoted) ? closing.end : this.tell("two readings", before);
  }

  private tell(why: QuoteFault["why"], before: number): null {
    this.faults.push({ line: this.line, column: before + 1, why });
    return null;
  }

  /** The first mark that is not written twice, looked for up to `before`. */
  private findClosing(start: number, before: number): Closing | null {
    let from = start + 1;
    for (;;) {
      const end = this.text.indexOf('"', from);
      if (end < 0 || end >= before) return null;
      if (this.text[end + 1] === '"') from = end + 2;
      else return { end, isProper: this.isCellEnd(this.skipBlanks(end + 1)) };
    }
  }

  /** Whether the row goes on from `at`, where a cell ends, to as many cells as the others have. Beyond an effort that no table asks for, it is not looked. */
  private parts(at: number, before: number, end: number): boolean {
    if (this.expected === null || before >= this.expected || this.effort > MOST_EFFORT) return false;
    return before + this.restCells(at, end) === this.expected;
  }

  /** Whether every further line up to the closing mark is a whole row by itself. */
  private areLinesWhole(start: number, closing: number): boolean {
    let at = this.lineEnd(start);
    while (at < closing) {
      at += this.text.startsWith("\r\n", at) ? 2 : 1;
      const end = this.lineEnd(at);
      if (this.countCells(at, end) !== this.expected) return false;
      at = end;
    }
    return true;
  }

  /** This cell, which ends at `at`, and those after it on the line. */
  private restCells(at: number, end: number): number {
    return this.text[at] === this.separator && at < end ? 1 + this.countCells(at + 1, end) : 1;
  }

  /** Cells from here to the end of the line; quoted ones that are whole before `end` are one, though they hold breaks. */
  countCells(from: number, end: number): number {
    let count = 1;
    for (let at = from; ; count++) {
      const start = this.skipBlanks(at);
      const closing = this.text[start] === '"' ? this.findClosing(start, end) : null;
      const next = this.cellEnd(start);
      const isLone = this.text.slice(start + 1, next).trim() === "";
      at = closing?.isProper === true && !isLone ? this.skipBlanks(closing.end + 1) : next;
      if (at >= end || this.text[at] !== this.separator) {
        this.effort += at - from;
        return count;
      }
      at += 1;
    }
  }

  private skipBlanks(from: number): number {
    let at = from;
    while (this.isBlank(this.text.charCodeAt(at))) at++;
    return at;
  }

  private isBlank(code: number): boolean {
    return code === 0x20 || code === 0xa0 || (code === 0x09 && this.separator !== "\t");
  }

  private isCellEnd(at: number): boolean {
    const code = this.text.charCodeAt(at);
    return code === this.sign || code === LINE_FEED || code === RETURN || at >= this.text.length;
  }

  private cellEnd(from: number): number {
    let at = from;
    while (!this.isCellEnd(at)) at++;
    return at;
  }

  private lineEnd(from: number): number {
    let at = from;
    for (; at < this.text.length; at++) {
      const code = this.text.charCodeAt(at);
      if (code === LINE_FEED || code === RETURN) break;
    }
    this.effort += at - from;
    return at;
  }
}
