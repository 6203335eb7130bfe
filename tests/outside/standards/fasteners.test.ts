import { describe, expect, it } from "vitest";
import { heavyHexNuts } from "../../../src/standards/asme-b18-2-2/heavy-hex-nuts.js";
import { hexNuts } from "../../../src/standards/asme-b18-2-2/hex-nuts.js";
import {
  typeBNarrowWashers,
  typeBRegularWashers,
  typeBWideWashers,
} from "../../../src/standards/asme-b18-21-1/type-b-washers.js";
import { overTap } from "../../../src/standards/astm-a563/over-tap.js";
import { f436Washers } from "../../../src/standards/astm-f436/washers.js";
import { f844Washers, f844WideWashers } from "../../../src/standards/astm-f844/washers.js";
import {
  bendAngle,
  bendArea,
  findNut,
  findWasher,
  hookLength,
  nutStandards,
  threadLonger,
  washerStandards,
  zincGrowth,
} from "../../../src/standards/index.js";
import { iso273Holes } from "../../../src/standards/iso-273/clearance-holes.js";
import { iso4032Nuts } from "../../../src/standards/iso-4032/hex-nuts.js";
import { iso7089Washers } from "../../../src/standards/iso-7089/washers.js";
import { iso7090Washers } from "../../../src/standards/iso-7090/washers.js";
import { iso7091Washers } from "../../../src/standards/iso-7091/washers.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { iso4033Nuts } from "../../reference/iso-4033/hex-nuts.js";

/** Half a thousandth of an inch: what a table printed to three decimals leaves open. */
const HALF_MIL = inches(0.0005);
const hexagon = (flats: number): number => flats / Math.cos(Math.PI / 6);

describe("heavy hex nuts, ASME B18.2.2 Appendix: F = 1.5 D + 1/8, G = 1.1547 F", () => {
  it.each(heavyHexNuts.rows)("$size", (row) => {
    expect(row.basicFlats).toBe(row.diameter * 1.5 + inches(1 / 8));
    expect(Math.abs(row.acrossFlats - row.basicFlats)).toBeLessThanOrEqual(HALF_MIL);
    // G follows from the exact F and is rounded to 0.001; two rows are a digit lower.
    expect(Math.abs((row.acrossCorners ?? 0) - hexagon(row.basicFlats))).toBeLessThanOrEqual(3 * HALF_MIL);
  });

  it("basic heights D - 1/64 to 1-1/8, D - 1/32 to 2, D - 3/64 to 3, D - 1/16 above (formula from memory)", () => {
    const less = (d: number) => (d <= inches(1.125) ? 1 : d <= inches(2) ? 2 : d <= inches(3) ? 3 : 4);
    for (const row of heavyHexNuts.rows) {
      expect(row.basicHeight).toBe(row.diameter - less(row.diameter) * inches(1 / 64));
      expect(row.height).toBeGreaterThan(row.basicHeight);
      expect(row.heightLeast ?? 0).toBeLessThan(row.basicHeight);
    }
  });
});

describe("hex nuts, ASME B18.2.2: F = 1.5 D (more at 1/4, 5/16, 7/16, 9/16), G = F / cos 30", () => {
  const WIDER = new Set(["1/4", "5/16", "7/16", "9/16"]);
  it.each(hexNuts.rows)("$size", (row) => {
    const basic = row.diameter * 1.5;
    if (WIDER.has(row.size)) expect(row.acrossFlats).toBeGreaterThan(basic);
    // 1-5/8 is printed as 2.43 for 2.4375.
    else
      expect(Math.abs(row.acrossFlats - basic)).toBeLessThanOrEqual(
        row.size === "1-5/8" ? inches(0.008) : HALF_MIL * 1.01,
      );
    expect(Math.abs((row.acrossCorners ?? 0) - hexagon(row.acrossFlats))).toBeLessThanOrEqual(inches(0.0015));
  });

  it("are narrower and lower than heavy hex nuts", () => {
    for (const row of hexNuts.rows) {
      const heavy = findNut("ASME B18.2.2 heavy hex", row.diameter);
      if (heavy.found) expect(heavy.row.acrossFlats).toBeGreaterThan(row.acrossFlats);
    }
  });
});

/** ISO 286-1 standard tolerances in mm by nominal size up to (from memory): IT13, IT15, IT16, IT17. */
const IT: readonly (readonly [upTo: number, it13: number, it15: number, it16: number, it17: number])[] = [
  [18, 0.27, 0.7, 1.1, 1.8],
  [30, 0.33, 0.84, 1.3, 2.1],
  [50, 0.39, 1.0, 1.6, 2.5],
  [80, 0.46, 1.2, 1.9, 3.0],
  [120, 0.54, 1.4, 2.2, 3.5],
  [180, 0.63, 1.6, 2.5, 4.0],
  [250, 0.72, 1.85, 2.9, 4.6],
];

describe("metric hex nuts: e = 1.13 (s - IT), ISO 4032 with ISO 286-1", () => {
  const corners = (s: number): number[] => (IT.find(([upTo]) => s <= upTo) ?? []).slice(1).map((it) => 1.13 * (s - it));

  it.each(iso4032Nuts.rows)("$size: the least width across corners follows from one tolerance grade", (row) => {
    const e = (row.acrossCornersLeast ?? 0) / 1e6;
    const nearest = Math.min(...corners(row.acrossFlats / 1e6).map((corner) => Math.abs(corner - e)));
    expect(nearest).toBeLessThan(0.011);
  });

  it("IT13 up to M16 (product grade A), IT15 up to M39, IT16 to M64 (product grade B)", () => {
    const grade = (d: number) => (d <= 16 ? 0 : d <= 39 ? 1 : 2);
    for (const row of iso4032Nuts.rows.filter((each) => each.diameter <= 64_000_000)) {
      const expected = corners(row.acrossFlats / 1e6)[grade(row.diameter / 1e6)];
      expect(Math.abs((row.acrossCornersLeast ?? 0) / 1e6 - (expected ?? 0))).toBeLessThan(0.011);
    }
  });

  it.each(iso4032Nuts.rows)("$size: s is 1.4 to 1.7 d and m 0.75 to 0.95 d (proportions of the series)", (row) => {
    expect(row.acrossFlats / row.diameter).toBeGreaterThan(1.4);
    expect(row.acrossFlats / row.diameter).toBeLessThan(1.7);
    expect(row.height / row.diameter).toBeGreaterThan(0.75);
    expect(row.height / row.diameter).toBeLessThan(0.95);
  });

  it("s, m and e agree with a second published copy of ISO 4032 (trojansf.co.uk/standards/iso-4032)", () => {
    // thread: s, m greatest, e least
    const second: Readonly<Record<string, readonly [number, number, number]>> = {
      M10: [16, 8.4, 17.77],
      M12: [18, 10.8, 20.03],
      M14: [21, 12.8, 23.35],
      M16: [24, 14.8, 26.75],
      M18: [27, 15.8, 29.56],
      M20: [30, 18, 32.95],
      M22: [34, 19.4, 37.29],
      M24: [36, 21.5, 39.55],
      M27: [41, 23.8, 45.2],
      M30: [46, 25.6, 50.85],
      M33: [50, 28.7, 55.37],
      M36: [55, 31, 60.79],
      M39: [60, 33.4, 66.44],
      M42: [65, 34, 71.3],
      M45: [70, 36, 76.95],
      M48: [75, 38, 82.6],
      M52: [80, 42, 88.25],
      M56: [85, 45, 93.56],
      M60: [90, 48, 99.21],
      M64: [95, 51, 104.86],
    };
    const listed = iso4032Nuts.rows.filter((row) => row.diameter <= 64_000_000);
    const inMillimetres = (length: number | null) => (length ?? 0) / 1e6;
    const read = (row: (typeof listed)[number]) =>
      [row.acrossFlats, row.height, row.acrossCornersLeast].map(inMillimetres);
    expect(Object.fromEntries(listed.map((row) => [row.size, read(row)]))).toEqual(second);
  });

  it("style 2 is higher than style 1", () => {
    for (const row of iso4033Nuts.rows) {
      expect(row.height).toBeGreaterThan(iso4032Nuts.rows.find((nut) => nut.size === row.size)?.height ?? 0);
    }
  });
});

it("widths and heights grow with the size in every nut table", () => {
  for (const standard of nutStandards) {
    const inch = [0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 3, 4].map(inches);
    const metric = [12, 20, 24, 30, 42, 64].map(millimetres);
    const sizes = [...inch, ...metric].flatMap((diameter) => {
      const reading = findNut(standard, diameter);
      return reading.found ? [reading.row] : [];
    });
    expect(sizes.length).toBeGreaterThan(4);
    for (const field of ["acrossFlats", "height"] as const) {
      const values = sizes.map((row) => row[field]);
      expect(values).toEqual(values.toSorted((a, b) => a - b));
    }
  }
});

describe("washers", () => {
  it("pass over the rod and lie under the nut: inside >= d, outside > inside, in every table", () => {
    const diameters = [...f844Washers.rows, ...f436Washers.rows, ...iso7090Washers.rows].map((row) => row.diameter);
    for (const standard of washerStandards) {
      for (const diameter of new Set(diameters)) {
        const reading = findWasher(standard, diameter);
        if (!reading.found) continue;
        for (const inside of reading.row.inside) {
          expect(inside).toBeGreaterThan(reading.row.diameter);
          expect(reading.row.outside).toBeGreaterThan(inside);
        }
      }
    }
  });

  it("F436 outside = 2 d from 1 to 1-1/2 in (ASTM F436, from memory)", () => {
    const rows = f436Washers.rows.filter((row) => row.diameter >= inches(1) && row.diameter <= inches(1.5));
    expect(rows.length).toBe(5);
    for (const row of rows) expect(row.outside).toBe(2 * row.diameter);
  });

  it("F436 carries both inside diameters where sources disagree, and never as a sure value", () => {
    const doubtful = f436Washers.rows.filter((row) => row.inside.length > 1);
    expect(doubtful.map((row) => row.size)).toEqual(["1", "1-1/8"]);
    for (const row of doubtful) expect(row.confidence).toBe("conflict");
  });

  it("F844 without a series is never wider than the wide one (F844-07a s.7.1: narrow unless specified)", () => {
    expect(f844Washers.rows.map((row) => row.size)).toEqual(f844WideWashers.rows.map((row) => row.size));
    f844Washers.rows.forEach((row, at) => {
      const wide = f844WideWashers.rows[at]?.outside ?? 0;
      expect(row.outside <= wide && (row.outside < wide || row.diameter > inches(1.5))).toBe(true);
    });
  });

  it("F844 from 1/4 to 3/4 in agrees with a second copy of ASME B18.21.1 Type A (Machinery's Handbook, 31st ed., p. 1694)", () => {
    // size: narrow inside, outside, thickness; wide inside, outside, thickness
    const second: Readonly<Record<string, readonly number[]>> = {
      "1/4": [0.281, 0.625, 0.065, 0.312, 0.734, 0.065],
      "3/8": [0.406, 0.812, 0.065, 0.438, 1.0, 0.083],
      "1/2": [0.531, 1.062, 0.095, 0.562, 1.375, 0.109],
      "5/8": [0.656, 1.312, 0.095, 0.688, 1.75, 0.134],
      "3/4": [0.812, 1.469, 0.134, 0.812, 2.0, 0.148],
    };
    for (const [size, values] of Object.entries(second)) {
      const read = [f844Washers, f844WideWashers].flatMap(({ rows }) => {
        const row = rows.find((candidate) => candidate.size === size);
        return [row?.inside[0], row?.outside, row?.thickness.nominal];
      });
      expect(read).toEqual(values.map(inches));
    }
  });

  it("F436 outside and thickness agree with a second copy of ASME B18.2.6 (inconel718bolts.com, large flat washers)", () => {
    // size: outside, thickness least and greatest
    const second: Readonly<Record<string, readonly number[]>> = {
      "1/2": [1.063, 0.097, 0.177],
      "5/8": [1.313, 0.122, 0.177],
      "3/4": [1.469, 0.122, 0.177],
      "7/8": [1.75, 0.136, 0.177],
      "1": [2, 0.136, 0.177],
      "1-1/8": [2.25, 0.136, 0.177],
      "1-1/4": [2.5, 0.136, 0.177],
      "1-3/8": [2.75, 0.136, 0.177],
      "1-1/2": [3, 0.136, 0.177],
    };
    for (const [size, values] of Object.entries(second)) {
      const row = f436Washers.rows.find((candidate) => candidate.size === size);
      expect([row?.outside, row?.thickness.least, row?.thickness.greatest]).toEqual(values.map(inches));
    }
  });

  it("the thickest and thinnest washers of ASME B18.21.1 are a second copy's (Machinery's Handbook, 31st ed., pp. 1694, 1695, 1697)", () => {
    const limitsOf = ({ rows }: typeof f844Washers, size: string) => {
      const found = rows.find((row) => row.size === size);
      return [found?.thickness.nominal, found?.thickness.greatest, found?.thickness.least];
    };
    // Type A: basic, max., min.
    expect(limitsOf(f844Washers, "1/2")).toEqual([0.095, 0.121, 0.074].map(inches));
    expect(limitsOf(f844WideWashers, "1/2")).toEqual([0.109, 0.132, 0.086].map(inches));
    expect(limitsOf(f844Washers, "3/4")).toEqual([0.134, 0.16, 0.108].map(inches));
    expect(limitsOf(f844WideWashers, "3/4")).toEqual([0.148, 0.177, 0.122].map(inches));
    expect(limitsOf(f844WideWashers, "1")).toEqual([0.165, 0.192, 0.136].map(inches));
    expect(limitsOf(f844WideWashers, "1-1/2")).toEqual([0.18, 0.213, 0.153].map(inches));
    // Type B
    expect(limitsOf(typeBNarrowWashers, "3/4")).toEqual([0.1, 0.112, 0.09].map(inches));
    expect(limitsOf(typeBWideWashers, "3/4")).toEqual([0.16, 0.174, 0.146].map(inches));
    expect(limitsOf(typeBWideWashers, "1-1/4")).toEqual([0.25, 0.266, 0.234].map(inches));
  });

  it("every ASME washer has its limits, about its basic thickness", () => {
    const tables = [f844Washers, f844WideWashers, typeBNarrowWashers, typeBRegularWashers, typeBWideWashers];
    for (const { size, thickness } of tables.flatMap(({ rows }) => rows)) {
      const { least, nominal, greatest } = thickness;
      const inOrder = least !== null && nominal !== null && greatest !== null && least < nominal && nominal < greatest;
      expect(inOrder, size).toBe(true);
    }
  });

  it("Type B agrees with a second copy of ASME B18.21.1 (Machinery's Handbook, 31st ed., p. 1697)", () => {
    // size: inside; narrow, regular, wide outside; narrow, regular, wide thickness
    const second: Readonly<Record<string, readonly number[]>> = {
      "3/4": [0.812, 1.375, 2.0, 2.5, 0.1, 0.1, 0.16],
      "7/8": [0.938, 1.469, 2.25, 2.75, 0.1, 0.16, 0.16],
      "1": [1.062, 1.75, 2.5, 3.0, 0.1, 0.16, 0.16],
      "1-1/8": [1.188, 2.0, 2.75, 3.25, 0.1, 0.16, 0.16],
      "1-1/4": [1.312, 2.25, 3.0, 3.5, 0.16, 0.16, 0.25],
      "1-3/8": [1.438, 2.5, 3.25, 3.75, 0.16, 0.16, 0.25],
      "1-1/2": [1.562, 2.75, 3.5, 4.0, 0.16, 0.25, 0.25],
      "1-5/8": [1.75, 3.0, 3.75, 4.25, 0.16, 0.25, 0.25],
      "1-3/4": [1.875, 3.25, 4.0, 4.5, 0.16, 0.25, 0.25],
      "1-7/8": [2.0, 3.5, 4.25, 4.75, 0.25, 0.25, 0.25],
    };
    const tables = [typeBNarrowWashers, typeBRegularWashers, typeBWideWashers];
    for (const [size, values] of Object.entries(second)) {
      const rows = tables.map((table) => table.rows.find((row) => row.size === size));
      const read = [
        rows[0]?.inside[0],
        ...rows.map((row) => row?.outside),
        ...rows.map((row) => row?.thickness.nominal),
      ];
      expect(read).toEqual(values.map(inches));
    }
  });

  it("Type B: wide is wider than regular, at every size", () => {
    typeBWideWashers.rows.forEach((row, at) => {
      const regular = typeBRegularWashers.rows[at];
      expect(regular?.size).toBe(row.size);
      expect(row.outside).toBeGreaterThan(regular?.outside ?? 0);
    });
  });

  it("ISO 7091 inside = ISO 273 medium, ISO 7090 inside = ISO 273 fine (ISO 887 takes its holes from ISO 273)", () => {
    const hole = (size: string) => iso273Holes.rows.find((row) => row.size === size);
    for (const row of iso7091Washers.rows) expect(row.inside).toEqual([hole(row.size)?.medium]);
    for (const row of iso7090Washers.rows) expect(row.inside).toEqual([hole(row.size)?.fine]);
  });

  it("ISO 7089 inside = ISO 273 fine, and the rows that differ say that copies conflict", () => {
    for (const row of iso7089Washers.rows) {
      const fine = iso273Holes.rows.find((hole) => hole.size === row.size)?.fine;
      if (row.inside[0] !== fine) expect(row.note).toMatch(/verify/);
    }
    const conflicts = iso7089Washers.rows.filter((row) => row.note.includes("verify")).map((row) => row.size);
    expect(conflicts).toEqual(["M42", "M48", "M56", "M64"]);
  });
});

it("A563 nuts are tapped over by more than the zinc adds to the diameter", () => {
  for (const row of overTap.rows) expect(row.allowance).toBeGreaterThan(zincGrowth.greatest);
  expect(overTap.rows.length).toBe(24);
});

/** portlandbolt.com, "Nut overtapping allowances": thousandths of an inch on the diameter, UNC and 8UN alike. */
const OVER_TAPPED: readonly (readonly [sizes: string, thousandths: number])[] = [
  ["1/4", 16],
  ["5/16 3/8", 17],
  ["7/16 1/2", 18],
  ["9/16 5/8 3/4", 20],
  ["7/8", 22],
  ["1 1-1/8 1-1/4", 24],
  ["1-3/8 1-1/2", 27],
  ["1-3/4 2 2-1/4 2-1/2 2-3/4 3 3-1/4 3-1/2 3-3/4 4", 50],
];

it("A563 over-taps row by row as another copy has them", () => {
  const other = OVER_TAPPED.flatMap(([sizes, thousandths]) => sizes.split(" ").map((size) => [size, thousandths]));
  expect(overTap.rows.map(({ size, allowance }) => [size, allowance / inches(0.001)])).toEqual(other);
});

// portlandbolt.com, "F1554 anchor bolt tolerances", by section 10 of the specification.
it("F1554 tolerances of hooks and threads are those of another copy", () => {
  expect(hookLength.value).toEqual({ perCent: 10, least: inches(0.5) });
  expect([bendAngle.value, bendArea.value, threadLonger.value]).toEqual([5, 90, inches(1)]);
});
