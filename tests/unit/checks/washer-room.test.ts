import { describe, expect, it } from "vitest";
import { washerRoom } from "../../../src/checks/rules/washer-room.js";
import type { ColumnShape } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
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
});
