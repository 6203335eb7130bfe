/** What is told in text of a build: a screen of the whole job, every row of it, or some of its bases with all their values. */
import { CAUTIONS, CAUTIONS_IN_SHORT } from "../checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../checks/index.js";
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalText } from "../diagnostics/printable.js";
import { writeCheckScreen } from "../formats/check-screen.js";
import type { LedgerHeading, LedgerTextOptions } from "../formats/ledger-text.js";
import {
  styled,
  wrap,
  writeHeadingText,
  writeLedgerRowsText,
  writeRowsText,
  writeTextList,
} from "../formats/ledger-text.js";
import type { Job } from "../job/model/job.js";
import type { SummaryQuestion, UnusedSummaryAnswer } from "../summary/model.js";
import type { Question } from "../summary/questions.js";
import type { BaseInParts, PackageRest } from "./package.js";

/** What is shown of a build, gathered base by base so that no base has to stay in memory. */
export interface Report {
  /** Takes what will be shown of a base, and lets go of the rest. */
  add(base: BaseInParts): void;
  /** Takes the rows of the whole job. */
  addJob(end: JobEnd): void;
  /** True where a base, or the layout, is held. */
  readonly isHeld: boolean;
  /** The texts, in the order in which they are shown. */
  texts(): Iterable<Printable>;
}

/** Bases under one heading: of one template, with rows that say the same. */
interface Shown extends Omit<LedgerHeading, "bases"> {
  readonly rank: number;
  readonly bases: LedgerHeading["bases"][number][];
  readonly rows: Printable;
}

interface Tally {
  bases: number;
  /** Marks of the templates, and whether one of them serves several bases. */
  readonly templates: Set<string>;
  /** Of them those that a question alone keeps from being released. */
  readonly unreleased: Set<string>;
  isShared: boolean;
  held: number;
  rows: number;
  passed: number;
  failed: number;
  notChecked: number;
}

/** What a report takes of the job when its bases have gone by. */
type JobEnd = Pick<PackageRest, "rows" | "questions" | "everyQuestion" | "answersNotUsed" | "layoutHeld" | "digest">;

/** What is shown: a screen of the whole, every row, or bases with what is not plain of them. */
export interface ReportChoice {
  readonly all: boolean;
  /** Marks of the bases that are shown; null: the whole job. */
  readonly only: ReadonlySet<string> | null;
  /** Where the rest of a screen is, a line each. */
  readonly rest: readonly string[];
}

/** Columns to write for, and whether words may be coloured. */
export type ReportWidth = Pick<LedgerTextOptions, "width" | "color">;

/** Starts without a base. */
export function startReport(job: Job, { width, color }: ReportWidth, choice: ReportChoice): Report {
  const { only, all, rest } = choice;
  const options: LedgerTextOptions = {
    ...{ unit: job.unit, width, color, all, telling: only !== null },
  };
  const isScreen = only === null && !all;
  const shown = startShown(options);
  const tally: Tally = {
    ...{ templates: new Set(), unreleased: new Set(), isShared: false },
    ...{ bases: 0, held: 0, rows: 0, passed: 0, failed: 0, notChecked: 0 },
  };
  let ended: JobEnd | null = null;
  return {
    get isHeld() {
      return tally.held > 0 || (ended !== null && only === null && ended.layoutHeld.length > 0);
    },
    add: (base) => {
      if (only?.has(base.mark) === false) return;
      count(tally, base);
      if (!isScreen) shown.add(base);
    },
    addJob: (end) => {
      ended = end;
      countRows(tally, end.rows);
    },
    texts: function* () {
      yield jobText(headOf(job), options);
      if (ended === null) return;
      const said = saidOf(ended);
      if (isScreen) yield screenOf(ended, said, rest, options);
      else {
        yield* shown.texts();
        yield* listTexts(job, ended, said, options);
        yield* only === null ? wholeCautions(options) : [shortCautions(options)];
      }
      yield totalsText(tally, said, options);
      yield unreleasedText(job.status, tally.unreleased, options);
    },
  };
}

/** Lists beside the ledger. */
type Said = Readonly<Record<"held" | "open" | "answered" | "accepted" | "closed" | "unused", readonly string[]>>;

function saidOf({ questions, everyQuestion, layoutHeld, answersNotUsed }: JobEnd): Said {
  const linesOf = (wanted: Question["status"]) => questions.filter(({ status }) => status === wanted).map(questionLine);
  return {
    ...{ held: layoutHeld, open: linesOf("open"), answered: linesOf("answered"), accepted: linesOf("accepted") },
    closed: everyQuestion.filter(({ status }) => status === "closed").map(closedLine),
    unused: answersNotUsed.map(unusedLine),
  };
}

function screenOf(
  { digest, questions }: JobEnd,
  { closed, held, unused }: Said,
  rest: readonly string[],
  options: LedgerTextOptions,
): Printable {
  return writeCheckScreen({ digest, questions, closed: closed.length, layoutHeld: held, unused, rest }, options);
}

function* listTexts(job: Job, { rows }: JobEnd, said: Said, options: LedgerTextOptions): Generator<Printable> {
  if (rows.length > 0) yield writeLedgerRowsText("Layout", rows, options);
  yield writeTextList("HELD: setting-out files are not to be set out by", said.held, options);
  const about = `job ${job.number}, revision ${job.revision}`;
  yield writeTextList(`Questions for the engineer of record, open; ${about}`, shortList(said.open), options);
  yield writeTextList("Questions answered; the rows keep their fail", shortList(said.answered), options);
  const accepted = "Questions open, with the release accepted; the rows keep their fail";
  yield writeTextList(accepted, shortList(said.accepted), options);
  yield writeTextList("Questions closed; their numbers are not used again", shortList(said.closed), options);
  yield writeTextList("Answers and acceptances not used", shortList(said.unused), options);
}

function* wholeCautions(options: LedgerTextOptions): Generator<Printable> {
  yield writeTextList("NOT CHECKED AT ALL", NOT_CHECKED_AT_ALL, options);
  yield writeTextList("Cautions", CAUTIONS, options);
}

function shortCautions(options: LedgerTextOptions): Printable {
  return writeTextList("Cautions", [`No rule looks at: ${NOT_CHECKED_AT_ALL.join("; ")}.`, CAUTIONS_IN_SHORT], options);
}

const QUIET = 2;

/** Held first, then with a failing row, then the rest. */
function rankOf({ held, rows }: BaseInParts): number {
  if (held) return 0;
  return rows.some(({ status }) => status === "fail") ? 1 : QUIET;
}

function count(tally: Tally, { held, rows, summary }: BaseInParts): void {
  tally.bases += 1;
  tally.templates.add(summary.template.mark);
  if (summary.template.released === false) tally.unreleased.add(summary.template.mark);
  tally.isShared ||= summary.template.bases.length > 1;
  tally.held += held ? 1 : 0;
  countRows(tally, rows);
}

function countRows(tally: Tally, rows: BaseInParts["rows"]): void {
  tally.rows += rows.length;
  for (const { status } of rows) {
    if (status === "pass") tally.passed += 1;
    if (status === "fail") tally.failed += 1;
    if (status === "not-checked") tally.notChecked += 1;
  }
}

const MOST_MARKS = 8;

interface ShownBases {
  add(base: BaseInParts): void;
  /** Worst first. */
  texts(): Iterable<Printable>;
}

/** Bases of one template are shown once where their rows say the same. */
function startShown(options: LedgerTextOptions): ShownBases {
  const shown: Shown[] = [];
  const alike = new Map<string, Shown>();
  const add = (base: BaseInParts): void => {
    const { held, summary } = base;
    const { mark, quantity, template } = summary;
    const rows = writeRowsText(base.rows, options);
    const key = `${template.mark}\n${rows}`;
    const known = alike.get(key);
    if (known !== undefined) return void known.bases.push({ mark, quantity });
    const first: Shown = { rank: rankOf(base), bases: [{ mark, quantity }], template: ofHeading(template), held, rows };
    shown.push(first);
    if (template.bases.length > 1) alike.set(key, first);
  };
  return {
    add,
    texts: function* () {
      for (let rank = 0; rank <= QUIET; rank += 1)
        for (const each of shown)
          if (each.rank === rank) yield joinPrintable([writeHeadingText(each, options), each.rows]);
    },
  };
}

/** Lets go of the holes, which are many. */
function ofHeading({ mark, quantity, bases, heldBy = [] }: LedgerHeading["template"]): LedgerHeading["template"] {
  return { mark, quantity, bases, heldBy };
}

type Head = Pick<Job, "number" | "title" | "revision" | "status" | "date" | "editions">;

const headOf = ({ number, title, revision, status, date, editions }: Job): Head => ({
  ...{ number, title, revision, status, date, editions },
});

const jobText = terminalText((job: Head, { color, width }: LedgerTextOptions): string => {
  const { number, title, revision, status, date, editions } = job;
  const { templateHoles, baseHoles, edges, concrete, placing } = editions;
  const named = [...new Set([templateHoles, baseHoles, edges, concrete, placing])].join("; ");
  const heading = styled(`Job ${number}  ${title}`.trimEnd(), "bold", color);
  const rule = "-".repeat(Math.min(width, 72));
  const said = wrap(`revision ${revision}, ${status}, ${date}; rules ${editions.set}: ${named}`, width);
  return `${[heading, ...said, rule].join("\n")}\n\n`;
});

/** So many lines of one list are shown; `questions.csv` and `summary.json` have all. */
const MOST_LISTED = 200;

function shortList(lines: readonly string[]): readonly string[] {
  if (lines.length <= MOST_LISTED) return lines;
  return [...lines.slice(0, MOST_LISTED), `and ${lines.length - MOST_LISTED} more, which are not shown here`];
}

const questionLine = ({ number, text, check }: Question): string => {
  const said = check.answer ?? check.accepted;
  return `${number}  ${text}${said === undefined ? "" : ` ${said.by}, ${said.date}: ${said.text}`}`;
};

const closedLine = ({ number, bases, rule, closedIn }: SummaryQuestion): string =>
  `${number}  ${[listed(bases, MOST_MARKS), rule].filter((word) => word !== "").join(" ")}, closed in revision ${closedIn}`;

/** Whose answer to what, and why it answers nothing. */
function unusedLine({ kind, question, mark, rule, subject, by, date, why }: UnusedSummaryAnswer): string {
  const what = kind === "accepted" ? "acceptance" : "";
  return `${[what, question, mark, rule, subject].filter((word) => word !== "").join(" ")}, by ${by}, ${date}: ${why}`;
}

/** What a question alone keeps from being released; nothing of a job that is not released at all. */
const unreleasedText = terminalText(unreleasedWords);

function unreleasedWords(status: Job["status"], unreleased: ReadonlySet<string>, { width }: LedgerTextOptions): string {
  if (status !== "released" || unreleased.size === 0) return "";
  const are = unreleased.size === 1 ? "template is" : "templates are";
  const marks = listed([...unreleased], MOST_MARKS);
  const words = `NOT RELEASED though the job is: ${unreleased.size} ${are} stopped by open questions: ${marks}. An answer, or an acceptance by name, releases them.`;
  return `${wrap(words, width).join("\n")}\n`;
}

const totalsText = terminalText((tally: Tally, { held, open, unused }: Said, { width }: LedgerTextOptions): string => {
  const other = tally.rows - tally.passed - tally.failed - tally.notChecked;
  const rows = `${tally.passed} passed, ${tally.failed} failed, ${tally.notChecked} not checked, ${other} not applicable`;
  const layout = held.length === 0 ? "" : ", setting-out files held";
  const strays = unused.length === 0 ? "" : `, ${counted(unused.length, "answer")} not used`;
  const [bases, questions] = [counted(tally.bases, "base"), counted(open.length, "question")];
  const templates = tally.isShared ? `, ${counted(tally.templates.size, "template")}` : "";
  const words = `${bases}${templates}, ${tally.held} held${layout}. Ledger: ${rows}. ${questions} open${strays}.`;
  return `${wrap(words, width).join("\n")}\n`;
});
