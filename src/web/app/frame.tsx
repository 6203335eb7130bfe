/** The frame of the page: the job's line at the top, views beside it, the view itself. */
import type { JSX } from "preact";
import type { ViewName } from "../state/model.js";
import { JobLine } from "./job-line.js";
import { Notices } from "./notices.js";
import { useActions, usePart } from "./page.js";
import { VIEW_PARTS } from "./views.js";

/** The whole page. */
export function Frame(): JSX.Element {
  const view = usePart((state) => state.view);
  const { Part, name } = VIEW_PARTS[view];
  return (
    <div class="frame">
      <JobLine />
      <Views />
      <main id="view" aria-label={name} tabIndex={-1}>
        <Part />
      </main>
      <Notices />
    </div>
  );
}

function Views(): JSX.Element {
  const shown = usePart((state) => state.view);
  const isOpen = usePart((state) => state.job !== null);
  const { show } = useActions();
  const views = (Object.keys(VIEW_PARTS) as ViewName[]).filter(
    (view) => isOpen || VIEW_PARTS[view].needs === "nothing",
  );
  return (
    <nav class="views" aria-label="Views">
      {views.map((view) => (
        <button key={view} type="button" aria-current={view === shown ? "page" : undefined} onClick={() => show(view)}>
          {VIEW_PARTS[view].name}
        </button>
      ))}
    </nav>
  );
}
