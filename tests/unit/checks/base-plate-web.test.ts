import { describe, expect, it } from "vitest";
import { basePlateWeb } from "../../../src/checks/rules/base-plate-web.js";
import type { SecondSourceHole } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { EdgeEdition } from "../../../src/standards/index.js";
import { editionsOf } from "../../../src/standards/index.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { groupFixture, jobFixture } from "../../fixture.js";
import type { Changes } from "./context.js";
import { hasClause, inch, onLine, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const by = (edges: EdgeEdition, unit: "in" | "mm" = "in") => ({
  job: { unit, editions: { ...jobFixture().editions, edges } },
});
const two = (spacing: number, hole: Length) => ({ pattern: onLine(0, spacing), baseHole: given(hole, "job") });
const m36 = { size: "M36", diameter: millimetres(36) };
const SPACING = hasClause("A1-A2", "spacing");
const CLEAR = hasClause("A1-A2", "clear distance");

describe("base-plate-web", () => {
  // AISC 360-22 J3.4: 2-2/3 d; d = 1-1/2: 4. A hole of 1-5/8 leaves more than d.
  testAtLimit({
    name: "2-2/3 d from centre to centre",
    rule: basePlateWeb,
    at: (delta) => ({ group: two(inch(4) + delta, inch(1.625)), rod: { size: "1-1/2", diameter: inch(1.5) } }),
    passes: 1,
    pick: SPACING,
  });

  // J3.4: clear distance d; two holes of 2-1/16 for 1-1/4 rods: 3-5/16.
  testAtLimit({
    name: "d clear from hole to hole",
    rule: basePlateWeb,
    at: (delta) => ({ group: two(inch(3.3125) + delta, inch(2.0625)) }),
    passes: 1,
    pick: CLEAR,
  });

  // 2-2/3 of 1-1/4 in is 84 666 666.67 nm: the next whole nanometre holds, the one below does not.
  it("rounds no third of a diameter down", () => {
    const status = (spacing: number) =>
      rowsOf(basePlateWeb, { group: two(spacing, inch(1.375)) }).find(SPACING)?.status;
    expect(status(84_666_667)).toBe("pass");
    expect(status(84_666_666)).toBe("fail");
  });

  testAtLimit({
    name: "AISC 360-05: 2-2/3 d, metric rods",
    rule: basePlateWeb,
    at: (delta) => ({ ...by("AISC 360-05", "mm"), group: two(millimetres(96) + delta, millimetres(42)), rod: m36 }),
    passes: 1,
    pick: SPACING,
  });

  testAtLimit({
    name: "AISC 360-22M: d clear",
    rule: basePlateWeb,
    at: (delta) => ({ ...by("AISC 360-22M", "mm"), group: two(millimetres(102) + delta, millimetres(66)), rod: m36 }),
    passes: 1,
    pick: CLEAR,
  });

  // EN 1993-1-8 Table 3.3: p2 = 2.4 d0; d0 = 42: 100.8.
  testAtLimit({
    name: "EN 1993-1-8: 2.4 d0",
    rule: basePlateWeb,
    at: (delta) => ({
      ...by("EN 1993-1-8:2005", "mm"),
      group: two(millimetres(100.8) + delta, millimetres(42)),
      rod: m36,
    }),
    passes: 1,
    pick: SPACING,
  });

  it("finds two holes of 39 that stand 40 apart, by every edition", () => {
    for (const edition of editionsOf("edges")) {
      const rows = rowsOf(basePlateWeb, {
        ...by(edition, "mm"),
        group: two(millimetres(40), millimetres(39)),
        rod: m36,
      });
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row).toMatchObject({ status: "fail", severity: "ask", edition });
    }
  });

  it("says what is held, and that p2 is the stricter", () => {
    const rows = rowsOf(basePlateWeb, {
      ...by("EN 1993-1-8:2005", "mm"),
      group: two(millimetres(40), millimetres(39)),
      rod: m36,
    });
    expect(rows.map(({ clause, note }) => [clause, note])).toEqual([
      [
        "Table 3.3, spacing",
        "centre to centre, 2.4 d0 of hole 39; p2, the stricter of p1 2.2 d0 and p2 2.4 d0: which holds turns on the load; the clause is of bolts",
      ],
    ]);
    const [, clear] = rowsOf(basePlateWeb, { group: two(inch(4), inch(2.0625)) });
    expect(clear).toMatchObject({ clause: "J3.4, clear distance", edition: "AISC 360-22" });
    expect(clear?.note).toBe("clear between holes 2-1/16 and 2-1/16, d of rod 1-1/4; the clause is of bolts");
  });

  // Rod 2 beside 3/4: 2-2/3 x 2 = 5-1/3; clear 2 + half of 3-1/4 and 1-5/16: 4-9/32.
  it("takes the larger rod of two sizes, each hole of its own", () => {
    const spot = (x: number) => ({ kind: "points", at: [{ x: nanometres(x), y: zero }] }) as const;
    const groups = (spacing: number): Changes => ({
      base: {
        groups: [
          groupFixture({ pattern: spot(0), baseHole: given(inch(3.25), "job") }, { size: "2", diameter: inch(2) }),
          groupFixture(
            { letter: "B", pattern: spot(spacing), baseHole: given(inch(1.3125), "job") },
            { size: "3/4", diameter: inch(0.75) },
          ),
        ],
      },
    });
    const status = (spacing: number, clause: string) =>
      rowsOf(basePlateWeb, groups(spacing)).find(hasClause("A1-B1", clause))?.status;
    expect(status(inch(16) / 3 + 1, "spacing")).toBe("pass");
    expect(status(inch(16) / 3 - 1, "spacing")).toBe("fail");
    expect(status(inch(4.28125), "clear")).toBe("pass");
    expect(status(inch(4.28125) - 1, "clear")).toBe("fail");
  });

  it("holds the holes of the second source where there is one", () => {
    const hole = (x: number, diameter: number | null): SecondSourceHole => ({
      at: { x: nanometres(x), y: zero },
      diameter: diameter === null ? missing("basePlate.pattern", "no size") : given(inch(diameter), "job"),
    });
    const sourced = (holes: readonly SecondSourceHole[]) =>
      rowsOf(basePlateWeb, { group: two(inch(10), inch(2.0625)), basePlate: { pattern: given(holes, "job") } });
    expect(
      sourced([hole(0, 2.0625), hole(inch(3.3125), 2.0625)]).map(({ subject, status }) => [subject, status]),
    ).toEqual([
      ["BP1-BP2", "fail"],
      ["BP1-BP2", "pass"],
    ]);
    expect(sourced([hole(0, 2.0625), hole(inch(10), 8)]).at(-1)).toMatchObject({
      value: { twice: 2 * inch(10 - 5.03125) },
    });
    expect(sourced([hole(0, null), hole(inch(10), null)]).at(-1)).toMatchObject({
      value: { twice: 2 * inch(10 - 2.0625) },
    });
  });

  it("names a base-plate hole that is not given, and holds the spacing all the same", () => {
    const rows = rowsOf(basePlateWeb, {
      group: { pattern: onLine(0, inch(3)), baseHole: missing("basePlate.hole", "no hole is given") },
    });
    expect(rows.map(({ subject, status }) => [subject, status])).toEqual([
      ["A1-A2", "fail"],
      ["A1", "not-checked"],
      ["A2", "not-checked"],
    ]);
  });

  // EN 1993-1-8: a hole is as large as its rod at least, M36: 2.4 x 36 = 86.4.
  it.each([
    [-1, ["not-checked", "not-checked", "fail"]],
    [0, ["not-checked", "not-checked"]],
    [1, ["not-checked", "not-checked"]],
  ])("EN 1993-1-8 without a hole, 2.4 rods apart, %i nm", (delta, statuses) => {
    const rows = rowsOf(basePlateWeb, {
      ...by("EN 1993-1-8:2005", "mm"),
      group: {
        pattern: onLine(0, millimetres(86.4) + delta),
        baseHole: missing("basePlate.hole", "no hole is given"),
      },
      rod: m36,
    });
    expect(rows.map(({ status }) => status)).toEqual(statuses);
    const failed = rows.find(({ status }) => status === "fail");
    if (delta < 0)
      expect(failed?.note).toContain(
        "it fails whatever the hole of A1 and the hole of A2 are: no hole is given (basePlate.hole)",
      );
  });

  // One hole known: 42 beside a rod of 36 whose hole is not: 2.4 x 42 = 100.8 of the larger.
  it("takes the known one of two holes as it is", () => {
    const spot = (x: number) => ({ kind: "points", at: [{ x: nanometres(x), y: zero }] }) as const;
    const rows = (spacing: number) =>
      rowsOf(basePlateWeb, {
        ...by("EN 1993-1-8:2005", "mm"),
        base: {
          groups: [
            groupFixture({ pattern: spot(0), baseHole: given(millimetres(42), "job") }, m36),
            groupFixture({ letter: "B", pattern: spot(spacing), baseHole: missing("groups.baseHole", "none") }, m36),
          ],
        },
      }).map(({ subject, status }) => [subject, status]);
    expect(rows(millimetres(100.8) - 1)).toEqual([
      ["B1", "not-checked"],
      ["A1-B1", "fail"],
    ]);
    expect(rows(millimetres(100.8))).toEqual([["B1", "not-checked"]]);
  });

  it("does not apply to one hole", () => {
    expect(rowsOf(basePlateWeb, { group: { pattern: onLine(0) } })).toMatchObject([
      { subject: "plate", status: "not-applicable" },
    ]);
  });
});
