/** Schedule. */
import type { JSX } from "preact";

/** Not built yet. */
export function ScheduleView(): JSX.Element {
  return <h2>Schedule</h2>;
}
