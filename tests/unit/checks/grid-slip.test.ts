import { describe, expect, it } from "vitest";
import { gridSlip } from "../../../src/checks/job-rules/grid-slip.js";
import type { GridLine } from "../../../src/job/model/plan.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { placementAt } from "../../setting-out-plan.js";
import { around, jobRowsOf } from "./layout-context.js";

const feet = (value: number) => inches(12 * value);

/** Lines A, B, ... at these bays along x, in inches; lines 1 and 2 25 ft apart. */
function grid(...bays: readonly number[]): readonly GridLine[] {
  let at = 0;
  const positions = [0, ...bays.map((bay) => (at += bay))];
  const lines = positions.map((x, index): GridLine => {
    return { kind: "x", name: String.fromCharCode(65 + index), at: nanometres(x) };
  });
  return [...lines, { kind: "y", name: "1", at: inches(0) }, { kind: "y", name: "2", at: feet(25) }];
}

const rows = (...bays: readonly number[]) => jobRowsOf(gridSlip, { lines: grid(...bays) });
const bay = feet(25);

describe("grid-slip", () => {
  it.each(around(nanometres(8 * bay), "pass", "fail"))("a bay of %d nm beside three of 25 ft: %s", (size, status) => {
    expect(rows(bay, bay, bay, size)[0]?.status).toBe(status);
  });

  it.each([
    ["25 m for 25 ft twelve times over", feet(300), "ask", "300 ft where 300 in is meant?"],
    ["a short bay, which may be a joint", inches(25), "advise", "25 in where 25 ft is meant?"],
  ])("guesses: %s", (_name, size, severity, words) => {
    const [row] = rows(bay, bay, size, bay);
    expect(row).toMatchObject({ status: "fail", severity, subject: "C - D" });
    expect(row?.note).toContain(words);
  });

  it("has no opinion of one or two bays, nor of bays that differ as bays do", () => {
    expect(rows(bay, feet(300)).map(({ subject, status }) => [subject, status])).toEqual([["plan", "pass"]]);
    expect(rows(feet(10), bay, feet(40), feet(60))[0]?.status).toBe("pass");
  });

  // Bays of 30 ft: half of one is 15 ft.
  it.each(around(feet(15), "pass", "fail"))("an offset of %d nm: %s", (x, status) => {
    const placements = [placementAt(["A", "1"], { offset: { x: nanometres(x), y: inches(0) } })];
    expect(jobRowsOf(gridSlip, { placements })[0]?.status).toBe(status);
  });

  it("guesses feet for inches up to half a bay: 72 ft in bays of 22.5 and 30 ft", () => {
    const placements = [placementAt(["A", "1"], { offset: { x: feet(72), y: inches(0) } })];
    const [row] = jobRowsOf(gridSlip, { lines: grid(feet(22.5), feet(22.5)), placements });
    expect(row?.note).toContain("offset along x 864, the least bay beside it 270: 72 ft where 72 in is meant?");
  });

  it("guesses an offset in millimetres, and only advises", () => {
    const placements = [placementAt(["A", "1"], { offset: { x: inches(0), y: inches(-152) } })];
    const [row] = jobRowsOf(gridSlip, { placements });
    expect(row).toMatchObject({ status: "fail", severity: "advise", subject: "B1 A-1" });
    expect(row?.note).toContain("152 in where 152 mm is meant?");
  });
});
