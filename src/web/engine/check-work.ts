/** `rodplate check JOB [MARK...]` as text: a screen of the whole job, bases with all their values, or every row. */
import { FOLDERS } from "../../outputs/index.js";
import { findNamedBases } from "../../tasks/named-bases.js";
import { checkLayout, numberQuestions } from "../../tasks/number-questions.js";
import { makePackageInParts } from "../../tasks/package.js";
import { startReport } from "../../tasks/report.js";
import { VERSION } from "../app/version.js";
import { need, openedJob } from "./refusing.js";
import type { TaskWork } from "./task-model.js";

const SHAPE = { width: 100, color: false } as const;

/** Tells how many bases are checked. */
export const checkInText: TaskWork<"check"> = async ({ files, date, marks, all }, tell) => {
  const said: string[] = [];
  const opened = need(await openedJob(files, date), said);
  const only = need(findNamedBases(opened, marks, files.job));
  const options = { version: VERSION, document: null, outputs: [], ...(only === null ? {} : { only }) };
  const { job } = opened;
  const isNumbered = job.answers.some(({ question }) => question !== "");
  const made = makePackageInParts(isNumbered ? numberQuestions(opened) : checkLayout(opened), options);
  const rest = [
    `One base with all its values: name it above. Every row: choose every row. Ledger, questions and a page to check by: in ${FOLDERS.engineer}/ of the package.`,
  ];
  const report = startReport(job, SHAPE, { all, only, rest });
  let done = 0;
  for (const base of made.bases) {
    report.add(base);
    done += 1;
    tell({ done, of: job.bases.length, what: `base ${base.mark}` });
  }
  report.addJob(made.rest());
  return { text: [...report.texts()].join(""), isHeld: report.isHeld, said };
};
