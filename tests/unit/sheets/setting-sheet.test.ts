/** Setting sheets: what the foreman reads agrees with closed forms of the job, and nothing stands on anything else. */
import { describe, expect, it } from "vitest";
import { given, missing } from "../../../src/job/model/job.js";
import type { Placement } from "../../../src/job/model/plan.js";
import { drawSettingSheet, findCollisions } from "../../../src/sheets/index.js";
import type { SettingRequest } from "../../../src/sheets/setting/request.js";
import { nutWords } from "../../../src/sheets/setting/setting-words.js";
import { sideOf } from "../../../src/sheets/setting/side-words.js";
import { formatLength, inches, type Length, millimetres, parseLength } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { placementAt, planFixture } from "../../setting-out-plan.js";
import { groupsOf, textsOf, wordsIn, wordsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";
import { sheetCases } from "./sheet-cases.js";

function settingCase(job = jobFixture(), base = baseFixture(), changes: Partial<SettingRequest> = {}): SettingRequest {
  const { measures, plate, weight, ...checked } = sheetCase(job, base);
  return { ...checked, measures, plate, weight, pieces: [{ role: "template", plate, measures, weight }], ...changes };
}

function placed(turns: readonly number[], change: Partial<Placement> = {}) {
  const placements = turns.map((turn, i) => placementAt(["A", `${i + 1}`], { turn, ...change }));
  return jobFixture({ plan: planFixture({ placements }) });
}

const AUTO = { kind: "auto" } as const;
const LOWER = { thickness: inches(0.25), outline: { ...AUTO, corner: { kind: "square" } }, opening: AUTO } as const;

const readOn = (scene: Parameters<typeof wordsOf>[0]): string => wordsOf(scene).replaceAll("\n", " ");

const read = (words: string, unit: "in" | "mm"): Length => {
  const reading = parseLength(words, unit);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

describe("the gauge from the template to the top of the rod", () => {
  const us = [
    [9, 3, 0.375],
    [6.5, 2.25, 0.1875],
    [14, 4, 0.5],
  ] as const;
  const metric = [
    [220, 60, 8],
    [175, 45, 6],
  ] as const;
  const variations = [
    ...us.map(([a, b, c]) => ["in", inches(a), inches(b), inches(c)] as const),
    ...metric.map(([a, b, c]) => ["mm", millimetres(a), millimetres(b), millimetres(c)] as const),
  ];

  it.each(variations)("%s: projection %d less height %d less thickness %d", (unit, projection, height, thickness) => {
    const base = baseFixture({ groups: [groupFixture({}, { projection: given(projection, "job") })] });
    const template = { ...base.template, height: given(height, "job"), thickness };
    const scene = drawSettingSheet(settingCase(jobFixture({ unit }), { ...base, template }));
    const [, words = ""] = /^GAU?GE (\S+)/.exec(wordsIn(scene, "setting-gauge")) ?? [];
    expect(read(words, unit)).toBe(projection - height - thickness);
    const under = formatLength(projection - height, unit);
    expect(wordsIn(scene, "setting-heights")).toContain("UNDERSIDE TO ROD TOP");
    expect(textsOf(groupsOf(scene.items, "setting-heights")).map(({ text }) => text)).toContain(under);
  });

  it("least and most by the tolerance of rod tops: 1/2 in either way (ACI 117-10, 2.3.2), none is made up without one", () => {
    const words = wordsIn(drawSettingSheet(settingCase()), "setting-gauge");
    expect(words).toMatch(/^GAGE 5-3\/4 \(5-1\/4 TO 6-1\/4\), TOP OF TEMPLATE TO TOP OF ROD/);
  });

  it("of a projection or a height that is not given: NOT GIVEN, and whom to ask; never a figure", () => {
    const base = baseFixture();
    const template = { ...base.template, height: missing("template.height", "no height is given") };
    const scene = drawSettingSheet(settingCase(jobFixture(), { ...base, template }));
    expect(wordsIn(scene, "setting-gauge")).toBe("GAGE FROM TOP OF TEMPLATE TO TOP OF ROD NOT GIVEN: ASK THE OFFICE");
    expect(wordsOf(scene)).not.toContain("template.height");
  });

  it("each group of rods has its own, and a blank for every rod before and after", () => {
    const own = groupFixture({ letter: "B", pattern: { kind: "points", at: [{ x: inches(0), y: inches(8) }] } });
    const groups = [groupFixture(), { ...own, rod: { ...own.rod, projection: given(inches(7), "job") } }];
    const scene = drawSettingSheet(settingCase(jobFixture(), baseFixture({ groups })));
    const gauges = groupsOf(scene.items, "setting-gauge").map(({ items }) => textsOf(items)[0]?.text);
    expect(gauges.map((words) => words?.slice(0, 12))).toEqual(["GAGE A 5-3/4", "GAGE B 3-3/4"]);
    const blanks = groupsOf(scene.items, "setting-blanks").flatMap(({ items }) =>
      textsOf(items).map(({ text }) => text),
    );
    for (const tag of ["A1", "A4", "B1"]) expect(blanks.filter((text) => text === tag)).toHaveLength(2);
  });
});

describe("which way round", () => {
  it("places that are turned alike: plan north is up, and the template is drawn turned", () => {
    const scene = drawSettingSheet(settingCase(placed([90, 90])));
    expect(groupsOf(scene.items, "place-view")[0]?.data).toEqual({ turn: 90 });
    expect(groupsOf(scene.items, "north")).toHaveLength(1);
    expect(wordsOf(scene)).toMatch(/2 PLACES AT GRID A-1, A-2/);
    expect(wordsOf(scene)).toMatch(/\+X points NORTH/);
  });

  it("places that are not: no north, and for each place where +X points", () => {
    const scene = drawSettingSheet(settingCase(placed([0, 180, 0, 30])));
    expect(groupsOf(scene.items, "north")).toEqual([]);
    const words = wordsOf(scene);
    expect(words).toContain("2 PLACES WITH +X EAST: GRID A-1, A-3");
    expect(words).toContain("1 PLACE WITH +X WEST: GRID A-2");
    expect(words).toContain("1 PLACE WITH +X 30° FROM EAST TOWARDS NORTH: GRID A-4");
  });

  it("a job without layout: no north, and whom to ask", () => {
    const scene = drawSettingSheet(settingCase());
    expect(groupsOf(scene.items, "north")).toEqual([]);
    expect(wordsOf(scene)).toContain("ASK THE OFFICE WHERE AND WHICH WAY ROUND");
  });

  it("a base off its crossing by compass, and the elevation of its concrete", () => {
    const offset = { x: inches(-3), y: inches(0) };
    const words = wordsOf(
      drawSettingSheet(settingCase(placed([0], { offset, topOfConcrete: given(inches(1206), "job") }))),
    );
    expect(words).toContain(`WORKING POINT (W.P.) 3" WEST OF THE GRID CROSSING`);
    expect(words).toContain(`T.O.C. ELEVATION +100'-6"`);
  });

  it("a corner of the template by the compass where its places are turned alike, else by its own axes", () => {
    const { plate } = settingCase();
    const corner = { x: 1e4, y: 1e4 };
    expect(sideOf(corner, plate, { kind: "alike", turn: 0 })).toBe("north-east");
    expect(sideOf(corner, plate, { kind: "alike", turn: 90 })).toBe("north-west");
    expect(sideOf(corner, plate, { kind: "different" })).toBe("+X +Y corner");
  });
});

describe("rods of a ring, with paper within and around it", () => {
  const ring = (count: number, diameter: number, half: number) => {
    const base = baseFixture();
    const start = { kind: "straddle" } as const;
    const pattern = { kind: "circle", diameter: inches(diameter), count, start } as const;
    const [outer, inner] = [inches(diameter + 2 * half), inches(diameter - 2 * half)];
    const outline = { kind: "ring", outer, inner, at: { x: inches(0), y: inches(0) } } as const;
    const template = { ...base.template, outline, opening: { kind: "none" } as const };
    return { ...base, groups: [groupFixture({ pattern })], template };
  };

  it.each([
    [12, 42, 3],
    [24, 120, 4],
    [40, 60, 3],
  ])("%i of them: each has its tag, over an outline where it must be", (count, diameter, half) => {
    const scene = drawSettingSheet(settingCase(jobFixture(), ring(count, diameter, half)));
    const tags = groupsOf(scene.items, "place-view").flatMap(({ items }) => groupsOf(items, "tag"));
    const named = tags.map(({ data }) => data.tag).filter((tag) => /^A\d+$/.test(`${tag}`));
    expect(named).toHaveLength(count);
    expect(readOn(scene)).not.toContain("NO ROOM FOR");
    expect(findCollisions(scene)).toEqual([]);
  });
});

describe("which nuts stay", () => {
  const base = baseFixture();
  const nuts = (levelling: "nuts" | "shims") => ({ ...base, levelling: given(levelling, "job") });

  it.each([
    ["nuts", 1, "lower nut stays: it is the levelling nut; upper nut kept for the base plate"],
    [
      "shims",
      1,
      "lower nut comes off: none levels the base plate; upper nut kept for the base plate; 1 a rod only for the template",
    ],
    ["shims", 2, "lower nut comes off: none levels the base plate; upper nut kept for the base plate (2 a rod)"],
  ] as const)("levelled by %s, %d nuts on the base plate", (levelling, top, words) => {
    expect(nutWords(nuts(levelling), groupFixture({}, { topNuts: given(top, "job") }))).toBe(words);
  });

  it("not known how it is levelled: whom to ask", () => {
    const unknown = { ...base, levelling: missing("levelling", "not given") };
    expect(nutWords(unknown, groupFixture())).toBe("which nuts stay is not given: ask the office");
  });
});

describe("a sheet that may not be used, and one of another kind", () => {
  it("HELD with its reason stands above everything, and in its description", () => {
    const scene = drawSettingSheet(settingCase(jobFixture(), baseFixture(), { held: ["hole web A1-A2 is 1/8"] }));
    expect(wordsIn(scene, "held")).toContain("HELD");
    expect(scene.description).toContain("HELD");
  });

  it("a plate set over cast rods: no gauge, and it says that it does not hold the rods", () => {
    const base = baseFixture();
    const template = { ...base.template, use: "setting plate over cast rods" as const };
    const scene = drawSettingSheet(settingCase(jobFixture(), { ...base, template }));
    expect(groupsOf(scene.items, "setting-gauge")).toEqual([]);
    expect(readOn(scene)).toContain("this plate does not hold them: ask the office what does");
  });

  it.each([
    [
      given({ from: "lower ends" as const, distance: inches(4) }, "job"),
      "underside 4 above the lower ends of the rods",
    ],
    [given({ from: "top of concrete" as const, distance: inches(16.5) }, "job"), "underside 16-1/2 below T.O.C."],
    [missing("template.lower.above", "not given"), "its height is not given: ask the office"],
  ] as const)("a lower template is looked for before the pour, and set at its height", (level, words) => {
    const fixture = baseFixture();
    const lower = { ...LOWER, level };
    const base = { ...fixture, template: { ...fixture.template, lower } };
    const one = settingCase(jobFixture(), base);
    const piece = one.pieces[0];
    if (piece === undefined) throw new Error("no piece");
    const plate = { ...piece, role: "lower template" as const, plate: { ...piece.plate, mark: "T1-L" } };
    const read = readOn(drawSettingSheet({ ...one, pieces: [piece, plate] }));
    expect(read).toContain(`LOWER TEMPLATE T1-L on the rods, same way round, level; ${words}`);
  });

  it("signatures are left to people", () => {
    const words = textsOf(groupsOf(drawSettingSheet(settingCase()).items, "setting-signatures")).map(
      ({ text }) => text,
    );
    expect(words).toEqual(["SET BY", "CHECKED BY", "INSPECTOR", "DATE AND TIME", "POINTS SENT TO", "THIS FORM TO"]);
  });
});

describe("every kind of plate", () => {
  it.each(Object.entries(sheetCases))(
    "%s: one page, nothing on anything else, no letters under 3 mm",
    (_name, make) => {
      const { job, base, held } = make();
      const scene = drawSettingSheet(settingCase(job, base, { held }));
      expect(findCollisions(scene)).toEqual([]);
      for (const { height, text } of textsOf(scene.items)) expect(height, text).toBeGreaterThanOrEqual(3);
      expect(scene.height).toBeGreaterThan(scene.width);
      expect(wordsOf(scene)).toContain(base.mark);
    },
  );
});
