/** The section through a rod says every value that is known and none that is not, with the least and most of the rules. */
import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/model.js";
import { type Base, type Bottom, given, type Job, missing, type Rod } from "../../../src/job/model/job.js";
import { findTextCollisions } from "../../../src/sheets/index.js";
import type { SheetRequest } from "../../../src/sheets/request.js";
import { settingSection } from "../../../src/sheets/setting-section.js";
import type { SideView, ViewSize } from "../../../src/sheets/side-view.js";
import { formatLength, inches, type Length, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";
import { textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const LETTERING = { small: 3, body: 3.5, heading: 4, title: 6 };
const b = baseFixture();

interface Case {
  readonly job?: Partial<Job>;
  readonly base?: Partial<Base>;
  readonly template?: Partial<Base["template"]>;
  readonly rod?: Partial<Rod>;
}

function requestOf({ job = {}, base = {}, template = {}, rod = {} }: Case): SheetRequest {
  const own = baseFixture({ groups: [groupFixture({}, rod)], template: { ...b.template, ...template }, ...base });
  return sheetCase(jobFixture(job), own);
}

const viewOf = (request: SheetRequest): SideView => settingSection(request, LETTERING);

function sceneOf(view: SideView, size: ViewSize) {
  const [width, height] = [size.width + 10, size.height + 20];
  const items = view.draw({ x0: 5, y0: 10, x1: width - 5, y1: height - 10 }, size);
  return { size: "B", width, height, title: "", description: "", items };
}

/** All that the section says at one of its sizes, wrapped lines taken together. */
function said(view: SideView, size: ViewSize): string {
  const words = textsOf(sceneOf(view, size).items).map(({ text }) => text);
  return [...words, view.under(size)].join(" ");
}

const say = (length: number, unit: Job["unit"] = "in") => formatLength(length, unit);
const none = (key: string) => missing(key, "not given");
const mm = (value: number) => given(millimetres(value), "job");
const plate: Bottom = {
  kind: "plate",
  nuts: 2,
  tackWelded: false,
  shape: "square",
  size: inches(4),
  thickness: inches(1),
};
const washers = shopFixture({
  templateWasher: given({ shape: "round", size: inches(3), thickness: given(inches(0.25), "shop") } as const, "shop"),
});
const metric: Case = {
  job: { unit: "mm", editions: { ...jobFixture().editions, set: "metric", placing: "EN 1090-2:2008" } },
  rod: {
    size: "M30",
    projection: mm(220),
    embedment: mm(600),
    threadLength: mm(185),
    grade: given("ISO 898-1 8.8", "job"),
  },
  base: { grout: mm(50) },
};
const bare: Case = {
  base: {
    grout: none("grout"),
    levelling: none("levelling"),
    basePlate: { ...b.basePlate, thickness: none("basePlate.thickness") },
    groups: [
      groupFixture(
        { washer: none("washer") },
        {
          ...{ projection: none("rods.projection"), embedment: none("rods.embedment"), bottom: none("rods.bottom") },
          ...{ threadLength: none("rods.threads"), nut: none("rods.nut") },
        },
      ),
    ],
  },
  template: { support: none("template.support"), height: none("template.height") },
};

/** What the section says in each case, and what it must not say. */
const CASES: readonly (readonly [string, Case, readonly string[], readonly (string | RegExp)[]])[] = [
  [
    "carried by the form",
    {},
    [
      ...["PROJECTION 9 (8-1/2 TO 9-1/2)", "EMBEDMENT 24", "THREAD 8", "UNDERSIDE 3 ABOVE T.O.C.", "TEMPLATE 1/4"],
      ...["CARRIED BY THE FORM", "HEAVY HEX NUT ON BOTH FACES", "HEAVY HEX NUT AT LOWER END", "T.O.C.", "TOP"],
      ...["LEVELING NUT AND WASHER", "BASE PLATE 1-1/2", "SQUARE WASHER 3 x 1/2", "GROUT 1-1/2", "NOT TO SCALE"],
      "ROD 1-1/4, LENGTH NOT GIVEN",
    ],
    [/BEARERS/, /SETTING PLATE/, /STICK-OUT/, /GROUP/],
  ],
  ["carried by bearers", { template: { support: given("bearers", "job") } }, ["CARRIED BY BEARERS"], [/THE FORM/]],
  [
    "nothing given",
    bare,
    [
      "PROJECTION NOT GIVEN",
      "EMBEDMENT NOT GIVEN",
      "THREAD NOT GIVEN",
      "UNDERSIDE NOT GIVEN",
      "SUPPORT NOT GIVEN",
      "LOWER END NOT GIVEN",
      "GROUT AND BASE PLATE NOT GIVEN",
    ],
    [/CARRIED/, /WASHER/, /LEVEL/, /ABOVE/, / TO \d/],
  ],
  [
    "one value of the stack given",
    { ...bare, base: { ...bare.base, grout: given(inches(2), "job") } },
    ["GROUT 2", "BASE PLATE NOT GIVEN", "WASHER NOT GIVEN", "NUT NOT GIVEN", "LEVELING NOT GIVEN"],
    [/GROUT NOT GIVEN/],
  ],
  [
    "over cast rods",
    { template: { use: "setting plate over cast rods", support: none("template.support") } },
    ["SET OVER CAST RODS", "SETTING PLATE 1/4", "WHEN THE PLATE IS SET"],
    [/CARRIED|SUPPORT|UNDERSIDE|BOTH FACES/],
  ],
  [
    "left as setting plate",
    { template: { use: "template left as setting plate" } },
    ["TEMPLATE LEFT AS SETTING PLATE 1/4", "CARRIED BY THE FORM"],
    [/CAST RODS/],
  ],
  [
    "plywood",
    { job: { shop: washers }, template: { material: "plywood", thickness: inches(0.75) } },
    ["PLYWOOD 3/4", "AND ROUND WASHER 3 x 1/4 ON BOTH FACES"],
    [/TEMPLATE 3\/4/],
  ],
  [
    "plywood, washer not given",
    { template: { material: "plywood" } },
    ["AND WASHER ON BOTH FACES (WASHER NOT GIVEN)"],
    [],
  ],
  [
    "a plate at the lower end",
    { rod: { bottom: given(plate, "job") } },
    ["SQUARE PLATE 4 x 1 AND NUTS"],
    [/NUT AT LOWER/],
  ],
  [
    "a hook",
    { rod: { bottom: given({ kind: "hook", reach: inches(3), radius: null }, "job") } },
    ["HOOK, REACH 3"],
    [/LOWER END/],
  ],
  [
    "a length with its tolerance",
    { rod: { length: given(inches(38), "job") } },
    ["LENGTH 38 (37 TO 39)"],
    [/LENGTH NOT GIVEN/],
  ],
  ["shims", { base: { levelling: given("shims", "job") } }, ["ON SHIMS"], [/LEVELING/]],
  ["a levelling plate", { base: { levelling: given("plate", "job") } }, ["ON LEVELING PLATE"], [/SHIMS/]],
  [
    "no grout",
    { base: { grout: given(nanometres(0), "job"), levelling: none("levelling") } },
    ["NO GROUT"],
    [/LEVELING/],
  ],
  ["stick-out", { rod: { stickOut: given(inches(0.5), "job") } }, ["STICK-OUT 1/2"], []],
  ["short thread", { rod: { threadLength: given(inches(2), "job") } }, ["THREAD 2"], []],
  ["long decimals", { rod: { projection: given(nanometres(228_612_345), "job") } }, ["PROJECTION 9.0005"], []],
  [
    "millimetres",
    metric,
    ["PROJECTION 220 (215 TO 265)", "EMBEDMENT 600", "LEVELLING NUT AND WASHER", "GROUT 50"],
    [/LEVELING/],
  ],
  [
    "two groups",
    {
      base: {
        groups: [
          groupFixture(),
          groupFixture({ letter: "B", pattern: { kind: "points", at: [{ x: inches(0), y: inches(8) }] } }),
        ],
      },
    },
    ["GROUP A, RODS 1-1/4; NOT TO SCALE"],
    [],
  ],
];

describe("the setting section", () => {
  it.each(CASES)("%s", (_, one, words, not) => {
    const view = viewOf(requestOf(one));
    expect(view.sizes.length).toBeGreaterThan(0);
    for (const size of view.sizes) {
      const text = said(view, size);
      for (const each of words) expect(text).toContain(each);
      for (const each of not) expect(text).not.toMatch(each);
    }
  });

  it.each(CASES)("no text on a line or outside its area: %s", (_, one) => {
    const view = viewOf(requestOf(one));
    for (const size of view.sizes) {
      const scene = sceneOf(view, size);
      expect(findTextCollisions(scene)).toEqual([]);
      expect(findTextCollisions({ ...scene, width: size.width + 5.1, height: size.height + 10.1 })).toEqual([]);
    }
  });

  it("letters nothing smaller than the small height", () => {
    const view = viewOf(requestOf({}));
    const heights = view.sizes.flatMap((size) => textsOf(sceneOf(view, size).items).map(({ height }) => height));
    expect(new Set(heights)).toEqual(new Set([LETTERING.small]));
  });
});

const twice = (quantity: CheckRow["value"]) => (quantity?.kind === "length" ? quantity.twice : Number.NaN);

describe("least and most are those of the rules", () => {
  const request = requestOf({ rod: { length: given(inches(38), "job"), bottom: given(plate, "job") } });
  const [size] = viewOf(request).sizes;
  const text = size === undefined ? "" : said(viewOf(request), size);
  const row = (rule: string, clause: RegExp): CheckRow => {
    const found = request.rows.find((each) => each.rule === rule && clause.test(each.clause));
    if (found === undefined) throw new Error(`no row of ${rule}`);
    return found;
  };
  const half = (value: number): string => say((value / 2) as Length);

  it("projection: the rod set low and set high", () => {
    const low = twice(row("projection", /set low/).value);
    const nominal = twice(row("projection", /from the specified/).value);
    const high = twice(row("projection", /set high/).limit) - twice(row("projection", /run down on it$/).limit);
    expect(high).toBeGreaterThan(0);
    expect(text).toContain(`PROJECTION ${half(nominal)} (${half(low)} TO ${half(nominal + high)})`);
  });

  it("length: the rod as short as it may come", () => {
    const least = twice(row("rod-length", /^overall length at its least/).value);
    expect(text).toContain(`LENGTH 38 (${half(least)} TO ${half(4 * inches(38) - least)})`);
  });

  it("grout: the concrete as high as it may stand", () => {
    const high = twice(row("grout-gap", /T\.O\.C\. high/).limit) - twice(row("grout-gap", /room:/).limit);
    expect(high).toBeGreaterThan(0);
    expect(text).toContain(`GROUT 1-1/2 (${half(2 * inches(1.5) - high)} TO`);
  });
});
