import { describe, expect, it } from "vitest";
import { washerCover } from "../../../src/checks/rules/washer-cover.js";
import type { Washer } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const washer = (shape: Washer["shape"], size: Length) =>
  given({ shape, size, thickness: given(inch(0.5), "job") }, "job");

describe("washer-cover", () => {
  // 2 x 2-1/16 - 1-1/4 = 2-7/8
  testAtLimit({
    name: "a square washer",
    rule: washerCover,
    at: (delta) => ({ group: { washer: washer("square", plus(inch(2.875), delta)) } }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "a round washer",
    rule: washerCover,
    at: (delta) => ({ group: { washer: washer("round", plus(inch(2.875), delta)) } }),
    passes: 1,
    pick: isSubject("A1"),
  });

  it("gives the figures of the contract's example", () => {
    expect(rowOf(washerCover, {}, isSubject("A1"))).toMatchObject({
      severity: "ask",
      value: { twice: 2 * inch(3) },
      limit: { twice: 2 * inch(2.875) },
      margin: { twice: 2 * inch(0.125) },
      note: "square washer 3 against 2 x hole 2-1/16 - rod 1-1/4",
    });
  });

  it.each([
    ["hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, "basePlate.hole"],
    ["washer", { group: { washer: missing("basePlate.washer", "no washer is given") } }, "basePlate.washer"],
  ] as const)("is not checked without a %s", (_, changes, key) => {
    const rows = rowsOf(washerCover, changes);
    expect(rows.every(({ status, note }) => status === "not-checked" && note.includes(key))).toBe(true);
    expect(rows).toHaveLength(4);
  });
});
