/** Which hole of the base plate stands. */

import type { Length } from "../../units/length.js";
import type { RodGroup, TemplateSpec } from "./job.js";
import type { Input } from "./values.js";

/** True for a plate dropped over cast rods: it takes the base plate's holes, holds no rod, and carries no nut. */
export function isSetOverCastRods({ use }: { readonly use?: TemplateSpec["use"] | undefined }): boolean {
  return use === "setting plate over cast rods";
}

/** The base-plate hole that the job gives; with `orTable` that of the edition where the job gives none. */
export function baseHoleOf(
  { baseHole, tableBaseHole }: Pick<RodGroup, "baseHole" | "tableBaseHole">,
  { orTable }: { readonly orTable: boolean },
): Input<Length> {
  return orTable && baseHole.kind === "missing" ? tableBaseHole : baseHole;
}
