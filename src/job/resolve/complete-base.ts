/** A base as written -> the whole base, with every fault that can be told of it in one run. */
import type { Finding } from "../../diagnostics/finding.js";
import type { SourceDocument, WithFindings } from "../document.js";
import type { Base } from "../model/job.js";
import { parseForgiving } from "../schema/forgiving.js";
import type { JobSchemas } from "../schema/job.js";
import { resolveBase } from "./base.js";
import type { BaseSources } from "./base-report.js";

/** A base as written; `lacks`: parts that it should take from elsewhere were refused there. */
export interface WrittenBase extends SourceDocument {
  readonly lacks?: boolean;
}

/** The base as written -> the whole base, or null where its faults leave none. */
export function completeBase(
  document: WrittenBase,
  schema: JobSchemas["base"],
  beside: BaseSources,
): WithFindings<Base | null> {
  const { data, pruned, findings: parsed } = parseForgiving(schema, document, standIns());
  const findings = document.lacks ? parsed.filter(isTrueOfPart) : parsed;
  if (data === null) return { value: null, findings };
  const isPart = pruned || document.lacks === true;
  const base = resolveBase(data, document, beside);
  const madeUp = (finding: Finding) =>
    (isPart && !isTrueOfPart(finding)) || (finding.code === "unknown-grade" && beside.grades === null);
  return { value: isPart ? null : base.value, findings: [...findings, ...base.findings.filter((one) => !madeUp(one))] };
}

/** Faults that a value taken out beforehand would make up. */
const TAKEN_OUT = new Set(["required", "hole-unknown"]);

function isTrueOfPart({ code }: Finding): boolean {
  return !TAKEN_OUT.has(code);
}

/** Made anew each time, since a pruned document is changed in place. */
function standIns() {
  return { mark: "X", "rods.diameter": "1 in", template: { thickness: "1 in" }, "template.thickness": "1 in" };
}
