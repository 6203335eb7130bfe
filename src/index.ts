/**
 * The library: ES module, typed, usable in Node and in a browser. Inputs open into a job; tasks work on it; outputs are
 * bytes. Nothing here opens a file, reads a clock or throws for what a user typed.
 */

export type { Governs, TermName } from "./budget/index.js";
export type { QuestionParts } from "./checks/question.js";
export type {
  BottomState,
  MadeLength,
  MadeWord,
  RodLength,
  RodVerdict,
  RodWord,
  VerdictKind,
} from "./compare/index.js";
export type { Finding, FindingSeverity, Outcome, Place } from "./diagnostics/finding.js";
export { formatFinding, hasErrors } from "./diagnostics/finding.js";
export type { Printable } from "./diagnostics/printable.js";
export { ProgramFault } from "./diagnostics/program-fault.js";
export type {
  Fit,
  FitHole,
  FitOptions,
  FitProbability,
  FitRod,
  PositionError,
  ProbabilityRequest,
} from "./fit/index.js";
export { fitPlate, fitProbability } from "./fit/index.js";
export type { BudgetForm } from "./formats/budget-json.js";
export type { CompareForm } from "./formats/compare-json.js";
export type { DrawingDocument } from "./formats/lean-document.js";
export { newLeanDocument } from "./formats/lean-document.js";
export type * from "./formats/pdf-maker.js";
export type * from "./formats/read-as-form.js";
export type { SurveyForm } from "./formats/survey-json.js";
export type { Vertex } from "./geometry/contour.js";
export type { CornerTreatment } from "./geometry/corner.js";
export type { Stretch } from "./geometry/index.js";
export type { Move } from "./geometry/move.js";
export type * from "./geometry/vocabulary.js";
export type { JobFile, RequestedFile } from "./job/index.js";
export { readJobFile, requestedFiles, SHOP_NAMES } from "./job/index.js";
export type * from "./job/model/budget.js";
export type * from "./job/model/job.js";
export type * from "./job/model/plan.js";
export type {
  AskedFigures,
  QuestionNumbers,
  QuestionPlace,
  QuestionRegister,
  QuestionState,
  RegisteredQuestion,
} from "./job/model/register.js";
export type * from "./job/model/sheet-names.js";
export type * from "./job/model/survey.js";
export type * from "./orientation/model.js";
export type { OutputFile, OutputKind, PaperName, SvgDocument } from "./outputs/index.js";
export type * from "./plan/model.js";
export type { SettingOutPoint } from "./plan/setting-out-points.js";
export type { Against, FileMatch, KnownPlate, ProvedFile, TargetHole, TargetRole } from "./proof/index.js";
export { againstJob, proveFile } from "./proof/index.js";
export type { CutExtent, CutFile, CutFileFinding, CutFileKnowledge, LayerRoles } from "./readers/dxf.js";
export { readCutFile } from "./readers/dxf.js";
export type { CutContour, OpenStroke } from "./readers/dxf-contours.js";
export type { CutFileSeverity } from "./readers/dxf-findings.js";
export type { CutPoint, CutSegment } from "./readers/dxf-measures.js";
export type { Cell, InputFile, Inputs, Merge, ParsedFile, Table, UnopenedFile, Workbook } from "./readers/inputs.js";
export type { PointOrder } from "./readers/points-model.js";
export type * from "./readers/source.js";
export { openWorkbook } from "./readers/workbook.js";
export type * from "./rods/model.js";
export type { ReadAs, ReadLine, ReadOrigin, ReadQuestion } from "./schedule/index.js";
export type { EditionKind, EditionOf, ThreadSeries } from "./standards/index.js";
export type * from "./summary/certificate.js";
export type * from "./summary/model.js";
export type { AskedAt, Question } from "./summary/questions.js";
export type { PlacingVerdict, Verdict } from "./survey/model.js";
export type { SurveyTotals } from "./survey/placing.js";
export { budgetJob } from "./tasks/budget.js";
export type { Build, BuildEnd, BuildOptions } from "./tasks/build.js";
export { build, makePackage } from "./tasks/build.js";
export { checkJob } from "./tasks/check.js";
export { compareJobs } from "./tasks/compare.js";
export type { Hasher } from "./tasks/hash.js";
export type { JobParts } from "./tasks/job-parts.js";
export { splitJob } from "./tasks/job-parts.js";
export type { BaseOptions, BaseResult } from "./tasks/make-base.js";
export type { OpenOptions } from "./tasks/open.js";
export { openJob } from "./tasks/open.js";
export type { OpenedJob } from "./tasks/opened-job.js";
export type { PackageOptions } from "./tasks/package.js";
export type { SheetInput, SheetReading } from "./tasks/read.js";
export { readSheetAsSent } from "./tasks/read.js";
export type { NewJob } from "./tasks/read-job.js";
export { writeJobAgain, writeNewJob } from "./tasks/read-job.js";
export type { SurveyedFile } from "./tasks/survey.js";
export { surveyJob } from "./tasks/survey.js";
export type { PlateShape, ShapedBase } from "./template/make-plate.js";
export type * from "./template/model.js";
export type { Opening, Openings } from "./template/openings.js";
export type { Outline } from "./template/outline-model.js";
export type { PieceRole } from "./template/piece.js";
export type { HoldingBases, OpenAtBase, SharedTemplate } from "./template/share/model.js";
export type { BearingForm } from "./units/bearing.js";
export type { SurveyUnit } from "./units/coordinate.js";
export type { Length, Unit } from "./units/length.js";
