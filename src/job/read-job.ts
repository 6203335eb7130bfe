/** The job file, with the files that it names -> the complete job. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Inputs } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { SourceDocument, WithFindings } from "./document.js";
import { joinPath } from "./document.js";
import { withGivenLines } from "./given-lines.js";
import { jobRoot } from "./job-file.js";
import type { Answer, Base, Job } from "./model/job.js";
import type { PlanSpec } from "./model/plan.js";
import type { Vocabulary } from "./model/vocabulary.js";
import { readAnswerForm } from "./resolve/answer-form.js";
import type { BaseSources } from "./resolve/base-report.js";
import { completeBase } from "./resolve/complete-base.js";
import { resolveEditions } from "./resolve/editions.js";
import { headFaults, resolveHead, revisionFindings } from "./resolve/head.js";
import type { JobSources } from "./resolve/job-sources.js";
import { findingsOfBases } from "./resolve/layer-findings.js";
import { layBases, readLayers } from "./resolve/layers.js";
import type { ListedBases } from "./resolve/listed-bases.js";
import { knownMarks, listBases, markFaults } from "./resolve/listed-bases.js";
import { readNamedShop } from "./resolve/named-shop.js";
import { countPlacements, readPlan, withPlateBottoms } from "./resolve/plan.js";
import { readRegister } from "./resolve/register.js";
import { unitOf } from "./resolve/shop.js";
import { parseForgiving } from "./schema/forgiving.js";
import type { JobSchemas } from "./schema/job.js";
import { jobSchemas } from "./schema/job.js";

/** What a job is read with. */
export interface JobOptions {
  /** Handed in by the shell, for a job that names no date. */
  readonly date: string;
  readonly vocabulary: Vocabulary;
}

/** Schemas are kept: they take longer to make than a small job to read. One vocabulary is all that a program has. */
const kept = new WeakMap<Vocabulary, Partial<Record<Unit, JobSchemas>>>();

function schemasOf(unit: Unit, vocabulary: Vocabulary): JobSchemas {
  const known = kept.get(vocabulary) ?? {};
  const schemas = known[unit] ?? jobSchemas(unit, Object.keys(vocabulary.rules));
  kept.set(vocabulary, { ...known, [unit]: schemas });
  return schemas;
}

/** Reads and completes a job. Every fault is told at once; nothing is guessed. */
export function readJob(inputs: Inputs, options: JobOptions): Outcome<Job> {
  const root = readRoot(inputs);
  if (!root.ok) return root;
  const job = completeJob(root.value, inputs, options);
  return { ...job, findings: inReadingOrder(job.findings) };
}

/** By file in the order in which they were read, then by line and column; of a cell that cannot be read that alone is told. */
function inReadingOrder(findings: readonly Finding[]): Finding[] {
  const files = [...new Set(findings.map(({ at }) => at.file))];
  const rank = ({ at }: Finding) => [files.indexOf(at.file), at.line ?? 0, at.column ?? 0] as const;
  return withoutEchoes(findings).sort((a, b) => {
    const [one, other] = [rank(a), rank(b)];
    return one[0] - other[0] || one[1] - other[1] || one[2] - other[2];
  });
}

const CELL_FAULTS = new Set(["cell-fault", "values-differ"]);

/** What is wrong with a cell that cannot be read, or is asked about, is told alone; what an open question leaves out is not asked for. */
function withoutEchoes(findings: readonly Finding[]): Finding[] {
  const isOfCell = ({ code }: Finding) => CELL_FAULTS.has(code) || code.startsWith("asked-");
  const faulty = new Set(findings.filter(isOfCell).map(({ at }) => JSON.stringify(at)));
  const isOpen = ({ code }: Finding) => code.startsWith("asked-") || code === "two-columns-differ";
  const asked = new Set(findings.filter(isOpen).map(({ at }) => at.file));
  return findings.filter((finding) => {
    if (isOfCell(finding)) return true;
    if (finding.code === "required" && asked.has(finding.at.file)) return false;
    return !faulty.has(JSON.stringify(finding.at));
  });
}

function readRoot(inputs: Inputs): Outcome<SourceNode> {
  const root = jobRoot(inputs);
  if (root === null) {
    return inputs.files.has(inputs.job)
      ? refuseFile(inputs.job, "not-a-job", "is a spreadsheet; allowed is a job file in YAML that names it")
      : refuseFile(inputs.job, "missing-file", "there is no such file");
  }
  const allowed = "is not a job; allowed is a group of keys: job, units, rules, shop, bases, ...";
  return root.ok && root.value.kind !== "map" ? refuseFile(inputs.job, "not-a-job", allowed) : root;
}

function refuseFile(file: string, code: string, message: string): { ok: false; findings: Finding[] } {
  return { ok: false, findings: [{ code, severity: "error", at: { file, line: 1, column: 1 }, message }] };
}

function completeJob(root: SourceNode, inputs: Inputs, { date, vocabulary }: JobOptions): Outcome<Job> {
  const { sources, schemas, head, editions, shop, listed, beside, layers } = readSurroundings(root, inputs, {
    vocabulary,
  });
  const { document, unit } = sources;
  const laid = layBases(listed.value, layers.value);
  const bases = laid.value.map((base) => ({ document: base, ...completeBase(base, schemas.base, beside) }));
  const plan = readPlan({ ...sources, bases: laid.value });
  const register = readRegister(sources, head.data?.job.number);
  const form = readAnswerForm(sources, register.value, head.data?.job.number);
  const told = [head, editions, shop, listed, layers, laid, plan, register, form].flatMap((part) => part.findings);
  const ofBases = findingsOfBases(bases, layers.findings, document, unit);
  const ofRevisions = revisionFindings(head.data, document, knownMarks(laid.value));
  const ofHead = [...headFaults(head.data, sources), ...ofRevisions];
  const findings = [...told, ...ofBases, ...markFaults(laid.value), ...ofHead];
  const whole = bases.flatMap(({ value }) => value ?? []);
  if (head.data === null || shop.value === null || hasErrors(findings) || bases.length === 0) {
    return { ok: false, findings };
  }
  if (whole.length < bases.length) return { ok: false, findings };
  const own = resolveHead(head.data, document, unit, date);
  const isAnswer = ({ kind }: Answer): boolean => kind === "answered";
  const job: Job = {
    ...own,
    answers: [...own.answers.filter(isAnswer), ...form.value, ...own.answers.filter((each) => !isAnswer(each))],
    register: register.value,
    numbers: null,
    unit,
    editions: editions.value,
    shop: shop.value.shop,
    ...withPlan(plan.value, whole, laid.value),
    readAs:
      listed.readAs === null
        ? null
        : withGivenLines(
            listed.readAs,
            laid.value.map(({ root }) => root),
          ),
  };
  return { ok: true, value: job, findings };
}

/** What bases are read with: everything of a job but its bases. */
interface JobSurroundings {
  readonly sources: JobSources;
  readonly schemas: JobSchemas;
  readonly head: ReturnType<typeof readHead>;
  readonly editions: ReturnType<typeof resolveEditions>;
  readonly shop: ReturnType<typeof readNamedShop>;
  readonly listed: ListedBases;
  readonly beside: BaseSources;
  readonly layers: ReturnType<typeof readLayers>;
}

function readHead(schemas: JobSchemas, { document, unit }: JobSources) {
  return parseForgiving(schemas.head, document, headStandIns(unit));
}

function readSurroundings(
  root: SourceNode,
  inputs: Inputs,
  { vocabulary }: Pick<JobOptions, "vocabulary">,
): JobSurroundings {
  const unit = unitOf(root);
  const sources: JobSources = { document: { root, path: "", nameOf: () => null }, unit, inputs, vocabulary };
  const schemas = schemasOf(unit, vocabulary);
  const head = readHead(schemas, sources);
  const editions = resolveEditions(head.data?.rules, sources);
  const shop = readNamedShop(head.data, sources);
  const beside = {
    unit,
    editions: editions.value,
    grades: shop.value?.grades ?? null,
    files: inputs.files,
    vocabulary,
  };
  const layers = readLayers({ document: sources.document, schemas, beside });
  return { sources, schemas, head, editions, shop, listed: listBases(head.data, sources), beside, layers };
}

/** Reads one base of a job anew, `index` in its list, as `readJob` reads it among all. */
export type BaseReader = (root: SourceNode, index: number) => WithFindings<Base | null>;

/** For a job whose bases stand in its file and whose head has no fault; null for any other. */
export function startBaseReader(inputs: Inputs, { vocabulary }: Pick<JobOptions, "vocabulary">): BaseReader | null {
  const root = readRoot(inputs);
  if (!root.ok || findNode(root.value, "bases")?.kind !== "list" || findNode(root.value, "readFrom") !== undefined)
    return null;
  const { schemas, head, editions, shop, beside, layers } = readSurroundings(root.value, inputs, { vocabulary });
  if (hasErrors([head, editions, shop, layers].flatMap(({ findings }) => findings))) return null;
  return (base, index) => {
    const document = { root: base, path: joinPath("bases", [index]), nameOf: () => null };
    const laid = layBases([document], layers.value);
    const unknown = laid.findings.filter(({ code }) => code !== "unused-kind");
    const [written = document] = laid.value;
    const { value, findings } = completeBase(written, schemas.base, beside);
    return { value: unknown.length > 0 ? null : value, findings: [...unknown, ...findings] };
  };
}

/** Made anew each time, since a pruned document is changed in place. */
function headStandIns(unit: Unit) {
  return { job: { number: "0" }, "job.number": "0", units: unit };
}

/** The plan with what its bases add, and the bases with the quantity that their placements count to. */
function withPlan(
  plan: PlanSpec | null,
  bases: readonly Base[],
  written: readonly SourceDocument[],
): Pick<Job, "plan" | "bases"> {
  if (plan === null) return { plan, bases };
  const counts = countPlacements(plan.placements);
  const counted = bases.map((base, index): Base => {
    const root = written[index]?.root;
    const count = counts.get(base.mark);
    if (count === undefined || findNode(root, "quantity") !== undefined) return base;
    const ownTemplates = findNode(root, "template", "quantity") !== undefined;
    const { template } = base;
    return { ...base, quantity: count, template: ownTemplates ? template : { ...template, quantity: count } };
  });
  return { plan: withPlateBottoms(plan, counted), bases: counted };
}
