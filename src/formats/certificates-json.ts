/** Certificates of cut files in machine form, one a line. */
import { printableJson } from "../diagnostics/printable.js";
import type { CutCertificate } from "../summary/certificate.js";
import { CERTIFYING_READER } from "./certificates-csv.js";

/** Which job and revision the files are of. */
export interface CertifiedJob {
  readonly number: string;
  readonly revision: string;
  readonly status: string;
}

/** Schema 1. */
export function writeCertificatesJson(
  { number, revision, status }: CertifiedJob,
  certificates: readonly CutCertificate[],
): string {
  const rows = certificates.map((each) => `\n    ${printableJson(each)}`).join(",");
  const head = `{\n  "schema": 1,\n  "job": ${printableJson({ number, revision, status })},\n`;
  return `${head}  "reader": ${printableJson(CERTIFYING_READER)},\n  "certificates": [${rows}${rows === "" ? "" : "\n  "}]\n}\n`;
}
