import { describe, expect, it } from "vitest";
import { rodSpacing } from "../../../src/checks/rules/rod-spacing.js";
import { given, missing } from "../../../src/job/model/job.js";
import { groupFixture, jobFixture } from "../../fixture.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const PAIR = isSubject("A1-A2");
const torqued = { torqued: given(true, "job") };
const unknown = { torqued: missing("rods.torqued", "not said whether the rods are torqued") };
const apart = (spacing: number) => ({ group: { pattern: onLine(0, spacing) } });

describe("rod-spacing", () => {
  testAtLimit({
    name: "4 d, not torqued",
    rule: rodSpacing,
    at: (delta) => apart(inch(5) + delta),
    passes: 1,
    pick: PAIR,
  });

  testAtLimit({
    name: "6 d, torqued",
    rule: rodSpacing,
    at: (delta) => ({ rod: torqued, ...apart(inch(7.5) + delta) }),
    passes: 1,
    pick: PAIR,
  });

  // 6 d is of the torqued rod alone, 4 d of the other: the greater of the two is asked. Not torqued d, torqued d, asked, note.
  describe.each([
    [2, 1.25, 8, "4 x rod 2, not torqued"],
    [1.5, 1.25, 7.5, "6 x rod 1-1/4, torqued"],
    [1.25, 2, 12, "6 x rod 2, torqued"],
    [1.5, 1, 6, "4 x rod 1-1/2, not torqued"],
  ])("rod %d beside a torqued %d", (loose, tight, asked, note) => {
    testAtLimit({
      name: `${asked} in`,
      rule: rodSpacing,
      at: (delta) => ({
        base: {
          groups: [
            groupFixture({ pattern: onLine(0) }, { diameter: inch(loose) }),
            groupFixture({ letter: "B", pattern: onLine(inch(asked) + delta) }, { diameter: inch(tight), ...torqued }),
          ],
        },
      }),
      passes: 1,
      pick: (row) => row.subject === "A1-B1" && row.note === note,
    });
  });

  it.each([
    [inch(12), "pass", "6 x rod 2, torqued"],
    [inch(12) - 1, "fail", "6 x rod 2, torqued"],
  ])("one not said beside a torqued larger one, %i nm: %s", (spacing, status, note) => {
    const groups = [
      groupFixture({ pattern: onLine(0) }, unknown),
      groupFixture({ letter: "B", pattern: onLine(spacing) }, { diameter: inch(2), ...torqued }),
    ];
    expect(rowOf(rodSpacing, { base: { groups } }, isSubject("A1-B1"))).toMatchObject({ status, note });
  });

  it.each([
    [inch(7.5), "pass", "holds even when torqued"],
    [inch(7.5) - 1, "not-checked", "rods.torqued"],
    [inch(5), "not-checked", "rods.torqued"],
    [inch(5) - 1, "fail", "fails even when not torqued"],
  ])("not known whether torqued, %i nm: %s", (spacing, status, words) => {
    const row = rowOf(rodSpacing, { rod: unknown, ...apart(spacing) }, PAIR);
    expect(row).toMatchObject({ status, severity: "ask" });
    expect(row.note).toContain(words);
  });

  it("does not apply to one rod", () => {
    expect(rowsOf(rodSpacing, { group: { pattern: onLine(0) } })).toMatchObject([{ status: "not-applicable" }]);
  });
});

describe("the clause", () => {
  // ACI 318-19 as printed; 318-14 and 318-11 from memory, as their tables say.
  it.each([
    ["ACI 318-19", "17.9.2(a)"],
    ["ACI 318M-19", "17.9.2(a)"],
    ["ACI 318-14", "17.7.1 / 17.7.2"],
    ["ACI 318-11", "D.8.1 / D.8.2"],
  ] as const)("is that of %s", (concrete, clause) => {
    const { editions } = jobFixture();
    const row = rowOf(rodSpacing, { job: { editions: { ...editions, concrete } }, ...apart(inch(9)) }, PAIR);
    expect(row).toMatchObject({ edition: concrete, clause });
  });
});
