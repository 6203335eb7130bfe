/** The job file, with the files that it names -> the complete job. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Inputs } from "../readers/inputs.js";
import type { SourceEntry, SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { SourceDocument } from "./document.js";
import { withGivenLines } from "./given-lines.js";
import { jobRoot } from "./job-file.js";
import type { Memory } from "./memory.js";
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
import { knownMarks, listBases, markFaults, markUses } from "./resolve/listed-bases.js";
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
  /** Of readings before, of a job that is edited. */
  readonly memory?: Memory;
}

/** A reading of a job, whether it has faults or not. */
export interface JobReading {
  readonly findings: readonly Finding[];
  /** null: something is at fault. */
  readonly job: Job | null;
  /**
   * The job of those bases that have no fault, without its plan; null where the head is at fault, the shop, or a mark. The
   * whole job where nothing is.
   */
  readonly sound: Job | null;
  /** The bases as written, in the job file or its schedule, with what defaults and kinds give them. */
  readonly roots: readonly SourceNode[];
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
  const { findings, job } = readJobParts(inputs, options);
  return job === null ? { ok: false, findings } : { ok: true, value: job, findings };
}

/** The same, with what is sound of a job that has faults. */
export function readJobParts(inputs: Inputs, options: JobOptions): JobReading {
  const root = readRoot(inputs);
  if (!root.ok) return { findings: root.findings, job: null, sound: null, roots: [] };
  const reading = completeJob(root.value, inputs, options);
  return { ...reading, findings: inReadingOrder(reading.findings) };
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

function completeJob(root: SourceNode, inputs: Inputs, options: JobOptions): JobReading {
  const { date, memory } = options;
  const around = readSurroundings(root, inputs, options);
  const { sources, schemas, head, editions, shop, listed, beside, layers } = around;
  const { document, unit } = sources;
  const laid = layBases(listed.value, layers.value);
  const bases = laid.value.map((base) => ({ document: base, ...completeBase(base, schemas.base, beside, memory) }));
  const plan = readPlan({ ...sources, bases: laid.value });
  const register = readRegister(sources, head.data?.job.number);
  const form = readAnswerForm(sources, register.value, head.data?.job.number);
  const uses = markUses(laid.value);
  const marks = markFaults(uses);
  const told = [head, editions, shop, listed, layers, laid, plan, register, form].flatMap((part) => part.findings);
  const ofBases = findingsOfBases(bases, layers.findings, document, unit);
  const ofRevisions = revisionFindings(head.data, document, knownMarks(uses));
  const ofHead = [...headFaults(head.data, sources), ...ofRevisions];
  const findings = [...told, ...ofBases, ...marks, ...ofHead];
  const isWhole = !hasErrors(findings) && bases.length > 0 && bases.every(({ value }) => value !== null);
  const isSound = !hasErrors([...head.findings, ...marks]);
  const roots = laid.value.map(({ root }) => root);
  if (head.data === null || shop.value === null || !(isWhole || isSound))
    return { findings, job: null, sound: null, roots };
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
    ...withPlan(plan.value, bases),
    readAs: listed.readAs === null ? null : withGivenLines(listed.readAs, roots),
  };
  return isWhole ? { findings, job, sound: job, roots } : { findings, job: null, sound: { ...job, plan: null }, roots };
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

/** Everything of the job but its bases and what lies under them, which are read apart. */
function readHead(schemas: JobSchemas, { document, unit }: JobSources) {
  const { root } = document;
  const isOfHead = ({ key }: SourceEntry) => !["bases", "defaults", "kinds"].includes(key);
  const head = root.kind === "map" ? { ...root, entries: root.entries.filter(isOfHead) } : root;
  return parseForgiving(schemas.head, { ...document, root: head }, headStandIns(unit));
}

function readSurroundings(
  root: SourceNode,
  inputs: Inputs,
  { vocabulary, memory }: Pick<JobOptions, "vocabulary" | "memory">,
): JobSurroundings {
  const unit = unitOf(root);
  const sources: JobSources = { document: { root, path: "", nameOf: () => null }, unit, inputs, vocabulary };
  const schemas = schemasOf(unit, vocabulary);
  const head = readHead(schemas, sources);
  const editions = resolveEditions(head.data?.rules, sources);
  const shop = readNamedShop(head.data, sources, memory);
  const beside = {
    unit,
    editions: editions.value,
    grades: shop.value?.grades ?? null,
    files: inputs.files,
    vocabulary,
  };
  const layers = readLayers({ document: sources.document, schemas, beside }, memory);
  return { sources, schemas, head, editions, shop, listed: listBases(head.data, sources), beside, layers };
}

/** Made anew each time, since a pruned document is changed in place. */
function headStandIns(unit: Unit) {
  return { job: { number: "0" }, "job.number": "0", units: unit };
}

/** The plan with what its bases add, and the bases with the quantity that their placements count to. */
function withPlan(
  plan: PlanSpec | null,
  bases: readonly { readonly document: SourceDocument; readonly value: Base | null }[],
): Pick<Job, "plan" | "bases"> {
  const counts = plan === null ? null : countPlacements(plan.placements);
  const counted = bases.flatMap(({ document: { root }, value: base }): readonly Base[] => {
    const count = base === null ? undefined : counts?.get(base.mark);
    if (base === null || count === undefined || findNode(root, "quantity") !== undefined) return base ? [base] : [];
    const ownTemplates = findNode(root, "template", "quantity") !== undefined;
    const { template } = base;
    return [{ ...base, quantity: count, template: ownTemplates ? template : { ...template, quantity: count } }];
  });
  return { plan: plan && withPlateBottoms(plan, counted), bases: counted };
}
