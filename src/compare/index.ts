/** What changed between two jobs or packages, and which templates must be cut again. */
export { compareSides, countRecuts, countRemade } from "./compare-sides.js";
export * from "./model.js";
export type { LedgerBase, PackageSummary } from "./read-summary.js";
export { baseAsRead, checksAsRead, readSummary } from "./read-summary.js";
export { makeRodStates } from "./rod-state.js";
export type { StateSource } from "./template-state.js";
export { makeTemplateState, startTemplateStates } from "./template-state.js";
