/** What `check` and `make` find, on one screen whatever the size of the job: what a checker needs first stands first. */
import { CAUTIONS_IN_SHORT } from "../checks/cautions.js";
import type { AdvisedRule, CloseCall, HeldBases, JobDigest } from "../checks/digest.js";
import { markWords } from "../checks/digest.js";
import { keyWords } from "../checks/key-words.js";
import type { MissingKeys } from "../checks/missing-keys.js";
import type { CheckRow } from "../checks/model.js";
import { NOT_CHECKED_AT_ALL } from "../checks/model.js";
import { counted, failedFigures, subjectWords } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import type { Question } from "../summary/questions.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/length.js";
import type { LedgerTextOptions } from "./ledger-text.js";
import { comparison, marginWords, styled, wrap } from "./ledger-text.js";

/** Everything on the screen but its head and its totals. */
export interface CheckScreen {
  readonly digest: JobDigest;
  /** Of the whole job, numbered. */
  readonly questions: readonly Question[];
  /** How many numbers are closed. */
  readonly closed: number;
  readonly layoutHeld: readonly string[];
  /** Answers and acceptances not used, a line each. */
  readonly unused: readonly string[];
  /** Where the rest is, a line each. */
  readonly rest: readonly string[];
}

/** Sections with an empty line between them, ending with one. */
export const writeCheckScreen = terminalText((screen: CheckScreen, options: LedgerTextOptions): string => {
  const sections = [
    heldLines(screen, options),
    questionLines(screen, options),
    listLines("Answers and acceptances not used", screen.unused, MOST_UNUSED, options),
    adviceLines(screen.digest, options),
    closestLines(screen.digest, options),
    uncheckedLines(screen.digest, options),
    [`No rule looks at: ${NOT_CHECKED_AT_ALL.join("; ")}.`, `Cautions: ${CAUTIONS_IN_SHORT}`].flatMap((words) =>
      wrap(words, options.width),
    ),
    screen.rest.flatMap((line) => hanging(line, options.width, 0)),
  ];
  const shown = sections.filter((lines) => lines.length > 0);
  return `${shown.map((lines) => lines.join("\n")).join("\n\n")}\n\n`;
});

const [MOST_HELD, MOST_HELD_LINES, MOST_ASKED, MOST_ADVISED, MOST_CLOSE, MOST_STEPS, MOST_UNUSED] = [
  5, 2, 8, 5, 3, 5, 3,
];
const [MOST_MARKS, MOST_HELD_MARKS, MOST_NAMED, MOST_STEP_LINES] = [6, 12, 3, 2];

function heading(words: string, style: Parameters<typeof styled>[1], { color, width }: LedgerTextOptions): string[] {
  return wrap(words, width).map((line) => styled(line, style, color));
}

/** The first line after `first` blanks, further ones after two more. */
function hanging(words: string, width: number, first: 0 | 2): string[] {
  return wrap(words, width - first - 2).map((line, i) => `${" ".repeat(i === 0 ? first : first + 2)}${line}`);
}

/** One line of it, and dots where it goes on. */
function cut(words: string, room: number): string {
  return words.length <= room ? words : `${words.slice(0, Math.max(0, room - 4)).trimEnd()} ...`;
}

/** So many lines of it, the last with dots where it goes on. */
function cutLines(words: string, room: number, most: number): string[] {
  if (most === 1 || words.length <= room) return [cut(words, room)];
  const lines = wrap(words, room);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), cut(lines.slice(most - 1).join(" "), room)];
}

/** Names padded to one width, each with a text beside it, on a line or more. */
function columns(
  rows: readonly { readonly name: string; readonly text: string }[],
  { width }: LedgerTextOptions,
  most = 1,
): string[] {
  const names = rows.map(({ name }) => cut(name, Math.floor(width / 2)));
  const wide = greatestOf([0, ...names.map(({ length }) => length)]);
  return rows.flatMap(({ text }, k) =>
    cutLines(text, width - wide - 4, most).map(
      (line, i) => `  ${(i === 0 ? (names[k] ?? "") : "").padEnd(wide)}  ${line}`,
    ),
  );
}

function heldLines({ digest, layoutHeld }: CheckScreen, options: LedgerTextOptions): string[] {
  const { held, heldBases, bases, heldTemplates } = digest;
  const shown = held.slice(0, MOST_HELD);
  const unshown = held.slice(MOST_HELD).flatMap(({ marks }) => marks);
  const templates = `${counted(heldTemplates, "template")} not to be cut`;
  const layout = layoutHeld.map((reason) => ({ name: "layout", text: `not to be set out by: ${reason}` }));
  if (held.length === 0 && layout.length === 0)
    return heading(`Nothing is held: ${counted(bases, "base")}.`, "green", options);
  const what = held.length === 0 ? "HELD: the layout" : `HELD: ${heldBases} of ${counted(bases, "base")}, ${templates}`;
  const more = `and ${counted(unshown.length, "held base")} more: ${listed(unshown, MOST_MARKS * 2)}`;
  return [
    ...heading(what, "red", options),
    ...columns(
      shown.map((each) => ({ name: nameOf(each), text: whyHeld(each, options.unit) })),
      options,
      MOST_HELD_LINES,
    ),
    ...(unshown.length === 0 ? [] : hanging(more, options.width, 2)),
    ...columns(layout.slice(0, MOST_UNUSED), options, MOST_HELD_LINES),
    ...(layout.length > MOST_UNUSED ? [`  and ${layout.length - MOST_UNUSED} more reasons of the layout`] : []),
  ];
}

const nameOf = ({ marks }: HeldBases): string =>
  marks.length > MOST_NAMED ? counted(marks.length, "base") : cut(marks.join(", "), 24);

function whyHeld({ rows, reasons, marks }: HeldBases, unit: Unit): string {
  const why = rows.length === 0 ? reasons.join("; ") : rows.map((row) => failWords(row, unit)).join("; ");
  return marks.length > MOST_NAMED ? `${listed(marks, MOST_HELD_MARKS, " ")}: ${why}` : why;
}

/** `room for nuts and wrench (nut-room) 2-3/4 in, at least 2.7855 in needed`. */
function failWords(row: CheckRow, unit: Unit): string {
  const [name, figures] = [`${row.plainName} (${row.rule})`, failedFigures(row, unit)];
  return figures === null ? `${name}: ${row.note}` : `${name} ${figures}`;
}

function questionLines({ questions, closed }: CheckScreen, options: LedgerTextOptions): string[] {
  const count = (status: Question["status"]): number => questions.filter((each) => each.status === status).length;
  const [open, accepted, answered] = [count("open"), count("accepted"), count("answered")];
  const said = [
    `${open} open`,
    ...(accepted === 0 ? [] : [`${accepted} open with the release accepted`]),
    ...(answered === 0 ? [] : [`${answered} answered`]),
    ...(closed === 0 ? [] : [`${closed} closed`]),
  ].join(", ");
  const asked = [...questions.filter(isOpen), ...questions.filter(({ status }) => status === "accepted")];
  if (questions.length === 0 && closed === 0) return ["No question to the engineer of record."];
  const shown = asked.slice(0, MOST_ASKED);
  const names = shown.map((question) => `${question.number}  ${placesWords(question)}`);
  const room = options.width - greatestOf([0, ...names.map(({ length }) => length)]) - 4;
  const rows = shown.map((question, i) => ({ name: names[i] ?? "", text: askedWords(question, room) }));
  const more = asked.slice(MOST_ASKED);
  const numbers = more.length === 0 ? "" : `${more[0]?.number} to ${more.at(-1)?.number}`;
  return [
    ...heading(`Questions to the engineer of record: ${said}`, open > 0 ? "yellow" : "bold", options),
    ...columns(rows, options),
    ...(more.length === 0
      ? []
      : [`  and ${counted(more.length, "question")} more, ${numbers}: engineer/questions.csv`]),
  ];
}

const isOpen = ({ status }: Question): boolean => status === "open";

function placesWords({ places }: Question): string {
  const marks = places.map(({ mark }) => mark).filter((mark) => mark !== "");
  return marks.length === 0 ? "layout" : cut(listed(marks, 2), 26);
}

/** With the rule's id where that has room. */
function askedWords({ plainName, parts, check: { rule, accepted } }: Question, room: number): string {
  const { figures, notes } = parts;
  const by = accepted === undefined ? "" : `accepted by ${accepted.by}: `;
  if (figures === null) return `${by}${plainName} (${rule}): ${notes}`;
  const said = (name: string): string => `${by}${name} ${figures.found}, ${figures.asked} asked for`;
  const whole = said(`${plainName} (${rule})`);
  return whole.length <= room ? whole : said(plainName);
}

function listLines(title: string, lines: readonly string[], most: number, options: LedgerTextOptions): string[] {
  if (lines.length === 0) return [];
  const more = lines.length - most;
  return [
    ...heading(`${title}: ${lines.length}`, "yellow", options),
    ...lines.slice(0, most).flatMap((line) => cutLines(line, options.width - 2, 2).map((each) => `  ${each}`)),
    ...(more > 0 ? [`  and ${more} more; --all shows them`] : []),
  ];
}

function adviceLines({ advice }: JobDigest, options: LedgerTextOptions): string[] {
  if (advice.length === 0) return [];
  const rows = advice.reduce((sum, each) => sum + each.rows, 0);
  const more = advice.slice(MOST_ADVISED);
  return [
    ...heading(`Advice, which stops nothing: ${counted(rows, "row")}`, "cyan", options),
    ...columns(advice.slice(0, MOST_ADVISED).map(adviceRow), options, 2),
    ...(more.length === 0
      ? []
      : [
          cut(
            `  and of ${listed(
              more.map(({ rule }) => rule),
              MOST_MARKS,
            )}`,
            options.width,
          ),
        ]),
  ];
}

function adviceRow(advised: AdvisedRule): { readonly name: string; readonly text: string } {
  const { rule, plainName, rows, ofLayout, marks } = advised;
  const times = rows === marks.count ? "" : ` (${counted(rows, "row")})`;
  const words = ofLayout ? markWords(marks, MOST_PAIRS, "; ") : markWords(marks, MOST_MARKS * 2);
  return { name: `${plainName} (${rule})`, text: `${words}${times}` };
}

/** Subjects of the layout: pairs of bases, mostly. */
const MOST_PAIRS = 4;

function closestLines({ closest }: JobDigest, options: LedgerTextOptions): string[] {
  if (closest.length === 0) return [];
  const rows = closest
    .slice(0, MOST_CLOSE)
    .map((call) => ({ name: call.row.rule, text: closeWords(call, options.unit) }));
  return [...heading("Closest of what passes", "bold", options), ...columns(rows, options)];
}

function closeWords({ row, subjects, marks }: CloseCall, unit: Unit): string {
  return `${comparison(row, unit)}, ${marginWords(row, unit)}  ${markWords(marks, MOST_MARKS - 2)}, ${subjectWords(subjects)}`;
}

function uncheckedLines({ unchecked }: JobDigest, options: LedgerTextOptions): string[] {
  const { rows, keyless, steps } = unchecked;
  if (rows === 0) return [];
  const shown = steps.slice(0, MOST_STEPS);
  const total = shown.at(-1)?.total ?? 0;
  const room = greatestOf(
    shown.map((step) => keyNames(step).length),
    KEY_ROOM,
  );
  const more = steps.slice(MOST_STEPS);
  const others = more.length === 0 ? "" : `; ${counted(rows - keyless - total, "row")} lack other keys`;
  const none = keyless === 0 ? "" : `; ${counted(keyless, "row")} ${keyless === 1 ? "hangs" : "hang"} on no key`;
  const title = `Not checked for want of input: ${counted(rows, "row")}`;
  if (shown.length === 0) return [...heading(title, "bold", options)];
  return [
    ...heading(`${title}. Most of it is checked when these are given:`, "bold", options),
    ...columns(
      shown.map((step) => stepRow(step, rows, room)),
      options,
      MOST_STEP_LINES,
    ),
    ...hanging(`together ${total} of ${rows}${others}${none}`, options.width, 2),
  ];
}

const keyNames = ({ keys }: MissingKeys): string => keys.join(" + ");

function stepRow(step: MissingKeys, all: number, room: number): { readonly name: string; readonly text: string } {
  const { keys, rows } = step;
  const name = `${String(rows).padStart(String(all).length)} ${rows === 1 ? "row" : "rows"}`;
  return { name, text: `${keyNames(step).padEnd(room)}  ${keys.map(keyWords).join("; and ")}` };
}

/** The longest of the usual keys. */
const KEY_ROOM = 20;
