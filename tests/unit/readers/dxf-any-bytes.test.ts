/** A broken file is a finding, never a crash: bytes changed, cut off, put in or repeated at random. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../../src/readers/dxf.js";
import type { Tag } from "../../dxf-by-hand.js";
import { arc, box, bytesOf, circle, fileOf, line, polyline } from "../../dxf-by-hand.js";
import { against, draw, prove, targetOf } from "../../proof-case.js";

const spline: readonly Tag[] = [
  [0, "SPLINE"],
  [8, "CUT"],
  [71, 2],
  ...[0, 0, 0, 1, 1, 1].map((knot): Tag => [40, knot]),
  [10, 20],
  [20, 20],
  [10, 30],
  [20, 20],
  [10, 30],
  [20, 30],
];
const whole = bytesOf(
  fileOf(
    [
      circle(20, 25, 5),
      arc(60, 25, 5, 0, 180),
      line(55, 25, 65, 25),
      polyline(true, [
        [70, 10, 1],
        [80, 10, 1],
      ]),
      spline,
      [
        [0, "ELLIPSE"],
        [8, "CUT"],
        [10, 40],
        [20, 25],
        [11, 5],
        [21, 0],
        [40, 1],
        [41, 0],
        [42, 6.283185307179586],
      ],
      [
        [0, "POLYLINE"],
        [8, "CUT"],
        [70, 1],
        [0, "VERTEX"],
        [10, 5],
        [20, 5],
        [42, 1],
        [0, "VERTEX"],
        [10, 9],
        [20, 5],
        [42, 1],
        [0, "SEQEND"],
      ],
      [
        [0, "INSERT"],
        [8, "CUT"],
        [2, "HOLE"],
        [10, 90],
        [20, 40],
        [41, 1],
        [50, 45],
        [70, 2],
        [44, 3],
      ],
      box,
    ],
    { blocks: [[0, "BLOCK"], [2, "HOLE"], [10, 0], [20, 0], ...circle(0, 0, 1, "0"), [0, "ENDBLK"]] },
  ),
);
const plate = draw(targetOf("T4"));

const change = fc.oneof(
  fc.record({ kind: fc.constant("set" as const), at: fc.nat(), byte: fc.nat(255) }),
  fc.record({ kind: fc.constant("digit" as const), at: fc.nat(), byte: fc.integer({ min: 43, max: 69 }) }),
  fc.record({ kind: fc.constant("drop" as const), at: fc.nat(), byte: fc.nat(40) }),
  fc.record({ kind: fc.constant("repeat" as const), at: fc.nat(), byte: fc.nat(200) }),
  fc.record({ kind: fc.constant("cut" as const), at: fc.nat(), byte: fc.constant(0) }),
);

function broken(bytes: Uint8Array, changes: readonly { kind: string; at: number; byte: number }[]): Uint8Array {
  let made = [...bytes];
  for (const { kind, at, byte } of changes) {
    const place = made.length === 0 ? 0 : at % made.length;
    if (kind === "set" || kind === "digit") made[place] = byte;
    else if (kind === "drop") made.splice(place, byte);
    else if (kind === "repeat") made.splice(place, 0, ...made.slice(place, place + byte));
    else made = made.slice(0, place);
  }
  return Uint8Array.from(made);
}

describe("any bytes", () => {
  it("give a result whose figures are numbers", () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
        const file = readCutFile(broken(whole, changes));
        expect(Number.isNaN(file.cutLength + file.netArea + file.pierces)).toBe(false);
        expect(() => JSON.stringify(file)).not.toThrow();
      }),
      { numRuns: 1500 },
    );
  });

  it("are proved against a job, and their figures are JSON", () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        const proved = prove(broken(plate, changes), "T4.dxf");
        expect(JSON.parse(JSON.stringify(proved)).path).toBe("T4.dxf");
      }),
      { numRuns: 200 },
    );
    expect(against.targets.length).toBeGreaterThan(3);
  });

  it("cut off anywhere are truncated, or told otherwise", () => {
    for (let length = 0; length < whole.length - 5; length += 7) {
      const { findings } = readCutFile(whole.subarray(0, length));
      expect([length, findings.some(({ severity }) => severity === "stop")]).toEqual([length, true]);
    }
  });

  it("of no file at all are findings", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        expect(readCutFile(bytes).findings.some(({ severity }) => severity === "stop")).toBe(true);
      }),
    );
  });
});
