/** Proof. */
import type { JSX } from "preact";

/** Not built yet. */
export function ProofView(): JSX.Element {
  return <h2>Proof</h2>;
}
