import { describe, expect, it } from "vitest";
import { basePlateHole } from "../../../src/checks/rules/base-plate-hole.js";
import { given, missing } from "../../../src/job/model/job.js";
import { jobFixture } from "../../fixture.js";
import { inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const holed = (inches: number) => ({ group: { baseHole: given(inch(inches), "job") } });

describe("base-plate-hole", () => {
  testAtLimit({
    name: "equal to the edition's hole",
    rule: basePlateHole,
    at: (delta) => ({ group: { baseHole: given(plus(inch(2.0625), delta), "job") } }),
    passes: 0,
    pick: isSubject("A1"),
  });

  it.each([
    [2.0625, "2-1/16 is equal to the table's 2-1/16 for rod 1-1/4"],
    [2.125, "2-1/8 is larger by 1/16 than the table's 2-1/16 for rod 1-1/4"],
    [
      1.75,
      "1-3/4 is smaller by 5/16 than the table's 2-1/16 for rod 1-1/4; the table lists the greatest; a smaller hole leaves the rods less room: see placing-clearance",
    ],
  ])("%d in: %s", (hole, note) => {
    expect(rowOf(basePlateHole, holed(hole), isSubject("A1"))).toMatchObject({ note, severity: "ask" });
  });

  // Design Guide 1, 2nd ed., Table 2.3, note 3: 1-1/16 for 3/4 rods in plates under 1-1/4 in, columns in axial compression.
  it.each([
    ["AISC 360-22 C-J9.1", 1.0625, true],
    ["Design Guide 1, 2nd ed.", 1.0625, true],
    ["Design Guide 1, 2nd ed.", 1, false],
    ["Design Guide 1, 2nd ed.", 1.375, false],
  ] as const)("%s, hole %d for rod 3/4: names the second hole of Design Guide 1: %s", (baseHoles, hole, named) => {
    const row = rowOf(
      basePlateHole,
      {
        job: { editions: { ...jobFixture().editions, baseHoles } },
        rod: { size: "3/4", diameter: inch(0.75) },
        group: { baseHole: given(inch(hole), "job"), tableBaseHole: given(inch(1.3125), baseHoles) },
      },
      isSubject("A1"),
    );
    expect(row.status).toBe("fail");
    expect(row.note.includes("Design Guide 1, 2nd ed.: second hole 1-1/16 for plates under 1-1/4 in")).toBe(named);
  });

  it("is not checked without a hole or a table, and names the nearest sizes", () => {
    const table = { tableBaseHole: missing("rods.diameter", "AISC 360-22 C-J9.1 has no 1-1/8; nearest 1, 1-1/4") };
    const rows = rowsOf(basePlateHole, {
      group: { ...table, baseHole: missing("basePlate.hole", "no hole is given") },
    });
    expect(rows).toHaveLength(4);
    expect(rows[0]?.note).toBe(
      "no hole is given (basePlate.hole); AISC 360-22 C-J9.1 has no 1-1/8; nearest 1, 1-1/4 (rods.diameter)",
    );
  });
});
