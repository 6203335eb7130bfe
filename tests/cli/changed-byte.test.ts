/**
 * One bit of one byte of a package is changed, in a file of every kind that this program writes: `proof PACKAGE` finds it. Jobs of
 * several kinds, so that every kind of the registry is made. Invented data.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { everyOutput } from "../../src/outputs/index.js";
import { filesIn, newFolder, readSummary, runProgram, writeJob } from "./program.js";

const folder = newFolder();
const run = (line: string) => runProgram(folder, line.split(" "));
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);

const HEAD = 'job: { number: "26-9", title: Depot, revision: A, status: released, date: 2026-11-24 }\n';

/** A layout with control points; boards that are drilled, and a washer that is too small, which is asked about. */
const LAYOUT = `${HEAD}units: mm
rules: metric
shop: plasma-metric
grid: { x: { names: [A, B], at: [0, 6000] }, y: { names: [1], at: [0] } }
placements: [{ base: B1, at: A-1 }, { base: B2, at: B-1 }]
settingOut: { unit: m }
control: [{ point: CP1, northing: 5000, easting: 2000, plan: [0, 0] }, { point: CP2, northing: 5000, easting: 2006, plan: [6000, 0] }]
bases:
  - { mark: B1, rods: { diameter: M20 }, pattern: { kind: rectangle, x: 200, y: 200 }, template: { material: plywood, thickness: 18 } }
  - { mark: B2, rods: { diameter: M20, grade: 5.6, projection: 160, embedment: 400, bottom: nut, threads: 120, bottomThreads: 60 }, pattern: { kind: rectangle, x: 200, y: 200 }, basePlate: { x: 400, y: 400, thickness: 25, hole: 40, washer: { shape: square, size: 45, thickness: 8 } }, template: { thickness: 6, height: 80 } }
`;

/** A ring in segments with splice plates, and a lower template; what is held is cut all the same. */
const PIECES = `${HEAD}units: in
rules: us
shop: plasma
bases:
  - { mark: B1, rods: { diameter: 1-1/4, bottom: nut, embedment: 30 }, pattern: { kind: circle, diameter: 80, count: 8, start: straddle }, template: { mark: T1, thickness: 3/8, key: none, outline: { kind: ring, outer: 90, inner: 70 }, segments: 2 } }
  - { mark: B2, rods: { diameter: 1, bottom: nut, embedment: 24 }, pattern: { kind: rectangle, x: 12, y: 10 }, concrete: { x: 30, y: 30 }, template: { mark: T2, thickness: 1/4, support: form, outline: { kind: rectangle, x: 16, y: 14 }, lower: { above: 6 } } }
`;

/** A schedule in somebody's own headings. */
const SCHEDULE = `${HEAD}units: in\nrules: us\nshop: plasma\nschedule: s.csv\n`;
const SHEET = 'Base,No. Req\'d,Anchor Rod Dia,Pattern,Gage X,Gage Y,Template Thk\nB1,2,1",rectangle,12,10,1/4"\n';

write("layout.yaml", LAYOUT);
write("pieces.yaml", PIECES);
write("schedule.yaml", SCHEDULE);
write("s.csv", SHEET);
writeJob(folder, "plain.yaml", { bases: 1 });

const JOBS = ["plain", "layout", "pieces", "schedule"] as const;

/** Kinds that were changed in some package. */
const changed = new Set<string>();
afterAll(() => expect(everyOutput.map(({ kind }) => kind).filter((kind) => !changed.has(kind))).toEqual([]));

/** One file of each kind, of held bases and of others, and the summary, which lists all but itself. */
function filesByKind(name: string): ReadonlyMap<string, string> {
  const { bases, files } = readSummary(join(folder, name));
  const ofBases = bases.flatMap((base) =>
    base.files.map((file) => ({ ...file, held: base.held ? " of a held base" : "" })),
  );
  const all = [...ofBases, ...files.map((file) => ({ ...file, held: "" }))];
  return new Map([...all.map(({ kind, held, path }) => [kind + held, path] as const), ["summary", "summary.json"]]);
}

/** What proof ends with when a bit of this byte is turned; the file is put back. */
async function endOfChange(path: string, placeIn: (bytes: Buffer) => number, name: string): Promise<string> {
  const bytes = readFileSync(path);
  const place = placeIn(bytes);
  const flipped = Buffer.from(bytes);
  flipped[place] = (flipped[place] ?? 0) ^ 1;
  writeFileSync(path, flipped);
  const { status, stdout, stderr } = await run(`proof ${name}`);
  writeFileSync(path, bytes);
  return status > 0 && /another hash|seal|JSON|STOP/.test(stdout + stderr) ? "found" : `byte ${place}: ${status}`;
}

/** The first byte, one in the middle, the last. */
const PLACES: readonly ((bytes: Buffer) => number)[] = [
  () => 0,
  ({ length }) => Math.floor(length / 2),
  ({ length }) => length - 1,
];

describe.each(JOBS)("the package of a job (%s)", (name) => {
  it("is as it was checked, and a changed byte is found in each kind of file", { timeout: 240_000 }, async () => {
    await run(`make ${name}.yaml --out ${name} --include-held`);
    expect(filesIn(join(folder, name)).length).toBeGreaterThan(15);
    const whole = await run(`proof ${name}`);
    expect([whole.status, whole.stderr]).toEqual([0, ""]);
    // at three places in the first package; then at one, in turn, of each kind that was in no package before
    const fresh = [...filesByKind(name)].filter(([kind]) => !changed.has(kind));
    for (const [at, [kind, path]] of fresh.entries()) {
      for (const placeIn of name === "plain" ? PLACES : PLACES.slice(at % PLACES.length).slice(0, 1))
        expect([kind, await endOfChange(join(folder, name, path), placeIn, name)]).toEqual([kind, "found"]);
      changed.add(kind);
    }
    expect((await run(`proof ${name}`)).status).toBe(0);
  });
});
