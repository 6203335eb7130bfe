/** The error budget: does each base plate drop on, in the worst case and how often? */
import type { JSX } from "preact";
import { useActions, usePart } from "../app/page.js";
import { Press } from "../app/press.js";
import type { BudgetAnswer } from "../engine/budget-model.js";
import { today } from "../state/clock.js";
import { filesNow } from "../state/model.js";
import { isOfBefore } from "../state/work-actions.js";
import { AnswerFiles, listedOf } from "./answer-files.js";
import { AnswerTable } from "./answer-table.js";
import { TextToCopy } from "./text-to-copy.js";
import { OfBefore, Said, useWork, Verdict, WorkShown } from "./work-shown.js";

/** Trials take a while: in a thread of their own. */
export function BudgetView(): JSX.Element {
  const job = usePart((state) => state.job);
  const isRunning = useWork("budget")?.kind === "running";
  const { work } = useActions();
  return (
    <section class="reading budget">
      <h2>Budget</h2>
      <p class="soft">
        Errors that rods may have, against the clearance of the base plate's holes: the worst case, and how often the
        plate drops on. How errors are taken, and what is asked for, stands in the job under budget.
      </p>
      <p class="row">
        <Press
          class="main"
          isOff={isRunning || job === null}
          onPress={() => job !== null && work("budget", { files: filesNow(job), date: today() })}
        >
          Reckon the budget
        </Press>
      </p>
      <WorkShown kind="budget" doing="Reckoning the budget" sentence={({ sentence }) => sentence}>
        {({ ask, answer }) => (
          <div class="answer">
            <Verdict isBad={answer.each.some(({ state }) => state === "held")} sentence={answer.sentence} />
            {isOfBefore(ask.files, job) && <OfBefore />}
            <p>{answer.rests}</p>
            <Said lines={answer.said} />
            <AnswerTable table={answer.bases} name="Bases, worst first" />
            <Each answer={answer} />
            <h3>Cautions</h3>
            <Said lines={answer.cautions} />
            <details>
              <summary>The same as text</summary>
              <TextToCopy text={answer.text} name="The budget as text" file="budget.txt" />
            </details>
            <h3>Files</h3>
            <AnswerFiles files={listedOf(answer.files)} name="Files of the budget" />
          </div>
        )}
      </WorkShown>
    </section>
  );
}

function Each({ answer: { each } }: { readonly answer: BudgetAnswer }): JSX.Element {
  return (
    <>
      {each.map(({ name, lines }) => (
        <details key={name}>
          <summary>{name}: what it rests on</summary>
          {lines.map((line, i) => (
            <p key={i}>{line}</p>
          ))}
        </details>
      ))}
    </>
  );
}
