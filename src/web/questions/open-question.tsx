/** One question that waits for an answer, and the form under it. */
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import type { AnswerDraft, AnswerFaults, AskedQuestion } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { capital } from "../ledger/row-words.js";
import { draftFor, oneLine } from "./draft.js";

interface QuestionProps {
  readonly question: AskedQuestion;
  /** Told when an answer is written. */
  readonly done: (number: string) => void;
}

/** Number, figures, clause, bases, what is asked to be given; who accepted meanwhile. */
export function OpenQuestion({ question, done }: QuestionProps): JSX.Element {
  const { number, about, status, where, said, figures, notes, past, request, accepted, withdrawal } = question;
  const { edit } = useActions();
  return (
    <article class="question" aria-labelledby={`question-${number.replace(".", "-")}`}>
      <h3 id={`question-${number.replace(".", "-")}`} tabIndex={-1}>
        {number} {capital(about)} <span class={`state ${status === "open" ? "asked" : "clear"}`}>{status}</span>
      </h3>
      <p>
        {where} {said}
        {figures !== null && ` ${capital(figures.missed)}.`}
      </p>
      {notes !== "" && <p>{capital(notes)}</p>}
      {past !== "" && <p>{past}</p>}
      <p class="soft">{request}</p>
      <Places question={question} />
      {accepted !== null && (
        <p>
          Release accepted with the question open, by {accepted.by}, {accepted.date}: {accepted.text}{" "}
          {withdrawal.length > 0 && (
            <button type="button" onClick={() => void edit(`acceptance of ${number} taken back`, withdrawal)}>
              Take back the acceptance of {number}
            </button>
          )}
        </p>
      )}
      <AnswerForm question={question} done={done} />
    </article>
  );
}

/** Marks, each a button to its base with the holes lit. */
function Places({ question: { places, check } }: { readonly question: AskedQuestion }): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? NONE);
  const { choose, point, show } = useActions();
  const open = async (path: string, subjects: readonly string[]): Promise<void> => {
    await choose(path);
    point({ subjects: subjects.flatMap((subject) => [subject, ...subject.split(/[\s,;:/()-]+/)]), rule: check.rule });
  };
  return (
    <p class="keys">
      {places.map(({ mark, subjects }) => {
        const path = bases.find((base) => base.mark === mark)?.path;
        return path === undefined ? (
          <button key={mark} type="button" onClick={() => show("plan")}>
            Show the plan
          </button>
        ) : (
          <button key={mark} type="button" onClick={() => void open(path, subjects)}>
            {mark}
          </button>
        );
      })}
    </p>
  );
}

const NONE: readonly never[] = [];

/** What is typed stays when another view is shown; faults stand at their fields. */
function AnswerForm({ question, done }: QuestionProps): JSX.Element {
  const { number, status, withdrawal } = question;
  const kept = usePart((state) => state.drafts[number]);
  const { answer, draft: keep, edit, today } = useActions();
  const [faults, tell] = useState<AnswerFaults>({});
  const [isOpen, open] = useState(kept !== undefined);
  const draft = kept ?? draftFor(number, today());
  const set = (change: Partial<AnswerDraft>): void => keep(number, { ...draft, ...change });
  const write = async (): Promise<void> => {
    const found = await answer([{ ...draft, by: oneLine(draft.by), text: oneLine(draft.text) }]);
    tell(found);
    if (Object.keys(found).length > 0) return;
    if (status === "accepted" && draft.kind === "answered" && withdrawal.length > 0)
      await edit(`acceptance of ${number} taken back`, withdrawal);
    keep(number, null);
    open(false);
    done(number);
  };
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => open(currentTarget.open)}>
      <summary>Answer {number}</summary>
      <form
        class="answer-form"
        aria-label={`Answer to ${number}`}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void write();
        }}
      >
        <Kinds number={number} draft={draft} set={set} />
        <Field name={draft.kind === "answered" ? "Answered by" : "Accepted by"} fault={faults.by}>
          {(field) => <input {...field} value={draft.by} onInput={(event) => set({ by: event.currentTarget.value })} />}
        </Field>
        <Field name="Date, as 2026-11-24" fault={faults.date}>
          {(field) => (
            <input {...field} value={draft.date} onInput={(event) => set({ date: event.currentTarget.value })} />
          )}
        </Field>
        <Field name={draft.kind === "answered" ? "Answer" : "Why it may be released"} fault={faults.text}>
          {(field) => (
            <textarea
              {...field}
              rows={2}
              value={draft.text}
              onInput={(event) => set({ text: event.currentTarget.value })}
            />
          )}
        </Field>
        <button type="submit" class="main">
          {draft.kind === "answered" ? "Write the answer" : "Write the acceptance"}
        </button>
      </form>
    </details>
  );
}

interface KindProps {
  readonly number: string;
  readonly draft: AnswerDraft;
  readonly set: (change: Partial<AnswerDraft>) => void;
}

const KINDS = {
  answered: "The engineer of record answered",
  accepted: "The release is accepted by name; the question stays open",
} as const satisfies Record<AnswerDraft["kind"], string>;

function Kinds({ number, draft, set }: KindProps): JSX.Element {
  return (
    <fieldset>
      <legend class="for-readers">What is written</legend>
      {(["answered", "accepted"] as const).map((kind) => (
        <label key={kind}>
          <input type="radio" name={`kind of ${number}`} checked={draft.kind === kind} onChange={() => set({ kind })} />{" "}
          {KINDS[kind]}
        </label>
      ))}
    </fieldset>
  );
}

interface FieldProps {
  readonly name: string;
  readonly fault: string | undefined;
  readonly children: (field: {
    readonly id: string;
    readonly "aria-invalid": boolean;
    readonly "aria-describedby": string | undefined;
  }) => JSX.Element;
}

/** A field with its name above and its fault beneath. */
function Field({ name, fault, children }: FieldProps): JSX.Element {
  const id = useId();
  const isAtFault = fault !== undefined;
  return (
    <div class="field">
      <label for={id}>{name}</label>
      {children({ id, "aria-invalid": isAtFault, "aria-describedby": isAtFault ? `${id}-fault` : undefined })}
      {isAtFault && (
        <p class="fault" id={`${id}-fault`} role="alert">
          {name}: {fault}
        </p>
      )}
    </div>
  );
}
