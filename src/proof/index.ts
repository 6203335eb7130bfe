/** Proof of cut files: what is in them, what is wrong with them, which plate of a job they are. */
export { type ListedPlate, proveListedFile } from "./listed-plate.js";
export * from "./model.js";
export { type Against, againstJob, isStop, proveFile, refuseLargeFile } from "./prove-file.js";
