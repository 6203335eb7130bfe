/** Package. */
import type { JSX } from "preact";

/** Not built yet. */
export function PackageView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Package</h2>
    </section>
  );
}
