/** Which faults are shown at which key. */
import type { Finding } from "../../diagnostics/finding.js";

/** Faults whose place is this key, something in it, or the group that it stands in; of the key itself first. */
export function faultsAt(findings: readonly Finding[], path: string): readonly Finding[] {
  const own = faultsUnder(findings, path);
  return own.length > 0
    ? own
    : findings.filter(
        ({ severity, at }) =>
          severity === "error" && at.path !== undefined && depth(at.path) > 1 && isWithin(path, at.path),
      );
}

/** Faults whose place is this key, or something in it. */
export function faultsUnder(findings: readonly Finding[], path: string): readonly Finding[] {
  return findings.filter(({ severity, at }) => severity === "error" && (at.path === path || isWithin(at.path, path)));
}

/** Faults that were not there before. */
export function newFaults(now: readonly Finding[], before: readonly Finding[]): readonly Finding[] {
  const told = new Set(before.map(wordsOf));
  return now.filter((finding) => finding.severity === "error" && !told.has(wordsOf(finding)));
}

/** The sentence of a fault, as the job file's own. */
export function faultWords({ message, hint }: Finding): string {
  return hint === undefined ? message : `${message} (${hint})`;
}

function wordsOf({ at, message }: Finding): string {
  return `${at.path} ${message}`;
}

function isWithin(path: string | undefined, group: string): boolean {
  return path !== undefined && (path.startsWith(`${group}.`) || path.startsWith(`${group}[`));
}

function depth(path: string): number {
  return path.split(".").length;
}
