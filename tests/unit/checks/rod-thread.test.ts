/** Threads that fit on their rods. Heights of nuts: ASME B18.2.2, 1-1/4 heavy hex, 1.251 in at the greatest. */
import { describe, expect, it } from "vitest";
import { rodThread } from "../../../src/checks/rules/rod-thread.js";
import type { Bottom, Rod } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const LOWER = hasClause("group A", "thread at the lower end >=");
const APART = hasClause("group A", "threads at both ends <=");
const BEND = hasClause("group A", "ends above the bend");
const SWEDGED = hasClause("group A", "swedged part");
const of = (length: Length) => given(length, "job");
const withRod = (rod: Partial<Rod>): Changes => ({ rod });
const lower = (bottom: Bottom) => given(bottom, "job");
const PLATE = { kind: "plate", tackWelded: false, shape: "square", size: inch(4), thickness: inch(0.75) } as const;

describe("rod-thread", () => {
  // 9 + 24 + nut 1.251 + 1/2 below it, rounded up to 34-7/8: 1-7/8 stand below the embedment.
  testAtLimit({
    name: "a nut at the lower end of a rod whose length is worked out",
    rule: rodThread,
    at: (delta) => withRod({ bottomThread: of(plus(inch(1.875), delta)) }),
    passes: 1,
    pick: LOWER,
  });

  // 36 - 9 - 24: the nut stands 1.749 above the end of the rod, and has its thread down to there.
  testAtLimit({
    name: "a nut at the lower end of a rod whose length is given",
    rule: rodThread,
    at: (delta) => withRod({ bottomThread: of(plus(inch(3), delta)), length: of(inch(36)) }),
    passes: 1,
    pick: LOWER,
  });

  testAtLimit({
    name: "a nut flush with the end of a rod whose embedment goes to its end",
    rule: rodThread,
    at: (delta) => withRod({ bottomThread: of(plus(inch(1.251), delta)), length: of(inch(33)) }),
    passes: 1,
    pick: LOWER,
  });

  it("does not pass a thread while it is not known how far up its nut stands", () => {
    const rod = { length: of(inch(36)), projection: missing("rods.projection", "none given") };
    const status = (thread: number) =>
      rowOf(rodThread, withRod({ ...rod, bottomThread: of(inch(thread)) }), LOWER).status;
    expect([status(1.25), status(1.251)]).toEqual(["fail", "not-checked"]);
  });

  // 9 + 24 + 3/4 + 1.251 + 1/2 = 35.501, rounded up to 35-5/8; the upper nut stands above the embedment: 2.625 + 1.251.
  testAtLimit({
    name: "a plate between two nuts",
    rule: rodThread,
    at: (delta) => withRod({ bottom: lower({ ...PLATE, nuts: 2 }), bottomThread: of(plus(inch(3.876), delta)) }),
    passes: 1,
    pick: LOWER,
  });

  testAtLimit({
    name: "a plate on one nut",
    rule: rodThread,
    at: (delta) => withRod({ bottom: lower({ ...PLATE, nuts: 1 }), bottomThread: of(plus(inch(1.875), delta)) }),
    passes: 1,
    pick: LOWER,
  });

  it("finds a nut where there is no thread, and says how far it is from its place", () => {
    const row = rowOf(rodThread, withRod({ bottomThread: of(inch(0)) }), LOWER);
    expect(row).toMatchObject({ status: "fail", severity: "ask", measured: "the thread at the lower end" });
    expect(row.note).toBe("thread 0 against nut 1.251 + rod below 0.624; the nut stops 1-7/8 short of its place");
  });

  it("asks for a thread that is not given", () => {
    expect(rowOf(rodThread, {}, LOWER)).toMatchObject({ status: "not-checked", missing: ["rods.bottomThreads"] });
  });

  it.each<Bottom>([
    { kind: "straight" },
    { kind: "hook", reach: inch(4), radius: null },
    { kind: "swedged", length: inch(6) },
    { ...PLATE, nuts: 0 },
  ])("asks no thread of a lower end without a nut: $kind", (bottom) => {
    const row = rowOf(rodThread, withRod({ bottom: lower(bottom), bottomThread: of(inch(0)) }), LOWER);
    expect(row.status).toBe("not-applicable");
  });

  it("takes a rod that is threaded in full", () => {
    const full = { fullThread: true, threadLength: of(inch(33)), bottomThread: of(inch(33)) };
    const rows = rowsOf(rodThread, withRod(full));
    expect(rows.filter(LOWER)).toMatchObject([{ status: "pass" }]);
    expect(rows.filter(APART)).toMatchObject([{ status: "not-applicable", note: "the rod is threaded in full" }]);
  });

  // 36 in: 8 at the top leave 28.
  testAtLimit({
    name: "threads of both ends meet",
    rule: rodThread,
    at: (delta) => withRod({ length: of(inch(36)), bottomThread: of(plus(inch(28), delta)) }),
    passes: -1,
    pick: APART,
  });

  it("holds a thread against a length that is worked out: 34-7/8", () => {
    const row = rowOf(rodThread, withRod({ threadLength: of(inch(33)), bottomThread: of(inch(2)) }), APART);
    expect(row.status).toBe("fail");
    expect(row.note).toContain("rods.threads: full");
  });

  // To the inside of the hook 9 + 24, less the inside radius of 1-1/4, which is the shop's 1 x d: 31-3/4.
  testAtLimit({
    name: "thread of a bent rod ends above its bend",
    rule: rodThread,
    at: (delta) =>
      withRod({
        bottom: lower({ kind: "hook", reach: inch(5), radius: null }),
        bottomThread: of(inch(0)),
        threadLength: of(plus(inch(31.75), delta)),
      }),
    passes: -1,
    pick: BEND,
  });

  testAtLimit({
    name: "thread of a swedged rod ends above the swedged part",
    rule: rodThread,
    at: (delta) =>
      withRod({
        bottom: lower({ kind: "swedged", length: inch(10) }),
        bottomThread: of(inch(0)),
        threadLength: of(plus(inch(23), delta)),
      }),
    passes: -1,
    pick: SWEDGED,
  });

  // ISO 4032: the nut of M30 is 25.6 at the greatest; 12 mm below it.
  // 900 - 228.6 - 609.6.
  testAtLimit({
    name: "in millimetres",
    rule: rodThread,
    at: (delta) => ({
      job: { unit: "mm" },
      shop: {},
      rod: {
        ...{ size: "M30", diameter: millimetres(30), thread: "metric coarse", length: of(millimetres(900)) },
        nut: given({ kind: "hex", acrossCorners: millimetres(53.1), height: millimetres(25.6) } as const, "ISO 4032"),
        bottomThread: of(plus(millimetres(61.8), delta)),
      },
    }),
    passes: 1,
    pick: LOWER,
  });

  it("is not checked where the lower end is not given, unless its thread takes no nut", () => {
    const none = missing("rods.bottom", "the lower end of the rods is not given");
    const row = rowOf(rodThread, withRod({ bottom: none, bottomThread: none }), LOWER);
    expect(row).toMatchObject({ status: "not-checked", missing: ["rods.bottom"] });
  });

  it("says one thing a group, whatever the number of its rods", () => {
    expect(rowsOf(rodThread).map(({ subject }) => subject)).toEqual(["group A", "group A"]);
    expect(rowsOf(rodThread, withRod({ length: of(nanometres(inch(36))) }))).toHaveLength(2);
  });
});
