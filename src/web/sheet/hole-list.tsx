/** Every hole with its place, as the hole table of a printed sheet has them. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { isAbout } from "../../tasks/live/about-hole.js";
import { useActions, usePart } from "../app/page.js";

/** Folded beside the drawing; its rows are made when it is opened. */
export function HoleList(): JSX.Element | null {
  const count = usePart((state) => state.sheet?.holes.length ?? null);
  const [isOpen, setOpen] = useState(false);
  if (count === null) return null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Holes ({count})</summary>
      {isOpen && <HoleTable />}
    </details>
  );
}

function HoleTable(): JSX.Element {
  const holes = usePart((state) => state.sheet?.holes ?? null);
  const unit = usePart((state) => state.live?.unit ?? "in");
  const pointed = usePart((state) => state.pointed);
  const { point } = useActions();
  return (
    <table class="hole-list">
      <thead>
        <tr>
          <th scope="col">Hole</th>
          <th scope="col" class="figure">
            Size, {unit}
          </th>
          <th scope="col" class="figure">
            X
          </th>
          <th scope="col" class="figure">
            Y
          </th>
        </tr>
      </thead>
      <tbody>
        {(holes ?? []).map(({ tag, x, y, diameter, width, height }) => (
          <tr
            key={tag}
            class={pointed?.subjects.some((subject) => isAbout(subject, tag)) === true ? "lit" : undefined}
            onPointerEnter={() => point({ subjects: [tag], rule: null })}
            onPointerLeave={() => point(null)}
          >
            <th scope="row">{tag}</th>
            <td class="figure">{diameter === undefined ? `${width} × ${height}` : `Ø${diameter}`}</td>
            <td class="figure">{x}</td>
            <td class="figure">{y}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
