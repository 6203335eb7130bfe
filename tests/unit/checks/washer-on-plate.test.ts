import { describe, expect, it } from "vitest";
import { washerOnPlate } from "../../../src/checks/rules/washer-on-plate.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
/** 3/2 + (2-1/16 - 1-1/4)/2 */
const reach = inch(1.90625);
const one = { group: { pattern: onLine(0) } };
const rect = (x: number) =>
  given({ kind: "rectangle", x: nanometres(x), y: inch(16), corner: { kind: "square" } } as const, "job");

const round = given({ shape: "round", size: inch(3), thickness: given(inch(0.5), "job") } as const, "job");
const spot = (x: number, y: number) =>
  ({ pattern: { kind: "points", at: [{ x: nanometres(x), y: nanometres(y) }] } }) as const;
const square = inch(16);
const chamfered = (size: number) =>
  given(
    { kind: "rectangle", x: square, y: square, corner: { kind: "chamfer", x: inch(size), y: inch(size) } } as const,
    "job",
  );

describe("washer-on-plate", () => {
  testAtLimit({
    name: "to the edge of a rectangle",
    rule: washerOnPlate,
    at: (delta) => ({ ...one, basePlate: { shape: rect(2 * reach + 2 * delta) } }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "a round washer to the arc of a round base plate",
    rule: washerOnPlate,
    at: (delta) => ({
      group: { pattern: onLine(0), washer: round },
      basePlate: { shape: given({ kind: "circle", diameter: nanometres(2 * reach + delta) } as const, "job") },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "a base plate off the working point",
    rule: washerOnPlate,
    at: (delta) => ({
      ...one,
      basePlate: { shape: rect(inch(18)), at: { x: nanometres(inch(9) - reach - delta), y: zero } },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  // Off the line x + y = 14 of the chamfer a square about (a, a) reaches 7 - a along x and y, a circle (14 - 2 a) / sqrt 2.
  testAtLimit({
    name: "a square washer with its corner to the chamfer of a base plate",
    rule: washerOnPlate,
    at: (delta) => {
      const a = inch(7) - reach - delta;
      return { group: spot(a, a), basePlate: { shape: chamfered(2) } };
    },
    passes: 1,
    pick: (row) => row.subject === "A1" && row.note.includes(" along x or y, the washer's sides along the base's axes"),
  });

  // The largest square about (5.5, 5.5) within an arc of 10 in reaches 10 / sqrt 2 - 5.5 = 1.571; 1-29/32 is asked for.
  it.each([
    ["square", "fail", 10 / Math.SQRT2 - 5.5],
    ["round", "pass", 10 - 5.5 * Math.SQRT2],
  ] as const)("a %s washer on the diagonal of a round base plate: %s", (shape, status, room) => {
    const washer = given({ shape, size: inch(3), thickness: given(inch(0.5), "job") } as const, "job");
    const basePlate = { shape: given({ kind: "circle", diameter: inch(20) } as const, "job") };
    const row = rowOf(washerOnPlate, { group: { ...spot(inch(5.5), inch(5.5)), washer }, basePlate }, isSubject("A1"));
    expect([row.status, row.value]).toEqual([status, { kind: "length", twice: Math.round(2 * room * inch(1)) }]);
  });

  it("a square washer whose rod stands off the base plate is off by the rod's distance", () => {
    const basePlate = { shape: given({ kind: "circle", diameter: inch(20) } as const, "job") };
    expect(rowOf(washerOnPlate, { group: spot(inch(11), 0), basePlate }, isSubject("A1"))).toMatchObject({
      status: "fail",
      value: { twice: -2 * inch(1) },
    });
  });

  it("says nothing of axes where a square washer lies beside a straight edge", () => {
    const row = rowOf(washerOnPlate, { ...one, basePlate: { shape: rect(inch(6)) } }, isSubject("A1"));
    expect(row.note).toMatch(/^square washer 3 \/ 2 \+ .* against edge distance 3; turned/);
  });

  // ASTM F844, 7/8 in: outside 1.750 narrow, 2.250 wide. Where no series is named the wide one is what needs room.
  testAtLimit({
    name: "a washer whose series is open is held as the wide one",
    rule: washerOnPlate,
    at: (delta) => {
      const thickness = given(inch(0.134), "table");
      const widest = {
        shape: "round",
        size: inch(2.25),
        thickness,
        series: "F844 wide, as no series is named",
      } as const;
      const washer = { ...widest, size: inch(1.75), series: "F844 narrow, as no series is named", widest };
      return {
        group: { pattern: onLine(0), washer: given(washer, "ASTM F844") },
        basePlate: { shape: rect(inch(2.25 + 2.0625 - 1.25) + 2 * delta) },
      };
    },
    passes: 1,
    pick: (row) => row.subject === "A1" && row.note.includes("round washer 2-1/4 (F844 wide, as no series is named)"),
  });

  const noHole = missing("basePlate.hole", "no hole is given");
  const noWasher = missing("basePlate.washer", "no washer is given");
  // Hole and washer are at least as large as the rod, 1-1/4; the washer is 3, the hole 2-1/16.
  describe.each([
    ["hole", { baseHole: noHole }, 3],
    ["washer", { washer: noWasher }, 2.0625],
    ["hole and washer", { baseHole: noHole, washer: noWasher }, 1.25],
  ] as const)("without %s, what fails whatever it is fails", (_, lack, width) => {
    it.each([
      [-1, "fail"],
      [0, "not-checked"],
      [1, "not-checked"],
    ])("limit %i nm: %s", (delta, status) => {
      const changes = { group: { pattern: onLine(0), ...lack }, basePlate: { shape: rect(inch(width) + 2 * delta) } };
      const row = rowOf(washerOnPlate, changes, isSubject("A1"));
      expect(row.status).toBe(status);
      expect(row.note).toMatch(/\(basePlate\.(hole|washer)\)$/);
      expect(row.note.includes("it fails whatever the")).toBe(status === "fail");
    });
  });

  it("reports the turned corner of a square washer", () => {
    const note = (x: number) =>
      rowOf(washerOnPlate, { ...one, basePlate: { shape: rect(inch(x)) } }, isSubject("A1")).note;
    expect(note(5)).toContain("turned, its corner reaches 2.5276 and overhangs it");
    expect(note(6)).toContain("turned, its corner reaches 2.5276 and stays on the plate");
    expect(rowOf(washerOnPlate, { group: { pattern: onLine(0), washer: round } }, isSubject("A1")).note).not.toContain(
      "corner",
    );
  });

  it.each([
    ["hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, "basePlate.hole"],
    ["washer", { group: { washer: missing("basePlate.washer", "no washer is given") } }, "basePlate.washer"],
    ["size", { basePlate: { shape: missing("basePlate", "no base plate is given") } }, "(basePlate)"],
  ] as const)("is not checked without a %s", (_, changes, key) => {
    const rows = rowsOf(washerOnPlate, changes);
    expect(rows.every(({ status, note }) => status === "not-checked" && note.includes(key))).toBe(true);
    expect(rows).toHaveLength(4);
  });

  // A washer is no smaller than its rod, 1-1/4: it asks for 5/8, with play (2-1/16 - 1-1/4)/2 for 1-1/32. Known, 3/2 without play.
  it.each([
    ["washer", { washer: missing("basePlate.washer", "none given") }, inch(1.03125)],
    ["hole", { baseHole: missing("basePlate.hole", "none given") }, inch(1.5)],
    [
      "hole and the washer",
      { baseHole: missing("basePlate.hole", "none"), washer: missing("basePlate.washer", "none") },
      inch(0.625),
    ],
  ] as const)("fails whatever the %s is", (name, group, edge) => {
    const rowAt = (delta: number) =>
      rowOf(
        washerOnPlate,
        { group: { pattern: onLine(0), ...group }, basePlate: { shape: rect(2 * edge + 2 * delta) } },
        isSubject("A1"),
      );
    expect(rowAt(-1)).toMatchObject({ status: "fail", note: expect.stringContaining(`whatever the ${name} `) });
    expect([0, 1].map((delta) => rowAt(delta).status)).toEqual(["not-checked", "not-checked"]);
  });
});
