import { describe, expect, it } from "vitest";
import { washerCover } from "../../../src/checks/rules/washer-cover.js";
import type { Washer } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const COVER = hasClause("A1", "W >=");
const THICK = hasClause("A1", "thickness");

const washer = (shape: Washer["shape"], size: Length) =>
  given({ shape, size, thickness: given(inch(0.5), "job") }, "job");

describe("washer-cover", () => {
  // 2 x 2-1/16 - 1-1/4 = 2-7/8
  testAtLimit({
    name: "a square washer",
    rule: washerCover,
    at: (delta) => ({ group: { washer: washer("square", plus(inch(2.875), delta)) } }),
    passes: 1,
    pick: COVER,
  });

  testAtLimit({
    name: "a round washer",
    rule: washerCover,
    at: (delta) => ({ group: { washer: washer("round", plus(inch(2.875), delta)) } }),
    passes: 1,
    pick: COVER,
  });

  it("gives the figures of the contract's example", () => {
    expect(rowOf(washerCover, {}, COVER)).toMatchObject({
      severity: "ask",
      value: { twice: 2 * inch(3) },
      limit: { twice: 2 * inch(2.875) },
      margin: { twice: 2 * inch(0.125) },
      note: "square washer 3 against 2 x hole 2-1/16 - rod 1-1/4",
    });
  });

  it.each([
    ["hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, "basePlate.hole", 4],
    ["washer", { group: { washer: missing("basePlate.washer", "no washer is given") } }, "basePlate.washer", 8],
  ] as const)("is not checked without a %s", (_, changes, key, count) => {
    const rows = rowsOf(washerCover, changes);
    expect(rows.filter(({ status, note }) => status === "not-checked" && note.includes(key))).toHaveLength(count);
    expect(rows).toHaveLength(8);
  });

  // Whatever the hole, it is no smaller than the rod: 2 x 1-1/4 - 1-1/4.
  it.each([
    [-1, "fail"],
    [0, "not-checked"],
  ])("without a hole fails where the washer is smaller than the rod: %i nm", (delta, status) => {
    const baseHole = missing("basePlate.hole", "no hole is given");
    const row = rowOf(washerCover, { group: { baseHole, washer: washer("round", plus(inch(1.25), delta)) } }, COVER);
    expect(row.status).toBe(status);
    expect(row.note.includes("it fails whatever the hole is")).toBe(status === "fail");
  });
});

/** A rod with a 3 in washer of this thickness. */
const thick = (diameter: Length, thickness: Length): Changes => ({
  rod: { diameter },
  group: { washer: given({ shape: "square", size: inch(3), thickness: given(thickness, "job") } as const, "job") },
});

describe("washer-cover: thickness", () => {
  // Design Guide 1, 2nd ed., Table 2.3: rod and least washer thickness as printed.
  describe.each([
    [3 / 4, 1 / 4],
    [7 / 8, 5 / 16],
    [1, 3 / 8],
    [1 + 1 / 4, 1 / 2],
    [1 + 1 / 2, 1 / 2],
    [1 + 3 / 4, 5 / 8],
    [2, 3 / 4],
    [2 + 1 / 2, 7 / 8],
  ])("rod %d in, Table 2.3: %d in", (diameter, least) => {
    testAtLimit({
      name: "as printed",
      rule: washerCover,
      at: (delta) => thick(inches(diameter), plus(inches(least), delta)),
      passes: 1,
      pick: THICK,
    });
  });

  // A third of the diameter, for rods that the table does not hold: 1-1/8 / 3 = 3/8, M24 / 3 = 8.
  describe.each([
    ["1-1/8 in", inches(1.125), inches(0.375)],
    ["2-1/4 in", inches(2.25), inches(0.75)],
    ["M24", millimetres(24), millimetres(8)],
    ["M36", millimetres(36), millimetres(12)],
  ] as const)("rod %s", (_, diameter, least) => {
    testAtLimit({
      name: "d / 3",
      rule: washerCover,
      at: (delta) => thick(diameter, plus(least, delta)),
      passes: 1,
      pick: THICK,
    });
  });

  // M20 / 3 = 6.666666 mm and two thirds of a nanometre.
  it.each([
    [6_666_666, "fail"],
    [6_666_667, "pass"],
  ])("a third that is no whole nanometre: %d nm", (thickness, status) => {
    expect(rowOf(washerCover, thick(millimetres(20), nanometres(thickness)), THICK).status).toBe(status);
  });

  it("says which of the two it holds", () => {
    expect(rowOf(washerCover, thick(inches(1), inches(0.134)), THICK)).toMatchObject({
      status: "fail",
      severity: "ask",
      clause: "s.2.6, Table 2.3: least washer thickness",
      measured: "the thickness of the washer on the base plate",
      note: "washer 0.134 against Table 2.3 for rod 1",
    });
    expect(rowOf(washerCover, thick(inches(1.125), inches(0.25)), THICK)).toMatchObject({
      status: "fail",
      clause: "s.2.6: washer thickness about d/3",
      note: "washer 1/4 against rod 1-1/8 / 3, the table does not hold the rod",
    });
  });

  it("takes a washer of a table at its thinnest", () => {
    const limits = { least: inch(0.249), greatest: inch(0.26) };
    const table = given({ shape: "round", size: inch(2), thickness: given(inch(0.25), "t"), limits } as const, "t");
    expect(rowOf(washerCover, { rod: { diameter: inch(0.75) }, group: { washer: table } }, THICK)).toMatchObject({
      status: "fail",
      note: "thinnest washer 0.249 against Table 2.3 for rod 3/4",
    });
  });

  // Table 2.3, note 3: 1-1/16 holes for 3/4 rods in plates under 1-1/4 in.
  it.each([
    ["punched", 1.0625, 1.25 - 1e-6, "ASTM F844 wide", "not-applicable"],
    ["a plate of 1-1/4", 1.0625, 1.25, "ASTM F844 wide", "fail"],
    ["a larger hole", 1.125, 1, "ASTM F844 wide", "fail"],
    ["a washer by its size", 1.0625, 1, "job", "fail"],
  ])("takes the plain washer of the table's smaller hole: %s", (_, hole, plate, from, status) => {
    const plain = given({ shape: "round", size: inch(2), thickness: given(inch(0.148), from) } as const, from);
    const row = rowOf(
      washerCover,
      {
        rod: { diameter: inch(0.75) },
        group: { baseHole: given(inch(hole), "job"), washer: plain },
        basePlate: { thickness: given(inches(plate), "job") },
      },
      THICK,
    );
    expect(row.status).toBe(status);
  });
});
