/** What a sheet says. Wording by the trade's list of what a drawing must say; title block fields after ISO 7200. */
import { describe, expect, it } from "vitest";
import type { Base } from "../../../src/job/model/job.js";
import { drawSheet, type Scene } from "../../../src/sheets/index.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { groupsOf, textsOf, wordsIn, wordsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";
import { sheetCases } from "./sheet-cases.js";

const drawn = new Map<string, Scene>();
function sheet(name: string): Scene {
  const known = drawn.get(name);
  if (known !== undefined) return known;
  const make = sheetCases[name];
  if (make === undefined) throw new Error(`no case ${name}`);
  const scene = drawSheet(make());
  drawn.set(name, scene);
  return scene;
}

describe("every sheet", () => {
  for (const name of Object.keys(sheetCases)) {
    it(`has text over nothing: ${name}`, () => {
      expect(collisionsOf(sheet(name))).toEqual([]);
    });

    it(`says what every sheet must say: ${name}`, () => {
      const words = wordsOf(sheet(name));
      for (const expected of ["PLAN: VIEW FROM TOP, THIS FACE UP", "+X", "+Y", "REVISIONS", "CHECKED BY"])
        expect(words).toContain(expected);
      const said = words.replace(/\n/g, " ");
      expect(said).toMatch(/SETTING SECTION|Left out for size D: .*setting section \(in words above\)/);
      expect(said).toContain("NOT CHECKED AT ALL: anchorage strength in concrete");
      expect(said).toContain("29 CFR 1926.755(b)");
      expect(said).toContain("not a lifting or working platform");
      expect(said).toContain("Local codes and licensed practice govern");
      expect(said).not.toMatch(/\bTRUE NORTH\b|\bPLAN NORTH\b|\bGRID\b/);
    });

    it(`letters no smaller than ISO 3098 asks for its size: ${name}`, () => {
      const { size, items } = sheet(name);
      const least = size === "A" || size === "A4" ? 1.8 : 2.5;
      for (const { text, height } of textsOf(items)) expect(height, text).toBeGreaterThanOrEqual(least);
    });
  }
});

describe("the example base", () => {
  const words = () => wordsOf(sheet("simple"));

  it("has callouts with count, size and what they are for", () => {
    expect(words()).toContain("4 HOLES Ø1-5/16\nFOR Ø1-1/4 RODS");
    expect(words()).toContain("OPENING Ø6");
    expect(words()).toContain("CHAMFER 1 × 1\n4 CORNERS");
  });

  it("dimensions gauges both ways, edges, overall sizes; what closes a chain is for reference", () => {
    const figures = groupsOf(sheet("simple").items, "dimension").flatMap(({ items }) => textsOf(items));
    expect(figures.map(({ text }) => text).sort()).toEqual(["10", "12", "18", "26", "4", "(4)", "7", "(7)"].sort());
  });

  it("has in brackets only what follows from the overall size: not what reaches a rod outside the plate", () => {
    const base = baseFixture();
    const figures = (width: number, at: number) => {
      const template = {
        ...base.template,
        outline: {
          kind: "rectangle",
          x: inches(width),
          y: inches(18),
          at: { x: inches(at), y: inches(0) },
          corner: { kind: "square" },
        } as const,
        opening: { kind: "none" } as const,
      };
      const { items } = drawSheet(sheetCase(jobFixture(), baseFixture({ template })));
      return groupsOf(items, "dimension")
        .flatMap((dimension) => textsOf(dimension.items))
        .map(({ text }) => text)
        .sort();
    };
    // Rods at x -6 and 6. Edges at -11 and 3; at 8 and 13, beyond the working point; at -11 and 9.
    const along = ["4", "(4)", "10", "18", "1'-3 5/8\" (15.6205)"];
    expect(figures(14, -4)).toEqual([...along, "5", "9", "3", "11", "(3)", "14"].sort());
    expect(figures(5, 10.5)).toEqual([...along, "12", "2", "5", "8", "5"].sort());
    expect(figures(20, -1)).toEqual([...along, "5", "12", "(3)", "11", "(9)", "20"].sort());
  });

  it("gives both gauges and the diagonal for taping, to 1/16 in feet and inches", () => {
    const tape = wordsIn(sheet("simple"), "tape-table");
    expect(tape).toContain("A1-A2, A3-A4 ALONG X 1'-0\" (12)");
    expect(tape).toContain('A1-A4, A2-A3 ALONG Y 10" (10)');
    expect(tape).toContain("A1-A3, A2-A4 DIAGONAL 1'-3 5/8\" (15.6205)");
  });

  it("fills the title block, and leaves CHECKED BY to a person", () => {
    const block = wordsIn(sheet("simple"), "title-block");
    for (const expected of [
      "JOB NO. 24-118",
      "TITLE Cold store, phase 2",
      "SETTING TEMPLATE, MARK T1",
      "WHERE USED B1, QTY 6",
      "TEMPLATES QTY 2",
      "MATERIAL STEEL 1/4",
      "WEIGHT 31.2 lb EACH",
      "STATUS RELEASED",
      "DRAWING NUMBER 24-118-T1",
      "SOURCE DRAWING S-301 REV 3",
      "TOLERANCES NOT SPECIFIED",
      "UNITS INCHES",
      "CHECKED BY DATE APPROVED BY DATE CUT FILES",
      "T1-rev-B-cut.dxf 0123456789ab",
      "Template holes Design Guide 1, 2nd ed.",
      "SHEET 1 OF 12",
    ])
      expect(block).toContain(expected);
  });

  it("shows no banner when it is released and not held", () => {
    expect(groupsOf(sheet("simple").items, "held")).toEqual([]);
    expect(groupsOf(sheet("simple").items, "not-released")).toEqual([]);
  });
});

describe("what must not be used", () => {
  it("says HELD with every reason, and that no cut file was written", () => {
    const held = wordsIn(sheet("prelim"), "held");
    expect(held).toContain("HELD");
    expect(held).toContain("DO NOT CUT, DRILL OR SET.");
    expect(held).toContain("Nut room A1-A2: 2.31 exceeds 2.00");
    expect(wordsIn(sheet("prelim"), "title-block")).toContain("NOT WRITTEN: HELD");
  });

  it("says NOT RELEASED with the status in words", () => {
    expect(wordsIn(sheet("prelim"), "not-released")).toContain("STATUS: PRELIMINARY");
    const approval = drawSheet(sheetCase(jobFixture({ status: "for approval" }), baseFixture()));
    expect(wordsIn(approval, "not-released")).toContain("STATUS: FOR APPROVAL");
  });
});

describe("hole table", () => {
  it("stands only where it is needed: more than 8 holes or more than 2 sizes", () => {
    expect(groupsOf(sheet("simple").items, "hole-table")).toEqual([]);
    expect(groupsOf(sheet("grid40").items, "hole-table")).toHaveLength(1);
    expect(groupsOf(sheet("two").items, "hole-table")).toHaveLength(1);
  });

  it("counts the holes, cut and drilled", () => {
    expect(wordsIn(sheet("grid40"), "hole-table")).toContain("COUNT 40: 40 CUT");
    expect(wordsIn(sheet("two"), "hole-table")).toContain("COUNT 13: 9 CUT, 4 DRILLED");
  });

  it("goes on in as many columns as it needs", () => {
    const tables = groupsOf(sheet("p200").items, "hole-table");
    expect(tables.length).toBeGreaterThan(1);
    expect(tables.flatMap(({ items }) => textsOf(items)).filter(({ text }) => /^A\d+$/.test(text))).toHaveLength(200);
  });
});

describe("kinds of plate", () => {
  it("bolt circle: diameter, count, first angle from +X, edge distance", () => {
    const words = wordsOf(sheet("circle8")).replace(/\n/g, " ");
    expect(words).toContain("ON Ø24 BOLT CIRCLE, 8 SPACED 45°");
    expect(words).toContain("A1 AT 112.5° COUNTER-CLOCKWISE FROM +X");
    expect(words).toContain("EDGE DISTANCE 3");
    // Chord 24 sin(180/8) = 9.1844, from geometry; to the nearest 1/16: 9-3/16.
    expect(wordsIn(sheet("circle8"), "tape-table")).toContain('CHORD 9 3/16" (9.1844)');
  });

  it("polygon: every corner has its number on the view and its place in a table, and a cut corner its legs", () => {
    const offset = sheet("offset");
    const numbers = groupsOf(offset.items, "corner").flatMap(({ items }) => textsOf(items).map(({ text }) => text));
    expect(numbers).toEqual(["1", "2", "3", "4", "5"]);
    expect(wordsIn(offset, "corner-table")).toContain("1 -3 -2 2 18 -2 3 18 19 4 6 19 5 -3 10");
    expect(wordsOf(offset)).toContain("CORNER CUT\n9 × 9");
    expect(groupsOf(sheet("simple").items, "corner-table")).toEqual([]);
  });

  it("ring: inside diameter and both edge distances", () => {
    const words = wordsOf(sheet("ring12")).replace(/\n/g, " ");
    expect(words).toContain("INSIDE Ø18");
    expect(words).toContain("EDGE DISTANCE 3 OUTSIDE, 3 INSIDE");
    expect(words).toContain("Ø30");
  });

  it("drill marks are noted", () => {
    expect(wordsOf(sheet("two"))).toContain("CENTER PUNCH AND DRILL");
    expect(wordsIn(sheet("two"), "notes")).toContain("Center punch and drill NH1, NH2, NH3, NH4: Ø3/16.");
  });

  it("key: a callout with its legs, a note, and one corner less of those treated alike", () => {
    const keyed = (template: Partial<Base["template"]>) => {
      const base = baseFixture();
      return drawSheet(sheetCase(jobFixture(), { ...base, template: { ...base.template, key: "auto", ...template } }));
    };
    const at = { x: nanometres(0), y: nanometres(0) };
    const corner = { kind: "chamfer", x: inches(1), y: inches(1) } as const;
    const square = keyed({ outline: { kind: "rectangle", x: inches(26), y: inches(26), at, corner } });
    expect(wordsOf(square)).toMatch(/ORIENTATION CUT\s(X [\d/-]+, Y [\d/-]+|([\d/-]+) × \2)/);
    expect(wordsOf(square)).toContain("3 CORNERS");
    expect(wordsIn(square, "notes")).toMatch(
      /Orientation cut: corner cut .* at the \+X \+Y corner\. A template that lies any other way/,
    );
    const round = keyed({ outline: { kind: "circle", diameter: inches(24), at } });
    expect(wordsOf(round)).toMatch(/ORIENTATION NOTCH\s1 × 1\/2 DEEP\nAT [\d.]+°\sCOUNTER-CLOCKWISE\sFROM \+X/);
    expect(wordsOf(round)).toContain("Ø24");
    expect(wordsIn(sheet("simple"), "notes")).not.toContain("Key");
  });

  it("plywood: drill list, painted marks, washers on both faces", () => {
    const notes = wordsIn(sheet("ply"), "notes");
    expect(notes).toContain("T1-rev-B-drill-list.csv");
    expect(notes).toContain("PAINTED ON THE TOP FACE: ");
    expect(notes).toContain("washers on both faces");
    expect(wordsIn(sheet("ply"), "title-block")).toContain("DRILL LIST T1-rev-B-drill-list.csv");
  });

  it("a pattern off the working point is located from it", () => {
    const values = groupsOf(sheet("offset").items, "dimension").map(({ data }) => data.valueNm);
    expect(values).toContain(inches(2));
    expect(values).toContain(inches(3));
  });

  it("metric jobs are on ISO sheets at ISO 5455 scales, in millimetres", () => {
    const scene = sheet("metric");
    expect(["A4", "A3", "A2"]).toContain(scene.size);
    expect(wordsIn(scene, "title-block")).toMatch(/SCALE 1:(1|2|5|10|20|50)\b/);
    expect(wordsIn(scene, "title-block")).toContain("UNITS MILLIMETRES");
  });

  it("long marks and titles are wrapped or shortened, never lost altogether", () => {
    const block = wordsIn(sheet("brace"), "title-block");
    expect(block).toContain("T-LONGMARK-LONGMARK");
    expect(block.replace(/ /g, "")).toContain("BR-LONGMARK-LONGMARK-LONGMARK-LONGMARK-LONGMARK-LONGMARK-XYZ");
    expect(block).toContain("Packing hall for the northern district");
  });
});
