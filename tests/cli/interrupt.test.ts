/**
 * `make` killed at twenty random moments, over packages of the same and of other revisions: a whole package, old or new, in DIR or
 * in .DIR.old; every revision that was replaced and a file that somebody added are there all the time; the next `make` puts all right.
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { drawFrom, SEED } from "../seed.js";
import {
  filesIn,
  newFolder,
  packageFaults,
  readSummary,
  runProcess,
  runProgram,
  startProcess,
  writeJob,
} from "./program.js";

const KILLS = 20;
const LANES = 2;
const SCAN = "scan.pdf";

/** Jobs by what tells their packages apart: the revision and the number of bases. */
const JOBS = [
  { name: "A1", revision: "A", bases: 1 },
  { name: "A2", revision: "A", bases: 2 },
  { name: "B1", revision: "B", bases: 1 },
] as const;
type JobName = (typeof JOBS)[number]["name"];

let folders: string[] = [];
let wholeRun = 0;

beforeAll(() => {
  folders = Array.from({ length: LANES }, () => newFolder());
  for (const folder of folders) {
    for (const { name, revision, bases } of JOBS) writeJob(folder, `${name}.yaml`, { revision, bases });
    writeFileSync(join(folder, "faulty.yaml"), "job: 3\n");
    const start = Date.now();
    expect(runProcess(folder, ["make", "A1.yaml", "--out", "out"]).status).toBe(0);
    wholeRun = Date.now() - start;
    writeFileSync(join(folder, "out", SCAN), "signed");
  }
});

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const leftovers = (folder: string): string[] => readdirSync(folder).filter((name) => name.startsWith(".out"));

/** The folder in which the new package is written; undefined: it is not begun, or in place. */
const freshIn = (folder: string, before: readonly string[]): string | undefined =>
  leftovers(folder).find((name) => name.startsWith(".out.new-") && !before.includes(name));

/** Every second kill waits until the new package is being written, so that writing and renaming are hit often. Exit code; null: killed. */
async function killOnce(folder: string, job: JobName, random: () => number, late: boolean): Promise<number | null> {
  const before = leftovers(folder);
  const { child, ended } = startProcess(folder, ["make", `${job}.yaml`, "--out", "out"]);
  let over = false;
  void ended.then(() => {
    over = true;
  });
  if (late) {
    const inside = random() < 0.5 ? "" : "sheets";
    const isBegun = (): boolean => {
      const fresh = freshIn(folder, before);
      return fresh !== undefined && existsSync(join(folder, fresh, inside));
    };
    while (!over && !isBegun()) await pause(1);
    await pause(random() * 40);
  } else await pause(random() * wholeRun * 1.1);
  child.kill("SIGKILL");
  return ended;
}

function nameOf(folder: string): JobName {
  const { job, bases } = readSummary(folder);
  const found = JOBS.find(({ revision, bases: count }) => revision === job.revision && count === bases.length);
  if (found === undefined) throw new Error(`${folder} is of no job`);
  return found.name;
}

function wholePackage(folder: string): { readonly place: string; readonly job: JobName } {
  const place = existsSync(join(folder, "out")) ? "out" : ".out.old";
  expect(packageFaults(join(folder, place), [SCAN])).toEqual([]);
  return { place, job: nameOf(join(folder, place)) };
}

/** The packages that were replaced by another revision and are kept, each whole, in a fixed order. */
function keptPackages(folder: string): JobName[] {
  const places = ["out", ".out.old"].flatMap((place) => {
    const shelf = join(folder, place, "superseded");
    return existsSync(shelf) ? readdirSync(shelf).map((name) => join(shelf, name)) : [];
  });
  const current = existsSync(join(folder, "out")) ? join(folder, "out") : join(folder, ".out.old");
  const replaced = join(folder, ".out.old");
  if (current !== replaced && existsSync(replaced) && isOther(current, replaced)) places.push(replaced);
  return places.map((place) => {
    expect(packageFaults(place, [SCAN])).toEqual([]);
    return nameOf(place);
  });
}

const isOther = (a: string, b: string): boolean => readSummary(a).job.revision !== readSummary(b).job.revision;

/** A job at fault writes nothing and removes nothing; what an earlier run left is put back into DIR all the same. */
async function putBack(folder: string, job: JobName): Promise<void> {
  expect((await runProgram(folder, ["make", "faulty.yaml", "--out", "out"])).status).toBe(2);
  expect(wholePackage(folder)).toEqual({ place: "out", job });
}

const revisionOf = (job: JobName): string => job.slice(0, 1);

/** The next `make` finds what the kill left, and is killed itself; after every fifth kill one with a faulty job puts DIR back. */
async function runLane(folder: string, random: () => number, kills: number): Promise<string[]> {
  const outcomes: string[] = [];
  const kept: JobName[] = [];
  let before: JobName = "A1";
  for (let kill = 0; kill < kills; kill += 1) {
    const others = JOBS.filter(({ name }) => name !== before);
    const next = others[random() < 0.5 ? 0 : 1]?.name ?? "A1";
    const code = await killOnce(folder, next, random, kill % 2 === 1);
    const state = wholePackage(folder);
    expect([`out ${before}`, `.out.old ${before}`, `out ${next}`]).toContain(`${state.place} ${state.job}`);
    if (state.job !== before && revisionOf(state.job) !== revisionOf(before)) kept.push(before);
    expect(keptPackages(folder).sort()).toEqual([...kept].sort());
    const scans = filesIn(folder).filter((path) => path.endsWith(SCAN));
    expect(scans.map((path) => readFileSync(join(folder, path), "utf8"))).toEqual(["signed"]);
    if (code !== null) expect([code, state, leftovers(folder)]).toEqual([0, { place: "out", job: next }, []]);
    outcomes.push(`${state.place} ${state.job === before ? "old" : "new"}`);
    before = state.job;
    if (kill % 5 === 4) await putBack(folder, before);
  }
  return outcomes;
}

it(`survives ${KILLS} kills (RODPLATE_SEED=${SEED})`, { timeout: 400_000 }, async () => {
  const lanes = folders.map((folder, lane) => runLane(folder, drawFrom(lane), KILLS / LANES));
  const outcomes = (await Promise.all(lanes)).flat();
  expect(outcomes).toHaveLength(KILLS);
  expect(outcomes.filter((outcome) => outcome === "out old").length).toBeGreaterThan(0);
  for (const folder of folders) {
    expect(runProcess(folder, ["make", "B1.yaml", "--out", "out"]).status).toBe(0);
    expect([packageFaults(join(folder, "out"), [SCAN]), leftovers(folder)]).toEqual([[], []]);
    expect(readFileSync(join(folder, "out", "engineer", "ledger.csv"), "utf8")).toContain("washer-cover");
  }
});
