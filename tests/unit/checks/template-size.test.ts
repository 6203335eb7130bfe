import { describe, expect, it } from "vitest";
import { templateSize } from "../../../src/checks/rules/template-size.js";
import { nanometres } from "../../../src/units/index.js";
import { contextOf, inch, isSubject, rowsOf, testAtLimit } from "./context.js";

const at = { x: nanometres(0), y: nanometres(0) };
const corner = { kind: "square" } as const;

describe("template-size", () => {
  testAtLimit({
    name: "the larger side, along y",
    rule: templateSize,
    at: (delta) => ({
      template: { outline: { kind: "rectangle", x: inch(16), y: nanometres(inch(24) + 2 * delta), at, corner } },
    }),
    passes: -1,
    pick: isSubject("plate"),
  });

  testAtLimit({
    name: "the diameter of a round plate",
    rule: templateSize,
    at: (delta) => ({ template: { outline: { kind: "circle", diameter: nanometres(inch(24) + delta), at } } }),
    passes: -1,
    pick: isSubject("plate"),
  });

  const keyed = (diameter: number, ...spots: readonly (readonly [number, number])[]) =>
    ({
      template: {
        outline: { kind: "circle", diameter: nanometres(diameter), at },
        opening: { kind: "none" },
        key: "auto",
      },
      group: { pattern: { kind: "points", at: spots.map(([x, y]) => ({ x: inch(x), y: inch(y) })) } },
    }) as const;

  it.each([
    [
      [6, 5],
      [-6, 5],
      [-6, -5],
      [6, -4],
    ],
    [
      [7, 1],
      [-6.5, 3.25],
      [2.125, -7],
    ],
    [
      [0, 8],
      [3, -8],
      [-5, -5],
    ],
  ] as const)("a round plate of exactly 24 with a notch as its key passes, pattern %#", (...spots) => {
    for (const delta of [-1, 0, 1]) {
      const changes = keyed(inch(24) + delta, ...spots);
      expect(contextOf(changes).plate.keyed).not.toBeNull();
      expect(rowsOf(templateSize, changes)).toMatchObject([
        { status: delta > 0 ? "fail" : "pass", value: { twice: 2 * (inch(24) + delta) } },
      ]);
    }
  });

  it("only advises, and does not speak of plywood", () => {
    expect(rowsOf(templateSize)[0]).toMatchObject({ status: "fail", severity: "advise", note: "overall 26 x 18" });
    expect(rowsOf(templateSize, { template: { material: "plywood" } })[0]?.status).toBe("not-applicable");
  });
});
