/** Files of plates, drawn by hand with one fault each, against their job. */
import { describe, expect, it } from "vitest";
import type { Point } from "../../../src/geometry/vocabulary.js";
import { againstJob, proveFile } from "../../../src/proof/index.js";
import { inches } from "../../../src/units/length.js";
import { withRods } from "../../fixture.js";
import type { Drawing, Drawn } from "../../proof-case.js";
import { against, codesOf, draw, INCH_HEAD, job, prove, targetOf } from "../../proof-case.js";

const turned = (degrees: number, by: Point = { x: 0, y: 0 }) => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ({ x, y }: Point): Point => ({ x: cos * x - sin * y + by.x, y: sin * x + cos * y + by.y });
};
const mirror = ({ x, y }: Point): Point => ({ x: -x, y });
const holesMoved = (mark: string, move: (point: Point) => Point): Drawn => {
  const { holes, outline } = targetOf(mark);
  return { outline, holes: holes.map((hole) => ({ ...hole, at: move(hole.at) })) };
};
const change = (mark: string, tag: string, by: Partial<{ dx: number; dy: number; diameter: number }>): Drawn => {
  const { holes, outline } = targetOf(mark);
  return {
    outline,
    holes: holes.map((hole) => {
      if (hole.tag !== tag) return hole;
      const { dx = 0, dy = 0, diameter = 0 } = by;
      return { ...hole, at: { x: hole.at.x + dx, y: hole.at.y + dy }, diameter: hole.diameter + diameter };
    }),
  };
};
const without = (mark: string, ...tags: readonly string[]): Drawn => {
  const { holes, outline } = targetOf(mark);
  return { outline, holes: holes.filter(({ tag }) => !tags.includes(tag)) };
};
const withHole = (mark: string, x: number, y: number, diameter: number): Drawn => {
  const { holes, outline } = targetOf(mark);
  return { outline, holes: [...holes, { tag: "", at: { x, y }, diameter, made: "cut" }] };
};

describe("a file that is right", () => {
  it.each([
    ["as it is", {}, { turn: 0, mirrored: false }],
    ["at another origin", { move: turned(0, { x: 330.2, y: 228.6 }) }, { turn: 0, mirrored: false }],
    ["turned by 90", { move: turned(90, { x: 7, y: -3 }) }, { turn: 90, mirrored: false }],
    ["turned by 213.7", { move: turned(213.7, { x: 1e4, y: 0 }) }, { turn: 213.7, mirrored: false }],
  ] as const)("%s", (_, drawing: Drawing, place) => {
    const file = prove(draw(targetOf("T4"), drawing), "T4.dxf");
    expect(codesOf(file, "stop")).toEqual([]);
    expect(file.match).toMatchObject({ mark: "T4", base: "B4", role: "template", scale: 1, missing: 0, extra: 0 });
    expect(file.match?.turn).toBeCloseTo(place.turn, 3);
    expect(file.match?.mirrored).toBe(place.mirrored);
    expect(file.match?.positionError).toBeLessThan(1e-5);
    expect(codesOf(file, "advise").includes("turned")).toBe(place.turn !== 0);
  });

  it("of a symmetric pattern is neither turned nor mirrored", () => {
    const file = prove(draw(targetOf("T1"), { move: mirror, mirrored: true }), "T1.dxf");
    expect(codesOf(file, "stop")).toEqual([]);
    expect(file.match).toMatchObject({ turn: 0, mirrored: false });
  });

  it("in millimetres for a job in inches is right", () => {
    const head = INCH_HEAD.map(([code, value]) => [code, value === 1 ? 4 : value === 0 ? 1 : value] as const);
    const file = prove(draw(targetOf("T1"), { mm: 1, head }), "T1.dxf");
    expect(codesOf(file, "stop")).toEqual([]);
    expect(file).toMatchObject({ unit: "mm", match: { mark: "T1", scale: 1 } });
  });

  it("of a base plate is told by its holes", () => {
    const { holes, outline } = targetOf("B1");
    const file = prove(draw({ holes, outline }), "base plate.dxf");
    expect(file.match).toMatchObject({ mark: "B1", role: "base plate" });
    expect(codesOf(file, "stop")).toEqual([]);
    const grout = prove(
      draw({ outline, holes: [...holes, { tag: "", at: { x: 0, y: 0 }, diameter: 50, made: "cut" }] }),
      "B1.dxf",
    );
    expect(codesOf(grout, "stop")).toEqual([]);
    expect(codesOf(grout, "advise")).toContain("hole-other");
  });

  it("of the plate that its name says is laid on no other", () => {
    let laid = 0;
    const others = against.targets.filter(({ mark, bases }) => mark !== "T4" && !bases.includes("T4"));
    const watched = others.map((target) => ({
      ...target,
      get outline() {
        laid += 1;
        return target.outline;
      },
    }));
    const other = { ...against, targets: [...watched, targetOf("T4")] };
    const bytes = draw(targetOf("T4"), {});
    expect(proveFile(bytes, "cut/T4_2-off.dxf", other)).toEqual(proveFile(bytes, "cut/T4_2-off.dxf", against));
    expect(laid).toBe(0);
    expect(proveFile(bytes, "cut/plate.dxf", other).match?.mark).toBe("T4");
    expect(laid).toBeGreaterThan(0);
  });

  it("that fits two marks says so", () => {
    const [first] = job.bases;
    if (first === undefined) throw new Error("no base");
    const twin = { ...first, mark: "B9", template: { ...first.template, mark: "T9" } };
    const twins = againstJob(withRods({ ...job, bases: [...job.bases, twin] }));
    const bytes = draw(targetOf("T1"));
    expect(codesOf(proveFile(bytes, "plate.dxf", twins), "advise")).toContain("several-marks");
    expect(proveFile(bytes, "T9_rev-B.dxf", twins)).toMatchObject({ match: { mark: "T9" } });
    expect(codesOf(proveFile(bytes, "T9_rev-B.dxf", twins), "stop")).toEqual([]);
  });
});

const faults: readonly (readonly [code: string, what: string, name: string, bytes: Uint8Array])[] = [
  ["hole-position", "a hole off by 0.1 mm", "T4.dxf", draw(change("T4", "A2", { dx: 0.1 }))],
  ["hole-position", "a hole off by half an inch", "T4.dxf", draw(change("T4", "A3", { dy: 12.7 }))],
  ["hole-diameter", "a hole too large by 0.1 mm", "T4.dxf", draw(change("T4", "A1", { diameter: 0.1 }))],
  ["hole-diameter", "an opening too small", "T4.dxf", draw(change("T4", "OP1", { diameter: -25.4 }))],
  ["hole-missing", "a hole left out", "T4.dxf", draw(without("T4", "A3"))],
  ["hole-missing", "the opening left out", "T4.dxf", draw(without("T4", "OP1"))],
  ["hole-extra", "a hole too many", "T4.dxf", draw(withHole("T4", 250, 150, 20))],
  ["mirrored", "face down", "T4.dxf", draw(targetOf("T4"), { move: mirror, mirrored: true })],
  [
    "mirrored",
    "face down and turned",
    "T4.dxf",
    draw(targetOf("T4"), { move: (at) => turned(70)(mirror(at)), mirrored: true }),
  ],
  ["wrong-unit", "millimetres called inches", "T4.dxf", draw(targetOf("T4"), { mm: 1 })],
  ["wrong-unit", "25.4 times too small", "T4.dxf", draw(targetOf("T4"), { mm: 25.4 * 25.4 })],
  ["wrong-unit", "12 times too large", "T4.dxf", draw(targetOf("T4"), { mm: 25.4 / 12 })],
  ["wrong-unit", "12 times too small", "T4.dxf", draw(targetOf("T4"), { mm: 25.4 * 12 })],
  ["scaled", "at 96 per cent", "T4.dxf", draw(targetOf("T4"), { mm: 25.4 / 0.96 })],
  ["pattern-turned", "the pattern turned in its outline", "T1.dxf", draw(holesMoved("T1", turned(90)))],
  [
    "pattern-shifted",
    "the pattern shifted in its outline",
    "T4.dxf",
    draw(holesMoved("T4", turned(0, { x: 3, y: 0 }))),
  ],
  [
    "outline-differs",
    "the outline of another size",
    "T4.dxf",
    draw({ holes: targetOf("T4").holes, outline: targetOf("B4").outline }),
  ],
  ["other-mark", "the template of another mark", "T1_rev-B.dxf", draw(targetOf("T2"))],
  ["other-mark", "a base plate under the name of a template", "T1_rev-B.dxf", draw(targetOf("B1"))],
  [
    "no-match",
    "a plate of another job",
    "T1.dxf",
    draw({
      outline: targetOf("T1").outline,
      holes: targetOf("T1").holes.map((hole, index) => ({ ...hole, at: { x: 80 * index - 160, y: 0 } })),
    }),
  ],
];

describe("a fault", () => {
  it.each(faults)("%s: %s", (code, _, name, bytes) => {
    expect(codesOf(prove(bytes, name), "stop")).toContain(code);
  });

  it("pattern-mirrored: in an outline that has a hand of its own", () => {
    const hand = {
      ...job,
      bases: job.bases.map((each) => ({
        ...each,
        template: {
          ...each.template,
          outline: {
            kind: "polygon",
            corner: { kind: "square" },
            at: (
              [
                [-13, -9],
                [13, -9],
                [13, 9],
                [-10, 9],
                [-13, 5],
              ] as const
            ).map(([x, y]) => ({ x: inches(x), y: inches(y) })),
          } as const,
        },
      })),
    };
    const handed = againstJob(withRods(hand));
    const target = handed.targets.find(({ mark }) => mark === "T4");
    if (target === undefined) throw new Error("no plate");
    const holes = target.holes.map((hole) => ({ ...hole, at: mirror(hole.at) }));
    expect(codesOf(proveFile(draw({ holes, outline: target.outline }), "T4.dxf", handed), "stop")).toContain(
      "pattern-mirrored",
    );
    const whole = draw({ holes: target.holes, outline: target.outline }, { move: mirror, mirrored: true });
    expect(codesOf(proveFile(whole, "T4.dxf", handed), "stop")).toEqual(["mirrored"]);
  });

  it("of one hole does not pull the others along", () => {
    const file = prove(draw(change("T4", "A2", { dx: 2.54, dy: 0 })), "T4.dxf");
    const [finding, ...others] = file.findings.filter(({ code }) => code === "hole-position");
    expect(others).toEqual([]);
    expect(finding?.message).toBe("hole A2 is off by 0.1 in (x +0.1 in, y +0 in on the plate)");
    expect(file.match?.positionError).toBeCloseTo(0.1, 5);
  });

  it("just at the threshold of 0.05 mm passes, beyond it does not", () => {
    const codes = (diameter: number) => codesOf(prove(draw(change("T4", "A2", { diameter })), "T4.dxf"), "stop");
    expect(codes(0.0499)).toEqual([]);
    expect(codes(0.0502)).toEqual(["hole-diameter"]);
  });

  it("of a gauge: the other mark is named, and how it differs", () => {
    const file = prove(draw(targetOf("T2")), "T1_rev-B_r12.dxf");
    expect(file.match).toMatchObject({ mark: "T2", base: "B2", positionError: 0 });
    expect(file.findings[0]?.message).toBe(
      "the file is named T1, but its holes are those of template T2 (base B2), and differ from template T1 (base B1) in 4 points",
    );
  });

  it.each([1.189029, 0.96, 1.01, 1.001, 0.999, 2, 25, 24, 13, 1 / 11.5])(
    "of size: %f times a plate is no match, and the nearest in shape is said to be another size",
    (scale) => {
      for (const [mark, name, words] of [
        ["T4", "plate.dxf", "template T4 (base B4)"],
        ["T4", "T4_rev-B.dxf", "template T4 (base B4)"],
        ["B2", "plate.dxf", "base plate of B2"],
      ] as const) {
        const file = prove(draw(targetOf(mark), { mm: 25.4 / scale }), name);
        expect(file.match).toBeNull();
        const [finding] = file.findings.filter(({ code }) => code === "scaled");
        expect(finding).toMatchObject({ severity: "stop" });
        expect(finding?.message).toContain(`nearest in shape is ${words}, but the file is `);
        expect(finding?.message).toMatch(/^the holes are those of no template or base plate of the job/);
      }
    },
  );

  it.each([25.4, 1 / 25.4, 12, 1 / 12])("of units: exactly %f times is told as a slip of units", (scale) => {
    const file = prove(draw(targetOf("T4"), { mm: 25.4 / scale }), "plate.dxf");
    expect(file.match).toMatchObject({ mark: "T4" });
    expect(file.match?.scale).toBeCloseTo(scale, 5);
    expect(codesOf(file, "stop")).toEqual(["wrong-unit"]);
  });

  it("of another plate that shares two holes with one of the job is no match", () => {
    const outline = targetOf("B4").outline;
    const holes = [0, 1, 2, 3].map((index) => ({
      tag: "",
      at: { x: (index < 2 ? -1 : 1) * 5 * 25.4 + (index < 2 ? 0 : 70), y: (index % 2 === 0 ? 1 : -1) * 127 },
      diameter: 33,
      made: "cut" as const,
    }));
    const file = prove(
      draw(
        { holes, outline: outline === null ? null : { ...outline } },
        { move: ({ x, y }) => ({ x: 1.3 * x, y: 1.7 * y }) },
      ),
      "plate.dxf",
    );
    expect(file.match).toBeNull();
    expect(codesOf(file, "stop")).toContain("no-match");
  });

  it("in millimetres without a unit is measured by the job's", () => {
    const file = prove(draw(targetOf("T4"), { mm: 1, head: [] }), "T4.dxf");
    expect(codesOf(file, "stop")).toEqual(expect.arrayContaining(["no-unit", "wrong-unit"]));
    expect(file.match?.scale).toBeCloseTo(25.4, 5);
  });

  it("a drilled hole that is cut", () => {
    const thick = {
      ...job,
      bases: job.bases.map((each) => ({ ...each, template: { ...each.template, thickness: inches(2) } })),
    };
    const thickJob = againstJob(withRods(thick));
    expect(thickJob.targets[0]?.holes.filter(({ made }) => made === "drill").length).toBeGreaterThan(0);
    expect(codesOf(proveFile(draw(targetOf("T1")), "T1.dxf", thickJob), "stop")).toContain("drill-cut");
  });
});
