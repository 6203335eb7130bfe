/** A request as it is drawn: its own words without what breaks lines, its rows in lines. */
import { checkLines } from "./check-table.js";
import type { Prepared, SheetRequest } from "./request.js";
import { printable } from "./text-metrics.js";

/** Without line breaks and control characters in the job's own words, and with the ledger's lines sorted once. */
export function prepare(request: SheetRequest): Prepared {
  const { job, base } = request;
  return {
    ...request,
    job: {
      ...job,
      title: printable(job.title),
      owner: printable(job.owner),
      number: printable(job.number),
      drawnBy: printable(job.drawnBy),
    },
    base: { ...base, note: atMost(printable(base.note), LONGEST_NOTE) },
    lines: checkLines(request.rows, job.unit),
  };
}

const LONGEST_NOTE = 400;

function atMost(words: string, count: number): string {
  const characters = [...words];
  return characters.length <= count ? words : `${characters.slice(0, count - 1).join("")}…`;
}
