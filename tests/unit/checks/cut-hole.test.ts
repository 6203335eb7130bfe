import { describe, expect, it } from "vitest";
import { cutHole } from "../../../src/checks/rules/cut-hole.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { hasClause, inch, isSubject, rowOf, rowsOf, testAtLimit } from "./context.js";

const nail = (diameter: number) => ({
  nailHoles: [{ at: { x: inch(3), y: inch(7) }, diameter: nanometres(diameter) }],
});
const zero = nanometres(0);

describe("cut-hole", () => {
  // 1.5 t of 1/4 in is 3/8 in; the narrow side of the hole is 0.2 mm less.
  testAtLimit({
    name: "a multiple of the thickness, on the narrow side",
    rule: cutHole,
    at: (delta) => ({ template: nail(inch(0.375) + millimetres(0.2) + delta) }),
    passes: 1,
    pick: isSubject("NH1"),
  });

  testAtLimit({
    name: "an absolute least size",
    rule: cutHole,
    at: (delta) => ({
      shop: {
        smallestHole: { perThickness: 1.5, least: inch(0.5), from: "shop" },
        taper: { kind: "own", value: zero },
      },
      template: nail(inch(0.5) + delta),
    }),
    passes: 1,
    pick: isSubject("NH1"),
  });

  testAtLimit({
    name: "the smaller side of a rectangular opening",
    rule: cutHole,
    at: (delta) => ({
      shop: { smallestHole: { perThickness: 1.5, least: inch(3), from: "shop" }, taper: { kind: "own", value: zero } },
      template: {
        opening: {
          kind: "rectangle",
          x: inch(6),
          y: nanometres(inch(3) + 2 * delta),
          radius: inch(0.5),
          at: { x: zero, y: zero },
        },
      },
    }),
    passes: 1,
    pick: hasClause("OP1", "smallest hole"),
  });

  testAtLimit({
    name: "inside corner of an opening",
    rule: cutHole,
    at: (delta) => ({
      template: {
        opening: {
          kind: "rectangle",
          x: inch(6),
          y: inch(4),
          radius: nanometres(millimetres(1) + delta),
          at: { x: zero, y: zero },
        },
      },
    }),
    passes: 1,
    pick: hasClause("OP1", "corner"),
  });

  it("advises on a sharp corner of an opening, which comes out rounded", () => {
    const opening = { kind: "rectangle", x: inch(6), y: inch(4), radius: zero, at: { x: zero, y: zero } } as const;
    const row = rowOf(cutHole, { template: { opening } }, hasClause("OP1", "corner"));
    expect(row).toMatchObject({ status: "fail", severity: "advise" });
  });

  it("advises on a sharp re-entrant corner of the outline", () => {
    const corner = { kind: "notch", x: inch(1), y: inch(1) } as const;
    const outline = { kind: "rectangle", x: inch(20), y: inch(18), at: { x: zero, y: zero }, corner } as const;
    const row = rowOf(cutHole, { template: { outline } }, isSubject("outline"));
    expect(row).toMatchObject({ status: "fail", severity: "advise" });
    expect(row.note).toContain("comes out rounded");
  });

  it("agrees with the plate on which holes are cut and which are drilled", () => {
    for (const diameter of [0.25, 0.375, 0.38, 0.383, 0.5].map(inch)) {
      const row = rowOf(cutHole, { template: nail(diameter) }, isSubject("NH1"));
      expect(row.note.includes("drill mark")).toBe(row.status === "fail");
    }
  });

  it("says that a hole too small to cut is a drill mark, and only advises", () => {
    const row = rowOf(cutHole, { template: nail(inch(0.25)) }, isSubject("NH1"));
    expect(row).toMatchObject({ status: "fail", severity: "advise" });
    expect(row.note).toContain("drill mark");
  });

  it.each([
    ["plywood", { template: { material: "plywood" } }],
    ["a shop that drills", { shop: { process: "drill" } }],
  ] as const)("does not apply to %s", (_, changes) => {
    expect(rowsOf(cutHole, changes).map(({ status }) => status)).toEqual(["not-applicable"]);
  });
});
