/** Proof of cut files: what is in them, what is wrong with them, which plate of a job they are. */
export { certifyCutFile } from "./certify.js";
export { type ListedPlate, proveListedFile } from "./listed-plate.js";
export * from "./model.js";
export { type Against, againstJob, isStop, layerRolesOf, proveFile, refuseLargeFile } from "./prove-file.js";
export { readCertificates } from "./read-certificates.js";
