/** After the pour: the surveyor's points are dropped, the answer sheet comes back. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import type { Scene } from "../../sheets/scene.js";
import type { SurveyOption, SurveyOptions } from "../../tasks/survey-options.js";
import { useActions, usePart } from "../app/page.js";
import { Press } from "../app/press.js";
import type { Dropped } from "../engine/dropped.js";
import { SURVEY_FIELDS, type SurveyAnswer, type SurveyedGroup } from "../engine/survey-model.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { today } from "../state/clock.js";
import { filesNow } from "../state/model.js";
import { isOfBefore } from "../state/work-actions.js";
import { AnswerFiles, listedOf } from "./answer-files.js";
import { AnswerTable } from "./answer-table.js";
import { DropZone } from "./drop-zone.js";
import { Field } from "./field.js";
import { TextToCopy } from "./text-to-copy.js";
import { OfBefore, Said, useWork, Verdict, WorkShown } from "./work-shown.js";

const NOTHING_SAID: SurveyOptions = { unit: null, order: null, accuracy: null, height: null, within: null };

const UNITS: readonly (readonly [string, string])[] = [
  ["", "as the file says"],
  ["m", "m: metres"],
  ["mm", "mm: millimetres"],
  ["ft", "ft: feet of 0.3048 m"],
  ["ft-us", "ft-us: US survey feet"],
];

const ORDERS: readonly (readonly [string, string])[] = [
  ["", "as the file or the job says"],
  ["PNEZD", "PNEZD: name, northing, easting, elevation, description"],
  ["PENZD", "PENZD: name, easting, northing, elevation, description"],
];

/** Dropping a file is asking; a change of an option asks again by the button. */
export function SurveyView(): JSX.Element {
  const job = usePart((state) => state.job);
  const running = useWork("survey");
  const [points, setPoints] = useState<Dropped | null>(null);
  const [options, setOptions] = useState(NOTHING_SAID);
  const [all, setAll] = useState(false);
  const { work } = useActions();
  const ask = (from: Dropped | null): void => {
    if (job !== null && from !== null)
      work("survey", { files: filesNow(job), date: today(), points: from, options, all });
  };
  const faultOf = (option: SurveyOption): string | null =>
    running?.kind === "refused" ? (running.findings.find((each) => isOf(option, each))?.message ?? null) : null;
  const say = (option: SurveyOption) => (text: string) =>
    setOptions({ ...options, [option]: text.trim() === "" ? null : text });
  const field = (option: SurveyOption) => ({
    label: SURVEY_FIELDS[option],
    value: options[option] ?? "",
    onText: say(option),
    fault: faultOf(option),
  });
  return (
    <section class="reading survey">
      <h2>Survey</h2>
      <p class="soft">
        Are the rods in place, and does every base plate drop on? The surveyor's points are held against the job that is
        open.
      </p>
      <form
        class="asked-for"
        onSubmit={(event) => {
          event.preventDefault();
          ask(points);
        }}
      >
        <DropZone
          ask="Surveyor's points..."
          hint="CSV or text, with or without a heading: a point a line."
          taken={points === null ? [] : [points.name]}
          onFiles={([file]) => {
            if (file === undefined) return;
            setPoints(file);
            ask(file);
          }}
        />
        <details open={running?.kind === "refused"}>
          <summary>What the file does not say</summary>
          <div class="fields">
            <Field {...field("unit")} choices={UNITS} />
            <Field {...field("order")} choices={ORDERS} />
            <Field {...field("accuracy")} hint="else survey.accuracy of the job" />
            <Field {...field("height")} hint="top, or a length above the concrete" />
            <Field {...field("within")} hint="else 2 in or 50 mm" />
          </div>
          <label class="tick">
            <input type="checkbox" checked={all} onChange={({ currentTarget }) => setAll(currentTarget.checked)} /> A
            sheet for every group, not only for those with something to say
          </label>
        </details>
        <Press class="main" isOff={points === null || job === null || running?.kind === "running"}>
          Hold the points against the job
        </Press>
      </form>
      <WorkShown kind="survey" doing="Holding the points against the job" sentence={({ sentence }) => sentence}>
        {({ ask: asked, answer }) => (
          <div class="answer">
            <Verdict isBad={answer.isOutside} sentence={answer.sentence} />
            {isOfBefore(asked.files, job) && <OfBefore />}
            <Answer answer={answer} />
          </div>
        )}
      </WorkShown>
    </section>
  );
}

/** What was typed in a field is at fault, or it is asked for there. */
const isOf = (option: SurveyOption, { code, at }: Finding): boolean =>
  (code === "option" && at.file === option) || code === `points-${option}`;

function Answer({ answer }: { readonly answer: SurveyAnswer }): JSX.Element {
  return (
    <>
      <p>{answer.totals}</p>
      <Said lines={answer.said} />
      <AnswerTable table={answer.groups} name="Groups, worst first" />
      {answer.read.map((line, i) => (
        <p key={i} class="soft">
          {line}
        </p>
      ))}
      {answer.each.map((group) => (
        <Group key={group.name} group={group} />
      ))}
      {answer.lineChecks.rows.length > 0 && <h3>Groups and column lines</h3>}
      <AnswerTable table={answer.lineChecks} name="Groups and column lines" />
      {answer.rest.map(([title, items]) => (
        <div key={title}>
          <h3>{title}</h3>
          <Said lines={items} />
        </div>
      ))}
      <h3>Cautions</h3>
      <Said lines={answer.cautions} />
      <details>
        <summary>The same as text</summary>
        <TextToCopy text={answer.text} name="The survey as text" file="survey.txt" />
      </details>
      <h3>Files</h3>
      <p class="soft">The report to the engineer is survey-report.txt, to paste, and survey-report.pdf.</p>
      <AnswerFiles files={listedOf(answer.files)} name="Files of the survey" />
    </>
  );
}

function Group({ group: { name, state, lines, rods, checks, sheet } }: { readonly group: SurveyedGroup }): JSX.Element {
  return (
    <details class="part" open={state === "held"}>
      <summary>{name}</summary>
      {lines.map((line, i) => (
        <p key={i} class={line.startsWith(" ") ? "under" : undefined}>
          {line.trim()}
        </p>
      ))}
      <AnswerTable table={rods} name={`Rods of ${name}`} />
      {sheet !== null && <SheetOf scene={sheet} />}
      <details>
        <summary>Checks of {name}</summary>
        <AnswerTable table={checks} name={`Checks of ${name}`} />
      </details>
    </details>
  );
}

function SheetOf({ scene }: { readonly scene: Scene }): JSX.Element {
  const [isLarge, setLarge] = useState(false);
  return (
    <>
      <button type="button" aria-pressed={isLarge} onClick={() => setLarge(!isLarge)}>
        Larger
      </button>
      <div class="picture-room">
        <div class={`drawing sheet${isLarge ? " large" : ""}`}>
          <svg role="img" aria-label={scene.title} viewBox={`0 0 ${scene.width} ${scene.height}`}>
            <title>{scene.title}</title>
            <desc>{scene.description}</desc>
            <SceneItems items={scene.items} height={scene.height} />
          </svg>
        </div>
      </div>
    </>
  );
}
