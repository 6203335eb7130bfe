import { describe, expect, it } from "vitest";
import { groutGap } from "../../../src/checks/rules/grout-gap.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import type { Changes } from "./context.js";
import { hasClause, inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const GAP = hasClause("A1", "+ room");
const GAP_HIGH = hasClause("A1", "T.O.C. high");
const THREAD = (row: { readonly subject: string; readonly clause: string }) =>
  row.subject === "A1" && row.clause === "thread reaches below the levelling nut";
const THREAD_HIGH = hasClause("A1", "set high");
const ON_SHIMS = hasClause("base", "T.O.C. high");
const grout = (length: number, delta = 0) => ({ grout: given(plus(nanometres(length), delta), "job") });
const threaded = (length: number, delta: number) => ({ threadLength: given(plus(nanometres(length), delta), "job") });
const placing = (edition: "AISC 303-10" | "AISC 303-22" | "EN 1090-2:2008") => ({
  editions: { ...jobFixture().editions, placing: edition },
});
const shims = { levelling: given("shims" as const, "job") };

const noWasher: Changes = {
  base: grout(inch(2)),
  group: { washer: missing("basePlate.washer", "none") },
  rod: threaded(inch(9), 0),
};

describe("grout-gap", () => {
  // Two nuts 1.251 and a washer 1/2, on shims all the same.
  testAtLimit({
    name: "levelling nuts that are ordered beside shims",
    rule: groutGap,
    at: (delta) => ({ base: { ...grout(inch(3.002), delta), ...shims }, rod: { levellingNuts: given(2, "job") } }),
    passes: 1,
    pick: GAP,
  });

  it("asks nothing for rods without a levelling nut", () => {
    const rows = rowsOf(groutGap, { base: grout(inch(1)), rod: { levellingNuts: given(0, "job") } });
    expect(rows.filter(GAP)).toEqual([]);
    expect(rows.map(({ status }) => status)).toContain("not-applicable");
  });

  testAtLimit({
    name: "levelling nut 1.251 + washer 1/2",
    rule: groutGap,
    at: (delta) => ({ base: grout(inch(1.751), delta) }),
    passes: 1,
    pick: GAP,
  });

  testAtLimit({
    name: "and the shop's room",
    rule: groutGap,
    at: (delta) => ({ base: grout(inch(2.251), delta), shop: { groutRoom: given(inch(0.5), "shop") } }),
    passes: 1,
    pick: GAP,
  });

  // F436 for 1-1/4: 0.177 at its greatest.
  testAtLimit({
    name: "a washer of a table at its greatest",
    rule: groutGap,
    at: (delta) => ({
      base: grout(inch(1.428), delta),
      group: {
        washer: given(
          {
            shape: "round",
            size: inch(2.5),
            thickness: given(inch(0.177), "ASTM F436"),
            limits: { least: inch(0.136), greatest: inch(0.177) },
          } as const,
          "ASTM F436",
        ),
      },
    }),
    passes: 1,
    pick: GAP,
  });

  // 1.751 + 1/2, ACI 117-10 3.3.1: tops of foundations +1/2, -2.
  testAtLimit({
    name: "the concrete 1/2 in high",
    rule: groutGap,
    at: (delta) => ({ base: grout(inch(2.251), delta) }),
    passes: 1,
    pick: GAP_HIGH,
  });

  // 19 + 8 + 5 = 32 mm; EN 1090-2:2008 Table D.2.20: level of support for steel +5, -15.
  testAtLimit({
    name: "the concrete 5 mm high",
    rule: groutGap,
    at: (delta) => ({
      job: { unit: "mm", ...placing("EN 1090-2:2008") },
      base: grout(millimetres(32), delta),
      group: {
        washer: given(
          { shape: "round", size: millimetres(56), thickness: given(millimetres(8), "job") } as const,
          "job",
        ),
      },
      rod: { nut: given({ kind: "hex", acrossCorners: millimetres(40), height: millimetres(19) } as const, "test") },
    }),
    passes: 1,
    pick: GAP_HIGH,
  });

  it("says what the nut lacks over high concrete, and what helps", () => {
    expect(rowOf(groutGap, { base: grout(inch(2)) }, GAP_HIGH)).toMatchObject({
      status: "fail",
      severity: "ask",
      note: expect.stringContaining(
        "; where the concrete stands that high, the nut comes 0.251 into it: thicker grout, a lower T.O.C. or room cut under the nuts",
      ),
    });
  });

  it.each(["AISC 303-10", "AISC 303-22"] as const)("takes the concrete's tolerance of ACI 117 beside %s", (edition) => {
    expect(rowOf(groutGap, { job: placing(edition) }, GAP_HIGH)).toMatchObject({
      edition: "ACI 117-10",
      limit: { twice: 2 * inch(2.251) },
      note: expect.stringMatching(
        /^grout 1-1\/2 against levelling nut 1\.251 \+ washer \(as on the base plate\) 1\/2 \+ T\.O\.C\. high \(3\.3\.1\) 1\/2;/,
      ),
    });
  });

  // Nut 1.251 + washer 1/2 = 1.751; T.O.C. 1/2 in high 2.251. Thread 9.251; the rod 1/2 in high 9.751.
  it.each([
    [plus(inch(1.751), -1), ["fail ask", "fail advise"]],
    [plus(inch(2.251), -1), ["pass ask", "fail ask"]],
    [inch(2.251), ["pass ask", "pass ask"]],
  ] as const)("one question where the gap of %d nm fails with and without a tolerance", (height, each) => {
    const rows = [GAP, GAP_HIGH].map((pick) => rowOf(groutGap, { base: grout(height) }, pick));
    expect(rows.map(({ status, severity }) => `${status} ${severity}`)).toEqual(each);
  });

  it.each([
    [-1, ["fail ask", "fail advise"]],
    [0, ["pass ask", "fail ask"]],
  ] as const)("one question where the thread fails with and without a tolerance: %i nm", (delta, each) => {
    const rows = [THREAD, THREAD_HIGH].map((pick) => rowOf(groutGap, { rod: threaded(inch(9.251), delta) }, pick));
    expect(rows.map(({ status, severity }) => `${status} ${severity}`)).toEqual(each);
  });

  // Projection 9 - grout 1-1/2 + washer 1/2 + levelling nut 1.251 = 9.251 from the top.
  testAtLimit({
    name: "thread reaches below the levelling nut",
    rule: groutGap,
    at: (delta) => ({ rod: threaded(inch(9.251), delta) }),
    passes: 1,
    pick: THREAD,
  });

  // The nut carries the setting plate, whose underside is the grout's top.
  testAtLimit({
    name: "thread under a setting plate that stays",
    rule: groutGap,
    at: (delta) => ({ template: { use: "template left as setting plate" }, rod: threaded(inch(9.251), delta) }),
    passes: 1,
    pick: THREAD,
  });

  testAtLimit({
    name: "thread with the rod 1/2 in high",
    rule: groutGap,
    at: (delta) => ({ rod: threaded(inch(9.751), delta) }),
    passes: 1,
    pick: THREAD_HIGH,
  });

  it("says thread where it asks about thread, and the gap where it asks about that", () => {
    const measured = (pick: typeof GAP) => rowOf(groutGap, {}, pick).measured;
    expect([GAP, GAP_HIGH, THREAD, THREAD_HIGH].map(measured)).toEqual([
      "the grout gap",
      "the grout gap",
      "the thread at the top of the rod",
      "the thread at the top of the rod",
    ]);
  });

  it.each([
    ["grout", { base: { grout: missing("grout", "none given") } }, "(grout)", 16],
    ["nut", { base: grout(inch(2)), rod: { nut: missing("rods.nut", "none tabulated") } }, "rods.nut", 16],
    ["washer", noWasher, "basePlate.washer", 16],
    ["thread", { rod: { threadLength: missing("rods.threads", "none given") } }, "rods.threads", 8],
  ] as const)("is not checked without %s", (_, changes, key, count) => {
    const rows = rowsOf(groutGap, changes);
    expect(rows).toHaveLength(16);
    expect(rows.filter(({ status, note }) => status === "not-checked" && note.includes(key))).toHaveLength(count);
  });

  // Levelling nut 1.251 alone is more than a gap of 1 in; the high concrete takes 1/2 of it.
  it.each([
    ["gap", GAP, inch(1.251), -1, "fail"],
    ["gap", GAP, inch(1.251), 0, "not-checked"],
    ["gap over high concrete", GAP_HIGH, inch(1.751), -1, "fail"],
    ["gap over high concrete", GAP_HIGH, inch(1.751), 0, "not-checked"],
  ] as const)("%s without a washer: best case %#", (_, pick, length, delta, status) => {
    const changes: Changes = { base: grout(length, delta), group: { washer: missing("basePlate.washer", "none") } };
    const row = rowOf(groutGap, changes, pick);
    expect(row.status).toBe(status);
    expect(row.note.includes("it fails whatever the washer (as on the base plate) is")).toBe(status === "fail");
  });
});

describe("grout-gap without levelling nuts", () => {
  it.each(["shims", "plate"] as const)("asks for no nut on %s", (kind) => {
    const rows = rowsOf(groutGap, { base: { levelling: given(kind, "job") } });
    expect(rows.map(({ subject, status }) => [subject, status])).toEqual([
      ["base", "not-applicable"],
      ["base", "pass"],
    ]);
  });

  testAtLimit({
    name: "concrete 1/2 in high does not reach the base plate",
    rule: groutGap,
    at: (delta) => ({ base: { ...shims, ...grout(inch(0.5), delta) } }),
    passes: 1,
    pick: ON_SHIMS,
  });

  testAtLimit({
    name: "concrete 5 mm high does not",
    rule: groutGap,
    at: (delta) => ({
      job: { unit: "mm", ...placing("EN 1090-2:2008") },
      base: { ...shims, ...grout(millimetres(5), delta) },
    }),
    passes: 1,
    pick: ON_SHIMS,
  });

  it("has nothing to hold where there is no grout", () => {
    expect(rowOf(groutGap, { base: { ...shims, ...grout(0) } }, ON_SHIMS)).toMatchObject({
      status: "not-applicable",
      note: "the base plate stands on the concrete, without grout",
    });
  });

  it("is not checked where it is not said what levels the plate, but for the concrete", () => {
    const rows = rowsOf(groutGap, { base: { levelling: missing("levelling", "not said") } });
    expect(rows).toMatchObject([{ status: "not-checked", note: "not said (levelling)" }, { status: "pass" }]);
    expect(rows.filter(isSubject("base"))).toHaveLength(2);
  });
});
