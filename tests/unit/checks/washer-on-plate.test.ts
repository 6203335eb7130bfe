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

describe("washer-on-plate", () => {
  testAtLimit({
    name: "to the edge of a rectangle",
    rule: washerOnPlate,
    at: (delta) => ({ ...one, basePlate: { shape: rect(2 * reach + 2 * delta) } }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "to the arc of a round base plate",
    rule: washerOnPlate,
    at: (delta) => ({
      ...one,
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

  it("reports the turned corner of a square washer", () => {
    const note = (x: number) =>
      rowOf(washerOnPlate, { ...one, basePlate: { shape: rect(inch(x)) } }, isSubject("A1")).note;
    expect(note(5)).toContain("turned, its corner reaches 2.5276 and overhangs it");
    expect(note(6)).toContain("turned, its corner reaches 2.5276 and stays on the plate");
    const round = given({ shape: "round", size: inch(3), thickness: given(inch(0.5), "job") } as const, "job");
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
