/** Takes a summary apart while it is read, base by base: it grows with the job, and may be too large for one text. */

/** A part of a summary: one base as JSON, or, last, everything else with an empty list of bases. */
export interface SummaryPiece {
  readonly kind: "base" | "rest";
  readonly text: string;
  /** Line of the file in which the piece starts, from 1. */
  readonly line: number;
}

const [QUOTE, BACKSLASH, COLON, LINE_FEED, COMMA] = [0x22, 0x5c, 0x3a, 0x0a, 0x2c];
const [OPEN_LIST, CLOSE_LIST, OPEN_MAP, CLOSE_MAP] = [0x5b, 0x5d, 0x7b, 0x7d];
const KEY = "bases";
/** Depth inside the list of bases: the root map, the list. */
const IN_LIST = 2;

/** Bytes of one piece, copied out of the chunks that they came in: a reader may use its buffer again. */
class Collector {
  #parts: Uint8Array[] = [];

  add(bytes: Uint8Array): void {
    if (bytes.length > 0) this.#parts.push(bytes.slice());
  }

  /** The text so far; the next piece starts empty. */
  take(): string {
    const bytes = new Uint8Array(this.#parts.reduce((size, part) => size + part.length, 0));
    let at = 0;
    for (const part of this.#parts) {
      bytes.set(part, at);
      at += part.length;
    }
    this.#parts = [];
    return new TextDecoder("utf-8").decode(bytes);
  }
}

/** Where in the JSON text the next byte stands. */
class Position {
  depth = 0;
  line = 1;
  inBases = false;
  #inString = false;
  #escaped = false;
  #word = "";
  #key = "";

  take(byte: number): void {
    if (byte === LINE_FEED) this.line += 1;
    if (this.#inString) this.#takeInString(byte);
    else this.#takeOutside(byte);
  }

  #takeInString(byte: number): void {
    if (this.#escaped) this.#escaped = false;
    else if (byte === BACKSLASH) this.#escaped = true;
    else if (byte === QUOTE) this.#inString = false;
    else if (this.depth === 1 && this.#word.length <= KEY.length) this.#word += String.fromCharCode(byte);
  }

  #takeOutside(byte: number): void {
    if (byte === QUOTE) {
      this.#inString = true;
      this.#word = "";
    } else if (byte === COLON) this.#key = this.#word;
    else if (byte === COMMA && this.depth === 1) this.#key = "";
    else if (byte === OPEN_LIST || byte === OPEN_MAP) {
      if (this.depth === 1) this.inBases = byte === OPEN_LIST && this.#key === KEY;
      this.depth += 1;
    } else if (byte === CLOSE_LIST || byte === CLOSE_MAP) {
      this.depth -= 1;
      if (this.depth < IN_LIST) this.inBases = false;
    }
  }
}

/** Goes through the bytes once. Whatever is no JSON comes out as pieces that are none. */
export function* splitSummary(chunks: Iterable<Uint8Array>): Generator<SummaryPiece> {
  const [base, rest, at] = [new Collector(), new Collector(), new Position()];
  let [open, line] = [false, 1];
  for (const chunk of chunks) {
    let from = 0;
    for (let index = 0; index < chunk.length; index += 1) {
      const byte = chunk[index] ?? 0;
      const [wasIn, before] = [at.inBases, at.depth];
      at.take(byte);
      if (!wasIn) continue;
      if (before === IN_LIST && at.depth > IN_LIST) {
        rest.add(chunk.subarray(from, index));
        [open, line, from] = [true, at.line, index];
      } else if (open && at.depth === IN_LIST) {
        base.add(chunk.subarray(from, index + 1));
        yield { kind: "base", text: base.take(), line };
        [open, from] = [false, index + 1];
      } else if (!open && byte === COMMA) {
        rest.add(chunk.subarray(from, index));
        from = index + 1;
      }
    }
    (open ? base : rest).add(chunk.subarray(from));
  }
  if (open) yield { kind: "base", text: base.take(), line };
  yield { kind: "rest", text: rest.take(), line: 1 };
}
