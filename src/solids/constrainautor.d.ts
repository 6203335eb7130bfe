/** The part of `@kninnug/constrainautor` that is used here; its own typing is its source, which other rules compile (see `paths`). */

/** What Delaunator gives; changed in place. */
interface Triangulation {
  readonly coords: ArrayLike<number>;
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
}

export default class Constrainautor {
  constructor(triangulation: Triangulation);
  /** By numbers of points; throws where edges cross or pass through a point. */
  constrainAll(edges: readonly (readonly [number, number])[]): this;
}
