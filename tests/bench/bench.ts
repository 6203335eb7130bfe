/** Speed and memory, as ratios in one run: prints one table and writes it to tests/bench/results.md. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir, totalmem } from "node:os";
import { join, resolve } from "node:path";
import { startSha256 } from "../../src/cli/sha256.js";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { BaseResult, BuildOptions, Inputs, OutputKind } from "../../src/index.js";
import { readJob } from "../../src/job/index.js";
import { numberQuestions } from "../../src/tasks/number-questions.js";
import { openJob, vocabulary } from "../../src/tasks/open.js";
import { makePackageInParts } from "../../src/tasks/package.js";
import { measureAllFits } from "./fits.js";
import { makeInputs, makeScheduleInputs } from "./jobs.js";
import { measureLayout } from "./layout.js";
import { measureLive } from "./live.js";
import { type Measure, timed } from "./measure.js";
import { measurePage } from "./page.js";
import { measureProbability } from "./probability.js";
import { measureProof } from "./proof.js";
import { measureSheets } from "./sheets.js";
import { measureSolids } from "./solids.js";
import type { Remembered } from "./writer-alone.js";
import { emit, remember } from "./writer-alone.js";

const CUT: readonly OutputKind[] = ["cut-joined", "cut-r12"];
const BASES = 300;
const ROUNDS = 15;
const WARM_UP = 2;
const MANY = 10_000;
const MB = 1024 * 1024;

function options(outputs?: readonly OutputKind[]): BuildOptions {
  const document = newLeanDocument();
  return {
    date: "2026-11-24",
    version: "bench",
    document,
    includeHeld: true,
    startSha256,
    ...(outputs === undefined ? {} : { outputs }),
  };
}

/** Builds a whole job from its text and returns what `take` makes of each base. */
function run<T>(inputs: Inputs, outputs: readonly OutputKind[] | undefined, take: (base: BaseResult) => T): T[] {
  const opened = openJob(inputs, options(outputs));
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings.slice(0, 3)));
  const built = makePackageInParts(numberQuestions(opened.value), options(outputs));
  const taken: T[] = [];
  for (const base of built.bases) taken.push(take(base));
  built.rest();
  return taken;
}

/** Milliseconds of each round, one list a work. */
type Rounds<Name extends string> = Record<Name, readonly number[]>;

/**
 * Milliseconds of some rounds, after two that only warm up; the works take turns, so that a busy machine is as unkind to one
 * as to the other.
 */
function inTurn<Name extends string>(rounds: number, works: Readonly<Record<Name, () => void>>): Rounds<Name> {
  const names = Object.keys(works) as Name[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>;
  for (let round = -WARM_UP; round < rounds; round += 1) {
    for (const name of names) {
      const { milliseconds } = timed(works[name]);
      if (round >= 0) times[name].push(milliseconds);
    }
  }
  return times;
}

const least = (values: readonly number[]): number => Math.min(...values);

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

/** The ratio of every round, as its median and how far the rounds spread. */
function ratioOf(rounds: Rounds<"alone" | "reading" | "whole">, from: "text" | "job"): string {
  const { alone, reading, whole } = rounds;
  const ratios = whole.map((time, i) => (time - (from === "job" ? (reading[i] ?? 0) : 0)) / (alone[i] ?? Number.NaN));
  return `${median(ratios).toFixed(2)} (${least(ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)})`;
}

const countEntities = (files: readonly Remembered[]): number =>
  files.reduce((sum, { entities }) => sum + entities.length, 0);

function measureSpeed(): Measure[] {
  const remembered = run(makeInputs(BASES), CUT, remember).flat();
  const nothing = (): null => null;
  const rounds = inTurn(ROUNDS, {
    alone: () => {
      for (const file of remembered) emit(file);
    },
    reading: () => void readJob(makeInputs(BASES), { date: "2026-11-24", vocabulary }),
    checks: () => void run(makeInputs(BASES), [], nothing),
    whole: () => void run(makeInputs(BASES), CUT, nothing),
  });
  const sheets = inTurn(1, { made: () => void run(makeInputs(BASES), undefined, nothing) }).made;
  const perSecond = (times: readonly number[]): string => `${Math.round((BASES / least(times)) * 1000)} bases/s`;
  const milliseconds = (time: number): string => `${time.toFixed(0)} ms`;
  const entities = countEntities(remembered);
  return [
    {
      what: `dxf-writer alone, the same ${entities} entities from memory`,
      value: milliseconds(least(rounds.alone)),
      aim: "",
    },
    {
      what: "job to both cut files' bytes: checks, read-back and hashes included",
      value: milliseconds(least(rounds.whole) - least(rounds.reading)),
      aim: "",
    },
    { what: "ratio of the two, median of the rounds (least to most)", value: ratioOf(rounds, "job"), aim: "at most 3" },
    { what: "reading the job's YAML before that", value: milliseconds(least(rounds.reading)), aim: "" },
    { what: "ratio with the reading", value: ratioOf(rounds, "text"), aim: "" },
    { what: "reading, checks and ledger rows only", value: perSecond(rounds.checks), aim: "" },
    { what: "reading to cut files, without sheets", value: perSecond(rounds.whole), aim: "" },
    { what: "reading to the whole package, with sheets", value: perSecond(sheets), aim: "" },
  ];
}

/** Prints the peak of the process it is loaded into, in kilobytes, and its processor time in microseconds, as the last line of standard error. */
const TELL_USE = `data:text/javascript,process.on("exit",()=>{const u=process.resourceUsage();process.stderr.write("\\n"+u.maxRSS+" "+(u.userCPUTime+u.systemCPUTime))})`;

interface Run {
  readonly seconds: number;
  readonly processorSeconds: number;
  readonly peak: number;
}

/** The built command as a user runs it, in a process of its own, so that what it takes is its own. */
function runMake({ files }: Inputs): Run {
  const folder = mkdtempSync(join(tmpdir(), "rodplate-bench-"));
  try {
    for (const [name, content] of files) if (!name.includes("/")) writeFileSync(join(folder, name), String(content));
    const start = performance.now();
    const command = [resolve("dist/bin/rodplate.js"), "make", "job.yaml", "--out", "out", "--include-held"];
    const stdio = ["ignore", "ignore", "pipe"] as const;
    const child = spawnSync(process.execPath, ["--import", TELL_USE, ...command], {
      cwd: folder,
      stdio: [...stdio],
      encoding: "utf8",
    });
    if (child.status !== 0 && child.status !== 1) throw new Error(`make ended with ${child.status}: ${child.stderr}`);
    const [peak = NaN, micros = NaN] = (child.stderr.split("\n").at(-1) ?? "").split(" ").map(Number);
    return { seconds: (performance.now() - start) / 1000, processorSeconds: micros / 1e6, peak: peak * 1024 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const PACKAGE = 500;

function measurePackage(): Measure {
  const { seconds, processorSeconds } = runMake(makeInputs(PACKAGE));
  return {
    what: `rodplate make for ${PACKAGE} bases, the whole package with everything (${processorSeconds.toFixed(1)} s of processor time)`,
    value: `${seconds.toFixed(1)} s`,
    aim: "",
  };
}

function measureMemory(): Measure {
  const { seconds, peak } = runMake(makeScheduleInputs(MANY));
  return {
    what: `peak memory of rodplate make for ${MANY} bases in a CSV schedule (${seconds.toFixed(0)} s)`,
    value: `${Math.round(peak / MB)} MB`,
    aim: "under 500 MB",
  };
}

function tableOf(measures: readonly Measure[]): string {
  const machine = `${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} threads, ${Math.round(totalmem() / MB / 1024)} GB, ${process.platform}`;
  const rows = measures.map(({ what, value, aim }) => [what, value, aim]);
  return [
    "# Benchmark",
    "",
    `Node ${process.version} on ${machine}. ${BASES} bases of five kinds, ${ROUNDS} rounds in turn in one process; times are the best of them.`,
    "",
    ...alignedTable([["what", "measured", "aim"], ...rows]),
    "",
  ].join("\n");
}

/** Lines of a table in Markdown, the first row its headings, columns padded to their widest cell. */
function alignedTable(rows: readonly (readonly string[])[]): string[] {
  const [head = []] = rows;
  const widths = head.map((_, column) => Math.max(3, ...rows.map((row) => (row[column] ?? "").length)));
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join(" | ")} |`;
  const rule = line(widths.map((width) => "-".repeat(width)));
  return [line(head), rule, ...rows.slice(1).map(line)];
}

/** `npm run bench -- sheets` prints the rows of the sheets alone, and leaves the results as they are. */
if (process.argv[2] === "sheets") {
  process.stdout.write(tableOf(await measureSheets()));
  process.exit();
}

/** `npm run bench -- live` prints the rows of a job that is edited alone, and leaves the results as they are. */
if (process.argv[2] === "live") {
  process.stdout.write(tableOf([...measureLive()]));
  process.exit();
}

/** `npm run bench -- page` prints the rows of the page in a browser alone, and leaves the results as they are. */
if (process.argv[2] === "page") {
  process.stdout.write(tableOf(await measurePage()));
  process.exit();
}

/** `npm run bench -- solids` prints the rows of solids alone, and leaves the results as they are. */
if (process.argv[2] === "solids") {
  process.stdout.write(tableOf(measureSolids()));
  process.exit();
}

/** `npm run bench -- package` prints the row of a whole package alone, and leaves the results as they are. */
if (process.argv[2] === "package") {
  const { what, value } = measurePackage();
  console.log(`${what}: ${value}`);
  process.exit();
}

/** `npm run bench -- ratio` prints the first rows alone, and leaves the results as they are. */
if (process.argv[2] === "ratio") {
  process.stdout.write(tableOf(measureSpeed()));
  process.exit();
}

const table = tableOf([
  ...measureSpeed(),
  ...(await measureSheets()),
  ...measureLayout(),
  ...measureAllFits(),
  ...measureProbability(),
  ...measureProof(),
  ...measureSolids(),
  ...measureLive(),
  ...(await measurePage()),
  measurePackage(),
  measureMemory(),
]);
writeFileSync("tests/bench/results.md", table);
process.stdout.write(table);
