/** The job: the file's schema, and the complete job that later stages work on. */
export type { Chosen } from "./crossing.js";
export { chooseCrossing, crossingsOf } from "./crossing.js";
export type { RequestedFile } from "./files.js";
export { requestedFiles } from "./files.js";
export { jobJsonSchema, shopJsonSchema } from "./json-schema.js";
export { markFault, markKey } from "./marks.js";
export * from "./model.js";
export type { JobOptions } from "./read-job.js";
export { readJob } from "./read-job.js";
export type { RuleId } from "./severities.js";
export { isRaised, RULE_IDS, RULE_SEVERITIES } from "./severities.js";
export { SHOP_FOLDER, shopFileName } from "./shop.js";
export type * from "./site-model.js";
