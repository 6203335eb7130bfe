/** The rows of the base that is shown, worst first. */
import type { JSX } from "preact";
import { usePart } from "../app/page.js";

/** Beside the drawing. */
export function BaseLedger(): JSX.Element {
  const checks = usePart((state) => state.sheet?.checks ?? []);
  return (
    <ol class="checks">
      {checks.map(({ rule, subject, status, note }, index) => (
        <li key={index} class={status}>
          {rule} {subject}: {status} {note}
        </li>
      ))}
    </ol>
  );
}
