/** An outline as it is made. */
import type { Contour, Vertex } from "../geometry/index.js";

/** An outline; `sized` says how it was sized when that was automatic. */
export interface Outline {
  readonly contour: Contour;
  /** The corners that the contour was made of, counter-clockwise; none for a circle. */
  readonly vertices: readonly Vertex[];
  readonly sized: string | null;
}
