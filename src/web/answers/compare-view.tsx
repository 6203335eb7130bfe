/** Compare: two states of a job, and what must be cut again. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useActions, usePart } from "../app/page.js";
import { Press } from "../app/press.js";
import type { CompareAnswer } from "../engine/compare-model.js";
import type { Dropped } from "../engine/dropped.js";
import type { CompareSource } from "../engine/task-model.js";
import { today } from "../state/clock.js";
import type { OpenJob } from "../state/model.js";
import { filesNow } from "../state/model.js";
import { AnswerFiles, listedOf } from "./answer-files.js";
import { AnswerTable } from "./answer-table.js";
import { DropZone } from "./drop-zone.js";
import { Signature } from "./proof-view.js";
import { TextToCopy } from "./text-to-copy.js";
import { Said, useWork, Verdict, WorkShown } from "./work-shown.js";

const HINT = "A package as a ZIP or in its folder, its summary.json, or a job file with the sheets that it names.";

/** The job that is open stands for the new one until something is dropped there. */
export function CompareView(): JSX.Element {
  const job = usePart((state) => state.job);
  const head = usePart((state) => state.live?.head ?? null);
  const [old, setOld] = useState<readonly Dropped[]>([]);
  const [fresh, setFresh] = useState<readonly Dropped[]>([]);
  const isRunning = useWork("compare")?.kind === "running";
  const { work } = useActions();
  const ask = (from: readonly Dropped[], to: readonly Dropped[]): void => {
    const side = to.length > 0 ? droppedSide(to) : openSide(job);
    if (from.length > 0 && side !== null) work("compare", { old: droppedSide(from), fresh: side, date: today() });
  };
  const openName =
    job === null
      ? []
      : [head === null ? "the job that is open" : `the job that is open: ${head.number} rev ${head.revision}`];
  return (
    <section class="reading compare">
      <h2>Compare</h2>
      <p class="soft">
        What changed between two states of a job, template by template, and which plates that may be cut already must be
        cut again.
      </p>
      <div class="asked-for sides">
        <DropZone
          ask="The old one..."
          hint={HINT}
          isMany
          takesFolders
          taken={old.map(({ name }) => name)}
          onFiles={(files) => {
            setOld(files);
            ask(files, fresh);
          }}
        />
        <DropZone
          ask="The new one..."
          hint={job === null ? HINT : `Nothing dropped: the job that is open. ${HINT}`}
          isMany
          takesFolders
          taken={fresh.length > 0 ? fresh.map(({ name }) => name) : openName}
          onFiles={(files) => {
            setFresh(files);
            ask(old, files);
          }}
        />
        <p class="row">
          <Press
            class="main"
            isOff={isRunning || old.length === 0 || (fresh.length === 0 && job === null)}
            onPress={() => ask(old, fresh)}
          >
            Compare
          </Press>
          {fresh.length > 0 && job !== null && (
            <button
              type="button"
              onClick={() => {
                setFresh([]);
                ask(old, []);
              }}
            >
              Take the open job for the new one
            </button>
          )}
        </p>
      </div>
      <WorkShown kind="compare" doing="Comparing" sentence={({ sentence }) => sentence}>
        {({ answer }) => <Answer answer={answer} />}
      </WorkShown>
    </section>
  );
}

const droppedSide = (files: readonly Dropped[]): CompareSource => ({ kind: "dropped", files });

function openSide(job: OpenJob | null): CompareSource | null {
  return job === null ? null : { kind: "job", name: job.files.job, files: filesNow(job) };
}

function Answer({ answer }: { readonly answer: CompareAnswer }): JSX.Element {
  return (
    <div class="answer">
      <Verdict isBad={answer.isBad} sentence={answer.sentence} />
      {answer.sides.map((words) => (
        <p key={words}>{words}</p>
      ))}
      <Said lines={answer.said} />
      <AnswerTable table={answer.templates} name="Templates, worst first" />
      {answer.rods === null ? (
        <p>Rods are not compared: one of the two does not list them.</p>
      ) : (
        <AnswerTable table={answer.rods} name="Rods, worst first" />
      )}
      <dl class="meanings">
        {answer.meanings.map(([label, words]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {answer.signatures.length > 0 && <h3>Signatures of the old one, for the new one</h3>}
      {answer.signatures.map((each, i) => (
        <Signature key={i} {...each} />
      ))}
      <details>
        <summary>The same as text</summary>
        <TextToCopy text={answer.text} name="The comparison as text" file="compare.txt" />
      </details>
      <AnswerFiles files={listedOf(answer.files)} name="Files of the comparison" />
    </div>
  );
}
