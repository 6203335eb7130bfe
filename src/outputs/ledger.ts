/** The ledger of the whole job. */
import { CAUTIONS } from "../checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../checks/index.js";
import {
  writeLedgerAnswers,
  writeLedgerHead,
  writeLedgerJobRows,
  writeLedgerRows,
  writeLedgerTail,
} from "../formats/ledger-csv.js";
import type { GrowingOutput } from "./model.js";
import { FOLDERS } from "./names.js";

/** Base by base, then the job's own rows, what is not checked at all, and the cautions. */
export const ledger: GrowingOutput<"ledger"> = {
  scope: "job, base by base",
  kind: "ledger",
  role: "table",
  title: "Every check of every base, worst first, with what was not checked",
  drawn: false,
  path: `${FOLDERS.engineer}/ledger.csv`,
  listsOthers: false,
  head: writeLedgerHead,
  base: ({ summary, givenBy }) => writeLedgerRows(summary, givenBy),
  end: ({ checks, answersNotUsed }) =>
    writeLedgerJobRows(checks) + writeLedgerAnswers(answersNotUsed) + writeLedgerTail(NOT_CHECKED_AT_ALL, CAUTIONS),
};
