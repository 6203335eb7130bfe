/** Compare. */
import type { JSX } from "preact";

/** Not built yet. */
export function CompareView(): JSX.Element {
  return <h2>Compare</h2>;
}
