/** Findings as CSV, one a line: file, cell or line and column, key, code, severity, message, hint. */
import type { Finding } from "../diagnostics/finding.js";
import { subjectOf } from "../diagnostics/finding.js";
import { writeCsvRows } from "./csv-cells.js";

const HEADINGS = ["file", "cell", "line", "column", "key", "code", "severity", "message", "hint"] as const;

/** Writes findings in their order. */
export function writeFindingsCsv(findings: readonly Finding[]): string {
  const rows = findings.map(({ at, code, severity, message, hint }) => [
    ...[at.file, at.cell ?? null, at.line ?? null, at.column ?? null],
    ...[subjectOf(at), code, severity, message, hint ?? null],
  ]);
  return writeCsvRows([HEADINGS, ...rows]);
}
