import { describe, expect, it } from "vitest";
import { rodOnBasePlate } from "../../../src/checks/rules/rod-on-base-plate.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inches, millimetres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { inch, isSubject, plus, rowsOf, testAtLimit } from "./context.js";

const plate = (x: Length, y: Length) => ({
  shape: given({ kind: "rectangle", x, y, corner: { kind: "square" } } as const, "job"),
});
const rods = (x: Length, y: Length, group: NonNullable<Changes["group"]> = {}): NonNullable<Changes["group"]> => ({
  ...group,
  pattern: { kind: "rectangle", x, y, nx: 2, ny: 2, perimeter: false },
});
const noHole = missing("basePlate.hole", "none");
const noPlate = missing("basePlate", "no size of the base plate is given");
const OUTLINE = { kind: "auto", corner: { kind: "square" } } as const;
const template = { outline: OUTLINE, opening: { kind: "none" } } as const;

describe("rod-on-base-plate", () => {
  // By hand: rods 12 apart, hole 2-1/16: the plate is 12 + 2-1/16 = 14-1/16 where the holes touch its edges.
  testAtLimit({
    name: "the hole touches the edge",
    rule: rodOnBasePlate,
    at: (delta) => ({ basePlate: plate(plus(inch(14.0625), 2 * delta), inch(16)) }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "without a hole, the rod of 1-1/4 touches the edge",
    rule: rodOnBasePlate,
    at: (delta) => ({ group: { baseHole: noHole }, basePlate: plate(plus(inch(13.25), 2 * delta), inch(16)) }),
    passes: 1,
    pick: isSubject("A3"),
  });

  testAtLimit({
    name: "a round plate: rods of 1-1/4 on a circle of sqrt(12^2 + 16^2) = 20",
    rule: rodOnBasePlate,
    at: (delta) => ({
      group: rods(inch(12), inch(16), { baseHole: noHole }),
      basePlate: { shape: given({ kind: "circle", diameter: plus(inch(21.25), 2 * delta) } as const, "job") },
      template,
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  it.each([
    [
      "x and y swapped",
      rods(inch(16), inch(8)),
      plate(inch(14), inch(22)),
      "the pattern is 16 x 8, the base plate 14 x 22: are x and y swapped?",
    ],
    [
      "feet for inches in the pattern",
      rods(inch(144), inch(10)),
      plate(inch(18), inch(16)),
      "x of the pattern, 12 ft where 12 in is meant?",
    ],
    [
      "millimetres in the pattern alone",
      rods(inch(12), inch(250)),
      plate(inch(18), inch(16)),
      "y of the pattern, 250 in where 250 mm is meant?",
    ],
    [
      "millimetres in the plate",
      rods(inch(12), inch(10)),
      plate(millimetres(18), inch(16)),
      "x of the base plate, 18 mm where 18 in is meant?",
    ],
  ] as const)("stops and guesses: %s", (_name, group, basePlate, words) => {
    const row = rowsOf(rodOnBasePlate, { group, basePlate, template }).find(isSubject("A1"));
    expect(row).toMatchObject({ status: "fail", severity: "stop" });
    expect(row?.note).toContain(words);
  });

  it("names the coordinate of a rod that is typed in feet, and looks at points and lines alone", () => {
    const at = [inch(-6), inch(72)].map((x) => ({ x, y: inch(0) }));
    const [first, second] = rowsOf(rodOnBasePlate, { group: { pattern: { kind: "points", at } }, template });
    expect(first?.status).toBe("pass");
    expect(second?.note).toContain("x of A2, 6 ft where 6 in is meant?");
  });

  it("guesses nothing where nothing explains it: a square pattern on a plate that is too small", () => {
    const rows = rowsOf(rodOnBasePlate, { group: rods(inch(12), inch(12)), basePlate: plate(inch(11), inch(11)) });
    expect(rows[0]?.note).toBe("the centre lies 0.7071 off the base plate, hole 2-1/16");
  });

  it.each([
    [
      "figures changed round, 21 for 12: 18 in are no 1.5 ft for 1.5 m",
      rods(inch(21), inch(10)),
      plate(inch(18), inch(16)),
    ],
    ["twice as large: a plate of 23 is none for 3 in", rods(inch(36), inch(31)), plate(inch(23), inch(23))],
  ])("guesses nothing far-fetched: %s", (_name, group, basePlate) => {
    const row = rowsOf(rodOnBasePlate, { group, basePlate, template })[0];
    expect(row?.status).toBe("fail");
    expect(row?.note).not.toContain("?");
  });

  it("says that the hole breaks the edge where the centre is on the plate", () => {
    const rows = rowsOf(rodOnBasePlate, { basePlate: plate(inch(14), inch(14)) });
    expect(rows[0]).toMatchObject({ status: "fail", note: "1 to the edge, hole 2-1/16: the hole breaks the edge" });
  });

  it("follows a base plate that stands off the working point, and is not checked without one", () => {
    const at = { x: inches(5), y: inches(0) };
    const statuses = rowsOf(rodOnBasePlate, { basePlate: { at } }).map(({ status }) => status);
    expect(statuses).toEqual(["fail", "pass", "pass", "fail"]);
    const row = rowsOf(rodOnBasePlate, { basePlate: { shape: noPlate } })[0];
    expect(row).toMatchObject({ status: "not-checked", note: "no size of the base plate is given (basePlate)" });
  });
});
