/** The layout as it is drawn: its spacings, names of lines and bases are reached and edited where they stand. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { LivePlan } from "../../tasks/live/plan-model.js";
import { useActions } from "../app/page.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { EditSpot } from "./edit-spot.js";
import { bayOf, renamed, withSpacing } from "./grid-edits.js";

/** Dots to a paper millimetre of a screen. */
const DOTS = 96 / 25.4;

/** What it is drawn from. */
export interface LayoutDrawingProps {
  readonly plan: LivePlan;
  readonly isFaulty: (key: string) => boolean;
  resize(width: number, height: number): void;
}

/** Drawing and what on it can be pressed; it is panned by scrolling. */
export function LayoutDrawing({ plan, isFaulty, resize }: LayoutDrawingProps): JSX.Element {
  const place = useRef<HTMLDivElement>(null);
  const drawing = plan.drawing;
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => resize(element.clientWidth, element.clientHeight));
    watch.observe(element);
    return () => watch.disconnect();
  }, [resize]);
  return (
    <div class="drawing layout" ref={place}>
      {drawing !== null && (
        <div class="paper" style={{ width: `${drawing.width * DOTS}px`, height: `${drawing.height * DOTS}px` }}>
          <svg
            role="img"
            aria-label="Anchor-rod plan, seen from above"
            viewBox={`0 0 ${drawing.width} ${drawing.height}`}
          >
            <title>Anchor-rod plan, seen from above</title>
            <desc>{`${plan.placements.length} bases on the grid. Each can be reached by keyboard.`}</desc>
            <SceneItems items={drawing.items} height={drawing.height} />
          </svg>
          <Spots plan={plan} drawing={drawing} isFaulty={isFaulty} />
          <Places plan={plan} drawing={drawing} />
        </div>
      )}
    </div>
  );
}

type Drawing = NonNullable<LivePlan["drawing"]>;

function Spots({
  plan: { written },
  drawing,
  isFaulty,
}: {
  readonly plan: LivePlan;
  readonly drawing: Drawing;
  readonly isFaulty: (key: string) => boolean;
}): JSX.Element {
  const { edit } = useActions();
  const styleOf = ({ x0, y0, x1, y1 }: Drawing["spots"][number]["box"]) => ({
    left: `${x0 * DOTS}px`,
    top: `${(drawing.height - y1) * DOTS}px`,
    width: `${(x1 - x0) * DOTS}px`,
    height: `${(y1 - y0) * DOTS}px`,
  });
  return (
    <>
      {drawing.spots.map((spot) => {
        if (spot.kind === "name") {
          return (
            <EditSpot
              key={`line ${spot.line}`}
              name={`Line ${spot.line}`}
              text={spot.line}
              shown=""
              class="spot"
              style={styleOf(spot.box)}
              isWrong={false}
              take={(text) => void edit(`line ${spot.line} renamed ${text}`, renamed(written, spot.line, text))}
            />
          );
        }
        const bay = bayOf(written, spot.from, spot.to);
        if (bay === null) return null;
        return (
          <EditSpot
            key={`${spot.from} to ${spot.to}`}
            name={`Spacing ${spot.from} to ${spot.to}`}
            text={bay.text}
            shown=""
            class="spot"
            style={styleOf(spot.box)}
            isWrong={isFaulty(`grid.${bay.axis}.spacing`)}
            take={(text) =>
              void edit(
                `spacing ${spot.from} to ${spot.to} ${bay.text} to ${text}`,
                withSpacing(written, bay.axis, bay.index, text),
              )
            }
          />
        );
      })}
    </>
  );
}

function Places({ plan, drawing }: { readonly plan: LivePlan; readonly drawing: Drawing }): JSX.Element {
  const { choose } = useActions();
  return (
    <ul class="places" aria-label="Bases on the plan">
      {plan.placements.map(({ path, name, state, words }, index) => {
        const place = drawing.places[index];
        if (place === undefined) return null;
        const reach = Math.max(3, place.reach);
        const style = {
          left: `${(place.at.x - reach) * DOTS}px`,
          top: `${(drawing.height - place.at.y - reach) * DOTS}px`,
          width: `${2 * reach * DOTS}px`,
          height: `${2 * reach * DOTS}px`,
        };
        const said = [name, state, words].filter((text) => text !== "").join(", ");
        return (
          <li key={`${name} ${index}`}>
            <button
              type="button"
              class={`place ${state}`}
              style={style}
              aria-label={`${said}: open its template`}
              title={said}
              onClick={() => choose(path)}
            />
          </li>
        );
      })}
    </ul>
  );
}
