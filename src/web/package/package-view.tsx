/** Package. */
import type { JSX } from "preact";

/** Not built yet. */
export function PackageView(): JSX.Element {
  return <h2>Package</h2>;
}
