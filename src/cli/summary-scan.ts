/** Finds the files that a summary.json lists without holding it in memory: it grows with the job. */

/** An entry of a `files` list. */
export interface ListedFile {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

const [QUOTE, BACKSLASH, COLON, COMMA] = [0x22, 0x5c, 0x3a, 0x2c];
const [OPEN_LIST, CLOSE_LIST, OPEN_MAP, CLOSE_MAP] = [0x5b, 0x5d, 0x7b, 0x7d];
const KEY = "files";
const LARGEST_ENTRY = 65_536;

/** Walks the bytes of a JSON text once and keeps the maps that stand in a list under the key `files`. */
class FileListScanner {
  readonly #open: ("files" | "list" | "map")[] = [];
  readonly found: unknown[] = [];
  #inString = false;
  #escaped = false;
  #word = "";
  #key = "";
  #entry: number[] | null = null;
  #entryDepth = 0;

  /** True once every bracket is closed again. */
  get balanced(): boolean {
    return this.#open.length === 0 && !this.#inString;
  }

  take(byte: number): void {
    if (this.#entry !== null && this.#entry.length < LARGEST_ENTRY) this.#entry.push(byte);
    if (this.#inString) this.#takeInString(byte);
    else this.#takeOutside(byte);
  }

  #takeInString(byte: number): void {
    if (this.#escaped) this.#escaped = false;
    else if (byte === BACKSLASH) this.#escaped = true;
    else if (byte === QUOTE) this.#inString = false;
    else if (this.#word.length <= KEY.length) this.#word += String.fromCharCode(byte);
  }

  #takeOutside(byte: number): void {
    switch (byte) {
      case QUOTE:
        this.#inString = true;
        this.#word = "";
        break;
      case COLON:
        this.#key = this.#word;
        break;
      case COMMA:
        this.#key = "";
        break;
      case OPEN_LIST:
        this.#open.push(this.#key === KEY ? "files" : "list");
        this.#key = "";
        break;
      case OPEN_MAP:
        this.#openMap();
        break;
      case CLOSE_LIST:
      case CLOSE_MAP:
        this.#close();
        break;
    }
  }

  #openMap(): void {
    if (this.#entry === null && this.#open.at(-1) === "files") {
      this.#entry = [OPEN_MAP];
      this.#entryDepth = this.#open.length;
    }
    this.#open.push("map");
    this.#key = "";
  }

  #close(): void {
    this.#open.pop();
    if (this.#entry === null || this.#open.length !== this.#entryDepth) return;
    this.found.push(JSON.parse(Buffer.from(this.#entry).toString("utf8")));
    this.#entry = null;
  }
}

/** The files listed in a summary, or null when these bytes are not a summary of a package. */
export function scanListedFiles(chunks: Iterable<Uint8Array>): readonly ListedFile[] | null {
  const scanner = new FileListScanner();
  try {
    for (const chunk of chunks) for (const byte of chunk) scanner.take(byte);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  const listed = scanner.found.filter(isListedFile);
  const whole = scanner.balanced && listed.length > 0 && listed.length === scanner.found.length;
  return whole ? listed : null;
}

function isListedFile(value: unknown): value is ListedFile {
  if (typeof value !== "object" || value === null) return false;
  const { path, bytes, sha256 } = value as Partial<Record<string, unknown>>;
  return typeof path === "string" && typeof bytes === "number" && typeof sha256 === "string";
}
