/** What the commands see of the outside: streams, environment, clock and the installed templates. */
import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import type { Printable } from "../diagnostics/printable.js";
import { refusalWords } from "./refusal-words.js";

/** 0 made, nothing is held; 1 made, but something is held; 2 the input is at fault; 3 a fault of the program. */
export type ExitCode = 0 | 1 | 2 | 3;

/** What a command is given of the outside; tests give their own. */
export interface Shell {
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly currentFolder: string;
  readonly out: Output;
  readonly err: Output;
  /** How many threads may work at once. */
  readonly processors: number;
  /** Milliseconds since 1970. */
  now(): number;
}

/** A stream of text. `write` resolves when the stream takes more. Bytes are those of a machine form, which is printable too. */
export interface Output {
  readonly isTerminal: boolean;
  readonly columns: number | undefined;
  /** Why nothing more is written, in a few words; null while it is, or where the reader went away, as `head` does. */
  readonly refusal: string | null;
  write(text: Printable | Uint8Array): Promise<void>;
}

/** The process's own streams. A reader that goes away, as `head` does, ends the output quietly. */
export function processShell(): Shell {
  return {
    environment: process.env,
    currentFolder: process.cwd(),
    out: outputTo(process.stdout),
    err: outputTo(process.stderr),
    processors: availableParallelism(),
    now: Date.now,
  };
}

function outputTo(stream: NodeJS.WriteStream): Output {
  let [isClosed, refusal]: [boolean, string | null] = [false, null];
  const close = (error: NodeJS.ErrnoException): void => {
    isClosed = true;
    if (!READER_GONE.has(error.code)) refusal ??= refusalWords(error);
  };
  stream.on("error", close);
  return {
    isTerminal: stream.isTTY === true,
    columns: stream.columns,
    get refusal() {
      return refusal;
    },
    write: (text) =>
      new Promise((resolve) => {
        if (isClosed) resolve();
        else
          stream.write(text, (error) => {
            if (error) close(error);
            resolve();
          });
      }),
  };
}

/** What the systems say where the other end of a pipe is closed. */
const READER_GONE: ReadonlySet<string | undefined> = new Set(["EPIPE", "EOF", "ERR_STREAM_DESTROYED"]);

const DEFAULT_WIDTH = 100;
const [LEAST_WIDTH, MOST_WIDTH] = [60, 200];

/** Columns to write for: COLUMNS, the terminal's own, or 100. */
export function widthOf({ environment, out }: Shell): number {
  const asked = Number.parseInt(environment.COLUMNS ?? "", 10);
  const width = [asked, out.columns ?? 0].find((columns) => columns > 0) ?? DEFAULT_WIDTH;
  return Math.min(Math.max(width, LEAST_WIDTH), MOST_WIDTH);
}

/** Colour only on a terminal, and not where NO_COLOR is set to anything (no-color.org). */
export function hasColor({ environment, out }: Shell): boolean {
  return out.isTerminal && (environment.NO_COLOR ?? "") === "" && environment.TERM !== "dumb";
}

/**
 * Today as YYYY-MM-DD, for a job that names no date: SOURCE_DATE_EPOCH (seconds since 1970, reproducible-builds.org) where
 * it is set, otherwise the clock's, in the user's own time zone.
 */
export function todayOf({ environment, now }: Shell): string {
  const epoch = environment.SOURCE_DATE_EPOCH;
  if (epoch !== undefined && /^\d{1,11}$/.test(epoch)) return new Date(Number(epoch) * 1000).toISOString().slice(0, 10);
  return dayOf(now());
}

/** The day of a moment, YYYY-MM-DD in the user's own time zone. */
export function dayOf(moment: number): string {
  const today = new Date(moment);
  const padded = (value: number): string => String(value).padStart(2, "0");
  return `${today.getFullYear()}-${padded(today.getMonth() + 1)}-${padded(today.getDate())}`;
}

/** The package as installed: the folder that holds package.json and templates/. Same depth from src/cli and dist/cli. */
export const INSTALLED = fileURLToPath(new URL("../../", import.meta.url));

/** Version from package.json. */
export function readVersion(): string {
  const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as {
    version: string;
  };
  return version;
}
