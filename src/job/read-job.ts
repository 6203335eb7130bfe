/** The job file, with the files that it names -> the complete job. */
import type { Finding, Outcome, Place } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import { readCsv } from "../readers/csv.js";
import type { Inputs, Table } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import { readYaml } from "../readers/yaml.js";
import { readSchedule } from "../schedule/index.js";
import type { Unit } from "../units/index.js";
import { toUnit } from "../units/index.js";
import type { SourceDocument } from "./document.js";
import { faultAt, joinPath, placeOf } from "./document.js";
import type { Answer, Base, Editions, Job, Severity } from "./model/job.js";
import { given, missing } from "./model/job.js";
import type { PlanSpec } from "./model/plan.js";
import { isRaised, RULE_IDS } from "./model/severities.js";
import { resolveBase } from "./resolve/base.js";
import { BaseReport } from "./resolve/base-report.js";
import { budgetFaults, resolveBudget } from "./resolve/budget.js";
import { resolveEditions } from "./resolve/editions.js";
import { countPlacements, lookAlikeOf, readPlan, withGrout } from "./resolve/plan.js";
import type { ReadShop } from "./resolve/shop.js";
import { readShop, SHOP_NAMES, shopFileName, unitOf } from "./resolve/shop.js";
import { parseForgiving } from "./schema/forgiving.js";
import type { HeadDocument, JobSchemas } from "./schema/job.js";
import { jobSchemas } from "./schema/job.js";
import { markKey } from "./schema/marks.js";
import { resolveSurvey } from "./schema/survey.js";

/** The date handed in by the shell, used when the job names none. */
export interface JobOptions {
  readonly date: string;
}

const schemasByUnit: Partial<Record<Unit, JobSchemas>> = {};

function schemasOf(unit: Unit): JobSchemas {
  schemasByUnit[unit] ??= jobSchemas(unit);
  return schemasByUnit[unit];
}

/** Reads and completes a job. Every fault is told at once; nothing is guessed. */
export function readJob(inputs: Inputs, { date }: JobOptions): Outcome<Job> {
  const root = readRoot(inputs);
  if (!root.ok) return root;
  const job = completeJob(root.value, inputs, date);
  return { ...job, findings: inReadingOrder(job.findings) };
}

/** By file in the order in which they were read, then by line and column; of a cell that cannot be read that alone is told. */
function inReadingOrder(findings: readonly Finding[]): Finding[] {
  const files = [...new Set(findings.map(({ at }) => at.file))];
  const rank = ({ at }: Finding) => [files.indexOf(at.file), at.line ?? 0, at.column ?? 0] as const;
  const faulty = new Set(findings.filter(({ code }) => code === "cell-fault").map(({ at }) => JSON.stringify(at)));
  const once = findings.filter(({ code, at }) => code === "cell-fault" || !faulty.has(JSON.stringify(at)));
  return once.sort((a, b) => {
    const [one, other] = [rank(a), rank(b)];
    return one[0] - other[0] || one[1] - other[1] || one[2] - other[2];
  });
}

function readRoot(inputs: Inputs): Outcome<SourceNode> {
  const content = inputs.files.get(inputs.job);
  if (content === undefined) return refuseFile(inputs.job, "missing-file", "there is no such file");
  if (isTable(content))
    return refuseFile(inputs.job, "not-a-job", "is a spreadsheet; allowed is a job file in YAML that names it");
  const root = readYaml(content, inputs.job);
  if (root.ok && root.value.kind !== "map") {
    return refuseFile(
      inputs.job,
      "not-a-job",
      "is not a job; allowed is a group of keys: job, units, rules, shop, bases, ...",
    );
  }
  return root;
}

function isTable(content: string | Uint8Array | Table): content is Table {
  return typeof content === "object" && "kind" in content;
}

function refuseFile(file: string, code: string, message: string): { ok: false; findings: Finding[] } {
  return { ok: false, findings: [{ code, severity: "error", at: { file, line: 1, column: 1 }, message }] };
}

function completeJob(root: SourceNode, inputs: Inputs, date: string): Outcome<Job> {
  const document: SourceDocument = { root, path: "", nameOf: () => null };
  const unit = unitOf(root);
  const { head: schema, base: baseSchema } = schemasOf(unit);
  const head = parseForgiving(schema, document, headStandIns(unit));
  const findings: Finding[] = [...head.findings];
  const editions = resolveEditions(head.data?.rules, unit, document, findings);
  const shop = resolveShop(head.data, document, inputs, unit, findings);
  const sources = baseDocuments(head.data, document, inputs, unit, findings);
  const grades = shop?.grades ?? [];
  const bases = sources.map((source) =>
    completeBase(source, baseSchema, unit, editions, grades, shop !== null, findings, inputs.files),
  );
  const plan = readPlan({ document, inputs, unit, bases: sources, lookAlike: head.data?.lookAlike });
  findings.push(
    ...plan.findings,
    ...markFaults(sources),
    ...answerFaults(head.data, document, sources),
    ...severityFaults(head.data, document),
    ...budgetFaults(head.data?.budget ?? {}).map(({ key, message }) =>
      faultAt(document, ["budget", key], "budget-both", message),
    ),
  );
  const whole = bases.filter((base) => base !== null);
  if (head.data === null || shop === null || hasErrors(findings) || bases.length === 0 || whole.length < bases.length)
    return { ok: false, findings };
  const parts = { date, unit, editions, shop, ...withPlan(plan.plan, whole, sources) };
  return { ok: true, value: assembleJob(head.data, parts), findings };
}

function completeBase(
  source: SourceDocument,
  schema: JobSchemas["base"],
  unit: Unit,
  editions: Editions,
  grades: ReadShop["grades"],
  gradesKnown: boolean,
  findings: Finding[],
  files: Inputs["files"],
): Base | null {
  const parsed = parseForgiving(schema, source, baseStandIns());
  findings.push(...parsed.findings);
  if (parsed.data === null) return null;
  const report = new BaseReport(source, unit, editions, grades, files);
  const base = resolveBase(parsed.data, report);
  const certain = report.findings.filter(
    ({ code }) => !(parsed.pruned && TAKEN_OUT.has(code)) && !(code === "unknown-grade" && !gradesKnown),
  );
  findings.push(...certain);
  return parsed.pruned ? null : base;
}

/** Faults that a value taken out beforehand would make up. */
const TAKEN_OUT = new Set(["required", "hole-unknown"]);

/** Made anew each time, since a pruned document is changed in place. */
function headStandIns(unit: Unit) {
  return { job: { number: "0" }, "job.number": "0", units: unit };
}

function baseStandIns() {
  return { mark: "X", "rods.diameter": "1 in", template: { thickness: "1 in" }, "template.thickness": "1 in" };
}

function resolveShop(
  head: HeadDocument | null,
  document: SourceDocument,
  inputs: Inputs,
  unit: Unit,
  findings: Finding[],
): ReadShop | null {
  const name = head?.shop ?? defaultShop(unit);
  const file = shopFileName(name);
  const content = inputs.files.get(file);
  if (content === undefined || isTable(content)) {
    const near = nearestWord(name, SHOP_NAMES);
    const message = `there is no shop file ${file}; allowed are ${SHOP_NAMES.join(", ")}, or the path of a shop file`;
    const hint = near === undefined ? undefined : `did you mean ${near}?`;
    findings.push(faultAt(document, ["shop"], "unknown-shop", message, hint));
    return null;
  }
  const shop = readShop(content, file, unit);
  findings.push(...shop.findings);
  return shop.ok ? shop.value : null;
}

/** The shop of a job that names none. */
export function defaultShop(unit: Unit): string {
  return unit === "in" ? "plasma" : "plasma-metric";
}

function baseDocuments(
  head: HeadDocument | null,
  document: SourceDocument,
  inputs: Inputs,
  unit: Unit,
  findings: Finding[],
): SourceDocument[] {
  const bases = findNode(document.root, "bases");
  const written = findNode(document.root, "schedule");
  if (bases !== undefined && written !== undefined) {
    const message = "is given beside bases; allowed is one of them";
    findings.push(faultAt(document, ["schedule"], "bases-and-schedule", message));
  }
  if (bases !== undefined) return listedBases(bases, document, findings);
  if (written === undefined) {
    const message = "is required; allowed is a list of bases, or schedule: FILE";
    findings.push(faultAt(document, ["bases"], "required", message));
    return [];
  }
  return head?.schedule === undefined ? [] : scheduledBases(head.schedule, document, inputs, unit, findings);
}

function listedBases(bases: SourceNode, document: SourceDocument, findings: Finding[]): SourceDocument[] {
  if (bases.kind !== "list" || bases.items.length === 0) {
    const message =
      bases.kind === "list"
        ? "is an empty list; allowed is one base or more"
        : "is no list; allowed is a list of bases";
    findings.push(faultAt(document, ["bases"], "bad-value", message));
    return [];
  }
  return bases.items.map((root, index) => ({ root, path: joinPath("bases", [index]), nameOf: () => null }));
}

function scheduledBases(
  schedule: NonNullable<HeadDocument["schedule"]>,
  document: SourceDocument,
  inputs: Inputs,
  unit: Unit,
  findings: Finding[],
): SourceDocument[] {
  const file = typeof schedule === "string" ? schedule : schedule.file;
  const content = inputs.files.get(file);
  if (content === undefined) {
    const message = `there is no schedule ${file}; allowed is a CSV or XLSX file beside the job file`;
    findings.push(faultAt(document, ["schedule"], "missing-file", message));
    return [];
  }
  const table = isTable(content) ? ({ ok: true, value: content, findings: [] } as const) : readCsv(content, file);
  findings.push(...table.findings);
  if (!table.ok) return [];
  const { bases, headingOf, findings: faults } = readSchedule(table.value, file, unit);
  findings.push(...faults);
  if (bases.length === 0 && faults.length === 0) {
    findings.push(
      faultAt(
        document,
        ["schedule"],
        "empty-schedule",
        `${file} has no row under its headings; allowed is one base or more`,
      ),
    );
  }
  return bases.map((root) => ({ root, path: "", nameOf: headingOf }));
}

interface MarkUse {
  readonly key: string;
  readonly mark: string;
  readonly base: number;
  readonly place: Place;
}

/** Base marks and template marks share one set of names; a template may bear the mark of its own base. */
function markFaults(sources: readonly SourceDocument[]): Finding[] {
  const first = new Map<string, MarkUse>();
  return sources.flatMap((source, base) =>
    marksOf(source, base).flatMap((use) => {
      const earlier = first.get(use.key);
      if (earlier === undefined) first.set(use.key, use);
      return earlier === undefined || earlier.base === base ? [] : [markTwice(use, earlier)];
    }),
  );
}

function marksOf(source: SourceDocument, base: number): MarkUse[] {
  return [["mark"], ["template", "mark"]].flatMap((path) => {
    const node = findNode(source.root, ...path);
    if (node?.kind !== "scalar") return [];
    return [{ key: markKey(node.text), mark: node.text, base, place: placeOf(source, path) }];
  });
}

function markTwice(use: MarkUse, earlier: MarkUse): Finding {
  const { file, line, column } = earlier.place;
  const message = `the mark "${use.mark}" is used twice; first at ${file}:${line}:${column}; every base and template has its own`;
  return { code: "mark-twice", severity: "error", at: use.place, message };
}

function answerFaults(
  head: HeadDocument | null,
  document: SourceDocument,
  sources: readonly SourceDocument[],
): Finding[] {
  const marks = new Set(
    sources.map(({ root }) => findNode(root, "mark")).map((node) => (node?.kind === "scalar" ? node.text : "")),
  );
  return (head?.answers ?? []).flatMap(({ mark }, index) => {
    if (marks.has(mark)) return [];
    const path = ["answers", index, "mark"];
    return [faultAt(document, path, "unknown-mark", `"${mark}" is no base of this job; allowed is the mark of a base`)];
  });
}

function severityFaults(head: HeadDocument | null, document: SourceDocument): Finding[] {
  return RULE_IDS.flatMap((id) => {
    const severity = head?.severities?.[id];
    if (severity === undefined || isRaised(id, severity)) return [];
    const message = `"${severity}" is below the rule's own severity; a severity may be raised, never lowered`;
    return [faultAt(document, ["severities", id], "severity-lowered", message)];
  });
}

/** The layout with what its bases add, and the bases with the quantity that their placements count to. */
function withPlan(
  plan: PlanSpec | null,
  bases: readonly Base[],
  sources: readonly SourceDocument[],
): Pick<JobParts, "plan" | "bases"> {
  if (plan === null) return { plan, bases };
  const counts = countPlacements(plan.placements);
  const counted = bases.map((base, index): Base => {
    const root = sources[index]?.root;
    const count = counts.get(base.mark);
    if (count === undefined || findNode(root, "quantity") !== undefined) return base;
    const ownTemplates = findNode(root, "template", "quantity") !== undefined;
    const { template } = base;
    return { ...base, quantity: count, template: ownTemplates ? template : { ...template, quantity: count } };
  });
  return { plan: withGrout(plan, counted), bases: counted };
}

interface JobParts {
  readonly date: string;
  readonly unit: Unit;
  readonly editions: Editions;
  readonly shop: ReadShop;
  readonly bases: readonly Base[];
  readonly plan: PlanSpec | null;
}

function assembleJob(head: HeadDocument, { date, unit, editions, shop, bases, plan }: JobParts): Job {
  const { job } = head;
  return {
    number: job.number,
    title: job.title ?? "",
    revision: job.revision ?? "-",
    status: job.status ?? "preliminary",
    date: job.date ?? date,
    unit,
    editions,
    shop: shop.shop,
    bases,
    answers: (head.answers ?? []).map((answer) => resolveAnswer(answer, unit)),
    raised: raisedSeverities(head),
    drawing: { number: job.drawing?.number ?? "", revision: job.drawing?.revision ?? "" },
    revisions: (job.revisions ?? []).map((row) => ({ revision: row.revision, date: row.date, text: row.text ?? "" })),
    drawnBy: job.drawnBy ?? "",
    owner: job.owner ?? "",
    tolerances: job.tolerances ?? "",
    plan,
    budget: resolveBudget(head.budget),
    survey: resolveSurvey(head.survey),
    lookAlike: lookAlikeOf(head.lookAlike, unit),
  };
}

function resolveAnswer(answer: NonNullable<HeadDocument["answers"]>[number], unit: Unit): Answer {
  const { mark, rule, by, date, text, subject, value } = answer;
  const answered =
    value === undefined ? missing("answers.value", "the answer names no value") : given(toUnit(value, unit), "job");
  return { mark, rule, by, date, text, subject: subject ?? "", value: answered };
}

function raisedSeverities(head: HeadDocument): Readonly<Record<string, Severity>> {
  const raised: Record<string, Severity> = {};
  for (const id of RULE_IDS) {
    const severity = head.severities?.[id];
    if (severity !== undefined) raised[id] = severity;
  }
  return raised;
}
