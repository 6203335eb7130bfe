/** Runs rules: the one place where margin and status are computed, answers are matched and severities raised. */
import type { Job, Severity } from "../job/model/job.js";
import { answerTo } from "./answers.js";
import type { CheckContext, CheckRow, CheckStatus, Quantity, Rule, RuleResult, Sense } from "./model.js";
import { numberRows } from "./numbered.js";
import { givenBy } from "./takes.js";

export { isAsking } from "./asking.js";

const RANK: Readonly<Record<Severity, number>> = { advise: 0, ask: 1, stop: 2 };

/** Rows in the order of the rules, then of their subjects. */
export function runRules(rules: readonly Rule[], context: CheckContext): readonly CheckRow[] {
  const rows = rules.flatMap((rule) => {
    const [clause, edition] = [rule.clause(context), rule.edition(context)];
    const given = givenBy(context.base, rule.takes);
    return rule.check(context).map((result) => ({ ...judge(rule, result, clause, edition), givenBy: given }));
  });
  return finishRows(rows, context.job, context.base.mark);
}

/**
 * Raises severities where the job asks for it, numbers questions that were asked before, and adds what was said to them;
 * `mark` null: rows of the job.
 */
export function finishRows(rows: readonly CheckRow[], job: Job, mark: string | null): readonly CheckRow[] {
  const finished = rows.map((row) => {
    const severity = raised(row.severity, job.raised[row.rule]);
    return severity === row.severity ? row : { ...row, severity };
  });
  return numberRows(finished, job, mark).map((row) => {
    const answer = answerTo(row, job, mark);
    return answer === null ? row : { ...row, answer };
  });
}

/** A result as a ledger row, with margin and status. */
export function judge(
  rule: Pick<Rule, "id" | "plainName" | "severity" | "measured">,
  result: RuleResult,
  clause: string,
  edition: string,
): CheckRow {
  const compared = result.kind === "compared";
  const margin = compared ? marginOf(result.value, result.sense, result.limit) : null;
  return {
    rule: rule.id,
    plainName: rule.plainName,
    clause: result.clause ?? clause,
    edition: result.edition ?? edition,
    subject: result.subject,
    severity: result.severity ?? rule.severity,
    measured: result.measured ?? rule.measured,
    value: compared ? result.value : null,
    limit: compared ? result.limit : null,
    sense: compared ? result.sense : null,
    margin,
    status: result.kind === "compared" ? statusOf(margin) : result.kind,
    note: result.note,
    missing: result.kind === "not-checked" ? (result.missing ?? []) : [],
    chosen: compared && result.chosen === true,
    givenBy: "",
    answer: null,
    askedAs: null,
    question: null,
  };
}

/** Positive where the rule holds with something to spare; for `=` minus the difference. Throws on mixed quantities: a bug. */
export function marginOf(value: Quantity, sense: Sense, limit: Quantity): Quantity {
  if (value.kind === "length" && limit.kind === "length") {
    return { kind: "length", twice: spare(value.twice, sense, limit.twice) };
  }
  if (value.kind === "count" && limit.kind === "count") {
    return { kind: "count", count: spare(value.count, sense, limit.count) };
  }
  throw new TypeError("a length was held against a count");
}

function spare(value: number, sense: Sense, limit: number): number {
  if (!Number.isSafeInteger(value) || !Number.isSafeInteger(limit))
    throw new RangeError(`not integers: ${value}, ${limit}`);
  switch (sense) {
    case ">=":
      return value - limit;
    case "<=":
      return limit - value;
    case "=":
      return -Math.abs(value - limit) || 0;
  }
}

function statusOf(margin: Quantity | null): CheckStatus {
  return figure(margin) >= 0 ? "pass" : "fail";
}

/** The bare integer of a quantity, 0 for none. */
function figure(quantity: Quantity | null): number {
  if (quantity === null) return 0;
  return quantity.kind === "length" ? quantity.twice : quantity.count;
}

function raised(own: Severity, asked: Severity | undefined): Severity {
  return asked !== undefined && RANK[asked] > RANK[own] ? asked : own;
}

/** True of a row for which no cut file is written: a fail of severity `stop`. */
export function isHolding({ status, severity }: CheckRow): boolean {
  return status === "fail" && severity === "stop";
}

/**
 * Fails first (stop, ask, advise), then passes, each by margin against the limit; then passes that can have no margin, not checked,
 * not applicable. Stable.
 */
export function worstFirst(rows: readonly CheckRow[]): readonly CheckRow[] {
  return rows
    .map((row, index) => ({ row, index, tier: tierOf(row), tightness: tightness(row) }))
    .sort((a, b) => a.tier - b.tier || a.tightness - b.tightness || a.index - b.index)
    .map(({ row }) => row);
}

function tierOf(row: CheckRow): number {
  switch (row.status) {
    case "fail":
      return 2 - RANK[row.severity];
    case "pass":
      return isWithoutMargin(row) ? 4 : 3;
    case "not-checked":
      return 5;
    case "not-applicable":
      return 6;
  }
}

/**
 * True of a pass that says yes or no: what must be equal is, nothing is there of what must not be, a number is the one that was
 * asked for, or a piece was chosen or sized to its limit. Its 0 is no close call; that of a clearance is.
 */
export function isWithoutMargin({ status, sense, value, limit, margin, chosen }: CheckRow): boolean {
  if (status !== "pass") return false;
  if (sense === "=") return true;
  const isNothing = sense === "<=" && figure(limit) === 0;
  return figure(margin) === 0 && (value?.kind === "count" || isNothing || chosen);
}

/** Margin as a share of the limit, or of the value where the limit is zero: the least is the closest call. */
export function tightness(row: CheckRow): number {
  const size = Math.abs(figure(row.limit)) || Math.abs(figure(row.value)) || 1;
  return figure(row.margin) / size;
}
