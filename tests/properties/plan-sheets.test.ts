/** Anchor-rod plans of any grid: nothing over text, every placement labelled at most once and always in the table. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { GridLine, Placement } from "../../src/job/index.js";
import { given, missing } from "../../src/job/index.js";
import { drawPlanSheets, type PlanRequest } from "../../src/sheets/index.js";
import type { Scene } from "../../src/sheets/scene.js";
import { inches, millimetres, NM_PER_MM, nanometres } from "../../src/units/index.js";
import { collisionsOf } from "../unit/sheets/collisions.js";
import { placementOf, planCase, planFixture, regularPlan } from "../unit/sheets/plan-cases.js";
import { groupsOf, textsOf, wordsOfTable } from "../unit/sheets/scene-walk.js";

const types = regularPlan(1, 1).job.bases;

/** Lines at gaps of 1.5 m to 12 m, some skewed; bases at some of the crossings, turned and set off. */
const cases = fc.record({
  xs: fc.array(fc.integer({ min: 1500, max: 12_000 }), { minLength: 1, maxLength: 9 }),
  ys: fc.array(fc.integer({ min: 1500, max: 12_000 }), { minLength: 1, maxLength: 7 }),
  skew: fc.option(fc.integer({ min: 5, max: 60 }), { nil: null }),
  every: fc.integer({ min: 1, max: 3 }),
  turns: fc.array(fc.constantFrom(0, 90, 180, 270, 37.5), { minLength: 1, maxLength: 5 }),
  offsets: fc.array(fc.constantFrom(0, 0, 4.5, -12.0625, 0.3333), { minLength: 1, maxLength: 5 }),
  longNames: fc.boolean(),
  held: fc.boolean(),
  released: fc.boolean(),
  north: fc.option(fc.integer({ min: -180, max: 180 }), { nil: null }),
});

type Case = typeof cases extends fc.Arbitrary<infer T> ? T : never;

function requestOf({ xs, ys, skew, every, turns, offsets, longNames, held, released, north }: Case): PlanRequest {
  const at = (gaps: readonly number[], i: number) => millimetres(gaps.slice(0, i).reduce((sum, gap) => sum + gap, 0));
  const name = (prefix: string, i: number) => (longNames ? `${prefix}${i + 1}.75x` : `${prefix}${i + 1}`);
  const columns = xs.map(
    (_, i): GridLine =>
      skew === null
        ? { kind: "x", name: name("", i), at: at(xs, i) }
        : { kind: "skewed", name: name("S", i), through: { x: at(xs, i), y: nanometres(0) }, degrees: 90 - skew },
  );
  const rows = ys.map((_, i): GridLine => ({ kind: "y", name: name("R", i), at: at(ys, i) }));
  const placements = columns
    .flatMap((column) => rows.map((row) => [column.name, row.name] as const))
    .filter((_, i) => i % every === 0)
    .map(([column, row], i): Placement => {
      const offset = inches(offsets[i % offsets.length] ?? 0);
      return placementOf(types[i % types.length]?.mark ?? "B1", [column, row], {
        turn: turns[i % turns.length] ?? 0,
        offset: { x: offset, y: nanometres(0) },
      });
    });
  const trueNorth = north === null ? missing("north", "not given") : given(north, "job");
  const site = planFixture({ lines: [...columns, ...rows], placements, trueNorth });
  const made = planCase(types, site, { status: released ? "released" : "preliminary" });
  return held ? { ...made, held: new Map([["B2", ["a reason"]]]) } : made;
}

interface Drawn {
  readonly made: PlanRequest;
  readonly scenes: readonly Scene[];
}

/** Both properties draw the same plans from the one seed; each is made and drawn once. */
const drawn = new Map<string, Drawn>();

function sheetsOf(each: Case): Drawn {
  const key = JSON.stringify(each);
  const known = drawn.get(key);
  if (known !== undefined) return known;
  const made = requestOf(each);
  const sheets = { made, scenes: drawPlanSheets(made) };
  drawn.set(key, sheets);
  return sheets;
}

describe("any anchor-rod plan", () => {
  it("has nothing over text, and every base in label and table", () => {
    fc.assert(
      fc.property(cases, (each) => {
        const { made, scenes } = sheetsOf(each);
        for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
        const names = scenes.flatMap(({ items }) => groupsOf(items, "placement").map(({ data }) => data.name));
        expect(new Set(names).size).toBe(names.length);
        const table = wordsOfTable(scenes, "placement-table");
        for (const { placement } of made.plan.bases) expect(table).toContain(placement.lines.join(" / "));
        for (const { items } of scenes)
          for (const { text } of textsOf(items)) expect(text).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 20 },
    );
  });

  it("locates every line on some sheet: by dimensions that hang together, and its angle", () => {
    fc.assert(
      fc.property(cases, (each) => {
        const { made, scenes } = sheetsOf(each);
        const { lines } = made.plan.spec;
        const located = scenes.flatMap(({ items }) => groupsOf(items, "line-location")).map(({ data }) => data);
        for (const axis of ["x", "y"] as const) {
          const along = lines.filter(({ kind }) => (axis === "x" ? kind !== "y" : kind === "y"));
          const reached = new Set([along[0]?.name]);
          for (let i = 0; i < along.length; i++)
            for (const { from, to } of located) {
              if (reached.has(String(from))) reached.add(String(to));
              else if (reached.has(String(to))) reached.add(String(from));
            }
          const notes = scenes.flatMap(({ items }) =>
            groupsOf(items, "notes").flatMap(({ items: own }) => textsOf(own)),
          );
          const isTold = notes
            .map(({ text }) => text)
            .join(" ")
            .includes("see the table of grid lines");
          const table = wordsOfTable(scenes, "grid-lines").split(" ");
          for (const { name } of along)
            if (!reached.has(name)) expect(isTold && table.includes(name), JSON.stringify(located)).toBe(true);
        }
        const angles = new Set(
          scenes.flatMap(({ items }) => groupsOf(items, "line-angle")).map(({ data }) => data.name),
        );
        for (const { name, kind } of lines) if (kind === "skewed") expect(angles).toContain(name);
      }),
      { numRuns: 20 },
    );
  });

  it("names every control point, wherever it lies", () => {
    const anywhere = fc.integer({ min: -400_000, max: 400_000 });
    fc.assert(
      fc.property(cases, fc.array(fc.tuple(anywhere, anywhere), { minLength: 1, maxLength: 4 }), (each, places) => {
        const made = requestOf(each);
        const control = places.map(([x, y], i) => ({
          name: `CP${i + 1}`,
          plan: given({ x: millimetres(x), y: millimetres(y) }, "job"),
          northing: nanometres(0),
          easting: nanometres(0),
          elevation: missing("elevation", "not given"),
        }));
        const scenes = drawPlanSheets({ ...made, plan: { ...made.plan, control } });
        for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
        const names = scenes
          .flatMap(({ items }) => groupsOf(items, "control-name"))
          .map(({ data }) => String(data.name));
        const notes = scenes.flatMap(({ items }) => groupsOf(items, "notes").flatMap(({ items: own }) => textsOf(own)));
        const told = notes.map(({ text }) => text).join(" ");
        for (const { name } of control) if (!told.includes(name)) expect(names).toContain(name);
        expect(names.length).toBeGreaterThan(0);
      }),
      { numRuns: 10 },
    );
  });

  it("has dimensions as long as they say", () => {
    fc.assert(
      fc.property(cases, (each) => {
        for (const { items } of sheetsOf(each).scenes)
          for (const view of groupsOf(items, "anchor-rod-plan"))
            for (const { data } of groupsOf(view.items, "dimension")) {
              const onPaper = Math.hypot(Number(data.x1) - Number(data.x0), Number(data.y1) - Number(data.y0));
              expect(onPaper / Number(view.data.scale)).toBeCloseTo(Number(data.valueNm) / NM_PER_MM, 3);
            }
      }),
      { numRuns: 20 },
    );
  });
});
