/** Takes a summary apart while it is read, base by base: it grows with the job, and may be too large for one text. */
import { JsonScan } from "../readers/json-scan.js";

/** A part of a summary: one base as JSON, or, last, everything else with an empty list of bases. */
export interface SummaryPiece {
  readonly kind: "base" | "rest";
  readonly text: string;
  /** Line of the file in which the piece starts, from 1. */
  readonly line: number;
}

const COMMA = 0x2c;
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

/** Goes through the bytes once. Whatever is no JSON comes out as pieces that are none. */
export function* splitSummary(chunks: Iterable<Uint8Array>): Generator<SummaryPiece> {
  const [base, rest, at] = [new Collector(), new Collector(), new JsonScan("bases")];
  let [open, line] = [false, 1];
  for (const chunk of chunks) {
    let from = 0;
    for (let index = 0; index < chunk.length; index += 1) {
      const byte = chunk[index] ?? 0;
      const [wasIn, before] = [at.isListUnderKey(IN_LIST), at.depth];
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
