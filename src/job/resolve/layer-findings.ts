/** Faults of bases that come from what is written once for many: each is told once. */
import type { Finding } from "../../diagnostics/finding.js";
import { findNode } from "../../readers/source.js";
import type { Unit } from "../../units/index.js";
import type { SourceDocument } from "../document.js";
import { faultAt } from "../document.js";
import { countedMarks } from "./marks-in-words.js";

/** A base as written, and what was found of it. */
export interface FoundOfBase {
  readonly document: SourceDocument;
  readonly findings: readonly Finding[];
}

/** The findings of all bases; `told` are those of the layers themselves, `job` the document that holds them. */
export function findingsOfBases(
  bases: readonly FoundOfBase[],
  told: readonly Finding[],
  job: SourceDocument,
  unit: Unit,
): readonly Finding[] {
  const thickness = lacksThickness(bases, job, unit);
  const known = new Set(told.map(causeOf));
  const shared = new Map<string, { readonly finding: Finding; readonly bases: SourceDocument[] }>();
  const own = bases.flatMap(({ document, findings }) =>
    findings.filter((finding) => {
      if (thickness !== null && isThicknessFault(finding, document)) return false;
      if (!isInLayer(finding)) return true;
      const key = JSON.stringify([causeOf(finding), finding.message]);
      const entry = shared.get(key) ?? { finding, bases: [] };
      if (!known.has(causeOf(finding))) shared.set(key, entry);
      entry.bases.push(document);
      return false;
    }),
  );
  const once = [...shared.values()].map(({ finding, bases: met }): Finding => {
    return { ...finding, message: `${finding.message}; so with ${countedMarks(met)}` };
  });
  return [...(thickness === null ? [] : [thickness]), ...once, ...own];
}

const causeOf = ({ code, at }: Finding): string => JSON.stringify([code, at.file, at.line, at.column]);

/** Labels of values that a layer gives begin with its key; those of a base's own begin with bases, or with a row. */
function isInLayer({ at }: Finding): boolean {
  return /^(defaults|kinds)\./.test(at.path ?? "");
}

const THICKNESS = ["template", "thickness"] as const;
const EXAMPLE: Readonly<Record<Unit, string>> = { in: "1/4", mm: "6" };

/** One finding where no base of several says how thick its template is: it is a decision of the shop. */
function lacksThickness(bases: readonly FoundOfBase[], job: SourceDocument, unit: Unit): Finding | null {
  const isMissing = bases.every((base) => base.findings.some((finding) => isThicknessFault(finding, base.document)));
  if (bases.length < 2 || !isMissing) return null;
  const message = `is required: none of the ${bases.length} bases gives the thickness of its template`;
  const hint = `for all of them: defaults: { template: { thickness: ${EXAMPLE[unit]} } }`;
  return faultAt(job, ["defaults", ...THICKNESS], "required", message, hint);
}

function isThicknessFault({ code, at }: Finding, document: SourceDocument): boolean {
  if (code !== "required" || findNode(document.root, ...THICKNESS) !== undefined) return false;
  return [THICKNESS, ["template"]].some((path) => faultAt(document, path, code, "").at.path === at.path);
}
