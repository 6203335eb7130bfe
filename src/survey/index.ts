/** After the pour: do the rods as surveyed take their base plates? */
export { lonePlan } from "./lone-plan.js";
export type * from "./model.js";
export { bestMotion, bestPosition, inPlateAxes, movedHole } from "./motion.js";
export type { SurveyTotals } from "./placing.js";
export { isNotable, isOutside, placingWords, surveyTotals, totalsWords } from "./placing.js";
export type { ReportItem, ReportPart, SurveyReport } from "./report.js";
export { surveyReport } from "./report.js";
export type { SurveyConcern, SurveyRule, SurveyRuleId } from "./rules.js";
export { surveyRules } from "./rules.js";
export { surveyJob } from "./survey.js";
export type { AskedTerms, TermFault } from "./terms.js";
export { surveyTerms } from "./terms.js";
export { governsWords, motionWords, remedyRows, remedyWords, rounded, SURVEY_CAUTIONS, termsWords } from "./words.js";
