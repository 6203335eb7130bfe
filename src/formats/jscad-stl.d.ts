/** The binary writer of @jscad/stl-serializer and the geometries that it takes; neither is typed where it stands. */
declare module "@jscad/stl-serializer/CSGToStlb.js" {
  import type { geom3 } from "@jscad/modeling/src/geometries/index.js";
  /** Head of 80 bytes, number of triangles, triangles. */
  export function serializeBinary(objects: readonly geom3.Geom3[], options: object): readonly ArrayBuffer[];
}
