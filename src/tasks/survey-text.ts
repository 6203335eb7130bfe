/** A survey as text: both verdicts group by group, what is behind them, cautions. */
import { worstFirst } from "../checks/index.js";
import { counted } from "../checks/words.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalLine } from "../diagnostics/printable.js";
import { writeLedgerRowsText, writeTextList } from "../formats/ledger-text.js";
import { writeSurveyGroup, writeSurveyHead, writeSurveyRest, writeSurveyTable } from "../formats/survey-text.js";
import type { Job } from "../job/model/job.js";
import type { Survey } from "../survey/index.js";
import { isNotable, SURVEY_CAUTIONS, surveyTotals, totalsWords } from "../survey/index.js";

/** How it is written. `all`: every group in full. `out`: where tables and sheets were written to, null for nowhere. */
export interface ResultTextOptions {
  readonly width: number;
  readonly color: boolean;
  readonly all: boolean;
  readonly out: string | null;
}

/** The whole of it. */
export function writeSurveyText(job: Job, survey: Survey, { out, all, width, color }: ResultTextOptions): Printable {
  const options = { unit: job.unit, width, color, all };
  const { groups, unmatched, notSurveyed } = survey;
  const { placing } = job.editions;
  const shown = groups.filter((group) => all || isNotable(group));
  const heading = `Job ${job.number}  ${job.title}`.trimEnd();
  return joinPrintable([
    terminalLine`${heading}\n`,
    terminalLine`revision ${job.revision}, ${job.status}; placing ${placing}. Are the rods in place, and does the base plate drop on?\n\n`,
    writeSurveyHead(survey, options),
    writeSurveyTable(survey, options),
    ...shown.map((group) => writeSurveyGroup(group, survey, options)),
    ...(survey.rows.length === 0
      ? []
      : [writeLedgerRowsText("Groups and column lines", worstFirst(survey.rows), options)]),
    writeSurveyRest(survey, options),
    writeTextList("Cautions", SURVEY_CAUTIONS, options),
    terminalLine`${counted(groups.length, "group")} surveyed, ${notSurveyed.length} not; ${counted(unmatched.length, "point")} unmatched.\n`,
    ...(out === null ? [] : [terminalLine`Tables and sheets: ${out}\n`]),
    terminalLine`${totalsWords(surveyTotals(survey), placing)}. Engineer to decide.\n`,
  ]);
}
