/** Proof: any cut file or package is dropped; what is wrong with it, and which template it is, comes back. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useActions, usePart } from "../app/page.js";
import type { Dropped } from "../engine/dropped.js";
import type { ProofAnswer, ProvedArchive, ProvedPicture } from "../engine/proof-model.js";
import type { ShownSignature } from "../engine/shown-signature.js";
import { today } from "../state/clock.js";
import { filesNow } from "../state/model.js";
import { AnswerFiles, listedOf } from "./answer-files.js";
import { CutPicture } from "./cut-picture.js";
import { DropZone } from "./drop-zone.js";
import { TextToCopy } from "./text-to-copy.js";
import { Said, Verdict, WorkShown } from "./work-shown.js";

/** Dropping is asking. */
export function ProofView(): JSX.Element {
  const job = usePart((state) => state.job);
  const head = usePart((state) => state.live?.head ?? null);
  const [isAgainst, setAgainst] = useState(true);
  const [dropped, setDropped] = useState<readonly Dropped[]>([]);
  const { work } = useActions();
  const ask = (files: readonly Dropped[], against: boolean): void => {
    if (files.length > 0)
      work("proof", { dropped: files, against: against && job !== null ? filesNow(job) : null, date: today() });
  };
  return (
    <section class="reading proof">
      <h2>Proof</h2>
      <p class="soft">
        What is wrong with a cut file, whoever drew it, and which template it is; or whether a package is the one that
        was checked.
      </p>
      <div class="asked-for">
        <DropZone
          ask="Cut files or a package..."
          hint="DXF files, a package as a ZIP or in its folder, or a ZIP or folder of DXF files."
          isMany
          takesFolders
          taken={dropped.map(({ name }) => name)}
          onFiles={(files) => {
            setDropped(files);
            ask(files, isAgainst);
          }}
        />
        {job !== null && (
          <label class="tick">
            <input
              type="checkbox"
              checked={isAgainst}
              onChange={({ currentTarget }) => {
                setAgainst(currentTarget.checked);
                ask(dropped, currentTarget.checked);
              }}
            />{" "}
            Against the job that is open{head === null ? "" : `: ${head.number} rev ${head.revision}`}
          </label>
        )}
      </div>
      <WorkShown kind="proof" doing="Proving" sentence={({ sentence }) => sentence}>
        {({ answer }) => (
          <div class="answer">
            <Verdict isBad={answer.isStopped} sentence={answer.sentence} />
            <Said lines={answer.said} />
            {answer.packages.map((each) => (
              <Package key={each.proved.path} found={each} />
            ))}
            <Files answer={answer} />
            <details>
              <summary>The same as text</summary>
              <TextToCopy text={answer.text} name="The proof as text" file="proof.txt" />
            </details>
            <AnswerFiles files={listedOf(answer.files)} name="Files of the proof" />
          </div>
        )}
      </WorkShown>
    </section>
  );
}

function Files({ answer: { proved: files } }: { readonly answer: ProofAnswer }): JSX.Element {
  return (
    <>
      {files.map((each, i) => (
        <File key={i} proved={each} isOpen={files.length === 1} />
      ))}
    </>
  );
}

const isStop = ({ severity }: { readonly severity: "stop" | "advise" | null }): boolean => severity === "stop";

function File({
  proved: { file, picture, facts },
  isOpen,
}: {
  readonly proved: ProvedPicture;
  readonly isOpen: boolean;
}): JSX.Element {
  const stops = file.findings.filter(isStop).length;
  return (
    <details class="part" open={isOpen || stops > 0}>
      <summary>
        {file.path}{" "}
        <span class={`state ${stops > 0 ? "held" : "clear"}`}>{stops > 0 ? `stop ${stops}` : "no stop"}</span>
      </summary>
      {facts.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <div class="proved">
        <ol class="findings" aria-label={`Findings of ${file.path}`}>
          {file.findings.map((finding, i) => (
            <li key={i} class={finding.severity}>
              <span class={`state ${isStop(finding) ? "held" : "asked"}`}>{isStop(finding) ? "stop" : "look"}</span>{" "}
              {finding.message}
              {finding.count > 1 ? `, ${finding.count} times` : ""}
              {finding.at === null ? "" : `, at ${plain(finding.at[0])}, ${plain(finding.at[1])}`}
            </li>
          ))}
        </ol>
        {picture !== null && <CutPicture picture={picture} name={`What ${file.path} draws, with its findings`} />}
      </div>
    </details>
  );
}

const plain = (value: number): string => String(Math.round(value * 1000) / 1000);

function Package({ found: { proved, signatures } }: { readonly found: ProvedArchive }): JSX.Element {
  const told = proved.files.filter(({ severity }) => severity !== null);
  const right = proved.files.length - told.length;
  const { number, revision, status } = proved.job;
  return (
    <div class="proved-package">
      <h3>{proved.path}</h3>
      <p>
        Package of job {number}, revision {revision}, {status}: {right} {right === 1 ? "file is" : "files are"} as they
        were checked{told.length === 0 ? "" : `, ${told.length} to look at`}.
      </p>
      <ul>
        {told.map(({ path, severity, message }) => (
          <li key={path}>
            <span class={`state ${severity === "stop" ? "held" : "asked"}`}>
              {severity === "stop" ? "stop" : "look"}
            </span>{" "}
            {path} {message}
          </li>
        ))}
      </ul>
      {signatures.length === 0 ? (
        <p>
          Not signed: that every file agrees with summary.json is known, not that nobody has written all of them anew.
        </p>
      ) : (
        signatures.map((each, i) => <Signature key={i} {...each} />)
      )}
    </div>
  );
}

/** A signature in lines; a void one loudly. */
export function Signature({ lines: [first = "", ...others], isVoid }: ShownSignature): JSX.Element {
  return (
    <div class={isVoid ? "signature void" : "signature"}>
      <p>
        <strong>{first}</strong>
      </p>
      {others.map((line, i) => (
        <p key={i} class="under">
          {line.trim()}
        </p>
      ))}
    </div>
  );
}
