/**
 * Lines of ASCII, gathered as bytes: a cut file is some thousand short lines, and as strings they would cost more than the
 * geometry. Every line ends with CR LF, as on the home platform of the format and as every reader takes.
 */

/** Room for most cut files: a larger file makes its room as it grows. */
const FIRST_ROOM = 1 << 15;

const [LF, CR, MINUS, DOT, ZERO] = [10, 13, 45, 46, 48];

/** The lines of one file: writers may take turns, since each has its own. */
export interface LineWriter {
  /** Appends a text whose lines end with LF, the last one too. Throws on a letter outside printable ASCII: a bug. */
  lines(text: string): void;
  /** Appends a line with a whole number of ticks as a number of `decimals` fixed decimals: no exponent, no minus zero. */
  ticks(value: number, decimals: number): void;
  /** A copy of all that was appended. */
  bytes(): Uint8Array;
}

/** An empty file. */
export function startLines(): LineWriter {
  return new AsciiLines();
}

/** Powers of ten up to the largest safe integer; a table, since they are asked for with every number. */
const POWERS: readonly number[] = Array.from({ length: 16 }, (_, exponent) => 10 ** exponent);

class AsciiLines implements LineWriter {
  private room = new Uint8Array(FIRST_ROOM);
  private length = 0;

  lines(text: string): void {
    this.reserve(2 * text.length);
    const { room } = this;
    let at = this.length;
    for (let index = 0; index < text.length; index++) {
      const letter = text.charCodeAt(index);
      if (letter === LF) room[at++] = CR;
      else if (letter < 32 || letter > 126) throw new Error(`letter ${letter} in a cut file`);
      room[at++] = letter;
    }
    this.length = at;
  }

  ticks(value: number, decimals: number): void {
    if (!Number.isSafeInteger(value)) throw new RangeError(`not a number of ticks: ${value}`);
    this.reserve(32);
    const { room } = this;
    let at = this.length;
    if (value < 0) room[at++] = MINUS;
    const ticks = Math.abs(value);
    const unit = POWERS[decimals] ?? 1;
    const whole = Math.floor(ticks / unit);
    let wholeDigits = 1;
    while (whole >= (POWERS[wholeDigits] ?? Number.POSITIVE_INFINITY)) wholeDigits++;
    putDigits(room, whole, at, wholeDigits);
    at += wholeDigits;
    room[at++] = DOT;
    putDigits(room, ticks - whole * unit, at, decimals);
    at += decimals;
    room[at++] = CR;
    room[at++] = LF;
    this.length = at;
  }

  bytes(): Uint8Array {
    return this.room.slice(0, this.length);
  }

  private reserve(more: number): void {
    if (this.length + more <= this.room.length) return;
    const larger = new Uint8Array(2 * (this.length + more));
    larger.set(this.room.subarray(0, this.length));
    this.room = larger;
  }
}

/** Six digits at a time, from the last to the first: such a number is a small integer, which divides fast. */
function putDigits(room: Uint8Array, value: number, start: number, digits: number): void {
  let rest = value;
  let place = start + digits - 1;
  while (place >= start) {
    const high = Math.floor(rest / 1e6);
    let low = (rest - high * 1e6) | 0;
    const least = Math.max(start, place - 5);
    for (; place >= least; place--) {
      const tens = (low / 10) | 0;
      room[place] = ZERO + low - 10 * tens;
      low = tens;
    }
    rest = high;
  }
}
