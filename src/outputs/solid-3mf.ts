/** A piece of a template as a solid, 3MF. */
import { write3mf } from "../formats/solid-3mf.js";
import { solidOfPlate } from "../solids/plate-solid.js";
import type { PieceFile } from "./model.js";
import { SOLID_PATTERN, solidPath } from "./names.js";
import { pieceFacts } from "./solid-words.js";

/** Of what is cut or drilled; none of a held plate that is no one thing. */
export const solid3mf: PieceFile<"solid-3mf"> = {
  scope: "piece",
  kind: "solid-3mf",
  role: "document",
  title: "The same solid as 3MF, in the unit of the job, with its name",
  drawn: false,
  named: `${SOLID_PATTERN}.3mf`,
  applies: ({ held }, { plate }, includeHeld) => (held.length === 0 || includeHeld) && solidOfPlate(plate) !== null,
  path: (checked, piece) => `${solidPath(checked, piece)}.3mf`,
  write: (checked, { plate }) => {
    const solid = solidOfPlate(plate);
    return write3mf(solid === null ? [] : [solid], pieceFacts(checked, plate));
  },
};
