/** Signatures: what is signed of a package, and whether it still stands. */
export { findChanges } from "./changes.js";
export { type SignableBase, type SignedBases, type SigningTools, startSignedBases } from "./digest.js";
export { type DamagedFile, type FoundRecord, judgeSignature, type SignedNow } from "./judge.js";
export * from "./model.js";
export { readSignature } from "./read-record.js";
export { isUnrenewed, signatureLines } from "./words.js";
