import { describe, expect, test } from "vitest";
import type { Contour, Point } from "../../../src/geometry/index.js";
import { containsPoint, millimetresBetween } from "../../../src/geometry/index.js";
import type { Base, Job, MarkingShop, Pattern, RodGroup, TemplateSpec } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import type { Mark, Plate } from "../../../src/template/index.js";
import { makePlate } from "../../../src/template/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";
import { distanceBetweenStrokes, strokeDistance } from "../../strokes.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const bearers = given("bearers" as const, "job");
const auto = { outline: { kind: "auto", corner: { kind: "square" } }, opening: { kind: "auto" } } as const;

function baseWith(template: Partial<TemplateSpec>, groups: readonly RodGroup[] = [groupFixture()]): Base {
  const base = baseFixture({ groups });
  return { ...base, template: { ...base.template, ...template } };
}

function rectangle(x: number, y: number, nx = 2, ny = 2): Pattern {
  return { kind: "rectangle", x: inches(x), y: inches(y), nx, ny, perimeter: true };
}

function plateOf(base: Base, job: Job = jobFixture()): Plate {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the pattern has faults");
  const outcome = makePlate(job, base, rods.value);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join());
  return outcome.value;
}

function marking(changes: Partial<MarkingShop>): Job {
  return jobFixture({ shop: shopFixture({ marking: { ...shopFixture().marking, ...changes } }) });
}

const polygonAt = [at(-12, -10), at(12, -10), at(12, 2), at(4, 10), at(-12, 10)];
const small = groupFixture(
  { pattern: rectangle(4, 4), hole: given(inches(0.8125), "x") },
  { size: "3/4", diameter: inches(0.75) },
);
const plates: readonly [string, Plate][] = [
  ["example", plateOf(baseFixture())],
  ["automatic", plateOf(baseWith({ ...auto, support: bearers }))],
  ["small", plateOf(baseWith({ ...auto, support: bearers }, [small]))],
  ["two rods", plateOf(baseWith({ ...auto, support: bearers }, [groupFixture({ pattern: rectangle(6, 0, 2, 1) })]))],
  [
    "eight in a notched plate",
    plateOf(
      baseWith({ outline: { kind: "auto", corner: { kind: "notch", x: inches(1), y: inches(1) } }, support: bearers }, [
        groupFixture({ pattern: rectangle(18, 14, 3, 3) }),
      ]),
    ),
  ],
  [
    "polygon",
    plateOf(
      baseWith(
        {
          outline: { kind: "polygon", at: polygonAt, corner: { kind: "round", radius: inches(1) } },
          opening: { kind: "rectangle", x: inches(8), y: inches(5), radius: inches(1), at: at(-2, -1) },
        },
        [groupFixture({ pattern: { kind: "points", at: [at(-10, -8), at(10, -8), at(10, 0), at(-10, 8)] } })],
      ),
    ),
  ],
  [
    "ring",
    plateOf(
      baseWith(
        { outline: { kind: "ring", outer: inches(36), inner: inches(24), at: at(0, 0) }, opening: { kind: "none" } },
        [groupFixture({ pattern: { kind: "circle", diameter: inches(30), count: 12, start: { kind: "on-axis" } } })],
      ),
    ),
  ],
  ["drilled", plateOf(baseWith({ ...auto, support: bearers, thickness: inches(1) }))],
  ["plywood", plateOf(baseWith({ ...auto, support: bearers, material: "plywood", thickness: inches(0.75) }))],
];

function pieces({ strokes }: Mark): readonly (readonly [Point, Point])[] {
  return strokes.flatMap((stroke) => stroke.slice(1).map((to, i) => [stroke[i] ?? to, to] as const));
}

function clearOf(mark: Mark, contour: Contour): number {
  return Math.min(...mark.strokes.map((stroke) => strokeDistance(stroke, contour)));
}

describe.each(plates)("marks of the plate: %s", (_, plate) => {
  const clearance = shopFixture().marking.clearance / 1e6;
  const isPunch = ({ kind, text }: Mark) => kind === "punch" && text === "";
  const marks = plate.marks.filter((mark) => !isPunch(mark));

  test("keep the clearance from outline, holes and openings, stroke by stroke", () => {
    for (const mark of marks) {
      for (const contour of [plate.region.outer, ...plate.holes.map(({ contour }) => contour)]) {
        expect(clearOf(mark, contour)).toBeGreaterThanOrEqual(clearance - 2e-6);
      }
      for (const spot of mark.strokes.flat()) {
        expect(containsPoint(plate.region.outer, spot)).toBe(true);
        expect(plate.holes.some(({ contour }) => containsPoint(contour, spot))).toBe(false);
      }
    }
  });

  test("keep the clearance from each other", () => {
    for (const [i, mark] of marks.entries()) {
      for (const other of marks.slice(i + 1)) {
        const gap = Math.min(...mark.strokes.flatMap((a) => other.strokes.map((b) => distanceBetweenStrokes(a, b))));
        expect(gap).toBeGreaterThanOrEqual(clearance - 2e-6);
      }
    }
  });

  test("draw each piece once, none tiny, all on the lattice and inside the mark's own box", () => {
    const seen = new Set<string>();
    for (const mark of plate.marks) {
      for (const [from, to] of pieces(mark)) {
        expect(millimetresBetween(from, to)).toBeGreaterThanOrEqual(0.1);
        const ends = [`${from.x} ${from.y}`, `${to.x} ${to.y}`].sort().join(" ");
        expect(seen.has(ends)).toBe(false);
        seen.add(ends);
        expect(from).toEqual({ x: Math.round(from.x * 1e6) / 1e6, y: Math.round(from.y * 1e6) / 1e6 });
        expect(from.x >= mark.extent.x0 && from.x <= mark.extent.x1).toBe(true);
        expect(from.y >= mark.extent.y0 && from.y <= mark.extent.y1).toBe(true);
      }
      expect(mark.text).toMatch(/^[\x20-\x7e]*$/);
    }
  });

  test("every rod has its tag, placed or left out with a reason; letters have a height the shop allows", () => {
    const said = [...plate.marks, ...plate.omitted].map(({ text }) => text);
    for (const { tag, rod } of plate.holes) if (rod) expect(said).toContain(`ROD ${tag}`);
    const sizes = new Set(plate.holes.flatMap(({ rod }) => (rod === null ? [] : [`RODS ${rod.size}`])));
    for (const text of ["TOP", "T1 REV B", "+X", "+Y", ...sizes]) expect(said).toContain(text);
    for (const { text, textHeight } of plate.marks) {
      expect(text === "" ? textHeight === 0 : textHeight >= inches(0.25) && textHeight <= inches(0.5)).toBe(true);
    }
    for (const { cause } of plate.omitted) expect(cause).toBe("room");
  });

  test("a tag stands nearer to its own hole than to any other rod's", () => {
    const rods = plate.holes.filter(({ role }) => role === "rod");
    for (const { kind, text, extent } of plate.marks) {
      if (kind !== "tag") continue;
      const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
      const gap = (center: Point) =>
        Math.hypot(
          Math.max(extent.x0 - center.x, center.x - extent.x1, 0),
          Math.max(extent.y0 - center.y, center.y - extent.y1, 0),
        );
      const own = rods.find(({ tag }) => text === `ROD ${tag}`);
      if (own === undefined) throw new Error(`no hole for ${text} at ${middle.x}`);
      for (const other of rods) if (other !== own) expect(gap(other.center)).toBeGreaterThan(gap(own.center));
    }
  });
});

describe("what is marked", () => {
  test("nothing is left out on the example plate, and nothing stands under a nut", () => {
    const plate = plateOf(baseFixture());
    expect(plate.omitted).toEqual([]);
    const seat = ((2.309 + 0.0625) / 2) * 25.4;
    for (const mark of plate.marks) {
      for (const { center, role } of plate.holes) {
        if (role !== "rod") continue;
        for (const spot of mark.strokes.flat()) expect(millimetresBetween(spot, center)).toBeGreaterThan(seat - 1e-6);
      }
    }
    expect(plate.marks.map(({ kind }) => kind).sort()).toEqual([
      ...["axis", "axis"],
      ...["centre-line", "centre-line", "centre-line", "centre-line"],
      ...["mark", "size", "tag", "tag", "tag", "tag", "top"],
    ]);
  });

  test("centre-line ticks lie on the type's own axes, at the four edges, wherever the plate is", () => {
    const outline = {
      kind: "rectangle",
      x: inches(26),
      y: inches(20),
      at: at(3, -2),
      corner: { kind: "square" },
    } as const;
    const ticks = plateOf(baseWith({ outline })).marks.filter(({ kind }) => kind === "centre-line");
    expect(ticks).toHaveLength(4);
    const onX = ticks
      .filter(({ extent }) => extent.y0 === 0 && extent.y1 === 0)
      .map(({ extent }) => [extent.x0, extent.x1]);
    const onY = ticks
      .filter(({ extent }) => extent.x0 === 0 && extent.x1 === 0)
      .map(({ extent }) => [extent.y0, extent.y1]);
    const [c, length] = [25.4 / 8, 12.7];
    expect(onX.flat()).toEqual(
      [-254 + c, -254 + c + length, 406.4 - c - length, 406.4 - c].map((x) => expect.closeTo(x, 6)),
    );
    expect(onY.flat()).toEqual(
      [-304.8 + c, -304.8 + c + length, 203.2 - c - length, 203.2 - c].map((y) => expect.closeTo(y, 6)),
    );
  });

  test("an axis that misses the plate is said, not drawn", () => {
    const outline = {
      kind: "rectangle",
      x: inches(26),
      y: inches(18),
      at: at(20, 0),
      corner: { kind: "square" },
    } as const;
    const plate = plateOf(baseWith({ outline, opening: { kind: "none" } }));
    expect(plate.omitted.filter(({ kind }) => kind === "centre-line")).toEqual([
      { kind: "centre-line", text: "centre line -y", cause: "off plate" },
      { kind: "centre-line", text: "centre line +y", cause: "off plate" },
    ]);
  });

  test("no north and no grid names: the type knows nothing of where it is set", () => {
    for (const [, plate] of plates) {
      expect(plate.marks.filter(({ text }) => /NORTH|^N$|GRID/.test(text))).toEqual([]);
    }
  });

  test("smaller letters where the shop's own find no room, and left out below its least", () => {
    const base = baseWith({ ...auto, support: bearers }, [small]);
    const heights = new Set(
      plateOf(base)
        .marks.filter(({ kind }) => kind === "tag")
        .map(({ textHeight }) => textHeight),
    );
    expect(heights.size).toBe(1);
    expect([...heights][0]).toBeLessThan(inches(0.5));
    const large = plateOf(base, marking({ leastTextHeight: inches(0.5) }));
    expect(large.omitted.length).toBeGreaterThan(0);
    const huge = plateOf(base, marking({ textHeight: inches(4), leastTextHeight: inches(3) }));
    expect(huge.omitted.map(({ text }) => text)).toEqual(
      expect.arrayContaining(["ROD A1", "ROD A2", "ROD A3", "ROD A4", "T1 REV B", "TOP", "+X", "+Y", "RODS 3/4"]),
    );
    for (const { cause } of huge.omitted) expect(cause).toBe("room");
  });

  test("on a crowded plate mark, TOP and tags stay and what is of lower rank goes", () => {
    const plate = plateOf(baseWith({ ...auto, support: bearers }, [groupFixture({ pattern: rectangle(4, 4) })]));
    expect(plate.omitted.map(({ kind }) => kind)).toEqual(["axis", "axis"]);
    const least = inches(0.5);
    const large = plateOf(
      baseWith({ ...auto, support: bearers }, [groupFixture({ pattern: rectangle(4, 4) })]),
      marking({ leastTextHeight: least }),
    );
    expect(large.marks.map(({ text }) => text)).toEqual(expect.arrayContaining(["T1 REV B", "TOP"]));
    expect(large.omitted.map(({ kind }) => kind)).toContain("tag");
  });

  test("rods of several sizes are named by their groups, once a size", () => {
    const other = { size: "1", diameter: inches(1) };
    const inner = { ...groupFixture({ pattern: rectangle(6, 5) }, other), letter: "B" };
    const outer = { ...groupFixture({ pattern: rectangle(20, 14) }), letter: "A" };
    const far = { ...groupFixture({ pattern: rectangle(24, 16) }), letter: "C" };
    const sizes = (groups: readonly RodGroup[]) =>
      [plateOf(baseWith({ ...auto, support: bearers, opening: { kind: "none" } }, groups))]
        .flatMap(({ marks, omitted }) => [...marks, ...omitted])
        .filter(({ kind }) => kind === "size")
        .map(({ text }) => text);
    expect(sizes([outer])).toEqual(["RODS 1-1/4"]);
    expect(sizes([outer, inner])).toEqual(["A RODS 1-1/4", "B RODS 1"]);
    expect(sizes([outer, inner, far])).toEqual(["A, C RODS 1-1/4", "B RODS 1"]);
  });

  test("an arrow lies on the axis that it names", () => {
    for (const [name, { marks }] of plates)
      for (const mark of marks.filter(({ kind }) => kind === "axis")) {
        const [from, to] = mark.strokes.at(-2) ?? [];
        const across = mark.text === "+X" ? [from?.y, to?.y] : [from?.x, to?.x];
        expect([name, mark.text, ...across]).toEqual([name, mark.text, 0, 0]);
        const along = mark.text === "+X" ? [from?.x ?? 0, to?.x ?? 0] : [from?.y ?? 0, to?.y ?? 0];
        expect(along[1]).toBeGreaterThan(along[0] ?? 0);
      }
  });

  test("a mark that the font cannot write is left out and says so", () => {
    const plate = plateOf(baseWith({ mark: "TR\u00c4GER" }));
    expect(plate.omitted).toEqual([{ kind: "mark", text: "TR\u00c4GER REV B", cause: "font" }]);
  });

  test("without a revision the mark stands alone", () => {
    const plate = plateOf(baseFixture(), jobFixture({ revision: "" }));
    expect(plate.marks.find(({ kind }) => kind === "mark")?.text).toBe("T1");
  });

  test("a shop that marks nothing still punches what it drills, with size and note", () => {
    const base = baseWith({ nailHoles: [{ at: at(11, 0), diameter: millimetres(4) }] });
    const plate = plateOf(base, marking({ how: "none" }));
    expect(plate.marks.map(({ kind, text }) => [kind, text])).toEqual([
      ["punch", ""],
      ["punch", "DRILL 0.1575"],
    ]);
    expect(plate.omitted).toEqual([]);
  });

  test("a punch mark is two strokes crossing on the hole's centre, inside the hole", () => {
    const plate = plateOf(baseWith({ nailHoles: [{ at: at(11, 1), diameter: inches(0.1875) }] }));
    const punch = plate.marks.find(({ kind, text }) => kind === "punch" && text === "");
    expect(punch?.strokes).toHaveLength(2);
    for (const stroke of punch?.strokes ?? []) {
      const [from, to] = [stroke[0], stroke[1]];
      if (from === undefined || to === undefined) throw new Error("a stroke has two ends");
      expect((from.x + to.x) / 2).toBeCloseTo(11 * 25.4, 6);
      expect((from.y + to.y) / 2).toBeCloseTo(25.4, 6);
      expect(millimetresBetween(from, to)).toBeLessThan(0.1875 * 25.4);
    }
    expect(plate.marks.map(({ text }) => text)).toContain("DRILL 3/16");
  });

  test("same plate, same marks", () => {
    expect(plateOf(baseFixture())).toEqual(plateOf(baseFixture()));
  });

  test("two hundred rods are laid out in reasonable time and all are tagged", () => {
    const group = groupFixture({
      pattern: { kind: "circle", diameter: nanometres(7e9), count: 200, start: { kind: "straddle" } },
    });
    const plate = plateOf(baseWith({ ...auto, support: bearers }, [group]));
    const said = [...plate.marks, ...plate.omitted].filter(({ kind }) => kind === "tag");
    expect(said).toHaveLength(200);
  });
});
