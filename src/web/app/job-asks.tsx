/** What is asked of a job under its line: files that it names and that are not here, and what waits for a yes or no. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { printable } from "../../diagnostics/printable.js";
import type { Asking } from "../state/model.js";
import { useActions, usePart } from "./page.js";

/** So many names are shown; the others are counted. */
const MOST_NAMES = 4;

/** Files that the job names and that were not handed in, each to be found or dropped. */
export function Lacking(): JSX.Element | null {
  const files = usePart((state) => state.live?.files ?? null);
  const { findBeside } = useActions();
  const lacking = [...new Set((files ?? []).filter(({ isThere }) => !isThere).map(({ name }) => name))];
  if (lacking.length === 0) return null;
  return (
    <section class="ask" aria-label="Files that the job names">
      <p>The job names {lacking.length === 1 ? "a file that is" : `${lacking.length} files that are`} not here:</p>
      {lacking.slice(0, MOST_NAMES).map((name) => (
        <button key={name} type="button" onClick={() => findBeside(name)}>
          Find {printable(name)}
        </button>
      ))}
      {lacking.length > MOST_NAMES && <p>and {lacking.length - MOST_NAMES} more; drop them here.</p>}
    </section>
  );
}

/** What waits for an answer; it takes the focus, so that a keyboard and a screen reader come upon it. */
export function Asked(): JSX.Element | null {
  const asking = usePart((state) => state.asking);
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asking !== null) place.current?.focus();
  }, [asking]);
  if (asking === null) return null;
  return (
    <section class="ask" aria-label="Question" tabIndex={-1} ref={place}>
      {choicesOf(asking)}
    </section>
  );
}

function choicesOf(asking: Asking): JSX.Element {
  switch (asking.kind) {
    case "link":
      return <LinkAsk asking={asking} />;
    case "broken":
      return <BrokenAsk why={asking.why} />;
    case "shared":
      return <SharedAsk asking={asking} />;
    case "changed":
      return <ChangedAsk name={asking.name} />;
    case "throw":
      return <ThrowAsk asking={asking} />;
  }
}

function Decline({ children }: { readonly children: string }): JSX.Element {
  const { decline } = useActions();
  return (
    <button type="button" onClick={decline}>
      {children}
    </button>
  );
}

function Agree({ children }: { readonly children: string }): JSX.Element {
  const { agree } = useActions();
  return (
    <button type="button" class="main" onClick={agree}>
      {children}
    </button>
  );
}

function LinkAsk({ asking }: { readonly asking: Extract<Asking, { kind: "link" }> }): JSX.Element {
  const { title, bases, files, lacks } = asking;
  const size = Math.ceil((files.files.get(files.job)?.length ?? 0) / 1000);
  const named = title === "" ? files.job : `${title} (${files.job})`;
  return (
    <>
      <p>
        The link holds a job: {printable(named)}, {bases === 1 ? "1 base" : `${bases} bases`}, {size} kB. Nothing of it
        is open yet. {lacks.length > 0 && `Not in the link: ${namesOf(lacks)}.`}
      </p>
      <Agree>Open the job of the link</Agree>
      <Decline>Leave it</Decline>
    </>
  );
}

function BrokenAsk({ why }: { readonly why: string }): JSX.Element {
  return (
    <>
      <p class="fault">{printable(why)} Ask for the job file instead.</p>
      <Decline>Put away</Decline>
    </>
  );
}

function SharedAsk({ asking }: { readonly asking: Extract<Asking, { kind: "shared" }> }): JSX.Element {
  const { link, signs, lacks } = asking;
  const { download } = useActions();
  const beside = lacks.length > 0 && <p>Not in the link, to be sent beside it: {namesOf(lacks)}.</p>;
  if (link === null) {
    return (
      <>
        <p class="fault">
          As a link this job would have {signs} characters, and long links are cut on their way: 30000 are safe. Send
          its file instead.
        </p>
        <button type="button" class="main" onClick={download}>
          Download the job
        </button>
        <Decline>Put away</Decline>
      </>
    );
  }
  return (
    <>
      <LinkField link={link} />
      <p>
        The whole job is in the link, {signs} characters; whoever has it can read the job. {whereOpened()}
      </p>
      {beside}
      <Decline>Put away</Decline>
    </>
  );
}

/** A page of this machine is at no other one's. */
function whereOpened(): string {
  const { protocol, hostname } = window.location;
  if (protocol === "file:")
    return "It opens the page where it lies on this machine; elsewhere, put what begins with # behind the address of the page there.";
  return /^(127\.0\.0\.1|localhost|\[::1\])$/.test(hostname)
    ? "It opens where rodplate open runs at this address."
    : "It is not sent to the server when it is opened.";
}

function LinkField({ link }: { readonly link: string }): JSX.Element {
  const field = useRef<HTMLInputElement>(null);
  const { say } = useActions();
  const copy = async (): Promise<void> => {
    field.current?.select();
    const isCopied = await navigator.clipboard?.writeText(link).then(
      () => true,
      () => false,
    );
    say(
      isCopied === true
        ? "The link is copied."
        : "The browser does not let the page copy: the link is marked, copy it.",
    );
  };
  return (
    <>
      <input ref={field} class="link" aria-label="Link" readOnly value={link} onFocus={() => field.current?.select()} />
      <button type="button" class="main" onClick={copy}>
        Copy the link
      </button>
    </>
  );
}

function ChangedAsk({ name }: { readonly name: string }): JSX.Element {
  const { saveAs } = useActions();
  return (
    <>
      <p class="fault">
        {printable(name)} was changed by somebody else since it was opened. It is left as it is, and so is yours here.
      </p>
      <Agree>Take what is in the file, as a step that can be undone</Agree>
      <button type="button" onClick={saveAs}>
        Save yours as another file
      </button>
      <Decline>Later</Decline>
    </>
  );
}

function ThrowAsk({ asking: { job } }: { readonly asking: Extract<Asking, { kind: "throw" }> }): JSX.Element {
  const { title, file, steps, isUnsaved } = job;
  return (
    <>
      <p>
        Throw away {printable(title === "" ? file : title)} with {steps === 1 ? "1 step" : `${steps} steps`}?{" "}
        {isUnsaved ? "It is in no file as it stands." : "Its file stays."} This cannot be undone.
      </p>
      <Agree>Throw it away</Agree>
      <Decline>Keep it</Decline>
    </>
  );
}

function namesOf(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).map(printable).join(", ");
  return names.length > MOST_NAMES ? `${shown} and ${names.length - MOST_NAMES} more` : shown;
}
