/** Solid. */
import type { JSX } from "preact";

/** Not built yet. */
export function SolidView(): JSX.Element {
  return <h2>Solid</h2>;
}
