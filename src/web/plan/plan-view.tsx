/** Plan. */
import type { JSX } from "preact";

/** Not built yet. */
export function PlanView(): JSX.Element {
  return <h2>Plan</h2>;
}
