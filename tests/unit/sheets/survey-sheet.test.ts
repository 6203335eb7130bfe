/** The sheet of a group as surveyed: true to scale, nothing on top of anything, both answers and the cautions. */
import { describe, expect, it } from "vitest";
import type { SceneGroup, SceneItem } from "../../../src/sheets/scene.js";
import { drawSurveySheet } from "../../../src/sheets/survey-sheet.js";
import { inches } from "../../../src/units/length.js";
import { placementAt } from "../../setting-out-plan.js";
import { moved, surveyCase, surveyOf } from "../../survey-case.js";
import { collisionsOf } from "./collisions.js";

const one = surveyCase({ placements: [placementAt(["A", "1"])] });

function sheetOf(by: number) {
  const survey = surveyOf(
    one,
    one.points.map((point, i) => (i === 0 ? moved(point, -by, 0) : point)),
  );
  const [group] = survey.groups;
  if (group === undefined) throw new Error("no group");
  return { group, scene: drawSurveySheet({ job: one.job, survey, group, version: "0" }) };
}

const flat = (items: readonly SceneItem[]): readonly SceneItem[] =>
  items.flatMap((item) => (item.kind === "group" ? [item, ...flat(item.items)] : [item]));
const groupsNamed = (items: readonly SceneItem[], name: string): readonly SceneGroup[] =>
  flat(items).flatMap((item) => (item.kind === "group" && item.name === name ? [item] : []));

describe("the sheet of a group as surveyed", () => {
  const { scene, group } = sheetOf(2.5);
  const words = flat(scene.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));

  it("has no text on another", () => {
    expect(collisionsOf(scene)).toEqual([]);
    expect(collisionsOf(sheetOf(0).scene)).toEqual([]);
  });

  it("says the verdict, both answers, what would let it drop on, and who decides", () => {
    expect(scene.title).toContain("B1 A-1");
    expect(words.some((text) => text.includes("DOES NOT FIT: WANTS"))).toBe(true);
    for (const text of ["stands on line", "WOULD LET IT DROP ON: ENGINEER TO DECIDE", "CHECKED BY", "DECIDED BY"])
      expect(words).toContain(text);
    expect(words.join(" ")).toContain("1926.755(b)");
    expect(words.join(" ")).not.toMatch(/acceptable/i);
  });

  it("insets are true to scale: hole and rod as far apart as the margin says, worst first", () => {
    const insets = groupsNamed(scene.items, "hole-inset");
    expect(insets).toHaveLength(4);
    const margins = insets.map(({ data }) => Number(data.marginNm));
    expect(margins).toEqual([...margins].sort((a, b) => a - b));
    expect(margins[0]).toBe(group.best?.spare);
    for (const { data, items } of insets) {
      const circles = (role: string) =>
        items.flatMap((item) =>
          item.kind === "stroke" && item.role === role
            ? item.parts.flatMap((part) => (part.kind === "circle" ? [part] : []))
            : [],
        );
      const [[hole], [rod]] = [circles("hole"), circles("outline")];
      if (hole === undefined || rod === undefined) throw new Error("no hole or rod");
      const scale = Number(data.scale);
      const away = Math.hypot(rod.center.x - hole.center.x, rod.center.y - hole.center.y) / scale;
      expect(hole.radius / scale).toBeCloseTo(inches(2.0625) / 2e6, 9);
      expect(hole.radius / scale - rod.radius / scale - away).toBeCloseTo(Number(data.marginNm) / 1e6, 5);
    }
  });
});
