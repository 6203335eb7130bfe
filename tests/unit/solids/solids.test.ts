/** Solids of plates and assemblies: closed, of true size, as many through holes as handles. Volumes: area times thickness. */
import { describe, expect, it } from "vitest";
import { writeStl } from "../../../src/formats/solid-stl.js";
import { circle, extentOf, measureArea, measurePerimeter, point, rectangle } from "../../../src/geometry/index.js";
import { PIECE_CHORD, solidOfPlate } from "../../../src/solids/plate-solid.js";
import type { Plate } from "../../../src/template/model.js";
import { inches, millimetres, NM_PER_MM } from "../../../src/units/length.js";
import { cutPlates, plateOf, roundHole } from "../../cut-plates.js";
import { faultsOf, readStl, shellsOf } from "../../solid-check.js";

function shellOfPlate(plate: Plate) {
  const solid = solidOfPlate(plate);
  if (solid === null) throw new Error("no solid");
  const { head, facets } = readStl(writeStl([solid], "test"));
  const shells = shellsOf(facets);
  const [shell] = shells;
  if (shell === undefined || shells.length !== 1) throw new Error(`${shells.length} shells`);
  return { head, faults: faultsOf(facets), shell, facets };
}

describe("the solid of a plate", () => {
  it.each(cutPlates.map((each) => [each.name, each.plate] as const))("%s", (_, plate) => {
    const { faults, shell } = shellOfPlate(plate);
    const contours = plate.holes.map(({ contour }) => contour);
    const thickness = plate.thickness / NM_PER_MM;
    expect(faults).toEqual([]);
    expect(shell.genus).toBe(plate.holes.length);
    const { x0, y0, x1, y1 } = extentOf(plate.region.outer);
    expect(shell.low).toEqual([x0, y0, 0].map(Math.fround));
    expect(shell.high).toEqual([x1, y1, thickness].map(Math.fround));
    const area = contours.reduce((sum, hole) => sum - measureArea(hole), measureArea(plate.region.outer));
    // a chord takes no more than its own length times its distance from the arc; corners stand within half a micrometre
    const most =
      [plate.region.outer, ...contours].reduce((sum, each) => sum + measurePerimeter(each), 0) * (PIECE_CHORD + 5e-4);
    expect(Math.abs(shell.volume - area * thickness)).toBeLessThan(most * thickness);
  });

  it("takes drilled holes as holes", () => {
    const nail = { ...roundHole("NH1", inches(3), inches(0), inches(0.1875), "nail"), made: "drill" } as const;
    const plate = plateOf(rectangle(point(0, 0), inches(10), inches(8)), [nail]);
    expect(shellOfPlate(plate).shell.genus).toBe(1);
  });

  it("is of chords no farther from an arc than is said", () => {
    const { facets } = shellOfPlate(plateOf(circle(point(0, 0), millimetres(500)), []));
    const walls = facets.filter(({ normal }) => Math.abs(normal[2]) < 0.5);
    const middles = walls.flatMap(({ corners: [a, b, c] }) =>
      (
        [
          [a, b],
          [b, c],
          [c, a],
        ] as const
      )
        .filter(([p, q]) => p[2] === q[2])
        .map(([p, q]) => Math.hypot(p[0] + q[0], p[1] + q[1]) / 2),
    );
    expect(middles.length).toBeGreaterThan(100);
    expect(Math.min(...middles)).toBeGreaterThan(250 - PIECE_CHORD - 1e-4);
    expect(Math.max(...middles)).toBeLessThan(250);
  });

  it.each([
    [
      "holes that cross",
      [
        roundHole("A1", millimetres(0), millimetres(0), millimetres(20)),
        roundHole("A2", millimetres(10), millimetres(0), millimetres(20)),
      ],
    ],
    [
      "holes that touch at a point",
      [
        roundHole("A1", millimetres(0), millimetres(0), millimetres(20)),
        roundHole("A2", millimetres(20), millimetres(0), millimetres(20)),
      ],
    ],
    ["a hole across the edge", [roundHole("A1", millimetres(100), millimetres(0), millimetres(20))]],
    ["a hole outside", [roundHole("A1", millimetres(150), millimetres(0), millimetres(20))]],
    [
      "a hole in a hole",
      [
        roundHole("A1", millimetres(0), millimetres(0), millimetres(60)),
        roundHole("A2", millimetres(0), millimetres(0), millimetres(20)),
      ],
    ],
    [
      "a hole on a hole",
      [
        roundHole("A1", millimetres(0), millimetres(0), millimetres(20)),
        roundHole("A2", millimetres(0), millimetres(0), millimetres(20)),
      ],
    ],
  ])("is none where there are %s", (_, holes) => {
    expect(solidOfPlate(plateOf(rectangle(point(0, 0), millimetres(200), millimetres(200)), holes))).toBeNull();
  });

  it("says unit and chord in its head, and does not look like text", () => {
    const { head } = shellOfPlate(plateOf(rectangle(point(0, 0), inches(10), inches(8)), []));
    expect(head).toMatch(/^STL, millimetres; test {3,}$/);
    const long = readStl(writeStl([], "Łódź ".repeat(40))).head;
    expect(long).toHaveLength(80);
    expect(long).toMatch(/^STL, millimetres; \?\?d\?/);
  });
});
