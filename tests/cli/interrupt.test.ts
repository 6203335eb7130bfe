/** `make` killed at fifty random moments: a whole package, old or new, in DIR or in .DIR.old; the next `make` puts it right. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { drawFrom, SEED } from "../seed.js";
import { newFolder, packageFaults, readSummary, runProcess, runProgram, startProcess, writeJob } from "./program.js";

const KILLS = 50;
const LANES = 2;

let folders: string[] = [];
let wholeRun = 0;

beforeAll(() => {
  folders = Array.from({ length: LANES }, () => newFolder());
  for (const folder of folders) {
    for (const revision of ["A", "B"]) writeJob(folder, `${revision}.yaml`, { revision, bases: 4 });
    writeFileSync(join(folder, "faulty.yaml"), "job: 3\n");
    const start = Date.now();
    expect(runProcess(folder, ["make", "A.yaml", "--out", "out"]).status).toBe(0);
    wholeRun = Date.now() - start;
  }
});

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Every second kill waits until the new package is being written, so that writing and renaming are hit often. Exit code; null: killed. */
async function killOnce(folder: string, revision: string, random: () => number, late: boolean): Promise<number | null> {
  const { child, ended } = startProcess(folder, ["make", `${revision}.yaml`, "--out", "out"]);
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
  return ended;
}

const leftovers = (folder: string): string[] => readdirSync(folder).filter((name) => name.startsWith(".out"));

function wholePackage(folder: string): { readonly place: string; readonly revision: string } {
  const place = existsSync(join(folder, "out")) ? "out" : ".out.old";
  expect(packageFaults(join(folder, place))).toEqual([]);
  return { place, revision: readSummary(join(folder, place)).job.revision };
}

/** A job at fault writes nothing; what an earlier run left is put right before it is read. */
async function putRight(folder: string, revision: string): Promise<void> {
  expect((await runProgram(folder, ["make", "faulty.yaml", "--out", "out"])).status).toBe(2);
  expect(wholePackage(folder)).toEqual({ place: "out", revision });
  expect(leftovers(folder)).toEqual([]);
}

/** The next `make` finds what the kill left, and is killed itself; after every fifth kill one runs to its end. */
async function runLane(folder: string, random: () => number, kills: number): Promise<string[]> {
  const outcomes: string[] = [];
  let before = "A";
  for (let kill = 0; kill < kills; kill += 1) {
    const revision = before === "A" ? "B" : "A";
    const code = await killOnce(folder, revision, random, kill % 2 === 1);
    const state = wholePackage(folder);
    expect([`out ${before}`, `.out.old ${before}`, `out ${revision}`]).toContain(`${state.place} ${state.revision}`);
    if (code !== null) expect([code, state, leftovers(folder)]).toEqual([0, { place: "out", revision }, []]);
    outcomes.push(`${state.place} ${state.revision === before ? "old" : "new"}`);
    before = state.revision;
    if (kill % 5 === 4) await putRight(folder, before);
  }
  return outcomes;
}

it(`survives ${KILLS} kills (RODPLATE_SEED=${SEED})`, { timeout: 400_000 }, async () => {
  const lanes = folders.map((folder, lane) => runLane(folder, drawFrom(lane), KILLS / LANES));
  const outcomes = (await Promise.all(lanes)).flat();
  expect(outcomes).toHaveLength(KILLS);
  expect(outcomes.filter((outcome) => outcome === "out old").length).toBeGreaterThan(0);
  for (const folder of folders) {
    expect(runProcess(folder, ["make", "B.yaml", "--out", "out"]).status).toBe(0);
    expect([packageFaults(join(folder, "out")), leftovers(folder)]).toEqual([[], []]);
    expect(readFileSync(join(folder, "out", "ledger.csv"), "utf8")).toContain("washer-cover");
  }
});
