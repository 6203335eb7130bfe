/** Plates at the lower end against the nut that bears on them: geometry, with the nuts of ASME B18.2.2 as the fixture has them. */
import { describe, expect, it } from "vitest";
import { rodEndPlate } from "../../../src/checks/rules/rod-end-plate.js";
import type { Bottom } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inches } from "../../../src/units/index.js";
import { inch, plus, rowOf, testAtLimit } from "./context.js";

const ANY = () => true;
const end = (bottom: Bottom) => ({ rod: { bottom: given(bottom, "job") } });
const plate = (size: ReturnType<typeof inch>, nuts: number) =>
  end({ kind: "plate", nuts, tackWelded: false, shape: "square", size, thickness: inch(1) });
const washer = (size: ReturnType<typeof inch>) =>
  end({ kind: "nut", washer: { shape: "round", size, thickness: inch(0.5) }, tackWelded: false });

describe("rod-end-plate", () => {
  // A 1-1/4 heavy hex nut is 2.309 across its corners (ASME B18.2.2).
  testAtLimit({
    name: "a plate against its nut",
    rule: rodEndPlate,
    at: (delta) => plate(plus(inches(2.309), delta), 2),
    passes: 1,
    pick: ANY,
  });

  testAtLimit({
    name: "a plate washer against its nut",
    rule: rodEndPlate,
    at: (delta) => washer(plus(inches(2.309), delta)),
    passes: 1,
    pick: ANY,
  });

  // A hole is 1/16 in larger than the rod, common practice.
  testAtLimit({
    name: "a plate that is welded on against the rod",
    rule: rodEndPlate,
    at: (delta) => plate(plus(inch(1.3125), delta), 0),
    passes: 1,
    pick: ANY,
  });

  it.each<[string, Bottom]>([
    ["a nut alone", { kind: "nut", washer: null, tackWelded: false }],
    ["a hook", { kind: "hook", reach: inch(5), radius: null }],
    ["nothing", { kind: "straight" }],
  ])("asks nothing of %s", (_, bottom) => {
    expect(rowOf(rodEndPlate, end(bottom), ANY).status).toBe("not-applicable");
  });

  it("asks for what it lacks", () => {
    const nut = missing("rods.nut", "no nut");
    const bottom = missing("rods.bottom", "the lower end of the rods is not given");
    expect(rowOf(rodEndPlate, { rod: { bottom } }, ANY)).toMatchObject({ missing: ["rods.bottom"] });
    const { rod } = plate(inch(3), 1);
    expect(rowOf(rodEndPlate, { rod: { ...rod, nut } }, ANY)).toMatchObject({ missing: ["rods.nut"] });
  });
});
