/** What the small parsers share: a place among the tokens, phrases, and going back where a way was wrong. */
import type { SourcePlace } from "../../readers/source.js";
import type { Unit } from "../../units/index.js";
import type { Token } from "./tokens.js";
import { tokenize } from "./tokens.js";

/** What a cell's reading hangs on beside its text. */
export interface CellContext {
  /** Unit of the job. */
  readonly unit: Unit;
  /** Unit that the heading, a row of units or a number format gives for bare numbers; null where none does. */
  readonly headingUnit: string | null;
  readonly place: SourcePlace;
  /** Key of the job file that the column fills, as `rods.embedment`. */
  readonly key: string;
  /** What prints write for the words of a column -> the word. */
  readonly synonyms?: Readonly<Record<string, string>>;
}

/** Ways of writing one thing by their first token, longest first. */
export type Phrases = ReadonlyMap<string, readonly (readonly string[])[]>;

/** Phrases as a person writes them, `C/C`, `O.C.`: compared token by token, whatever their case and spaces. */
export function phrases(...written: readonly string[]): Phrases {
  const keys = written.map((text) => tokenize(text).map(({ key }) => key)).toSorted((a, b) => b.length - a.length);
  const byFirst = new Map<string, (readonly string[])[]>();
  for (const phrase of keys) byFirst.set(phrase[0] ?? "", [...(byFirst.get(phrase[0] ?? "") ?? []), phrase]);
  return byFirst;
}

/** A place among tokens that moves on as parsers take them. */
export class Scan {
  at = 0;
  /** Faults of what was taken: lengths that are none, a total that does not add up. */
  faults: readonly string[] = [];

  constructor(
    readonly tokens: readonly Token[],
    readonly plain: string,
    readonly context: CellContext,
  ) {}

  get isDone(): boolean {
    return this.at >= this.tokens.length;
  }

  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  /** Takes a sign or word. */
  take(key: string): boolean {
    if (this.peek()?.key !== key) return false;
    this.at += 1;
    return true;
  }

  /** Takes the longest of the phrases that stands here. */
  phrase(among: Phrases): boolean {
    const found = among
      .get(this.peek()?.key ?? "")
      ?.find((keys) => keys.every((key, ahead) => this.peek(ahead)?.key === key));
    this.at += found?.length ?? 0;
    return found !== undefined;
  }

  /** Takes as many of the phrases as stand here. */
  phrasesAny(among: Phrases): boolean {
    const from = this.at;
    while (this.phrase(among));
    return this.at > from;
  }

  /** Takes what `parse` does, or nothing. */
  attempt<T>(parse: () => T | null): T | null {
    const { at, faults } = this;
    const taken = parse();
    if (taken === null) {
      this.at = at;
      this.faults = faults;
    }
    return taken;
  }

  /** The first of the ways that leads on. */
  either<T>(...ways: readonly (() => T | null)[]): T | null {
    for (const way of ways) {
      const taken = this.attempt(way);
      if (taken !== null) return taken;
    }
    return null;
  }

  fault(message: string): void {
    this.faults = [...this.faults, message];
  }

  /** The text from a token to the last that was taken. */
  textFrom(first: number): string {
    const [start, end] = [this.tokens[first]?.start ?? 0, this.tokens[this.at - 1]?.end ?? 0];
    return this.plain.slice(start, end).trim();
  }
}
