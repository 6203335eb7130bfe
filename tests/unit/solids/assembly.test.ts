/** A template with its rods, for reference: rods reach as far down as they are made. By hand from the job; z is 0 at the underside. */
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { assemblyOf } from "../../../src/solids/assembly.js";
import { openJob } from "../../../src/tasks/open.js";
import { inputsWith } from "../../delivered.js";

/** Lowest and highest of rod A1, inches; its base stands 3 in above the concrete and projects 9. */
function ends(rods: string): readonly number[] {
  const base =
    `{ mark: B1, rods: { diameter: 1, projection: 9, threads: 9, grade: 36, ${rods} }, pattern: { kind: rectangle, x: 8, y: 8 }, ` +
    "template: { thickness: 1/4, height: 3 } }";
  const opened = openJob(inputsWith([base]), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const [first] = opened.value.bases;
  if (first === undefined) throw new Error("no base");
  const rod = assemblyOf(checkBase(opened.value.job, first))?.find(({ name }) => name === "rod A1");
  if (rod === undefined) throw new Error("no rod");
  const heights = rod.corners.map(([, , z]) => z / 25.4);
  return [Math.min(...heights), Math.max(...heights)].map((each) => Math.round(each * 1e6) / 1e6);
}

describe("a rod beside its template", () => {
  it.each([
    ["is as long as it is ordered", "embedment: 20, length: 31, bottom: nut", -(31 - 9) - 3],
    // 9 + 20 + hex nut 1 in (ASME B18.2.2: 0.887 at most) + 1/2 below it = 30.387, up to 1/8: 30-1/2
    ["is as long as its length is worked out", "embedment: 20, bottom: nut", -(30.5 - 9) - 3],
    ["ends at its embedment where nothing anchors it", "embedment: 20, bottom: straight", -20 - 3],
    ["ends at its embedment where its lower end is not known", "embedment: 20", -20 - 3],
    ["goes down to its hook, which is not shown", "embedment: 20, bottom: { kind: hook, reach: 4 }", -20 - 3],
  ])("%s", (_, rods, low) => {
    expect(ends(rods)).toEqual([low, 6]);
  });
});
