/** Ledger rows of an answer as a table. */
import type { CheckRow } from "../../checks/index.js";
import { comparison, marginWords } from "../../formats/ledger-text.js";
import type { Unit } from "../../units/index.js";
import { type AnswerTable, answerRow } from "./answer-table.js";

/** In the order given. */
export function checkTable(rows: readonly CheckRow[], unit: Unit): AnswerTable {
  return {
    heads: ["check", "of", "", "value and limit", "margin", "note"],
    figures: [],
    rows: rows.map((row) =>
      answerRow(row.status === "fail" ? "held" : row.status === "not-checked" ? "asked" : "clear", [
        row.rule,
        row.subject,
        row.status === "not-checked" ? "not checked" : row.status,
        comparison(row, unit),
        marginWords(row, unit),
        row.note,
      ]),
    ),
  };
}
