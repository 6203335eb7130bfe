/** Questions to the engineer of record, answered in place. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import type { AskedQuestion, LiveQuestions, UnusedAnswerLine } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { useAnswer } from "../app/use-answer.js";
import { turnOf } from "../ledger/filter.js";
import { FormThatCameBack } from "./form-back.js";
import { LetterPapers } from "./letter-papers.js";
import { OpenQuestion } from "./open-question.js";

/** Open ones with a form each; what is answered, closed or answers nothing below. */
export function QuestionsView(): JSX.Element {
  const live = usePart((state) => state.live);
  const { questions: ask } = useActions();
  const questions = useAnswer(ask, turnOf(live), ({ isSettled }) => isSettled);
  const [done, tell] = useState("");
  const place = useRef<HTMLElement>(null);
  if (questions === null)
    return (
      <section class="reading">
        <h2>Questions</h2>
        <p class="soft">There is nothing to ask while the job is at fault.</p>
      </section>
    );
  const waiting = questions.asked.filter(({ status }) => status !== "answered");
  const answered = (number: string): void => {
    tell(`${number} is written into the job.`);
    const next = waiting[waiting.findIndex((each) => each.number === number) + 1] ?? waiting[0];
    place.current?.querySelector<HTMLElement>(`#question-${(next?.number ?? "").replace(".", "-")}`)?.focus();
  };
  return (
    <section class="reading questions" ref={place}>
      <h2>Questions to the engineer of record</h2>
      <p role="status">
        {done} {standing(questions, live?.isSettled === true)}
      </p>
      <div class="row">
        <LetterPapers isAsked={waiting.length > 0} />
        <FormThatCameBack />
      </div>
      <Unused unused={questions.unused} />
      {waiting.map((question) => (
        <OpenQuestion key={question.number} question={question} done={answered} />
      ))}
      <Settled questions={questions} />
    </section>
  );
}

function standing({ asked, closed }: LiveQuestions, isSettled: boolean): string {
  const count = (status: AskedQuestion["status"]): number => asked.filter((each) => each.status === status).length;
  const counts = `${count("open")} open, ${count("accepted")} open with the release accepted, ${count("answered")} answered, ${closed.length} closed.`;
  return isSettled ? counts : `${counts} The job is being checked.`;
}

/** Answers that the job has and that answer no open question. */
function Unused({ unused }: { readonly unused: readonly UnusedAnswerLine[] }): JSX.Element | null {
  const { edit } = useActions();
  if (unused.length === 0) return null;
  return (
    <section class="unused" aria-label="Answers that answer nothing">
      <h3>
        {counted(unused.length, "answer")} that {unused.length === 1 ? "answers" : "answer"} nothing
      </h3>
      <ul>
        {unused.map(({ question, mark, rule, subject, by, date, text, why, withdrawal }, index) => (
          <li key={`${index} ${text}`}>
            <b>{question === "" ? [mark, rule, subject].filter((part) => part !== "").join(" ") : question}</b>, {by},{" "}
            {date}: {text} <span class="fault">{why}.</span>{" "}
            {withdrawal.length > 0 && (
              <button type="button" onClick={() => void edit("answer taken out", withdrawal)}>
                Take it out
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Folded: what needs no answer any more. */
function Settled({ questions: { asked, closed } }: { readonly questions: LiveQuestions }): JSX.Element {
  const answered = asked.filter(({ status }) => status === "answered");
  return (
    <>
      {answered.length > 0 && (
        <details>
          <summary>Answered: {answered.length}</summary>
          {answered.map((question) => (
            <Answered key={question.number} question={question} />
          ))}
        </details>
      )}
      {closed.length > 0 && (
        <details>
          <summary>Closed: {closed.length}</summary>
          <ul>
            {closed.map(({ number, about, what }) => (
              <li key={number}>
                <b>{number}</b> {about}: {what}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Answered({ question }: { readonly question: AskedQuestion }): JSX.Element {
  const { edit } = useActions();
  const { number, about, said, where, check, withdrawal } = question;
  return (
    <article class="question" aria-label={`${number}, answered`}>
      <h3>
        {number} {about}
      </h3>
      <p>
        {where} {said}
      </p>
      {check.answer !== undefined && (
        <p class="answer">
          {check.answer.by}, {check.answer.date}: {check.answer.text}
        </p>
      )}
      {withdrawal.length > 0 ? (
        <button type="button" onClick={() => void edit(`answer to ${number} taken back`, withdrawal)}>
          Take back the answer to {number}
        </button>
      ) : (
        <p class="soft">The answer stands in a form that the job names.</p>
      )}
    </article>
  );
}
