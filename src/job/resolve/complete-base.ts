/** A base as written -> the whole base, with every fault that can be told of it in one run. */
import type { Finding } from "../../diagnostics/finding.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { placeOf } from "../document.js";
import type { Memory } from "../memory.js";
import { movedFindings, writingOf } from "../memory.js";
import type { Base } from "../model/job.js";
import { parseForgiving } from "../schema/forgiving.js";
import type { JobSchemas } from "../schema/job.js";
import { resolveBase } from "./base.js";
import type { BaseSources } from "./base-report.js";

/** A base as written; `lacks`: parts that it should take from elsewhere were refused there. */
export interface WrittenBase extends SourceDocument {
  readonly lacks?: boolean;
}

/** The base as written -> the whole base, or null where its faults leave none; one that the memory knows is told of its place. */
export function completeBase(
  document: WrittenBase,
  schema: JobSchemas["base"],
  beside: BaseSources,
  memory?: Memory,
): WithFindings<Base | null> {
  if (memory === undefined) return readBase(document, schema, beside);
  const around = memory.nameOf(beside, saidBeside);
  const key = `${around} ${document.lacks === true ? "lacks" : ""} ${memory.nameOf(document.root, writingOf)}`;
  const known = memory.known<KnownBase>("base", key);
  const at = { path: document.path, line: document.root.place.line };
  const found = known === undefined ? null : movedBase(known, at, document);
  const made = found ?? readBase(document, schema, beside);
  memory.keep<KnownBase>("base", key, { ...made, at });
  return made;
}

/** All that a base is read with beside its own keys: files that it names do not change while a job is edited. */
export function saidBeside({ unit, editions, grades }: BaseSources): string {
  return JSON.stringify([unit, editions, grades]);
}

interface KnownBase extends WithFindings<Base | null> {
  readonly at: { readonly path: string; readonly line: number };
}

/** null where what was found of it cannot be told of another place. */
function movedBase({ value, findings, at: then }: KnownBase, at: KnownBase["at"], document: SourceDocument) {
  const moved = movedFindings(findings, then, at);
  if (moved === null) return null;
  const isThere = value === null || (then.path === at.path && then.line === at.line);
  return { value: isThere ? value : { ...value, place: placeOf(document, []) }, findings: moved };
}

function readBase(document: WrittenBase, schema: JobSchemas["base"], beside: BaseSources): WithFindings<Base | null> {
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
