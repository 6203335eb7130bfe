/** A template with its rods and nuts as solids, STL. */
import { writeStl } from "../formats/solid-stl.js";
import { assemblyOf } from "../solids/assembly.js";
import type { BaseOutput } from "./model.js";
import { ASSEMBLY_PATTERN, assemblyPath } from "./names.js";
import { assemblyHead } from "./solid-words.js";

/** Where every height is known; one for bases of a template that are alike. */
export const solidAssemblyStl: BaseOutput<"solid-assembly-stl"> = {
  scope: "base",
  kind: "solid-assembly-stl",
  role: "document",
  title:
    "Template with its rods and nuts, for reference, as binary STL in millimetres; where all heights are known; chords within 0.1 mm of arcs",
  drawn: false,
  named: `${ASSEMBLY_PATTERN}.stl`,
  applies: (checked, includeHeld) => (checked.held.length === 0 || includeHeld) && assemblyOf(checked) !== null,
  path: (checked) => `${assemblyPath(checked)}.stl`,
  write: (checked) => writeStl(assemblyOf(checked) ?? [], assemblyHead(checked, checked.plate)),
};
