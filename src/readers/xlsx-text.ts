/** The parts of a cell's text -> what a person takes it for: what is struck out is not read, a raised digit is no digit of the number. */
import type { CellText, TextRun } from "./xlsx-styles.js";

/** A text as it is read. */
export interface ReadText {
  readonly text: string;
  /** True where all of it is struck out: the text is then that which is struck out. */
  readonly isStruck: boolean;
  /** What of it is not read, in a few words. */
  readonly remark?: string;
  /** Why it cannot be read, up to what is allowed. */
  readonly fault?: string;
}

/** Reads a text; `isStyleStruck` is the cell's own font. */
export function readText(runs: CellText, isStyleStruck: boolean): ReadText {
  const seen = runs.map((run) => ({ ...run, isStruck: run.isStruck ?? isStyleStruck }));
  const written = seen.filter(({ text }) => text.trim() !== "");
  const struck = written.filter(({ isStruck }) => isStruck);
  const whole = seen.map(({ text }) => text).join("");
  if (written.length > 0 && struck.length === written.length) return { text: whole.trim(), isStruck: true };
  const joining = new Joining(seen);
  return { ...joining.read(), isStruck: false };
}

type SeenRun = TextRun & { readonly isStruck: boolean };

/** Puts together what is not struck out. */
class Joining {
  private text = "";
  private isAfterStruck = false;
  private fault: string | null = null;
  private readonly struck: string[] = [];
  private readonly raised: string[] = [];

  constructor(private readonly runs: readonly SeenRun[]) {}

  read(): Omit<ReadText, "isStruck"> {
    this.runs.forEach((run, index) => {
      if (run.isStruck) this.passStruck(run.text);
      else this.take(run, index);
    });
    const remarks = [...told("struck out and not read", this.struck), ...told("raised and not read", this.raised)];
    return {
      text: this.text.trim(),
      ...(remarks.length === 0 ? {} : { remark: remarks.join("; ") }),
      ...(this.fault === null ? {} : { fault: this.fault }),
    };
  }

  private passStruck(text: string): void {
    if (text.trim() === "") return;
    this.struck.push(text.trim());
    this.isAfterStruck = true;
  }

  private take(run: SeenRun, index: number): void {
    const meets = /\d$/.test(this.text) && /^\d/.test(run.text);
    if (this.isAfterStruck && meets)
      this.fault ??= `what is left beside the part that is struck out runs together ("${this.text.trim()}" and "${run.text.trim()}")`;
    this.isAfterStruck = this.isAfterStruck && run.text === "";
    const isNote = run.isRaised && /^\s*\(?\d+\)?\s*$/.test(run.text) && !this.isUpperHalf(index);
    if (!isNote) this.text += run.isRaised && meets ? ` ${run.text}` : run.text;
    else if (/[\d\u00BC-\u00BE\u2150-\u215E]\s*$/.test(this.text)) {
      const raised = run.text.trim();
      this.fault ??= `"${this.text.trim()}" bears a raised "${raised}": the number of a note, or a part of the value?`;
      this.text += run.text;
    } else this.raised.push(run.text.trim());
  }

  /** A fraction bar follows, as in one and a raised 1 over 16. */
  private isUpperHalf(index: number): boolean {
    const rest = this.runs.slice(index + 1).filter(({ isStruck, text }) => !isStruck && text.trim() !== "");
    return /^\s*[/\u2044\u2215]/.test(rest[0]?.text ?? "");
  }
}

function told(what: string, texts: readonly string[]): readonly string[] {
  return texts.length === 0 ? [] : [`${texts.map((text) => `"${text}"`).join(", ")} is ${what}`];
}
