import { describe, expect, it } from "vitest";
import { aisc360FiveEdges } from "../../../src/standards/aisc-360-05/edges.js";
import { aisc360TenBoltHoleRule, aisc360TenBoltHoles } from "../../../src/standards/aisc-360-10/bolt-holes.js";
import { aisc360BaseHoles } from "../../../src/standards/aisc-360-22/base-plate-holes.js";
import { aisc360MetricBaseHoles } from "../../../src/standards/aisc-360-22/base-plate-holes-metric.js";
import { aisc360BoltHoleRule, aisc360BoltHoles } from "../../../src/standards/aisc-360-22/bolt-holes.js";
import {
  aisc360MetricBoltHoleRule,
  aisc360MetricBoltHoles,
} from "../../../src/standards/aisc-360-22/bolt-holes-metric.js";
import { aisc360EdgeRule, aisc360Edges } from "../../../src/standards/aisc-360-22/edges.js";
import { aisc360MetricEdgeRule, aisc360MetricEdges } from "../../../src/standards/aisc-360-22/edges-metric.js";
import { designGuide2BaseHoles } from "../../../src/standards/aisc-design-guide-1-2nd/base-plate-holes.js";
import { designGuide3BaseHoles } from "../../../src/standards/aisc-design-guide-1-3rd-examples/base-plate-holes.js";
import { en1992ClearanceHoles } from "../../../src/standards/en-1992-4/clearance-holes.js";
import { findPlacing } from "../../../src/standards/index.js";
import { iso273Holes } from "../../../src/standards/iso-273/clearance-holes.js";
import { evaluate } from "../../../src/standards/rules.js";
import { holds } from "../../../src/standards/sizes.js";
import { inches, type Length, millimetres } from "../../../src/units/index.js";
import { normalHoleClearances, oversizeHoleClearances } from "../../reference/en-1090-2/hole-clearances.js";
import { scnzBaseHoles } from "../../reference/metric-practice/scnz-base-plate-holes.js";
import { ukBaseHoles } from "../../reference/metric-practice/uk-base-plate-holes.js";

const clearance = (rows: readonly { readonly diameter: Length; readonly size: string; readonly hole: Length }[]) =>
  Object.fromEntries(rows.map((row) => [row.size, row.hole - row.diameter]));

describe("base-plate holes", () => {
  it("Design Guide 1, 2nd ed., s.2.6: the least washer covers the hole, W >= 2 H - d, over the whole table", () => {
    expect(designGuide2BaseHoles.rows.length).toBe(8);
    for (const row of designGuide2BaseHoles.rows)
      expect(row.washer ?? 0).toBeGreaterThanOrEqual(2 * row.hole - row.diameter);
  });

  it("3rd ed. examples: washers cover, and holes are 1/16 in larger than in the 2nd ed.", () => {
    for (const row of designGuide3BaseHoles.rows) {
      expect(row.washer ?? 0).toBeGreaterThanOrEqual(2 * row.hole - row.diameter);
      const second = designGuide2BaseHoles.rows.find((other) => other.size === row.size);
      expect(row.hole - (second?.hole ?? 0)).toBe(inches(1 / 16));
    }
  });

  it("Design Guide 1, 2nd ed., s.2.6: washers about a third of the rod thick (0.3 to 0.4)", () => {
    for (const row of designGuide2BaseHoles.rows) {
      expect((row.washerThickness ?? 0) / row.diameter).toBeGreaterThanOrEqual(0.3);
      expect((row.washerThickness ?? 0) / row.diameter).toBeLessThanOrEqual(0.4);
    }
  });

  it("AISC 360-22 C-J9.1 equals Design Guide 1, 2nd ed., wherever both have a row", () => {
    for (const row of designGuide2BaseHoles.rows) {
      expect(aisc360BaseHoles.rows.find((other) => other.size === row.size)?.hole).toBe(row.hole);
    }
  });

  it("C-J9.1 from 2 in: d + 1-1/4 in (the printed rule row)", () => {
    const rows = aisc360BaseHoles.rows.filter((row) => row.diameter >= inches(2));
    expect(rows.map((row) => row.size)).toEqual(["2", "2-1/4", "2-1/2", "2-3/4", "3"]);
    for (const row of rows) expect(row.hole - row.diameter).toBe(inches(1.25));
  });

  it("holes leave room for the ACI 117-10 tolerance: (H - d) / 2 >= T (how the two were matched: ASCC position statement 14)", () => {
    for (const row of designGuide2BaseHoles.rows) {
      const tolerance = findPlacing("ACI 117-10", row.diameter);
      expect(tolerance.found && row.hole - row.diameter >= 2 * tolerance.row.tolerance).toBe(true);
    }
  });

  it("C-J9.1M clearances never shrink with the rod, and stay within 7 mm of the inch table at the nearest size", () => {
    const spare = aisc360MetricBaseHoles.rows.map((row) => row.hole - row.diameter);
    expect(spare).toEqual(spare.toSorted((a, b) => a - b));
    for (const row of aisc360MetricBaseHoles.rows) {
      const near = aisc360BaseHoles.rows.toSorted(
        (a, b) => Math.abs(a.diameter - row.diameter) - Math.abs(b.diameter - row.diameter),
      )[0];
      expect(Math.abs(row.hole - row.diameter - ((near?.hole ?? 0) - (near?.diameter ?? 0)))).toBeLessThanOrEqual(
        millimetres(7),
      );
    }
  });

  it("practice in the UK, Australia and New Zealand: d + 6 mm (SCI P358; AS 4100 cl. 14.3.5.2)", () => {
    for (const table of [ukBaseHoles, scnzBaseHoles]) {
      expect(new Set(Object.values(clearance(table.rows)))).toEqual(new Set([millimetres(6)]));
    }
  });

  it("Australian and New Zealand washers cover the hole, W >= 2 H - d", () => {
    for (const row of scnzBaseHoles.rows) expect(row.washer ?? 0).toBeGreaterThanOrEqual(2 * row.hole - row.diameter);
  });
});

describe("ISO 273", () => {
  it("fine < medium < coarse, and each grows with the thread", () => {
    for (const row of iso273Holes.rows) {
      expect(row.diameter).toBeLessThan(row.fine);
      expect(row.fine).toBeLessThan(row.medium);
      expect(row.medium).toBeLessThan(row.coarse);
    }
    for (const series of ["fine", "medium", "coarse"] as const) {
      const holes = iso273Holes.rows.map((row) => row[series]);
      expect(holes).toEqual(holes.toSorted((a, b) => a - b));
    }
  });

  it("agrees with a second list, typed from memory of ISO 273:1979", () => {
    // thread: fine, medium, coarse
    const second: Readonly<Record<string, readonly [number, number, number]>> = {
      M10: [10.5, 11, 12],
      M12: [13, 13.5, 14.5],
      M14: [15, 15.5, 16.5],
      M16: [17, 17.5, 18.5],
      M18: [19, 20, 21],
      M20: [21, 22, 24],
      M22: [23, 24, 26],
      M24: [25, 26, 28],
      M27: [28, 30, 32],
      M30: [31, 33, 35],
      M33: [34, 36, 38],
      M36: [37, 39, 42],
      M39: [40, 42, 45],
      M42: [43, 45, 48],
      M45: [46, 48, 52],
      M48: [50, 52, 56],
      M52: [54, 56, 62],
      M56: [58, 62, 66],
      M60: [62, 66, 70],
      M64: [66, 70, 74],
      M72: [74, 78, 82],
      M80: [82, 86, 91],
      M90: [93, 96, 101],
      M100: [104, 107, 112],
    };
    for (const [size, holes] of Object.entries(second)) {
      const row = iso273Holes.rows.find((candidate) => candidate.size === size);
      expect([row?.fine, row?.medium, row?.coarse]).toEqual(holes.map(millimetres));
    }
  });
});

describe("bolt holes", () => {
  const near = (rows: readonly { size: string; diameter: Length; standard: Length }[]) =>
    rows.map((row) => row.standard - row.diameter);

  it("AISC 360 Table J3.3: d + 1/16 up to 7/8; at 1 in d + 1/8 from 2016, d + 1/16 before (edition note of the RCSC specification, 2020)", () => {
    const sixteenth = inches(1 / 16);
    expect(near(aisc360BoltHoles.rows)).toEqual([1, 1, 1, 1, 2].map((sixteenths) => sixteenths * sixteenth));
    expect(near(aisc360TenBoltHoles.rows)).toEqual([1, 1, 1, 1, 1].map((sixteenths) => sixteenths * sixteenth));
    expect(evaluate(aisc360BoltHoleRule.standard, inches(1.25))).toBe(inches(1.375));
    expect(evaluate(aisc360TenBoltHoleRule.standard, inches(1.25))).toBe(inches(1.3125));
  });

  it("standard < oversized < short slot < long slot, and the long slot is 2.5 d", () => {
    for (const row of [...aisc360BoltHoles.rows, ...aisc360TenBoltHoles.rows, ...aisc360MetricBoltHoles.rows]) {
      expect(row.standard).toBeLessThan(row.oversized);
      expect(row.oversized).toBeLessThan(row.shortSlot.length);
      expect(row.shortSlot.length).toBeLessThan(row.longSlot.length);
      expect(row.shortSlot.width).toBe(row.standard);
      // Metric slots are rounded to whole millimetres.
      expect(Math.abs(row.longSlot.length - 2.5 * row.diameter)).toBeLessThanOrEqual(millimetres(0.5));
    }
  });

  it("EN 1090-2 Table 11: d + clearance = AISC J3.3M standard hole, except M24 (27, so that a 1 in bolt passes)", () => {
    for (const row of aisc360MetricBoltHoles.rows) {
      const normal = normalHoleClearances.rows.find((each) => holds(each.diameter, row.diameter));
      const hole = row.diameter + (normal?.clearance ?? 0);
      const aisc: Readonly<Record<string, Length>> = { M12: millimetres(13), M24: millimetres(26) };
      expect(hole).toBe(aisc[row.size] ?? row.standard);
    }
    expect(evaluate(aisc360MetricBoltHoleRule.standard, millimetres(36))).toBe(millimetres(39));
  });

  it("EN 1090-2 Table 11: d + clearance = ISO 273 medium from M20 to M36, within 0.5 mm below", () => {
    for (const row of iso273Holes.rows.filter((each) => each.diameter <= millimetres(36))) {
      const normal = normalHoleClearances.rows.find((each) => holds(each.diameter, row.diameter));
      if (normal === undefined) continue;
      const difference = Math.abs(row.diameter + normal.clearance - row.medium);
      expect(difference).toBeLessThanOrEqual(row.diameter >= millimetres(20) ? 0 : millimetres(0.5));
    }
  });

  it("EN 1090-2: oversize clearance is more than normal, at every diameter", () => {
    for (const size of [12, 14, 16, 18, 20, 22, 24, 27, 30, 36].map(millimetres)) {
      const normal = normalHoleClearances.rows.find((row) => holds(row.diameter, size));
      const oversize = oversizeHoleClearances.rows.find((row) => holds(row.diameter, size));
      expect(oversize?.clearance ?? 0).toBeGreaterThan(normal?.clearance ?? Number.POSITIVE_INFINITY);
    }
  });

  it("EN 1992-4 Table 6.1 = EN 1090-2 normal hole from M16 on", () => {
    for (const row of en1992ClearanceHoles.rows.filter((each) => each.diameter >= millimetres(16))) {
      const normal = normalHoleClearances.rows.find((each) => holds(each.diameter, row.diameter));
      expect(row.hole).toBe(row.diameter + (normal?.clearance ?? 0));
    }
  });
});

describe("edge distances", () => {
  it("AISC 360 J3.4: between 1-1/4 d and 1-1/2 d, and continuous with the rule row beyond", () => {
    for (const row of [...aisc360Edges.rows, ...aisc360MetricEdges.rows]) {
      expect(row.least / row.diameter).toBeGreaterThanOrEqual(1.25);
      expect(row.least / row.diameter).toBeLessThanOrEqual(1.5);
    }
    for (const [rows, rule, next] of [
      [aisc360Edges.rows, aisc360EdgeRule, inches(1.375)],
      [aisc360MetricEdges.rows, aisc360MetricEdgeRule, millimetres(39)],
    ] as const) {
      const last = rows.at(-1);
      expect(last?.diameter).toBe(rule.beyond);
      expect(evaluate(rule.rule, rule.beyond)).toBeLessThanOrEqual(last?.least ?? 0);
      expect(evaluate(rule.rule, next)).toBeGreaterThan(last?.least ?? Number.POSITIVE_INFINITY);
    }
  });

  it("a sheared edge (AISC 360-05) needs more than J3.4 asks today: 5/3 d or more", () => {
    for (const row of aisc360FiveEdges.rows) {
      expect(row.least).toBeGreaterThanOrEqual(evaluate({ factor: 1.66, add: inches(0) }, row.diameter));
      expect(row.least).toBeGreaterThan(aisc360Edges.rows.find((other) => other.size === row.size)?.least ?? 0);
    }
  });
});
