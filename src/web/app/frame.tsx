/** The frame of the page: the job's line at the top, views beside it, the view itself. */
import type { ComponentChildren, JSX, RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { printable } from "../../diagnostics/printable.js";
import type { ViewName } from "../state/model.js";
import { useFocusKept } from "./focus-kept.js";
import { Help } from "./help.js";
import { JobLine } from "./job-line.js";
import { Notices } from "./notices.js";
import { useActions, usePart } from "./page.js";
import { VIEW_PARTS } from "./views.js";

/** The whole page. */
export function Frame(): JSX.Element {
  const view = usePart((state) => state.view);
  const main = useRef<HTMLElement>(null);
  const { Part, name } = VIEW_PARTS[view];
  useFocusKept(view, main);
  useTitle(name);
  return (
    <div class="frame">
      <SkipLink to={main} name={name} />
      <JobLine />
      <Views />
      <Main place={main} name={name}>
        <Part />
      </Main>
      <Notices />
    </div>
  );
}

interface MainProps {
  readonly place: RefObject<HTMLElement | null>;
  readonly name: string;
  readonly children: ComponentChildren;
}

/** By itself, so that the view is not drawn again when the engine begins or ends. */
function Main({ place, name, children }: MainProps): JSX.Element {
  const isWorking = usePart((state) => state.working);
  return (
    <main id="view" ref={place} aria-label={name} aria-busy={isWorking} tabIndex={-1}>
      {children}
    </main>
  );
}

/** Over line and views, for who goes by keys. */
function SkipLink({ to, name }: { readonly to: RefObject<HTMLElement | null>; readonly name: string }): JSX.Element {
  return (
    <button type="button" class="skip" onClick={() => to.current?.focus()}>
      To the view {name}
    </button>
  );
}

/** As it stands in the tab of the browser, the view first. */
function useTitle(name: string): void {
  const job = usePart(({ live }) => (live?.head ? `${live.head.number} ${live.head.title}` : ""));
  useEffect(() => {
    document.title = [name, printable(job), "rodplate"].filter((part) => part !== "").join(" - ");
  }, [name, job]);
}

/** Views that make a group with those before them, and views that begin another. */
const BEGINS_GROUP: readonly ViewName[] = ["template", "package", "proof"];

function Views(): JSX.Element {
  const shown = usePart((state) => state.view);
  const isOpen = usePart((state) => state.job !== null);
  const { show } = useActions();
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    list.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [shown]);
  const views = (Object.keys(VIEW_PARTS) as ViewName[]).filter(
    (view) => isOpen || VIEW_PARTS[view].needs === "nothing",
  );
  return (
    <nav class="views" aria-label="Views" ref={list}>
      {views.map((view) => (
        <button
          key={view}
          type="button"
          class={BEGINS_GROUP.includes(view) ? "begins" : undefined}
          aria-current={view === shown ? "page" : undefined}
          onClick={() => show(view)}
        >
          {VIEW_PARTS[view].name}
        </button>
      ))}
      <Help />
    </nav>
  );
}
