/** Which kind of pattern, by a small picture of each, and its figures. */
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import type { FirstPattern } from "../../tasks/first-job.js";
import { emptyPattern, figureOf, PATTERN_FIELDS, withFigure } from "./first-figures.js";
import { PatternPicture } from "./pattern-picture.js";

const NAMES: Readonly<Record<FirstPattern["kind"], string>> = {
  rectangle: "Rectangle",
  lines: "Lines",
  circle: "Circle",
  points: "Points",
};

const KINDS = Object.keys(NAMES) as FirstPattern["kind"][];

/** What the fields stand on. `faultOf`: what is wrong with a field, by its key; "" where nothing is. */
export interface PatternFieldsProps {
  readonly pattern: FirstPattern;
  readonly faultOf: (key: string) => string;
  change(pattern: FirstPattern): void;
}

/** Kind and figures; what was typed for one kind is there again when it is chosen again. */
export function PatternFields({ pattern, faultOf, change }: PatternFieldsProps): JSX.Element {
  const name = useId();
  const [left, setLeft] = useState<Partial<Readonly<Record<FirstPattern["kind"], FirstPattern>>>>({});
  const choose = (kind: FirstPattern["kind"]): void => {
    if (kind === pattern.kind) return;
    setLeft({ ...left, [pattern.kind]: pattern });
    change(left[kind] ?? emptyPattern(kind));
  };
  return (
    <>
      <fieldset class="kinds">
        <legend>Pattern of the rods</legend>
        {KINDS.map((kind) => (
          <label key={kind} class="kind">
            <input type="radio" name={name} checked={kind === pattern.kind} onChange={() => choose(kind)} />
            <PatternPicture kind={kind} />
            {NAMES[kind]}
          </label>
        ))}
      </fieldset>
      <div class="figures">
        {PATTERN_FIELDS[pattern.kind].map(({ key, label, hint }) => (
          <Figure
            key={`${pattern.kind} ${key}`}
            {...{ label, hint }}
            isWide={pattern.kind === "points" || pattern.kind === "lines"}
            choices={key === "start" ? ["straddle", "on-axis"] : []}
            text={figureOf(pattern, key)}
            fault={faultOf(key)}
            change={(text) => change(withFigure(pattern, key, text))}
          />
        ))}
      </div>
    </>
  );
}

/** One figure, with its fault below it. */
export interface FigureProps {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly fault: string;
  readonly choices: readonly string[];
  readonly isWide?: boolean;
  readonly isFirst?: boolean;
  change(text: string): void;
}

/** A text field that offers choices and takes any other text too. */
export function Figure({ label, hint, text, fault, choices, isWide, isFirst, change }: FigureProps): JSX.Element {
  const id = useId();
  const said = fault === "" ? hint : fault;
  return (
    <div class={isWide === true ? "figure wide" : "figure"}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={text}
        {...(choices.length > 0 ? { list: `${id}-choices` } : {})}
        aria-invalid={fault !== ""}
        aria-describedby={`${id}-said`}
        {...(isFirst === true ? { ref: focusOnce } : {})}
        onInput={({ currentTarget }) => change(currentTarget.value)}
      />
      {choices.length > 0 && (
        <datalist id={`${id}-choices`}>
          {choices.map((choice) => (
            <option key={choice} value={choice} />
          ))}
        </datalist>
      )}
      <p id={`${id}-said`} class={fault === "" ? "hint" : "fault"}>
        {said}
      </p>
    </div>
  );
}

const seen = new WeakSet<HTMLElement>();

function focusOnce(element: HTMLInputElement | null): void {
  if (element === null || seen.has(element)) return;
  seen.add(element);
  element.focus();
}
