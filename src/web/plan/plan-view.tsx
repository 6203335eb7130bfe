/** Plan. */
import type { JSX } from "preact";

/** Not built yet. */
export function PlanView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Plan</h2>
    </section>
  );
}
