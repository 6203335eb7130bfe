/** A piece of a template as a solid, STL. */
import { writeStl } from "../formats/solid-stl.js";
import { solidOfPlate } from "../solids/plate-solid.js";
import type { PieceFile } from "./model.js";
import { SOLID_PATTERN, solidPath } from "./names.js";
import { pieceHead } from "./solid-words.js";

/** Of what is cut or drilled; none of a held plate that is no one thing. */
export const solidStl: PieceFile<"solid-stl"> = {
  scope: "piece",
  kind: "solid-stl",
  role: "document",
  title: "Solid of a piece as binary STL in millimetres: all its holes, no marks; chords within 0.01 mm of arcs",
  drawn: false,
  named: `${SOLID_PATTERN}.stl`,
  applies: ({ held }, { plate }, includeHeld) => (held.length === 0 || includeHeld) && solidOfPlate(plate) !== null,
  path: (checked, piece) => `${solidPath(checked, piece)}.stl`,
  write: (checked, { plate }) => {
    const solid = solidOfPlate(plate);
    return writeStl(solid === null ? [] : [solid], pieceHead(checked, plate));
  },
};
