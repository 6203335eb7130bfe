/** The library: ES module, typed, usable in Node and in a browser. */
export type { CheckRow, CheckStatus, Quantity, Sense } from "./checks/index.js";
export type { Finding, FindingSeverity, Outcome, Place } from "./diagnostics/finding.js";
export { formatFinding, hasErrors } from "./diagnostics/finding.js";
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
export type { OutputFile, OutputKind, SvgDocument } from "./outputs/index.js";
export type { Against, FileMatch, ProvedFile } from "./proof/index.js";
export { againstJob, proveFile } from "./proof/index.js";
export type { CutFile, CutFileFinding, CutFileKnowledge, LayerRoles } from "./readers/dxf.js";
export { readCutFile } from "./readers/dxf.js";
export type { Cell, Inputs, Table } from "./readers/inputs.js";
export { openWorkbook } from "./readers/workbook.js";
export type { Summary, SummaryBase, SummaryCheck, SummaryFile, SummaryHole } from "./summary/model.js";
export type { Question } from "./summary/questions.js";
export type { Build, BuildOptions } from "./tasks/build.js";
export { build } from "./tasks/build.js";
export type { Hasher } from "./tasks/hash.js";
export type { BaseResult } from "./tasks/package.js";
