/** Points to set out: their names, and the coordinate systems they are known in. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coordinateSystems, LONGEST_NAME, settingOutPoints } from "../../../src/plan/setting-out-points.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { controlPoint, gridLines, placementAt, planJob } from "../../setting-out-plan.js";

const metres = (value: number) => nanometres(value * 1e9);
const namesOf = (changes: Parameters<typeof planJob>[0], bases?: Parameters<typeof planJob>[1]): string[] =>
  settingOutPoints(planJob(changes, bases).plan).map(({ name }) => name);

describe("site coordinates", () => {
  const transform = { kind: "origin", northing: metres(5000), easting: metres(2000), bearing: 90 } as const;

  it("are there only where plan and site are tied", () => {
    expect(coordinateSystems(planJob().plan)).toEqual(["local"]);
    expect(coordinateSystems(planJob({ transform }).plan)).toEqual(["local", "site"]);
  });
});

describe("many placements", () => {
  it("are named without a limit: 40,000 bases of 4 rods", () => {
    const many = Array.from({ length: 40_000 }, (_, i) =>
      placementAt(["A", "1"], { offset: { x: inches(i), y: inches(0) } }),
    );
    const { plan } = planJob({ placements: [placementAt(["A", "1"])] });
    const [base] = plan.bases;
    if (base === undefined) throw new Error("no base");
    const bases = many.map((placement) => ({ ...base, placement }));
    expect(settingOutPoints({ ...plan, bases })).toHaveLength(40_000 * 5);
  });
});

describe("point names", () => {
  it("two bases at one crossing are told apart", () => {
    const two = [placementAt(["A", "1"]), placementAt(["A", "1"], { offset: { x: inches(60), y: inches(0) } })];
    expect(namesOf({ placements: two }).filter((name) => /_(A1|C)$/.test(name))).toEqual([
      "A-1_A1",
      "A-1_2_A1",
      "A-1_C",
      "A-1_2_C",
    ]);
  });

  it("a prime becomes p; a name that leaves no room for the tag becomes the number of its placement", () => {
    const lines = [
      ...gridLines,
      { kind: "x", name: "A'", at: inches(100) } as const,
      { kind: "x", name: "NORTH-WING-A", at: inches(200) } as const,
    ];
    const placements = [placementAt(["A'", "1"]), placementAt(["NORTH-WING-A", "1"])];
    expect(namesOf({ lines, placements }).filter((name) => name.endsWith("_A1"))).toEqual(["Ap-1_A1", "P2_A1"]);
  });

  it("descriptions keep line A apart from line A', however the prime is typed", () => {
    const words = (name: string): readonly string[] => {
      const lines = [...gridLines, { kind: "x", name, at: inches(100) } as const];
      const placements = [placementAt(["A", "1"]), placementAt([name, "1"])];
      return settingOutPoints(planJob({ lines, placements }).plan).map(({ description }) => description);
    };
    for (const prime of ["A'", "A\u2032", "A\u2019"])
      expect(words(prime).filter((text) => / A1 /.test(text))).toEqual(["ROD B1 A-1 A1 1-1/4", "ROD B1 Ap-1 A1 1-1/4"]);
    expect(words('A"')).toContain("ROD B1 App-1 A1 1-1/4");
  });

  it("a control point does not take the name of a rod", () => {
    const control = [controlPoint("a-1_c", metres(1), metres(1)), controlPoint("A-1_A1", metres(1), metres(1))];
    expect(namesOf({ control }).slice(-2)).toEqual(["a-1c", "A-1A1"]);
    const twins = [controlPoint("CP 1", metres(1), metres(1)), controlPoint("CP1", metres(2), metres(1))];
    expect(namesOf({ control: twins }).slice(-2)).toEqual(["CP1", "CP2"]);
  });

  it("are unique whatever the case, short and of plain signs, whatever the grid is called", () => {
    const lineName = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(
        fc.uniqueArray(lineName, { minLength: 2, maxLength: 8 }),
        fc.array(lineName, { maxLength: 3 }),
        (names, points) => {
          const [row = "", ...columns] = names;
          const xs = columns.map((name, index) => ({ kind: "x", name, at: inches(120 * index) }) as const);
          const lines = [...xs, { kind: "y", name: row, at: inches(0) } as const];
          const placements = [...columns, ...columns].map((name, index) =>
            placementAt([name, row], { offset: { x: inches(0), y: inches(index < columns.length ? 0 : 60) } }),
          );
          const control = points.map((name) => controlPoint(name, metres(1), metres(2)));
          const found = namesOf({ lines, placements, control });
          expect(new Set(found.map((name) => name.toUpperCase())).size).toBe(found.length);
          for (const name of found) expect(name).toMatch(/^[A-Za-z0-9][A-Za-z0-9._-]*$/);
          for (const name of found) expect(name.length).toBeLessThanOrEqual(LONGEST_NAME);
        },
      ),
      { numRuns: 100 },
    );
  });
});
