/** A sheet for the budget of each base. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawBudgetSheet } from "../sheets/budget-sheet.js";
import type { BudgetResult } from "./budget-result.js";
import { drawingDocument } from "./drawing-document.js";
import type { PathAndBytes, ResultOutput, Surroundings } from "./model.js";
import { textFile } from "./text-file.js";

/** One sheet a base whose budget could be worked out. */
export const budgetSheetSvg: ResultOutput<BudgetResult, "budget-sheet-svg"> = {
  scope: "budget",
  kind: "budget-sheet-svg",
  role: "sheet",
  title: "Sheet of a base's budget, with the spread of the spare clearance",
  drawn: true,
  named: "MARK_budget.svg",
  write: writeBudgetSheets,
};

function* writeBudgetSheets(
  { job, budgets }: BudgetResult,
  { document, version }: Pick<Surroundings, "document" | "version">,
): Generator<PathAndBytes> {
  const reckoned = budgets.filter((budget) => budget.kind === "reckoned");
  for (const [i, budget] of reckoned.entries()) {
    const sheet = { number: i + 1, count: reckoned.length };
    const scene = drawBudgetSheet({ job, budget, version, sheet });
    const text = writeSheetSvg(scene, drawingDocument(document));
    yield textFile(`${budget.mark}_budget.svg`, text);
  }
}
