/** Schedule. */
import type { JSX } from "preact";

/** Not built yet. */
export function ScheduleView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Schedule</h2>
    </section>
  );
}
