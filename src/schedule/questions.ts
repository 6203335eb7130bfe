/** What must be answered before a job can be made of a sheet, once for each cause, with the lines that answer it. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import type { SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { ReadQuestion } from "./model.js";

/** A way to answer: a line of its own, or what is meant in each cell that is asked about. */
export type Choice =
  | { readonly line: string; readonly means: string }
  | { readonly answer: string; readonly means: string };

/** A cell that is asked about. */
export interface Asked {
  readonly place: SourcePlace;
  readonly choices: readonly Choice[];
}

interface Open {
  readonly code: string;
  readonly text: string;
  readonly asked: Asked[];
}

const MOST_CELLS_NAMED = 6;

/** Questions in the order in which they came up; one cause is asked about once, with all of its cells. */
export class Questions {
  private readonly open = new Map<string, Open>();

  /** `code` without its `asked-`; `cause` tells questions of one code apart; `text` is that of its first cell. */
  ask(code: string, cause: string, text: string, asked: Asked): void {
    const key = `${code} ${cause}`;
    const known = this.open.get(key);
    if (known === undefined) this.open.set(key, { code: `asked-${code}`, text, asked: [asked] });
    else known.asked.push(asked);
  }

  /** As the read-as table has them, and as findings. */
  finish(): { readonly questions: readonly ReadQuestion[]; readonly findings: readonly Finding[] } {
    const open = [...this.open.values()];
    return { questions: open.map(toQuestion), findings: open.map(toFinding) };
  }
}

function toQuestion({ text, asked }: Open): ReadQuestion {
  return { cells: [...new Set(asked.map(({ place }) => place.cell ?? ""))], text, choices: linesOf(asked) };
}

function toFinding(open: Open): Finding {
  const { code, text, asked } = open;
  const [first, ...others] = asked.map(({ place }) => place);
  const more = [...new Set(others.map(({ cell }) => cell ?? ""))].filter((cell) => cell !== first?.cell);
  const also = more.length === 0 ? "" : `; the same in ${listed(more, MOST_CELLS_NAMED)}`;
  const lines = linesOf(asked.slice(0, MOST_CELLS_NAMED)).map(({ line, means }) => `${line} where ${means}`);
  const place = first ?? { file: "", line: 1, column: 1 };
  return errorAt(
    place,
    code,
    `${withoutSubject(text, place)}${also}`,
    lines.length === 0 ? undefined : `answer in the job: ${lines.join("; or ")}`,
  );
}

/** The column's name stands before a finding's message already. */
function withoutSubject(text: string, { label = "" }: SourcePlace): string {
  const [whole, name = ""] = /^([^":]{1,60}): /.exec(text) ?? [""];
  return name !== "" && label.endsWith(name) ? text.slice(whole.length) : text;
}

/** Lines of several cells are one line. */
function linesOf(asked: readonly Asked[]): ReadQuestion["choices"] {
  const [first] = asked;
  if (first === undefined) return [];
  return first.choices.map((choice, index) => {
    if ("line" in choice) return { line: choice.line, means: choice.means };
    const cells = asked.flatMap(({ place, choices }) => {
      const own = choices[index];
      return own === undefined || !("answer" in own) ? [] : [`${bareCell(place)}: ${yamlText(own.answer)}`];
    });
    return { line: `cells: { ${[...new Set(cells)].join(", ")} }`, means: choice.means };
  });
}

/** A cell without its sheet. */
export function bareCell({ cell = "" }: SourcePlace): string {
  return cell.slice(cell.lastIndexOf("!") + 1);
}

/** A text as it stands in a job file: in quotation marks where it would be read as something else without them. */
export function yamlText(text: string): string {
  const isBare = /^[A-Za-z0-9](?:[A-Za-z0-9 ./'-]*[A-Za-z0-9.])?$/.test(text);
  return isBare ? text : JSON.stringify(text);
}
