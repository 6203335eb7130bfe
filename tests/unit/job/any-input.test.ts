/** Whatever is handed in, a job is read or refused with findings; nothing is thrown. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJob } from "../../../src/job/index.js";
import { vocabulary } from "../../../src/tasks/open.js";
import { inputsOf, withBase } from "./files.js";

const options = { date: "2026-01-01", vocabulary };

function isAnswered(job: string | Uint8Array, files: Record<string, string | Uint8Array> = {}): boolean {
  const read = readJob(inputsOf(job, files), options);
  return read.ok || read.findings.every(({ message, at }) => message !== "" && at.file !== "");
}

const whole = withBase({
  rods: "{ diameter: 1-1/4, grade: 55, finish: galvanized, projection: 9, embedment: 24, bottom: nut }",
  basePlate: "{ x: 18, y: 16, hole: 2-1/16, washer: { shape: square, size: 3, thickness: 1/2 } }",
  template:
    "{ thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18, corner: { kind: chamfer, size: 1 } }, opening: { diameter: 6 } }",
});

describe("readJob", () => {
  it("answers any text and any bytes", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.uint8Array()), (job) => isAnswered(job)),
      { numRuns: 250 },
    );
  });

  it("answers a job with a piece cut out, doubled, or replaced", () => {
    const piece = fc.constantFrom(
      "",
      "~",
      "[]",
      "{}",
      "0",
      "-1",
      "1e9",
      ".nan",
      '"',
      ": ",
      "x",
      "[1, 2]",
      "*a",
      "&a ",
      "\t",
      "\u0000",
      "CON",
    );
    const change = fc.tuple(fc.nat(whole.length), fc.nat(20), piece);
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const job = changes.reduce(
          (text, [at, length, put]) => text.slice(0, at) + put + text.slice(at + length),
          whole,
        );
        return isAnswered(job);
      }),
      { numRuns: 300 },
    );
  });

  it("answers any value at any key", () => {
    const value = fc.jsonValue({ maxDepth: 3 });
    const keys = ["rods", "pattern", "basePlate", "template", "concrete", "column", "groups", "mark", "grout"] as const;
    fc.assert(
      fc.property(fc.constantFrom(...keys), value, (key, json) =>
        isAnswered(withBase({ [key]: JSON.stringify(json) })),
      ),
      { numRuns: 180 },
    );
  });

  it("answers any schedule", () => {
    const job = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
    const cell = fc.oneof(
      fc.constantFrom(
        "Mark",
        "Rod dia",
        "X",
        "Y (mm)",
        "Template thk",
        "Outline",
        "Points",
        "B1",
        "1",
        "1/4",
        "20 x 18",
        "ring 2 / 1",
        "-",
        "",
        "1,2; 3,4",
      ),
      fc.string({ maxLength: 8 }),
    );
    const rows = fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 6 });
    fc.assert(
      fc.property(rows, fc.constantFrom(",", ";", "\t"), (table, separator) =>
        isAnswered(job, {
          "s.csv": `Mark${separator}Rod dia${separator}X\n${table.map((row) => row.join(separator)).join("\n")}`,
        }),
      ),
      { numRuns: 180 },
    );
  });

  it("the job of these tests has no fault to begin with", () => {
    expect(readJob(inputsOf(whole), options).findings).toEqual([]);
  });
});
