/** Washers against base-plate holes, over whole published tables. */
import { describe, expect, it } from "vitest";
import { basePlateHole } from "../../../src/checks/rules/base-plate-hole.js";
import { washerCover } from "../../../src/checks/rules/washer-cover.js";
import { given } from "../../../src/job/model/job.js";
import { findBaseHole } from "../../../src/standards/index.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres } from "../../../src/units/index.js";
import type { Changes } from "../../unit/checks/context.js";
import { hasClause, inch, isSubject, rowOf } from "../../unit/checks/context.js";

const A1 = hasClause("A1", "W >=");
const THICKNESS = hasClause("A1", "thickness");

function rod(size: string, diameter: Length, hole: Length, washer: Length): Changes {
  const thickness = given(inch(0.25), "table");
  return {
    group: { baseHole: given(hole, "table"), washer: given({ shape: "round", size: washer, thickness }, "table") },
    rod: { size, diameter },
  };
}

describe("AISC Design Guide 1, 2nd ed. (2006), Table 2.3: the washer covers the hole with the rod at its edge (s.2.6)", () => {
  // Rod, hole, least washer as printed; the last column is W - (2 H - d), worked out by hand.
  it.each([
    ["3/4", 0.75, 1.3125, 2, 0.125],
    ["7/8", 0.875, 1.5625, 2.5, 0.25],
    ["1", 1, 1.8125, 3, 0.375],
    ["1-1/4", 1.25, 2.0625, 3, 0.125],
    ["1-1/2", 1.5, 2.3125, 3.5, 0.375],
    ["1-3/4", 1.75, 2.75, 4, 0.25],
    ["2", 2, 3.25, 5, 0.5],
    ["2-1/2", 2.5, 3.75, 5.5, 0.5],
  ])("rod %s in", (size, diameter, hole, washer, spare) => {
    const row = rowOf(washerCover, rod(size, inch(diameter), inch(hole), inch(washer)), A1);
    expect(row).toMatchObject({ status: "pass", margin: { kind: "length", twice: 2 * inch(spare) } });
    // A washer one size down, 1/2 in, leaves every hole of the table open but that of the two largest rods.
    const smaller = rowOf(washerCover, rod(size, inch(diameter), inch(hole), inch(washer - 0.5)), A1);
    expect(smaller.status).toBe(spare < 0.5 ? "fail" : "pass");
    expect(findBaseHole("Design Guide 1, 2nd ed.", inch(diameter))).toMatchObject({
      found: true,
      row: { hole: inch(hole) },
    });
  });
});

describe("Steel Construction New Zealand, FAQ 'Connections', 2016-02-11, Table 1 (after ASI Design Guide 7 and DG1)", () => {
  // Its note 1: washers cover the entire hole with the bolt at its edge; note 6: holes up to d + 6 mm.
  it.each([
    ["M16", 16, 22, 50],
    ["M20", 20, 26, 50],
    ["M24", 24, 30, 75],
    ["M30", 30, 36, 75],
    ["M36", 36, 42, 90],
  ])("%s", (size, diameter, hole, washer) => {
    const changes = rod(size, millimetres(diameter), millimetres(hole), millimetres(washer));
    expect(rowOf(washerCover, changes, A1).status).toBe("pass");
    const table = findBaseHole("d + 6 mm", millimetres(diameter));
    if (!table.found) throw new Error(`no hole for ${size}`);
    const tabled = { ...changes, group: { ...changes.group, tableBaseHole: given(table.row.hole, "d + 6 mm") } };
    expect(rowOf(basePlateHole, tabled, isSubject("A1")).status).toBe("pass");
  });
});

/** The rod with a washer of this thickness that is wide enough. */
function thick(diameter: Length, thickness: Length): Changes {
  const washer = given({ shape: "round", size: inch(6), thickness: given(thickness, "table") } as const, "table");
  return { group: { washer }, rod: { diameter } };
}

describe("AISC Design Guide 1, 2nd ed. (2006), Table 2.3: least washer thickness, about a third of the rod (s.2.6)", () => {
  it.each([
    ["3/4", 0.75, 0.25],
    ["7/8", 0.875, 0.3125],
    ["1", 1, 0.375],
    ["1-1/4", 1.25, 0.5],
    ["1-1/2", 1.5, 0.5],
    ["1-3/4", 1.75, 0.625],
    ["2", 2, 0.75],
    ["2-1/2", 2.5, 0.875],
  ])("rod %s in", (_, diameter, thickness) => {
    const statusOf = (value: number) => rowOf(washerCover, thick(inch(diameter), inch(value)), THICKNESS).status;
    expect(statusOf(thickness)).toBe("pass");
    expect(statusOf(thickness - 1 / 16)).toBe("fail");
    expect(thickness / diameter).toBeGreaterThanOrEqual(1 / 3);
  });
});

// Its M20 washer, 6 mm, is thinner than d/3: the row asks, the engineer decides.
describe("Steel Construction New Zealand, same table: washer thickness in mm", () => {
  it.each([
    ["M16", 16, 6, "pass"],
    ["M20", 20, 6, "fail"],
    ["M24", 24, 10, "pass"],
    ["M30", 30, 12, "pass"],
    ["M36", 36, 12, "pass"],
  ])("%s", (_, diameter, thickness, status) => {
    const row = rowOf(washerCover, thick(millimetres(diameter), millimetres(thickness)), THICKNESS);
    expect([row.status, row.severity]).toEqual([status, "ask"]);
  });
});
