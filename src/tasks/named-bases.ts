/** Bases that a person names by their marks, or by those of their templates. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { nearestWords } from "../diagnostics/nearest.js";
import type { OpenedJob } from "./opened-job.js";

/**
 * Marks of the bases that are meant, capitals like small letters; a template's mark stands for every base that it serves. null where
 * nothing is named. `file` is the job's name, for findings.
 */
export function findNamedBases(
  { bases }: Pick<OpenedJob, "bases">,
  names: readonly string[],
  file: string,
): Outcome<ReadonlySet<string> | null> {
  if (names.length === 0) return { ok: true, value: null, findings: [] };
  const marks = new Map<string, Set<string>>();
  for (const { base } of bases)
    for (const mark of [base.mark, base.template.mark]) {
      const key = markKey(mark);
      marks.set(key, (marks.get(key) ?? new Set()).add(base.mark));
    }
  const known = [...new Set(bases.flatMap(({ base }) => [base.mark, base.template.mark]))];
  const findings = names.filter((name) => !marks.has(markKey(name))).map((name) => unknownMark(name, known, file));
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: new Set(names.flatMap((name) => [...(marks.get(markKey(name)) ?? [])])), findings: [] };
}

const markKey = (mark: string): string => mark.trim().toUpperCase();

const MOST_NEAR = 5;

function unknownMark(name: string, known: readonly string[], file: string): Finding {
  const near = nearestWords(name, known, MOST_NEAR);
  const are = known.length <= MOST_NEAR ? "its marks are" : "the nearest marks are";
  const message = `${JSON.stringify(name)} is the mark of no base and of no template of the job; ${are} ${near.join(", ")}`;
  return { code: "unknown-mark", severity: "error", at: { file }, message };
}
