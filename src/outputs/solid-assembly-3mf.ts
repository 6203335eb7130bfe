/** A template with its rods and nuts as solids, 3MF. */
import { write3mf } from "../formats/solid-3mf.js";
import { assemblyOf } from "../solids/assembly.js";
import type { BaseOutput } from "./model.js";
import { ASSEMBLY_PATTERN, assemblyPath } from "./names.js";
import { assemblyFacts } from "./solid-words.js";

/** Where every height is known; one for bases of a template that are alike. */
export const solidAssembly3mf: BaseOutput<"solid-assembly-3mf"> = {
  scope: "base",
  kind: "solid-assembly-3mf",
  role: "document",
  title: "The same as 3MF, in the unit of the job: one named object a part",
  drawn: false,
  named: `${ASSEMBLY_PATTERN}.3mf`,
  applies: (checked, includeHeld) => (checked.held.length === 0 || includeHeld) && assemblyOf(checked) !== null,
  path: (checked) => `${assemblyPath(checked)}.3mf`,
  write: (checked) => write3mf(assemblyOf(checked) ?? [], assemblyFacts(checked, checked.plate)),
};
