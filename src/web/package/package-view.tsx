/** The package: what stands in its way, how it is made, and what is in it. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { PAPER_NAMES, type PaperName } from "../../outputs/paper-names.js";
import { AnswerFiles } from "../answers/answer-files.js";
import { DropZone } from "../answers/drop-zone.js";
import { save, sizeWords, unpacked } from "../answers/save.js";
import { OfBefore, Said, useWork, Verdict, WorkShown } from "../answers/work-shown.js";
import { useActions, usePart } from "../app/page.js";
import { Press } from "../app/press.js";
import type { MadePackage, PackedPart } from "../engine/package-model.js";
import { today } from "../state/clock.js";
import { filesNow } from "../state/model.js";
import { isOfBefore } from "../state/work-actions.js";
import { CheckText } from "./check-text.js";
import { InTheWay } from "./in-the-way.js";

const PAPERS: Readonly<Record<PaperName, string>> = {
  letter: "Letter",
  tabloid: "Tabloid, 11 x 17",
  a4: "A4",
  a3: "A3",
};

/** Made in a thread of its own. */
export function PackageView(): JSX.Element {
  const isRunning = useWork("package")?.kind === "running";
  return (
    <section class="reading package">
      <h2>Package</h2>
      <p class="soft">
        Everything that leaves with the rods, in one ZIP: cut files, sheets, the set as one PDF, rod lists, setting-out
        files, the checking page, questions and their letter. The same files, byte for byte, as rodplate make writes.
      </p>
      <InTheWay />
      <Options isRunning={isRunning} />
      <WorkShown kind="package" doing="Making the package" sentence={sentenceOf}>
        {({ ask, answer }) => <Made answer={answer} asked={ask.files} />}
      </WorkShown>
      <CheckText />
    </section>
  );
}

function Options({ isRunning }: { readonly isRunning: boolean }): JSX.Element {
  const job = usePart((state) => state.job);
  const register = useWork("register");
  const [paper, setPaper] = useState<PaperName | null>(null);
  const [includeHeld, setHeld] = useState(false);
  const { work, putAway } = useActions();
  const before = register?.kind === "done" ? register.answer : null;
  const make = (): void => {
    if (job !== null) work("package", { files: filesNow(job), date: today(), paper, includeHeld, register: before });
  };
  return (
    <form
      class="asked-for"
      onSubmit={(event) => {
        event.preventDefault();
        make();
      }}
    >
      <label>
        Paper of the set
        <select
          value={paper ?? ""}
          onChange={({ currentTarget }) => setPaper(PAPER_NAMES.find((name) => name === currentTarget.value) ?? null)}
        >
          <option value="">Each page as large as its sheet</option>
          {PAPER_NAMES.map((name) => (
            <option key={name} value={name}>
              {PAPERS[name]}
            </option>
          ))}
        </select>
      </label>
      <label class="tick">
        <input type="checkbox" checked={includeHeld} onChange={({ currentTarget }) => setHeld(currentTarget.checked)} />{" "}
        Cut files of held bases too, with HELD in their names
      </label>
      <DropZone
        ask="Earlier package..."
        hint="Numbers of questions go on from it: drop its ZIP, its folder, or its summary.json."
        takesFolders
        onFiles={([file]) => file !== undefined && work("register", file)}
      />
      <WorkShown kind="register" doing="Reading the earlier package">
        {({ answer: { name, register: found } }) => (
          <p class="row">
            <span>
              {name}: job {found.job}, revision {found.revision},{" "}
              {found.questions === 1 ? "1 question" : `${found.questions} questions`}.
            </span>
            <button type="button" onClick={() => putAway("register")}>
              Do without it
            </button>
          </p>
        )}
      </WorkShown>
      <Press class="main" isOff={isRunning || job === null}>
        Make the package
      </Press>
    </form>
  );
}

function Made({
  answer,
  asked,
}: {
  readonly answer: MadePackage;
  readonly asked: Parameters<typeof isOfBefore>[0];
}): JSX.Element {
  const job = usePart((state) => state.job);
  const { show } = useActions();
  const files = answer.parts.reduce((sum, part) => sum + part.files.length, 0) + 1;
  return (
    <div class="answer">
      <Verdict isBad={answer.held.length + answer.layoutHeld.length > 0} sentence={sentenceOf(answer)} />
      {isOfBefore(asked, job) && <OfBefore />}
      <p class="row">
        <button type="button" class="main" onClick={() => save(answer.name, answer.zip)}>
          Save {answer.name}
        </button>
        <span class="soft">
          {files} files, {sizeWords(answer.zip.size)}
        </span>
        <button type="button" onClick={() => show("sign")}>
          Sign it
        </button>
        <AgainstEarlier answer={answer} />
      </p>
      <Said lines={answer.said} />
      <HeldBases answer={answer} />
      <p>
        Open first: <strong>START-HERE.txt</strong>. It says who opens what.
      </p>
      {answer.parts.map((part) => (
        <Part key={part.folder} part={part} zip={answer.zip} />
      ))}
    </div>
  );
}

/** What changed since the earlier package, where one was handed over. */
function AgainstEarlier({ answer: { name, zip } }: { readonly answer: MadePackage }): JSX.Element | null {
  const earlier = useWork("register");
  const { show, work } = useActions();
  if (earlier?.kind !== "done") return null;
  const compare = (): void => {
    const fresh = { kind: "dropped", files: [{ name, blob: zip }] } as const;
    work("compare", { old: { kind: "dropped", files: [earlier.ask] }, fresh, date: today() });
    show("compare");
  };
  return (
    <button type="button" onClick={compare}>
      What must be cut again
    </button>
  );
}

function sentenceOf({ job, bases, held, layoutHeld, open, unreleased }: MadePackage): string {
  const what = `Made: job ${job.number}, revision ${job.revision}, ${job.status}`;
  const count = bases === 1 ? "1 base" : `${bases} bases`;
  const stops = [
    ...(held.length === 0 ? [] : [`${held.length} held`]),
    ...(layoutHeld.length === 0 ? [] : ["setting-out files held"]),
    ...(open === 0 ? [] : [open === 1 ? "1 question open" : `${open} questions open`]),
    ...(unreleased.length === 0 ? [] : [`NOT RELEASED by open questions: ${unreleased.join(", ")}`]),
    ...(job.status === "released" ? [] : ["NOT RELEASED"]),
  ];
  return `${what}; ${count}${stops.length === 0 ? ", nothing held, no question open" : `, ${stops.join(", ")}`}.`;
}

function HeldBases({ answer: { held, layoutHeld } }: { readonly answer: MadePackage }): JSX.Element | null {
  if (held.length + layoutHeld.length === 0) return null;
  return (
    <details>
      <summary>What is held, and why</summary>
      <ul>
        {held.map(({ mark, reasons }) => (
          <li key={mark}>
            <strong>{mark}</strong> {reasons.join("; ")}
          </li>
        ))}
        {layoutHeld.map((reason) => (
          <li key={reason}>
            <strong>Layout</strong> {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Long folders are folded; what is in them is listed when they are opened. */
const FEW = 12;

function Part({
  part: { folder, who, how, first, files },
  zip,
}: {
  readonly part: PackedPart;
  readonly zip: Blob;
}): JSX.Element {
  const isTop = folder === "";
  const [isOpen, setOpen] = useState(isTop || files.length <= FEW);
  const listed = [...files]
    .sort((a, b) => Number(b.path === first) - Number(a.path === first))
    .map(({ path, title, bytes, place }) => ({ path, title, bytes, blob: () => unpacked(zip, place) }));
  return (
    <details class="part" open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        {who[0]?.toUpperCase()}
        {who.slice(1)}: {isTop ? "at the top" : folder} ({files.length})
      </summary>
      {how.map((words) => (
        <p key={words} class="soft">
          {words}
        </p>
      ))}
      {first !== null && <p>Open first: {first}</p>}
      {isOpen && <AnswerFiles files={listed} name={`Files for: ${who}`} />}
    </details>
  );
}
