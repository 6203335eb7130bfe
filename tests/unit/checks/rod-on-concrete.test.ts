import { describe, expect, it } from "vitest";
import { rodOnConcrete } from "../../../src/checks/rules/rod-on-concrete.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inch, isSubject, plus, rowsOf, testAtLimit } from "./context.js";

const pier = (x: Length, y: Length) => ({
  shape: given({ kind: "rectangle", x, y, corner: { kind: "square" } } as const, "job"),
});

describe("rod-on-concrete", () => {
  // By hand: rods 1-1/4 at 12 apart touch the side of a pier of 13-1/4.
  testAtLimit({
    name: "the rod touches the side",
    rule: rodOnConcrete,
    at: (delta) => ({ concrete: pier(plus(inch(13.25), 2 * delta), inch(24)) }),
    passes: 1,
    pick: isSubject("A2"),
  });

  it("stops and guesses: x and y swapped; a pier in millimetres", () => {
    const pattern = { kind: "rectangle", x: inch(20), y: inch(8), nx: 2, ny: 2, perimeter: false } as const;
    const template = { outline: { kind: "auto", corner: { kind: "square" } }, opening: { kind: "none" } } as const;
    const [swapped] = rowsOf(rodOnConcrete, { group: { pattern }, concrete: pier(inch(14), inch(30)), template });
    expect(swapped).toMatchObject({ status: "fail", severity: "stop" });
    expect(swapped?.note).toContain("the pattern is 20 x 8, the concrete 14 x 30: are x and y swapped?");
    const small = pier(inch(24 / 25.4), inch(24));
    expect(rowsOf(rodOnConcrete, { concrete: small })[0]?.note).toContain("24 mm where 24 in is meant?");
  });

  it("is not checked without a pier", () => {
    const shape = missing("concrete", "no size of the concrete is given");
    expect(rowsOf(rodOnConcrete, { concrete: { shape } })[0]?.note).toBe("no size of the concrete is given (concrete)");
  });
});
