/** The ledger as CSV: every row of every base, worst first inside a base, then what no rule looks at. */
import type { SummaryBase, SummaryCheck, UnusedSummaryAnswer } from "../summary/model.js";
import type { CsvCell } from "./csv-cells.js";
import { writeCsvRows } from "./csv-cells.js";

/** Headings of `ledger.csv`; figures are in the unit named in the row, counts and ratios have none. */
export const LEDGER_COLUMNS = [
  "base",
  "template",
  "held",
  "rule",
  "clause",
  "edition",
  "subject",
  "severity",
  "status",
  "value",
  "sense",
  "limit",
  "margin",
  "unit",
  "note",
  "answered by",
  "answer date",
  "answer",
  "given by",
] as const;

/** The heading row. */
export function writeLedgerHead(): string {
  return writeCsvRows([LEDGER_COLUMNS]);
}

/** The rows of one base, in the order given; `givenBy`: for each, who gave what its rule takes. */
export function writeLedgerRows(base: Omit<SummaryBase, "files">, givenBy: readonly string[]): string {
  const before = [base.mark, base.template.mark, base.held ? "HELD" : ""];
  return writeCsvRows(base.checks.map((check, index) => [...before, ...checkCells(check), givenBy[index] ?? ""]));
}

/** The rows of the whole job, which name no base and no template. */
export function writeLedgerJobRows(checks: readonly SummaryCheck[]): string {
  return writeCsvRows(checks.map((check) => ["", "", "", ...checkCells(check), ""]));
}

function checkCells(check: SummaryCheck): CsvCell[] {
  const { rule, clause, edition, subject, severity, status, value, sense, limit, margin, unit, note } = check;
  const said = check.answer ?? check.accepted;
  const text = check.accepted === undefined ? (said?.text ?? "") : `${ACCEPTED}: ${check.accepted.text}`;
  const answered = [said?.by ?? "", said?.date ?? "", text];
  return [rule, clause, edition, subject, severity, status, value, sense, limit, margin, unit, note, ...answered];
}

/** Begins what somebody says who accepts a release though the question is open: no answer of the engineer of record. */
const ACCEPTED = "RELEASE ACCEPTED WITH THE QUESTION OPEN";

/** Answers of the job that answer no open question, one a row, with why in the note column. */
export function writeLedgerAnswers(answers: readonly UnusedSummaryAnswer[]): string {
  return writeCsvRows(
    answers.map(({ kind, question, mark, rule, subject, value, by, date, text, why }) => {
      const said = {
        base: mark,
        rule,
        subject,
        value,
        note: `${question === "" ? "" : `${question}: `}${why}`,
        "answered by": by,
        "answer date": date,
        answer: text,
      };
      const cells: Partial<Record<string, CsvCell>> = {
        ...said,
        status: kind === "answered" ? "ANSWER NOT USED" : "ACCEPTANCE NOT USED",
      };
      return LEDGER_COLUMNS.map((column) => cells[column] ?? "");
    }),
  );
}

/** Closing rows: what was not checked at all, and the cautions, one a row, base `ALL`, the words in the note column. */
export function writeLedgerTail(notChecked: readonly string[], cautions: readonly string[]): string {
  const closing = (status: string, note: string): CsvCell[] =>
    LEDGER_COLUMNS.map((column) =>
      column === "base" ? "ALL" : column === "status" ? status : column === "note" ? note : "",
    );
  return writeCsvRows([
    ...notChecked.map((subject) => closing("NOT CHECKED AT ALL", subject)),
    ...cautions.map((caution) => closing("caution", caution)),
  ]);
}
