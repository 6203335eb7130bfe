import { describe, expect, it } from "vitest";
import { nutRoom } from "../../../src/checks/rules/nut-room.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { groupFixture } from "../../fixture.js";
import { hasClause, inch, onLine, plus, rowsOf, testAtLimit } from "./context.js";

const NUTS = hasClause("A1-A2", "gap");
const WRENCH = hasClause("A1-A2", "wrench");
/** (2.309 + 2.309)/2 + 1/16 + 1/8 */
const least = inch(2.309) + inch(0.0625) + inch(0.125);

describe("nut-room", () => {
  testAtLimit({
    name: "two nuts with mean play and gap",
    rule: nutRoom,
    at: (delta) => ({ group: { pattern: onLine(0, least + delta) } }),
    passes: 1,
    pick: NUTS,
  });

  testAtLimit({
    name: "a wrench beside a nut",
    rule: nutRoom,
    at: (delta) => ({
      rod: { wrenchRoom: given(inch(4), "job") },
      group: { pattern: onLine(0, (inch(4) + inch(2.309)) / 2 + inch(0.0625) + delta) },
    }),
    passes: 1,
    pick: WRENCH,
  });

  it("takes each rod's own nut and play in a pair of two sizes", () => {
    const thin = {
      size: "3/4",
      diameter: inch(0.75),
      nut: given({ kind: "heavy hex", acrossCorners: inch(1.44), height: inch(0.758) } as const, "t"),
    };
    const groups = [
      groupFixture({ pattern: onLine(0) }),
      groupFixture({ letter: "B", pattern: onLine(inch(3)), hole: given(inch(0.8125), "job") }, thin),
    ];
    const row = rowsOf(nutRoom, { base: { groups } }).find(({ subject }) => subject === "A1-B1");
    expect(row?.limit).toEqual({
      kind: "length",
      twice: inch(2.309) + inch(1.44) + 2 * inch(0.0625) + 2 * inch(0.125),
    });
  });

  it("takes the wider of the two wrenches, each beside the other's nut", () => {
    const wide = { wrenchRoom: given(inch(4), "job") };
    const thin = {
      wrenchRoom: given(inch(3), "job"),
      nut: given({ kind: "hex", acrossCorners: inch(1.2), height: inch(0.8) } as const, "t"),
    };
    const groups = [
      groupFixture({ pattern: onLine(0) }, thin),
      groupFixture({ letter: "B", pattern: onLine(inch(5)) }, wide),
    ];
    const row = rowsOf(nutRoom, { base: { groups } }).find(hasClause("A1-B1", "wrench"));
    // 3 on A1 beside 2.309 is 5.309; 4 on B1 beside 1.2 is 5.2: the first governs.
    expect(row?.limit).toEqual({ kind: "length", twice: inch(3) + inch(2.309) + 2 * inch(0.0625) });
    expect(row?.note).toContain("wrench room 3 on A1 beside nut 2.309 of B1");
  });

  it("does not round the halves of an odd sum", () => {
    const nut = given({ kind: "hex", acrossCorners: nanometres(inch(2.309) + 1), height: inch(1) } as const, "t");
    const rows = rowsOf(nutRoom, { rod: { nut }, group: { pattern: onLine(0, least) } });
    expect(rows.find(NUTS)).toMatchObject({ status: "fail", margin: { kind: "length", twice: -2 } });
  });

  it("is not checked without wrench room, once a group", () => {
    const rows = rowsOf(nutRoom).filter(({ status }) => status === "not-checked");
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ subject: "group A", severity: "stop" });
    expect(rows[0]?.note).toContain("rods.wrenchRoom");
  });

  it("is not checked without a nut", () => {
    const rows = rowsOf(nutRoom, { rod: { nut: missing("rods.nut", "no nut is tabulated") } });
    expect(rows.some(({ note, status }) => status === "not-checked" && note.includes("rods.nut"))).toBe(true);
  });

  it.each([
    ["one rod", { group: { pattern: onLine(0) } }],
    ["a plate over cast rods", { template: { use: "setting plate over cast rods" } }],
  ] as const)("does not apply to %s", (_, changes) => {
    expect(rowsOf(nutRoom, changes).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  it("keeps the gap of the shop", () => {
    const rows = rowsOf(nutRoom, {
      shop: { nutGap: given(plus(inch(0.125), 1), "shop") },
      group: { pattern: onLine(0, least) },
    });
    expect(rows.find(NUTS)?.status).toBe("fail");
  });
});
