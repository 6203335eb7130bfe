import { describe, expect, it } from "vitest";
import { aci117Placing } from "../../../src/standards/aci-117-10/placing.js";
import { aisc303Placing } from "../../../src/standards/aisc-303-22/placing.js";
import type { Bounds, DeviationRow } from "../../../src/standards/index.js";
import {
  findConcreteTop,
  findGrade,
  findLengthTolerance,
  findSpacing,
  iso9013Perpendicularity,
  zincGrowth,
} from "../../../src/standards/index.js";
import { iso9013Class1 } from "../../../src/standards/iso-9013-2017/deviations-class-1.js";
import { iso9013Class2 } from "../../../src/standards/iso-9013-2017/deviations-class-2.js";
import { inches, type Length, millimetres } from "../../../src/units/index.js";
import { thicknessTolerance } from "../../reference/astm-a6/thickness-tolerance.js";
import { zincRows } from "../../reference/astm-f2329/zinc.js";
import { scope } from "../../reference/iso-9013-2017/scope.js";

const byRod = (rows: typeof aci117Placing.rows) =>
  rows.filter((row) => row.about === "rod position").map((row) => [row.sizes, row.plus]);

it("AISC 303-16/-22 took ACI 117-10's tolerances by rod diameter (ASCC position statement; numbers from memory)", () => {
  expect(byRod(aisc303Placing.rows)).toEqual(byRod(aci117Placing.rows));
});

describe("ASTM F1554, section 10 as quoted by makers (secondary copies): +-1/2 in to 24 in, +-1 in beyond", () => {
  it.each([
    [18, 0.5],
    [24, 0.5],
    [24.001, 1],
    [60, 1],
  ])("%d in", (length, plusMinus) => {
    const grade = findGrade("F1554 55");
    if (!grade.found) throw new Error("no grade");
    expect(findLengthTolerance(grade.row, inches(length))).toMatchObject({
      found: true,
      edition: "ASTM F1554",
      row: { plusMinus: inches(plusMinus) },
    });
  });

  it("is not lent to ISO 898-1", () => {
    const grade = findGrade("8.8");
    if (!grade.found) throw new Error("no grade");
    expect(findLengthTolerance(grade.row, inches(18))).toEqual({ found: false, nearest: [] });
  });
});

it("tops of concrete: ACI 117-10 3.3.1 (secondary copy), beside AISC 303 too; EN 1090-2:2008 Table D.2.20 (secondary copy)", () => {
  for (const placing of ["ACI 117-10", "AISC 303-10", "AISC 303-22"] as const) {
    expect(findConcreteTop(placing)).toMatchObject({
      edition: "ACI 117-10",
      clause: "3.3.1",
      row: { high: inches(0.5), low: inches(2) },
    });
  }
  expect(findConcreteTop("EN 1090-2:2008")).toMatchObject({
    edition: "EN 1090-2:2008",
    row: { high: millimetres(5), low: millimetres(15) },
  });
});

it("ACI 318: torqued rods need half as much again (17.9.2)", () => {
  const [plain, torqued] = [findSpacing("ACI 318-19", false), findSpacing("ACI 318-19", true)];
  expect(plain.found && torqued.found && torqued.row.factor / plain.row.factor).toBe(1.5);
});

describe.each([
  [1, iso9013Class1.rows, 90, "<=1"],
  [2, iso9013Class2.rows, 55, "<=1"],
] as const)("ISO 9013:2017, class %d", (_grade, rows, count, first) => {
  const bands = [...new Set(rows.map((row) => row.thickness.printed))];
  const inBand = (band: string): DeviationRow[] => rows.filter((row) => row.thickness.printed === band);

  it("holds every printed cell", () => {
    expect(rows.length).toBe(count);
    expect(bands[0]).toBe(first);
  });

  it("deviations never shrink along a row of the table", () => {
    for (const band of bands) {
      const deviations = inBand(band).map((row) => row.plusMinus);
      expect(deviations).toEqual(deviations.toSorted((a, b) => a - b));
    }
  });

  it("deviations never shrink down a column", () => {
    for (const nominal of new Set(rows.map((row) => row.nominal.printed))) {
      const column = rows.filter((row) => row.nominal.printed === nominal).map((row) => row.plusMinus);
      expect(column).toEqual(column.toSorted((a, b) => a - b));
    }
  });

  it("ranges follow each other without gap or overlap", () => {
    const meets = (a: Bounds, b: Bounds) => a.to === b.from && a.toIncluded !== b.fromIncluded;
    const thicknesses = bands.flatMap((band) => inBand(band)[0]?.thickness ?? []);
    thicknesses.slice(1).forEach((range, at) => {
      expect(meets(thicknesses[at] ?? range, range)).toBe(true);
    });
    for (const band of bands) {
      const nominals = inBand(band).map((row) => row.nominal);
      nominals.slice(1).forEach((range, at) => {
        expect(meets(nominals[at] ?? range, range)).toBe(true);
      });
    }
  });
});

it("ISO 9013: class 2 is coarser than class 1, cell by cell below 4 m (above, its copy has doubtful cells)", () => {
  const below4m = iso9013Class2.rows.filter((row) => (row.nominal.to ?? 0) <= millimetres(4000));
  expect(below4m.length).toBeGreaterThan(40);
  for (const row of below4m) {
    const fine = iso9013Class1.rows.find(
      (other) => other.thickness.printed === row.thickness.printed && other.nominal.printed === row.nominal.printed,
    );
    expect(row.plusMinus).toBeGreaterThan(fine?.plusMinus ?? Number.POSITIVE_INFINITY);
  }
});

it("ISO 9013: perpendicularity grows from range 1 to 5 at any thickness, and the scope covers what is asked of each process", () => {
  for (const thickness of [0.5, 6, 25, 100, 300].map(millimetres)) {
    const u = ([1, 2, 3, 4, 5] as const).map((range) => {
      const row = iso9013Perpendicularity(range);
      return row.base + row.perThickness * thickness;
    });
    expect(u).toEqual(u.toSorted((a, b) => a - b));
  }
  for (const row of scope.rows) expect(row.greatest).toBeGreaterThan(row.least);
});

it("zinc on the diameter is twice its thickness (geometry)", () => {
  const coating = zincRows.find((row) => row.item === "coating thickness");
  const twice = (length: Length | undefined) => 2 * (length ?? Number.NaN);
  expect([zincGrowth.least, zincGrowth.greatest]).toEqual([twice(coating?.least), twice(coating?.greatest)]);
  expect(zincGrowth.greatest).toBe(inches(0.007));
});

it("ASTM A6: plates are thicker by more as they get thicker or wider", () => {
  expect(thicknessTolerance.rows.length).toBe(40);
  const over = thicknessTolerance.rows.map((row) => row.over);
  for (const width of new Set(thicknessTolerance.rows.map((row) => row.width.printed))) {
    const column = thicknessTolerance.rows.filter((row) => row.width.printed === width).map((row) => row.over);
    expect(column).toEqual(column.toSorted((a, b) => a - b));
  }
  expect(Math.max(...over)).toBe(inches(0.1));
});
