/** Survey. */
import type { JSX } from "preact";

/** Not built yet. */
export function SurveyView(): JSX.Element {
  return <h2>Survey</h2>;
}
