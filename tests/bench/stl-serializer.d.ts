/** The package is not typed. */
declare module "@jscad/stl-serializer" {
  import type { Geom3 } from "@jscad/modeling/src/geometries/types.js";
  export function serialize(
    options: { readonly binary: boolean },
    ...objects: readonly Geom3[]
  ): readonly ArrayBuffer[];
}
