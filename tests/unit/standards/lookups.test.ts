import { describe, expect, it } from "vitest";
import * as aisc from "../../../src/standards/aisc-360-22/base-plate-holes.js";
import * as aiscMetric from "../../../src/standards/aisc-360-22/base-plate-holes-metric.js";
import { aisc360C2, aisc360MetricC2 } from "../../../src/standards/aisc-360-22/c2.js";
import * as guide2 from "../../../src/standards/aisc-design-guide-1-2nd/base-plate-holes.js";
import * as guide3 from "../../../src/standards/aisc-design-guide-1-3rd-examples/base-plate-holes.js";
import * as eightUn from "../../../src/standards/asme-b1-1/eight-un.js";
import * as unc from "../../../src/standards/asme-b1-1/unc.js";
import * as heavy from "../../../src/standards/asme-b18-2-2/heavy-hex-nuts.js";
import * as hex from "../../../src/standards/asme-b18-2-2/hex-nuts.js";
import * as typeB from "../../../src/standards/asme-b18-21-1/type-b-washers.js";
import * as f436 from "../../../src/standards/astm-f436/washers.js";
import * as f844 from "../../../src/standards/astm-f844/washers.js";
import * as en1992 from "../../../src/standards/en-1992-4/clearance-holes.js";
import {
  type EdgeEdition,
  editionsOf,
  findBaseHole,
  findCover,
  findEdge,
  findElevation,
  findGrade,
  findIso9013Deviation,
  findNut,
  findPlacing,
  findSpacing,
  findTemplateHole,
  findThread,
  findThreadInSeries,
  findWasher,
  iso9013Perpendicularity,
  type Lookup,
  nutStandards,
  placingRows,
  recommendedNut,
  type Sized,
  type Sourced,
  washerStandards,
  zincGrowth,
} from "../../../src/standards/index.js";
import * as metric from "../../../src/standards/iso-261/coarse-threads.js";
import * as iso273 from "../../../src/standards/iso-273/clearance-holes.js";
import * as iso4032 from "../../../src/standards/iso-4032/hex-nuts.js";
import * as iso4034 from "../../../src/standards/iso-4034/hex-nuts.js";
import * as iso7089 from "../../../src/standards/iso-7089/washers.js";
import * as iso7090 from "../../../src/standards/iso-7090/washers.js";
import * as iso7091 from "../../../src/standards/iso-7091/washers.js";
import * as iso7093 from "../../../src/standards/iso-7093/washers.js";
import * as class1 from "../../../src/standards/iso-9013-2017/deviations-class-1.js";
import * as class2 from "../../../src/standards/iso-9013-2017/deviations-class-2.js";
import { bounds, holds } from "../../../src/standards/sizes.js";
import { inches, type Length, millimetres, nanometres } from "../../../src/units/index.js";

/** The row of a reading that must be found. */
function rowOf<Row>(reading: Lookup<Row>): Row {
  if (!reading.found) throw new Error(`not found; nearest ${reading.nearest.join(", ")}`);
  return reading.row;
}

describe("every row is reached by its diameter", () => {
  const tables: readonly [string, readonly Sized[], (diameter: Length) => Lookup<Sourced>][] = [
    ["UNC", unc.uncThreads.rows, (d) => findThreadInSeries("UNC", d)],
    ["8UN", eightUn.eightUnThreads.rows, (d) => findThreadInSeries("8UN", d)],
    ["metric coarse", metric.metricThreads.rows, (d) => findThreadInSeries("metric coarse", d)],
    ["hex", hex.hexNuts.rows, (d) => findNut("ASME B18.2.2 hex", d)],
    ["heavy hex", heavy.heavyHexNuts.rows, (d) => findNut("ASME B18.2.2 heavy hex", d)],
    ["ISO 4032", iso4032.iso4032Nuts.rows, (d) => findNut("ISO 4032", d)],
    ["ISO 4034", iso4034.iso4034Nuts.rows, (d) => findNut("ISO 4034", d)],
    ["F436", f436.f436Washers.rows, (d) => findWasher("ASTM F436", d)],
    ["F844", f844.f844Washers.rows, (d) => findWasher("ASTM F844", d)],
    ["F844 wide", f844.f844WideWashers.rows, (d) => findWasher("ASTM F844 wide", d)],
    ["B narrow", typeB.typeBNarrowWashers.rows, (d) => findWasher("ASME B18.21.1 Type B narrow", d)],
    ["B regular", typeB.typeBRegularWashers.rows, (d) => findWasher("ASME B18.21.1 Type B regular", d)],
    ["B wide", typeB.typeBWideWashers.rows, (d) => findWasher("ASME B18.21.1 Type B wide", d)],
    ["ISO 7089", iso7089.iso7089Washers.rows, (d) => findWasher("ISO 7089", d)],
    ["ISO 7090", iso7090.iso7090Washers.rows, (d) => findWasher("ISO 7090 / DIN 125-B", d)],
    ["ISO 7091", iso7091.iso7091Washers.rows, (d) => findWasher("ISO 7091", d)],
    ["ISO 7093", iso7093.iso7093Washers.rows, (d) => findWasher("ISO 7093", d)],
    ["C-J9.1", aisc.aisc360BaseHoles.rows, (d) => findBaseHole("AISC 360-22 C-J9.1", d)],
    ["C-J9.1M", aiscMetric.aisc360MetricBaseHoles.rows, (d) => findBaseHole("AISC 360-22 C-J9.1M", d)],
    ["DG1 2nd", guide2.designGuide2BaseHoles.rows, (d) => findBaseHole("Design Guide 1, 2nd ed.", d)],
    ["DG1 3rd", guide3.designGuide3BaseHoles.rows, (d) => findBaseHole("Design Guide 1, 3rd ed. examples", d)],
    ["EN 1992-4", en1992.en1992ClearanceHoles.rows, (d) => findBaseHole("EN 1992-4 Table 6.1", d)],
  ];

  it.each(tables)("%s", (_name, rows, find) => {
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) expect(rowOf(find(row.diameter))).toBe(row);
  });

  it("every thread is reached by its size as printed", () => {
    const sized = [...unc.uncThreads.rows, ...metric.metricThreads.rows];
    for (const row of sized) expect(rowOf(findThread(row.size))).toBe(row);
  });

  it("names a table for every nut and washer standard", () => {
    for (const standard of nutStandards) expect(findNut(standard, millimetres(5)).found).toBe(false);
    for (const standard of washerStandards) expect(findWasher(standard, millimetres(5)).found).toBe(false);
  });

  it("ISO 273 medium holes up to M39, d + 3 mm above", () => {
    for (const row of iso273.iso273Holes.rows) {
      const hole = rowOf(findTemplateHole("ISO 273", row.diameter));
      const above = row.diameter > millimetres(39);
      expect(hole.hole).toBe(above ? row.diameter + 3_000_000 : row.medium);
      expect(hole.confidence === "common practice").toBe(above);
    }
  });

  it("ISO 9013 deviations, at both ends of every cell that are part of it", () => {
    for (const [grade, table] of [
      [1, class1.iso9013Class1],
      [2, class2.iso9013Class2],
    ] as const) {
      for (const row of table.rows) {
        for (const thickness of ends(row.thickness)) {
          for (const nominal of ends(row.nominal)) {
            expect(rowOf(findIso9013Deviation(grade, thickness, nominal))).toBe(row);
          }
        }
      }
    }
  });
});

/** The least and the greatest length that a range holds. */
function ends(range: ReturnType<typeof bounds>): Length[] {
  const from = range.from === null ? [] : [nanometres(range.fromIncluded ? range.from : range.from + 1)];
  const to = range.to === null ? [] : [nanometres(range.toIncluded ? range.to : range.to - 1)];
  return [...from, ...to];
}

describe("findThread", () => {
  it.each(["1-1/4", "1.25", '1 1/4"', " 1-1/4 in ", "31.75 mm"])("reads %j", (text) => {
    expect(rowOf(findThread(text)).size).toBe("1-1/4");
  });

  it.each(["M30", "m30", "m 30", " M30 ", "30 mm"])("reads %j", (text) => {
    expect(rowOf(findThread(text)).size).toBe("M30");
  });

  it("takes a bare number in the job's unit", () => {
    expect(rowOf(findThread("30", "mm")).size).toBe("M30");
    expect(rowOf(findThread("1.25")).size).toBe("1-1/4");
    expect(findThread("30").found).toBe(false);
    expect(rowOf(findThread("1-1/4 in", "mm")).size).toBe("1-1/4");
    expect(findThread("1", "mm").found).toBe(false);
  });

  it("falls back to 8UN where UNC has no thread, and says so", () => {
    expect(rowOf(findThread("1-5/8")).series).toBe("8UN");
    expect(rowOf(findThread("1-7/8")).series).toBe("8UN");
    expect(rowOf(findThread("1-3/4")).series).toBe("UNC");
    const reading = findThread("1-5/8");
    expect(reading.found && reading.clause).toBe("8UN series");
  });

  it.each([
    ["1-1/16", ["1", "1-1/8"]],
    ["M13", ["M12", "M14"]],
    ["M8", ["M10", "M12"]],
    ["M110", ["M95", "M100"]],
    ["5", ["3-3/4", "4"]],
    ["1/8", ["1/4", "5/16"]],
    ["thick", []],
    ["", []],
    ["1/0", []],
  ])("misses %j and names the nearest", (text, nearest) => {
    expect(findThread(text)).toEqual({ found: false, nearest });
  });
});

describe("base-plate and template holes", () => {
  it("never interpolate", () => {
    expect(findBaseHole("Design Guide 1, 2nd ed.", inches(1.125))).toEqual({ found: false, nearest: ["1", "1-1/4"] });
    expect(findBaseHole("AISC 360-22 C-J9.1", inches(1.875))).toEqual({ found: false, nearest: ["1-3/4", "2"] });
    expect(findBaseHole("AISC 360-22 C-J9.1M", millimetres(20))).toEqual({ found: false, nearest: ["M18", "M22"] });
    expect(findTemplateHole("ISO 273", millimetres(8))).toEqual({ found: false, nearest: ["M10", "M12"] });
  });

  it("take the printed rule row from 2 in on", () => {
    expect(rowOf(findBaseHole("AISC 360-22 C-J9.1", inches(3.5))).hole).toBe(inches(4.75));
    expect(rowOf(findBaseHole("AISC 360-22 C-J9.1", inches(4))).hole).toBe(inches(5.25));
  });

  it("give d + 6 mm as common practice, d + 1/16 in as Design Guide 1", () => {
    const row = rowOf(findBaseHole("d + 6 mm", millimetres(30)));
    expect([row.hole, row.confidence]).toEqual([millimetres(36), "common practice"]);
    expect(rowOf(findTemplateHole("Design Guide 1, 2nd ed.", inches(1.25))).hole).toBe(inches(1.3125));
  });

  it("keep the second hole of Design Guide 1 for 3/4 in rods", () => {
    expect(rowOf(findBaseHole("Design Guide 1, 2nd ed.", inches(0.75))).alternateHole).toBe(inches(1.0625));
  });
});

describe("placing", () => {
  it("ACI 117-10 at every printed diameter, and nowhere between", () => {
    const at = (size: number) => findPlacing("ACI 117-10", inches(size));
    for (const size of [0.75, 0.875]) expect(rowOf(at(size)).tolerance).toBe(inches(0.25));
    for (const size of [1, 1.25, 1.5]) expect(rowOf(at(size)).tolerance).toBe(inches(0.375));
    for (const size of [1.75, 2, 2.5]) expect(rowOf(at(size)).tolerance).toBe(inches(0.5));
    expect(at(1.125)).toEqual({ found: false, nearest: ["1", "1-1/4"] });
    expect(at(3)).toEqual({ found: false, nearest: ["2", "2-1/2"] });
  });

  it("AISC 303-10 limits spacings, whatever the diameter", () => {
    const row = rowOf(findPlacing("AISC 303-10", inches(3)));
    expect([row.limits, row.tolerance]).toEqual(["spacing", inches(0.125)]);
  });

  it("EN 1090-2 by how the bolt is set", () => {
    expect(rowOf(findPlacing("EN 1090-2:2008", millimetres(30))).tolerance).toBe(millimetres(3));
    expect(rowOf(findPlacing("EN 1090-2:2008", millimetres(30), "adjustable")).tolerance).toBe(millimetres(10));
    expect(rowOf(findElevation("EN 1090-2:2008"))).toMatchObject({ low: millimetres(5), high: millimetres(45) });
    expect(rowOf(findElevation("EN 1090-2:2008", "adjustable"))).toMatchObject({
      low: millimetres(5),
      high: millimetres(25),
    });
  });

  it("US editions hold the top of the rod to 1/2 in", () => {
    for (const edition of ["ACI 117-10", "AISC 303-10", "AISC 303-22"] as const) {
      expect(rowOf(findElevation(edition))).toMatchObject({ low: inches(0.5), high: inches(0.5) });
    }
  });

  it("numbers from memory say so", () => {
    expect(rowOf(findPlacing("AISC 303-22", inches(1))).confidence).toBe("from memory (numbers)");
  });
});

describe("edges, C2", () => {
  it("AISC 360-22 by table to 1-1/4 in, 1-1/4 d beyond", () => {
    const least = (d: number) => rowOf(findEdge("AISC 360-22", inches(d), inches(d + 0.8125))).least;
    expect([0.5, 0.625, 0.75, 0.875, 1, 1.125, 1.25].map(least)).toEqual(
      [0.75, 0.875, 1, 1.125, 1.25, 1.5, 1.625].map(inches),
    );
    expect(least(1.5)).toBe(inches(1.875));
    expect(findEdge("AISC 360-22", inches(1.1875), inches(2))).toEqual({ found: false, nearest: ["1-1/8", "1-1/4"] });
    expect(findEdge("AISC 360-22M", millimetres(14), millimetres(20))).toEqual({
      found: false,
      nearest: ["M12", "M16"],
    });
    expect(rowOf(findEdge("AISC 360-22M", millimetres(42), millimetres(74))).least).toBe(millimetres(52.5));
    expect(rowOf(findEdge("AISC 360-05", inches(2), inches(3.25))).least).toBe(inches(3.5));
  });

  it("EN 1993-1-8 by the hole", () => {
    expect(rowOf(findEdge("EN 1993-1-8:2005", millimetres(30), millimetres(36))).least).toBe(millimetres(43.2));
  });

  it("a larger hole than standard adds C2; beyond oversized it is told; 360-05 holds none", () => {
    const increment = (edition: EdgeEdition, rod: Length, hole: Length) => {
      const row = rowOf(findEdge(edition, rod, hole));
      return row.by === "rod" ? row.increment : null;
    };
    // Table J3.3: 1 in bolt, standard 1-1/8 (1-1/16 before 2016), oversized 1-1/4; 1-1/4 in, d + 1/8 and d + 5/16.
    const c2 = { kind: "C2", value: inches(1 / 8), clause: "Table J3.5", beyondTable: false };
    expect(increment("AISC 360-22", inches(1), inches(1.125))).toEqual({ kind: "none" });
    expect(increment("AISC 360-22", inches(1), nanometres(inches(1.125) + 1))).toEqual(c2);
    expect(increment("AISC 360-22", inches(1), inches(1.25))).toEqual(c2);
    expect(increment("AISC 360-22", inches(1), nanometres(inches(1.25) + 1))).toEqual({ ...c2, beyondTable: true });
    expect(increment("AISC 360-22", inches(1.25), inches(1.375))).toEqual({ kind: "none" });
    expect(increment("AISC 360-22", inches(1.25), inches(1.5625))).toEqual(c2);
    expect(increment("AISC 360-05", inches(1), inches(1.0625))).toEqual({ kind: "none" });
    expect(increment("AISC 360-05", inches(1), inches(1.125))).toEqual({ kind: "not held" });
    expect(increment("AISC 360-22M", millimetres(36), millimetres(39))).toEqual({ kind: "none" });
    expect(increment("AISC 360-22M", millimetres(36), millimetres(44))).toMatchObject({ value: millimetres(3) });
    expect(increment("EN 1993-1-8:2005", millimetres(36), millimetres(60))).toBeNull();
  });

  it("C2 by diameter range", () => {
    const large = (edition: EdgeEdition, rod: Length) => {
      const row = rowOf(findEdge(edition, rod, nanometres(2 * rod)));
      return row.by === "rod" ? row.increment : null;
    };
    const c2 = (d: number) => large("AISC 360-22", inches(d));
    for (const [d, value] of [
      [0.5, 1 / 16],
      [0.875, 1 / 16],
      [1, 1 / 8],
      [1.125, 1 / 8],
      [3, 1 / 8],
    ] as const) {
      expect(c2(d)).toMatchObject({ kind: "C2", value: inches(value), beyondTable: true });
    }
    expect(large("AISC 360-22M", millimetres(30))).toMatchObject({ value: millimetres(3), clause: "Table J3.5M" });
    expect(large("AISC 360-05", inches(1))).toEqual({ kind: "not held" });
  });

  it("C2 of slots as printed: across the edge 1/8 to 3/16 in or 3/4 d, along it nothing", () => {
    expect(aisc360C2.rows.map((row) => row.shortSlotPerpendicular)).toEqual([1 / 8, 1 / 8, 3 / 16].map(inches));
    expect(aisc360MetricC2.rows.map((row) => row.shortSlotPerpendicular)).toEqual([3, 3, 5].map(millimetres));
    for (const row of [...aisc360C2.rows, ...aisc360MetricC2.rows]) {
      expect([row.longSlotPerpendicular.factor, row.slotParallel]).toEqual([0.75, 0]);
    }
  });
});

describe("concrete", () => {
  it.each(editionsOf("concrete"))("%s: 4 d, or 6 d when torqued", (edition) => {
    expect(rowOf(findSpacing(edition, false))).toMatchObject({ factor: 4, edgeFactor: null });
    expect(rowOf(findSpacing(edition, true))).toMatchObject({ factor: 6, edgeFactor: 6 });
    expect(rowOf(findSpacing(edition, true)).confidence).toBe(edition === "ACI 318-19" ? "high" : "from memory");
  });

  it("cover by exposure; the smaller one up to No. 5", () => {
    const cover = (exposure: "against ground" | "exposed" | "not exposed", d: number) =>
      rowOf(findCover("ACI 318-19", exposure, nanometres(d))).cover;
    expect(cover("against ground", inches(1))).toBe(inches(3));
    expect(cover("exposed", inches(0.625))).toBe(inches(1.5));
    expect(cover("exposed", inches(0.625) + 1)).toBe(inches(2));
    expect(cover("not exposed", inches(3))).toBe(inches(1.5));
    expect(findCover("ACI 318-14", "exposed", inches(1))).toEqual({ found: false, nearest: ["ACI 318-19"] });
  });
});

describe("grades", () => {
  it.each([
    ["55", "F1554 55"],
    ["F1554 55", "F1554 55"],
    ["f1554 gr 55", "F1554 55"],
    ["ASTM F1554 Grade 105", "F1554 105"],
    ["F1554-36", "F1554 36"],
    ["8.8", "8.8"],
    ["ISO 898-1 10.9", "10.9"],
    ["class 4.6", "4.6"],
  ])("reads %j", (text, grade) => {
    expect(rowOf(findGrade(text)).grade).toBe(grade);
  });

  it.each([
    ["50", ["F1554 36", "F1554 55"]],
    ["A36", []],
    ["6.8", ["5.6", "8.8"]],
    ["1E2", []],
    ["", []],
  ])("misses %j", (text, nearest) => {
    expect(findGrade(text)).toEqual({ found: false, nearest });
  });

  it("recommend the nut by diameter and finish; one that hangs on the finish says so", () => {
    type Finish = Parameters<typeof recommendedNut>[2];
    const form = (grade: string, d: number, finish: Finish) =>
      recommendedNut(rowOf(findGrade(grade)), inches(d), finish);
    expect(form("36", 1.5, "plain")).toBe("hex");
    expect(form("36", 1.5, "galvanized")).toBe("hex");
    expect(form("36", 1.5, undefined)).toBe("hex");
    expect(form("36", 1.75, "plain")).toBe("heavy hex");
    expect(form("55", 1, "plain")).toBe("hex");
    expect(form("55", 1, "galvanized")).toBe("heavy hex");
    expect(form("55", 1, undefined)).toBe("by finish");
    expect(form("55", 1.75, undefined)).toBe("heavy hex");
    expect(form("105", 0.5, "plain")).toBe("heavy hex");
    expect(form("8.8", 2, "galvanized")).toBe("hex");
  });
});

describe("cutting", () => {
  it("reads printed ranges exactly: 3-<10 holds 3 and not 10, >3.15-6.3 holds 6.3 and not 3.15", () => {
    const inside = (text: string, mm: number) => holds(bounds(text, "mm"), millimetres(mm));
    expect([2.999999, 3, 9.999999, 10].map((mm) => inside("3-<10", mm))).toEqual([false, true, true, false]);
    expect([3.15, 3.150001, 6.3, 6.300001].map((mm) => inside(">3.15-6.3", mm))).toEqual([false, true, true, false]);
    expect([0, 0.000001, 2.999999, 3].map((mm) => inside(">0<3", mm))).toEqual([false, true, true, false]);
    expect([1, 1.000001].map((mm) => inside("<=1", mm))).toEqual([true, false]);
    expect([23.999999, 24, 24.000001].map((mm) => inside("24", mm))).toEqual([false, true, false]);
    expect(holds(bounds(">=1-1/8", "in"), inches(1.125))).toBe(true);
    expect(holds(bounds("<1/4", "in"), inches(0.25))).toBe(false);
    expect(() => bounds("3 to 10", "mm")).toThrow(RangeError);
  });

  it("changes the deviation where the printed range changes", () => {
    const at = (t: number, d: number) => rowOf(findIso9013Deviation(1, millimetres(t), millimetres(d))).plusMinus;
    expect(at(6.3, 34.999999)).toBe(millimetres(0.25));
    expect(at(6.300001, 34.999999)).toBe(millimetres(0.3));
    expect(at(6.35, 9.999999)).toBe(millimetres(0.25));
    expect(at(6.35, 10)).toBe(millimetres(0.3));
  });

  it("names the nearest ranges on a miss", () => {
    expect(findIso9013Deviation(2, millimetres(30), millimetres(33))).toEqual({
      found: false,
      nearest: ["thickness >10-15 mm", "thickness >15-20 mm"],
    });
    expect(findIso9013Deviation(1, millimetres(30), millimetres(5))).toEqual({
      found: false,
      nearest: ["dimension 10-<35 mm", "dimension 35-<125 mm"],
    });
    expect(findIso9013Deviation(1, millimetres(30), millimetres(8000)).found).toBe(false);
  });

  it("keeps perpendicularity as coefficients", () => {
    const ranges = ([1, 2, 3, 4, 5] as const).map(iso9013Perpendicularity);
    expect(ranges.map((row) => row.base)).toEqual([0.05, 0.15, 0.4, 0.8, 1.2].map(millimetres));
    expect(ranges.map((row) => row.perThickness)).toEqual([0.003, 0.007, 0.01, 0.02, 0.035]);
    expect(ranges[4]?.confidence).toBe("from memory");
  });
});

describe("the rest", () => {
  it("every listed edition answers", () => {
    const rods = [inches(1), millimetres(30), millimetres(12)];
    for (const edition of editionsOf("baseHoles")) {
      expect(rods.map((diameter) => findBaseHole(edition, diameter).found)).toContain(true);
    }
    for (const edition of editionsOf("templateHoles")) {
      expect(findTemplateHole(edition, millimetres(30)).found).toBe(true);
    }
    for (const edition of editionsOf("placing")) {
      expect(findPlacing(edition, inches(1)).found).toBe(true);
      expect(placingRows(edition).filter(({ about }) => about === "top of rod").length).toBe(1);
    }
    for (const edition of editionsOf("edges")) expect(findEdge(edition, inches(2), inches(3)).found).toBe(true);
    for (const edition of editionsOf("concrete")) expect(findSpacing(edition, true).found).toBe(true);
  });

  it("each edition answers by its own name: none falls to another", () => {
    const answers: readonly (readonly [string, Lookup<unknown>])[] = [
      ...editionsOf("templateHoles").map((edition) => [edition, findTemplateHole(edition, millimetres(30))] as const),
      ...editionsOf("placing").map((edition) => [edition, findPlacing(edition, inches(1))] as const),
      ...editionsOf("placing").map((edition) => [edition, findElevation(edition)] as const),
      ...editionsOf("edges").map((edition) => [edition, findEdge(edition, inches(2), inches(3))] as const),
      ...editionsOf("concrete").map((edition) => [edition, findSpacing(edition, false)] as const),
      ...editionsOf("baseHoles").flatMap((edition) =>
        [inches(1), millimetres(30)].map((rod) => [edition, findBaseHole(edition, rod)] as const),
      ),
    ];
    const found = answers.filter(([, answer]) => answer.found);
    expect(found.length).toBeGreaterThan(20);
    for (const [edition, answer] of found) expect(answer).toMatchObject({ edition });
  });

  it("zinc adds 3.6 to 7.0 mil to the diameter", () => {
    expect([zincGrowth.least, zincGrowth.greatest]).toEqual([inches(0.0036), inches(0.007)]);
  });
});
