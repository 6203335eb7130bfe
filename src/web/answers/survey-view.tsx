/** Survey. */
import type { JSX } from "preact";

/** Not built yet. */
export function SurveyView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Survey</h2>
    </section>
  );
}
