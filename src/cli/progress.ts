/** Progress of long work on standard error: one line that is written over on a terminal, otherwise a line now and then. */
import { joinPrintable, type Printable, terminalLine } from "../diagnostics/printable.js";
import type { Shell } from "./shell.js";

/** How far long work is: `done` of `total` items. */
export interface Progress {
  show(done: number, total: number): Promise<void>;
  /** Clears the line. */
  end(): Promise<void>;
}

const TERMINAL_PAUSE = 100;
const LINE_PAUSE = 5000;

/** To the start of the line, and all of it erased (ECMA-48, EL). */
const CLEAR: Printable = terminalLine`\r\u001b[K`;

/** Silent until the work has taken as long as one pause. */
export function startProgress({ err, now }: Pick<Shell, "err" | "now">, what: string): Progress {
  const pause = err.isTerminal ? TERMINAL_PAUSE : LINE_PAUSE;
  let last = now();
  let shown = false;
  return {
    show: async (done, total) => {
      if (now() - last < pause) return;
      last = now();
      shown = true;
      const text = terminalLine`${what} ${done} of ${total}`;
      await err.write(err.isTerminal ? joinPrintable([CLEAR, text]) : joinPrintable([text, terminalLine`\n`]));
    },
    end: async () => {
      if (shown && err.isTerminal) await err.write(CLEAR);
    },
  };
}
