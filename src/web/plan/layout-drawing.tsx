/** The layout as it is drawn: its spacings, names of lines and bases are reached and edited where they stand. */
import type { JSX } from "preact";
import type { LivePlan } from "../../tasks/live/plan-model.js";
import { useActions } from "../app/page.js";
import { over } from "../sheet/places.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { ZoomButtons } from "../sheet/zoom-buttons.js";
import { EditSpot } from "./edit-spot.js";
import { bayOf, renamed, withSpacing } from "./grid-edits.js";
import { Places } from "./places-drawn.js";
import type { PlanShown } from "./use-plan.js";

/** What it is drawn from. */
export interface LayoutDrawingProps extends PlanShown {
  readonly isFaulty: (key: string) => boolean;
}

/** Drawing and what on it can be pressed, in a window in which it is zoomed and moved. */
export function LayoutDrawing({ plan, place, zooming, isFaulty }: LayoutDrawingProps): JSX.Element {
  const drawing = plan?.drawing ?? null;
  return (
    <section
      class="drawing layout"
      ref={place}
      aria-label="Drawing: plus and minus zoom, 0 shows the whole, arrows move it"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: zoomed and moved by keys
      tabIndex={0}
      {...zooming.listeners}
    >
      {plan !== null && drawing !== null && <Laid {...{ plan, drawing, zooming, isFaulty }} />}
      <ZoomButtons zooming={zooming} />
    </section>
  );
}

type Drawing = NonNullable<LivePlan["drawing"]>;

interface LaidProps extends Pick<LayoutDrawingProps, "zooming" | "isFaulty"> {
  readonly plan: LivePlan;
  readonly drawing: Drawing;
}

function Laid({ plan, drawing, zooming, isFaulty }: LaidProps): JSX.Element {
  const { width, height, items } = drawing;
  const { times, x, y } = zooming.zoom;
  return (
    <div
      class={times > 1 ? "laid moves" : "laid"}
      style={{
        width: `${width}mm`,
        height: `${height}mm`,
        transform: `translate(${x}px, ${y}px) scale(${times / drawing.times})`,
      }}
    >
      <svg role="img" aria-label="Anchor-rod plan, seen from above" viewBox={`0 0 ${width} ${height}`}>
        <title>Anchor-rod plan, seen from above</title>
        <desc>{`${plan.placements.length} bases on the grid. Each can be reached by keyboard.`}</desc>
        <SceneItems items={items} height={height} />
      </svg>
      <Spots plan={plan} drawing={drawing} isFaulty={isFaulty} />
      <Places plan={plan} drawing={drawing} />
    </div>
  );
}

function Spots({ plan: { written }, drawing, isFaulty }: Omit<LaidProps, "zooming">): JSX.Element {
  const { edit } = useActions();
  return (
    <>
      {drawing.spots.map((spot) => {
        const style = over(spot.box, drawing.height, 0);
        if (spot.kind === "name") {
          return (
            <EditSpot
              key={`line ${spot.line}`}
              name={`Line ${spot.line}`}
              text={spot.line}
              shown=""
              class="spot"
              style={style}
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
            style={style}
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
