import { describe, expect, it } from "vitest";
import { rodPlay } from "../../../src/checks/rules/rod-play.js";
import { given } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { inch, isSubject, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const holed = (hole: Length) => ({ group: { hole: given(hole, "job") } });
const spacingEdition = { job: { editions: { ...jobFixture().editions, placing: "AISC 303-10" } } } as const;

describe("rod-play", () => {
  // ACI 117-10 2.3.4.2: 3/8 in for a 1-1/4 in rod, so the play is at most 3/4 in.
  testAtLimit({
    name: "radial play against a position tolerance",
    rule: rodPlay,
    at: (delta) => holed(plus(inch(2), delta)),
    passes: -1,
    pick: isSubject("A1"),
  });

  // AISC 303-10 7.5.1(a): 1/8 in between two rods; the mean play of two equal rods is h - d.
  testAtLimit({
    name: "mean play against a spacing tolerance",
    rule: rodPlay,
    at: (delta) => ({ ...spacingEdition, ...holed(plus(inch(1.375), delta)) }),
    passes: -1,
    pick: isSubject("A1"),
  });

  it("shows the share and what two rods can do", () => {
    expect(rowOf(rodPlay, {}, isSubject("A1")).note).toBe(
      "radial play 1/32: 8 % of the position tolerance 3/8; two rods can come together or apart by 1/16",
    );
  });

  it("says nothing of two rods where there is one", () => {
    expect(rowOf(rodPlay, { group: { pattern: onLine(0) } }, isSubject("A1")).note).not.toContain("two rods");
  });

  it("names the nearest sizes for a rod that the edition does not hold", () => {
    const [row] = rowsOf(rodPlay, { rod: { size: "1-1/8", diameter: inch(1.125) } });
    expect(row).toMatchObject({ status: "not-checked", severity: "advise" });
    expect(row?.note).toContain("nearest: 1, 1-1/4");
  });

  it("does not apply to a plate over cast rods", () => {
    const rows = rowsOf(rodPlay, { template: { use: "setting plate over cast rods" } });
    expect(rows.map(({ status }) => status)).toEqual(["not-applicable"]);
  });
});
