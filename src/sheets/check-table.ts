/** The checks of a base as its sheet shows them: rows that agree in one line, worst first. */
import type { CheckRow, Quantity } from "../checks/model.js";
import { formatApart, formatDifference, type Unit } from "../units/index.js";
import type { CheckLine, Prepared } from "./request.js";
import type { TableText } from "./table.js";

/** Lines of the check table, in the order of the rows, which are worst first; rows that do not apply are left out. */
export function checkLines(rows: readonly CheckRow[], unit: Unit): readonly CheckLine[] {
  const lines = new Map<string, { row: CheckRow; subjects: string[] }>();
  for (const row of rows) {
    if (row.status === "not-applicable") continue;
    const key = [row.severity, answerWords(row), row.clause, row.edition, ...checkCells(row, "", unit)].join("|");
    const known = lines.get(key);
    if (known === undefined) lines.set(key, { row, subjects: [row.subject] });
    else known.subjects.push(row.subject);
  }
  return [...lines.values()];
}

/** The worst rows that fit, counts in the heading, and where the rest is. */
export function checkTable({ rows, lines, job }: Prepared, most: number): TableText {
  const shown = lines.slice(0, most);
  const count = (status: CheckRow["status"]) => rows.filter((row) => row.status === status).length;
  const rest = rows.length - count("not-applicable") - shown.reduce((sum, { subjects }) => sum + subjects.length, 0);
  return {
    name: "check-table",
    heading: `CHECKS: ${count("fail")} FAIL, ${count("not-checked")} NOT CHECKED, ${count("pass")} PASS`,
    columns: [
      { title: "RULE AND CLAUSE", share: 0.265, align: "start" },
      { title: "SUBJECT", share: 0.195, align: "start" },
      { title: "VALUE", share: 0.125, align: "end" },
      { title: "LIMIT", share: 0.16, align: "end" },
      { title: "MARGIN", share: 0.125, align: "end" },
      { title: "STATUS", share: 0.13, align: "end" },
    ],
    rows: shown.map(({ row, subjects }) => checkCells(row, subjectWords(subjects), job.unit)),
    foot: rest > 0 ? [`+ ${rest} more in ledger.csv`] : [],
    under: shown.map(({ row }) => `${answerWords(row)}${row.clause}; ${row.edition}`),
    strong: new Set(shown.flatMap(({ row }, i) => (row.status === "fail" ? [i] : []))),
  };
}

/** `A1`, `A1 A2`, `A1 + 3`. */
function subjectWords(subjects: readonly string[]): string {
  const [first = "", second = ""] = subjects;
  if (subjects.length === 1) return first;
  return subjects.length === 2 && first.length + second.length <= 5
    ? `${first} ${second}`
    : `${first} + ${subjects.length - 1}`;
}

function checkCells(row: CheckRow, subject: string, unit: Unit): readonly string[] {
  const { rule, value, limit, sense, margin, status } = row;
  if (value === null || limit === null) return [rule, subject, "-", "-", "", STATUS[status]];
  const [found, asked] = bareTexts(value, limit, unit);
  const spare = margin === null ? "" : spareText(margin, unit);
  return [rule, subject, found, `${sense ?? ""} ${asked}`, spare, STATUS[status]];
}

const STATUS: Readonly<Record<CheckRow["status"], string>> = {
  pass: "PASS",
  fail: "FAIL",
  "not-checked": "NOT CHECKED",
  "not-applicable": "N/A",
};

/** An answered row keeps its FAIL; who answered stands before the clause. */
function answerWords({ answer }: CheckRow): string {
  return answer === null ? "" : `ANSWERED by ${answer.by}, ${answer.date}; `;
}

/** Value and limit without unit, with as many digits as it takes to show which is the larger. */
function bareTexts(value: Quantity, limit: Quantity, unit: Unit): readonly [string, string] {
  if (value.kind === "length" && limit.kind === "length") return formatApart(value.twice / 2, limit.twice / 2, unit);
  return [countText(value), countText(limit)];
}

function spareText(margin: Quantity, unit: Unit): string {
  return margin.kind === "length" ? formatDifference(margin.twice / 2, unit) : countText(margin);
}

function countText(quantity: Quantity): string {
  return quantity.kind === "count" ? String(quantity.count) : "";
}
