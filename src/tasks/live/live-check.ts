/** A ledger row as the page shows it. */
import type { CheckRow } from "../../checks/model.js";
import { isWithoutMargin, tightness } from "../../checks/run.js";
import { comparedTexts } from "../../checks/words.js";
import { marginWords } from "../../formats/ledger-text.js";
import { summarizeCheck } from "../../summary/summarize.js";
import type { Unit } from "../../units/index.js";
import type { LiveCheck } from "./model.js";

/** In the unit of the job. */
export function liveCheck(row: CheckRow, unit: Unit): LiveCheck {
  const { plainName, measured, missing } = row;
  const share = row.margin === null || isWithoutMargin(row) ? null : tightness(row);
  const [found, bound] =
    row.value === null || row.limit === null ? ["", ""] : comparedTexts(row.value, row.limit, unit);
  const spare = marginWords(row, unit);
  return { ...summarizeCheck(row, unit), plainName, measured, missing, share, found, bound, spare };
}
