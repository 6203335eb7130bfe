/** Published worked examples, one describe each; the source stands in its name, and "from memory" where no copy was at hand. */
import { describe, expect, it } from "vitest";
import { basePlateEdge } from "../../../src/checks/rules/base-plate-edge.js";
import { placingClearance } from "../../../src/checks/rules/placing-clearance.js";
import { rodCount } from "../../../src/checks/rules/rod-count.js";
import { rodCover } from "../../../src/checks/rules/rod-cover.js";
import { rodSpacing } from "../../../src/checks/rules/rod-spacing.js";
import { washerOnPlate } from "../../../src/checks/rules/washer-on-plate.js";
import type { PlanShape } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import type { Changes } from "../../unit/checks/context.js";
import { hasClause, inch, isSubject, rowOf, rowsOf } from "../../unit/checks/context.js";

const rect = (x: Length, y: Length): PlanShape => ({ kind: "rectangle", x, y, corner: { kind: "square" } });
const pattern = (x: Length, y: Length) => ({ kind: "rectangle", x, y, nx: 2, ny: 2, perimeter: false }) as const;
const round = (size: Length) =>
  given({ shape: "round", size, thickness: given(inch(0.375), "example") } as const, "example");
const editions = (changes: object) => ({ editions: { ...jobFixture().editions, ...changes } });

describe("AISC Design Guide 1, 3rd ed. (2024), Example 4.7-9: plate 28 x 12, 1 in rods at 24 x 6, hole 1-7/8, washer 3", () => {
  const changes: Changes = {
    group: { pattern: pattern(inch(24), inch(6)), baseHole: given(inch(1.875), "example"), washer: round(inch(3)) },
    rod: { size: "1", diameter: inch(1) },
    basePlate: { shape: given(rect(inch(28), inch(12)), "example"), thickness: given(inch(1.5), "example") },
  };

  it.each(["A1", "A2", "A3", "A4"])("%s: edge 2.0, reach 1.9375, passes by 1/16", (tag) => {
    expect(rowOf(washerOnPlate, changes, isSubject(tag))).toMatchObject({
      status: "pass",
      value: { twice: 2 * inch(2) },
      limit: { twice: 2 * inch(1.9375) },
      margin: { twice: 2 * inch(0.0625) },
    });
  });

  it("edge 3.0 the other way: the plate 2 in longer is held by that edge", () => {
    const longer = { ...changes, basePlate: { shape: given(rect(inch(32), inch(12)), "example") } };
    expect(rowOf(washerOnPlate, longer, isSubject("A1"))).toMatchObject({ value: { twice: 2 * inch(3) } });
  });
});

describe("built from AISC Design Guide 1, 3rd ed. (2024), Example 4.7-14: plate 14 x 14, 7/8 in rods at 11, hole 1-9/16, washer 2-1/2", () => {
  it("reach 1.594 is more than 1-1/2: fails", () => {
    const changes: Changes = {
      group: {
        pattern: pattern(inch(11), inch(11)),
        baseHole: given(inch(1.5625), "example"),
        washer: round(inch(2.5)),
      },
      rod: { size: "7/8", diameter: inch(0.875) },
      basePlate: { shape: given(rect(inch(14), inch(14)), "example") },
    };
    const row = rowOf(washerOnPlate, changes, isSubject("A1"));
    expect(row).toMatchObject({ status: "fail", value: { twice: 2 * inch(1.5) }, limit: { twice: 2 * inch(1.59375) } });
  });
});

describe("ASCC Position Statement 14 (holes after AISC) and ACI 117-10, 2.3.4.2: holes take rods that are off by the tolerance", () => {
  // Rod, AISC hole, tolerance, spare radial clearance. The 1-3/4 in rod meets its tolerance exactly.
  it.each([
    ["3/4", 0.75, 1.3125, 1 / 4, 1 / 32],
    ["7/8", 0.875, 1.5625, 1 / 4, 3 / 32],
    ["1", 1, 1.8125, 3 / 8, 1 / 32],
    ["1-1/4", 1.25, 2.0625, 3 / 8, 1 / 32],
    ["1-1/2", 1.5, 2.3125, 3 / 8, 1 / 32],
    ["1-3/4", 1.75, 2.75, 1 / 2, 0],
    ["2", 2, 3.25, 1 / 2, 1 / 8],
    ["2-1/2", 2.5, 3.75, 1 / 2, 1 / 8],
  ])("rod %s", (size, diameter, hole, tolerance, spare) => {
    const changes = { group: { baseHole: given(inch(hole), "table") }, rod: { size, diameter: inch(diameter) } };
    expect(rowOf(placingClearance, changes, isSubject("A1"))).toMatchObject({
      status: "pass",
      limit: { twice: 2 * inch(tolerance) },
      margin: { twice: 2 * inch(spare) },
    });
  });
});

describe("Portland Cement Association, Notes on ACI 318-08, ch. 34, single headed bolt near an edge (from memory)", () => {
  // A 1/2 in bolt, 1-3/4 in from the edge, exposed to weather: cover exactly 1-1/2 in, the least for bars up to No. 5.
  const changes: Changes = {
    group: { pattern: { kind: "points", at: [{ x: inch(0), y: inch(0) }] } },
    rod: { size: "1/2", diameter: inch(0.5) },
    concrete: { shape: given(rect(inch(3.5), inch(24)), "example") },
  };

  it("the shank meets the least cover exactly", () => {
    expect(rowOf(rodCover, changes, hasClause("A1", "beside the rod"))).toMatchObject({
      status: "pass",
      value: { twice: 2 * inch(1.5) },
      limit: { twice: 2 * inch(1.5) },
      margin: { twice: 0 },
    });
  });

  it("the head has less", () => {
    expect(rowOf(rodCover, changes, hasClause("A1", "bottom")).status).toBe("fail");
  });
});

describe("anchor design sheet after PIP STE05121, App. A Table 1, and ACI 318-11: bolt lines 6.00 in apart, least 4.00 in", () => {
  // As quoted on a secondary page (calculation sheet with s1 = s2 = 6.00 against 4.00, OK); 4.00 in is 4 d of a 1 in bolt.
  it("both bolt lines pass with 2 in to spare", () => {
    const changes: Changes = {
      job: editions({ concrete: "ACI 318-11" }),
      group: { pattern: pattern(inch(6), inch(6)) },
      rod: { size: "1", diameter: inch(1) },
    };
    const rows = rowsOf(rodSpacing, changes);
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) {
      expect(row).toMatchObject({ status: "pass", value: { twice: 2 * inch(6) }, limit: { twice: 2 * inch(4) } });
    }
  });
});

describe("AISC Design Guide 1, 2nd ed. (2006): four 3/4 in rods on a 4 x 4 in pattern for typical columns (29 CFR 1926.755)", () => {
  const changes: Changes = {
    group: { pattern: pattern(inch(4), inch(4)) },
    rod: { size: "3/4", diameter: inch(0.75) },
  };

  it("are enough rods, and 4 d = 3 in apart with 1 in to spare", () => {
    expect(rowsOf(rodCount, changes)).toMatchObject([{ status: "pass", margin: { kind: "count", count: 0 } }]);
    const spacings = rowsOf(rodSpacing, changes).map(({ status, margin }) => ({ status, margin }));
    expect(new Set(spacings.map((row) => JSON.stringify(row)))).toEqual(
      new Set([JSON.stringify({ status: "pass", margin: { kind: "length", twice: 2 * inch(1) } })]),
    );
  });

  it("by AISC 303-10 the 1-5/16 in holes take the 1/8 in between rods: 9/16 in together", () => {
    const holed = {
      ...changes,
      job: editions({ placing: "AISC 303-10" }),
      group: { ...changes.group, baseHole: given(inch(1.3125), "table") },
    };
    expect(rowsOf(placingClearance, holed)[0]).toMatchObject({ status: "pass", value: { twice: 2 * inch(0.5625) } });
  });
});

describe("Brockenbrough and Merritt, Structural Steel Designer's Handbook, 4th ed. (2006), Table 5.13: least edge, thermal-cut, mm", () => {
  // Bolt, least edge as printed; standard holes of AISC 360 Table J3.3M, so that no C2 is added.
  it.each([
    ["M16", 16, 18, 22],
    ["M20", 20, 22, 26],
    ["M22", 22, 24, 28],
    ["M24", 24, 27, 30],
    ["M27", 27, 30, 34],
    ["M30", 30, 33, 38],
    ["M36", 36, 39, 46],
    ["M42", 42, 45, 52.5],
  ])("%s", (size, diameter, hole, least) => {
    const side = millimetres(2 * least);
    const changes: Changes = {
      job: editions({ edges: "AISC 360-22M" }),
      group: {
        pattern: { kind: "points", at: [{ x: inch(0), y: inch(0) }] },
        baseHole: given(millimetres(hole), "table"),
      },
      rod: { size, diameter: millimetres(diameter) },
      basePlate: { shape: given(rect(side, side), "example") },
    };
    expect(rowOf(basePlateEdge, changes, isSubject("A1"))).toMatchObject({ status: "pass", margin: { twice: 0 } });
  });
});

describe("EN 1993-1-8 Table 3.3 in textbook form: e = 1.2 d0 with the normal holes of EN 1090-2 (common textbook values, from memory)", () => {
  it.each([
    ["M16", 16, 18, 21.6],
    ["M20", 20, 22, 26.4],
    ["M24", 24, 26, 31.2],
    ["M30", 30, 33, 39.6],
  ])("%s", (size, diameter, hole, least) => {
    const changes: Changes = {
      job: editions({ edges: "EN 1993-1-8:2005" }),
      group: { baseHole: given(millimetres(hole), "table") },
      rod: { size, diameter: millimetres(diameter) },
    };
    expect(rowOf(basePlateEdge, changes, isSubject("A1"))).toMatchObject({ limit: { twice: 2 * millimetres(least) } });
  });
});
