/** Common practice: turned bases stand square to a line of the grid. Angles by hand: pi / 2 rad = 90 degrees. */
import { describe, expect, it } from "vitest";
import { baseTurn } from "../../../src/checks/job-rules/base-turn.js";
import { given } from "../../../src/job/model/job.js";
import type { GridLine } from "../../../src/job/model/plan.js";
import { gridLines, placementAt, zero } from "../../setting-out-plan.js";
import { at, jobRowsOf } from "./layout-context.js";

const origin = { x: zero, y: zero };
const skewed: GridLine = { kind: "skewed", name: "S", through: origin, degrees: 12.5 };
const radial: GridLine = { kind: "radial", name: "R", center: origin, degrees: 30 };
const arc: GridLine = { kind: "arc", name: "K", center: origin, radius: at(600) };

const rows = (turn: number, lines: readonly GridLine[] = gridLines, crossing: readonly [string, string] = ["A", "1"]) =>
  jobRowsOf(baseTurn, { lines, placements: [placementAt(crossing, { turn })] }).map(({ status, note }) => [
    status,
    note,
  ]);

describe("base-turn", () => {
  it.each([90, 180, 270, -90, 360])("takes a turn of %d", (turn) => {
    expect(rows(turn)).toEqual([["pass", "every turned base is square to a line"]]);
  });

  it.each([
    [9, "turn 9\u00B0, 9\u00B0 off the nearest line: 90\u00B0 meant?"],
    [-27, "turn -27\u00B0, 27\u00B0 off the nearest line: -270\u00B0 meant?"],
    [1.5708, "turn 1.5708\u00B0, 1.5708\u00B0 off the nearest line: radians, 90\u00B0 meant?"],
    [4.7124, "turn 4.7124\u00B0, 4.7124\u00B0 off the nearest line: radians, 270\u00B0 meant?"],
    [45, "turn 45\u00B0, 45\u00B0 off the nearest line: meant, or a slip of the pen?"],
    [89.98, "turn 89.98\u00B0, 0.02\u00B0 off the nearest line: meant, or a slip of the pen?"],
  ])("asks twice about a turn of %d", (turn, note) => {
    expect(rows(turn)).toEqual([["fail", note]]);
  });

  it("takes bases along or across skewed and radial lines, and along an arc at their own place", () => {
    for (const turn of [12.5, 102.5, -77.5]) expect(rows(turn, [...gridLines, skewed])[0]?.[0]).toBe("pass");
    expect(rows(13, [...gridLines, skewed])[0]?.[0]).toBe("fail");
    for (const turn of [30, 120]) expect(rows(turn, [radial, arc], ["R", "K"])[0]?.[0]).toBe("pass");
    // An arc alone: its tangent where a line at 30 degrees crosses it.
    const beside = { kind: "x", name: "X", at: at(600 * Math.cos(Math.PI / 6)) } as const;
    const near = given({ x: beside.at, y: at(300) }, "test");
    for (const [turn, status] of [
      [30, "pass"],
      [31, "fail"],
    ] as const) {
      const placements = [placementAt(["X", "K"], { turn, near })];
      expect(jobRowsOf(baseTurn, { lines: [beside, arc], placements })[0]?.status).toBe(status);
    }
  });

  it("joins the bases of one mark and turn, and has nothing to say where none is turned", () => {
    const placements = [placementAt(["A", "1"], { turn: 9 }), placementAt(["B", "1"], { turn: 9 })];
    expect(jobRowsOf(baseTurn, { placements }).map(({ subject }) => subject)).toEqual(["B1 A-1, B1 B-1"]);
    expect(rows(0)).toEqual([["not-applicable", "no base is turned"]]);
  });
});
