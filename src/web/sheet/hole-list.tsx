/** Every hole with its place, as the hole table of a printed sheet has them. */
import type { JSX } from "preact";
import { isAbout } from "../../tasks/live/about-hole.js";
import { useActions, usePart } from "../app/page.js";

/** Folded beside the drawing. */
export function HoleList(): JSX.Element | null {
  const holes = usePart((state) => state.sheet?.holes ?? null);
  const unit = usePart((state) => state.live?.unit ?? "in");
  const pointed = usePart((state) => state.pointed);
  const { point } = useActions();
  if (holes === null) return null;
  return (
    <details>
      <summary>Holes ({holes.length})</summary>
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
          {holes.map(({ tag, x, y, diameter, width, height }) => (
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
    </details>
  );
}
