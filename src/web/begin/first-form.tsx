/** A first template from nothing: the few figures that it cannot do without, and its drawing beside them as they are typed. */
import type { JSX } from "preact";
import { useMemo, useRef, useState } from "preact/hooks";
import { listed } from "../../diagnostics/listed.js";
import { rodSizes } from "../../standards/find-thread.js";
import type { FirstFigures, FirstPattern } from "../../tasks/first-job.js";
import { writeFirstJob } from "../../tasks/first-job.js";
import type { LiveHead } from "../../tasks/live/model.js";
import type { Unit } from "../../units/index.js";
import { useActions } from "../app/page.js";
import type { EngineAnswer } from "../engine/protocol.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { figureOf, lacking, PATTERN_FIELDS, withExamples } from "./first-figures.js";
import { Figure, PatternFields } from "./pattern-fields.js";
import { usePreview } from "./preview.js";
import { STARTER_TEXTS, stockThicknesses } from "./starters.js";
import { useRoom } from "./use-room.js";

const UNITS: readonly (readonly [Unit, string])[] = [
  ["in", "inches"],
  ["mm", "millimetres"],
];

/** The form, and the drawing. */
export function FirstForm({ figures }: { readonly figures: FirstFigures }): JSX.Element {
  const { begin, openFirst } = useActions();
  const place = useRef<HTMLDivElement>(null);
  const room = useRoom(place);
  const [isAsked, setAsked] = useState(false);
  const drawn = useMemo(() => writeFirstJob(STARTER_TEXTS[figures.unit], withExamples(figures)), [figures]);
  const answer = usePreview(drawn, room);
  const lacks = lacking(figures);
  const change = (now: Partial<FirstFigures>): void => begin({ kind: "first", figures: { ...figures, ...now } });
  const faultOf = (label: string, path: string): string => {
    if (lacks.includes(label)) return isAsked ? "is needed" : "";
    return findingAt(answer, path);
  };
  const submit = (event: Event): void => {
    event.preventDefault();
    setAsked(true);
    if (lacks.length === 0) void openFirst(drawn);
  };
  return (
    <section class="first-template" aria-labelledby="first-title">
      <form onSubmit={submit} noValidate>
        <h2 id="first-title">A first template</h2>
        <fieldset class="units">
          <legend>Lengths in</legend>
          {UNITS.map(([unit, word]) => (
            <label key={unit}>
              <input
                type="radio"
                name="unit"
                checked={unit === figures.unit}
                onChange={() => change({ unit, diameter: "", thickness: "" })}
              />
              {word}
            </label>
          ))}
        </fieldset>
        <div class="figures">
          <Figure
            label="Rod diameter"
            hint={figures.unit === "in" ? "as 3/4 or 1-1/4" : "as M20 or M30"}
            choices={rodSizes[figures.unit]}
            text={figures.diameter}
            fault={faultOf("Rod diameter", "rods.diameter")}
            isFirst
            change={(diameter) => change({ diameter })}
          />
          <Figure
            label="Plate thickness"
            hint="of the template itself"
            choices={stockThicknesses(figures.unit)}
            text={figures.thickness}
            fault={faultOf("Plate thickness", "template.thickness")}
            change={(thickness) => change({ thickness })}
          />
        </div>
        <PatternFields
          pattern={figures.pattern}
          faultOf={(key) => patternFault(figures, key, isAsked, answer)}
          change={(pattern) => change({ pattern })}
        />
        <p class="row">
          <button type="submit" class="main">
            Make this template
          </button>
          <button type="button" onClick={() => begin({ kind: "choice" })}>
            Back
          </button>
        </p>
        <ByRules answer={answer} />
      </form>
      <div class="shown">
        <p class="soft" role="status">
          {drawnWords(answer, lacks)}
        </p>
        <div class="drawing sheet" ref={place}>
          <Drawing answer={answer} />
        </div>
      </div>
    </section>
  );
}

function drawnWords(answer: EngineAnswer | null, lacks: readonly string[]): string {
  if (answer === null) return "";
  if (answer.view === null) return "Drawn as it was before the figure at fault.";
  return lacks.length === 0 ? "Drawn as typed." : `An example stands for: ${listed(lacks, 8)}.`;
}

/** What is not typed has no fault: an example stands in its place. */
function patternFault({ pattern }: FirstFigures, key: string, isAsked: boolean, answer: EngineAnswer | null): string {
  const isTyped = figureOf(pattern, key).trim() !== "";
  if (isTyped) return findingAt(answer, `pattern.${key}`);
  return isAsked && isNeeded(pattern, key) ? "is needed" : "";
}

function isNeeded({ kind }: FirstPattern, key: string): boolean {
  return PATTERN_FIELDS[kind].some((field) => field.key === key && !field.isOptional);
}

/** The first fault of a key of the base, or of what is under it. */
function findingAt(answer: EngineAnswer | null, key: string): string {
  const path = `bases[0].${key}`;
  const found = answer?.job?.findings.find(
    ({ severity, at }) =>
      severity === "error" && at.path !== undefined && (at.path === path || at.path.startsWith(`${path}[`)),
  );
  return found?.message ?? "";
}

function Drawing({ answer }: { readonly answer: EngineAnswer | null }): JSX.Element | null {
  const last = useRef<EngineAnswer["view"]>(null);
  last.current = answer?.view ?? last.current;
  const view = last.current;
  if (view === null) return null;
  return (
    <svg role="img" aria-label="The template, as it would be" viewBox={`0 0 ${view.plan.width} ${view.plan.height}`}>
      <desc>{view.description}</desc>
      <SceneItems items={view.plan.items} height={view.plan.height} />
    </svg>
  );
}

/** What nobody typed, and by what it is. */
function ByRules({ answer }: { readonly answer: EngineAnswer | null }): JSX.Element {
  const last = useRef<LiveHead | null>(null);
  last.current = answer?.job?.head ?? last.current;
  const head = last.current;
  const editions = Object.entries(head?.editions ?? {}).flatMap(([key, edition]) => (key === "rules" ? [] : [edition]));
  return (
    <div class="by-rules">
      <h3>All else by the rules</h3>
      <p class="soft">
        Holes of the template, distances to its edges, its outline and opening follow from the editions that the job
        names{editions.length === 0 ? "" : `: ${[...new Set(editions)].join("; ")}`}. The plate is cut as the shop{" "}
        {head === null ? "" : head.shop} has it. What nobody gives is not guessed: the ledger says what could not be
        checked for want of it. Base plate, grade and concrete are given later, where they stand on the sheet.
      </p>
    </div>
  );
}
