/** How a template's sheet is laid out, for plates of 6 in to 12 ft by 2 ft in both units: views apart, holes and letters that read. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SheetName } from "../../src/job/model/sheet-names.js";
import { drawSheet, hasRoomOn, type Scene, type SceneItem, type SheetRequest } from "../../src/sheets/index.js";
import { textBox } from "../../src/sheets/occupied.js";
import { sheetSizes } from "../../src/sheets/sheet-sizes.js";
import { inches, type Length, millimetres, nanometres, type Unit } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";
import { groupsOf, textsOf } from "../unit/sheets/scene-walk.js";
import { trySheetCase } from "../unit/sheets/sheet-case.js";

const origin = { x: nanometres(0), y: nanometres(0) };

/** A rectangular plate with rods in a grid a sixth of its sides in from its edges. */
function requestFor(unit: Unit, sides: readonly [number, number], counts: readonly [number, number]): SheetRequest {
  const length = (value: number): Length =>
    unit === "in" ? inches(Math.round(value * 16) / 16) : millimetres(Math.round(value * 25.4));
  const [x, y] = sides;
  const pattern = { kind: "rectangle", x: length(x / 1.5), y: length(y / 1.5), nx: counts[0], ny: counts[1] } as const;
  const base = baseFixture();
  const corner = { kind: "square" } as const;
  const outline = { kind: "rectangle", x: length(x), y: length(y), at: origin, corner } as const;
  const request = trySheetCase(jobFixture({ unit }), {
    ...base,
    groups: [groupFixture({ pattern: { ...pattern, perimeter: true } })],
    template: { ...base.template, outline, opening: { kind: "none" } },
  });
  if (request === null) throw new Error("no plate can be made");
  return request;
}

const plates = fc
  .record({
    unit: fc.constantFrom<Unit>("in", "mm"),
    long: fc.integer({ min: 6, max: 144 }),
    share: fc.integer({ min: 16, max: 100 }),
    upright: fc.boolean(),
    counts: fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 3 })),
  })
  .map(({ unit, long, share, upright, counts }) => {
    const short = Math.min(24, Math.max(6, Math.round((long * share) / 100)));
    const sides: readonly [number, number] = upright ? [short, long] : [long, short];
    return [unit, sides, counts] as const;
  });

interface Bounds {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** Every text, and every end of a line or arc; circles by their extent. */
function boundsOf(items: readonly SceneItem[]): Bounds {
  const bounds = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  const take = (x: number, y: number) => {
    bounds.x0 = Math.min(bounds.x0, x);
    bounds.y0 = Math.min(bounds.y0, y);
    bounds.x1 = Math.max(bounds.x1, x);
    bounds.y1 = Math.max(bounds.y1, y);
  };
  const walk = (item: SceneItem): void => {
    if (item.kind === "group") for (const inner of item.items) walk(inner);
    else if (item.kind === "text") for (const { x, y } of textBox(item)) take(x, y);
    else if (item.kind === "fill") for (const { x, y } of item.points) take(x, y);
    else
      for (const part of item.parts)
        if (part.kind === "circle") {
          take(part.center.x - part.radius, part.center.y - part.radius);
          take(part.center.x + part.radius, part.center.y + part.radius);
        } else for (const { x, y } of [part.from, part.to]) take(x, y);
  };
  for (const item of items) walk(item);
  return bounds;
}

const VIEWS = ["plan", "marks-view", "setting-section", "foot", "title-block", "signer", "notes", "cautions"] as const;

function overlaps(scene: Scene): readonly string[] {
  const parts = VIEWS.flatMap((name) =>
    groupsOf(scene.items, name).map(({ items }) => ({ name, box: boundsOf(items) })),
  );
  return parts.flatMap((a, i) =>
    parts
      .slice(i + 1)
      .filter(({ box }) => a.box.x0 < box.x1 && box.x0 < a.box.x1 && a.box.y0 < box.y1 && box.y0 < a.box.y1)
      .map((b) => `${a.name} over ${b.name}`),
  );
}

function leastRodHole({ plate }: SheetRequest, scene: Scene): number {
  const [plan] = groupsOf(scene.items, "plan");
  const diameters = plate.holes.flatMap(({ role, shape }) =>
    role === "rod" && shape.kind === "circle" ? [shape.diameter / 1e6] : [],
  );
  return Math.min(...diameters) * Number(plan?.data.scale);
}

describe("the layout of a sheet", () => {
  it("keeps views and tables apart and every text on the sheet, lettered as its size asks", () => {
    fc.assert(
      fc.property(plates, (plate) => {
        const request = requestFor(...plate);
        const scene = drawSheet(request);
        expect(overlaps(scene)).toEqual([]);
        const { x0, y0, x1, y1 } = boundsOf(scene.items);
        expect(Math.min(x0, y0, scene.width - x1, scene.height - y1)).toBeGreaterThanOrEqual(0);
        const size = sheetSizes(request.job.unit).find(({ name }) => name === scene.size);
        for (const { text, height } of textsOf(scene.items))
          expect(height, text).toBeGreaterThanOrEqual(size?.lettering.small ?? Infinity);
      }),
      { numRuns: 30 },
    );
  });

  // 4 mm: what a rod hole needs on paper to be read and told from a nail hole (common practice).
  it("draws rod holes of 4 mm at least, or as large as the largest sheet draws them", () => {
    fc.assert(
      fc.property(plates, (plate) => {
        const request = requestFor(...plate);
        const scene = drawSheet(request);
        const hole = leastRodHole(request, scene);
        if (hole >= 4 - 1e-9) return;
        const largest = sheetSizes(request.job.unit).at(-1)?.name as SheetName;
        const onLargest = drawSheet({ ...request, job: { ...request.job, sheet: largest } });
        expect(hole).toBeGreaterThanOrEqual(leastRodHole(request, onLargest));
      }),
      { numRuns: 30 },
    );
  });

  // 2 mm: a smaller circle on paper is not told from a dot (common practice); the largest size has no larger one to ask for.
  it("is on each size that a job may name as a sheet must be, or that size is refused", () => {
    const inside = { left: 20, other: 10 };
    fc.assert(
      fc.property(plates, fc.integer({ min: 0, max: 3 }), (plate, index) => {
        const request = requestFor(...plate);
        const size = sheetSizes(request.job.unit)[index];
        const name = size?.name as SheetName;
        if (!hasRoomOn(request, name)) return;
        const scene = drawSheet({ ...request, job: { ...request.job, sheet: name } });
        expect(scene.size).toBe(name);
        expect(overlaps(scene)).toEqual([]);
        if (index < 3) expect(leastRodHole(request, scene)).toBeGreaterThanOrEqual(2 - 1e-9);
        const { x0, y0, x1, y1 } = boundsOf(
          scene.items.filter((item) => item.kind !== "group" || item.name !== "frame"),
        );
        expect(x0, "left").toBeGreaterThanOrEqual(inside.left - 1e-6);
        expect(Math.min(y0, scene.width - x1, scene.height - y1)).toBeGreaterThanOrEqual(inside.other - 1e-6);
        for (const { text, height } of textsOf(scene.items))
          expect(height, text).toBeGreaterThanOrEqual(size?.lettering.small ?? Infinity);
        for (const group of ["signer", "cautions", "notes"]) expect(groupsOf(scene.items, group)).toHaveLength(1);
        expect(groupsOf(scene.items, "dimension").length).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  it("is never refused on the largest size, nor on the one that the program takes", () => {
    fc.assert(
      fc.property(plates, (plate) => {
        const request = requestFor(...plate);
        expect(hasRoomOn(request, sheetSizes(request.job.unit).at(-1)?.name ?? "")).toBe(true);
        expect(hasRoomOn(request, drawSheet(request).size)).toBe(true);
      }),
      { numRuns: 15 },
    );
  });

  it("says on a small size what was left to which file", () => {
    const request = requestFor("in", [18, 14], [2, 2]);
    const words = (sheet: SheetName) => {
      const scene = drawSheet({ ...request, job: { ...request.job, sheet } });
      return [
        scene.size,
        textsOf(scene.items)
          .map(({ text }) => text)
          .join(" "),
      ] as const;
    };
    const [small, said] = words("B");
    expect(small).toBe("B");
    expect(said).toMatch(/Left out for size B: .*summary\.json/);
    expect(words("D")[1]).not.toContain("Left out for size");
  });

  it("says on a small size too what found no room to be scribed", () => {
    const request = requestFor("in", [18, 14], [2, 2]);
    const plate = { ...request.plate, omitted: [{ kind: "axis", text: "+Y", cause: "room" }] as const };
    const { items, size } = drawSheet({ ...request, plate, job: { ...request.job, sheet: "B" } });
    const said = textsOf(items)
      .map(({ text }) => text)
      .join(" ");
    expect([size, said]).toEqual(["B", expect.stringMatching(/NOT SCRIBED, PAINT BY HAND: \+Y\./)]);
  });

  it("takes a larger size than one that has no room, which the program refuses before it draws", () => {
    const request = requestFor("in", [26, 18], [2, 2]);
    expect(hasRoomOn(request, "B")).toBe(false);
    const { size } = drawSheet({ ...request, job: { ...request.job, sheet: "B" } });
    expect([size, hasRoomOn(request, size)]).toEqual(["C", true]);
  });

  it("long plates, rings of views and the smallest plate are drawn at a usual scale on a sheet of the series", () => {
    for (const [sides, counts] of [
      [
        [144, 24],
        [4, 2],
      ],
      [
        [24, 144],
        [2, 3],
      ],
      [
        [6, 6],
        [2, 2],
      ],
    ] as const)
      for (const unit of ["in", "mm"] as const) {
        const scene = drawSheet(requestFor(unit, sides, counts));
        expect(sheetSizes(unit).map(({ name }) => name)).toContain(scene.size);
        for (const name of ["plan", "marks-view", "setting-section"])
          expect(groupsOf(scene.items, name)).toHaveLength(1);
      }
  });
});
