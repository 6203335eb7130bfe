/** The rules and their ledger: rules of a base, and rules of the whole job. */
import type { Severity } from "../job/model/job.js";
import type { Unit } from "../units/index.js";
import type { JobContext, JobRule } from "./job-model.js";
import { baseOffGrid } from "./job-rules/base-off-grid.js";
import { baseTurn } from "./job-rules/base-turn.js";
import { controlClosure } from "./job-rules/control-closure.js";
import { controlResidual } from "./job-rules/control-residual.js";
import { elevationRange } from "./job-rules/elevation-range.js";
import { gridDiagonal } from "./job-rules/grid-diagonal.js";
import { gridSlip } from "./job-rules/grid-slip.js";
import { groupSpacing } from "./job-rules/group-spacing.js";
import { lineAccumulation } from "./job-rules/line-accumulation.js";
import { lookAlike } from "./job-rules/look-alike.js";
import { neighbourConcrete } from "./job-rules/neighbour-concrete.js";
import { neighbourRods } from "./job-rules/neighbour-rods.js";
import { neighbourTemplates } from "./job-rules/neighbour-templates.js";
import { plateElevation } from "./job-rules/plate-elevation.js";
import { settingOutElevation } from "./job-rules/setting-out-elevation.js";
import { runJobRules } from "./job-run.js";
import type { CheckContext, CheckRow, Rule } from "./model.js";
import type { AskedPlace } from "./question.js";
import { type QuestionParts, questionAt, questionParts } from "./question.js";
import { basePlateEdge } from "./rules/base-plate-edge.js";
import { basePlateGroutHole } from "./rules/base-plate-grout-hole.js";
import { basePlateHole } from "./rules/base-plate-hole.js";
import { basePlateWeb } from "./rules/base-plate-web.js";
import { cutHole } from "./rules/cut-hole.js";
import { cutWeb } from "./rules/cut-web.js";
import { groutGap } from "./rules/grout-gap.js";
import { holeEdge } from "./rules/hole-edge.js";
import { holeSpacing } from "./rules/hole-spacing.js";
import { holeWeb } from "./rules/hole-web.js";
import { key } from "./rules/key.js";
import { lengthSlip } from "./rules/length-slip.js";
import { lowerTemplate } from "./rules/lower-template.js";
import { lowerTemplateCover } from "./rules/lower-template-cover.js";
import { lowerTemplateHeight } from "./rules/lower-template-height.js";
import { marksRoom } from "./rules/marks-room.js";
import { nutRoom } from "./rules/nut-room.js";
import { patternMatch } from "./rules/pattern-match.js";
import { placingClearance } from "./rules/placing-clearance.js";
import { projection } from "./rules/projection.js";
import { rodBend } from "./rules/rod-bend.js";
import { rodCoating } from "./rules/rod-coating.js";
import { rodCount } from "./rules/rod-count.js";
import { rodCover } from "./rules/rod-cover.js";
import { rodEndPlate } from "./rules/rod-end-plate.js";
import { rodGrade } from "./rules/rod-grade.js";
import { rodLength } from "./rules/rod-length.js";
import { rodOnBasePlate } from "./rules/rod-on-base-plate.js";
import { rodOnConcrete } from "./rules/rod-on-concrete.js";
import { rodPlay } from "./rules/rod-play.js";
import { rodSpacing } from "./rules/rod-spacing.js";
import { rodThread } from "./rules/rod-thread.js";
import { rodThreading } from "./rules/rod-threading.js";
import { seatOnPlate } from "./rules/seat-on-plate.js";
import { segmentBolts } from "./rules/segment-bolts.js";
import { segmentJoint } from "./rules/segment-joint.js";
import { stockThickness } from "./rules/stock-thickness.js";
import { tableSize } from "./rules/table-size.js";
import { templateHeight } from "./rules/template-height.js";
import { templateHole } from "./rules/template-hole.js";
import { templateInForm } from "./rules/template-in-form.js";
import { templateSize } from "./rules/template-size.js";
import { washerCover } from "./rules/washer-cover.js";
import { washerOnPlate } from "./rules/washer-on-plate.js";
import { washerRoom } from "./rules/washer-room.js";
import { wrongPlacement } from "./rules/wrong-placement.js";
import { runRules } from "./run.js";

export type { JobContext, JobRule } from "./job-model.js";
export type { CheckContext, CheckRow, CheckStatus, Quantity, Rule, RuleResult, Sense } from "./model.js";
export { NOT_CHECKED_AT_ALL } from "./model.js";
export type { AskedPlace } from "./question.js";
export { subjectsText } from "./question.js";
export { isAsking, isHolding, worstFirst } from "./run.js";

/** Every rule of a base, in the order of the ledger. */
export const rules = [
  templateHole,
  rodPlay,
  holeWeb,
  holeEdge,
  holeSpacing,
  seatOnPlate,
  nutRoom,
  templateInForm,
  templateHeight,
  templateSize,
  tableSize,
  stockThickness,
  cutHole,
  cutWeb,
  marksRoom,
  segmentJoint,
  segmentBolts,
  lowerTemplate,
  lowerTemplateCover,
  lowerTemplateHeight,
  wrongPlacement,
  key,
  patternMatch,
  lengthSlip,
  rodOnBasePlate,
  basePlateHole,
  basePlateEdge,
  basePlateGroutHole,
  basePlateWeb,
  washerCover,
  washerOnPlate,
  washerRoom,
  placingClearance,
  rodSpacing,
  rodOnConcrete,
  rodCover,
  projection,
  groutGap,
  rodLength,
  rodCount,
  rodGrade,
  rodThread,
  rodBend,
  rodEndPlate,
  rodCoating,
  rodThreading,
] as const satisfies readonly Rule[];

/** Every rule of the whole job, in the order of the ledger. */
export const jobRules = [
  lookAlike,
  neighbourRods,
  neighbourTemplates,
  neighbourConcrete,
  baseOffGrid,
  baseTurn,
  gridSlip,
  elevationRange,
  plateElevation,
  groupSpacing,
  lineAccumulation,
  controlResidual,
  controlClosure,
  gridDiagonal,
  settingOutElevation,
] as const satisfies readonly JobRule[];

/** The public names of the rules. */
export type RuleId = (typeof rules)[number]["id"] | (typeof jobRules)[number]["id"];

/** The severity of each rule when it fails, as the rule itself has it. */
export const ruleSeverities = Object.fromEntries(
  [...rules, ...jobRules].map(({ id, severity }) => [id, severity]),
) as Readonly<Record<RuleId, Severity>>;

/** The ledger of the whole job: rows in the order of the rules, then of their subjects. */
export function runJobChecks(context: JobContext): readonly CheckRow[] {
  return runJobRules(jobRules, context);
}

/** The ledger of one base: rows in the order of the rules, then of their subjects. */
export function runChecks(context: CheckContext): readonly CheckRow[] {
  return runRules(rules, context);
}

/** The same in parts, for a letter. */
export function sharedQuestionParts(places: readonly AskedPlace[], row: CheckRow, unit: Unit): QuestionParts {
  return questionParts(places, row, unit);
}

/** Rows of a base or of the job that say the same, as one question. */
export function sharedQuestionText(places: readonly AskedPlace[], row: CheckRow, unit: Unit): string {
  return questionAt(places, row, unit);
}
