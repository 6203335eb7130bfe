/** `make` of a job large enough for threads: the same package with any number of them, and none where one of them fails. */
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import type * as Threads from "../../src/cli/base-threads.js";
import { threadsFor } from "../../src/cli/base-threads.js";
import { loadInputs } from "../../src/cli/load.js";
import type * as Run from "../../src/cli/run.js";
import type { Output, Shell } from "../../src/cli/shell.js";
import { openJob } from "../../src/tasks/open.js";
import type { ShapedBase } from "../../src/template/index.js";
import { filesIn, newFolder, startProcess, writeJob } from "./program.js";

/** As it is compiled: a thread is opened from a file. */
const BUILT = fileURLToPath(new URL("../../dist/cli", import.meta.url));

const BASES = 40;
const ANSWER =
  'answers:\n  - { mark: B3, rule: template-in-form, by: "An engineer", date: 2026-11-24, text: "The form is cut out." }\n';

let folder: string;
beforeAll(() => {
  folder = newFolder();
  writeJob(folder, "job.yaml", { bases: BASES, held: true });
  writeJob(folder, "few.yaml");
  writeFileSync(join(folder, "shared.yaml"), sharedJob());
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Four bases more, each on the template of another; their washers are asked about; an answer, and one that nothing asks for. */
function sharedJob(): string {
  const text = readFileSync(join(folder, "job.yaml"), "utf8").replaceAll("size: 3,", "size: 1-3/4,");
  const [head = "", bases = ""] = text.split("bases:\n");
  const again = bases
    .split(/^(?= {2}- mark)/m)
    .slice(0, 4)
    .join("")
    .replace(/mark: B(\d+)/g, "mark: C$1");
  return `${head}merge: auto\n${ANSWER}bases:\n${bases}${again}`;
}

interface Made {
  readonly status: number;
  readonly out: string;
}

function shellOf(texts: string[], processors: number): Shell {
  const stream: Output = {
    ...{ isTerminal: false, columns: undefined, refusal: null },
    write: async (text) => void texts.push(Buffer.from(text).toString()),
  };
  const around = { environment: {}, currentFolder: folder, out: stream, err: stream };
  return { ...around, processors, now: () => Date.UTC(2026, 10, 24) };
}

async function make(job: string, dir: string, processors: number): Promise<Made> {
  const { runProgram }: typeof Run = await import(pathToFileURL(join(BUILT, "run.js")).href);
  const texts: string[] = [];
  const args = ["make", job, "--out", dir, "--all", "--paper", "a4"];
  const status = await runProgram(args, shellOf(texts, processors));
  return { status, out: texts.join("").replaceAll(dir, "DIR") };
}

it("makes the same bytes and says the same with one thread and with two", async () => {
  const [alone, two] = [await make("shared.yaml", "by-1", 1), await make("shared.yaml", "by-2", 2)];
  expect(alone.status).toBe(1);
  expect(two).toEqual(alone);
  const paths = filesIn(join(folder, "by-1"));
  expect(paths.length).toBeGreaterThan(BASES);
  expect(filesIn(join(folder, "by-2"))).toEqual(paths);
  const bytesOf = (dir: string, path: string): Buffer => readFileSync(join(folder, dir, path));
  expect(paths.filter((path) => !bytesOf("by-2", path).equals(bytesOf("by-1", path)))).toEqual([]);
  const sheets = paths.filter((path) => path.startsWith("sheets/") && path.endsWith("_sheet.svg"));
  expect(sheets.filter((path) => bytesOf("by-2", path).includes("QUESTION OPEN: Q-1")).length).toBeGreaterThan(35);
});

it("hands on what a thread throws, and ends", async () => {
  const inputs = await loadInputs("few.yaml", shellOf([], 1));
  const opened = inputs.ok ? openJob(inputs.value, { date: "2026-11-24" }) : inputs;
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const [good, bad] = opened.value.bases;
  if (good === undefined || bad === undefined) throw new Error("two bases");
  const broken = { ...opened.value, bases: [good, { ...bad, rods: [] }] };
  const { makeInThreads, startThreads }: typeof Threads = await import(
    pathToFileURL(join(BUILT, "base-threads.js")).href
  );
  const made: string[] = [];
  const go = async (): Promise<void> => {
    for await (const { mark } of makeInThreads(broken, { version: "0", inSet: false }, startThreads(2)))
      made.push(mark);
  };
  await expect(go()).rejects.toThrow(Error);
  expect(made).toEqual(["B1"]);
});

it("killed while threads work, leaves no package and nothing beside it", async () => {
  const { child, ended } = startProcess(folder, ["make", "job.yaml", "--out", "killed"]);
  const fresh = (): string | undefined => readdirSync(folder).find((name) => name.startsWith(".killed.new-"));
  const isBegun = (): boolean => readdirSync(join(folder, fresh() ?? "killed-none")).length > 4;
  while (fresh() === undefined || !isBegun()) await pause(1);
  child.kill("SIGINT");
  expect(await ended).toBe(130);
  expect(readdirSync(folder).filter((name) => name.includes("killed"))).toEqual([]);
});

it("starts none for a small job or a very large one, nor where there is one processor, nor more than four", () => {
  const bases = (count: number): readonly ShapedBase[] =>
    Array.from({ length: count }, (_, i) => ({ base: { template: { mark: `B${i}` } } }) as ShapedBase);
  expect([39, 40, 4000, 4001].map((count) => threadsFor(bases(count), 2))).toEqual([0, 2, 2, 0]);
  expect([1, 2, 3, 16].map((processors) => threadsFor(bases(100), processors))).toEqual([0, 2, 3, 4]);
});
