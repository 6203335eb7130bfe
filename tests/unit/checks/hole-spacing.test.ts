import { describe, expect, it } from "vitest";
import { holeSpacing } from "../../../src/checks/rules/hole-spacing.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { inch, isSubject, onLine, plus, rowsOf, testAtLimit } from "./context.js";

const apart = (spacing: number, hole: number, table = 2.0625): Changes => ({
  group: {
    pattern: onLine(0, spacing),
    baseHole: given(inch(hole), "job"),
    tableBaseHole: given(inch(table), "table"),
  },
  template: { outline: { kind: "auto", corner: { kind: "square" } }, opening: { kind: "none" } },
});

describe("hole-spacing", () => {
  testAtLimit({
    name: "a hole of half the spacing: 3 at 6",
    rule: holeSpacing,
    at: (delta) => apart(plus(inch(6), delta), 3),
    passes: 1,
    pick: isSubject("base plate A1-A2"),
  });

  // Holes no larger than the table's leave one rod diameter between them: 2-1/16 + 1-1/4 = 3-5/16.
  testAtLimit({
    name: "a hole by the table",
    rule: holeSpacing,
    at: (delta) => apart(plus(inch(3.3125), delta), 2.0625),
    passes: 1,
    pick: isSubject("base plate A1-A2"),
  });

  testAtLimit({
    name: "a template hole larger than its table's: 2 at 4",
    rule: holeSpacing,
    at: (delta) => {
      const { group, ...others } = apart(plus(inch(4), delta), 2.0625);
      return { ...others, group: { ...group, hole: given(inch(2), "job") } };
    },
    passes: 1,
    pick: isSubject("template A1-A2"),
  });

  it.each([
    ["millimetres", 60, 52, "hole, 52 in where 52 mm is meant?"],
    ["feet", 20, 24, "hole, 2 ft where 2 in is meant?"],
    ["a spacing in millimetres", 12 / 25.4, 2.0625, "spacing, 12 mm where 12 in is meant?"],
  ])("stops and guesses %s", (_name, spacing, hole, words) => {
    const row = rowsOf(holeSpacing, apart(inch(spacing), hole)).find(isSubject("base plate A1-A2"));
    expect(row).toMatchObject({ status: "fail", severity: "stop" });
    expect(row?.note).toContain(words);
  });

  // Design Guide 1, 2nd ed., Table 2.3, base-plate holes: 3/4 in 1-5/16, 1 in 1-13/16, 1-1/2 in 2-5/16, 2 in 3-1/4; ACI 318-19 17.9.2(a): 4 d.
  it.each([
    [0.75, 1.3125],
    [1, 1.8125],
    [1.5, 2.3125],
    [2, 3.25],
  ])("rods of %d in with the table's hole pass at 4 d and at 3 d", (diameter, hole) => {
    for (const times of [3, 4]) {
      const base = apart(inch(times * diameter), hole, hole);
      const rows = rowsOf(holeSpacing, { ...base, rod: { diameter: inch(diameter) as Length } });
      expect(rows.find(isSubject("base plate A1-A2"))?.status).toBe("pass");
    }
  });

  it("has nothing to hold of one rod, and says what is missing of the base plate", () => {
    const one: Changes = { ...apart(inch(6), 2), group: { pattern: onLine(0) } };
    expect(rowsOf(holeSpacing, one).map(({ status }) => status)).toEqual(["not-applicable"]);
    const { group, ...others } = apart(inch(6), 2);
    const rows = rowsOf(holeSpacing, { ...others, group: { ...group, baseHole: missing("basePlate.hole", "none") } });
    expect(rows.map(({ subject, status }) => [subject, status])).toEqual([
      ["template A1-A2", "pass"],
      ["base plate", "not-checked"],
    ]);
  });
});
