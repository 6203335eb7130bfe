/** `make` killed at fifty random moments: a whole package, old or new, in DIR or in .DIR.old; the next run puts it right. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { newFolder, packageFaults, readSummary, runProgram, startProgram, writeJob } from "./program.js";

const KILLS = 50;
const LANES = 2;

/** Mulberry32 (public domain, T. Ettinger): the same seed gives the same moments. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const seed = Number(process.env.RODPLATE_SEED ?? Date.now() % 1_000_000);
let folders: string[] = [];
let wholeRun = 0;

beforeAll(() => {
  folders = Array.from({ length: LANES }, () => newFolder());
  for (const folder of folders) {
    for (const revision of ["A", "B"]) writeJob(folder, `${revision}.yaml`, { revision, bases: 4 });
    writeFileSync(join(folder, "faulty.yaml"), "job: 3\n");
    const start = Date.now();
    expect(runProgram(folder, ["make", "A.yaml", "--out", "out"]).status).toBe(0);
    wholeRun = Date.now() - start;
  }
});

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Every second kill waits until the new package is being written, so that writing and renaming are hit often. */
async function killOnce(folder: string, revision: string, random: () => number, late: boolean): Promise<string> {
  const { child, ended } = startProgram(folder, ["make", `${revision}.yaml`, "--out", "out"]);
  let over = false;
  void ended.then(() => {
    over = true;
  });
  if (late) {
    const sign = join(folder, random() < 0.5 ? ".out.new" : ".out.new/B4");
    while (!over && !existsSync(sign)) await pause(1);
    await pause(random() * 40);
  } else await pause(random() * wholeRun * 1.1);
  child.kill("SIGKILL");
  await ended;
  return over ? "ended" : "killed";
}

function wholePackage(folder: string): string {
  const place = existsSync(join(folder, "out")) ? "out" : ".out.old";
  expect(packageFaults(join(folder, place))).toEqual([]);
  return `${place} ${readSummary(join(folder, place)).job.revision}`;
}

async function runLane(folder: string, random: () => number, kills: number): Promise<string[]> {
  const outcomes: string[] = [];
  for (let kill = 0; kill < kills; kill += 1) {
    const before = readSummary(join(folder, "out")).job.revision;
    const revision = before === "A" ? "B" : "A";
    await killOnce(folder, revision, random, kill % 2 === 1);
    const state = wholePackage(folder);
    expect([`out ${before}`, `.out.old ${before}`, `out ${revision}`]).toContain(state);
    outcomes.push(state.replace(before, "old").replace(revision, "new"));
    const { ended } = startProgram(folder, ["make", "faulty.yaml", "--out", "out"]);
    expect(await ended).toBe(2);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(readdirSync(folder).filter((name) => name.startsWith(".out"))).toEqual([]);
  }
  return outcomes;
}

it(`survives ${KILLS} kills (RODPLATE_SEED=${seed})`, { timeout: 400_000 }, async () => {
  const lanes = folders.map((folder, lane) => runLane(folder, randomFrom(seed + lane), KILLS / LANES));
  const outcomes = (await Promise.all(lanes)).flat();
  expect(outcomes).toHaveLength(KILLS);
  expect(outcomes.filter((outcome) => outcome === "out old").length).toBeGreaterThan(0);
  for (const folder of folders) {
    expect(runProgram(folder, ["make", "B.yaml", "--out", "out"]).status).toBe(0);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(readFileSync(join(folder, "out", "ledger.csv"), "utf8")).toContain("washer-cover");
  }
});
