/** Signing: who has checked a package, bound to the hashes of all that is in it. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useActions } from "../app/page.js";
import { Press } from "../app/press.js";
import type { Dropped } from "../engine/dropped.js";
import type { SignAnswer } from "../engine/sign-model.js";
import { instant, today } from "../state/clock.js";
import { DropZone } from "./drop-zone.js";
import { Field } from "./field.js";
import { Signature } from "./proof-view.js";
import { save, sizeWords } from "./save.js";
import { Said, useWork, Verdict, WorkShown } from "./work-shown.js";

/** The package that was just made stands ready; another is dropped. */
export function SignView(): JSX.Element {
  const made = useWork("package");
  const signing = useWork("sign");
  const [dropped, setDropped] = useState<Dropped | null>(null);
  const [by, setBy] = useState("");
  const [note, setNote] = useState("");
  const { work } = useActions();
  const ready = made?.kind === "done" ? { name: made.answer.name, blob: made.answer.zip } : null;
  const chosen = dropped ?? ready;
  const faultOf = (option: "by" | "note"): string | null =>
    signing?.kind === "refused"
      ? (signing.findings.find(({ code, at }) => code === "option" && at.file === option)?.message ?? null)
      : null;
  return (
    <section class="reading sign">
      <h2>Sign</h2>
      <p class="soft">
        Records who has checked a package, in engineer/signed: name, day, note, and the hashes of every file. All is
        proved again first; where a file is not the one that was checked, nothing is signed.
      </p>
      <form
        class="asked-for"
        onSubmit={(event) => {
          event.preventDefault();
          if (chosen !== null) work("sign", { dropped: chosen, by, note, date: today(), instant: instant() });
        }}
      >
        <DropZone
          ask="Package..."
          hint={
            ready === null
              ? "A package as one ZIP, or in its folder."
              : "A package as one ZIP, or in its folder; else the one that was just made."
          }
          takesFolders
          taken={chosen === null ? [] : [chosen === ready ? `${chosen.name}, just made` : chosen.name]}
          onFiles={([file]) => file !== undefined && setDropped(file)}
        />
        <Field
          label="Who has checked it"
          value={by}
          onText={setBy}
          fault={faultOf("by")}
          hint="a name, at most 100 characters"
        />
        <Field
          label="Note"
          value={note}
          onText={setNote}
          fault={faultOf("note")}
          hint="what is to be said of it"
          isLong
        />
        <Press class="main" isOff={chosen === null || signing?.kind === "running"}>
          Sign the package
        </Press>
      </form>
      <WorkShown kind="sign" doing="Proving every file" sentence={({ sentence }) => sentence}>
        {({ answer }) => <Signed answer={answer} />}
      </WorkShown>
    </section>
  );
}

function Signed({ answer }: { readonly answer: SignAnswer }): JSX.Element {
  const { sentence, isQualified, lines, sha256, means, before, package: signed, record } = answer;
  return (
    <div class="answer">
      <Verdict isBad={isQualified} sentence={sentence} />
      <p class="row">
        <button type="button" class="main" onClick={() => save(signed.path, signed.blob)}>
          Save {signed.path} with its record
        </button>
        <span class="soft">{sizeWords(signed.blob.size)}</span>
        <button type="button" onClick={() => save(record.path, record.blob)}>
          Save the record alone
        </button>
      </p>
      <Said lines={lines.slice(1)} />
      <p>Record: {record.path}</p>
      <p>
        SHA-256 of summary.json: <code>{sha256}</code>
      </p>
      <p>
        Keep that line apart from the package, as in a mail: by it anybody can tell later that nothing was written anew.
      </p>
      {means.map((line) => (
        <p key={line} class="soft">
          {line}
        </p>
      ))}
      {before.length > 0 && <h3>Signed before</h3>}
      {before.map((each, i) => (
        <Signature key={i} {...each} />
      ))}
    </div>
  );
}
