import { describe, expect, it } from "vitest";
import type { JobContext } from "../../../src/checks/index.js";
import { lookAlike } from "../../../src/checks/job-rules/look-alike.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import type { Base, Pattern } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import { makePlateOutline } from "../../../src/template/index.js";
import type { Length } from "../../../src/units/length.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

const rectangle = (x: Length, y: Length): Pattern => ({ kind: "rectangle", x, y, nx: 2, ny: 2, perimeter: false });

function baseOf(mark: string, pattern: Pattern, template: Partial<Base["template"]> = {}): Base {
  const fixture = baseFixture();
  return baseFixture({
    mark,
    groups: [groupFixture({ pattern })],
    template: { ...fixture.template, mark: `T-${mark}`, ...template },
  });
}

function rowsOf(bases: readonly Base[]) {
  const job = jobFixture({ bases });
  const outlined = bases.map((base) => {
    const rods = placeRods(base);
    const outline = rods.ok ? makePlateOutline(job, base, rods.value) : rods;
    if (!rods.ok || !outline.ok) throw new Error(base.mark);
    return { base, rods: rods.value, outline: outline.value };
  });
  const context: JobContext = { job, plan: null, bases: outlined };
  return runJobRules([lookAlike], context);
}

describe("look-alike", () => {
  it.each([
    [-1, "fail"],
    [0, "none"],
    [1, "none"],
  ] as const)("is an error below the limit, not one at it: limit %i nm", (delta, status) => {
    // Each side wider by twice the error along x: the rods are off by half of that.
    const wider = nanometres(inches(12) + 2 * (inches(1) + delta));
    const rows = rowsOf([baseOf("B1", rectangle(inches(12), inches(9))), baseOf("B2", rectangle(wider, inches(9)))]);
    expect(rows.map((row) => [row.subject, row.status])).toEqual(
      status === "fail" ? [["B1 / B2", "fail"]] : [["marks", "pass"]],
    );
  });

  it("finds a pattern that nearly agrees only when it is turned", () => {
    const rows = rowsOf([
      baseOf("B1", rectangle(inches(12), inches(9))),
      baseOf("B2", rectangle(inches(9), inches(12.5))),
    ]);
    expect(rows.map(({ subject, note, severity }) => [subject, note, severity])).toEqual([
      ["B1 / B2", "turned 90: rods 1/4 off", "advise"],
    ]);
  });

  it("proposes one mark for templates that are the same", () => {
    const rows = rowsOf(["B3", "B7", "B9"].map((mark) => baseOf(mark, rectangle(inches(12), inches(9)))));
    expect(rows.map(({ subject, status, note }) => [subject, status, note])).toEqual([
      [
        "B3, B7, B9",
        "fail",
        "rods 1-1/4 in, 12 x 9: 3 bases could be set with one template; merge: auto makes one of them",
      ],
    ]);
  });

  it("says what differs where only the pattern is the same", () => {
    const pattern = rectangle(inches(12), inches(9));
    const rows = rowsOf([
      baseOf("B3", pattern),
      baseOf("B7", pattern, { thickness: inches(0.375), opening: { kind: "none" } }),
    ]);
    expect(rows.map(({ subject, status, note }) => [subject, status, note])).toEqual([
      ["B3 / B7", "not-applicable", "the same pattern; the templates differ in opening, thickness"],
    ]);
  });

  it("does not apply to a job of one mark", () => {
    expect(rowsOf([baseOf("B1", rectangle(inches(12), inches(9)))])[0]?.status).toBe("not-applicable");
  });
});
