/** Solid. */
import type { JSX } from "preact";

/** Not built yet. */
export function SolidView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Solid</h2>
    </section>
  );
}
