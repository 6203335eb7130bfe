import { describe, expect, it } from "vitest";
import type { CheckRow, RuleId } from "../../../src/checks/index.js";
import { isAsking, runChecks } from "../../../src/checks/index.js";
import { projection } from "../../../src/checks/rules/projection.js";
import type { Washer } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import type { Changes } from "./context.js";
import { contextOf, hasClause, inch, plus, questionText, rowOf, rowsOf, testAtLimit } from "./context.js";

const SPECIFIED = hasClause("A1", "from the specified");
const LOW = hasClause("A1", "set low");
const THREAD = (row: { readonly subject: string; readonly clause: string }) =>
  row.subject === "A1" && row.clause.startsWith("thread") && !row.clause.includes("high");
const THREAD_HIGH = hasClause("A1", "set high");
/** 1-1/2 grout + 1-1/2 plate + 1/2 washer + 1.251 nut */
const stack = inch(4.751);
const projecting = (length: number) => ({ projection: given(plus(stack, length), "job") });
const threaded = (length: number, delta: number) => ({ threadLength: given(plus(nanometres(length), delta), "job") });
const left = { use: "template left as setting plate" } as const;
const metric = { ...jobFixture().editions, placing: "EN 1090-2:2008" } as const;

/** An F436 washer of a 1-1/4 in rod: 0.136 to 0.177 in thick. */
const hardened: Washer = {
  shape: "round",
  size: inch(2.5),
  thickness: given(inch(0.177), "ASTM F436"),
  limits: { least: inch(0.136), greatest: inch(0.177) },
};

/** A base in millimetres: grout 40, plate 30, washer 8, nut 19, projection 180. */
function inMillimetres(rod: NonNullable<Changes["rod"]> = {}): Changes {
  const mm = (length: number) => given(millimetres(length), "job");
  return {
    job: { unit: "mm", editions: metric },
    base: { grout: mm(40) },
    basePlate: { thickness: mm(30) },
    group: { washer: given({ shape: "round", size: millimetres(56), thickness: mm(8) } as const, "job") },
    rod: {
      nut: given({ kind: "hex", acrossCorners: millimetres(40), height: millimetres(19) } as const, "test"),
      projection: mm(180),
      threadLength: mm(150),
      ...rod,
    },
  };
}

describe("projection", () => {
  testAtLimit({
    name: "grout, base plate, washer, nut",
    rule: projection,
    at: (delta) => ({ rod: projecting(delta) }),
    passes: 1,
    pick: SPECIFIED,
  });

  // Two nuts, one on the other: 4.751 and another 1.251.
  testAtLimit({
    name: "and a second nut on the first",
    rule: projection,
    at: (delta) => ({ rod: { ...projecting(inch(1.251) + delta), topNuts: given(2, "job") } }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "and stick-out",
    rule: projection,
    at: (delta) => ({ rod: { ...projecting(inch(0.25) + delta), stickOut: given(inch(0.25), "job") } }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "a template left in place joins the stack",
    rule: projection,
    at: (delta) => ({ template: left, rod: projecting(inch(0.25) + delta) }),
    passes: 1,
    pick: SPECIFIED,
  });

  // 4.751 - 0.5 + 0.177
  testAtLimit({
    name: "a washer of a table at its greatest",
    rule: projection,
    at: (delta) => ({
      group: { washer: given(hardened, "ASTM F436") },
      rod: { projection: given(plus(inch(4.428), delta), "job") },
    }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "the rod 1/2 in low, ACI 117-10 2.3.4.1",
    rule: projection,
    at: (delta) => ({ rod: projecting(inch(0.5) + delta) }),
    passes: 1,
    pick: LOW,
  });

  testAtLimit({
    name: "the rod 5 mm low, EN 1090-2",
    rule: projection,
    at: (delta) => ({ job: { editions: metric }, rod: projecting(millimetres(5) + delta) }),
    passes: 1,
    pick: LOW,
  });

  // 40 + 30 + 8 + 19 = 97 mm
  testAtLimit({
    name: "the stack in millimetres",
    rule: projection,
    at: (delta) => inMillimetres({ projection: given(plus(millimetres(97), delta), "job") }),
    passes: 1,
    pick: SPECIFIED,
  });

  it("names the edition of the tolerance where it is used", () => {
    expect(rowOf(projection, {}, SPECIFIED).edition).toBe("geometry");
    expect(rowOf(projection, {}, LOW).edition).toBe("ACI 117-10");
    expect(rowOf(projection, {}, THREAD_HIGH).edition).toBe("ACI 117-10");
  });

  it("writes the stack", () => {
    expect(rowOf(projection, {}, SPECIFIED).note).toBe(
      "projection 9 against grout 1-1/2 + base plate 1-1/2 + washer 1/2 + nut 1.251 + stick-out 0",
    );
  });

  it.each([
    ["projection", { rod: { projection: missing("rods.projection", "none given") } }, "rods.projection", 16],
    ["grout", { base: { grout: missing("grout", "none given") } }, "(grout)", 16],
    [
      "base plate",
      { basePlate: { thickness: missing("basePlate.thickness", "none given") } },
      "basePlate.thickness",
      16,
    ],
    ["nut", { rod: { nut: missing("rods.nut", "none tabulated") } }, "rods.nut", 8],
    ["washer", { group: { washer: missing("basePlate.washer", "none given") } }, "basePlate.washer", 16],
    ["stick-out", { rod: { stickOut: missing("rods.stickOut", "none given") } }, "rods.stickOut", 8],
    ["thread", { rod: { threadLength: missing("rods.threads", "none given") } }, "rods.threads", 8],
  ] as const)("is not checked without %s", (_, changes, key, count) => {
    const rows = rowsOf(projection, changes);
    expect(rows).toHaveLength(16);
    const open = rows.filter(({ status, note, severity }) => {
      return status === "not-checked" && note.includes(key) && severity === "ask";
    });
    expect(open).toHaveLength(count);
  });
});

describe("projection: thread for the top nut", () => {
  // 9 - 1-1/2 - 1-1/2 - 1/2 = 5-1/2
  testAtLimit({
    name: "down to the washer",
    rule: projection,
    at: (delta) => ({ rod: threaded(inch(5.5), delta) }),
    passes: 1,
    pick: THREAD,
  });

  // 5-1/2 - 1/4
  testAtLimit({
    name: "less a setting plate that stays",
    rule: projection,
    at: (delta) => ({ template: left, rod: threaded(inch(5.25), delta) }),
    passes: 1,
    pick: THREAD,
  });

  // 9 - 1-1/2 - 1-1/2 - 0.136: a thin washer is farther down.
  testAtLimit({
    name: "a washer of a table at its least",
    rule: projection,
    at: (delta) => ({ group: { washer: given(hardened, "ASTM F436") }, rod: threaded(inch(5.864), delta) }),
    passes: 1,
    pick: THREAD,
  });

  // 5-1/2 + 1/2
  testAtLimit({
    name: "the rod 1/2 in high, ACI 117-10 2.3.4.1",
    rule: projection,
    at: (delta) => ({ rod: threaded(inch(6), delta) }),
    passes: 1,
    pick: THREAD_HIGH,
  });

  testAtLimit({
    name: "the rod 1/2 in high, AISC 303-10 7.5.1(c)",
    rule: projection,
    at: (delta) => ({
      job: { editions: { ...jobFixture().editions, placing: "AISC 303-10" } },
      rod: threaded(inch(6), delta),
    }),
    passes: 1,
    pick: THREAD_HIGH,
  });

  // 180 - 40 - 30 - 8 = 102 mm
  testAtLimit({
    name: "in millimetres",
    rule: projection,
    at: (delta) => inMillimetres(threaded(millimetres(102), delta)),
    passes: 1,
    pick: THREAD,
  });

  // 102 + 45, EN 1090-2:2008 Table D.2.20: protrusion of fixed bolts -5, +45
  testAtLimit({
    name: "the rod 45 mm high",
    rule: projection,
    at: (delta) => inMillimetres(threaded(millimetres(147), delta)),
    passes: 1,
    pick: THREAD_HIGH,
  });

  /** Rod 1, projection 9, thread 2, grout 2, plate 1, washer 3/8: thread ends 7 above the concrete, the washer's top is at 3-3/8. */
  const short: Changes = {
    base: { grout: given(inch(2), "job"), levelling: given("shims", "job") },
    basePlate: { thickness: given(inch(1), "job") },
    group: { washer: given({ shape: "round", size: inch(3), thickness: given(inch(0.375), "job") } as const, "job") },
    rod: {
      nut: given({ kind: "hex", acrossCorners: inches(1.732), height: inches(0.887) } as const, "ASME B18.2.2"),
      projection: given(inch(9), "job"),
      threadLength: given(inch(2), "job"),
    },
  };

  it("says how far above its washer the nut stops", () => {
    expect(rowOf(projection, short, SPECIFIED).status).toBe("pass");
    expect(rowOf(projection, short, THREAD)).toMatchObject({
      status: "fail",
      value: { twice: 2 * inch(2) },
      limit: { twice: 2 * inch(5.625) },
      note: "thread 2 against projection 9 - grout 2 - base plate 1 - washer 3/8; the nut stops 3-5/8 above its washer; set high short by 4-1/8",
    });
    expect(rowOf(projection, short, THREAD_HIGH).note).toContain("the nut would stop 4-1/8 above its washer");
  });

  it("says the advice where there is thread enough", () => {
    expect(rowOf(projection, {}, THREAD).note).toBe(
      "thread 8 against projection 9 - grout 1-1/2 - base plate 1-1/2 - washer 1/2; " +
        "2-1/2 more than needed, Design Guide 1 advises 3 in more",
    );
  });

  it("asks about the thread, not about the projection", () => {
    const context = contextOf(short);
    const rule: RuleId = "projection";
    const asking = runChecks(context).filter((row) => row.rule === rule && row.subject === "A1" && isAsking(row));
    expect(asking.map((row) => questionText(row, context))).toEqual([
      expect.stringMatching(
        /A1: the thread at the top of the rod is 2 in; .* asks for at least 5-5\/8 in .*; set high short by 4-1\/8\)/,
      ),
    ]);
  });
});

describe("projection: one cause, one question", () => {
  const severities = (changes: Changes, picks: readonly ((row: CheckRow) => boolean)[]) =>
    picks.map((pick) => rowOf(projection, changes, pick)).map(({ status, severity }) => `${status} ${severity}`);
  const standing = (length: Length): Changes => ({ rod: { projection: given(length, "job") } });

  // The stack is 1-1/2 + 1-1/2 + 1/2 + 1.251 = 4.751; the rod 1/2 in low.
  it.each([
    ["both fail: the row as specified asks", plus(inch(4.751), -1), ["fail ask", "fail advise"]],
    ["low alone fails: its own row asks", plus(inch(5.251), -1), ["pass ask", "fail ask"]],
    ["neither", inch(5.251), ["pass ask", "pass ask"]],
  ] as const)("the stack: %s", (_, length, each) => {
    expect(severities(standing(length), [SPECIFIED, LOW])).toEqual(each);
  });

  // Down to the washer 9 - 3.5 = 5.5; 1/2 in high 6.
  it.each([
    [plus(inch(5.5), -1), ["fail ask", "fail advise"]],
    [plus(inch(6), -1), ["pass ask", "fail ask"]],
    [inch(6), ["pass ask", "pass ask"]],
  ] as const)("the thread of %d nm", (thread, each) => {
    expect(severities({ rod: { threadLength: given(thread, "job") } }, [THREAD, THREAD_HIGH])).toEqual(each);
  });

  it("says both in one", () => {
    const rows = (pick: (row: CheckRow) => boolean) => rowOf(projection, standing(inch(4)), pick).note;
    expect(rows(SPECIFIED)).toMatch(/stick-out 0; set low short by 1\.251$/);
    expect(rows(LOW)).toMatch(/; asked for with the row as specified$/);
  });
});

describe("projection: what fails whatever the missing part is", () => {
  const noWasher = { washer: missing("basePlate.washer", "no washer on the base plate is given") };
  const standing = (length: Length): Changes => ({ group: noWasher, rod: { projection: given(length, "job") } });

  // Grout 1-1/2 + plate 1-1/2 + nut 1.251 = 4.251, with no washer at all.
  it.each([
    [-1, "fail"],
    [0, "not-checked"],
    [1, "not-checked"],
  ])("no washer: best case %i nm", (delta, status) => {
    expect(rowOf(projection, standing(plus(inch(4.251), delta)), SPECIFIED).status).toBe(status);
    expect(rowOf(projection, standing(plus(inch(4.751), delta)), LOW).status).toBe(status);
  });

  it("says so", () => {
    expect(rowOf(projection, standing(inch(0.5)), SPECIFIED).note).toBe(
      "projection 1/2 against grout 1-1/2 + base plate 1-1/2 + washer (not given) + nut 1.251 + stick-out 0; " +
        "it fails whatever the washer is: no washer on the base plate is given (basePlate.washer); set low short by 4.251",
    );
  });

  it("also without nut and grout", () => {
    const bare: Changes = {
      group: noWasher,
      base: { grout: missing("grout", "no grout gap is given") },
      rod: { nut: missing("rods.nut", "none"), projection: given(inch(1.25), "job") },
    };
    expect(rowOf(projection, bare, SPECIFIED)).toMatchObject({
      status: "fail",
      limit: { twice: 2 * inch(1.5) },
      note: expect.stringContaining("whatever the grout, the washer and the nut are"),
    });
  });
});
