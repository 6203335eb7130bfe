/**
 * Lines of ASCII, gathered as bytes: a cut file is some thousand short lines, and as strings they would cost more than the
 * geometry. Every line ends with CR LF, as on the home platform of the format and as every reader takes.
 */

/** Grows as needed and is used again by the next file: what is handed out is a copy. */
let scratch = new Uint8Array(1 << 16);

const [LF, CR, MINUS, DOT, ZERO] = [10, 13, 45, 46, 48];

/** One writer at a time: `startLines` begins a file, `bytes` ends it. */
export interface LineWriter {
  /** Appends a text whose lines end with LF, the last one too. Throws on a letter outside printable ASCII: a bug. */
  lines(text: string): void;
  /** Appends a line with a whole number of ticks as a number of `decimals` fixed decimals: no exponent, no minus zero. */
  ticks(value: number, decimals: number): void;
  /** All that was appended. */
  bytes(): Uint8Array;
}

/** An empty file. */
export function startLines(): LineWriter {
  let length = 0;
  const reserve = (more: number) => {
    if (length + more <= scratch.length) return;
    const larger = new Uint8Array(2 * (length + more));
    larger.set(scratch.subarray(0, length));
    scratch = larger;
  };
  return {
    lines(text) {
      reserve(2 * text.length);
      for (let index = 0; index < text.length; index++) {
        const letter = text.charCodeAt(index);
        if (letter === LF) scratch[length++] = CR;
        else if (letter < 32 || letter > 126) throw new Error(`letter ${letter} in a cut file`);
        scratch[length++] = letter;
      }
    },
    ticks(value, decimals) {
      reserve(32);
      length = putTicks(value, decimals, length);
      scratch[length++] = CR;
      scratch[length++] = LF;
    },
    bytes: () => scratch.slice(0, length),
  };
}

/** Powers of ten up to the largest safe integer; a table, since they are asked for with every number. */
const POWERS: readonly number[] = Array.from({ length: 16 }, (_, exponent) => 10 ** exponent);

/** Writes from the first place `start`; returns the place behind the last digit. */
function putTicks(value: number, decimals: number, start: number): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a number of ticks: ${value}`);
  let at = start;
  if (value < 0) scratch[at++] = MINUS;
  const ticks = Math.abs(value);
  const unit = POWERS[decimals] ?? 1;
  const whole = Math.floor(ticks / unit);
  let wholeDigits = 1;
  while (whole >= (POWERS[wholeDigits] ?? Number.POSITIVE_INFINITY)) wholeDigits++;
  putDigits(whole, at, wholeDigits);
  at += wholeDigits;
  scratch[at++] = DOT;
  putDigits(ticks - whole * unit, at, decimals);
  return at + decimals;
}

/** Six digits at a time, from the last to the first: such a number is a small integer, which divides fast. */
function putDigits(value: number, start: number, digits: number): void {
  let rest = value;
  let place = start + digits - 1;
  while (place >= start) {
    const high = Math.floor(rest / 1e6);
    let low = (rest - high * 1e6) | 0;
    const least = Math.max(start, place - 5);
    for (; place >= least; place--) {
      const tens = (low / 10) | 0;
      scratch[place] = ZERO + low - 10 * tens;
      low = tens;
    }
    rest = high;
  }
}
