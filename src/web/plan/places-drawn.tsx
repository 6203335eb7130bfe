/** The bases on the plan: one stop of the tabulator, arrows from base to base, each spoken with its place and state; Enter opens its template. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import type { LivePlacement, LivePlan } from "../../tasks/live/plan-model.js";
import { useActions } from "../app/page.js";
import { neighbourOf, STEPS } from "../sheet/neighbour.js";
import { middleOf, over } from "../sheet/places.js";

interface PlacesProps {
  readonly plan: LivePlan;
  readonly drawing: NonNullable<LivePlan["drawing"]>;
}

/** What can be pressed is no smaller than this about its middle, millimetres. */
const LEAST_REACH = 3.2;

/** A button over each base. */
export function Places({ plan: { placements }, drawing }: PlacesProps): JSX.Element {
  const [chosen, choose] = useState(0);
  const list = useRef<HTMLUListElement>(null);
  const current = Math.min(chosen, placements.length - 1);
  const boxes = drawing.places.map(({ at: { x, y }, reach }) => {
    const half = Math.max(LEAST_REACH, reach);
    return { x0: x - half, y0: y - half, x1: x + half, y1: y + half };
  });
  const middles = boxes.map((box) => middleOf(box, drawing.height));
  const go = (index: number | null): void => {
    const button = list.current?.children[index ?? -1]?.firstElementChild;
    if (button instanceof HTMLElement) button.focus({ preventScroll: true });
  };
  return (
    <ul class="places" aria-label="Bases on the plan: arrows go from one to the next" ref={list}>
      {placements.map((placement, index) => (
        <li key={`${placement.name} ${index}`}>
          <Place
            placement={placement}
            style={over(boxes[index] ?? NOWHERE, drawing.height, 0)}
            isCurrent={index === current}
            onFocus={() => choose(index)}
            onKeyDown={(event) => {
              const step = STEPS[event.key];
              if (step !== undefined) go(neighbourOf(middles, index, step));
              else if (event.key === "Home") go(0);
              else if (event.key === "End") go(placements.length - 1);
              else return;
              event.preventDefault();
              event.stopPropagation();
            }}
          />
        </li>
      ))}
    </ul>
  );
}

const NOWHERE = { x0: 0, y0: 0, x1: 0, y1: 0 };

interface PlaceProps {
  readonly placement: LivePlacement;
  readonly style: Readonly<Record<string, string>>;
  readonly isCurrent: boolean;
  readonly onFocus: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

function Place({ placement: { path, name, state, words }, isCurrent, ...own }: PlaceProps): JSX.Element {
  const { choose } = useActions();
  const said = [name, state, words].filter((text) => text !== "").join(", ");
  return (
    <button
      type="button"
      class={`place ${state}`}
      aria-label={`${said}: open its template`}
      title={said}
      tabIndex={isCurrent ? 0 : -1}
      onClick={() => void choose(path)}
      {...own}
    />
  );
}
