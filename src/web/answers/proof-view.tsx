/** Proof. */
import type { JSX } from "preact";

/** Not built yet. */
export function ProofView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Proof</h2>
    </section>
  );
}
