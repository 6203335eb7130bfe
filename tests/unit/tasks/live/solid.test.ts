/** What a page shows in three dimensions: shells of the same triangles as STL has, and their sizes in words. Figures by hand from the job. */
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../../src/checks/checked.js";
import { assemblyOf } from "../../../../src/solids/assembly.js";
import { type LiveSolid, solidOf } from "../../../../src/tasks/live/solid.js";
import { openJob } from "../../../../src/tasks/open.js";
import { inputsWith } from "../../../delivered.js";

function checked(base: string) {
  const opened = openJob(inputsWith([base]), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const [first] = opened.value.bases;
  if (first === undefined) throw new Error("no base");
  return checkBase(opened.value.job, first);
}

const RODS = "diameter: 1, projection: 9, embedment: 20, threads: 9, grade: 36, bottom: straight";
const base = (template: string, rods = RODS): string =>
  `{ mark: B1, rods: { ${rods} }, pattern: { kind: rectangle, x: 8, y: 8 }, concrete: { x: 30, y: 30 }, template: { thickness: 1/4, ${template} } }`;

const countOf = ({ shells }: LiveSolid, part: string): number => shells.filter((shell) => shell.part === part).length;

describe("a base in the round", () => {
  it("has the triangles of the assembly, as plain figures", () => {
    const one = checked(base("height: 3"));
    const solid = solidOf(one);
    const assembly = assemblyOf(one) ?? [];
    expect(solid.shells.map(({ name }) => name)).toEqual(assembly.map(({ name }) => name));
    for (const [index, { corners, triangles }] of solid.shells.entries()) {
      expect([...triangles]).toEqual(assembly[index]?.triangles.flat());
      expect([...corners]).toEqual(assembly[index]?.corners.flat().map(Math.fround));
    }
    expect([countOf(solid, "template"), countOf(solid, "rod"), countOf(solid, "nut")]).toEqual([1, 4, 8]);
  });

  it("says its sizes in words", () => {
    // 3 in above the concrete: rods stand 9 - 3 - 1/4 over the template's top and reach 20 + 3 below its underside
    const words = solidOf(checked(base("height: 3, outline: { kind: rectangle, x: 14, y: 12 }, key: none"))).words;
    expect(words.join(" ")).toContain("is 14 in along X by 12 in along Y, 1/4 in thick, with 4 rods.");
    expect(words.join(" ")).toContain("reach 5-3/4 in above the template's top and 23 in below its underside");
    expect(words.join(" ")).toContain("The whole is 29 in high.");
    expect(words.join(" ")).toContain("Shown with 8 nuts.");
  });

  it("shows the template alone where a height is not known, and names the key", () => {
    const solid = solidOf(checked(base("height: 3", "diameter: 1, projection: 9, threads: 9, grade: 36")));
    expect(solid.shells.map(({ part }) => part)).toEqual(["template"]);
    expect(solid.lacking.join(" ")).toContain("rods.embedment");
  });

  it("shows the lower template at its level", () => {
    const solid = solidOf(checked(base("height: 3, lower: { thickness: 1/4, above: 2 }")));
    const lower = solid.shells.find(({ part }) => part === "lower template");
    const heights = [...(lower?.corners ?? [])].filter((_, i) => i % 3 === 2).map((z) => z / 25.4);
    // lower ends 23 in below the underside of the template
    expect(Math.min(...heights)).toBeCloseTo(-21, 5);
    expect(Math.max(...heights)).toBeCloseTo(-20.75, 5);
  });

  it("shows the segments of a parted template where they lie, and their splice plates on top", () => {
    const parted = solidOf(checked(base("height: 3, segments: { count: 2, bolt: 1/2 }")));
    expect(countOf(parted, "template")).toBe(0);
    expect(countOf(parted, "segment")).toBe(2);
    expect(countOf(parted, "splice plate")).toBeGreaterThan(0);
    const reach = (solid: LiveSolid, parts: readonly string[]): readonly number[] => {
      const xs = solid.shells
        .filter(({ part }) => parts.includes(part))
        .flatMap(({ corners }) => [...corners].filter((_, i) => i % 3 === 0));
      return [Math.min(...xs), Math.max(...xs)];
    };
    const [low = 0, high = 0] = reach(parted, ["segment"]);
    const rods = reach(parted, ["rod"]);
    expect(low).toBeLessThan(rods[0] ?? 0);
    expect(high).toBeGreaterThan(rods[1] ?? 0);
  });
});
