/** Follows a JSON text byte by byte, without holding it: where in it the next byte stands. */

const [QUOTE, BACKSLASH, COLON, COMMA, LINE_FEED] = [0x22, 0x5c, 0x3a, 0x2c, 0x0a];
const [OPEN_LIST, CLOSE_LIST, OPEN_MAP, CLOSE_MAP] = [0x5b, 0x5d, 0x7b, 0x7d];

/** Knows brackets and the lists under one key. Text that is no JSON is followed as well; nothing is refused. */
export class JsonScan {
  readonly #key: string;
  /** For each open bracket, outermost first: whether it is a list under the key. */
  readonly #open: boolean[] = [];
  #line = 1;
  #inString = false;
  #escaped = false;
  /** Length of the key that the present or last text repeats so far; below 0 when it is another text. */
  #matched = -1;
  #underKey = false;

  /** `key` in ASCII, of nothing that JSON escapes. */
  constructor(key: string) {
    this.#key = key;
  }

  /** Brackets open. */
  get depth(): number {
    return this.#open.length;
  }

  /** Line in which the next byte stands, from 1. */
  get line(): number {
    return this.#line;
  }

  /** True between two bytes outside any text. */
  get isOutsideText(): boolean {
    return !this.#inString;
  }

  /** Whether the bracket that is open at this depth, 1 for the outermost, is a list under the key. */
  isListUnderKey(depth: number): boolean {
    return this.#open[depth - 1] === true;
  }

  take(byte: number): void {
    if (byte === LINE_FEED) this.#line += 1;
    if (this.#inString) this.#takeInString(byte);
    else this.#takeOutside(byte);
  }

  /** Takes what of a chunk, from here on, is only the rest of a text of no interest: where the next byte stands. */
  skipText(chunk: Uint8Array, from: number): number {
    if (!this.#inString || this.#escaped || this.#matched >= 0) return from;
    let at = from;
    for (let byte = chunk[at]; byte !== undefined && byte !== QUOTE && byte !== BACKSLASH; byte = chunk[at]) {
      if (byte === LINE_FEED) this.#line += 1;
      at += 1;
    }
    return at;
  }

  #takeInString(byte: number): void {
    if (this.#escaped) this.#escaped = false;
    else if (byte === QUOTE) this.#inString = false;
    else {
      this.#escaped = byte === BACKSLASH;
      this.#matched = byte === this.#key.charCodeAt(this.#matched) ? this.#matched + 1 : -1;
    }
  }

  #takeOutside(byte: number): void {
    switch (byte) {
      case QUOTE:
        this.#inString = true;
        this.#matched = 0;
        break;
      case COLON:
        this.#underKey = this.#matched === this.#key.length;
        break;
      case COMMA:
        this.#underKey = false;
        break;
      case OPEN_LIST:
      case OPEN_MAP:
        this.#open.push(byte === OPEN_LIST && this.#underKey);
        this.#underKey = false;
        break;
      case CLOSE_LIST:
      case CLOSE_MAP:
        this.#open.pop();
        break;
    }
  }
}
