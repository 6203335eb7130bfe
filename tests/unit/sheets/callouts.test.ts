/** What callouts say. Form (count, size, what for) by the trade's habit: common practice. Figures by hand; invented data. */
import { describe, expect, it } from "vitest";
import type { Base, Job } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { calloutsOf } from "../../../src/sheets/callouts.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { sheetCase } from "./sheet-case.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const mm = (x: number, y: number) => ({ x: millimetres(x), y: millimetres(y) });
const us = jobFixture();
const metric = jobFixture({
  unit: "mm",
  editions: {
    set: "metric",
    templateHoles: "ISO 273",
    baseHoles: "d + 6 mm",
    placing: "EN 1090-2:2008",
    edges: "EN 1993-1-8:2005",
    concrete: "ACI 318-19",
  },
});

function template(changes: Partial<Base["template"]>): Base {
  const base = baseFixture();
  return { ...base, template: { ...base.template, opening: { kind: "none" }, ...changes } };
}

const square = { kind: "rectangle", x: inches(26), y: inches(26), at: at(0, 0), corner: { kind: "square" } } as const;
const round = { kind: "circle", diameter: inches(30), at: at(0, 0) } as const;
const ring = { kind: "ring", outer: inches(30), inner: inches(18), at: at(0, 0) } as const;
const bolts = (count: number) =>
  groupFixture({ pattern: { kind: "circle", diameter: inches(24), count, start: { kind: "straddle" } } });
const m24 = groupFixture(
  { pattern: { kind: "rectangle", x: millimetres(300), y: millimetres(300), nx: 2, ny: 2, perimeter: false } },
  { size: "M24", diameter: millimetres(24) },
);
const metricPlate = { ...square, x: millimetres(500), y: millimetres(450), at: mm(0, 0) } as const;

/** Each callout as one line, its lines parted by a stroke. */
const rows: readonly [string, Job, Base, readonly string[]][] = [
  ["rods in inches", us, template({ outline: square }), ["4 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS"]],
  [
    "one rod",
    us,
    {
      ...template({ outline: square }),
      groups: [groupFixture({ pattern: { kind: "points", at: [at(0, 0)] } }, { size: "1" })],
    },
    ["1 HOLE Ø1-5/16 / FOR Ø1 ROD"],
  ],
  [
    "metric rods",
    metric,
    { ...template({ outline: metricPlate }), groups: [{ ...m24, hole: given(millimetres(26), "ISO 273") }] },
    ["4 HOLES Ø26 / FOR M24 RODS"],
  ],
  [
    "an opening in the middle, and corners",
    us,
    template({
      outline: { ...square, corner: { kind: "chamfer", x: inches(1), y: inches(0.5) } },
      opening: { kind: "rectangle", x: inches(6), y: inches(5), radius: inches(1), at: at(0, 0) },
    }),
    ["OPENING 6 × 5, R1 / AT W.P.", "4 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS", "CHAMFER X 1, Y 1/2 / 4 CORNERS"],
  ],
  [
    "an opening off the middle",
    us,
    template({ outline: square, opening: { kind: "circle", diameter: inches(4), at: at(2, -1) } }),
    ["OPENING Ø4 / AT X 2, Y -1", "4 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS"],
  ],
  [
    "nail holes too small to cut: American",
    us,
    template({ outline: square, nailHoles: [{ at: at(11, 9), diameter: inches(0.1875) }] }),
    ["1 NAIL HOLE Ø3/16 / CENTER PUNCH AND DRILL", "4 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS"],
  ],
  [
    "nail holes too small to cut: British",
    metric,
    {
      ...template({ outline: metricPlate, nailHoles: [{ at: mm(230, 180), diameter: millimetres(4) }] }),
      groups: [{ ...m24, hole: given(millimetres(26), "ISO 273") }],
    },
    ["1 NAIL HOLE Ø4 / CENTRE PUNCH AND DRILL", "4 HOLES Ø26 / FOR M24 RODS"],
  ],
  [
    "plywood is drilled without a punch",
    us,
    template({ outline: square, material: "plywood", thickness: inches(0.75) }),
    ["4 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS / DRILL"],
  ],
  [
    "bolt circle on a round plate: half a space off the axes, A1 the upper left one",
    us,
    { ...template({ outline: round }), groups: [bolts(8)] },
    [
      "8 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS / ON Ø24 BOLT CIRCLE, 8 SPACED 45° / A1 AT 112.5° COUNTER-CLOCKWISE FROM +X / " +
        "EDGE DISTANCE 3",
    ],
  ],
  [
    "ring",
    us,
    { ...template({ outline: ring }), groups: [bolts(12)] },
    [
      "INSIDE Ø18",
      "12 HOLES Ø1-5/16 / FOR Ø1-1/4 RODS / ON Ø24 BOLT CIRCLE, 12 SPACED 30° / A1 AT 135° COUNTER-CLOCKWISE FROM +X / " +
        "EDGE DISTANCE 3 OUTSIDE, 3 INSIDE",
    ],
  ],
];

const saidOf = (job: Job, base: Base) =>
  calloutsOf(sheetCase(job, base)).map(({ lines }) => lines.map((phrases) => phrases.join(" ")).join(" / "));

describe("words of callouts", () => {
  it.each(rows)("%s", (_, job, base, said) => {
    expect(saidOf(job, base)).toEqual(said);
  });

  it("an orientation cut is called so, by its legs", () => {
    const base = template({ outline: { ...square, corner: { kind: "round", radius: inches(1) } }, key: "auto" });
    const said = saidOf(us, base);
    expect(said).toContain("R1 / 3 CORNERS");
    expect(said.at(-1)).toMatch(/^ORIENTATION CUT (X [\d/-]+, Y [\d/-]+|([\d/-]+) × \2)$/);
  });

  it("an orientation notch of a round plate is placed by its angle, whatever the plate is called elsewhere", () => {
    const [notch] = saidOf(us, template({ outline: round, key: "auto" })).slice(-1);
    expect(notch).toMatch(/^ORIENTATION NOTCH 1 × 1\/2 DEEP \/ AT [\d.]+° COUNTER-CLOCKWISE FROM \+X$/);
  });

  it("no callout says key", () => {
    for (const outline of [square, round])
      expect(saidOf(us, template({ outline, key: "auto" })).join(" ")).not.toMatch(/\bKEY/);
  });
});
