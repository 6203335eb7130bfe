/** The job: the file's schema, and the complete job that later stages work on. */
export { chooseCrossing, crossingsOf } from "./crossing.js";
export { laidAsWritten, withGivenLines } from "./given-lines.js";
export type { JobFile, RequestedFile } from "./job-file.js";
export { jobRoot, readJobFile, requestedFiles } from "./job-file.js";
export * from "./model/job.js";
export type * from "./model/plan.js";
export { isShared, servedMarks } from "./model/shared.js";
export type { Vocabulary } from "./model/vocabulary.js";
export type { BaseReader, JobOptions } from "./read-job.js";
export { readJob, startBaseReader } from "./read-job.js";
export { markFaults } from "./resolve/listed-bases.js";
export { namedTable } from "./resolve/named-table.js";
export { SHOP_FOLDER, SHOP_NAMES, shopFileName } from "./resolve/shop.js";
export { jobJsonSchema, shopJsonSchema } from "./schema/json-schema.js";
export { markFault, markKey } from "./schema/marks.js";
export type { SheetOfJob } from "./sheet-of-job.js";
export { sheetOfJob } from "./sheet-of-job.js";
