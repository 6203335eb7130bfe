import { describe, expect, it } from "vitest";
import { basePlateGroutHole } from "../../../src/checks/rules/base-plate-grout-hole.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { inch, rowsOf } from "./context.js";

const rect = (x: number, y: number) =>
  given({ kind: "rectangle", x: nanometres(x), y: nanometres(y), corner: { kind: "square" } } as const, "job");
const round = (diameter: number) => given({ kind: "circle", diameter: nanometres(diameter) } as const, "job");
const hole = { at: { x: nanometres(0), y: nanometres(0) }, diameter: inch(3) };

// A grout or air hole of about 3 in in plates of about 36 in and more: detailing textbook notes and Design Guide 1, secondary copies.
describe("base-plate-grout-hole", () => {
  it.each([-1, 0, 1])("a lesser side of 36 in %i nm", (delta) => {
    const status = delta < 0 ? "not-applicable" : "fail";
    for (const shape of [rect(inch(36) + delta, inch(48)), rect(inch(48), inch(36) + delta), round(inch(36) + delta)]) {
      expect(rowsOf(basePlateGroutHole, { basePlate: { shape } })).toMatchObject([
        { subject: "base plate", status, severity: "advise", edition: "Design Guide 1, 2nd ed." },
      ]);
    }
  });

  it.each([
    [0, "fail", -1, "36 on its lesser side; the job gives no hole (basePlate.groutHoles); about 3 is usual"],
    [1, "pass", 0, "36 on its lesser side; 1 hole of 3; about 3 is usual"],
    [2, "pass", 1, "36 on its lesser side; 2 holes of 3; about 3 is usual"],
  ])("with %i holes: %s", (count, status, margin, note) => {
    const groutHoles = Array(count).fill(hole);
    expect(rowsOf(basePlateGroutHole, { basePlate: { shape: rect(inch(36), inch(40)), groutHoles } })).toMatchObject([
      { status, note, margin: { kind: "count", count: margin } },
    ]);
  });

  it.each([
    [914, "not-applicable"],
    [915, "fail"],
  ])("a metric plate of %i mm: %s (36 in are 914.4 mm)", (side, status) => {
    const shape = rect(millimetres(side), millimetres(side));
    const job = jobFixture({ unit: "mm" });
    expect(rowsOf(basePlateGroutHole, { job, basePlate: { shape } })).toMatchObject([{ status }]);
  });

  it("is not checked without the plate's size", () => {
    const shape = missing("basePlate", "no size of the base plate is given");
    expect(rowsOf(basePlateGroutHole, { basePlate: { shape } })).toMatchObject([
      { status: "not-checked", note: "no size of the base plate is given (basePlate)" },
    ]);
  });
});
