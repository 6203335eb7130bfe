/** The registry of everything that a package can hold: a line a kind of file. A cut flavour stands in `formats`, any other kind in this folder. */
import { joinedFlavour } from "../formats/cut-dxf-joined.js";
import { r12Flavour } from "../formats/cut-dxf-r12.js";
import type { FileRole } from "../summary/model.js";
import { answerFormXlsx } from "./answer-form-xlsx.js";
import { answerFormYaml } from "./answer-form-yaml.js";
import { budgetCsv } from "./budget-csv.js";
import type { BudgetResult } from "./budget-result.js";
import { budgetRodsCsv } from "./budget-rods-csv.js";
import { budgetSheetSvg } from "./budget-sheet-svg.js";
import { certificatesCsv } from "./certificates-csv.js";
import { certificatesJson } from "./certificates-json.js";
import { checkDistancesCsv } from "./check-distances-csv.js";
import { checkingPdf } from "./checking-pdf.js";
import { cutListCsv } from "./cut-list-csv.js";
import { cutListPdf } from "./cut-list-pdf.js";
import { cutListXlsx } from "./cut-list-xlsx.js";
import { cutOutput } from "./cut-output.js";
import { drillList } from "./drill-list.js";
import { fullSizePdf } from "./full-size-pdf.js";
import { labelPdf } from "./label-pdf.js";
import { ledger } from "./ledger.js";
import { letterPdf } from "./letter-pdf.js";
import { letterText } from "./letter-text.js";
import { manifest } from "./manifest.js";
import type { BaseOutput, GrowingOutput, JobOutput, Output, PieceFile, ResultOutput } from "./model.js";
import { pieceSheetSvg } from "./piece-sheet-svg.js";
import { planDxf } from "./plan-dxf.js";
import { planSvg } from "./plan-svg.js";
import { questionRegisterJson } from "./question-register-json.js";
import { questions } from "./questions.js";
import { quoteCsv } from "./quote-csv.js";
import { quoteXlsx } from "./quote-xlsx.js";
import { readAsCsv } from "./read-as-csv.js";
import { readAsXlsx } from "./read-as-xlsx.js";
import { rodDetailPdf } from "./rod-detail-pdf.js";
import { rodListXlsx } from "./rod-list-xlsx.js";
import { rodListsCsv } from "./rod-lists-csv.js";
import { settingOutBareCsv } from "./setting-out-bare-csv.js";
import { settingOutCsv } from "./setting-out-csv.js";
import { settingSheetSvg } from "./setting-sheet-svg.js";
import { settingSheetsPdf } from "./setting-sheets-pdf.js";
import { sheetSetPdf } from "./sheet-set-pdf.js";
import { sheetSvg } from "./sheet-svg.js";
import { solid3mf } from "./solid-3mf.js";
import { solidAssembly3mf } from "./solid-assembly-3mf.js";
import { solidAssemblyStl } from "./solid-assembly-stl.js";
import { solidStl } from "./solid-stl.js";
import { summary } from "./summary.js";
import { surveyChecksCsv } from "./survey-checks-csv.js";
import { surveyGroupsCsv } from "./survey-groups-csv.js";
import { surveyReportPdf } from "./survey-report-pdf.js";
import { surveyReportText } from "./survey-report-text.js";
import type { SurveyResult } from "./survey-result.js";
import { surveyRodsCsv } from "./survey-rods-csv.js";
import { surveySheetSvg } from "./survey-sheet-svg.js";
import { travellerPdf } from "./traveller-pdf.js";

export type { BudgetResult } from "./budget-result.js";
export { MANIFEST_PATH } from "./manifest.js";
export type * from "./model.js";
export { FOLDERS, SET_ASIDE, SIGNED, SUPERSEDED, safeForFileName } from "./names.js";
export { type GuidedFile, type GuideEntry, guidePackage } from "./package-guide.js";
export { PAPER_NAMES, type PaperName, paperNamed } from "./paper-names.js";
export type { ReducedPage, SetPage, SetSection, SetSheet, SheetSet } from "./sheet-set.js";
export { startSheetSet } from "./sheet-set.js";
export type { SurveyResult } from "./survey-result.js";

/** In the order in which files are made: what a sheet names comes before it. */
const REGISTRY = {
  "cut-joined": cutOutput(joinedFlavour),
  "cut-r12": cutOutput(r12Flavour),
  "drill-list": drillList,
  "solid-stl": solidStl,
  "solid-3mf": solid3mf,
  "solid-assembly-stl": solidAssemblyStl,
  "solid-assembly-3mf": solidAssembly3mf,
  "sheet-svg": sheetSvg,
  "piece-sheet-svg": pieceSheetSvg,
  "setting-sheet-svg": settingSheetSvg,
  "setting-out-csv": settingOutCsv,
  "setting-out-bare-csv": settingOutBareCsv,
  "check-distances-csv": checkDistancesCsv,
  "plan-dxf": planDxf,
  "plan-svg": planSvg,
  "checking-pdf": checkingPdf,
  "rod-detail-pdf": rodDetailPdf,
  "traveller-pdf": travellerPdf,
  "label-pdf": labelPdf,
  "certificates-csv": certificatesCsv,
  "certificates-json": certificatesJson,
  "setting-sheets-pdf": settingSheetsPdf,
  "full-size-pdf": fullSizePdf,
  "cut-list-pdf": cutListPdf,
  "cut-list-xlsx": cutListXlsx,
  "cut-list-csv": cutListCsv,
  "rod-list-xlsx": rodListXlsx,
  "rod-lists-csv": rodListsCsv,
  "quote-xlsx": quoteXlsx,
  "quote-csv": quoteCsv,
  "sheet-set-pdf": sheetSetPdf,
  "letter-pdf": letterPdf,
  "letter-text": letterText,
  "answer-form-xlsx": answerFormXlsx,
  "answer-form-yaml": answerFormYaml,
  "question-register-json": questionRegisterJson,
  "read-as-csv": readAsCsv,
  "read-as-xlsx": readAsXlsx,
  ledger,
  questions,
  manifest,
  summary,
};

/** The public names of the kinds of files. */
export type OutputKind = keyof typeof REGISTRY;

/** Every output by its kind; the compiler holds that each stands under its own. */
export const outputs: { readonly [Kind in OutputKind]: Output<Kind> } = REGISTRY;

/** The same in the order in which files are made. */
export const everyOutput: readonly Output<OutputKind>[] = Object.values(outputs);

/** Files that come of a base. */
export const baseOutputs: readonly BaseOutput<OutputKind>[] = everyOutput.filter(
  (output) => output.scope === "base" || output.scope === "piece",
);

/** Files that each piece of a template is cut or drilled by. */
export const makingOutputs: readonly PieceFile<OutputKind>[] = everyOutput
  .filter((output) => output.scope === "piece")
  .filter(isMaking);

/** Documents of the whole job. */
export const jobOutputs: readonly JobOutput<OutputKind>[] = everyOutput.filter((output) => output.scope === "job");

/** Files of the job that grow base by base. */
export const growingOutputs: readonly GrowingOutput<OutputKind>[] = everyOutput.filter(
  (output) => output.scope === "job, base by base",
);

/** Where a package lists all that it holds. */
export const summaryPath: string = summary.path;

/** What to open first of a package. */
export const manifestPath: string = manifest.path;

/** What a kind of file is; null for a kind that this program does not write. */
export function aboutKind(kind: string): Output<OutputKind> | null {
  return everyOutput.find((output) => output.kind === kind) ?? null;
}

/** Files of `budget`, in the order in which they are made. */
export const budgetOutputs: readonly ResultOutput<BudgetResult>[] = [budgetCsv, budgetRodsCsv, budgetSheetSvg];

/** Files of `survey`, in the order in which they are made. */
export const surveyOutputs: readonly ResultOutput<SurveyResult>[] = [
  surveyGroupsCsv,
  surveyRodsCsv,
  surveyChecksCsv,
  surveySheetSvg,
  surveyReportText,
  surveyReportPdf,
];

/** Kinds that a template is cut or drilled by. */
export const makingKinds: readonly OutputKind[] = everyOutput.filter(isMaking).map(({ kind }) => kind);

function isMaking({ role }: Pick<Output, "role">): boolean {
  return role === "cut" || role === "drill";
}

/** What a file of a package is for, by its kind; null for a kind that this program does not write. */
export function roleOf(kind: string): FileRole | null {
  return aboutKind(kind)?.role ?? null;
}
