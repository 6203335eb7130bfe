/** The proof of cut files and packages in machine form. */
import { type Printable, terminalJson } from "../diagnostics/printable.js";
import type { ProvedFile, ProvedPackage } from "../proof/model.js";

/** The key `packages` is there where there was one. */
export function writeProofJson(files: readonly ProvedFile[], packages: readonly ProvedPackage[]): Printable {
  return terminalJson({ files, ...(packages.length === 0 ? {} : { packages }) });
}
