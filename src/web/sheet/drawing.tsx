/** The drawing of the template: what is drawn, and over it what can be typed on, reached and pointed at. */
import type { JSX } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import type { Room } from "../../sheets/on-screen.js";
import { typedOn } from "../../tasks/live/figure-edits.js";
import type { FigureKey, LiveFigure, LiveFigures, LiveHole, LiveOutline } from "../../tasks/live/figure-model.js";
import { edgeSubject, litPlaces } from "../../tasks/live/lit-places.js";
import type { LiveBaseView } from "../../tasks/live/model.js";
import { useActions, useLook, usePart } from "../app/page.js";
import { FigureField, type Leaving, type OpenFigure } from "./figure-field.js";
import { faultsUnder, faultWords } from "./findings.js";
import { Holes } from "./holes.js";
import { Notes } from "./notes.js";
import { over } from "./places.js";
import { SceneItems } from "./scene-drawing.js";
import { TitleBlock } from "./title-block.js";
import { watchRoom } from "./use-room.js";
import { useZoom, type Zooming } from "./use-zoom.js";
import { ZoomButtons } from "./zoom-buttons.js";

/** A figure that is open, and where its field stands, in dots from the upper left of the drawing. */
interface Opened {
  readonly figure: OpenFigure;
  readonly left: number;
  readonly top: number;
  /** Takes the focus when the field is left. */
  readonly from: Element;
}

/** The drawing in its window. */
export function Drawing(): JSX.Element {
  const sheet = usePart((state) => state.sheet);
  const place = useRef<HTMLElement>(null);
  const zooming = useZoom(place);
  useRoomTold(place);
  const path = sheet?.path;
  useEffect(() => zooming.whole(), [path]);
  const [opened, setOpened] = useState<Opened | null>(null);
  useEffect(() => setOpened(null), [path]);
  const open: Open = (figure, from, at) => {
    const box = from.getBoundingClientRect();
    const window = place.current?.parentElement?.getBoundingClientRect();
    const [x, y] = at === undefined ? [box.left, box.top] : [at.x, at.y];
    setOpened({ figure, from, left: x - (window?.left ?? 0), top: y - (window?.top ?? 0) });
  };
  return (
    <div class="on-paper">
      <section
        class="drawing"
        ref={place}
        aria-label="Drawing: plus and minus zoom, 0 shows the whole, arrows move it"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: zoomed and moved by keys
        tabIndex={0}
        {...zooming.listeners}
      >
        {sheet !== null && <Sheet sheet={sheet} zooming={zooming} open={open} />}
        {sheet === null && <NoDrawing />}
      </section>
      <div class="foot">
        <div class="foot-left">
          <ZoomButtons zooming={zooming} />
          <Notes onOpen={open} />
        </div>
        <TitleBlock />
      </div>
      {opened !== null && <OpenField opened={opened} onDone={(how) => leave(opened, how, setOpened)} />}
    </div>
  );
}

type Open = (figure: OpenFigure, from: Element, at?: { readonly x: number; readonly y: number }) => void;

/**
 * Closes the field; on to the next figure in the order of the drawing, whose button opens it, or back to where it was opened. One
 * that was left meanwhile for another closes nothing.
 */
function leave(opened: Opened, how: Leaving, set: (change: (now: Opened | null) => Opened | null) => void): void {
  const { figure, from } = opened;
  let isOwn = true;
  set((now) => {
    isOwn = now === opened;
    return isOwn ? null : now;
  });
  const all = [...document.querySelectorAll<HTMLElement>("[data-figure]")];
  const here = all.find((each) => each.dataset.figure === figure.id) ?? from;
  if (!isOwn || how === "away") return;
  if (how === "next" || how === "previous") {
    const index = all.indexOf(here as HTMLElement);
    const next = index < 0 ? undefined : all[(index + (how === "next" ? 1 : -1) + all.length) % all.length];
    // once the drawing that came of the edit stands
    requestAnimationFrame(() => next?.click());
    return;
  }
  if (here instanceof HTMLElement) here.focus();
}

function OpenField({
  opened,
  onDone,
}: {
  readonly opened: Opened;
  readonly onDone: (how: Leaving) => void;
}): JSX.Element | null {
  const { figure, left, top } = opened;
  const path = usePart((state) => state.base);
  const live = usePart((state) => state.live);
  const base = live?.bases.find((each) => each.path === path);
  if (live === null || base === undefined) return null;
  return (
    <FigureField
      key={`${figure.id} ${left} ${top}`}
      figure={figure}
      on={typedOn(base, live)}
      left={left}
      top={top}
      onDone={onDone}
    />
  );
}

interface SheetProps {
  readonly sheet: LiveBaseView;
  readonly zooming: Zooming;
  readonly open: Open;
}

function Sheet({ sheet, zooming: { zoom }, open }: SheetProps): JSX.Element {
  const { plan, figures } = sheet;
  const { times, x, y } = zoom;
  const room = usePart((state) => state.room);
  const faulty = useFaultyKeys(sheet.path);
  useDrawn(sheet);
  return (
    <div
      class={times > 1 ? "laid moves" : "laid"}
      style={{
        width: `${plan.width}mm`,
        height: `${plan.height}mm`,
        transform: `translate(${x}px, ${y}px) scale(${times * fitOf(plan, room)})`,
      }}
    >
      <svg role="img" aria-label={sheet.title} viewBox={`0 0 ${plan.width} ${plan.height}`}>
        <title>{sheet.title}</title>
        <desc>{sheet.description}</desc>
        <SceneItems items={plan.items} height={plan.height} />
      </svg>
      <Lit figures={figures} width={plan.width} height={plan.height} />
      <Outlines outlines={figures.outlines} height={plan.height} width={plan.width} open={open} />
      <Holes holes={figures.holes} height={plan.height} onOpen={(hole, from) => open(openHole(hole), from)} />
      <fieldset class="figures" aria-label="Figures">
        {figures.figures.flatMap((figure) =>
          figure.box === null
            ? []
            : [
                <FigureButton
                  key={figure.id}
                  figure={figure}
                  height={plan.height}
                  fault={faulty(figure.keys)}
                  open={open}
                />,
              ],
        )}
      </fieldset>
    </div>
  );
}

/** Drawn for another room than there is now, and at fault by now: all of it is shown all the same. */
function fitOf(plan: Room, room: Room): number {
  return Math.min(1, room.width / plan.width, room.height / plan.height);
}

/** What is at fault of the keys behind a figure: the drawing is of before. */
function useFaultyKeys(path: string): (keys: readonly FigureKey[]) => string {
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  return (keys) => {
    const faults = keys.flatMap(({ key }) => faultsUnder(findings, `${path}.${key}`));
    return faults.map(faultWords).join(" ");
  };
}

const NO_FINDINGS: readonly Finding[] = [];

function openHole({ tag, keys }: LiveHole): OpenFigure {
  return {
    id: `hole ${tag}`,
    name: `hole ${tag}`,
    keys,
    follows: keys.length === 0 ? "It follows from the shop and the material." : "",
  };
}

interface FigureButtonProps {
  readonly figure: LiveFigure;
  readonly height: number;
  /** What is at fault of what is written for it; "". */
  readonly fault: string;
  readonly open: Open;
}

/** Over the words of a figure. */
function FigureButton({ figure, height, fault, open }: FigureButtonProps): JSX.Element | null {
  if (figure.box === null) return null;
  const label = `${figure.name}: ${figure.words}`;
  const more = fault === "" ? figure.follows : `At fault: ${fault}`;
  return (
    <button
      type="button"
      class={`figure-place${figure.follows === "" ? "" : " follows"}${fault === "" ? "" : " faulty"}`}
      data-figure={figure.id}
      aria-label={more === "" ? label : `${label}. ${more}`}
      aria-haspopup="dialog"
      style={over(figure.box, height, 0.9)}
      onClick={(event) => open(figure, event.currentTarget)}
      onKeyDown={(event) => {
        if (event.key !== "F2") return;
        event.preventDefault();
        open(figure, event.currentTarget);
      }}
    />
  );
}

interface OutlinesProps {
  readonly outlines: readonly LiveOutline[];
  readonly width: number;
  readonly height: number;
  readonly open: Open;
}

interface LitProps {
  readonly figures: LiveFigures;
  readonly width: number;
  readonly height: number;
}

/** What is pointed at beside holes: an edge, the gap to it, what lies between two holes, a name. */
function Lit({ figures, width, height }: LitProps): JSX.Element {
  const pointed = usePart((state) => state.pointed);
  const { edges, gaps, names } = litPlaces(figures, pointed?.subjects ?? NONE);
  return (
    <svg class="lit-places" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {edges.flatMap(({ lines }) => lines.map((line) => <PaperLine key={line.join(" ")} {...{ line, height }} />))}
      {gaps.map((line) => (
        <PaperLine key={line.join(" ")} {...{ line, height }} name="gap" />
      ))}
      {names.map(({ x0, y0, x1, y1 }) => (
        <rect key={`${x0} ${y0}`} x={x0 - 0.5} y={height - y1 - 0.5} width={x1 - x0 + 1} height={y1 - y0 + 1} />
      ))}
    </svg>
  );
}

const NONE: readonly string[] = [];

interface PaperLineProps {
  readonly line: LiveOutline["lines"][number];
  readonly height: number;
  readonly name?: string;
}

function PaperLine({ line: [x0, y0, x1, y1], height, name }: PaperLineProps): JSX.Element {
  return <line class={name} x1={x0} y1={height - y0} x2={x1} y2={height - y1} />;
}

/** Broad lines that are not seen, over outlines; by keyboard these are reached under the drawing. */
function Outlines({ outlines, width, height, open }: OutlinesProps): JSX.Element {
  const { point } = useActions();
  return (
    <svg class="outlines" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {outlines.map((outline) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: as above
        <g
          key={outline.id}
          onClick={(event) => open(outline, event.currentTarget, { x: event.clientX, y: event.clientY })}
          onPointerEnter={() => point({ subjects: [edgeSubject(outline.name)], rule: null })}
          onPointerLeave={() => point(null)}
        >
          {outline.lines.map((line) => (
            <PaperLine key={line.join(" ")} {...{ line, height }} />
          ))}
        </g>
      ))}
    </svg>
  );
}

/** Of a base that never was right. */
function NoDrawing(): JSX.Element {
  const isWorking = usePart((state) => state.working);
  return (
    <p class="no-drawing soft">{isWorking ? "Drawing" : "There is no drawing yet: what is at fault is said above."}</p>
  );
}

/** Tells the engine how much room there is. */
function useRoomTold(place: { readonly current: HTMLElement | null }): void {
  const { resize } = useActions();
  const look = useLook();
  useLayoutEffect(() => {
    if (place.current === null) return;
    return watchRoom(place.current, (room) => {
      const before = look().room;
      if (room.width !== before.width || room.height !== before.height) void resize(room);
    });
  }, [resize]);
}

/**
 * Measures, in the browser's own record: `figure drawn` from what was typed to its drawing, `sheet rendered` the page's own part
 * of it.
 */
function useDrawn(sheet: LiveBaseView): void {
  const begun = performance.now();
  useLayoutEffect(() => {
    const [taken] = performance.getEntriesByName("figure taken").slice(-1);
    if (taken === undefined) return;
    performance.measure("figure drawn", { start: taken.startTime });
    performance.measure("sheet rendered", { start: begun });
    performance.clearMarks("figure taken");
  }, [sheet]);
}
