/** An outline as it is made. */
import type { Contour } from "../geometry/index.js";

/** An outline; `sized` says how it was sized when that was automatic. */
export interface Outline {
  readonly contour: Contour;
  readonly sized: string | null;
}
