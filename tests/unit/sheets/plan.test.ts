/**
 * Anchor-rod plan sheets: what they say, that nothing lies over text, and that their figures are the distances they stand
 * for. The list of what a plan must say is the trade's; title block fields after ISO 7200; lettering after ISO 3098.
 */

import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../../src/formats/sheet-svg.js";
import type { GridLine } from "../../../src/job/index.js";
import { given, missing } from "../../../src/job/index.js";
import { SHEET_NAMES, type SheetName } from "../../../src/job/model/sheet-names.js";
import { findWasher } from "../../../src/job/resolve/lookups.js";
import {
  drawPlanSheets,
  hasPlanRoom,
  type PlanRequest,
  type Scene,
  type SceneGroup,
} from "../../../src/sheets/index.js";
import { planLength } from "../../../src/sheets/plan/lengths.js";
import { inches, millimetres, NM_PER_MM, parseLength, type Unit } from "../../../src/units/index.js";
import { baseFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { placementOf, planCase, planCases, planFixture, regularPlan } from "./plan-cases.js";
import { groupsOf, textsOf, wordsIn, wordsOf, wordsOfTable } from "./scene-walk.js";

interface Drawn {
  readonly request: PlanRequest;
  readonly scenes: readonly Scene[];
}

const drawn = new Map<string, Drawn>();
function plan(name: string): Drawn {
  const known = drawn.get(name);
  if (known !== undefined) return known;
  const make = planCases[name];
  if (make === undefined) throw new Error(`no case ${name}`);
  const request = make();
  const made = { request, scenes: drawPlanSheets(request) };
  drawn.set(name, made);
  return made;
}

const allWords = (scenes: readonly Scene[]): string => scenes.map(wordsOf).join("\n");
const groups = (scenes: readonly Scene[], name: string): readonly SceneGroup[] =>
  scenes.flatMap(({ items }) => groupsOf(items, name));

/** Rows of a table over all sheets, cell by cell; every cell of the table must have words. */
function rowsOf(scenes: readonly Scene[], name: string, columns: number): readonly (readonly string[])[] {
  return groups(scenes, name).flatMap(({ items }) => {
    const cells = textsOf(items)
      .filter(({ role }) => role === "table")
      .map(({ text }) => text)
      .slice(columns);
    return Array.from({ length: Math.floor(cells.length / columns) }, (_, i) =>
      cells.slice(i * columns, (i + 1) * columns),
    );
  });
}

/** A figure of the plan in millimetres, read by the parser of the job file: without the brackets of a rounded one. */
function readFigure(words: string, unit: Unit): number {
  const figure = words.replace(/^GAGE |^GAUGE /, "").replace(/(.) \(.*\)$/, "$1");
  const reading = parseLength(figure.replace(/^\((.*)\)$/, "$1"), unit);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value / NM_PER_MM;
}

describe("a plan of a job that chose a size", () => {
  const onSize = (name: string, sheet: SheetName): PlanRequest => {
    const request = planCases[name]?.() ?? fail();
    return { ...request, job: { ...request.job, sheet } };
  };

  for (const name of ["single", "twelve", "metric"])
    it(`is on that size, all its sheets, where it has room: ${name}`, () => {
      const names: readonly SheetName[] = SHEET_NAMES[planCases[name]?.().job.unit ?? "in"];
      const requests = names.map((sheet) => onSize(name, sheet));
      const roomy = requests.map(hasPlanRoom);
      expect(roomy.at(-1)).toBe(true);
      expect(roomy).toEqual(roomy.toSorted((a, b) => Number(a) - Number(b)));
      for (const [i, request] of requests.entries()) {
        if (roomy[i] !== true) continue;
        const scenes = drawPlanSheets(request);
        expect([...new Set(scenes.map(({ size }) => size))]).toEqual([names[i]]);
        for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
      }
    });
});

/** Plans that are drawn again: all that there is on a plan is on one of them. */
const TWICE: ReadonlySet<string> = new Set(["twelve", "skewed", "metric"]);

describe("every plan", () => {
  for (const name of Object.keys(planCases)) {
    it(`has text over nothing: ${name}`, () => {
      for (const scene of plan(name).scenes) expect(collisionsOf(scene)).toEqual([]);
    });

    it(`letters no smaller than ISO 3098 asks for: ${name}`, () => {
      for (const { items } of plan(name).scenes)
        for (const { text, height } of textsOf(items)) expect(height, text).toBeGreaterThanOrEqual(2.5);
    });

    it(`keeps inside the border: ${name}`, () => {
      for (const { items, width, height } of plan(name).scenes)
        for (const { text, at } of textsOf(items)) {
          expect(at.x, text).toBeGreaterThan(20);
          expect(at.x, text).toBeLessThan(width - 10);
          expect(at.y, text).toBeGreaterThan(10);
          expect(at.y, text).toBeLessThan(height - 10);
        }
    });

    it(`numbers its sheets and says on each what every sheet must say: ${name}`, () => {
      const { scenes } = plan(name);
      scenes.forEach((scene, i) => {
        const words = wordsOf(scene).replace(/\n/g, " ");
        expect(words).toContain(`${i + 1} OF ${scenes.length}`);
        for (const expected of [
          "ANCHOR-ROD PLAN",
          "REVISIONS",
          "CHECKED BY",
          "APPROVED BY",
          "STATUS",
          "SOURCE DRAWING",
        ])
          expect(words).toContain(expected);
        expect(words).toContain("NOT CHECKED AT ALL: anchorage strength in concrete");
        expect(words).toContain("29 CFR 1926.755(b)");
        expect(words).toContain("Set rods from released drawings only");
      });
    });

    it(`says all that an anchor-rod plan must say: ${name}`, () => {
      const words = allWords(plan(name).scenes).replace(/\n/g, " ");
      for (const expected of [
        "ROD SCHEDULE",
        "NUTS, WASHERS, GROUT AND LEVELS",
        "PLACING TOLERANCES",
        "PLAN NORTH",
        "PLAN SCALE",
        "PRINT CHECK",
        "PH_rev-B_PNEZD_ft.csv",
        "anchor-rod-plan_rev-B.dxf",
      ])
        expect(words).toContain(expected);
    });

    it(`has every grid line in a bubble: ${name}`, () => {
      const { request, scenes } = plan(name);
      const bubbles = new Set(groups(scenes, "grid-bubble").map(({ data }) => String(data.name)));
      expect([...bubbles].sort()).toEqual(request.plan.spec.lines.map(({ name: line }) => line).sort());
    });

    it(`has every placement in its table, with both distances, turn and level: ${name}`, () => {
      const { request, scenes } = plan(name);
      const rows = rowsOf(scenes, "placement-table", 8);
      expect(rows.map(([mark, lines]) => `${mark} ${lines}`)).toEqual(
        request.plan.bases.map(({ placement }) => `${placement.mark} ${placement.lines.join(" / ")}`),
      );
      request.plan.bases.forEach(({ lines, workingPoint, placement }, i) => {
        const [, , first = "", second = "", turn] = rows[i] ?? [];
        [first, second].forEach((words, k) => {
          const line = lines[k];
          if (line === undefined) throw new Error("a placement has two lines");
          const figure = readFigure(
            words
              .split(" ")
              .filter((part) => !/^[A-Z]+$/.test(part))
              .join(" "),
            request.job.unit,
          );
          expect(Math.abs(figure - Math.abs(squareDistance(line, workingPoint)))).toBeLessThanOrEqual(25.4 / 32);
        });
        expect(turn).toBe(`${(placement.turn + 360) % 360}°`);
      });
    });

    it(`has figures that are the distances between their end points: ${name}`, () => {
      const { request, scenes } = plan(name);
      const views = [...groups(scenes, "anchor-rod-plan"), ...groups(scenes, "detail-view")];
      let count = 0;
      for (const { items, data } of views)
        for (const { data: run, items: parts } of groupsOf(items, "dimension")) {
          const onPaper = Math.hypot(Number(run.x1) - Number(run.x0), Number(run.y1) - Number(run.y0));
          const millimetre = Number(run.valueNm) / NM_PER_MM;
          expect(onPaper / Number(data.scale)).toBeCloseTo(millimetre, 3);
          const [words] = textsOf(parts).map(({ text }) => text);
          const rounding = words?.includes("(") === true ? 25.4 / 32 : 0.0013;
          expect(Math.abs(readFigure(words ?? "", request.job.unit) - millimetre)).toBeLessThanOrEqual(rounding);
          count += 1;
        }
      if (name !== "bare") expect(count).toBeGreaterThan(3);
    });

    if (TWICE.has(name))
      it(`gives the same bytes twice: ${name}`, () => {
        const make = planCases[name];
        const write = (scenes: readonly Scene[]) =>
          scenes.map((scene) => writeSheetSvg(scene, newLeanDocument())).join("");
        expect(make === undefined ? "" : write(drawPlanSheets(make()))).toBe(write(plan(name).scenes));
      });
  }
});

/** Distance of a point from a line, square; worked out here once more, from the line's normal form. */
function squareDistance(line: GridLine, { x, y }: { readonly x: number; readonly y: number }): number {
  switch (line.kind) {
    case "x":
      return x - line.at / NM_PER_MM;
    case "y":
      return y - line.at / NM_PER_MM;
    case "arc":
      return Math.hypot(x - line.center.x / NM_PER_MM, y - line.center.y / NM_PER_MM) - line.radius / NM_PER_MM;
    case "skewed":
    case "radial": {
      const from = line.kind === "skewed" ? line.through : line.center;
      const normal = ((line.degrees + 90) * Math.PI) / 180;
      return (x - from.x / NM_PER_MM) * Math.cos(normal) + (y - from.y / NM_PER_MM) * Math.sin(normal);
    }
  }
}

describe("labels", () => {
  it("write mark, turn and the distances that are not zero beside every base", () => {
    for (const name of ["twelve", "skewed", "radial", "metric", "three hundred"]) {
      const { request, scenes } = plan(name);
      const labels = new Map(
        groups(scenes, "placement").map(({ data, items }) => [data.name, textsOf(items).map(({ text }) => text)]),
      );
      expect(labels.size).toBe(request.plan.bases.length);
      const starred = [...labels.values()].filter(([mark]) => mark?.endsWith(" *")).length;
      expect(starred).toBeLessThanOrEqual(labels.size / 25);
      if (starred > 0)
        expect(allWords(scenes).replace(/\n/g, " ")).toMatch(/Mark with \*: .*, see the placement table/);
      for (const { name: base, placement, lines, workingPoint } of request.plan.bases) {
        const [mark = "", ...distances] = labels.get(base) ?? [];
        const [own, turn] = mark.replace(/ \*$/, "").split("  ");
        expect([own, turn]).toEqual([placement.mark, placement.turn === 0 ? undefined : `${placement.turn}°`]);
        if (mark.endsWith(" *")) continue;
        const off = lines.filter((line) => Math.abs(squareDistance(line, workingPoint)) > 1e-5);
        expect(distances.map((each) => each.split(":")[0])).toEqual(off.map((line) => line.name));
      }
    }
  });

  it("never write a mark alone for a base that is off its lines", () => {
    const lines = [0, 1, 2, 3, 4, 5].map((i): GridLine => ({ kind: "x", name: `${i}`, at: millimetres(i * 900) }));
    const y: GridLine = { kind: "y", name: "A", at: millimetres(0) };
    const offset = { x: millimetres(-20), y: millimetres(30) };
    const { job } = regularPlan(1, 1);
    const all = lines.map(({ name }) => placementOf("B1", [name, "A"], { offset }));
    const scenes = drawPlanSheets(planCase(job.bases, planFixture({ lines: [...lines, y], placements: all })));
    const labels = groups(scenes, "placement").map(({ items }) => textsOf(items).map(({ text }) => text));
    expect(labels.length).toBeGreaterThan(0);
    for (const [mark = "", ...distances] of labels) expect(distances.length === 2 || mark.endsWith(" *")).toBe(true);
  });

  it("say once on each sheet what a label without figures means", () => {
    const parts = plan("three hundred").scenes.filter(({ items }) => groupsOf(items, "anchor-rod-plan").length > 0);
    expect(parts.length).toBeGreaterThan(0);
    for (const scene of parts) expect(wordsOf(scene).split("NO FIGURES: W.P. ON BOTH LINES")).toHaveLength(2);
  });

  it("write an offset with its side", () => {
    expect(allWords(plan("twelve").scenes)).toContain(`1: 4-1/2" E`);
  });

  it("say that a base is held, on plan, detail and schedule", () => {
    const request = { ...regularPlan(4, 3), held: new Map([["B2", ["hole-web: 1/8, at least 1/2 is needed"]]]) };
    const scenes = drawPlanSheets(request);
    const words = allWords(scenes);
    expect(words).toContain("B2 HELD");
    expect(words).toMatch(/B2, QTY 3, TEMPLATE T1, HELD/);
    expect(words).toContain("MARKS IN BOLD ARE HELD");
    for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
  });
});

describe("the setting schedule", () => {
  it.each([
    ["template", "1-1/2"],
    ["template left as setting plate", "1-1/2 + PL 1/4"],
    ["setting plate over cast rods", "1-1/2 + PL 1/4"],
  ] as const)("says what lies under the base plate: %s", (use, words) => {
    const base = baseFixture({ template: { ...baseFixture().template, use } });
    const lines: readonly GridLine[] = [
      { kind: "x", name: "A", at: inches(0) },
      { kind: "y", name: "1", at: inches(0) },
    ];
    const request = planCase([base], planFixture({ lines, placements: [placementOf("B1", ["A", "1"])] }));
    const [row] = rowsOf(drawPlanSheets(request), "setting-schedule", 8);
    expect(row?.[5]).toBe(words);
  });

  /** Outside diameters of plain washers for 1 in by ASME B18.21.1 Type A, which F844 takes over: narrow 2, wide 2-1/2. */
  it.each([
    ["F844", "F844 NARROW Ø2 OR WIDE Ø2-1/2"],
    ["F844 narrow", "F844 NARROW Ø2 × 0.134"],
    ["F844 wide", "F844 WIDE Ø2-1/2 × 0.165"],
    ["F436", "Ø2 × 0.177"],
  ] as const)("says of which series a washer is: %s", (written, words) => {
    const [group] = baseFixture().groups;
    if (group === undefined) throw new Error("a base has a group");
    const found = findWasher(written, { ...group.rod, diameter: inches(1) }, "washer");
    if (!found.ok) throw new Error(found.message);
    const base = baseFixture({ groups: [{ ...group, washer: found.washer }] });
    const grid: readonly GridLine[] = [
      { kind: "x", name: "A", at: inches(0) },
      { kind: "y", name: "1", at: inches(0) },
    ];
    const request = planCase([base], planFixture({ lines: grid, placements: [placementOf("B1", ["A", "1"])] }));
    const cells = groups(drawPlanSheets(request), "setting-schedule").flatMap(({ items }) => textsOf(items));
    const lines = cells.map(({ text }) => text).filter((text) => /F844|[Ø×]|WIDE|^0\.\d{3}$/.test(text));
    expect(lines.join(" ")).toBe(words);
  });
});

describe("dimension chains", () => {
  const figures = (scene: Scene | undefined) =>
    groupsOf(scene?.items ?? [], "anchor-rod-plan").flatMap(({ items }) =>
      groupsOf(items, "dimension").flatMap(({ items: parts }) => textsOf(parts).map(({ text }) => text)),
    );

  it("give spacings and overall both ways in feet and inches", () => {
    expect(figures(plan("twelve").scenes[0]).sort()).toEqual(
      [`25'-0"`, `25'-0"`, `25'-0"`, `75'-0"`, `20'-0"`, `20'-0"`, `40'-0"`].sort(),
    );
  });

  it("give millimetres for a job in millimetres", () => {
    expect(figures(plan("metric").scenes[0]).sort()).toEqual(
      ["6000", "6000", "6000", "6500", "24500", "7200", "7200", "14400"].sort(),
    );
  });

  it("give the distances of skewed lines along a line of the building, from the nearest that crosses it", () => {
    const { scenes } = plan("skewed");
    const located = groups(scenes, "line-location").filter(({ data }) => data.along === "A");
    expect(located.map(({ data, items }) => [data.from, data.to, textsOf(items)[0]?.text])).toEqual([
      ["8", "S1", `25'-0"`],
      ["S1", "S2", `22'-0"`],
      ["S2", "S3", `22'-0"`],
      ["S3", "S4", `22'-0"`],
      ["S4", "S5", `22'-0"`],
    ]);
    const angles = groups(scenes, "line-angle").map(({ data, items }) => [data.name, textsOf(items)[0]?.text]);
    expect(angles).toEqual(["S1", "S2", "S3", "S4", "S5"].map((name) => [name, "105°"]));
  });

  it("write a rounded figure in brackets: 22 ft × cos 15° is 21 ft 3.005 in", () => {
    expect(planLength(Math.round(inches(264) * Math.cos(Math.PI / 12)), "in")).toBe(`(21'-3")`);
    expect(planLength(inches(4.5), "in")).toBe(`4-1/2"`);
    expect(planLength(millimetres(1234.56), "mm")).toBe("(1235)");
    expect(planLength(millimetres(1234.5), "mm")).toBe("1234.5");
  });
});

describe("a plan on several sheets", () => {
  const { scenes } = plan("three hundred");
  const parts = scenes.filter((scene) => groupsOf(scene.items, "key-plan").length > 0);

  it("has a key plan and match lines that name each other's sheets", () => {
    expect(parts.length).toBeGreaterThan(1);
    parts.forEach((scene, i) => {
      const words = textsOf(scene.items).map(({ text }) => text);
      const sides = groupsOf(scene.items, "match-line");
      const named = words.flatMap((text) => /^MATCH LINE: SEE SHEET (\d+)$/.exec(text)?.[1] ?? []);
      expect(named).toHaveLength(sides.length);
      expect(named).not.toContain(String(i + 1));
      for (const other of named)
        expect(wordsOf(parts[Number(other) - 1] ?? scene)).toContain(`MATCH LINE: SEE SHEET ${i + 1}`);
    });
  });

  it("shows every base once", () => {
    const names = groups(scenes, "placement").map(({ data }) => data.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toHaveLength(300);
  });

  it("dimensions every bay, those that a match line crosses too", () => {
    const bays = groups(parts, "dimension").filter(({ data }) => data.valueNm === inches(300));
    expect(bays.length).toBeGreaterThanOrEqual(19);
  });

  it("gives the overall size of the grid: once where match lines cut it, on every part that shows all of it", () => {
    const words = parts.map(wordsOf).join("\n");
    expect(words.split(`475'-0" OVERALL, 1 TO 20`)).toHaveLength(2);
    expect(words.split(`280'-0"`)).toHaveLength(parts.length + 1);
  });
});

function fail(): never {
  throw new Error("no sheet");
}

describe("schedules", () => {
  it("count rods, bases and templates", () => {
    expect(wordsIn(sheetWith("twelve", "totals"), "totals")).toContain("72 RODS, 12 BASES OF 4 TYPES");
  });

  it("write the tolerances out by diameter with edition and clause: ACI 117-10 2.3.4, 3/8 in for 1-1/4 in rods", () => {
    const words = wordsIn(sheetWith("twelve", "tolerances"), "tolerances");
    expect(words).toContain("PLACING TOLERANCES: ACI 117-10");
    expect(words).toContain("1, 1-1/4, 1-1/2 ± 3/8 2.3.4.2");
    expect(words).toContain("top of anchor bolt elevation all ± 1/2 2.3.4.1");
    expect(words).toContain("GROUP CENTER: ACI 117-10 HAS NO VALUE OF ITS OWN");
    expect(words).not.toContain("± 1/4");
  });

  it("write the tolerances of EN 1090-2 in millimetres: 3 in plan, -5 +45 in height, fixed bolts", () => {
    const words = wordsIn(sheetWith("metric", "tolerances"), "tolerances");
    expect(words).toContain("± 3 D.2.20");
    expect(words).toContain("- 5, + 45 D.2.20");
    expect(words).not.toContain("adjustable preset");
  });

  it("write the group centres of AISC 303-10: 1/4 in, and its accumulation along a line", () => {
    const { plan: sitePlan, job } = regularPlan(4, 3);
    const request = planCase(job.bases, sitePlan.spec, { editions: { ...job.editions, placing: "AISC 303-10" } });
    const scene = drawPlanSheets(request).find(({ items }) => groupsOf(items, "tolerances").length > 0);
    const words = wordsIn(scene ?? fail(), "tolerances");
    expect(words).toMatch(/group center to established .*± 1\/4 7\.5\.1\(e\)/);
    expect(words).toMatch(/accumulated .*1\/4 in per 100 ft, not more than 1 .*7\.5\.1\(d\)/);
  });

  it("gives control points, bearing and true north, each as itself", () => {
    const { scenes, request } = plan("skewed");
    const words = allWords(scenes).replace(/\n/g, " ");
    expect(words).toContain("SITE IN INTERNATIONAL FOOT UNITS, PLAN IN FEET AND INCHES.");
    expect(words).toContain("CP-1 5000.0000 2000.0000 99.0000");
    expect(words).toContain("Plan north bears 12.5° (12-30-00) clockwise from true north");
    const { bearing = Number.NaN } = request.plan.transform ?? {};
    expect(words).toContain(`Plan north bears ${Number(bearing.toFixed(5))}° (`);
    const arrows = groups(scenes.slice(0, 1), "north-arrow").map(({ data }) => [data.word, data.turn]);
    expect(arrows).toEqual([
      ["PLAN", 0],
      ["TRUE", 12.5],
    ]);
  });

  it("gives levels as a range, and says where they differ", () => {
    const { plan: sitePlan, job } = regularPlan(2, 1);
    const placements = sitePlan.spec.placements.map((each, i) => ({
      ...each,
      mark: "B1",
      topOfConcrete: given(inches(1200 - 6 * i), "job"),
    }));
    const scenes = drawPlanSheets(planCase(job.bases, { ...sitePlan.spec, placements }));
    expect(wordsOfTable(scenes, "setting-schedule")).toContain(`+99'-6" TO +100'-0"`);
  });

  it("lists the rods whose places a detail leaves out", () => {
    const rows = rowsOf(plan("twelve").scenes, "rod-coordinates", 5);
    expect(groups(plan("twelve").scenes, "rod-coordinates").length).toBeGreaterThan(0);
    expect(rows.length).toBeGreaterThan(0);
  });

  function sheetWith(name: string, group: string): Scene {
    return plan(name).scenes.find(({ items }) => groupsOf(items, group).length > 0) ?? fail();
  }
});

describe("details", () => {
  it("are drawn once for every type that is placed, with its count", () => {
    const titles = groups(plan("twelve").scenes, "detail").map(({ items }) => textsOf(items)[0]?.text);
    expect(titles).toEqual(["B1", "B2", "B3", "B4"].map((mark) => `${mark}, QTY 3, TEMPLATE T1`));
  });

  it("dimension rods and edges of concrete from the working point: an edge column's concrete is 3 in off", () => {
    const [detail] = groups(plan("twelve").scenes, "detail").filter(({ data }) => data.mark === "B4");
    const figures = groupsOf(detail?.items ?? [], "dimension").flatMap(({ items }) => textsOf(items));
    expect(figures.map(({ text }) => text).sort()).toEqual(
      [`6"`, `6"`, `5"`, `5"`, `1'-0"`, `GAGE 10"`, `9"`, `1'-3"`].sort(),
    );
  });
});

describe("the sheets of a plan", () => {
  it("are one for one base", () => {
    const scenes = drawPlanSheets(regularPlan(1, 1));
    expect(scenes).toHaveLength(1);
  });

  it("cut no plan that a smaller scale shows whole, with every label", () => {
    const { scenes } = plan("three hundred");
    const views = groups(scenes, "anchor-rod-plan");
    expect(views.length).toBeLessThanOrEqual(2);
    expect(allWords(scenes)).not.toContain("without a mark");
  });

  it("have the size that the job chose, all of them, and take more sheets where it is small", () => {
    const { job, plan: sitePlan, ...rest } = regularPlan(8, 7);
    for (const sheet of ["C", "D"] as const) {
      const scenes = drawPlanSheets({ ...rest, plan: sitePlan, job: { ...job, sheet } });
      expect(new Set(scenes.map(({ size }) => size))).toEqual(new Set([sheet]));
      for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
    }
  });

  it("say which sizes have no room", () => {
    const { job, ...rest } = regularPlan(4, 3);
    expect(hasPlanRoom({ ...rest, job: { ...job, sheet: "A" } })).toBe(false);
    expect(hasPlanRoom({ ...rest, job: { ...job, sheet: "D" } })).toBe(true);
  });
});

describe("jobs of which little is known", () => {
  it("draw the grid alone and say so", () => {
    const words = allWords(plan("bare").scenes).replace(/\n/g, " ");
    expect(words).toContain("No base is placed yet");
  });

  it("draw bases without concrete, base plate or column", () => {
    const { plan: sitePlan, job } = regularPlan(3, 2);
    const bases = job.bases.map((base) => ({
      ...base,
      column: missing("column", "not given"),
      concrete: { ...base.concrete, shape: missing("concrete", "not given") },
      basePlate: { ...base.basePlate, shape: missing("basePlate", "not given") },
    }));
    const scenes = drawPlanSheets(planCase(bases, sitePlan.spec));
    expect(groups(scenes, "placement")).toHaveLength(6);
    for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
  });

  it("say NOT RELEASED on every sheet of a job that is not", () => {
    for (const scene of plan("metric").scenes) expect(wordsOf(scene)).toContain("NOT RELEASED");
    expect(allWords(plan("twelve").scenes)).not.toContain("NOT RELEASED");
  });

  it("draw bases that stand closer than their words, and leave the distances to the table", () => {
    const lines = [0, 1, 2, 3, 4, 5].map((i): GridLine => ({ kind: "x", name: `${i}`, at: millimetres(i * 900) }));
    const y: GridLine = { kind: "y", name: "A", at: millimetres(0) };
    const placements = lines.map(({ name }) => placementOf("B1", [name, "A"]));
    const far: GridLine = { kind: "x", name: "9", at: millimetres(90_000) };
    const all = [...placements, placementOf("B1", ["9", "A"])];
    const { job } = regularPlan(1, 1);
    const scenes = drawPlanSheets(planCase(job.bases, planFixture({ lines: [...lines, far, y], placements: all })));
    for (const scene of scenes) expect(collisionsOf(scene)).toEqual([]);
    expect(rowsOf(scenes, "placement-table", 8)).toHaveLength(7);
  });
});
