/** What the terminal shows of a build: bases held first, then the questions, what was not checked, cautions and totals. */
import { CAUTIONS } from "../checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../checks/index.js";
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalLine, terminalText } from "../diagnostics/printable.js";
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
import type { BaseInParts, PackageRest } from "../tasks/package.js";
import type { Shell } from "./shell.js";
import { hasColor, widthOf } from "./shell.js";

/** What is shown of a build, gathered base by base so that no base has to stay in memory. */
export interface Report {
  /** Takes what will be shown of a base, and lets go of the rest. */
  add(base: BaseInParts): void;
  /** Takes the rows of the whole job. */
  addJob(end: Pick<PackageRest, "rows" | "questions" | "everyQuestion" | "answersNotUsed" | "layoutHeld">): void;
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

/** `onlyFailing` leaves out the bases without a failing row; their number is told. */
export function startReport(
  job: Job,
  shell: Shell,
  choice: { readonly all: boolean; readonly onlyFailing: boolean },
): Report {
  const options: LedgerTextOptions = { unit: job.unit, width: widthOf(shell), color: hasColor(shell), all: choice.all };
  const shown = startShown(options);
  const said: Record<Said, readonly string[]> = {
    ...{ held: [], open: [], answered: [], accepted: [], closed: [], unused: [] },
  };
  const gaps = startGaps();
  const tally: Tally = {
    ...{ templates: new Set(), unreleased: new Set(), isShared: false },
    ...{ bases: 0, held: 0, rows: 0, passed: 0, failed: 0, notChecked: 0 },
  };
  let plan = terminalLine``;
  return {
    get isHeld() {
      return tally.held > 0 || said.held.length > 0;
    },
    add: (base) => {
      count(tally, base);
      gaps.add(base);
      if (!choice.onlyFailing || rankOf(base) < QUIET) shown.add(base);
    },
    addJob: (end) => {
      const linesOf = (wanted: Question["status"]) =>
        end.questions.filter(({ status }) => status === wanted).map(questionLine);
      said.open = linesOf("open");
      said.answered = linesOf("answered");
      said.accepted = linesOf("accepted");
      said.closed = end.everyQuestion.filter(({ status }) => status === "closed").map(closedLine);
      said.held = end.layoutHeld;
      said.unused = end.answersNotUsed.map(unusedLine);
      if (end.rows.length === 0) return;
      countRows(tally, end.rows);
      gaps.add({ mark: "layout", rows: end.rows });
      plan = writeLedgerRowsText("Layout", end.rows, options);
    },
    texts: function* () {
      yield jobText(headOf(job), options);
      yield* shown.texts();
      yield plan;
      yield writeTextList("HELD: setting-out files are not to be set out by", said.held, options);
      const about = `job ${job.number}, revision ${job.revision}`;
      yield writeTextList(`Questions for the engineer of record, open; ${about}`, shortList(said.open), options);
      yield writeTextList("Questions answered; the rows keep their fail", shortList(said.answered), options);
      const accepted = "Questions open, with the release accepted; the rows keep their fail";
      yield writeTextList(accepted, shortList(said.accepted), options);
      yield writeTextList("Questions closed; their numbers are not used again", shortList(said.closed), options);
      yield writeTextList("Answers not used", shortList(said.unused), options);
      if (!choice.all) yield writeTextList("Not checked, for want of input", gaps.lines(), options);
      yield writeTextList("NOT CHECKED AT ALL", NOT_CHECKED_AT_ALL, options);
      yield writeTextList("Cautions", CAUTIONS, options);
      yield unreleasedText(job.status, tally.unreleased);
      yield totalsText(tally, tally.bases - shown.bases, said);
    },
  };
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

interface Gaps {
  add(base: Pick<BaseInParts, "mark" | "rows">): void;
  lines(): readonly string[];
}

/** Rows that were not checked, by rule and reason, with the bases that they were not checked for. */
function startGaps(): Gaps {
  const gaps = new Map<string, { readonly marks: string[]; bases: number }>();
  return {
    add: ({ mark, rows }) => {
      const words = rows.filter(({ status }) => status === "not-checked").map(({ rule, note }) => `${rule}: ${note}`);
      for (const word of new Set(words)) {
        const gap = gaps.get(word) ?? { marks: [], bases: 0 };
        gap.bases += 1;
        if (gap.bases <= MOST_MARKS) gap.marks.push(mark);
        gaps.set(word, gap);
      }
    },
    lines: () =>
      [...gaps].map(([word, { marks, bases }]) => {
        const more = bases > marks.length ? ` and ${bases - marks.length} more` : "";
        return `${word}: ${marks.join(" ")}${more}`;
      }),
  };
}

interface ShownBases {
  add(base: BaseInParts): void;
  /** How many were added. */
  readonly bases: number;
  /** Worst first. */
  texts(): Iterable<Printable>;
}

/** Bases of one template are shown once where their rows say the same. */
function startShown(options: LedgerTextOptions): ShownBases {
  const shown: Shown[] = [];
  const alike = new Map<string, Shown>();
  let bases = 0;
  const add = (base: BaseInParts): void => {
    const { held, summary } = base;
    const { mark, quantity, template } = summary;
    bases += 1;
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
    get bases() {
      return bases;
    },
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

/** Lists beside the ledger. */
type Said = "held" | "open" | "answered" | "accepted" | "closed" | "unused";

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
const unreleasedText = terminalText((status: Job["status"], unreleased: ReadonlySet<string>): string => {
  if (status !== "released" || unreleased.size === 0) return "";
  const are = unreleased.size === 1 ? "template is" : "templates are";
  const marks = listed([...unreleased], MOST_MARKS);
  return `NOT RELEASED though the job is: ${unreleased.size} ${are} stopped by open questions: ${marks}. An answer, or an acceptance by name, releases them.\n`;
});

function totalsText(
  tally: Tally,
  unshown: number,
  { held, open, unused }: Readonly<Record<Said, readonly string[]>>,
): Printable {
  const other = tally.rows - tally.passed - tally.failed - tally.notChecked;
  const rows = `${tally.passed} passed, ${tally.failed} failed, ${tally.notChecked} not checked, ${other} not applicable`;
  const layout = held.length === 0 ? "" : ", setting-out files held";
  const strays = unused.length === 0 ? "" : `, ${counted(unused.length, "answer")} not used`;
  const quiet = unshown === 0 ? [] : [terminalLine`${counted(unshown, "base")} without a failing row not shown.\n`];
  const [bases, questions] = [counted(tally.bases, "base"), counted(open.length, "question")];
  const templates = tally.isShared ? `, ${counted(tally.templates.size, "template")}` : "";
  const totals = terminalLine`${bases}${templates}, ${tally.held} held${layout}. Ledger: ${rows}. ${questions} open${strays}.\n`;
  return joinPrintable([...quiet, totals]);
}
