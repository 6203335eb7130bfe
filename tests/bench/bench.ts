/** Speed and memory, as ratios in one run: prints one table and writes it to tests/bench/results.md. */
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { cpus, totalmem } from "node:os";
import { fileURLToPath } from "node:url";
import { createHTMLWindow } from "svgdom";
import { startSha256 } from "../../src/cli/sha256.js";
import type { BaseResult, BuildOptions, Inputs, OutputKind } from "../../src/index.js";
import { buildInParts } from "../../src/index.js";
import { makeInputs, makeScheduleInputs } from "./jobs.js";
import type { Remembered } from "./writer-alone.js";
import { emit, remember } from "./writer-alone.js";

const CUT: readonly OutputKind[] = ["cut-joined", "cut-r12"];
const BASES = 300;
const ROUNDS = 5;
const MANY = 10_000;
const MB = 1024 * 1024;

function options(outputs?: readonly OutputKind[]): BuildOptions {
  const document = createHTMLWindow().document;
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
  const built = buildInParts(inputs, options(outputs));
  if (built.job === null) throw new Error(JSON.stringify(built.findings.slice(0, 3)));
  const taken: T[] = [];
  for (const base of built.bases) taken.push(take(base));
  built.tail();
  return taken;
}

/** Milliseconds of the fastest of some rounds, after one that only warms up. */
function fastest(rounds: number, work: () => void): number {
  work();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}

const countEntities = (files: readonly Remembered[]): number =>
  files.reduce((sum, { entities }) => sum + entities.length, 0);

interface Measure {
  readonly what: string;
  readonly value: string;
  readonly aim: string;
}

function measureSpeed(): Measure[] {
  const remembered = run(makeInputs(BASES), CUT, remember).flat();
  const nothing = (): null => null;
  const alone = fastest(ROUNDS, () => {
    for (const file of remembered) emit(file);
  });
  const whole = fastest(ROUNDS, () => run(makeInputs(BASES), CUT, nothing));
  const sheets = fastest(1, () => run(makeInputs(BASES), undefined, nothing));
  const checks = fastest(ROUNDS, () => run(makeInputs(BASES), [], nothing));
  const perSecond = (time: number): string => `${Math.round((BASES / time) * 1000)} bases/s`;
  return [
    {
      what: `dxf-writer alone, the same ${countEntities(remembered)} entities from memory`,
      value: `${alone.toFixed(0)} ms`,
      aim: "1",
    },
    {
      what: "job text to both cut files' bytes: checks, read-back and hashes included",
      value: `${whole.toFixed(0)} ms`,
      aim: "",
    },
    { what: "ratio of the two", value: (whole / alone).toFixed(2), aim: "at most 3" },
    { what: "checks and ledger only", value: perSecond(checks), aim: "" },
    { what: "cut files, without sheets", value: perSecond(whole), aim: "" },
    { what: "the whole package, with sheets", value: perSecond(sheets), aim: "" },
  ];
}

function measureMemory(): Measure {
  const child = spawnSync(process.execPath, [fileURLToPath(import.meta.url), "memory"], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (child.status !== 0) throw new Error(`the memory run ended with ${child.status ?? child.signal}`);
  const { maxRSS, seconds } = JSON.parse(child.stdout) as { maxRSS: number; seconds: number };
  return {
    what: `peak memory of a job of ${MANY} bases (CSV schedule), every file made (${seconds.toFixed(0)} s)`,
    value: `${Math.round(maxRSS / MB)} MB`,
    aim: "under 500 MB",
  };
}

/** In a process of its own, so that its peak is its own. `maxRSS` is in kilobytes there. */
function runMany(): void {
  const start = performance.now();
  let bytes = 0;
  run(makeScheduleInputs(MANY), undefined, ({ files }) => {
    for (const file of files) bytes += file.bytes.length;
  });
  const seconds = (performance.now() - start) / 1000;
  process.stdout.write(JSON.stringify({ maxRSS: process.resourceUsage().maxRSS * 1024, seconds, bytes }));
}

function tableOf(measures: readonly Measure[]): string {
  const machine = `${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} threads, ${Math.round(totalmem() / MB / 1024)} GB, ${process.platform}`;
  const rows = measures.map(({ what, value, aim }) => `| ${what} | ${value} | ${aim} |`);
  return [
    "# Benchmark",
    "",
    `Node ${process.version} on ${machine}. ${BASES} bases of five kinds, best of ${ROUNDS} rounds in one process.`,
    "",
    "| what | measured | aim |",
    "|---|---|---|",
    ...rows,
    "",
  ].join("\n");
}

if (process.argv[2] === "memory") runMany();
else {
  const table = tableOf([...measureSpeed(), measureMemory()]);
  writeFileSync("tests/bench/results.md", table);
  process.stdout.write(table);
}
