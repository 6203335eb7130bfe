import { describe, expect, it } from "vitest";
import * as aisc from "../../../src/standards/aisc-360-22/base-plate-holes.js";
import * as aiscMetric from "../../../src/standards/aisc-360-22/base-plate-holes-metric.js";
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
  editionsOf,
  findBaseHole,
  findC2,
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
  findWasher,
  iso9013Perpendicularity,
  type Lookup,
  nutForm,
  nutStandards,
  plateStock,
  processLimits,
  type Sized,
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

describe("every row is reached by its size", () => {
  const tables: readonly [string, readonly Sized[], (size: string) => Lookup<Sized>][] = [
    ["UNC", unc.uncThreads.rows, (size) => findThread(size)],
    ["8UN", eightUn.eightUnThreads.rows, (size) => findThread(size, "in", "8UN")],
    ["metric coarse", metric.metricThreads.rows, (size) => findThread(size)],
    ["hex", hex.hexNuts.rows, (size) => findNut("ASME B18.2.2 hex", size)],
    ["heavy hex", heavy.heavyHexNuts.rows, (size) => findNut("ASME B18.2.2 heavy hex", size)],
    ["ISO 4032", iso4032.iso4032Nuts.rows, (size) => findNut("ISO 4032", size)],
    ["ISO 4034", iso4034.iso4034Nuts.rows, (size) => findNut("ISO 4034", size)],
    ["F436", f436.f436Washers.rows, (size) => findWasher("ASTM F436", size)],
    ["F844", f844.f844Washers.rows, (size) => findWasher("ASTM F844", size)],
    ["F844 wide", f844.f844WideWashers.rows, (size) => findWasher("ASTM F844 wide", size)],
    ["B narrow", typeB.typeBNarrowWashers.rows, (size) => findWasher("ASME B18.21.1 Type B narrow", size)],
    ["B regular", typeB.typeBRegularWashers.rows, (size) => findWasher("ASME B18.21.1 Type B regular", size)],
    ["B wide", typeB.typeBWideWashers.rows, (size) => findWasher("ASME B18.21.1 Type B wide", size)],
    ["ISO 7089", iso7089.iso7089Washers.rows, (size) => findWasher("ISO 7089", size)],
    ["ISO 7090", iso7090.iso7090Washers.rows, (size) => findWasher("ISO 7090 / DIN 125-B", size)],
    ["ISO 7091", iso7091.iso7091Washers.rows, (size) => findWasher("ISO 7091", size)],
    ["ISO 7093", iso7093.iso7093Washers.rows, (size) => findWasher("ISO 7093", size)],
    ["C-J9.1", aisc.aisc360BaseHoles.rows, (size) => findBaseHole("AISC 360-22 C-J9.1", size)],
    ["C-J9.1M", aiscMetric.aisc360MetricBaseHoles.rows, (size) => findBaseHole("AISC 360-22 C-J9.1M", size)],
    ["DG1 2nd", guide2.designGuide2BaseHoles.rows, (size) => findBaseHole("Design Guide 1, 2nd ed.", size)],
    ["DG1 3rd", guide3.designGuide3BaseHoles.rows, (size) => findBaseHole("Design Guide 1, 3rd ed. examples", size)],
    ["EN 1992-4", en1992.en1992ClearanceHoles.rows, (size) => findBaseHole("EN 1992-4 Table 6.1", size)],
  ];

  it.each(tables)("%s", (_name, rows, find) => {
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) expect(rowOf(find(row.size))).toBe(row);
  });

  it("names a table for every nut and washer standard", () => {
    for (const standard of nutStandards) expect(findNut(standard, "M5").found).toBe(false);
    for (const standard of washerStandards) expect(findWasher(standard, "M5").found).toBe(false);
  });

  it("ISO 273 medium holes up to M39, d + 3 mm above", () => {
    for (const row of iso273.iso273Holes.rows) {
      const hole = rowOf(findTemplateHole("ISO 273", row.size, row.diameter));
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
    expect(rowOf(findThread(30, "mm")).size).toBe("M30");
    expect(rowOf(findThread(1.25)).size).toBe("1-1/4");
    expect(findThread(30).found).toBe(false);
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
    expect(findBaseHole("Design Guide 1, 2nd ed.", "1-1/8")).toEqual({ found: false, nearest: ["1", "1-1/4"] });
    expect(findBaseHole("AISC 360-22 C-J9.1", "1-7/8")).toEqual({ found: false, nearest: ["1-3/4", "2"] });
    expect(findBaseHole("AISC 360-22 C-J9.1M", "M20")).toEqual({ found: false, nearest: ["M18", "M22"] });
    expect(findTemplateHole("ISO 273", "M8", millimetres(8))).toEqual({ found: false, nearest: ["M10", "M12"] });
  });

  it("take the printed rule row from 2 in on", () => {
    expect(rowOf(findBaseHole("AISC 360-22 C-J9.1", "3-1/2")).hole).toBe(inches(4.75));
    expect(rowOf(findBaseHole("AISC 360-22 C-J9.1", "4")).hole).toBe(inches(5.25));
  });

  it("give d + 6 mm as common practice, d + 1/16 in as Design Guide 1", () => {
    const row = rowOf(findBaseHole("d + 6 mm", "M30"));
    expect([row.hole, row.confidence]).toEqual([millimetres(36), "common practice"]);
    expect(rowOf(findTemplateHole("Design Guide 1, 2nd ed.", "1-1/4", inches(1.25))).hole).toBe(inches(1.3125));
  });

  it("keep the second hole of Design Guide 1 for 3/4 in rods", () => {
    expect(rowOf(findBaseHole("Design Guide 1, 2nd ed.", "3/4")).alternateHole).toBe(inches(1.0625));
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
    expect(rowOf(findPlacing("EN 1090-2", millimetres(30))).tolerance).toBe(millimetres(3));
    expect(rowOf(findPlacing("EN 1090-2", millimetres(30), "adjustable")).tolerance).toBe(millimetres(10));
    expect(rowOf(findElevation("EN 1090-2"))).toMatchObject({ low: millimetres(5), high: millimetres(45) });
    expect(rowOf(findElevation("EN 1090-2", "adjustable"))).toMatchObject({
      low: millimetres(5),
      high: millimetres(25),
    });
  });

  it("US editions hold the top of the rod to 1/2 in", () => {
    for (const edition of ["ACI 117-10", "AISC 303-10", "AISC 303-22"]) {
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
    expect(rowOf(findEdge("EN 1993-1-8", millimetres(30), millimetres(36))).least).toBe(millimetres(43.2));
  });

  it("C2 by diameter range", () => {
    const c2 = (d: number) => rowOf(findC2("AISC 360-22", inches(d))).oversized;
    expect([0.5, 0.875, 1, 1.125, 3].map(c2)).toEqual([1 / 16, 1 / 16, 1 / 8, 1 / 8, 1 / 8].map(inches));
    expect(findC2("AISC 360-22", inches(0.9375))).toEqual({ found: false, nearest: ["<=7/8", "1"] });
    expect(findC2("AISC 360-22", inches(1.0625))).toEqual({ found: false, nearest: ["1", ">=1-1/8"] });
    expect(rowOf(findC2("AISC 360-22M", millimetres(30))).shortSlotPerpendicular).toBe(millimetres(5));
    expect(rowOf(findC2("AISC 360-22", inches(2))).longSlotPerpendicular).toBe(inches(1.5));
    for (const edition of ["AISC 360-05", "EN 1993-1-8"]) expect(findC2(edition, inches(1)).found).toBe(false);
  });
});

describe("concrete", () => {
  it.each(["ACI 318-19", "ACI 318-14", "ACI 318-11"])("%s: 4 d, or 6 d when torqued", (edition) => {
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

  it("recommend the nut by diameter and finish", () => {
    const form = (grade: string, d: number, zinc: boolean) => nutForm(rowOf(findGrade(grade)), inches(d), zinc);
    expect(form("36", 1.5, false)).toBe("hex");
    expect(form("36", 1.5, true)).toBe("hex");
    expect(form("36", 1.75, false)).toBe("heavy hex");
    expect(form("55", 1, false)).toBe("hex");
    expect(form("55", 1, true)).toBe("heavy hex");
    expect(form("105", 0.5, false)).toBe("heavy hex");
    expect(form("8.8", 2, true)).toBe("hex");
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

  it("lists what a process can do, and null where nothing was found", () => {
    expect(processLimits("plasma").smallestHole?.value).toMatchObject({ kind: "per thickness", least: 1.5 });
    expect(processLimits("HD plasma").smallestHole?.confidence).toBe("from memory");
    expect(processLimits("laser").kerf?.value).toMatchObject({ typical: millimetres(0.3) });
    expect(processLimits("waterjet").cornerRadius).toBeNull();
  });
});

describe("the rest", () => {
  it("throws on an edition that is not listed: a bug, since jobs are validated before", () => {
    expect(() => findBaseHole("AISC 360-99", "1")).toThrow(RangeError);
    expect(() => findTemplateHole("guess", "1", inches(1))).toThrow(RangeError);
    expect(() => findPlacing("guess", inches(1))).toThrow(RangeError);
    expect(() => findEdge("guess", inches(1), inches(2))).toThrow(RangeError);
    expect(() => findC2("guess", inches(1))).toThrow(RangeError);
    expect(() => findSpacing("guess", true)).toThrow(RangeError);
    expect(() => findCover("guess", "exposed", inches(1))).toThrow(RangeError);
  });

  it("every listed edition answers", () => {
    for (const edition of editionsOf("baseHoles")) {
      const answers = ["1", "M30", "M12"].map((size) => findBaseHole(edition, size).found);
      expect(answers).toContain(true);
    }
    for (const edition of editionsOf("templateHoles")) {
      expect(findTemplateHole(edition, "M30", millimetres(30)).found).toBe(true);
    }
    for (const edition of editionsOf("placing")) expect(findPlacing(edition, inches(1)).found).toBe(true);
    for (const edition of editionsOf("edges")) expect(findEdge(edition, inches(2), inches(3)).found).toBe(true);
    for (const edition of editionsOf("concrete")) expect(findSpacing(edition, true).found).toBe(true);
  });

  it("zinc adds 3.6 to 7.0 mil to the diameter", () => {
    expect([zincGrowth.least, zincGrowth.greatest]).toEqual([inches(0.0036), inches(0.007)]);
  });

  it("stock is listed thinnest first", () => {
    for (const rows of Object.values(plateStock.thicknesses)) {
      const sorted = rows.map((row) => row.thickness).toSorted((a, b) => a - b);
      expect(rows.map((row) => row.thickness)).toEqual(sorted);
    }
  });
});
