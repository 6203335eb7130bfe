/** Plates of every kind for the tests of sheets. Invented data. */

import { type Base, given, missing } from "../../../src/job/model/job.js";
import type { SheetRequest } from "../../../src/sheets/index.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";
import { sheetCase } from "./sheet-case.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const mm = (x: number, y: number) => ({ x: millimetres(x), y: millimetres(y) });
const b = baseFixture();
const metricJob = jobFixture({
  unit: "mm",
  title: "Maschinenhalle Nord, Achse 4 bis 9",
  editions: {
    set: "metric",
    templateHoles: "ISO 273",
    baseHoles: "d + 6 mm",
    placing: "EN 1090-2:2008",
    edges: "EN 1993-1-8:2005",
    concrete: "ACI 318-19",
  },
});
const metricGroup = (x: number, y: number, nx = 2, ny = 2, perimeter = false) =>
  groupFixture(
    {
      pattern: { kind: "rectangle", x: millimetres(x), y: millimetres(y), nx, ny, perimeter },
      hole: given(millimetres(33), "ISO 273"),
      baseHole: given(millimetres(36), "job"),
      tableHole: given(millimetres(33), "ISO 273"),
      washer: given({ shape: "round", size: millimetres(56), thickness: given(millimetres(5), "job") } as const, "job"),
    },
    {
      size: "M30",
      diameter: millimetres(30),
      grade: given("ISO 898-1 8.8", "job"),
      projection: given(millimetres(220), "job"),
      embedment: given(millimetres(600), "job"),
    },
  );
const metricBase = (x: number, y: number, g: Base["groups"], c: Partial<Base["template"]> = {}): Base =>
  baseFixture({
    groups: g,
    basePlate: {
      ...b.basePlate,
      shape: given(
        { kind: "rectangle", x: millimetres(x * 0.9), y: millimetres(y * 0.9), corner: { kind: "square" } } as const,
        "job",
      ),
    },
    concrete: {
      ...b.concrete,
      shape: given(
        { kind: "rectangle", x: millimetres(x * 0.95), y: millimetres(y * 0.95), corner: { kind: "square" } } as const,
        "job",
      ),
    },
    template: {
      ...b.template,
      thickness: millimetres(8),
      outline: {
        kind: "rectangle",
        x: millimetres(x),
        y: millimetres(y),
        at: mm(0, 0),
        corner: { kind: "round", radius: millimetres(20) },
      },
      opening: { kind: "circle", diameter: millimetres(160), at: mm(0, 0) },
      ...c,
    },
  });
const circleBase = (n: number, ring = false): Base =>
  baseFixture({
    mark: "M1",
    groups: [
      groupFixture({ pattern: { kind: "circle", diameter: inches(24), count: n, start: { kind: "straddle" } } }),
    ],
    basePlate: { ...b.basePlate, shape: given({ kind: "circle", diameter: inches(28) } as const, "job") },
    concrete: { ...b.concrete, shape: given({ kind: "circle", diameter: inches(30) } as const, "job") },
    template: {
      ...b.template,
      mark: "TM1",
      outline: ring
        ? { kind: "ring", outer: inches(30), inner: inches(18), at: at(0, 0) }
        : { kind: "circle", diameter: inches(30), at: at(0, 0) },
      opening: ring ? { kind: "none" } : { kind: "circle", diameter: inches(10), at: at(0, 0) },
    },
  });
export const sheetCases: Readonly<Record<string, () => SheetRequest>> = {
  simple: () => sheetCase(jobFixture(), b),
  prelim: () =>
    sheetCase(
      jobFixture({
        status: "preliminary",
        drawing: { number: "", revision: "" },
        owner: "Halvorsen Steel Fabricators",
        drawnBy: "R. Osei",
      }),
      b,
      {
        held: [
          "Template hole A1 as cut: 1.2450 is less than rod and zinc 1.2570 (stop).",
          "Nut room A1-A2: 2.31 exceeds 2.00",
        ],
        cutFiles: [],
      },
    ),
  small: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        mark: "P1",
        groups: [
          groupFixture(
            {
              pattern: { kind: "rectangle", x: inches(3), y: inches(3), nx: 2, ny: 2, perimeter: false },
              hole: given(inches(0.8125), "x"),
            },
            { size: "3/4", diameter: inches(0.75) },
          ),
        ],
        basePlate: {
          ...b.basePlate,
          shape: given({ kind: "rectangle", x: inches(6), y: inches(6), corner: { kind: "square" } } as const, "job"),
        },
        template: {
          ...b.template,
          mark: "TP1",
          outline: { kind: "rectangle", x: inches(6), y: inches(6), at: at(0, 0), corner: { kind: "square" } },
          opening: { kind: "none" },
        },
      }),
    ),
  big: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        mark: "TANK-FOUNDATION-1",
        groups: [
          groupFixture({
            pattern: { kind: "rectangle", x: inches(132), y: inches(60), nx: 11, ny: 6, perimeter: true },
          }),
        ],
        concrete: { ...b.concrete, shape: missing("concrete", "x") },
        template: {
          ...b.template,
          outline: { kind: "rectangle", x: inches(144), y: inches(72), at: at(0, 0), corner: { kind: "square" } },
          opening: { kind: "rectangle", x: inches(100), y: inches(36), radius: inches(3), at: at(0, 0) },
        },
      }),
    ),
  grid40: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [
          groupFixture({
            pattern: { kind: "rectangle", x: inches(28), y: inches(16), nx: 8, ny: 5, perimeter: false },
          }),
        ],
        template: {
          ...b.template,
          outline: {
            kind: "rectangle",
            x: inches(36),
            y: inches(24),
            at: at(0, 0),
            corner: { kind: "round", radius: inches(1) },
          },
          opening: { kind: "none" },
        },
      }),
    ),
  circle8: () => sheetCase(jobFixture(), circleBase(8)),
  circle4: () => sheetCase(jobFixture(), circleBase(4)),
  ring12: () => sheetCase(jobFixture(), circleBase(12, true)),
  ring24: () => sheetCase(jobFixture(), circleBase(24, true)),
  two: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [
          groupFixture(),
          groupFixture(
            {
              letter: "B",
              pattern: { kind: "rectangle", x: inches(6), y: inches(14), nx: 2, ny: 2, perimeter: false },
              hole: given(inches(0.9375), "x"),
            },
            { size: "7/8", diameter: inches(0.875) },
          ),
        ],
        template: {
          ...b.template,
          outline: {
            kind: "rectangle",
            x: inches(24),
            y: inches(20),
            at: at(0, 0),
            corner: { kind: "notch", x: inches(1.5), y: inches(1) },
          },
          opening: { kind: "rectangle", x: inches(6), y: inches(5), radius: inches(1), at: at(0, 0) },
          key: "auto",
          nailHoles: [
            { at: at(11, 9), diameter: inches(0.1875) },
            { at: at(-11, 9), diameter: inches(0.1875) },
            { at: at(11, -8), diameter: inches(0.1875) },
            { at: at(-11, -8), diameter: inches(0.1875) },
          ],
        },
      }),
    ),
  brace: () =>
    sheetCase(
      jobFixture({
        title:
          "Packing hall for the northern district with a very long title that goes on beyond anything reasonable for a job",
      }),
      baseFixture({
        mark: `BR-${"LONGMARK-".repeat(6)}XYZ`,
        groups: [
          groupFixture({
            pattern: { kind: "lines", x: [-12, -4, 4, 12].map(inches), y: [-7, 7].map(inches), perimeter: false },
          }),
        ],
        template: {
          ...b.template,
          mark: `T-${"LONGMARK-".repeat(6)}WXYZ`,
          outline: {
            kind: "rectangle",
            x: inches(32),
            y: inches(20),
            at: at(2, 0),
            corner: { kind: "chamfer", x: inches(2), y: inches(2) },
          },
        },
      }),
    ),
  offset: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [
          groupFixture({
            pattern: { kind: "points", at: [at(2, 3), at(13.0625, 3), at(13.0625, 14.5), at(4.1, 13.33)] },
          }),
        ],
        basePlate: { ...b.basePlate, at: at(8, 8) },
        concrete: { ...b.concrete, at: at(8, 8) },
        template: {
          ...b.template,
          outline: {
            kind: "polygon",
            at: [at(-3, -2), at(18, -2), at(18, 19), at(6, 19), at(-3, 10)],
            corner: { kind: "square" },
          },
          opening: { kind: "circle", diameter: inches(4), at: at(8, 8) },
        },
      }),
    ),
  metric: () =>
    sheetCase(metricJob, metricBase(560, 420, [metricGroup(380, 260)]), { weight: { value: 13.27, unit: "kg" } }),
  metric6: () =>
    sheetCase(metricJob, metricBase(1200, 800, [metricGroup(1000, 600, 3, 2)]), {
      weight: { value: 13.27, unit: "kg" },
    }),
  ply: () =>
    sheetCase(
      jobFixture({ shop: shopFixture({ marking: { ...shopFixture().marking, how: "paint" } }) }),
      baseFixture({ template: { ...b.template, material: "plywood", thickness: inches(0.75) } }),
      { cutFiles: [], drillListName: "T1-rev-B-drill-list.csv", weight: null },
    ),
  one: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        member: "post",
        groups: [groupFixture({ pattern: { kind: "points", at: [at(0, 0)] } })],
        template: {
          ...b.template,
          outline: { kind: "rectangle", x: inches(8), y: inches(8), at: at(0, 0), corner: { kind: "square" } },
          opening: { kind: "none" },
        },
      }),
    ),
  p200: () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [
          groupFixture({
            pattern: { kind: "rectangle", x: inches(114), y: inches(54), nx: 20, ny: 10, perimeter: false },
          }),
        ],
        template: {
          ...b.template,
          outline: { kind: "rectangle", x: inches(120), y: inches(60), at: at(0, 0), corner: { kind: "square" } },
          opening: { kind: "none" },
        },
      }),
    ),
};
