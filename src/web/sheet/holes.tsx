/** The holes of the drawing: one stop of the tabulator, arrows from hole to hole, each spoken with its worst row. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { isAbout } from "../../tasks/live/about-hole.js";
import type { LiveHole } from "../../tasks/live/figure-model.js";
import { useActions, usePart } from "../app/page.js";
import { neighbourOf, STEPS } from "./neighbour.js";
import { middleOf, over } from "./places.js";

interface HolesProps {
  readonly holes: readonly LiveHole[];
  readonly height: number;
  readonly onOpen: (hole: LiveHole, element: HTMLElement) => void;
}

/** A button over each hole. */
export function Holes({ holes, height, onOpen }: HolesProps): JSX.Element {
  const [chosen, setChosen] = useState<string | null>(null);
  const pointed = usePart((state) => state.pointed);
  const { point } = useActions();
  const list = useRef<HTMLFieldSetElement>(null);
  const middles = holes.map(({ box }) => middleOf(box, height));
  const current = holes.some(({ tag }) => tag === chosen) ? chosen : (holes[0]?.tag ?? null);
  const go = (tag: string | undefined) => {
    const index = holes.findIndex((hole) => hole.tag === tag);
    (list.current?.children[index] as HTMLElement | undefined)?.focus();
  };
  return (
    <fieldset ref={list} class="holes" aria-label="Holes: arrows go from one to the next, Enter opens its figures">
      {holes.map((hole, index) => {
        const isLit = pointed?.subjects.some((subject) => isAbout(subject, hole.tag)) === true;
        return (
          <button
            key={hole.tag}
            type="button"
            class={`hole${hole.isRound ? " round" : ""}${isLit ? " lit" : ""}`}
            aria-label={hole.words}
            tabIndex={hole.tag === current ? 0 : -1}
            style={over(hole.box, height, hole.isRound ? 0.6 : 0.3)}
            onFocus={() => {
              setChosen(hole.tag);
              point({ subjects: [hole.tag], rule: null });
            }}
            onBlur={() => point(null)}
            onPointerEnter={() => point({ subjects: [hole.tag], rule: null })}
            onPointerLeave={() => point(null)}
            onClick={(event) => onOpen(hole, event.currentTarget)}
            onKeyDown={(event) => {
              const step = STEPS[event.key];
              if (event.key === "F2") onOpen(hole, event.currentTarget);
              else if (event.key === "Home") go(holes[0]?.tag);
              else if (event.key === "End") go(holes.at(-1)?.tag);
              else if (step !== undefined) go(holes[neighbourOf(middles, index, step) ?? -1]?.tag);
              else return;
              event.preventDefault();
              event.stopPropagation();
            }}
          />
        );
      })}
    </fieldset>
  );
}
