/** Compare. */
import type { JSX } from "preact";

/** Not built yet. */
export function CompareView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Compare</h2>
    </section>
  );
}
