import { describe, expect, it } from "vitest";
import { templateHole } from "../../../src/checks/rules/template-hole.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { contextOf, hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const AGAINST_TABLE = hasClause("A1", "template hole");
const AS_CUT = hasClause("A1", "as cut");
const IN_BASE_PLATE = hasClause("A1", "h <= H");

describe("template-hole", () => {
  testAtLimit({
    name: "equal to the table's hole",
    rule: templateHole,
    at: (delta) => ({ group: { hole: given(plus(inch(1.3125), delta), "job") } }),
    passes: 0,
    pick: AGAINST_TABLE,
  });

  // Class 1, 6.35 mm plate, 10 to 35 mm: 0.30 mm (ISO 9013:2017); taper 0.2 mm: the least hole is 1-1/4 + 0.007 in + 0.50 mm.
  testAtLimit({
    name: "as cut by ISO 9013 and the shop's taper",
    rule: templateHole,
    at: (delta) => ({ group: { hole: given(plus(inch(1.257), millimetres(0.5) + delta), "job") } }),
    passes: 1,
    pick: AS_CUT,
  });

  // Range 2: u = 0.15 + 0.007 a; a = 6 mm gives 0.192 mm, twice that on the diameter.
  testAtLimit({
    name: "as cut by the shop's deviation and an ISO 9013 range",
    rule: templateHole,
    at: (delta) => ({
      shop: { deviation: { kind: "own", value: millimetres(0.1) }, taper: { kind: "iso9013", range: 2 } },
      template: { thickness: millimetres(6) },
      group: { hole: given(plus(inch(1.257), millimetres(0.484) + delta), "job") },
    }),
    passes: 1,
    pick: AS_CUT,
  });

  testAtLimit({
    name: "not larger than the base plate's hole",
    rule: templateHole,
    at: (delta) => ({ group: { hole: given(plus(inch(2.0625), delta), "job") } }),
    passes: -1,
    pick: IN_BASE_PLATE,
  });

  // The drilled hole takes the shop's own figure of drilled holes, 0.4 mm in this shop, and no taper; 1/64 in of a drilling shop.
  testAtLimit({
    name: "drilled in plywood by a shop that cuts: its figure of drilled holes",
    rule: templateHole,
    at: (delta) => ({
      template: { material: "plywood" },
      group: { hole: given(plus(inch(1.257), millimetres(0.4) + delta), "job") },
    }),
    passes: 1,
    pick: AS_CUT,
  });

  testAtLimit({
    name: "drilled by a shop that drills, 1/64 in, metric rod",
    rule: templateHole,
    at: (delta) => ({
      shop: {
        process: "drill",
        drilled: given(inch(1 / 64), "shop test"),
        taper: { kind: "own", value: nanometres(0) },
      },
      rod: { size: "M30", diameter: millimetres(30), zincGrowth: given(nanometres(0), "plain rod") },
      group: { hole: given(plus(millimetres(30), inch(1 / 64) + delta), "job") },
    }),
    passes: 1,
    pick: AS_CUT,
  });

  testAtLimit({
    name: "a hole too small to cut, made as a drill mark",
    rule: templateHole,
    at: (delta) => ({
      template: { thickness: inch(1) },
      group: { hole: given(plus(inch(1.257), millimetres(0.4) + delta), "job") },
    }),
    passes: 1,
    pick: (row) => AS_CUT(row) && row.note.includes("drilled"),
  });

  testAtLimit({
    name: "a taper that the drilling shop gives",
    rule: templateHole,
    at: (delta) => ({
      shop: { process: "drill", drilled: given(millimetres(0.4), "shop test") },
      group: { hole: given(plus(inch(1.257), millimetres(0.6) + delta), "job") },
    }),
    passes: 1,
    pick: AS_CUT,
  });

  describe.each([
    [
      "the deviation of a drilled hole",
      { drilled: missing("cut.drilled of the shop file", "none is given") },
      {},
      0.007,
    ],
    ["the finish", {}, { zincGrowth: missing("rods.finish", "no finish is given") }, 0],
  ] as const)("where %s is not known", (_, drilled, rod, zinc) => {
    const shop = { process: "drill", ...drilled, taper: { kind: "own", value: nanometres(0) } } as const;
    const known = "drilled" in drilled ? 0 : millimetres(0.4);
    it.each([
      [-1, "fail"],
      [0, "not-checked"],
      [1, "not-checked"],
    ])("what fails without it fails: limit %i nm, %s", (delta, status) => {
      const hole = given(plus(inch(1.25 + zinc), known + delta), "job");
      const row = rowOf(templateHole, { shop, rod, group: { hole } }, AS_CUT);
      expect(row).toMatchObject({ status, severity: "stop" });
      expect(row.note).toMatch(/given \((cut\.drilled of the shop file|rods\.finish)\)$/);
    });
  });

  testAtLimit({
    name: "a plate over cast rods takes the base plate's hole",
    rule: templateHole,
    at: (delta) => ({
      template: { use: "setting plate over cast rods" },
      group: { hole: given(plus(inch(2.0625), delta), "job") },
    }),
    passes: 0,
    pick: hasClause("A1", "set over cast rods"),
  });

  it("advises a departure, and stops what does not pass", () => {
    const severities = rowsOf(templateHole).map(({ severity }) => severity);
    expect(severities).toEqual([...Array(4).fill("advise"), ...Array(8).fill("stop")]);
  });

  it("gives the reason of a departure and figures to follow by hand", () => {
    const changes = { group: { hole: given(inch(1.375), "job") } };
    expect(rowOf(templateHole, changes, AGAINST_TABLE).note).toBe(
      "1-3/8 (job) departs from 1-5/16 (Design Guide 1, 2nd ed., s.2.9) for rod 1-1/4",
    );
    expect(rowOf(templateHole, {}, AS_CUT).note).toBe(
      "1-5/16 - 0.0118 deviation (shop's choice: ISO 9013 class 1) - 0.0079 taper (shop) against 1-1/4 + 0.007 zinc",
    );
  });

  it.each([
    [
      "no table",
      { group: { tableHole: missing("rods.diameter", "no table holds it; nearest 1, 1-1/4") } },
      AGAINST_TABLE,
    ],
    ["no finish", { rod: { zincGrowth: missing("rods.finish", "no finish is given") } }, AS_CUT],
    ["no base-plate hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, IN_BASE_PLATE],
  ] as const)("is not checked with %s, and names the key", (_, changes, pick) => {
    const row = rowOf(templateHole, changes, pick);
    expect(row.status).toBe("not-checked");
    expect(row.note).toMatch(/\((rods|basePlate)\.\w+\)(; the hole is 1-5\/16: Design Guide 1, 2nd ed., s.2.9)?$/);
    expect(row.value).toBeNull();
  });

  // ISO 9013 limits parts with cuts of 350 mm and more (from memory): its class is the shop's choice for a hole.
  it.each([
    ["shop, after ISO 9013:2017", { deviation: { kind: "iso9013", class: 1 } }],
    ["shop", { deviation: { kind: "own", value: millimetres(0.3) } }],
    ["shop", { process: "drill" }],
  ] as const)("as cut it is held by %s", (edition, shop) => {
    expect(rowOf(templateHole, { shop }, AS_CUT).edition).toBe(edition);
  });

  it("names the nearest ranges where ISO 9013 has none", () => {
    const context = { template: { thickness: inch(5) }, group: { hole: given(inch(8), "job") } };
    const row = rowOf(templateHole, context, AS_CUT);
    expect(row.status).toBe("not-checked");
    expect(row.note).toContain("nearest");
  });

  it("says what a plain rod is", () => {
    const changes = { rod: { finish: given("plain" as const, "job"), zincGrowth: given(nanometres(0), "job") } };
    expect(rowOf(templateHole, changes, AS_CUT).note).toMatch(/against 1-1\/4, plain$/);
    expect(contextOf().rods).toHaveLength(4);
  });

  // As cut it loses 0.3 mm (ISO 9013 class 1) and 0.2 mm: smaller than the bare rod it fails whatever zinc adds.
  it.each([
    [-1, "fail"],
    [0, "not-checked"],
    [1, "not-checked"],
  ])("without a finish: as large as the bare rod as cut, %i nm", (delta, status) => {
    const hole = plus(inch(1.25), millimetres(0.5) + delta);
    const zincGrowth = missing("rods.finish", "no finish is given");
    const row = rowOf(templateHole, { group: { hole: given(hole, "job") }, rod: { zincGrowth } }, AS_CUT);
    expect([row.status, row.severity]).toEqual([status, "stop"]);
    expect(row.note.includes("it fails whatever the growth by zinc is: no finish is given (rods.finish)")).toBe(
      delta < 0,
    );
  });

  // Rod 1-1/4: 2-1/16 in the base plate by AISC 360-22 Table C-J9.1, 1-5/16 in the template by Design Guide 1.
  it.each([
    [2.0625, given(inch(2.0625), "job"), true],
    [2.0625, missing("basePlate.hole", "none"), true],
    [2, given(inch(2.0625), "job"), false],
    [1.3125, given(inch(1.3125), "job"), false],
  ] as const)("guesses the wrong column: a hole of %d, case %#", (hole, baseHole, guessed) => {
    const row = rowsOf(templateHole, { group: { hole: given(inch(hole), "job"), baseHole } }).find(AGAINST_TABLE);
    expect(row?.note.includes("typed in the wrong column?")).toBe(guessed);
  });
});
