/** Questions. */
import type { JSX } from "preact";

/** Not built yet. */
export function QuestionsView(): JSX.Element {
  return <h2>Questions</h2>;
}
