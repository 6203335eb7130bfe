import { describe, expect, it } from "vitest";
import { lengthSlip } from "../../../src/checks/rules/length-slip.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { inch, isSubject, plus, rowsOf } from "./context.js";

const at = { x: nanometres(0), y: nanometres(0) };
const square = { kind: "square" } as const;
const plate = (x: number, y: number) =>
  given({ kind: "rectangle", x: inch(x), y: inch(y), corner: square } as const, "job");
const auto = { outline: { kind: "auto", corner: square }, opening: { kind: "none" } } as const;

describe("length-slip: rods 1-1/4 at 12 x 10", () => {
  it("has one row for all that is in proportion", () => {
    expect(rowsOf(lengthSlip)).toMatchObject([
      { subject: "lengths", status: "pass", note: "15 lengths in proportion to rods and pattern" },
    ]);
  });

  // Projection: 30 diameters, 37-1/2. A row stands there only when it fails: at the limit all lengths pass together.
  it.each([
    [0, "lengths", "pass"],
    [1, "projection", "fail"],
  ])("projection at 37-1/2 + %d nm", (delta, subject, status) => {
    const [row] = rowsOf(lengthSlip, { rod: { projection: given(plus(inch(37.5), delta), "job") } });
    expect(row).toMatchObject({ subject, status });
  });

  // Projection 9 + embedment 24 + 8 diameters for the lower end: 43. Without embedment 60 diameters, 75.
  it.each([
    [9, 24, 43, 0, "pass"],
    [9, 24, 43, 1, "fail"],
    [9, null, 75, 0, "pass"],
    [9, null, 75, 1, "fail"],
  ] as const)(
    "a thread with projection %d and embedment %s at %d + %d nm: %s",
    (projection, embedment, most, delta, status) => {
      const rod = {
        projection: given(inch(projection), "job"),
        embedment: embedment === null ? missing("rods.embedment", "none") : given(inch(embedment), "job"),
        length: missing("rods.length", "none"),
        threadLength: given(plus(inch(most), delta), "job"),
      };
      expect(rowsOf(lengthSlip, { rod })[0]).toMatchObject({
        subject: status === "pass" ? "lengths" : "thread length",
        status,
      });
    },
  );

  // 1-1/2 diameters of 1-1/4: 1-7/8. Table 2.3 of Design Guide 1 goes to 7/8 for 2-1/2.
  it.each([
    [0, "lengths", "pass"],
    [1, "washer thickness", "fail"],
  ])("washer thickness at 1-7/8 + %d nm", (delta, subject, status) => {
    const washer = given(
      { shape: "square", size: inch(3), thickness: given(plus(inch(1.875), delta), "job") } as const,
      "job",
    );
    expect(rowsOf(lengthSlip, { group: { washer } })[0]).toMatchObject({ subject, status });
  });

  it.each<[string, Changes, string, string, string]>([
    [
      "thread of 60 in a rod of 33",
      { rod: { threadLength: given(inch(60), "job") } },
      "thread length",
      "ask",
      "5 ft where 5 in is meant?",
    ],
    [
      "projection in feet",
      { rod: { projection: given(inch(108), "job") } },
      "projection",
      "ask",
      "9 ft where 9 in is meant?",
    ],
    [
      "projection in millimetres",
      { rod: { projection: given(inch(230), "job") } },
      "projection",
      "ask",
      "230 in where 230 mm is meant?",
    ],
    [
      "projection read as millimetres",
      { rod: { projection: given(millimetres(9), "job") } },
      "projection",
      "ask",
      "9 mm where 9 in is meant?",
    ],
    [
      "embedment in feet",
      { rod: { embedment: given(inch(288), "job") } },
      "embedment",
      "ask",
      "24 ft where 24 in is meant?",
    ],
    [
      "rod length in feet",
      { rod: { length: given(inch(432), "job") } },
      "rod length",
      "ask",
      "36 ft where 36 in is meant?",
    ],
    [
      "thread length in feet",
      { rod: { threadLength: given(inch(96), "job") } },
      "thread length",
      "ask",
      "8 ft where 8 in is meant?",
    ],
    [
      "base plate in feet",
      { basePlate: { shape: plate(216, 16) } },
      "base plate x",
      "ask",
      "18 ft where 18 in is meant?",
    ],
    [
      "base plate's thickness in millimetres",
      { basePlate: { thickness: given(inch(38), "job") } },
      "base plate thickness",
      "advise",
      "38 in where 38 mm is meant?",
    ],
    ["grout in feet", { base: { grout: given(inch(24), "job") } }, "grout", "ask", "2 ft where 2 in is meant?"],
    ["pier in feet", { concrete: { shape: plate(24, 288) } }, "concrete y", "advise", "24 ft where 24 in is meant?"],
    [
      "washer in feet",
      {
        group: { washer: given({ shape: "square", size: inch(36), thickness: missing("t", "none") } as const, "job") },
      },
      "washer size",
      "ask",
      "3 ft where 3 in is meant?",
    ],
    [
      "pattern in feet",
      {
        group: { pattern: { kind: "rectangle", x: inch(144), y: inch(10), nx: 2, ny: 2, perimeter: false } },
        template: auto,
      },
      "pattern x",
      "ask",
      "12 ft where 12 in is meant?",
    ],
    [
      "outline in feet",
      { template: { outline: { kind: "rectangle", x: inch(216), y: inch(14), at, corner: square } } },
      "outline x",
      "stop",
      "18 ft where 18 in is meant?",
    ],
  ])("%s", (_name, changes, subject, severity, words) => {
    const row = rowsOf(lengthSlip, changes).find(isSubject(subject));
    expect(row).toMatchObject({ status: "fail", severity });
    expect(row?.note).toContain(words);
  });

  it.each<[string, Changes, string]>([
    ["wrench room", { rod: { wrenchRoom: given(inch(48), "job") } }, "wrench room"],
    [
      "a plate at the lower end",
      {
        rod: {
          bottom: given(
            { kind: "plate", nuts: 2, tackWelded: false, shape: "square", size: inch(48), thickness: inch(1) },
            "job",
          ),
        },
      },
      "bottom plate size",
    ],
    ["a hook", { rod: { bottom: given({ kind: "hook", reach: inch(60), radius: null }, "job") } }, "hook"],
    ["a nail hole", { template: { nailHoles: [{ at, diameter: inch(3) }] } }, "nail hole"],
    [
      "a column wider than its base plate",
      { base: { column: given({ kind: "pipe", diameter: inch(96), at }, "job") } },
      "column diameter",
    ],
    [
      "a bolt circle",
      {
        group: { pattern: { kind: "circle", diameter: inch(288), count: 4, start: { kind: "straddle" } } },
        template: auto,
      },
      "bolt circle",
    ],
  ])("asks about %s in another unit", (_name, changes, subject) => {
    const row = rowsOf(lengthSlip, changes).find(isSubject(subject));
    expect(row).toMatchObject({ status: "fail", severity: "ask" });
    expect(row?.note).toMatch(/ (ft|in) where .* (in|mm) is meant\?$/);
  });

  it("only advises where no slip explains it", () => {
    const [row] = rowsOf(lengthSlip, { rod: { projection: given(inch(41.30001), "job") } });
    expect(row).toMatchObject({ subject: "projection", status: "fail", severity: "advise" });
    expect(row?.note).toBe("41.3, where 1-1/4 to 37-1/2 is usual beside these rods");
  });

  it("does not apply where the base gives nothing to hold", () => {
    const none = missing("none", "none");
    const lengths = { projection: none, embedment: none, threadLength: none };
    const pattern = {
      kind: "points",
      at: [
        { x: inch(0), y: inch(0) },
        { x: inch(9), y: inch(0) },
      ],
    } as const;
    const rows = rowsOf(lengthSlip, {
      rod: lengths,
      group: { pattern, washer: none },
      base: {
        grout: none,
        basePlate: { shape: none, thickness: none, at, pattern: none, patternOrigin: "as listed", groutHoles: [] },
      },
      concrete: { shape: none },
      template: auto,
    });
    expect(rows.map(({ status, subject }) => [status, subject])).toEqual([["not-applicable", "lengths"]]);
  });

  it("a whole job in millimetres is guessed as that", () => {
    const changes: Changes = {
      rod: {
        projection: given(inch(230), "job"),
        embedment: given(inch(600), "job"),
        threadLength: given(inch(180), "job"),
      },
      base: { grout: given(inch(36), "job") },
    };
    for (const { note } of rowsOf(lengthSlip, changes)) expect(note).toMatch(/in where \d+ mm is meant\?$/);
  });

  // A post's template may be far longer than its rods are apart: it lies on a form that the job does not give.
  it.each([
    [48, 0, "pass"],
    [72, 0, "pass"],
    [72, 1, "fail"],
    [80, 0, "fail"],
  ])("an outline of %d in + %d nm on a form that is not given holds nothing: %s", (x, delta, status) => {
    const outline = { kind: "rectangle", x: plus(inch(x), delta), y: inch(14), at, corner: square } as const;
    const concrete = { shape: missing("concrete", "none given") };
    const [row] = rowsOf(lengthSlip, { template: { outline }, concrete });
    expect(row).toMatchObject({ status, severity: status === "pass" ? "ask" : "advise" });
  });

  it("guesses no slip that leaves less plate than the rods stand on", () => {
    const outline = (x: number) => ({ kind: "rectangle", x: inch(x), y: inch(14), at, corner: square }) as const;
    const concrete = { shape: missing("concrete", "none given") };
    const rowOf = (x: number) => rowsOf(lengthSlip, { template: { outline: outline(x) }, concrete })[0];
    // 110 mm are 4.33 in, a tenth is 11; the rods' lesser gauge and a diameter are 11-1/4
    expect(rowOf(110)).toMatchObject({ severity: "advise", note: expect.not.stringContaining("is meant?") });
    expect(rowOf(290)).toMatchObject({
      severity: "stop",
      note: expect.stringContaining("290 in where 290 mm is meant?"),
    });
  });

  it("a long outline is plausible across a wide pier", () => {
    const outline = { kind: "rectangle", x: inch(100), y: inch(14), at, corner: square } as const;
    expect(rowsOf(lengthSlip, { template: { outline } })[0]).toMatchObject({
      subject: "outline x",
      severity: "advise",
    });
    expect(rowsOf(lengthSlip, { template: { outline }, concrete: { shape: plate(96, 24) } })[0]?.status).toBe("pass");
  });
});
