import type { Outcome } from "../diagnostics/finding.js";
import type { Table } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
export interface Schedule {
  readonly bases: readonly SourceNode[];
  readonly headingOf: (path: readonly PropertyKey[]) => string | null;
}
export function readSchedule(_table: Table, _file: string): Outcome<Schedule> {
  return { ok: false, findings: [] };
}
