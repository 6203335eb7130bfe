/** The sheet of a group as surveyed: true to scale, nothing on top of anything, both answers and the cautions. */
import { describe, expect, it } from "vitest";
import { given, type Job, missing } from "../../../src/job/model/job.js";
import { distanceToBox, textBox } from "../../../src/sheets/occupied.js";
import type { SceneGroup, SceneItem } from "../../../src/sheets/scene.js";
import { drawSurveySheet } from "../../../src/sheets/survey-sheet.js";
import type { Survey } from "../../../src/survey/index.js";
import { inches } from "../../../src/units/length.js";
import { baseFixture, groupFixture } from "../../fixture.js";
import { drawFrom } from "../../seed.js";
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
    expect(words.some((text) => text.includes("DOES NOT FIT: SHORT BY"))).toBe(true);
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
      const [[hole], [rod]] = [circles("fine"), circles("outline")];
      if (hole === undefined || rod === undefined) throw new Error("no hole or rod");
      const scale = Number(data.scale);
      const away = Math.hypot(rod.center.x - hole.center.x, rod.center.y - hole.center.y) / scale;
      expect(hole.radius / scale).toBeCloseTo(inches(2.0625) / 2e6, 9);
      expect(hole.radius / scale - rod.radius / scale - away).toBeCloseTo(Number(data.marginNm) / 1e6, 5);
    }
  });
});

type Group = SceneGroup;

/** Circles of the view of the whole plate: holes and rods. */
function circlesOf(plan: Group) {
  return flat(plan.items).flatMap((item) =>
    item.kind === "stroke" ? item.parts.flatMap((part) => (part.kind === "circle" ? [part] : [])) : [],
  );
}

/** The sheet of a group whose rods stand there, in inches, each surveyed a little off. */
function sheetOfRods(at: readonly (readonly [number, number])[], hole: number, off: (i: number) => number) {
  const points = at.map(([x, y]) => ({ x: inches(x), y: inches(y) }));
  const own = groupFixture({ pattern: { kind: "points", at: points }, baseHole: given(inches(hole), "test") });
  const site = surveyCase({ placements: [placementAt(["A", "1"], { turn: 30 })] }, [baseFixture({ groups: [own] })]);
  const survey = surveyOf(
    site,
    site.points.map((point, i) => moved(point, off(2 * i), off(2 * i + 1))),
  );
  const [group] = survey.groups;
  if (group === undefined) throw new Error("no group");
  return { group, scene: drawSurveySheet({ job: site.job, survey, group, version: "0" }) };
}

/** What is wrong with the tags of a sheet: in a hole, over a rod, or without a way to their own hole. */
function tagFaults({ group, scene }: ReturnType<typeof sheetOfRods>): readonly string[] {
  const [plan] = groupsNamed(scene.items, "survey-plan");
  if (plan === undefined) return ["no plan"];
  const discs = circlesOf(plan);
  const tags = groupsNamed(plan.items, "tag");
  const missing = group.rods.length - tags.length;
  return [
    ...(missing === 0 ? [] : [`${missing} tags are missing`]),
    ...tags.flatMap(({ items, data }) => {
      const [text] = items.flatMap((item) => (item.kind === "text" ? [item] : []));
      if (text === undefined) return ["a tag without words"];
      const box = textBox(text);
      return discs.some(({ center, radius }) => distanceToBox(center, box) < radius) ? [`${data.tag} in a hole`] : [];
    }),
    ...collisionsOf(scene).map((each) => JSON.stringify(each)),
  ];
}

describe("tags of rods as surveyed", () => {
  const near = drawFrom(83);

  it("stand outside every hole where eight rods stand close together", () => {
    const rods = [-7, -2.4, 2.4, 7].flatMap((x) => [-1.6, 1.6].map((y) => [x, y] as const));
    expect(tagFaults(sheetOfRods(rods, 2.3, () => 0.1))).toEqual([]);
    const paired = [-8, -5.25, 5.25, 8].flatMap((x) => [-6, 6].map((y) => [x, y] as const));
    expect(tagFaults(sheetOfRods(paired, 2.3125, () => 0.05))).toEqual([]);
    expect(tagFaults(sheetOfRods(rods, 2.9, (i) => (i % 3) / 4))).toEqual([]);
  });

  it.each([2, 3, 4, 6, 9, 12, 16, 24])("stand outside every hole of %i rods anywhere", (count) => {
    for (let run = 0; run < 4; run += 1) {
      const rods: (readonly [number, number])[] = [];
      while (rods.length < count) {
        const rod = [near() * 30 - 15, near() * 24 - 12] as const;
        if (rods.every(([x, y]) => Math.hypot(x - rod[0], y - rod[1]) > 2.2)) rods.push(rod);
      }
      expect(tagFaults(sheetOfRods(rods, 1.6 + near(), () => near() / 2 - 0.25))).toEqual([]);
    }
  });
});

describe("holes true to scale", () => {
  const ring = (count: number) =>
    Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      return [30 * Math.cos(angle), 30 * Math.sin(angle)] as const;
    });

  it.each([4, 8, 16, 40])("have their words whole, and stand inside their frames, of %i rods", (count) => {
    const { scene } = sheetOfRods(ring(count), 2.3125, (i) => (i % 5) / 8);
    const insets = groupsNamed(scene.items, "hole-inset");
    expect(insets.length).toBeGreaterThanOrEqual(Math.min(16, count));
    for (const { items } of insets) {
      for (const item of items) if (item.kind === "text") expect(item.text).not.toContain("…");
      const strokes = items.flatMap((item) => (item.kind === "stroke" ? [item] : []));
      const frame = strokes.find(({ role }) => role === "table")?.parts ?? [];
      const xs = frame.flatMap((part) => (part.kind === "line" ? [part.from.x, part.to.x] : []));
      const ys = frame.flatMap((part) => (part.kind === "line" ? [part.from.y, part.to.y] : []));
      expect(xs).not.toEqual([]);
      for (const { parts } of strokes)
        for (const part of parts) {
          if (part.kind !== "circle") continue;
          expect(part.center.x - part.radius).toBeGreaterThan(Math.min(...xs));
          expect(part.center.x + part.radius).toBeLessThan(Math.max(...xs));
          expect(part.center.y - part.radius).toBeGreaterThan(Math.min(...ys));
          expect(part.center.y + part.radius).toBeLessThan(Math.max(...ys));
        }
    }
  });
});

describe("what a survey sheet says of the survey", () => {
  const words = (
    changes: Partial<Survey["file"]>,
    date: Job["survey"]["date"],
    sheet?: { number: number; count: number },
  ) => {
    const survey = surveyOf(one, one.points);
    const [group] = survey.groups;
    if (group === undefined) throw new Error("no group");
    const job = { ...one.job, survey: { ...one.job.survey, date } };
    const scene = drawSurveySheet({
      job,
      survey: { ...survey, file: { ...survey.file, ...changes } },
      group,
      version: "0",
      sheet,
    });
    return flat(scene.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
  };

  it("its day, its file and hash, its number", () => {
    const said = words({ sha256: "0123456789abcdef".repeat(4) }, given("2026-11-20", "job"), { number: 3, count: 7 });
    for (const each of ["SURVEY DATE", "2026-11-20", "points.csv 0123456789ab", "3 OF 7", "PLAN NORTH"])
      expect(said).toContain(each);
    expect(said).not.toContain(one.job.date);
  });

  it("that nobody gave its day", () => {
    const said = words({}, missing("survey.date", "not given"));
    for (const each of ["SURVEY DATE", "NOT GIVEN", "1 OF 1"]) expect(said).toContain(each);
  });

  it("figures in decimals alone", () => {
    const { scene } = sheetOf(7 / 8);
    const figures = groupsNamed(scene.items, "survey-rods").flatMap(({ items }) =>
      flat(items).flatMap((item) => (item.kind === "text" && /\d/.test(item.text) ? [item.text] : [])),
    );
    expect(figures).toContain("-0.875");
    expect(figures.filter((text) => text.includes("/"))).toEqual([]);
  });
});
