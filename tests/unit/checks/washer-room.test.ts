import { describe, expect, it } from "vitest";
import { washerRoom } from "../../../src/checks/rules/washer-room.js";
import type { ColumnShape, RodGroup } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { groupFixture } from "../../fixture.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const at = { x: zero, y: zero };
/** 3 + 13/16 */
const pitch = inch(3.8125);
/** 3/2 + 13/16/2 */
const reach = inch(1.90625);
const column = (shape: ColumnShape) => ({ column: given(shape, "job") });
const flanged = (depthAlong: "x" | "y", offset = at): ColumnShape => ({
  kind: "wide flange",
  depth: inch(12),
  width: inch(8),
  flange: inch(0.5),
  web: inch(0.5),
  depthAlong,
  at: offset,
});
const rodAt = (x: number, y: number) =>
  ({ pattern: { kind: "points", at: [{ x: nanometres(x), y: nanometres(y) }] } }) as const;
const BESIDE = isSubject("A1-column");

describe("washer-room", () => {
  testAtLimit({
    name: "two washers",
    rule: washerRoom,
    at: (delta) => ({ group: { pattern: onLine(0, pitch + delta) } }),
    passes: 1,
    pick: isSubject("A1-A2"),
  });

  testAtLimit({
    name: "outside the flange, depth along y",
    rule: washerRoom,
    at: (delta) => ({ base: column(flanged("y")), group: rodAt(0, inch(6) + reach + delta) }),
    passes: 1,
    pick: BESIDE,
  });

  testAtLimit({
    name: "beside the web, between the flanges",
    rule: washerRoom,
    at: (delta) => ({ base: column(flanged("y")), group: rodAt(inch(0.25) + reach + delta, 0) }),
    passes: 1,
    pick: BESIDE,
  });

  testAtLimit({
    name: "beneath the flange, between the flanges",
    rule: washerRoom,
    at: (delta) => ({ base: column(flanged("y")), group: rodAt(inch(3), inch(5.5) - reach - delta) }),
    passes: 1,
    pick: BESIDE,
  });

  testAtLimit({
    name: "outside the flange, depth along x, column off the working point",
    rule: washerRoom,
    at: (delta) => ({
      base: column(flanged("x", { x: inch(1), y: zero })),
      group: rodAt(inch(7) + reach + delta, inch(2)),
    }),
    passes: 1,
    pick: BESIDE,
  });

  testAtLimit({
    name: "a pipe",
    rule: washerRoom,
    at: (delta) => ({
      base: column({ kind: "pipe", diameter: inch(10), at }),
      group: rodAt(0, inch(5) + reach + delta),
    }),
    passes: 1,
    pick: BESIDE,
  });

  testAtLimit({
    name: "a tube",
    rule: washerRoom,
    at: (delta) => ({
      base: column({ kind: "tube", x: inch(8), y: inch(6), at }),
      group: rodAt(inch(4) + reach + delta, inch(1)),
    }),
    passes: 1,
    pick: BESIDE,
  });

  it("fails for a rod within the column, and says so", () => {
    const row = rowOf(
      washerRoom,
      { base: column({ kind: "pipe", diameter: inch(10), at }), group: rodAt(0, 0) },
      BESIDE,
    );
    expect(row).toMatchObject({ status: "fail", severity: "ask", value: { twice: -inch(10) } });
    expect(row.note).toContain("within the column's outline");
  });

  it("does not apply to one rod, and is not checked without a column", () => {
    expect(rowsOf(washerRoom, { group: { pattern: onLine(0) } })).toMatchObject([
      { subject: "plate", status: "not-applicable" },
      { subject: "column", status: "not-checked", note: "no column is given (column)" },
    ]);
  });

  it.each([
    ["hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, "basePlate.hole"],
    ["washer", { group: { washer: missing("basePlate.washer", "no washer is given") } }, "basePlate.washer"],
  ] as const)("is not checked without a %s", (_, changes, key) => {
    const rows = rowsOf(washerRoom, changes).filter(({ note }) => note.includes(key));
    expect(rows.map(({ status }) => status)).toEqual(Array(4).fill("not-checked"));
  });

  describe("what is not known is no larger than its rod", () => {
    const noHole = missing("basePlate.hole", "no hole is given");
    const noWasher = missing("basePlate.washer", "no washer is given");
    // Rod 1-1/4, hole 2-1/16, washer 3 square: two washers of the rod's size; with their play; two washers without play.
    const cases = [
      ["hole and washer", { baseHole: noHole, washer: noWasher }, 1.25],
      ["washer", { washer: noWasher }, 2.0625],
      ["hole", { baseHole: noHole }, 3],
    ] as const;

    describe.each(cases)("without %s", (_, lack, least) => {
      it.each([
        [-1, ["not-checked", "not-checked", "fail"]],
        [0, ["not-checked", "not-checked"]],
      ])("two rods, limit %i nm", (delta, statuses) => {
        const rows = rowsOf(washerRoom, { group: { pattern: onLine(0, inch(least) + delta), ...lack } });
        const own = rows.filter(({ subject }) => subject !== "column");
        expect(own.map(({ status }) => status)).toEqual(statuses);
        const failed = own.find(({ status }) => status === "fail");
        if (delta < 0) {
          expect(failed?.note).toMatch(/^what is not known no larger than its rod: /);
          expect(failed?.note).toMatch(/it fails whatever the .* of A1.* are: no (hole|washer) is given/);
        }
      });

      it.each([
        [-1, ["fail"]],
        [0, []],
      ])("beside a tube, limit %i nm", (delta, statuses) => {
        const x = inch(4) + inch(least) / 2 + delta;
        const rows = rowsOf(washerRoom, {
          base: column({ kind: "tube", x: inch(8), y: inch(6), at }),
          group: { ...rodAt(x, 0), ...lack },
        });
        expect(rows.filter(BESIDE).map(({ status }) => status)).toEqual(statuses);
      });
    });

    it("leaves the row of a known pair beside it as it is", () => {
      const groups = [
        groupFixture({ pattern: onLine(0, pitch) }),
        groupFixture({ letter: "B", pattern: onLine(pitch + inch(3)), washer: noWasher }),
      ];
      const rows = rowsOf(washerRoom, { base: { groups } }).map(({ subject, status }) => `${subject} ${status}`);
      expect(rows).toEqual(["B1 not-checked", "A1-A2 pass", "column not-checked"]);
    });
  });

  describe("square washers", () => {
    const spots = (...at: readonly (readonly [number, number])[]) =>
      ({ kind: "points", at: at.map(([x, y]) => ({ x: nanometres(x), y: nanometres(y) })) }) as const;
    const washer = (shape: "round" | "square", size: number) =>
      given({ shape, size: inch(size), thickness: given(inch(0.5), "job") } as const, "job");
    const PAIR = isSubject("A1-A2");

    testAtLimit({
      name: "side by side, off the row by less",
      rule: washerRoom,
      at: (delta) => ({ group: { pattern: spots([0, 0], [pitch + delta, -inch(2)]) } }),
      passes: 1,
      pick: PAIR,
    });

    testAtLimit({
      name: "one above the other",
      rule: washerRoom,
      at: (delta) => ({ group: { pattern: spots([0, 0], [inch(3), -pitch - delta]) } }),
      passes: 1,
      pick: PAIR,
    });

    it("overlap at the corner though their rods are farther apart than a washer: 3 in at (0, 0) and (2.9, -2.9)", () => {
      const row = rowOf(washerRoom, { group: { pattern: spots([0, 0], [inch(2.9), -inch(2.9)]) } }, PAIR);
      expect(row).toMatchObject({ status: "fail", severity: "ask", value: { twice: 2 * inch(2.9) } });
      expect(row.clause).toBe("(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= the larger of dx and dy");
    });

    it("overlap on a bolt circle of 12 in with 8 rods: 4 in washers", () => {
      const pattern = { kind: "circle", diameter: inch(12), count: 8, start: { kind: "straddle" } } as const;
      const rows = rowsOf(washerRoom, { group: { pattern, washer: washer("square", 4) } });
      // Side by side, 12 sin 22.5 degrees = 4.592 apart; at 45 degrees 3.247 in x and in y.
      const pairs = rows.filter(({ subject }) => /^A\d-A\d$/.test(subject));
      expect(pairs.filter(({ status }) => status === "fail")).not.toHaveLength(0);
      for (const { status, value, note } of pairs) {
        const apart = value?.kind === "length" ? value.twice / 2 / 25_400_000 : Number.NaN;
        expect([4.592, 3.247].some((each) => Math.abs(each - apart) < 0.001)).toBe(true);
        expect(status).toBe(apart > 4.8125 ? "pass" : "fail");
        expect(note).toContain("turned, their corners reach");
      }
    });

    it("say whether their corners meet when they turn", () => {
      // Corners reach 3 sqrt 2 + 13/16 = 5.055.
      const at = (x: number) => rowOf(washerRoom, { group: { pattern: onLine(0, inch(x)) } }, PAIR);
      expect(at(5)).toMatchObject({ status: "pass" });
      expect(at(5).note).toMatch(/turned, their corners reach 5\.0551 of 5 between the rods and meet$/);
      expect(at(5.1).note).toMatch(/and stay clear$/);
    });

    it("beside round ones are held by true distance", () => {
      const round = groupFixture({ letter: "B", pattern: spots([inch(4.5), -inch(5.5)]), washer: washer("round", 3) });
      // To the corner (1-1/2, -1-1/2) of the square one: 3, 4, 5. Radius 1-1/2, play 13/16: 2-5/16 is asked for.
      const rows = (other: RodGroup) =>
        rowsOf(washerRoom, { base: { groups: [groupFixture({ pattern: spots([0, 0]) }), other] } }).find(
          isSubject("A1-B1"),
        );
      expect(rows(round)).toMatchObject({
        status: "pass",
        value: { twice: 2 * inch(5) },
        limit: { twice: 2 * inch(2.3125) },
      });
      const near = (delta: number) => ({ ...round, pattern: spots([inch(1.5) + inch(2.3125) + delta, inch(1)]) });
      expect(rows(near(-1))?.status).toBe("fail");
      expect(rows(near(0))?.status).toBe("pass");
    });

    it("two round ones are held by the spacing alone", () => {
      const pattern = spots([0, 0], [inch(2.9), -inch(2.9)]);
      expect(rowOf(washerRoom, { group: { pattern, washer: washer("round", 3) } }, PAIR)).toMatchObject({
        status: "pass",
        clause: "(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= s",
      });
    });

    // A corner beside the tip of a flange: at (4, 6) the tip, rod 1.8 off it both ways; a round washer reaches 1-29/32 of 2.546.
    testAtLimit({
      name: "diagonally off the tip of a flange",
      rule: washerRoom,
      at: (delta) => ({
        base: column(flanged("y")),
        group: rodAt(inch(4) + reach + delta, inch(6) + inch(1.8)),
      }),
      passes: 1,
      pick: BESIDE,
    });

    it("overlap the tip of a flange where a round washer clears it", () => {
      const tip = { base: column(flanged("y")) };
      const at = rodAt(inch(5.8), inch(7.8));
      expect(rowOf(washerRoom, { ...tip, group: at }, BESIDE).status).toBe("fail");
      expect(rowOf(washerRoom, { ...tip, group: { ...at, washer: washer("round", 3) } }, BESIDE).status).toBe("pass");
    });

    it("meet a pipe with a corner: the square about (6, 6) that touches a pipe of 10", () => {
      // (6 - h)^2 + (6 - h)^2 = 25: h = 6 - 5 / sqrt 2 = 2.4645.
      const row = rowOf(
        washerRoom,
        { base: column({ kind: "pipe", diameter: inch(10), at }), group: rodAt(inch(6), inch(6)) },
        BESIDE,
      );
      expect(row.value).toEqual({ kind: "length", twice: Math.round(2 * (6 - 5 / Math.SQRT2) * 25_400_000) });
    });
  });
});
