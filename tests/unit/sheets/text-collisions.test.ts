/** The collision search itself, on scenes made for it. */
import { describe, expect, it } from "vitest";
import {
  type Collision,
  findCollisions,
  findTextCollisions,
  type Scene,
  type SceneItem,
} from "../../../src/sheets/index.js";

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

describe("findCollisions", () => {
  const at = (x: number, y: number) => ({ x, y });
  const run = (
    role: "leader" | "extension" | "dimension" | "table",
    ...points: readonly { x: number; y: number }[]
  ) => ({
    kind: "stroke" as const,
    role,
    parts: points.slice(1).map((to, i) => ({ kind: "line" as const, from: points[i] ?? to, to })),
  });
  const named = (
    name: string,
    items: readonly SceneItem[],
    data: Readonly<Record<string, number>> = {},
  ): SceneItem => ({
    kind: "group",
    name,
    data,
    items,
  });
  /** A callout that says `say`, its leader from (x, y) to the feature. */
  const callout = (say: string, x: number, y: number, tipX: number, tipY: number) =>
    named("callout", [run("leader", at(x, y), at(tipX, tipY)), words(say, x + 1, y)]);
  const kinds = (...items: readonly SceneItem[]): readonly Collision["kind"][] =>
    findCollisions(sceneOf(...items)).map(({ kind }) => kind);
  /** A hole of 5 mm radius at (100, 100). */
  const hole = circle(100, 100, 5);

  const cases: readonly [string, readonly SceneItem[], readonly Collision["kind"][]][] = [
    ["a leader that ends at its own hole", [hole, callout("A", 130, 100, 105, 100)], []],
    ["a leader through a hole", [hole, callout("A", 130, 102, 80, 102)], ["leader through a hole"]],
    ["a leader into a hole", [hole, callout("A", 130, 100, 101, 100)], ["leader through a hole"]],
    ["a leader past a hole", [hole, callout("A", 130, 105.1, 80, 105.1)], []],
    [
      "a leader through a rectangular hole",
      [rectangularHole(), callout("A", 130, 102, 80, 102)],
      ["leader through a hole"],
    ],
    ["leaders that cross", [callout("A", 130, 100, 80, 60), callout("B", 130, 60, 80, 100)], ["leader on leader"]],
    ["leaders that do not", [callout("A", 130, 100, 80, 100), callout("B", 130, 80, 80, 80)], []],
    ["a leader with an elbow", [named("callout", [run("leader", at(90, 90), at(95, 90), at(120, 120))])], []],
    [
      "a leader over an extension line",
      [callout("A", 130, 100, 80, 100), run("extension", at(90, 60), at(90, 120))],
      ["leader on line"],
    ],
    [
      "a leader over a dimension line",
      [callout("A", 130, 100, 80, 100), run("dimension", at(90, 60), at(90, 120))],
      ["leader on line"],
    ],
    [
      "the tick of a figure at its own dimension line",
      [named("dimension", [run("dimension", at(90, 60), at(90, 120)), run("leader", at(95, 80), at(90, 80))])],
      [],
    ],
    [
      "an extension line 1.9 mm off a hole",
      [hole, run("extension", at(106.9, 50), at(106.9, 150))],
      ["extension line near a hole"],
    ],
    ["an extension line 2 mm off a hole", [hole, run("extension", at(107, 50), at(107, 150))], []],
    ["an extension line of the hole", [hole, run("extension", at(100, 94), at(100, 50))], []],
    ["an extension line that ends 3 mm short of a hole", [hole, run("extension", at(102, 92), at(102, 50))], []],
    [
      "a tag at another hole",
      [hole, circle(140, 100, 5), named("tag", [words("HHH", 113, 98)], { x: 140, y: 100, radius: 5 })],
      [],
    ],
    [
      "a tag nearer to another hole",
      [hole, circle(140, 100, 5), named("tag", [words("HHH", 106, 98)], { x: 140, y: 100, radius: 5 })],
      ["tag at another hole"],
    ],
    [
      "a tag in another hole",
      [circle(100, 100, 20), circle(140, 100, 5), named("tag", [words("HHH", 92, 98)], { x: 140, y: 100, radius: 5 })],
      ["tag at another hole"],
    ],
    ["a text in its table", [named("t", [run("table", at(50, 50), at(120, 50)), tableText("HHH", 60)])], []],
    [
      "a text out of its table",
      [named("t", [run("table", at(50, 50), at(120, 50)), tableText("HHH", 110)])],
      ["text out of its frame"],
    ],
  ];
  it.each(cases)("%s", (_, items, expected) => {
    expect(kinds(...items)).toEqual(expected);
  });

  it("names what collides", () => {
    const [found] = findCollisions(sceneOf(callout("A", 130, 100, 80, 60), callout("B", 130, 60, 80, 100)));
    expect(found).toEqual({ kind: "leader on leader", leader: "A", other: "B" });
  });

  it("sees a text past the border of the sheet", () => {
    const border: SceneItem = {
      kind: "stroke",
      role: "frame",
      parts: [at(20, 10), at(287, 10), at(287, 200), at(20, 200)].map((from, i, all) => ({
        kind: "line",
        from,
        to: all[(i + 1) % 4] ?? from,
      })),
    };
    expect(kinds(border, words("HHH", 2, 100))).toEqual(["text out of its frame"]);
    expect(kinds(border, words("HHH", 22, 100))).toEqual([]);
  });
});

function tableText(say: string, x: number): SceneItem {
  return { kind: "text", role: "table", text: say, at: { x, y: 60 }, anchor: "start", height: 5, turn: 0, bold: false };
}

function rectangularHole(): SceneItem {
  const corners = [
    { x: 95, y: 95 },
    { x: 105, y: 95 },
    { x: 105, y: 105 },
    { x: 95, y: 105 },
  ];
  const parts = corners.map((from, i) => ({ kind: "line" as const, from, to: corners[(i + 1) % 4] ?? from }));
  return { kind: "stroke", role: "hole", parts };
}
