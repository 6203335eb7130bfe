import { describe, expect, it } from "vitest";
import { placingClearance } from "../../../src/checks/rules/placing-clearance.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { PlacingEdition } from "../../../src/standards/index.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres } from "../../../src/units/index.js";
import { groupFixture, jobFixture } from "../../fixture.js";
import { inch, isSubject, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const placing = (edition: PlacingEdition) => ({ editions: { ...jobFixture().editions, placing: edition } });
const holed = (hole: Length) => ({ group: { baseHole: given(hole, "job") } });
const metric = { size: "M30", diameter: millimetres(30) };

describe("placing-clearance", () => {
  testAtLimit({
    name: "ACI 117-10: 3/8 in each way for 1-1/4",
    rule: placingClearance,
    at: (delta) => holed(plus(inch(2), delta)),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "AISC 303-22, by diameter",
    rule: placingClearance,
    at: (delta) => ({ job: placing("AISC 303-22"), ...holed(plus(inch(2), delta)) }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "AISC 303-10: 1/8 in between two rods, the sum of two radial clearances",
    rule: placingClearance,
    at: (delta) => ({ job: placing("AISC 303-10"), ...holed(plus(inch(1.375), delta)) }),
    passes: 1,
    pick: isSubject("A1-A4"),
  });

  // Fixed bolts, Table D.2.20: 3 mm; hole 36 for M30.
  testAtLimit({
    name: "EN 1090-2, fixed bolts",
    rule: placingClearance,
    at: (delta) => ({
      job: placing("EN 1090-2:2008"),
      group: { baseHole: given(plus(millimetres(36), delta), "job") },
      rod: metric,
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  it("names how EN 1090-2 takes the bolts, and never adds play", () => {
    const changes = { job: placing("EN 1090-2:2008"), group: { baseHole: given(millimetres(36), "job") }, rod: metric };
    expect(rowOf(placingClearance, changes, isSubject("A1")).note).toContain("fixed (non-adjustable) bolts");
    const loose = { group: { baseHole: given(inch(2), "job"), hole: given(inch(1.75), "job") } };
    expect(rowOf(placingClearance, loose, isSubject("A1"))).toMatchObject({ status: "pass", margin: { twice: 0 } });
  });

  it("sums two different clearances by a spacing edition", () => {
    const groups = [
      groupFixture({ pattern: onLine(0), baseHole: given(inch(1.3125), "job") }),
      groupFixture({ letter: "B", pattern: onLine(inch(8)), baseHole: given(inch(1.4375), "job") }),
    ];
    const rows = rowsOf(placingClearance, { job: placing("AISC 303-10"), base: { groups } });
    expect(rows).toMatchObject([{ subject: "A1-B1", status: "pass", margin: { twice: 0 }, clause: "7.5.1(a)" }]);
  });

  it("is not checked without a hole or a tabulated tolerance", () => {
    const rows = rowsOf(placingClearance, { group: { baseHole: missing("basePlate.hole", "no hole is given") } });
    expect(rows).toHaveLength(4);
    expect(rows[0]?.note).toContain("basePlate.hole");
    const small = rowsOf(placingClearance, { rod: { size: "1/2", diameter: inch(0.5) } });
    expect(small[0]).toMatchObject({ status: "not-checked", severity: "ask" });
    expect(small[0]?.note).toContain("nearest: 3/4, 7/8");
  });

  it("does not apply to a single rod by a spacing edition", () => {
    const rows = rowsOf(placingClearance, { job: placing("AISC 303-10"), group: { pattern: onLine(0) } });
    expect(rows.map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  describe("of a setting plate over cast rods", () => {
    const over = { template: { use: "setting plate over cast rods" } } as const;
    const plate = (hole: Length, baseHole: Length = inch(2.0625)) => ({
      ...over,
      group: { hole: given(hole, "job"), baseHole: given(baseHole, "job") },
    });

    testAtLimit({
      name: "ACI 117-10: 3/8 in each way for 1-1/4",
      rule: placingClearance,
      at: (delta) => plate(plus(inch(2), delta)),
      passes: 1,
      pick: isSubject("A1-setting-plate"),
    });

    // EN 1090-2, fixed bolts: 3 mm; M24 in 26 takes 1, in 30 it takes 3.
    it.each([
      [26, "fail"],
      [29.999, "fail"],
      [30, "pass"],
    ] as const)("EN 1090-2: M24 in a hole of %d mm", (hole, status) => {
      const changes = {
        ...plate(millimetres(hole), millimetres(30)),
        job: { unit: "mm", ...placing("EN 1090-2:2008") },
        rod: { size: "M24", diameter: millimetres(24) },
      } as const;
      expect(rowOf(placingClearance, changes, isSubject("A1"))).toMatchObject({ status: "pass" });
      const row = rowOf(placingClearance, changes, isSubject("A1-setting-plate"));
      expect(row).toMatchObject({ status, severity: "ask" });
      expect(row.note).toContain("setting plate over rods as cast");
    });

    it("by a spacing edition takes two clearances together", () => {
      const changes = (hole: Length) => ({ ...plate(hole), job: placing("AISC 303-10") });
      const status = (hole: Length) => rowOf(placingClearance, changes(hole), isSubject("A1-A4-setting-plate")).status;
      expect(status(inch(1.375))).toBe("pass");
      expect(status(plus(inch(1.375), -1))).toBe("fail");
    });

    it("is held even where the base plate's hole is not known, and never for a template that held the rods", () => {
      const changes = {
        ...over,
        group: { hole: given(inch(1.5), "job"), baseHole: missing("basePlate.hole", "none") },
      };
      expect(rowOf(placingClearance, changes, isSubject("A1-setting-plate")).status).toBe("fail");
      for (const use of ["template", "template left as setting plate"] as const) {
        const subjects = rowsOf(placingClearance, { template: { use } }).map(({ subject }) => subject);
        expect(subjects).toEqual(["A1", "A2", "A3", "A4"]);
      }
    });
  });
});
