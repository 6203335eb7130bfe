/** Both flavours of plates of every shape, held against their own geometry by four readers nobody here wrote. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { writeJoinedDxf } from "../../../src/formats/cut-dxf-joined.js";
import { writeR12Dxf } from "../../../src/formats/cut-dxf-r12.js";
import { cutFileLayers } from "../../../src/formats/cut-file.js";
import type { Plate } from "../../../src/template/model.js";
import { type Length, NM_PER_UNIT } from "../../../src/units/length.js";
import { type CutPlate, cutOptions, cutPlates, figuresOf } from "../../cut-plates.js";
import { type CutFileToCheck, checkCutFilesOutside, isReaderSkipped, readerNames } from "./harness.js";

const folder = mkdtempSync(join(tmpdir(), "cut-plates-"));
afterAll(() => rmSync(folder, { recursive: true }));

const flavours = { joined: writeJoinedDxf, r12: writeR12Dxf };

const files: readonly CutFileToCheck[] = cutPlates.flatMap((made) =>
  Object.entries(flavours).map(([flavour, write]) => {
    const path = join(folder, `${made.name}-${flavour}.dxf`);
    writeFileSync(path, write(made.plate, cutOptions(made.unit)));
    return { path, ...expectationOf(made) };
  }),
);

function expectationOf(made: CutPlate): Omit<CutFileToCheck, "path"> {
  const { plate, unit } = made;
  const { extent, ...figures } = figuresOf(made);
  const { outer } = plate.region;
  return {
    ...{ unit, extent, ...figures },
    layers: cutFileLayers(plate, cutOptions(unit)),
    holes: roundHoles(plate, unit, made),
    roundOutline: outer.kind === "circle" ? inUnit(outer.diameter, unit) : null,
  };
}

function inUnit(length: Length, unit: "in" | "mm"): number {
  return length / NM_PER_UNIT[unit];
}

/** Positions from the lower left of the outline, as `figuresOf` gives the extent. */
function roundHoles(plate: Plate, unit: "in" | "mm", made: CutPlate): CutFileToCheck["holes"] {
  const mm = unit === "in" ? 25.4 : 1;
  const corner = made.lowerLeft;
  return plate.holes.flatMap(({ made: how, shape, center }) => {
    if (how !== "cut" || shape.kind !== "circle") return [];
    const diameter = inUnit(shape.diameter, unit);
    return [{ x: (center.x - corner.x) / mm, y: (center.y - corner.y) / mm, diameter }];
  });
}

describe.each(readerNames)("read by %s", (reader) => {
  it.skipIf(isReaderSkipped(reader))("both flavours are the plate", () => {
    expect(checkCutFilesOutside(reader, files)).toEqual([]);
  });

  it.skipIf(isReaderSkipped(reader))("a wrong expectation is found", () => {
    const [first] = files;
    if (first === undefined) throw new Error("no file");
    const wrong = { ...first, netArea: first.netArea * 1.01, pierces: first.pierces + 1 };
    expect(checkCutFilesOutside(reader, [wrong])).toHaveLength(2);
  });
});
