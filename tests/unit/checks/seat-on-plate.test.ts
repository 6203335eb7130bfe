import { describe, expect, it } from "vitest";
import { seatOnPlate } from "../../../src/checks/rules/seat-on-plate.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const at = { x: zero, y: zero };
const noOpening = { opening: { kind: "none" } } as const;
const one = { group: { pattern: onLine(0) } };
const wide = (x: number) =>
  ({
    ...noOpening,
    outline: { kind: "rectangle", x: nanometres(x), y: inch(9), at, corner: { kind: "square" } },
  }) as const;
const washer = (shape: "round" | "square") =>
  given({ shape, size: inch(3), thickness: given(inch(0.25), "shop") }, "shop");

describe("seat-on-plate", () => {
  testAtLimit({
    name: "the nut across corners, 2.309 + 1/16",
    rule: seatOnPlate,
    at: (delta) => ({ ...one, template: wide(inch(2.309) + inch(0.0625) + 2 * delta) }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "a round washer, 3 + 1/16",
    rule: seatOnPlate,
    at: (delta) => ({ ...one, shop: { templateWasher: washer("round") }, template: wide(inch(3.0625) + 2 * delta) }),
    passes: 1,
    pick: isSubject("A1"),
  });

  // 3 in x sqrt 2 = 107 763 072.5... nm; the edge's half side must be whole, so the play takes the odd nanometre.
  testAtLimit({
    name: "a square washer corner to corner",
    rule: seatOnPlate,
    at: (delta) => {
      const corner = Math.round(inch(3) * Math.SQRT2);
      const play = inch(0.0625) + (corner % 2);
      return {
        group: { pattern: onLine(0), hole: given(nanometres(inch(1.25) + play), "job") },
        shop: { templateWasher: washer("square") },
        template: wide(corner + play + 2 * delta),
      };
    },
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "off the opening",
    rule: seatOnPlate,
    at: (delta) => ({
      group: { pattern: onLine(inch(5)) },
      template: {
        opening: { kind: "circle", diameter: nanometres(2 * inch(5) - inch(2.309) - inch(0.0625) - delta), at },
      },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  it("takes the nut where it is wider than the washer", () => {
    const small = given({ shape: "round", size: inch(1.5), thickness: given(inch(0.1), "shop") } as const, "shop");
    expect(rowOf(seatOnPlate, { shop: { templateWasher: small } }, isSubject("A1")).note).toContain(
      "nut across corners",
    );
  });

  it.each([
    ["nut", { rod: { nut: missing("rods.nut", "no table holds a nut for this rod") } }, "rods.nut"],
    ["washer on plywood", { template: { material: "plywood" } }, "shop.templateWasher"],
  ] as const)("is not checked without a %s", (_, changes, key) => {
    const rows = rowsOf(seatOnPlate, changes);
    expect(rows.every(({ status, note }) => status === "not-checked" && note.includes(key))).toBe(true);
    expect(rows).toHaveLength(4);
  });

  it("does not apply to a plate over cast rods", () => {
    expect(rowsOf(seatOnPlate, { template: { use: "setting plate over cast rods" } })[0]?.status).toBe(
      "not-applicable",
    );
  });

  // A nut is no narrower than its rod, 1-1/4, and plays by 1/16; a nut that is known needs its own 2.309 under any washer.
  it.each([
    ["nut", { rod: { nut: missing("rods.nut", "none tabulated") } }, "steel", 1.25],
    ["washer", {}, "plywood", 2.309],
  ] as const)("fails whatever the %s is", (name, changes, material, across) => {
    const rowAt = (delta: number) => {
      const { outline, ...rest } = wide(inch(across) + inch(0.0625) + 2 * delta + 2 * inch(2));
      const template = { ...rest, outline: { ...outline, at: { x: inch(2), y: nanometres(0) } }, material };
      return rowOf(seatOnPlate, { ...one, ...changes, template }, isSubject("A1"));
    };
    expect(rowAt(-1)).toMatchObject({ status: "fail", note: expect.stringContaining(`whatever the ${name} is`) });
    expect([0, 1].map((delta) => rowAt(delta).status)).toEqual(["not-checked", "not-checked"]);
  });
});
