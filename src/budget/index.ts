/** Before the pour: are the errors that rods may have within what the base plate's holes take up? */
export { around, rootSumSquareCase, worstCase } from "./closed-form.js";
export type * from "./model.js";
export { askedForm, askedShare, TERM_NAMES } from "./model.js";
export { reckonBudget, worstBudgetsFirst } from "./reckon.js";
export {
  BUDGET_CAUTIONS,
  freedomWords,
  governsWords,
  shareWords,
  spareWords,
  specWords,
  targetWords,
  worstWords,
} from "./words.js";
