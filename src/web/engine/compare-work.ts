/** Two states of a job, and what must be cut again: jobs and packages that were dropped, or the job that is open. */
import { counted } from "../../checks/words.js";
import {
  type Comparison,
  compareSides,
  countRecuts,
  countRemade,
  ROD_VERDICTS,
  type Side,
  VERDICTS,
} from "../../compare/index.js";
import { hasErrors, type Outcome } from "../../diagnostics/finding.js";
import { uniqueFindings } from "../../diagnostics/gather.js";
import { listed } from "../../diagnostics/listed.js";
import { printable } from "../../diagnostics/printable.js";
import { ROD_LABELS, ROD_MEANINGS, rodChangeTexts, rodHeadWords } from "../../formats/compare-rods-text.js";
import { changeTexts, VERDICT_LABELS, VERDICT_MEANINGS } from "../../formats/compare-text.js";
import { summaryPath } from "../../outputs/index.js";
import type { SignatureState, SignedState } from "../../signature/index.js";
import { jobSide, startJobState } from "../../tasks/compare.js";
import { writeComparison, writeComparisonJson } from "../../tasks/comparison-text.js";
import { type EarlierRegister, readEarlierRegister } from "../../tasks/earlier-register.js";
import { startOwnSha256 } from "../../tasks/hash.js";
import { numberQuestions } from "../../tasks/number-questions.js";
import { openPackage } from "../../tasks/package-archive.js";
import type { PackageFiles } from "../../tasks/package-files.js";
import { packageSide } from "../../tasks/package-side.js";
import { type LookedPackage, lookAtPackage, type PackageNames } from "../../tasks/prove-package.js";
import { findSignatures, judgeForNew, readSignedState } from "../../tasks/signed-state.js";
import { answerFile } from "./answer-file.js";
import { type AnswerTable, answerRow, type RowState } from "./answer-table.js";
import type { CompareAnswer } from "./compare-model.js";
import { bytesOfDropped, type Dropped, isZip } from "./dropped.js";
import type { JobFiles } from "./protocol.js";
import { Refused } from "./refused.js";
import { causesOf, openedJob, refusedBy } from "./refusing.js";
import { shownSignature } from "./shown-signature.js";
import type { CompareSource, TaskWork } from "./task-model.js";

/** A source as it was handed over. `isAlone`: a summary without the files that it lists. */
type Source =
  | { readonly kind: "job"; readonly name: string; readonly files: JobFiles }
  | { readonly kind: "package"; readonly files: PackageFiles; readonly names: PackageNames; readonly isAlone: boolean };

interface ReadSide {
  readonly side: Outcome<Side>;
  readonly state: SignedState | null;
}

/** Faults of both sides are told together. */
export const compareSources: TaskWork<"compare"> = async ({ old, fresh, date }, tell) => {
  const [before, after] = [await sourceOf(old, "the old one"), await sourceOf(fresh, "the new one")];
  tell({ done: 0, of: 3, what: "reading the old one" });
  const oldSide = await readSide(before, date, registerIn(after));
  tell({ done: 1, of: 3, what: "reading the new one" });
  const newSide = await readSide(after, date, registerIn(before));
  tell({ done: 2, of: 3, what: "comparing" });
  const findings = uniqueFindings([...oldSide.side.findings, ...newSide.side.findings]);
  if (!oldSide.side.ok || !newSide.side.ok) throw refusedBy(findings);
  const comparison = compareSides(oldSide.side.value, newSide.side.value);
  return answerOf(comparison, signaturesOf(before, newSide.state), causesOf(findings));
};

function answerOf(
  comparison: Comparison,
  signatures: readonly SignatureState[],
  findings: readonly string[],
): CompareAnswer {
  const [from, to] = [comparison.old.job.number, comparison.new.job.number];
  const jobs = from === to ? [] : [printable(`The old one is job ${from}, the new one is job ${to}.`)];
  const { rods } = comparison;
  return {
    sentence: sentenceOf(comparison),
    isBad: countRecuts(comparison) + countRemade(comparison) > 0,
    sides: [`Old: ${sideWords(comparison.old)}`, `New: ${sideWords(comparison.new)}`],
    templates: templateTable(comparison),
    rods: rods === null ? null : rodTable(comparison),
    meanings: meaningsOf(comparison),
    signatures: signatures.map(shownSignature),
    said: [...jobs, ...findings],
    text: writeComparison(comparison, signatures, { width: 100, color: false }),
    files: [
      answerFile("compare.json", "The whole comparison in machine form", writeComparisonJson(comparison, signatures)),
    ],
  };
}

function sentenceOf(comparison: Comparison): string {
  const recut = comparison.templates.filter(({ verdict }) => verdict === "recut");
  const plates = recut.reduce((sum, each) => sum + (each.new?.quantity ?? 0), 0);
  const remade = countRemade(comparison);
  if (recut.length === 0 && remade === 0) return "Nothing must be cut again, and no rods made again.";
  const marks = listed(
    recut.map((each) => printable((each.new ?? each.old)?.mark ?? "")),
    8,
  );
  const cut =
    recut.length === 0
      ? "Nothing must be cut again"
      : `${counted(recut.length, "template")} must be cut again (${counted(plates, "plate")}): ${marks}`;
  return `${cut}; ${remade === 0 ? "no rods" : counted(remade, "rod")} must be made again.`;
}

const sideWords = ({ name, source, job }: Comparison["old"]): string =>
  printable(
    `job ${job.number}, revision ${job.revision}, ${job.status}${job.status === "released" ? "" : ", NOT RELEASED"} (${source} ${name})`,
  );

const STATES: Readonly<Record<(typeof VERDICTS)[number], RowState>> = {
  ...{ recut: "held", held: "held", gone: "asked", "to cut": "asked", new: "asked" },
  ...{ "marks only": "clear", "file only": "clear", unchanged: "clear" },
};

function templateTable(comparison: Comparison): AnswerTable {
  const rows = comparison.templates.map((each) => {
    const state = each.new ?? each.old;
    const changes = changeTexts(each, comparison).join("; ");
    const cells = [state?.mark ?? "", VERDICT_LABELS[each.verdict], listed(state?.serves ?? [], 8)];
    return answerRow(STATES[each.verdict], [...cells, String(state?.quantity ?? 0), changes]);
  });
  return { heads: ["template", "verdict", "bases", "plates", "what is otherwise"], figures: [3], rows };
}

const ROD_STATES: Readonly<Record<(typeof ROD_VERDICTS)[number], RowState>> = {
  ...{ remade: "held", look: "asked", gone: "asked", "set otherwise": "asked", new: "asked" },
  ...{ quantity: "asked", unchanged: "clear" },
};

function rodTable({ rods, new: { job } }: Comparison): AnswerTable {
  const shown = (rods ?? []).filter(({ verdict }) => verdict !== "unchanged");
  const rows = shown.map((each) =>
    answerRow(ROD_STATES[each.verdict], [
      rodHeadWords(each),
      ROD_LABELS[each.verdict],
      rodChangeTexts(each, job.unit).join("; "),
    ]),
  );
  return { heads: ["rods", "verdict", "what is otherwise"], figures: [], rows };
}

function meaningsOf({ templates, rods }: Comparison): CompareAnswer["meanings"] {
  const found = VERDICTS.filter((kind) => templates.some(({ verdict }) => verdict === kind));
  const foundRods = ROD_VERDICTS.filter((kind) => (rods ?? []).some(({ verdict }) => verdict === kind));
  return [
    ...found.map((kind) => [VERDICT_LABELS[kind], VERDICT_MEANINGS[kind]] as const),
    ...foundRods.map((kind) => [ROD_LABELS[kind], ROD_MEANINGS[kind]] as const),
  ];
}

async function sourceOf(source: CompareSource, which: string): Promise<Source> {
  if (source.kind === "job") return source;
  const [first, ...others] = source.files;
  if (first === undefined) throw new Refused([`${which} is wanted: drop a package or a job file`]);
  if (others.length === 0 && (await isZip(first)) && !/\.xlsx$/i.test(first.name)) return zipped(first);
  const isSummary = others.length === 0 && /\.json$/i.test(first.name);
  return isSummary ? lone(first) : droppedJob(source.files, which);
}

async function zipped(dropped: Dropped): Promise<Source> {
  const opened = openPackage(await bytesOfDropped(dropped, "package"), dropped.name);
  if (!opened.ok) throw refusedBy(opened.findings);
  return { kind: "package", ...opened.value, isAlone: false };
}

/** A summary by itself: what it says is taken, since the files that it lists were not handed over. */
async function lone(dropped: Dropped): Promise<Source> {
  const bytes = await bytesOfDropped(dropped, "package");
  const isIt = (path: string): boolean => path === summaryPath;
  const files: PackageFiles = {
    list: () => [{ path: summaryPath, kind: "file" }],
    namesIn: () => [],
    sizeOf: (path) => (isIt(path) ? bytes.length : null),
    chunks: (path) => (isIt(path) ? [bytes] : []),
    startSha256: startOwnSha256,
  };
  return { kind: "package", files, names: { name: dropped.name, of: () => dropped.name }, isAlone: true };
}

async function droppedJob(dropped: readonly Dropped[], which: string): Promise<Source> {
  const jobs = dropped.filter(({ name }) => /\.ya?ml$/i.test(name));
  const [job] = jobs;
  if (job === undefined || jobs.length > 1) {
    const given = dropped.map(({ name }) => name).join(", ");
    throw new Refused([
      `${which}: ${given} ${dropped.length === 1 ? "is" : "are"} neither a package (a ZIP, or its ${summaryPath}) nor one job file (YAML) with the sheets that it names`,
    ]);
  }
  const read = dropped.map(async (each) => [each.name, await bytesOfDropped(each, "file")] as const);
  return { kind: "job", name: job.name, files: { job: job.name, files: new Map(await Promise.all(read)) } };
}

/** A job beside a package answers and accepts by the numbers that this one gave. */
function registerIn(source: Source): EarlierRegister | null {
  return source.kind === "job" ? null : readEarlierRegister(source.files.chunks(summaryPath), "");
}

async function readSide(source: Source, date: string, register: EarlierRegister | null): Promise<ReadSide> {
  if (source.kind === "package") return packageRead(source);
  const opened = await openedJob(source.files, date, register?.content ?? null);
  if (!opened.ok) return { side: opened, state: null };
  const job = numberQuestions(opened.value);
  const gathered = startJobState(startOwnSha256);
  const side = jobSide(source.name, job, { each: gathered.each });
  gathered.end(job);
  return { side: { ...opened, value: side }, state: gathered.state() };
}

/** A package with a changed cut file is refused; one with changed papers is compared, and they are named. */
function packageRead({ files, names, isAlone }: Extract<Source, { kind: "package" }>): ReadSide {
  const read = packageSide(files, names.name, names.of(summaryPath));
  if (!read.ok) return { side: read, state: null };
  const { side, faults } = read.value;
  const told = isAlone ? faults.filter(({ code }) => code !== "damaged-package") : faults;
  const state = readSignedState(files, names.of(summaryPath));
  return {
    side: hasErrors(told) ? { ok: false, findings: told } : { ok: true, value: side, findings: told },
    state: state.ok ? state.value.state : null,
  };
}

/** Of a package that somebody signed: each signature as it stands for the new one. */
function signaturesOf(before: Source, now: SignedState | null): readonly SignatureState[] {
  if (before.kind === "job") return [];
  const records = findSignatures(before.files);
  const looked: Outcome<LookedPackage> | null = records.length === 0 ? null : lookAtPackage(before.files, before.names);
  return looked?.ok ? judgeForNew(records, looked.value.proved.signatures, now) : [];
}
