/** A canvas on which a solid is turned, with its tags and the views that have a name. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { LiveSolid } from "../../tasks/live/solid.js";
import { startTable, type Table } from "./table.js";
import { turned, type ViewPoint, type ViewPointName, zoomed } from "./view-point.js";

interface Props {
  readonly solid: LiveSolid | null;
  /** Another base is shown from the first view point again. */
  readonly base: string;
  /** Called where the browser draws no solids. */
  readonly onNone: () => void;
  /** Called with what it met, where it cannot be shown. */
  readonly onFault: (error: unknown) => void;
}

/** Canvas, tags and buttons. */
export function Turntable({ solid, base, onNone, onFault }: Props): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const tags = useRef<HTMLDivElement>(null);
  const table = useRef<Table | null>(null);
  useEffect(() => {
    if (canvas.current === null || tags.current === null) return;
    const made = startTable(canvas.current, tags.current);
    if (made === null) onNone();
    table.current = made;
    return () => made?.stop();
  }, []);
  useEffect(() => {
    if (solid !== null) table.current?.show(solid, base).catch(onFault);
  }, [solid, base]);
  return (
    <>
      <div class="solid-stage">
        <canvas
          ref={canvas}
          tabIndex={0}
          role="img"
          aria-label={solid === null ? "Solid" : `Solid of template ${solid.template}. Arrow keys turn it.`}
          aria-describedby="solid-words"
        />
        <div class="solid-tags" ref={tags} aria-hidden="true" />
      </div>
      <Views north={solid?.north ?? null} go={(to) => table.current?.go(to)} />
    </>
  );
}

interface ViewsProps {
  readonly north: number | null;
  readonly go: (to: ViewPointName | ((from: ViewPoint) => ViewPoint)) => void;
}

function Views({ north, go }: ViewsProps): JSX.Element {
  const named: readonly (readonly [ViewPointName, string])[] = [
    ["slant", "From a corner"],
    ["top", "From the top"],
    ["north", north === null ? "From +Y" : "From the north"],
    ["side", north === null ? "From +X" : "From the east"],
  ];
  const middle = { right: 0, up: 0 };
  const steps: readonly (readonly [string, (from: ViewPoint) => ViewPoint])[] = [
    ["Turn left", (from) => turned(from, -15, 0)],
    ["Turn right", (from) => turned(from, 15, 0)],
    ["Nearer", (from) => zoomed(from, 1.3, middle)],
    ["Farther", (from) => zoomed(from, 1 / 1.3, middle)],
  ];
  return (
    <fieldset class="solid-views">
      <legend class="for-readers">Views of the solid</legend>
      {named.map(([name, words]) => (
        <button key={name} type="button" onClick={() => go(name)}>
          {words}
        </button>
      ))}
      {steps.map(([words, step]) => (
        <button key={words} type="button" class="quiet" onClick={() => go(step)}>
          {words}
        </button>
      ))}
    </fieldset>
  );
}
