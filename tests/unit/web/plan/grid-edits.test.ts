/** Figures of the layout as they are typed on the page, and what they do to the job's text. */
import { describe, expect, it } from "vitest";
import { readYaml } from "../../../../src/readers/yaml.js";
import type { KeyEdit } from "../../../../src/readers/yaml-edit.js";
import { spliced, spliceOf } from "../../../../src/readers/yaml-edit.js";
import { textsUnderKeys } from "../../../../src/tasks/live/base-line.js";
import {
  axisEdit,
  axisOf,
  bayOf,
  firstGrid,
  placedAt,
  placementEdits,
  placementsOf,
  renamed,
  withSpacing,
} from "../../../../src/web/plan/grid-edits.js";

const JOB = `grid:
  x: { names: [1, 2, 3, 4, 5], spacing: 4 @ 25' }
  y: { names: [A, B, C], spacing: [20', 30'], from: -20' }
placements: # as on S-201
  - { base: B1, at: A-1 }
  - { base: B1, every: [[B, C], [1, 2]], turn: 90 }
  - { base: B2, at: [A-2, A-3], offset: [6, 0] }
control:
  - { point: P1, northing: 1, easting: 1, at: A-1 }
`;

function written(text: string) {
  const read = readYaml(text, "job.yaml");
  return textsUnderKeys(read.ok ? read.value : null, ["grid", "placements", "control", "site"]);
}

function edited(text: string, edits: readonly KeyEdit[]): string {
  return edits.reduce((now, edit) => {
    const splice = spliceOf(now, edit);
    return splice === null ? now : spliced(now, splice);
  }, text);
}

describe("spacings", () => {
  it("finds the spacing between two lines that follow each other, either way", () => {
    expect(bayOf(written(JOB), "2", "3")).toEqual({ axis: "x", index: 1, text: "25'" });
    expect(bayOf(written(JOB), "C", "B")).toEqual({ axis: "y", index: 1, text: "30'" });
    expect(bayOf(written(JOB), "1", "5")).toBe(null);
  });

  it("makes one of several equal ones another, and the others stay in runs", () => {
    const now = edited(JOB, withSpacing(written(JOB), "x", 1, "26'-6\""));
    expect(axisOf(written(now), "x").spacings).toEqual(["25'", "26'-6\"", "25'", "25'"]);
    expect(axisOf(written(now), "x").spacing).toBe("25', 26'-6\", 2 @ 25'");
    expect(now).toContain("placements: # as on S-201");
  });

  it("is one run again when they are equal again", () => {
    const now = edited(JOB, withSpacing(written(JOB), "y", 0, "30'"));
    expect(axisOf(written(now), "y").spacing).toBe("2 @ 30'");
  });

  it("holds one text alone for all bays", () => {
    const one = "grid:\n  x: { names: [1, 2, 3], spacing: 7500 }\n";
    expect(axisOf(written(one), "x").spacings).toEqual(["7500", "7500"]);
    const now = edited(one, withSpacing(written(one), "x", 1, "7200"));
    expect(axisOf(written(now), "x").spacings).toEqual(["7500", "7200"]);
  });

  it("changes no spacing of lines that are given by their positions", () => {
    const at = "grid:\n  x: { names: [1, 2], at: [0, 7500] }\n";
    expect(bayOf(written(at), "1", "2")).toBe(null);
    expect(edited(at, axisEdit(written(at), "x", "at", "0, 7200"))).toContain("at: [0, 7200]");
  });
});

describe("a line with another name", () => {
  it("has it wherever it is named", () => {
    const now = edited(JOB, renamed(written(JOB), "A", "AA"));
    expect(now).toContain("names: [AA, B, C]");
    expect(now).toContain("at: AA-1 }");
    expect(now).toContain("at: [AA-2, AA-3]");
    expect(now).toContain("northing: 1, easting: 1, at: AA-1");
    expect(now).not.toMatch(/\bA-\d/);
  });

  it("of several crossings", () => {
    expect(edited(JOB, renamed(written(JOB), "1", "1.0"))).toContain("every: [[B, C], [1.0, 2]]");
  });
});

describe("places", () => {
  it("are shown as they are typed", () => {
    expect(placementsOf(written(JOB))?.map(({ at }) => at)).toEqual(["A-1", "every B, C with 1, 2", "A-2, A-3"]);
  });

  it("change between one crossing, several and every", () => {
    const texts = written(JOB);
    expect(edited(JOB, placementEdits(texts, 0, "at", "A-1, A-4"))).toContain("{ base: B1, at: [A-1, A-4] }");
    expect(edited(JOB, placementEdits(texts, 1, "at", "C-5"))).toContain("{ base: B1, turn: 90, at: C-5 }");
    expect(edited(JOB, placementEdits(texts, 0, "at", "every A with 1, 2"))).toContain("every: [[A], [1, 2]]");
  });

  it("take offsets, turns and elevations, and lose them where the cell is cleared", () => {
    const texts = written(JOB);
    expect(edited(JOB, placementEdits(texts, 0, "offset", "2'-6\", 0"))).toContain(`offset: ["2'-6\\"", 0]`);
    expect(edited(JOB, placementEdits(texts, 2, "offset", ""))).toContain("- { base: B2, at: [A-2, A-3] }");
    expect(edited(JOB, placementEdits(texts, 0, "topOfConcrete", "99'-6\""))).toContain("topOfConcrete: ");
  });

  it("get a base more, in a list that is there and in one that is not", () => {
    expect(placementsOf(written(edited(JOB, [placedAt(written(JOB), "B3", "C-5")])))?.at(-1)).toMatchObject({
      base: "B3",
      at: "C-5",
    });
    const none = "units: in\n";
    const one = edited(none, [placedAt(written(none), "B1", "A-1")]);
    const two = edited(one, [placedAt(written(one), "B: 1", "A-2")]);
    expect(placementsOf(written(two))?.map(({ base }) => base)).toEqual(["B1", "B: 1"]);
  });

  it("of a spreadsheet are none of the list", () => {
    expect(placementsOf(written("placements: places.csv\n"))).toBe(null);
  });
});

describe("a first grid", () => {
  it("has as many lines as its spacings ask for", () => {
    const now = edited("units: in\nbases:\n  - mark: B1\n", firstGrid("3 @ 24'-0\"", "20', 30'"));
    expect(axisOf(written(now), "x")).toMatchObject({
      names: ["1", "2", "3", "4"],
      spacings: ["24'-0\"", "24'-0\"", "24'-0\""],
    });
    expect(axisOf(written(now), "y")).toMatchObject({ names: ["A", "B", "C"], spacings: ["20'", "30'"] });
    expect(now).toContain("placements: []");
    const placed = edited(now, [placedAt(written(now), "B1", "A-1")]);
    expect(placementsOf(written(placed))).toMatchObject([{ base: "B1", at: "A-1" }]);
  });
});
