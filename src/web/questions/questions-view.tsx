/** Questions. */
import type { JSX } from "preact";

/** Not built yet. */
export function QuestionsView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Questions</h2>
    </section>
  );
}
