/** What a signer reads first, as text: every fail, the least margins, what was not checked and why, what holds exactly. */
import type { CheckRow, Quantity, Sense } from "../checks/model.js";
import { isWithoutMargin, tightness } from "../checks/run.js";
import type { Severity } from "../job/model/job.js";
import { groupBy } from "../units/group-by.js";
import { formatApart, formatDifference, type Unit } from "../units/index.js";
import type { CheckLine, Prepared } from "./request.js";
import { respelled } from "./spelling.js";

/** One row of the block: what is held, where, against what, and by which clause. */
export interface SignerLine {
  /** The rule in plain words, with a capital. */
  readonly name: string;
  /** Ways to say the subjects, the fullest first. */
  readonly subjects: readonly string[];
  readonly value: string;
  readonly limit: string;
  readonly margin: string;
  /** `FAIL, SHORT BY 1/8`; "" for a pass. */
  readonly fail: string;
  /** What a fail does to this sheet, and who answered; "" for a pass. */
  readonly effect: string;
  /** `washer-cover: Design Guide 1, 2nd ed., s.2.6`: the rule's id, and what it is held by. */
  readonly source: string;
}

/** Everything the block can say. */
export interface SignerText {
  readonly heading: string;
  readonly fails: readonly SignerLine[];
  /** Fails of one rule in one line, where not even short lines of all have room. */
  readonly failsByRule: readonly SignerLine[];
  /** One of each rule and clause, the closest call first. */
  readonly margins: readonly SignerLine[];
  /** The closest of each rule alone, where not every clause of it has room. */
  readonly marginsByRule: readonly SignerLine[];
  /** `cover of rods in concrete (concrete.depth)`, each rule once. */
  readonly notChecked: readonly string[];
  /** Names of the rules that hold with nothing to spare because none is asked for. */
  readonly exact: readonly string[];
}

/** The checks of a base in the order in which a signer wants them. */
export function signerText({ rows, lines, job, rods }: Prepared): SignerText {
  const about = subjectWriter(new Set(rods.map(({ tag }) => tag)));
  const say = (line: CheckLine): SignerLine => lineOf(line, about(line.subjects), job);
  const margins = leastMargins(lines).map(say);
  const failing = lines.filter(({ row }) => row.status === "fail");
  return {
    heading: headingOf(rows),
    fails: failing.map(say),
    failsByRule: [...groupBy(failing, ({ row }) => row.rule).values()].map((own) => say(gathered(own))),
    margins,
    marginsByRule: [...groupBy(margins, ({ name }) => name).values()].flatMap(([least]) => least ?? []),
    notChecked: notCheckedWords(lines),
    exact: distinct(lines.filter(({ row }) => isWithoutMargin(row)).map(({ row }) => row.plainName)),
  };
}

function headingOf(rows: readonly CheckRow[]): string {
  const count = (status: CheckRow["status"]) => rows.filter((row) => row.status === status).length;
  return `CHECKS: ${count("fail")} FAIL, ${count("not-checked")} NOT CHECKED, ${count("pass")} PASS`;
}

function lineOf({ row }: CheckLine, subjects: readonly string[], { unit, editions }: Prepared["job"]): SignerLine {
  const { value, limit, sense, margin, status } = row;
  const [found, asked] = value === null || limit === null ? ["", ""] : bareTexts(value, limit, unit);
  return {
    name: capital(respelled(row.plainName, editions)),
    subjects,
    value: found,
    limit: sense === null ? "" : `${sense} ${asked}`,
    margin: margin === null ? "" : spareText(margin, unit),
    fail: status === "fail" ? failWords(row, unit) : "",
    effect: status === "fail" ? effectOf(row) : "",
    source: `${row.rule}: ${sourceOf(row.edition, respelled(row.clause, editions))}`,
  };
}

/** Where none is allowed, as of scribing that found no room, how many there are stands in the row. */
function failWords({ margin, sense, limit }: CheckRow, unit: Unit): string {
  const isNoneAllowed = sense === "<=" && limit?.kind === "count" && limit.count === 0;
  if (margin === null || isNoneAllowed) return "FAIL";
  const missing: Quantity =
    margin.kind === "length"
      ? { ...margin, twice: Math.abs(margin.twice) }
      : { ...margin, count: Math.abs(margin.count) };
  return `FAIL, ${missedBy(sense)} ${spareText(missing, unit)}`;
}

/** How a limit is missed. */
function missedBy(sense: Sense | null): string {
  if (sense === "<=") return "OVER BY";
  return sense === "=" ? "OFF BY" : "SHORT BY";
}

/** The clause after the edition that has it; where the clause says it already, or arithmetic is meant, the clause alone. */
function sourceOf(edition: string, clause: string): string {
  return edition === "geometry" || clause.includes(edition) ? clause : `${edition}, ${clause}`;
}

const EFFECT: Readonly<Record<Severity, string>> = {
  stop: "HELD BY THIS",
  ask: "QUESTION OPEN",
  advise: "ADVICE ONLY",
};

/** An answer closes a question; what is held stays held. */
function effectOf({ severity, answer }: CheckRow): string {
  if (answer === null) return EFFECT[severity];
  const answered = `${answer.kind === "answered" ? "ANSWERED" : "OPEN, RELEASE ACCEPTED"} BY ${answer.by}, ${answer.date}`;
  return severity === "stop" ? `${EFFECT.stop}; ${answered}` : answered;
}

/** The worst of a rule's fails, with the subjects of all. */
function gathered(own: readonly CheckLine[]): CheckLine {
  const [first] = own;
  if (first === undefined) throw new RangeError("no fails to gather");
  const worst = own.reduce((least, each) => (tightness(each.row) < tightness(least.row) ? each : least), first);
  return { row: worst.row, subjects: distinct(own.flatMap(({ subjects }) => subjects)) };
}

/** The closest line of each rule and clause. */
function leastMargins(lines: readonly CheckLine[]): readonly CheckLine[] {
  const real = lines
    .filter(({ row }) => row.status === "pass" && row.margin !== null && !isWithoutMargin(row))
    .sort((a, b) => tightness(a.row) - tightness(b.row));
  return [...groupBy(real, ({ row }) => `${row.rule}|${row.clause}`).values()].flatMap(([least]) => least ?? []);
}

/** A rule with the keys that it lacks; without any, with what it says. */
function notCheckedWords(lines: readonly CheckLine[]): readonly string[] {
  const open = lines.filter(({ row }) => row.status === "not-checked").map(({ row }) => row);
  return [...groupBy(open, ({ plainName }) => plainName)].map(([name, own]) => {
    const lacks = own.flatMap(({ missing, note }) => (missing.length > 0 ? missing : [note]));
    return `${name} (${distinct(lacks).join(", ")})`;
  });
}

function distinct(words: readonly string[]): readonly string[] {
  return [...new Set(words)];
}

function capital(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

const MOST_LISTED = 3;
const TAGGED = /^(.*?)([A-Z]+\d+(?:-[A-Z]+\d+)?)$/;

/** Ways to say subjects: `ALL RODS`, `A1, A3`, `4 RODS`, `BASE PLATE 6 PAIRS`; one alone as it is. */
function subjectWriter(rods: ReadonlySet<string>): (subjects: readonly string[]) => readonly string[] {
  return (subjects) => {
    const [only = ""] = subjects;
    if (subjects.length <= 1) return [only.toUpperCase()];
    const isAll = subjects.length === rods.size && subjects.every((subject) => rods.has(subject));
    if (isAll) return ["ALL RODS"];
    const list = subjects.length <= MOST_LISTED ? [subjects.join(", ").toUpperCase()] : [];
    return [...list, countWords(subjects, rods)];
  };
}

function countWords(subjects: readonly string[], rods: ReadonlySet<string>): string {
  const parts = subjects.map((subject) => TAGGED.exec(subject));
  const [before = ""] = parts.map((part) => part?.[1] ?? "");
  const tags = parts.map((part) => part?.[2] ?? "");
  if (parts.some((part) => part?.[1] !== before)) return `${subjects.length} PLACES`;
  return `${before}${subjects.length} ${nounOf(tags, rods)}`.toUpperCase();
}

function nounOf(tags: readonly string[], rods: ReadonlySet<string>): string {
  if (tags.every((tag) => rods.has(tag))) return "RODS";
  return tags.every((tag) => tag.includes("-")) ? "PAIRS" : "HOLES";
}

/** Value and limit without unit, with as many digits as it takes to show which is the larger. */
export function bareTexts(value: Quantity, limit: Quantity, unit: Unit): readonly [string, string] {
  if (value.kind === "length" && limit.kind === "length") return formatApart(value.twice / 2, limit.twice / 2, unit);
  return [countText(value), countText(limit)];
}

/** A margin without unit; never 0 where there is one. */
export function spareText(margin: Quantity, unit: Unit): string {
  return margin.kind === "length" ? formatDifference(margin.twice / 2, unit) : countText(margin);
}

function countText(quantity: Quantity): string {
  return quantity.kind === "count" ? String(quantity.count) : "";
}
