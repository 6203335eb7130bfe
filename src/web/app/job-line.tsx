/** The line at the top: which job is open, steps back and forth, where it is kept, and what can be done with it as a whole. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { printable } from "../../diagnostics/printable.js";
import type { OpenJob, PageState, Step } from "../state/model.js";
import { Asked, Lacking } from "./job-asks.js";
import { useActions, usePart } from "./page.js";
import { Press } from "./press.js";

/** Number, title and revision of the job as texts; undo and redo by the names of their steps; saving; what is asked. */
export function JobLine(): JSX.Element {
  const head = usePart((state) => state.live?.head ?? null);
  const job = usePart((state) => state.job);
  const title =
    head === null
      ? (job?.files.job ?? "rodplate")
      : `${head.number}  ${head.title}, rev ${head.revision}, ${head.status}`;
  return (
    <header class="job-line">
      <h1 title={printable(title)}>{printable(title)}</h1>
      {job !== null && <Standing />}
      <div class="steps">
        {job !== null && <Steps job={job} />}
        <JobMenu isOpen={job !== null} />
      </div>
      <Lacking />
      <Asked />
    </header>
  );
}

/** Where the job is kept, in words. What the browser refuses comes with a way out. */
function Standing(): JSX.Element {
  const words = usePart(standingWords);
  const isRefused = usePart((state) => state.keeping.kind === "refused");
  const { download, keepAgain } = useActions();
  return (
    <div class={isRefused ? "keeping refused" : "keeping"}>
      <span role="status">{printable(words)}</span>
      {isRefused && (
        <>
          <button type="button" onClick={download}>
            Download the job
          </button>
          <button type="button" onClick={keepAgain}>
            Try again
          </button>
        </>
      )}
    </div>
  );
}

function standingWords({ job, keeping }: PageState): string {
  if (job === null) return "";
  const place = placeWords(job);
  if (keeping.kind === "refused") return `Not kept: ${keeping.why}. ${place ?? "Only in this window"}.`;
  return place ?? "Kept in this browser";
}

/** null: it was never saved as it stands. */
function placeWords({ home, saved, text, files }: OpenJob): string | null {
  const name = home.kind === "file" ? home.handle.name : files.job;
  if (saved === text) return home.kind === "download" ? `Downloaded as ${name}` : `Saved in ${name}`;
  return saved === null ? null : `Not yet in ${name}`;
}

function Steps({ job }: { readonly job: OpenJob }): JSX.Element {
  const { undo, redo, save } = useActions();
  return (
    <>
      <StepButton word="Undo" step={job.steps[job.made - 1]} act={undo} />
      <StepButton word="Redo" step={job.steps[job.made]} act={redo} />
      <button type="button" onClick={save}>
        Save
      </button>
    </>
  );
}

interface StepButtonProps {
  readonly word: string;
  readonly step: Step | undefined;
  act(): Promise<void>;
}

/** The word, and the name of the step that it is about. */
function StepButton({ word, step, act }: StepButtonProps): JSX.Element {
  const name = step === undefined ? "" : printable(step.name);
  return (
    <Press
      class="step"
      isOff={step === undefined}
      title={step === undefined ? undefined : `${word} ${name}`}
      onPress={act}
    >
      {word} <span class="soft">{name}</span>
    </Press>
  );
}

/** What is done with a job as a whole; it closes when something was chosen, by Escape, and when something else is pressed. */
function JobMenu({ isOpen }: { readonly isOpen: boolean }): JSX.Element {
  const menu = useRef<HTMLDetailsElement>(null);
  const { openFromDisk, saveAs, download, share, close } = useActions();
  useEffect(() => {
    const shut = ({ target }: Event): void => {
      if (target instanceof Node && menu.current?.contains(target) !== true) menu.current?.removeAttribute("open");
    };
    document.addEventListener("pointerdown", shut);
    document.addEventListener("focusin", shut);
    return () => {
      document.removeEventListener("pointerdown", shut);
      document.removeEventListener("focusin", shut);
    };
  }, []);
  const item = (name: string, act: () => unknown): JSX.Element => (
    <button
      type="button"
      onClick={() => {
        menu.current?.removeAttribute("open");
        menu.current?.querySelector("summary")?.focus();
        act();
      }}
    >
      {name}
    </button>
  );
  const shutByKey = ({ key }: KeyboardEvent): void => {
    if (key !== "Escape") return;
    menu.current?.removeAttribute("open");
    menu.current?.querySelector("summary")?.focus();
  };
  return (
    <details class="job-menu" ref={menu} onKeyDown={shutByKey}>
      <summary class="button">Job</summary>
      <div class="choices">
        {item("Open a job file", openFromDisk)}
        {isOpen && item("Save as", saveAs)}
        {isOpen && item("Download", download)}
        {isOpen && item("Share as a link", share)}
        {isOpen && item("New or another job", close)}
      </div>
    </details>
  );
}
