/** A DXF file of the base plate as the second source of a pattern: read, refused, and laid on the rods. */
import { describe, expect, it } from "vitest";
import { patternMatch } from "../../../src/checks/rules/pattern-match.js";
import { requestedFiles } from "../../../src/job/index.js";
import type { PatternOrigin, SecondSourceHole } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { inches } from "../../../src/units/index.js";
import type { Tag } from "../../dxf-by-hand.js";
import { bytesOf, circle, fileOf, polyline } from "../../dxf-by-hand.js";
import { hasClause, rowsOf } from "../checks/context.js";
import { faultsOf, inputsOf, jobOf, withBase } from "./files.js";

const INCH: readonly Tag[] = [
  [9, "$ACADVER"],
  [1, "AC1015"],
  [9, "$INSUNITS"],
  [70, 1],
  [9, "$MEASUREMENT"],
  [70, 0],
];
/** A plate of 18 x 16 with its lower left at 0,0: the usual way of a shop's file. Holes of 2-1/16. */
const plateOf = (
  centers: readonly (readonly [number, number])[],
  more: readonly (readonly Tag[])[] = [],
  radius = 1.03125,
) =>
  bytesOf(
    fileOf(
      [
        ...centers.map(([x, y]) => circle(x, y, radius)),
        ...more,
        polyline(true, [
          [0, 0],
          [18, 0],
          [18, 16],
          [0, 16],
        ]),
      ],
      { head: INCH },
    ),
  );
const RIGHT = [
  [3, 13],
  [15, 13],
  [15, 3],
  [3, 3],
] as const;
const job = (from: string) => withBase({ basePlate: `{ x: 18, y: 16, hole: 2-1/16, from: ${from} }` });
const sourceOf = (bytes: Uint8Array, from = "bp.dxf") => jobOf(job(from), { "bp.dxf": bytes }).bases[0]?.basePlate;
/** Rods of the fixture: 12 x 10 about 0,0, base-plate holes of 2-1/16. */
const rows = (bytes: Uint8Array, from?: string) => {
  const plate = sourceOf(bytes, from);
  if (plate === undefined) throw new Error("no base");
  return rowsOf(patternMatch, { basePlate: { pattern: plate.pattern, patternOrigin: plate.patternOrigin } });
};
const failing = (bytes: Uint8Array, from?: string) => rows(bytes, from).filter(({ status }) => status === "fail");

describe("basePlate.from", () => {
  it("is asked for, once, beside the job", () => {
    const requests = requestedFiles(inputsOf(job("bp.dxf")));
    expect(requests.filter(({ kind }) => kind === "base plate")).toMatchObject([
      { name: "bp.dxf", relativeTo: "job", at: { file: expect.any(String), path: "basePlate.from" } },
    ]);
    expect(requestedFiles(inputsOf(job("{ file: bp.dxf }")))).toHaveLength(requests.length);
  });

  it("gives the round holes, exact to the nanometre", () => {
    expect(sourceOf(plateOf(RIGHT))).toMatchObject({
      patternOrigin: "any",
      pattern: {
        from: "bp.dxf",
        value: [{ at: { x: inches(3), y: inches(13) }, diameter: { value: inches(2.0625) } }, {}, {}, {}],
      },
    });
  });

  it.each([
    [
      "a file that is not there",
      job("other.dxf"),
      "there is no file other.dxf; allowed is a DXF file beside the job file",
    ],
    [
      "a source beside it",
      withBase({ basePlate: "{ from: bp.dxf, pattern: { at: [[0, 0]] } }" }),
      "is given beside pattern",
    ],
    ["an origin that is none", job("{ file: bp.dxf, origin: corner }"), '"corner" is not allowed'],
  ])("%s is a fault", (_, text, message) => {
    expect(faultsOf(text, { "bp.dxf": plateOf(RIGHT) }).join("\n")).toContain(message);
  });

  it("of holes farther away than any plate is drawn is a fault: 100 km, and beyond what nanometres hold", () => {
    const farOff = (x: number) => faultsOf(job("bp.dxf"), { "bp.dxf": plateOf([...RIGHT, [x, 3]]) }).join("\n");
    const words = "too-far: entities farther than 100 km from 0,0 are not read: is the unit right?";
    for (const x of [4_000_000, -4_000_000, 360_000_000_000, 1e15]) expect(farOff(x)).toContain(words);
    expect(farOff(3_900_000)).not.toContain("too-far");
  });

  it.each([
    [
      "a hole twice",
      plateOf([...RIGHT, [3, 3]]),
      "basePlate.from: bp.dxf: duplicate: drawn twice: it would be cut twice at 3, 3",
    ],
    [
      "no unit",
      bytesOf(
        fileOf(
          [
            circle(50, 25, 5),
            polyline(true, [
              [0, 0],
              [100, 0],
              [100, 50],
            ]),
          ],
          { head: [] },
        ),
      ),
      "bp.dxf: no-unit",
    ],
    ["no holes", plateOf([]), "bp.dxf has 0 round holes; allowed are 1 to 200"],
    ["a drawing in another format", bytesOf("AC1032\0"), "bp.dxf: dwg"],
  ])("a file with a stop is a fault: %s", (_, bytes, message) => {
    expect(faultsOf(job("bp.dxf"), { "bp.dxf": bytes }).join("\n")).toContain(message);
  });
});

describe("pattern-match by a file", () => {
  it("agrees at any origin", () => {
    expect(failing(plateOf(RIGHT))).toEqual([]);
    expect(rows(plateOf(RIGHT))).toHaveLength(1 + 3 * 4);
  });

  it("at the working point is held to its origin", () => {
    expect(failing(plateOf(RIGHT), "{ file: bp.dxf, origin: working point }").length).toBeGreaterThan(3);
    const centred = bytesOf(
      fileOf(
        [
          ...RIGHT.map(([x, y]) => circle(x - 9, y - 8, 1.03125)),
          polyline(true, [
            [-9, -8],
            [9, -8],
            [9, 8],
            [-9, 8],
          ]),
        ],
        {
          head: INCH,
        },
      ),
    );
    expect(failing(centred, "{ file: bp.dxf, origin: working point }")).toEqual([]);
  });

  it("one hole off is one hole off: the others are not pulled along", () => {
    const off = failing(plateOf([[3.25, 13], ...RIGHT.slice(1)]));
    expect(off.map(({ subject }) => subject)).toEqual(["A1", "BP1"]);
    expect(off[0]).toMatchObject({ severity: "stop", value: { twice: 2 * inches(0.25) } });
  });

  it("a plate that is turned fails, and it is said how it would agree", () => {
    const turned = plateOf([
      [4, 2],
      [14, 2],
      [14, 14],
      [4, 14],
    ]);
    const [count, ...others] = rows(turned);
    expect(others.filter(({ status }) => status === "fail").length).toBeGreaterThan(3);
    expect(count?.note).toContain("the holes would agree turned by 90 degrees");
  });

  it("leaves out a grout hole, which is of no rod's size and near no rod, and says so", () => {
    const source = rows(plateOf(RIGHT, [circle(9, 8, 1.5)]));
    expect(source.filter(({ status }) => status === "fail")).toEqual([]);
    expect(source[0]?.note).toContain("BP5 left out");
    expect(failing(plateOf([...RIGHT, [9, 8]]))[0]).toMatchObject({ subject: "plate" });
  });

  // 0.0005 in = 12 700 nm: the rounding of three decimals of an inch. Coordinates in inches, six decimals, 25.4 nm each.
  it.each([
    [-1, "pass"],
    [0, "pass"],
    [1, "fail"],
  ])("holds each hole to 12 700 nm: %i nm", (delta, status) => {
    const size = (inches(2.0625) + 12_700 + delta) as Length;
    const plate = sourceOf(plateOf(RIGHT));
    if (plate?.pattern.kind !== "given") throw new Error("no source");
    const [first, ...others] = plate.pattern.value;
    if (first === undefined) throw new Error("no hole");
    const sized = { ...first, diameter: { kind: "given", value: size, from: "bp.dxf" } as const };
    const rowsWith = (hole: SecondSourceHole, patternOrigin: PatternOrigin) =>
      rowsOf(patternMatch, { basePlate: { pattern: given([hole, ...others], "bp.dxf"), patternOrigin } });
    expect(rowsWith(sized, "any").find(hasClause("BP1", "hole size"))?.status).toBe(status);
    const at = { x: inches(-6), y: (inches(5) + 12_700 + delta) as Length };
    expect(rowsWith({ ...first, at }, "working point").find(hasClause("BP1", "every hole"))?.status).toBe(status);
  });
});
