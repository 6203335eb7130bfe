/** Names of files to cut by: no two of one job are the same on any system, and every one is a name that all systems take. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CUT_NAME_PARTS, type CutNamePart } from "../../src/job/model/job.js";
import { markFault, markKey } from "../../src/job/schema/marks.js";
import { makingPath, nameIn } from "../../src/outputs/names.js";
import { inches, millimetres } from "../../src/units/length.js";
import { jobFixture, shopFixture } from "../fixture.js";
import { SEED } from "../seed.js";

const piece = {
  mark: "T9",
  revision: "B",
  quantity: 2,
  material: "steel" as "steel" | "plywood",
  grade: "A36" as string | null,
  thickness: inches(0.375),
};

function nameOf(changes: Partial<typeof piece>, shop: Partial<{ name: readonly CutNamePart[] }> = {}, held = false) {
  const own = shopFixture();
  const job = {
    ...jobFixture({ shop: { ...own, cutFile: { ...own.cutFile, ...shop } } }),
    status: "released" as const,
  };
  return makingPath({ job, held: held ? ["a reason"] : [], open: [] }, { plate: { ...piece, ...changes } });
}

describe("the name of a file to cut by", () => {
  it.each([
    [{}, "cut/T9_2-off_PL3-8_A36_rev-B"],
    [{ thickness: inches(1.25) }, "cut/T9_2-off_PL1-1-4_A36_rev-B"],
    [{ thickness: millimetres(6) }, "cut/T9_2-off_PL6mm_A36_rev-B"],
    [{ grade: "A572 Gr. 50" }, "cut/T9_2-off_PL3-8_A572-Gr.-50_rev-B"],
    [{ grade: "S235JR+N" }, "cut/T9_2-off_PL3-8_S235JR-N_rev-B"],
    [{ grade: null }, "cut/T9_2-off_PL3-8_steel_rev-B"],
    [{ grade: "Ст3" }, "cut/T9_2-off_PL3-8_u421u4423_rev-B"],
    [{ material: "plywood" as const, grade: null, thickness: inches(0.75) }, "cut/T9_2-off_PLY3-4_plywood_rev-B"],
  ])("%j", (changes, name) => {
    expect(nameOf(changes)).toBe(name);
  });

  it("has decimals of a millimetre as they are, and a held one lies apart", () => {
    const job = { ...jobFixture(), unit: "mm" as const, status: "for approval" as const };
    const plate = { ...piece, thickness: millimetres(6.35) };
    expect(makingPath({ job, held: [], open: [] }, { plate })).toBe("cut/T9_2-off_PL6.35_A36_rev-B_NOT-RELEASED");
    expect(makingPath({ job, held: ["why"], open: [] }, { plate }, "lines")).toBe(
      "cut/held/lines/T9_2-off_PL6.35_A36_rev-B_HELD_NOT-RELEASED",
    );
  });

  it("has the parts that the shop wants, in its order", () => {
    expect(nameOf({}, { name: ["thickness", "material", "mark"] })).toBe("cut/PL3-8_A36_T9");
    expect(nameOf({}, { name: ["mark"] }, true)).toBe("cut/held/T9_HELD");
  });

  const text = fc.string({
    unit: fc.constantFrom("A", "b", "_", "-", "1", "2", "o", "f", "P", "L", ".", " ", "/"),
    minLength: 1,
    maxLength: 9,
  });
  const mark = text.filter((each) => markFault(each) === null);
  const plate = fc.record({
    mark,
    quantity: fc.integer({ min: 1, max: 12 }),
    grade: fc.option(text, { nil: null }),
    thickness: fc.constantFrom(inches(0.25), inches(1.25), inches(11 / 8), millimetres(6), millimetres(6.35)),
  });

  it("is another one for another mark, whatever else, in any case of its letters", () => {
    const names = fc.shuffledSubarray([...CUT_NAME_PARTS], { minLength: 1 }).filter((parts) => parts.includes("mark"));
    fc.assert(
      fc.property(plate, plate, names, fc.boolean(), fc.boolean(), (a, b, name, heldA, heldB) => {
        fc.pre(markKey(a.mark) !== markKey(b.mark));
        const [one, other] = [nameOf(a, { name }, heldA), nameOf(b, { name }, heldB)];
        expect(one.toUpperCase()).not.toBe(other.toUpperCase());
        expect(
          markFault(
            nameIn(one)
              .slice(0, 60)
              .replace(/[. ]+$/, ""),
          ),
        ).toBeNull();
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});
