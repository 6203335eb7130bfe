/** What lights up on a drawing while a row of its ledger is pointed at, and which rows are about what is pointed at. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { litPlaces } from "../../../../src/tasks/live/lit-places.js";
import type { LiveBaseView, LiveLine } from "../../../../src/tasks/live/model.js";
import { openLive } from "../../../../src/tasks/live/open-live.js";
import { isPointedAt, pointedBy } from "../../../../src/web/ledger/row-words.js";

const SHOPS = ["plasma", "plasma-metric"].map((name) => {
  const path = `templates/shops/${name}.yaml`;
  return [path, readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8")] as const;
});

function view(units: "in" | "mm"): LiveBaseView {
  const base =
    units === "in"
      ? `rods: { diameter: 1, grade: 36, embedment: 20 }
    pattern: { kind: rectangle, x: 12, y: 10 }
    basePlate: { x: 17, y: 14, thickness: 1, hole: 1-13/16 }
    concrete: { x: 24, y: 24, depth: 30, exposure: exposed }
    template: { thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18 }, opening: { diameter: 4 } }`
      : `rods: { diameter: M24, grade: 4.6, embedment: 500 }
    pattern: { kind: rectangle, x: 300, y: 250 }
    basePlate: { x: 430, y: 360, thickness: 25, hole: 33 }
    concrete: { x: 600, y: 600, depth: 700, exposure: exposed }
    template: { thickness: 6, outline: { kind: rectangle, x: 500, y: 450 }, opening: { diameter: 100 } }`;
  const text = `job: { number: "7", title: Store, revision: A, status: preliminary }
units: ${units}
bases:
  - mark: B1
    ${base}
`;
  const live = openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
  const seen = live.look({ base: "bases[0]", room: { width: 220, height: 170 } });
  if (seen === null) throw new Error(JSON.stringify(live.state().findings));
  return seen;
}

function lineOf({ lines }: LiveBaseView, rule: string, subject: RegExp): LiveLine {
  const found = lines.find(({ check, subjects }) => check.rule === rule && subjects.some((each) => subject.test(each)));
  if (found === undefined) throw new Error(`no row of ${rule} about ${subject}`);
  return found;
}

const lengthOf = ([x0, y0, x1, y1]: readonly [number, number, number, number]) => Math.hypot(x1 - x0, y1 - y0);

describe.each(["in", "mm"] as const)("a drawing in %s", (units) => {
  const seen = view(units);
  const { scale } = seen.plan;
  const lit = (line: LiveLine) => litPlaces(seen.figures, pointedBy(line).subjects);

  it.each([
    ["hole-edge", /^A1$/, "template"],
    ["rod-on-base-plate", /^A1$/, "base plate"],
    ["rod-cover", /^A1/, "concrete"],
    ["stock-thickness", /^plate$/, "template"],
    ["table-size", /^longer side$/, "template"],
  ] as const)("a row of %s lights the edge of the %s%s", (rule, subject, edge) => {
    expect(lit(lineOf(seen, rule, subject)).edges.map(({ name }) => name)).toEqual([edge]);
  });

  it("the gap from a hole to its edge is as long as it is", () => {
    const { figures } = seen;
    const [mm, half] = units === "in" ? [25.4, 26.99] : [1, 30];
    const hole = figures.holes.find(({ tag }) => tag === "A1");
    const radius = hole === undefined ? 0 : (hole.box.x1 - hole.box.x0) / 2 / scale;
    expect(radius).toBeGreaterThan(half / 4);
    const [gap] = litPlaces(figures, ["A1", "edge of the base plate"]).gaps;
    const apart = units === "in" ? 2 * mm : 55;
    expect(gap === undefined ? 0 : lengthOf(gap) / scale).toBeCloseTo(apart - radius, 3);
  });

  it("a row about two holes lights what lies between them, whatever stands before their tags", () => {
    const pitch = units === "in" ? 12 * 25.4 : 300;
    for (const subject of ["A1-A2", "base plate A1-A2"]) {
      const [gap] = litPlaces(seen.figures, [subject]).gaps;
      expect(gap === undefined ? 0 : lengthOf(gap) / scale).toBeCloseTo(pitch, 3);
    }
    expect(litPlaces(seen.figures, ["A1-A9"]).gaps).toEqual([]);
  });

  it("a name on the drawing is lit, and nothing else", () => {
    const { names, edges, gaps } = litPlaces(seen.figures, ["axis +X"]);
    expect([names.length, edges.length, gaps.length]).toEqual([1, 0, 0]);
  });

  it("an edge that is pointed at lights the rows about it, and those of other edges not", () => {
    const pointed = { subjects: ["edge of the base plate"], rule: null };
    const rules = new Set(seen.lines.filter((line) => isPointedAt(line, pointed)).map(({ check }) => check.rule));
    expect(rules.has("rod-on-base-plate")).toBe(true);
    expect(rules.has("hole-edge")).toBe(false);
  });

  it("a row of a group of rods is about each of its holes", () => {
    expect(lineOf(seen, "rod-grade", /^group A$/).tags).toEqual(["A1", "A2", "A3", "A4"]);
  });

  it("the template's outline leads to its sizes", () => {
    const outline = seen.figures.outlines.find(({ name }) => name === "template");
    expect(outline?.keys.map(({ key }) => key)).toEqual(["template.outline.x", "template.outline.y"]);
  });
});
