import { describe, expect, test } from "vitest";
import {
  extentOf,
  extentSize,
  measureArea,
  twiceDepthInside,
  twiceEdgeWeb,
  twiceWeb,
} from "../../../src/geometry/index.js";
import type { Base, Corner, Job, OutlineSpec, TemplateSpec } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import type { Plate } from "../../../src/template/index.js";
import { makePlate, makePlateOutline, makePlateShape, measurePlate } from "../../../src/template/index.js";
import type { Length } from "../../../src/units/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";

const zero = nanometres(0);
const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const square: Corner = { kind: "square" };
const auto = (corner: Corner = square): OutlineSpec => ({ kind: "auto", corner });
const bearers = given("bearers" as const, "job");

function baseWith(template: Partial<TemplateSpec>, changes: Partial<Base> = {}): Base {
  const base = baseFixture(changes);
  return { ...base, template: { ...base.template, ...template } };
}

function outcomeOf(base: Base, job: Job = jobFixture()) {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the pattern has faults");
  return makePlate(job, base, rods.value);
}

function plateOf(base: Base, job: Job = jobFixture()): Plate {
  const outcome = outcomeOf(base, job);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join());
  return outcome.value;
}

function sizeOf({ region }: Plate): readonly [number, number] {
  const { x, y } = extentSize(extentOf(region.outer));
  return [x, y];
}

describe("outlines as given", () => {
  test("a chamfered rectangle, its figures by closed forms in inches", () => {
    const measures = measurePlate(plateOf(baseFixture()));
    expect(measures.outlineArea / 645.16).toBeCloseTo(26 * 18 - 4 * 0.5, 9);
    expect(measures.outlinePerimeter / 25.4).toBeCloseTo(2 * (26 + 18) - 8 + 4 * Math.SQRT2, 9);
    const holes = (4 * Math.PI * 1.3125 ** 2) / 4 + (Math.PI * 36) / 4;
    expect(measures.netArea / 645.16).toBeCloseTo(26 * 18 - 2 - holes, 9);
    expect(measures.cutLength / 25.4).toBeCloseTo(2 * 44 - 8 + 4 * Math.SQRT2 + Math.PI * (4 * 1.3125 + 6), 9);
    expect(measures.pierces).toBe(6);
    expect(measures.extent).toEqual({ x0: -330.2, y0: -228.6, x1: 330.2, y1: 228.6 });
  });

  test("a plate off its working point stays where it was put", () => {
    const spec: OutlineSpec = { kind: "rectangle", x: inches(20), y: inches(18), at: at(2, -1), corner: square };
    expect(extentOf(plateOf(baseWith({ outline: spec })).region.outer)).toEqual({
      x0: -203.2,
      y0: -254,
      x1: 304.8,
      y1: 203.2,
    });
  });

  test("a ring is a circle with an opening", () => {
    const outline: OutlineSpec = { kind: "ring", outer: inches(36), inner: inches(24), at: at(0, 0) };
    const plate = plateOf(baseWith({ outline, opening: { kind: "none" } }));
    expect(plate.outlineKind).toBe("circle");
    expect(plate.holes[0]).toMatchObject({
      tag: "OP1",
      role: "opening",
      shape: { kind: "circle", diameter: inches(24) },
    });
    const ring = (Math.PI * (36 ** 2 - 24 ** 2)) / 4 - Math.PI * 1.3125 ** 2;
    expect(measurePlate(plate).netArea / 645.16).toBeCloseTo(ring, 9);
  });

  test("a polygon with rounded corners", () => {
    const corner: Corner = { kind: "round", radius: inches(1) };
    const points = [at(-9, -8), at(9, -8), at(9, 8), at(-9, 8)];
    const plate = plateOf(baseWith({ outline: { kind: "polygon", at: points, corner }, opening: { kind: "none" } }));
    expect(measureArea(plate.region.outer) / 645.16).toBeCloseTo(18 * 16 - (4 - Math.PI), 9);
  });
});

describe("shapes that no job that was read holds are bugs", () => {
  test.each<[string, Partial<TemplateSpec>]>([
    ["a ring inside out", { outline: { kind: "ring", outer: inches(10), inner: inches(10), at: at(0, 0) } }],
    [
      "an opening smaller than its corners",
      { opening: { kind: "rectangle", x: inches(6), y: inches(4), radius: inches(2.5), at: at(0, 0) } },
    ],
    [
      "an opening in a ring",
      {
        outline: { kind: "ring", outer: inches(36), inner: inches(24), at: at(0, 0) },
        opening: { kind: "circle", diameter: inches(4), at: at(0, 0) },
      },
    ],
  ])("%s", (_, template) => {
    expect(() => outcomeOf(baseWith(template))).toThrow(/^base B1: /);
  });
});

describe("shapes that cannot be are findings, all at once", () => {
  const corner: Corner = { kind: "chamfer", x: inches(10), y: inches(10) };
  test.each<[string, Partial<TemplateSpec>, readonly string[]]>([
    [
      "corners",
      { outline: { kind: "rectangle", x: inches(30), y: inches(18), at: at(0, 0), corner } },
      ["corner-too-large", "corner-too-large"],
    ],
    [
      "crossing polygon",
      { outline: { kind: "polygon", at: [at(0, 0), at(9, 9), at(9, 0), at(0, 9), at(-4, 4)], corner: square } },
      ["outline-crossing"],
    ],
    ["two points", { outline: { kind: "polygon", at: [at(0, 0), at(9, 9)], corner: square } }, ["outline-empty"]],
  ])("%s", (_, template, codes) => {
    const outcome = outcomeOf(baseWith(template));
    expect(outcome.ok).toBe(false);
    expect(outcome.findings.map(({ code }) => code).slice(0, codes.length)).toEqual(codes);
    for (const { at: place, message, severity } of outcome.findings) {
      expect(place.path).toMatch(/^bases\[0\]\.template\.outline/);
      expect(severity).toBe("error");
      expect(message).toMatch(/\S/);
    }
  });

  test("the message carries value, unit and what is allowed", () => {
    const outline: OutlineSpec = { kind: "rectangle", x: inches(30), y: inches(18), at: at(0, 0), corner };
    expect(outcomeOf(baseWith({ outline })).findings[0]?.message).toBe(
      "the corners take 20 in of a side that is 18 in long",
    );
  });

  test("holes in each other's way or off the plate are no findings: the checks hold the base", () => {
    const outline: OutlineSpec = { kind: "rectangle", x: inches(12), y: inches(10), at: at(30, 0), corner: square };
    const nailHoles = [{ at: at(-6, 5), diameter: inches(1) }];
    const plate = plateOf(baseWith({ outline, nailHoles, opening: { kind: "none" } }));
    expect(plate.holes).toHaveLength(5);
    expect(plate.omitted.length).toBeGreaterThan(0);
  });
});

describe("automatic outlines", () => {
  const corners: readonly Corner[] = [
    square,
    { kind: "chamfer", x: inches(2), y: inches(1) },
    { kind: "round", radius: inches(3) },
    { kind: "notch", x: inches(2), y: inches(2) },
  ];

  test("the example by hand: 12 in gauge + 2 x (1-5/16 / 2 + 1/2), and the nut's 2.309 + 1/16, rounded up to 1/2 in", () => {
    const plate = plateOf(baseWith({ outline: auto(), support: bearers }));
    expect(sizeOf(plate)).toEqual([inches(14.5), inches(12.5)]);
    expect(plate.sized[0]?.what).toBe("outline");
  });

  test("met exactly: no increment is added; one nanometre more adds one", () => {
    const exact = (edge: Length) =>
      sizeOf(
        plateOf(
          baseWith(
            { outline: auto(), support: bearers },
            { groups: [groupFixture({}, { nut: missing("nut", "none") })] },
          ),
          jobFixture({ shop: shopFixture({ edge: given(edge, "job"), increment: given(inches(1 / 16), "job") }) }),
        ),
      );
    expect(exact(inches(0.5))).toEqual([inches(14.3125), inches(12.3125)]);
    expect(exact(nanometres(inches(0.5) + 1))).toEqual([inches(14.375), inches(12.375)]);
  });

  test.each(corners)("edge and seat hold by construction with corners %j", (corner) => {
    const job = jobFixture();
    const base = baseWith(
      { outline: auto(corner), support: bearers, nailHoles: [{ at: at(-7, 5.5), diameter: inches(0.1875) }] },
      {},
    );
    const plate = plateOf(base, job);
    const reach = inches(2.309) + inches(0.0625);
    for (const hole of plate.holes) {
      if (hole.role === "opening") continue;
      expect(twiceEdgeWeb(hole.contour, plate.region.outer)).toBeGreaterThanOrEqual(2 * job.shop.edge.value);
      if (hole.role === "rod") expect(twiceDepthInside(hole.center, plate.region.outer)).toBeGreaterThanOrEqual(reach);
    }
    for (const side of sizeOf(plate)) expect(side % job.shop.increment.value).toBe(0);
  });

  test("a washer on the template counts where it is wider than the nut, a square one corner to corner", () => {
    const size = (shape: "round" | "square") => {
      const washer = { shape, size: inches(3), thickness: given(inches(0.25), "job") } as const;
      const shop = shopFixture({ templateWasher: given(washer, "job") });
      return sizeOf(plateOf(baseWith({ outline: auto(), support: bearers }), jobFixture({ shop })));
    };
    expect(size("round")).toEqual([inches(15.5), inches(13.5)]);
    expect(size("square")).toEqual([inches(16.5), inches(14.5)]);
  });

  test("carried by the form: reaches across it the way that adds less", () => {
    const plate = plateOf(baseWith({ outline: auto() }));
    expect(sizeOf(plate)).toEqual([inches(26), inches(12.5)]);
    expect(plate.sized[0]?.how).toContain("reaches across the form with 1 in bearing along x");
    const round = { kind: "circle", diameter: inches(24) } as const;
    const concrete = { ...baseFixture().concrete, shape: given(round, "job") };
    expect(sizeOf(plateOf(baseWith({ outline: auto() }, { concrete })))).toEqual([inches(26), inches(12.5)]);
  });

  test("a form off the working point: bearing on both sides of it", () => {
    const concrete = { ...baseFixture().concrete, at: at(3, 0) };
    const plate = plateOf(baseWith({ outline: auto() }, { concrete }));
    expect(sizeOf(plate)).toEqual([inches(14.5), inches(26)]);
    const both = { ...baseFixture().concrete, at: at(1, 2) };
    const box = extentOf(plateOf(baseWith({ outline: auto() }, { concrete: both })).region.outer);
    expect([box.x0, box.x1]).toEqual([-355.6, 355.6]);
  });

  test("a form too wide to reach across is left to bearers, and said", () => {
    const concrete = {
      ...baseFixture().concrete,
      shape: given({ kind: "rectangle", x: inches(60), y: inches(60), corner: square } as const, "job"),
    };
    const plate = plateOf(baseWith({ outline: auto() }, { concrete }));
    expect(sizeOf(plate)).toEqual([inches(14.5), inches(12.5)]);
    expect(plate.sized[0]?.how).toContain("too wide to reach across");
  });

  test("centred on the box around the rods", () => {
    const pattern = { kind: "lines", x: [zero, inches(12)], y: [zero, inches(10)], perimeter: false } as const;
    const plate = plateOf(
      baseWith(
        { outline: auto(), support: bearers, opening: { kind: "none" } },
        { groups: [groupFixture({ pattern })] },
      ),
    );
    const { x0, y0, x1, y1 } = extentOf(plate.region.outer);
    expect([(x0 + x1) / 2, (y0 + y1) / 2]).toEqual([152.4, 127]);
  });
});

describe("openings that the job gives", () => {
  const plain = { kind: "rectangle", x: inches(20), y: inches(16), at: at(0, 0), corner: square } as const;
  const disc = { kind: "circle", diameter: inches(20), at: at(0, 0) } as const;
  const round = (diameter: number, x = 0, y = 0) =>
    ({ kind: "circle", diameter: nanometres(diameter), at: at(x, y) }) as const;
  const box = (x: number, y: number, where = at(0, 0)) =>
    ({ kind: "rectangle", x: nanometres(x), y: nanometres(y), radius: zero, at: where }) as const;
  const faults = (template: Partial<TemplateSpec>) => {
    const outcome = outcomeOf(baseWith(template));
    return outcome.ok ? [] : outcome.findings;
  };

  test.each<[string, Partial<TemplateSpec>]>([
    ["round in a rectangle", { outline: plain, opening: round(inches(16) - 1) }],
    ["round, off the middle", { outline: plain, opening: round(inches(6) - 1, 7) }],
    ["round in a round plate", { outline: disc, opening: round(inches(20) - 1) }],
    ["a rectangle", { outline: plain, opening: box(inches(20) - 2, inches(16) - 2) }],
    ["a rectangle in a round plate", { outline: disc, opening: box(inches(12) - 2, inches(16) - 2) }],
  ])("may come within a nanometre of the edge: %s", (_, template) => {
    expect(faults(template)).toEqual([]);
  });

  test.each<[string, Partial<TemplateSpec>, string]>([
    ["round, touching a side", { outline: plain, opening: round(inches(16)) }, "meets the plate's edge"],
    ["round, touching off the middle", { outline: plain, opening: round(inches(6), 7) }, "meets the plate's edge"],
    ["round, past a side", { outline: plain, opening: round(inches(6), 8) }, "reaches 1 in past the plate's edge"],
    ["round, 1 nm past", { outline: plain, opening: round(inches(16) + 2) }, "reaches 0.00000004 in past"],
    ["as large as a round plate", { outline: disc, opening: round(inches(20)) }, "meets the plate's edge"],
    ["larger than the plate", { outline: disc, opening: round(inches(30)) }, "reaches 5 in past the plate's edge"],
    ["larger than a polygon", { outline: hexagon(), opening: round(inches(22)) }, "past the plate's edge"],
    ["beside the plate", { outline: plain, opening: round(inches(4), 30) }, "past the plate's edge"],
    ["a rectangle, touching", { outline: plain, opening: box(inches(20), inches(4)) }, "meets the plate's edge"],
    ["a rectangle across", { outline: plain, opening: box(inches(4), inches(4), at(10, 0)) }, "meets the plate's edge"],
    ["a rectangle beside", { outline: plain, opening: box(inches(4), inches(4), at(30, 0)) }, "does not lie inside"],
    ["a rectangle around", { outline: disc, opening: box(inches(30), inches(30)) }, "does not lie inside"],
    ["corners past a round plate", { outline: disc, opening: box(inches(16), inches(16)) }, "meets the plate's edge"],
  ])("are faults: %s", (_, template, words) => {
    expect(faults(template)).toMatchObject([{ code: "opening-off-plate", severity: "error" }]);
    expect(faults(template)[0]?.message).toContain(words);
    expect(faults(template)[0]?.at.path).toBe("bases[0].template.opening");
  });
});

function hexagon(): OutlineSpec {
  const points = Array.from({ length: 6 }, (_, k) =>
    at(12 * Math.cos((k * Math.PI) / 3), 12 * Math.sin((k * Math.PI) / 3)),
  );
  return { kind: "polygon", at: points, corner: square };
}

describe("openings", () => {
  test("automatic: half the smaller side bounds it, and every rule holds", () => {
    const job = jobFixture();
    const plate = plateOf(baseWith({ outline: auto(), support: bearers, opening: { kind: "auto" } }), job);
    const opening = plate.holes[0];
    expect(opening?.shape).toEqual({ kind: "circle", diameter: inches(6) });
    for (const rod of plate.holes.slice(1)) {
      if (opening) expect(twiceWeb(rod.contour, opening.contour)).toBeGreaterThanOrEqual(2 * job.shop.web.value);
    }
    expect(plate.sized.map(({ what }) => what)).toEqual(["outline", "opening"]);
  });

  test("automatic: nuts bound it on a narrow pattern; below 3 in there is none", () => {
    const opening = (gauge: number) => {
      const pattern = {
        kind: "rectangle",
        x: inches(gauge),
        y: inches(gauge),
        nx: 2,
        ny: 2,
        perimeter: false,
      } as const;
      return plateOf(baseWith({ opening: { kind: "auto" } }, { groups: [groupFixture({ pattern })] }));
    };
    expect(opening(5).holes[0]?.shape).toEqual({ kind: "circle", diameter: inches(4.5) });
    expect(opening(3.9).holes[0]?.shape).toEqual({ kind: "circle", diameter: inches(3) });
    const none = opening(3.7);
    expect(none.holes[0]?.role).toBe("rod");
    expect(none.sized[0]?.how).toContain("none: less than 3 in");
  });

  describe("automatic, beside the piece mark", () => {
    const small = (gauge: number, mark: string, template: Partial<TemplateSpec> = {}) => {
      const side = inches(gauge);
      const pattern = { kind: "rectangle", x: side, y: side, nx: 2, ny: 2, perimeter: false } as const;
      const rod = { diameter: inches(0.75), size: "3/4", nut: missing("rods.nut", "none") };
      const base = baseWith(
        { outline: auto(), support: bearers, opening: { kind: "auto" }, mark, ...template },
        { groups: [groupFixture({ pattern, hole: given(inches(0.8125), "job") }, rod)] },
      );
      const marking = {
        how: "scribe",
        textHeight: inches(0.625),
        leastTextHeight: inches(0.625),
        clearance: inches(0.125),
      } as const;
      return plateOf(base, jobFixture({ shop: shopFixture({ marking }) }));
    };
    const isMarked = ({ marks }: Plate) => marks.some(({ kind }) => kind === "mark");
    const essentials = ({ omitted }: Plate) => omitted.filter(({ kind }) => ["mark", "top", "tag"].includes(kind));

    test("shrinks until mark, TOP and tags find room", () => {
      const plate = small(8, "T-B4");
      const wide = small(8, "T-B4", { opening: { kind: "circle", diameter: inches(5), at: at(0, 0) } });
      expect(essentials(wide).map(({ text }) => text)).toEqual(["ROD A1", "ROD A2"]);
      expect(essentials(plate)).toEqual([]);
      expect(plate.holes[0]?.shape).toEqual({ kind: "circle", diameter: inches(3.5) });
      expect(plate.sized.at(-1)?.how).toContain("shrunk from 5 in so that marks find room");
    });

    test("is the largest of its increment that leaves the room", () => {
      const next = small(8, "T-B4", { opening: { kind: "circle", diameter: inches(4), at: at(0, 0) } });
      expect(essentials(next)).not.toEqual([]);
    });

    test("is left out where none leaves the mark its room", () => {
      const plate = small(5.5, "T-BASE55");
      expect(plate.holes.some(({ role }) => role === "opening")).toBe(false);
      expect(isMarked(plate)).toBe(true);
      expect(plate.sized.at(-1)?.how).toBe("none: the piece mark would find no room beside it");
    });

    test("stays as it is where the mark finds room, and where no opening would help", () => {
      expect(small(14, "T1").sized.at(-1)?.how).not.toContain("shrunk");
      const hopeless = small(5.5, "T-123456789012345678901234567890");
      expect(isMarked(hopeless)).toBe(false);
      expect(hopeless.holes[0]?.role).toBe("opening");
    });

    test("an opening as given is never changed", () => {
      const opening = { kind: "circle", diameter: inches(5), at: at(0, 0) } as const;
      expect(small(8, "T-B4", { opening }).holes[0]?.shape).toEqual({ kind: "circle", diameter: inches(5) });
    });
  });

  test("metric: below 75 mm there is none", () => {
    const pattern = {
      kind: "rectangle",
      x: millimetres(90),
      y: millimetres(90),
      nx: 2,
      ny: 2,
      perimeter: false,
    } as const;
    const base = baseWith({ opening: { kind: "auto" } }, { groups: [groupFixture({ pattern })] });
    expect(plateOf(base, jobFixture({ unit: "mm" })).sized[0]?.how).toContain("none: less than 75 mm");
  });

  test("a rectangle with rounded corners", () => {
    const opening = { kind: "rectangle", x: inches(6), y: inches(4), radius: inches(0.5), at: at(1, 0) } as const;
    const plate = plateOf(baseWith({ opening }));
    expect(plate.holes[0]).toMatchObject({
      tag: "OP1",
      center: { x: 25.4, y: 0 },
      shape: { kind: "rectangle", width: inches(6), height: inches(4), radius: inches(0.5) },
    });
    expect(measureArea(plate.region.inner[0] ?? plate.region.outer) / 645.16).toBeCloseTo(24 - (4 - Math.PI) / 4, 9);
  });
});

describe("holes", () => {
  test("in cutting order: openings, grout, nail, rods by tag", () => {
    const plate = plateOf(
      baseWith({
        groutHoles: [{ at: at(0, 5), diameter: inches(2) }],
        nailHoles: [
          { at: at(12, 0), diameter: inches(0.5) },
          { at: at(-12, 0), diameter: inches(0.5) },
        ],
      }),
    );
    expect(plate.holes.map(({ tag }) => tag)).toEqual(["OP1", "GH1", "NH1", "NH2", "A1", "A2", "A3", "A4"]);
    expect(plate.region.inner).toEqual(plate.holes.map(({ contour }) => contour));
    expect(plate.holes[4]?.rod).toEqual({ size: "1-1/4", diameter: inches(1.25) });
  });

  test.each([
    [-1, "drill"],
    [0, "cut"],
    [1, "cut"],
  ] as const)("at the smallest hole and its taper, %d nm: %s", (off, made) => {
    const shop = shopFixture({ smallestHole: { perThickness: 1.5, least: millimetres(5), from: "test" } });
    // The narrow side governs: 1.5 t of 1/4 in is 3/8 in, and the fixture's taper takes 0.2 mm.
    const diameter = nanometres(inches(0.375) + millimetres(0.2) + off);
    const plate = plateOf(baseWith({ nailHoles: [{ at: at(12, 0), diameter }] }), jobFixture({ shop }));
    expect(plate.holes.find(({ tag }) => tag === "NH1")?.made).toBe(made);
    expect(plate.region.inner).toHaveLength(made === "cut" ? 6 : 5);
    expect(plate.marks.filter(({ kind, text }) => kind === "punch" && text === "")).toHaveLength(
      made === "cut" ? 0 : 1,
    );
  });

  test("plywood: rods, nail and grout holes are drilled, the opening is sawn", () => {
    const plate = plateOf(baseWith({ material: "plywood", thickness: inches(0.75) }));
    expect(plate.holes.map(({ made }) => made)).toEqual(["cut", "drill", "drill", "drill", "drill"]);
    expect(measurePlate(plate).pierces).toBe(2);
  });
});

test("a plate from a shape that was made before is the plate that makes its own", () => {
  const job = jobFixture();
  for (const template of [{}, { outline: auto() }, { opening: { kind: "auto" } as const }]) {
    const base = baseWith(template);
    const rods = placeRods(base);
    if (!rods.ok) throw new Error("the pattern has faults");
    const shape = makePlateShape(job, base, rods.value);
    const outline = makePlateOutline(job, base, rods.value);
    if (!shape.ok || !outline.ok) throw new Error("the shape has faults");
    expect(makePlate(job, base, rods.value, shape.value)).toEqual(makePlate(job, base, rods.value));
    expect(outline.value).toEqual(shape.value.outline.contour);
  }
});
