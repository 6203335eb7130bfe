import { describe, expect, it } from "vitest";
import { nutRoom } from "../../../src/checks/rules/nut-room.js";
import type { Pattern, RodGroup } from "../../../src/job/model/job.js";
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

  describe("a wrench beside rods of a group that names none", () => {
    const inchNut = given({ kind: "heavy hex", acrossCorners: inch(1.876), height: inch(1) } as const, "t");
    const spot = (x: number, y = 0) => ({ kind: "points", at: [{ x: nanometres(x), y: nanometres(y) }] }) as const;
    const plain = (pattern: Pattern, nut: RodGroup["rod"]["nut"] = inchNut) =>
      groupFixture(
        { pattern },
        { size: "1", diameter: inch(1), nut, wrenchRoom: missing("rods.wrenchRoom", "no wrench room is given") },
      );
    const wrenched = (pattern: Pattern, room = 5) =>
      groupFixture({ letter: "B", pattern }, { wrenchRoom: given(inch(room), "job"), nut: inchNut });
    const play = inch(1.3125) - inch(1) + inch(1.3125) - inch(1.25);

    testAtLimit({
      name: "the nearest of them governs, not the far rod of its own group",
      rule: nutRoom,
      at: (delta) => ({
        base: {
          groups: [plain(onLine(-inch(8), 0)), wrenched(onLine((inch(5) + inch(1.876) + play) / 2 + delta, inch(15)))],
        },
      }),
      passes: 1,
      pick: hasClause("A2-B1", "wrench"),
    });

    it("finds the wrench of 5 in that stands 3 in from a plain rod, and names it", () => {
      const rows = rowsOf(nutRoom, {
        base: { groups: [plain(onLine(-inch(8), 0)), wrenched(onLine(inch(3), inch(13)))] },
      });
      const row = rows.find(hasClause("A2-B1", "wrench"));
      expect(row).toMatchObject({ status: "fail", severity: "stop", limit: { twice: inch(5) + inch(1.876) + play } });
      expect(row?.note).toContain("wrench room 5 on B1 beside nut 1.876 of A2");
      expect(rows.filter(({ status, subject }) => status === "not-checked" && subject === "group A")).toHaveLength(1);
    });

    it("needs no nut of the turned rod itself", () => {
      const bare = wrenched(spot(inch(3)));
      const groups = [
        plain(spot(0)),
        { ...bare, rod: { ...bare.rod, nut: missing("rods.nut", "no nut is tabulated") } },
      ];
      expect(rowsOf(nutRoom, { base: { groups } }).find(hasClause("A1-B1", "wrench"))?.status).toBe("fail");
    });

    it("beside a rod whose nut is not known fails where even the bare rod is in its way, else is not checked", () => {
      const unknown = missing("rods.nut", "no nut is tabulated");
      const at = (x: number) =>
        rowsOf(nutRoom, { base: { groups: [plain(spot(0), unknown), wrenched(spot(x))] } }).find(
          hasClause("A1-B1", "wrench"),
        );
      const bare = (inch(5) + inch(1) + play) / 2;
      expect(at(bare - 1)).toMatchObject({ status: "fail" });
      expect(at(bare - 1)?.note).toContain("beside bare rod 1 of A1");
      expect(at(bare)).toMatchObject({ status: "not-checked" });
    });

    it("holds every wrench to whichever rod is worst for it, among many", () => {
      const groups = [plain(onLine(0, inch(20), inch(40))), wrenched(onLine(inch(10), inch(23), inch(44)))];
      const failing = rowsOf(nutRoom, { base: { groups } }).filter(
        ({ status, clause }) => status === "fail" && clause.includes("wrench"),
      );
      expect(failing.map(({ subject }) => subject)).toEqual(["A3-B2"]);
    });
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

  describe("a nut that is not known is no smaller than its rod", () => {
    const unknown = missing("rods.nut", "no nut is tabulated");
    // Rod 1-1/4 + mean play 1/16 + gap 1/8.
    const bare = inch(1.25) + inch(0.0625) + inch(0.125);

    it.each([
      [-1, ["not-checked", "fail"]],
      [0, ["not-checked"]],
      [1, ["not-checked"]],
    ])("both unknown, limit %i nm", (delta, statuses) => {
      const rows = rowsOf(nutRoom, { rod: { nut: unknown }, group: { pattern: onLine(0, bare + delta) } });
      const nuts = rows.filter(({ note }) => note.includes("rods.nut"));
      expect(nuts.map(({ status }) => status)).toEqual(statuses);
      if (delta < 0)
        expect(nuts[1]).toMatchObject({
          severity: "stop",
          note: expect.stringMatching(
            /^nuts no smaller than their rods .*it fails whatever the nut of A1 and the nut of A2 are: no nut is tabulated/,
          ),
        });
    });

    it("a known pair is held beside it, and the known nut of a mixed pair by its own size", () => {
      const groups = (x: number) => [
        groupFixture({ pattern: onLine(0, inch(6)) }),
        groupFixture({ letter: "B", pattern: onLine(inch(6) + x) }, { nut: unknown }),
      ];
      const mixed = (inch(2.309) + inch(1.25)) / 2 + inch(0.0625) + inch(0.125);
      const subjects = (x: number) =>
        rowsOf(nutRoom, { base: { groups: groups(x) } })
          .filter(({ status }) => status === "pass" || status === "fail")
          .map(({ subject, status }) => `${subject} ${status}`);
      expect(subjects(mixed)).toEqual(["A1-A2 pass"]);
      expect(subjects(mixed - 1)).toEqual(["A1-A2 pass", "A2-B1 fail"]);
    });
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
