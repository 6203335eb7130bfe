/** Whatever the plate, its solid is closed, turned outward, and has a handle for each hole; rows of holes stand on lines. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { writeStl } from "../../src/formats/solid-stl.js";
import { circle, point, polygon, rectangle } from "../../src/geometry/index.js";
import type { Contour } from "../../src/geometry/vocabulary.js";
import { solidOfPlate } from "../../src/solids/plate-solid.js";
import type { Hole } from "../../src/template/model.js";
import { millimetres, nanometres } from "../../src/units/length.js";
import { plateOf, rectangularOpening, roundHole } from "../cut-plates.js";
import { faultsOf, readStl, shellsOf } from "../solid-check.js";

const corner = fc.constantFrom(
  { kind: "square" } as const,
  { kind: "round", radius: nanometres(12_345_679) } as const,
  { kind: "chamfer", x: nanometres(20_000_001), y: millimetres(31) } as const,
  { kind: "notch", x: millimetres(20), y: nanometres(10_000_003) } as const,
);

const slanted = fc
  .tuple(fc.array(fc.integer({ min: 380, max: 700 }), { minLength: 5, maxLength: 11 }), fc.integer({ min: 1, max: 20 }))
  .map(([reaches, radius]) =>
    polygon(
      reaches.map((reach, i) => {
        const angle = (2 * Math.PI * i) / reaches.length + 0.1;
        return point(reach * Math.cos(angle), reach * Math.sin(angle));
      }),
      { kind: "round", radius: millimetres(radius) },
    ),
  );

const outline: fc.Arbitrary<Contour> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 400, max: 3000 }), fc.integer({ min: 400, max: 3000 }), corner)
    .map(([x, y, treated]) => rectangle(point(0, 0), millimetres(x), nanometres(y * 1_000_000 + 1), treated)),
  fc.integer({ min: 600, max: 3000 }).map((diameter) => circle(point(0, 0), nanometres(diameter * 1_000_000 + 1))),
  slanted,
);

/** On a grid of 40 mm, whole or turned, some of them: none nearer to another than its diameter; all within 170 mm. */
const holes = fc
  .record({
    places: fc.uniqueArray(fc.integer({ min: 0, max: 48 }), { maxLength: 30 }),
    diameter: fc.integer({ min: 1, max: 30 }),
    turn: fc.constantFrom(0, Math.PI / 4, 0.3),
    openings: fc.boolean(),
  })
  .map(({ places, diameter, turn, openings }): readonly Hole[] =>
    places.map((place, i) => {
      const [u, v] = [40 * ((place % 7) - 3), 40 * (Math.floor(place / 7) - 3)];
      const at = point(u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn));
      return openings && i % 3 === 0 && turn === 0
        ? rectangularOpening(millimetres(diameter), millimetres(20), nanometres(i % 2 === 0 ? 0 : 400_000), at)
        : roundHole(`A${i}`, millimetres(at.x), millimetres(at.y), millimetres(diameter));
    }),
  );

it("a solid of any plate is closed", () => {
  fc.assert(
    fc.property(outline, holes, (outer, inner) => {
      const solid = solidOfPlate(plateOf(outer, inner));
      expect(solid).not.toBeNull();
      const { facets } = readStl(writeStl(solid === null ? [] : [solid], ""));
      expect(faultsOf(facets)).toEqual([]);
      expect(shellsOf(facets).map(({ genus }) => genus)).toEqual([inner.length]);
    }),
  );
});
