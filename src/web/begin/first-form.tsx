/** A first template from nothing: the few figures that it cannot do without, and its drawing beside them as they are typed. */
import type { JSX } from "preact";
import { useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import { listed } from "../../diagnostics/listed.js";
import type { Room } from "../../sheets/on-screen.js";
import { rodSizes } from "../../standards/find-thread.js";
import type { FirstFigures, FirstPattern } from "../../tasks/first-job.js";
import { writeFirstJob } from "../../tasks/first-job.js";
import type { LiveHead } from "../../tasks/live/model.js";
import type { Unit } from "../../units/index.js";
import { useActions } from "../app/page.js";
import type { EngineAnswer } from "../engine/protocol.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { useRoom } from "../sheet/use-room.js";
import { figureOf, lacking, PATTERN_FIELDS, withExamples } from "./first-figures.js";
import { Figure, PatternFields } from "./pattern-fields.js";
import { usePreview } from "./preview.js";
import { STARTER_TEXTS, stockThicknesses } from "./starters.js";

const UNITS: readonly (readonly [Unit, string])[] = [
  ["in", "inches"],
  ["mm", "millimetres"],
];

/** The form, and the drawing. */
export function FirstForm({ figures }: { readonly figures: FirstFigures }): JSX.Element {
  const { begin } = useActions();
  const place = useRef<HTMLDivElement>(null);
  const form = useRef<HTMLFormElement>(null);
  const { answer, isAsked, lacks, change, submit } = useFirst(figures, useRoom(place), form);
  const last = useRef<EngineAnswer["view"]>(null);
  last.current = answer?.view ?? last.current;
  return (
    <section class="first-template" aria-labelledby="first-title">
      <form onSubmit={submit} noValidate ref={form}>
        <h2 id="first-title">A first template</h2>
        <Units unit={figures.unit} change={change} />
        <RodAndPlate {...{ figures, answer, isAsked, lacks, change }} />
        <PatternFields
          pattern={figures.pattern}
          faultOf={(key) => patternFault(figures, key, isAsked, answer)}
          change={(pattern) => change({ pattern })}
        />
        {isAsked && <Beside answer={answer} />}
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
          {drawnWords(answer, last.current !== null, lacks)}
        </p>
        <div class="drawing sheet" ref={place}>
          {last.current !== null && <Drawing view={last.current} />}
        </div>
      </div>
    </section>
  );
}

type Change = (now: Partial<FirstFigures>) => void;

interface First {
  readonly answer: EngineAnswer | null;
  /** True once it was to be made. */
  readonly isAsked: boolean;
  /** Labels of what is not typed. */
  readonly lacks: readonly string[];
  readonly change: Change;
  submit(event: Event): void;
}

/** What the engine says of the figures; made once it was asked for, and nothing in them is lacking or at fault. */
function useFirst(figures: FirstFigures, room: Room | null, form: { readonly current: HTMLElement | null }): First {
  const { begin, openFirst } = useActions();
  const [isAsked, setAsked] = useState(false);
  const [isWanted, want] = useState(false);
  const drawn = useMemo(() => writeFirstJob(STARTER_TEXTS[figures.unit], withExamples(figures)), [figures]);
  const previewed = usePreview(drawn, room);
  const answer = previewed?.answer ?? null;
  const lacks = lacking(figures);
  useLayoutEffect(() => {
    // not before the figures as they stand were looked at
    if (!isWanted || (lacks.length === 0 && previewed?.text !== drawn)) return;
    want(false);
    if (lacks.length === 0 && faultsIn(answer).length === 0) void openFirst(drawn);
    else form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [isWanted, previewed, drawn]);
  return {
    ...{ answer, isAsked, lacks },
    change: (now) => {
      want(false);
      begin({ kind: "first", figures: { ...figures, ...now } });
    },
    submit: (event) => {
      event.preventDefault();
      setAsked(true);
      want(true);
    },
  };
}

function Units({ unit: chosen, change }: { readonly unit: Unit; readonly change: Change }): JSX.Element {
  return (
    <fieldset class="units">
      <legend>Lengths in</legend>
      {UNITS.map(([unit, word]) => (
        <label key={unit}>
          <input type="radio" name="unit" checked={unit === chosen} onChange={() => change({ unit })} />
          {word}
        </label>
      ))}
    </fieldset>
  );
}

function RodAndPlate({
  figures: { unit, diameter, thickness },
  answer,
  isAsked,
  lacks,
  change,
}: Omit<First, "submit"> & { readonly figures: FirstFigures }): JSX.Element {
  const faultOf = (label: string, path: string): string => {
    if (lacks.includes(label)) return isAsked ? "is needed" : "";
    return findingAt(answer, path);
  };
  return (
    <div class="figures">
      <Figure
        label="Rod diameter"
        hint={unit === "in" ? "as 3/4 or 1-1/4" : "as M20 or M30"}
        choices={rodSizes[unit]}
        text={diameter}
        fault={faultOf("Rod diameter", "rods.diameter")}
        isFirst
        change={(now) => change({ diameter: now })}
      />
      <Figure
        label="Plate thickness"
        hint="of the template itself"
        choices={stockThicknesses(unit)}
        text={thickness}
        fault={faultOf("Plate thickness", "template.thickness")}
        change={(now) => change({ thickness: now })}
      />
    </div>
  );
}

function drawnWords(answer: EngineAnswer | null, isDrawn: boolean, lacks: readonly string[]): string {
  if (answer === null) return "";
  if (!isDrawn) return "Not drawn: a figure is at fault.";
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

function faultsIn(answer: EngineAnswer | null): readonly Finding[] {
  return answer?.job?.findings.filter(({ severity }) => severity === "error") ?? [];
}

const isUnder = ({ at: { path } }: Finding, key: string): boolean =>
  path !== undefined && (path === `bases[0].${key}` || path.startsWith(`bases[0].${key}[`));

/** The first fault of a key of the base, or of what is under it. */
function findingAt(answer: EngineAnswer | null, key: string): string {
  return faultsIn(answer).find((finding) => isUnder(finding, key))?.message ?? "";
}

const WITH_FIELDS: readonly string[] = [
  "rods.diameter",
  "template.thickness",
  ...Object.values(PATTERN_FIELDS).flatMap((fields) => fields.map(({ key }) => `pattern.${key}`)),
];

/** Faults that no field has. */
function Beside({ answer }: { readonly answer: EngineAnswer | null }): JSX.Element | null {
  const faults = faultsIn(answer).filter((finding) => !WITH_FIELDS.some((key) => isUnder(finding, key)));
  if (faults.length === 0) return null;
  return (
    <p class="fault" role="alert">
      {[...new Set(faults.map(({ message }) => message))].join("; ")}
    </p>
  );
}

function Drawing({ view }: { readonly view: NonNullable<EngineAnswer["view"]> }): JSX.Element {
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
