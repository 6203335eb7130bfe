/** Cautions against what the regulations say: 29 CFR 1926.755 and 1926.751, secondary copies; OSHA's letter of 17 September 2007. */
import { describe, expect, it } from "vitest";
import { CAUTION, CAUTIONS } from "../../../src/checks/cautions.js";
import { NOT_CHECKED_AT_ALL } from "../../../src/checks/index.js";

describe("cautions", () => {
  // 1926.755(b)(1): repair, replacement and field modification of anchor rods; it does not speak of holes.
  it.each([CAUTION.fieldChange, CAUTION.fieldChangeOrSlot])("cite 1926.755(b) for rods, not for holes: %s", (text) => {
    expect(text).toMatch(/^Rods [a-z, ]+ \(29 CFR 1926\.755\(b\)\), nor holes /);
    expect(text).toMatch(/without the approval of the engineer of record\.$/);
    expect(text.match(/29 CFR/g)).toHaveLength(1);
  });

  it("tell what to do, and state nothing that nobody looked at", () => {
    expect(CAUTIONS).toContain("Guard projecting rods.");
    expect(CAUTIONS.filter((text) => /\b(is|are) guarded\b/.test(text))).toEqual([]);
  });

  // 1926.755(a)(2): each column's rods and foundation resist 300 lb at 18 in from the column's outer face, each way, at its top.
  it("say that the anchorage of 1926.755(a)(2) is not checked, so that a rod count reads as no more than that", () => {
    const words = NOT_CHECKED_AT_ALL.filter((text) => text.includes("1926.755(a)(2)"));
    expect(words).toHaveLength(1);
    expect(words[0]).toMatch(/300 lb at 18 in from the column's outer face/);
    expect(words[0]).not.toMatch(/,/);
  });
});
