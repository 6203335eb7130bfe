/** A cut file as it is drawn, with its findings at their places. */
import type { JSX } from "preact";
import type { CutFilePicture } from "../../formats/dxf-picture.js";

/** Numbers are those of the list beside it. */
export function CutPicture({
  picture,
  name,
}: {
  readonly picture: CutFilePicture;
  readonly name: string;
}): JSX.Element {
  const { x, y, width, height, cut, marks, places } = picture;
  const radius = Math.max(width, height) * 0.018;
  return (
    <div class="drawing cut-picture">
      <svg role="img" aria-label={name} viewBox={`${x} ${y} ${width} ${height}`}>
        <path class="marks" d={marks} />
        <path class="cut" d={cut} />
        {places.map(({ number, x: at, y: down, isStop }) => (
          <g key={number} class={isStop ? "place stop" : "place"}>
            <circle cx={at} cy={down} r={radius} />
            <text x={at + radius * 1.3} y={down - radius * 0.6} font-size={radius * 2}>
              {number}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
