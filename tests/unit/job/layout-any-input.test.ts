/** Whatever stands in the layout's keys: a job or findings with their place, never an exception. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJob } from "../../../src/job/index.js";
import { vocabulary } from "../../../src/tasks/open.js";
import { inputsOf } from "./files.js";

const BASE = "rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { thickness: 1/4 } }";

const scalar = fc.oneof(
  fc.constantFrom(
    "A-1",
    "A",
    "1",
    "A.1",
    "0",
    "-1",
    "25'",
    "6 @ 25'",
    "0 @ 1",
    "1001 @ 1",
    "9007199.3 m",
    "1e9",
    "NaN",
    "~",
    "''",
    "360",
    "-361",
    "B1",
    "CP1",
    "skewed",
    "arc",
    "radial",
    "opposite",
    "ft-us",
    "m",
    "32-30",
    "list.csv",
    "-/-",
    "A--1",
  ),
  fc.string({ maxLength: 8 }).map((text) => JSON.stringify(text)),
  fc.integer().map(String),
);
const value: fc.Arbitrary<string> = fc.letrec<{ value: string }>((tie) => ({
  value: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    scalar,
    fc.array(tie("value"), { maxLength: 4 }).map((items) => `[${items.join(", ")}]`),
    fc
      .array(
        fc.tuple(
          fc.constantFrom(
            "x",
            "y",
            "others",
            "names",
            "at",
            "spacing",
            "from",
            "kind",
            "name",
            "through",
            "center",
            "radius",
            "degrees",
            "base",
            "every",
            "near",
            "offset",
            "turn",
            "hand",
            "point",
            "northing",
            "easting",
            "elevation",
            "plan",
            "origin",
            "bearing",
            "points",
            "scaleFactor",
            "trueNorth",
            "topOfConcrete",
            "file",
            "sheet",
            "unit",
            "order",
          ),
          tie("value"),
        ),
        { maxLength: 5 },
      )
      .map((entries) => `{ ${[...new Map(entries)].map(([key, text]) => `${key}: ${text}`).join(", ")} }`),
  ),
})).value;

const GOOD: Readonly<Record<string, string>> = {
  grid: "{ x: { names: [1, 2], spacing: 25' }, y: { names: [A, B], spacing: 20' }, others: [{ kind: arc, name: K, center: [0, 0], radius: 30' }] }",
  placements: "[{ base: B1, at: [A-1, B-2] }]",
  control: "[{ point: CP1, northing: 1, easting: 2, at: A-1 }, { point: CP2, northing: 1, easting: 9, at: A-2 }]",
  site: "{ trueNorth: 12, scaleFactor: 1 }",
  settingOut: "{ unit: m }",
  lookAlike: "1",
};

function read(changes: Readonly<Record<string, string>>) {
  const keys = Object.entries({ ...GOOD, ...changes }).map(([key, text]) => `${key}: ${text}`);
  const text = ['job: { number: "1" }', "units: in", ...keys, "bases:", `  - { mark: B1, ${BASE}`, ""].join("\n");
  return readJob(inputsOf(text, { "list.csv": "Mark,Grid\nB1,A-1" }), { date: "2026-01-01", vocabulary });
}

describe("any layout", () => {
  it("is read as it is written here", () => {
    expect(read({}).findings).toEqual([]);
  });

  it("gives a job or findings with a place", () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(GOOD)), value, (key, text) => {
        const outcome = read({ [key]: text });
        expect(outcome.ok || outcome.findings.length > 0).toBe(true);
        for (const { at, message } of outcome.findings) {
          expect(at.file).not.toBe("");
          expect(at.line).toBeGreaterThan(0);
          expect(message).not.toBe("");
        }
      }),
      { numRuns: 140 },
    );
  });

  it("refuses more crossings than a layout may have before making them", () => {
    const many = `[${Array.from({ length: 400 }, () => "A").join(", ")}]`;
    const outcome = read({ placements: `[{ base: B1, every: [${many}, ${many.replaceAll("A", "1")}] }]` });
    expect(outcome.findings.map(({ message }) => message)).toEqual([
      "names too many crossings; at most 10000 are allowed",
    ]);
  });
});
