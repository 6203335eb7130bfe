/** What can be read in two ways is read in one, and said: a warning with its place and how to write either. */
import { describe, expect, it } from "vitest";
import { readJob } from "../../../src/job/index.js";
import { vocabulary } from "../../../src/tasks/open.js";
import { faultsOf, inputsOf, jobOf, withBase } from "./files.js";

const ring = (count: number, start: string) =>
  withBase({ pattern: `{ kind: circle, count: ${count}, diameter: 12, start: ${start} }` });

describe("the start of a bolt circle", () => {
  it("that names no axis where the two differ is read as x, with a warning", () => {
    expect(faultsOf(ring(6, "straddle"))).toEqual([
      "job.yaml:7:61 bases[0].pattern.start: straddle of 6 rods names no axis, and the two differ; read as straddle x: straddles the x axis; rods stand on the y axis (write straddle x or straddle y)",
    ]);
    expect(faultsOf(ring(5, "on-axis"))).toEqual([
      "job.yaml:7:61 bases[0].pattern.start: on-axis of 5 rods names no axis, and the two differ; read as on-axis x: a rod stands on +x; straddles -x (write on-axis x or on-axis y)",
    ]);
    const read = readJob(inputsOf(ring(10, "straddle")), { date: "2026-01-01", vocabulary });
    expect(read).toMatchObject({ ok: true, findings: [{ severity: "warning", code: "axis-not-named" }] });
  });

  it.each([
    [6, "straddle x", { kind: "straddle", axis: "x" }],
    [6, "straddle y", { kind: "straddle", axis: "y" }],
    [10, "Straddle Y-axis", { kind: "straddle", axis: "y" }],
    [3, "on axis y", { kind: "on-axis", axis: "y" }],
    [6, "on-axis-x", { kind: "on-axis", axis: "x" }],
    [8, "straddle", { kind: "straddle" }],
    [4, "on-axis", { kind: "on-axis" }],
    [12, "straddle y", { kind: "straddle", axis: "y" }],
    [6, "30", { kind: "degrees", degrees: 30 }],
  ] as const)("%i rods, %s: read without a word", (count, text, start) => {
    expect(faultsOf(ring(count, text))).toEqual([]);
    expect(jobOf(ring(count, text)).bases[0]?.groups[0]?.pattern).toMatchObject({ start });
  });

  it.each(["straddle z", "straddle x y", "axis", "straddles"])("%s is a fault", (text) => {
    expect(faultsOf(ring(6, text))[0]).toContain("or straddle, or on-axis");
  });

  it("of each group is told at its own place, beside the faults of the base", () => {
    const groups =
      "[{ rods: { diameter: 1 }, pattern: { kind: circle, count: 6, diameter: 20, start: straddle } }, { rods: { diameter: 1-1/5 }, pattern: { kind: circle, count: 6, diameter: 9, start: on-axis } }]";
    const found = faultsOf(withBase({ rods: null, pattern: null, groups }));
    expect(found.filter((text) => text.includes("names no axis"))).toHaveLength(2);
    expect(found.filter((text) => text.includes("is no rod size"))).toHaveLength(1);
  });
});
