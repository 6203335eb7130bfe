/** The end of reading: what the job is called, and the bases taken into it. */
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import type { JobTitle } from "../../tasks/answered-sheet.js";
import { useActions } from "../app/page.js";
import type { ReadAnswer } from "../engine/task-model.js";

const FIELDS: readonly (readonly [keyof JobTitle, string])[] = [
  ["number", "Job number"],
  ["title", "Title"],
  ["revision", "Revision"],
];

/** Says why not, as long as anything is open. */
export function TakeBases({
  found,
  sheetName,
  isInto,
  isBusy,
}: {
  readonly found: ReadAnswer;
  readonly sheetName: string;
  /** Into a job, which has its title. */
  readonly isInto: boolean;
  readonly isBusy: boolean;
}): JSX.Element {
  const { takeSheet } = useActions();
  const [title, setTitle] = useState<JobTitle>({
    ...{ number: "000", revision: "A" },
    title: sheetName.replace(/\.[^.]*$/, ""),
  });
  const id = useId();
  const lacks = FIELDS.filter(([key]) => title[key].trim() === "").map(([, label]) => label);
  const why = isBusy ? "" : whyNot(found, lacks);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (found.isUnderstood && !isBusy && lacks.length === 0) void takeSheet(title);
  };
  return (
    <form class="take" onSubmit={submit} aria-label="Take the bases">
      {found.isUnderstood && !isInto && (
        <div class="figures">
          {FIELDS.map(([key, label]) => (
            <div class="figure" key={key}>
              <label for={`${id}-${key}`}>{label}</label>
              <input
                id={`${id}-${key}`}
                type="text"
                value={title[key]}
                onInput={({ currentTarget }) => setTitle({ ...title, [key]: currentTarget.value })}
              />
            </div>
          ))}
        </div>
      )}
      <button type="submit" class="main" disabled={isBusy || why !== ""} aria-describedby={`${id}-why`}>
        {takeWords(found.baseCount)}
      </button>
      <p id={`${id}-why`} class="soft">
        {why === "" ? becomeWords(isInto, found.overwrites) : why}
      </p>
    </form>
  );
}

function becomeWords(isInto: boolean, overwrites: boolean): string {
  if (!isInto) return "They become a job of their own; the sheet and your answers stay with it.";
  const words = "They stand in the place of those that the job has, as one step.";
  return overwrites ? `${words} What was changed in its bases since they were read goes; Undo brings it back.` : words;
}

function takeWords(bases: number): string {
  if (bases === 0) return "Take the bases";
  return bases === 1 ? "Take this base" : `Take these ${bases} bases`;
}

function whyNot({ isUnderstood, questions, findings, baseCount }: ReadAnswer, lacks: readonly string[]): string {
  if (questions.length > 0) return `First ${counted(questions.length, "question")} above.`;
  const faults = findings.filter(({ severity }) => severity === "error").length;
  if (faults > 0) return `${counted(faults, "fault")} in the sheet: say what is meant in the cell, or mend the sheet.`;
  if (baseCount === 0) return "No base was found.";
  if (!isUnderstood) return "Something of the sheet is still open.";
  return lacks.length === 0 ? "" : `${lacks.join(", ")}: must not be blank.`;
}
