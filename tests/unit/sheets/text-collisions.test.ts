/** The collision search itself, on scenes made for it. */
import { describe, expect, it } from "vitest";
import { findTextCollisions, type Scene, type SceneItem } from "../../../src/sheets/index.js";

function sceneOf(...items: readonly SceneItem[]): Scene {
  return { size: "A4", width: 297, height: 210, title: "", description: "", items };
}

function words(text: string, x: number, y: number, turn = 0): SceneItem {
  return { kind: "text", role: "note", text, at: { x, y }, anchor: "start", height: 5, turn, bold: false };
}

function line(x0: number, y0: number, x1: number, y1: number): SceneItem {
  const part = { kind: "line", from: { x: x0, y: y0 }, to: { x: x1, y: y1 } } as const;
  return { kind: "stroke", role: "dimension", parts: [part] };
}

function circle(x: number, y: number, radius: number): SceneItem {
  return { kind: "stroke", role: "hole", parts: [{ kind: "circle", center: { x, y }, radius }] };
}

/** HHH at 5 mm: capitals 5 mm high, about 15.7 mm wide, from (50, 50). */
const text = words("HHH", 50, 50);

describe("findTextCollisions", () => {
  const cases: readonly [string, SceneItem, number][] = [
    ["text on text", words("HHH", 60, 52), 1],
    ["text beside text", words("HHH", 66, 50), 0],
    ["text above text", words("HHH", 50, 55.01), 0],
    ["turned text through text", words("HHH", 58, 45, 90), 1],
    ["turned text beside text", words("HHH", 72, 45, 90), 0],
    ["line through", line(40, 52, 80, 53), 1],
    ["line wholly inside", line(52, 52, 54, 53), 1],
    ["line under the baseline", line(40, 49.99, 80, 49.99), 0],
    ["slanting line past a corner", line(60, 60, 75, 50), 0],
    ["circle through", circle(40, 52, 15), 1],
    ["circle around", circle(58, 52, 30), 0],
    ["circle inside", circle(58, 52.5, 1), 1],
    ["circle beside", circle(30, 52, 15), 0],
  ];
  it.each(cases)("%s", (_, other, count) => {
    expect(findTextCollisions(sceneOf(text, other))).toHaveLength(count);
    expect(findTextCollisions(sceneOf({ kind: "group", name: "g", data: {}, items: [other] }, text))).toHaveLength(
      count,
    );
  });

  it("sees text that leaves the sheet", () => {
    expect(findTextCollisions(sceneOf(words("HHH", 290, 50)))).toHaveLength(1);
    expect(findTextCollisions(sceneOf(words("HHH", 50, 206)))).toHaveLength(1);
  });

  it("sees an arc by its true course", () => {
    const arc = (bulge: number): SceneItem => ({
      kind: "stroke",
      role: "outline",
      parts: [{ kind: "arc", from: { x: 40, y: 45 }, to: { x: 80, y: 45 }, bulge }],
    });
    // Half circle of radius 20 about (60, 45): bulge 1 runs below its chord, bulge -1 above it, over the text at y = 52.
    expect(findTextCollisions(sceneOf(words("HHH", 52, 61), arc(-1)))).not.toEqual([]);
    expect(findTextCollisions(sceneOf(words("HHH", 52, 61), arc(1)))).toEqual([]);
  });
});
