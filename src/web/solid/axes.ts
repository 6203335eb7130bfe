/** Axes of the base beside its template, and plan north where it is known. */
import type { LiveSolid } from "../../tasks/live/solid.js";
import type { Stroke } from "./lines.js";

/** A line with its name at the end. */
export interface Axis {
  readonly text: string;
  readonly stroke: Stroke;
}

/** From a place before the lower left corner of the template, at its underside. */
export function axesOf({ shells, north }: LiveSolid): readonly Axis[] {
  const [x0, y0, x1, y1] = extentOf(shells.filter(({ part }) => part === "template" || part === "segment"));
  if (x1 < x0) return [];
  const long = 0.16 * Math.max(x1 - x0, y1 - y0);
  const [x, y] = [x0 - long / 2, y0 - long / 2];
  const axis = (text: string, degrees: number): Axis => {
    const turn = (degrees * Math.PI) / 180;
    return {
      text,
      stroke: [
        [x, y, 0],
        [x + Math.cos(turn) * long, y + Math.sin(turn) * long, 0],
      ],
    };
  };
  const named = [
    { text: "X", degrees: 0 },
    { text: "Y", degrees: 90 },
  ];
  const isAlong = named.some(({ degrees }) => degrees === north);
  return [
    ...named.map(({ text, degrees }) => axis(degrees === north ? `${text} N` : text, degrees)),
    ...(north === null || isAlong ? [] : [axis("N", north)]),
  ];
}

function extentOf(shells: LiveSolid["shells"]): readonly [number, number, number, number] {
  let [x0, y0, x1, y1] = [1e9, 1e9, -1e9, -1e9];
  for (const { corners } of shells)
    for (let i = 0; i < corners.length; i += 3) {
      const [x = 0, y = 0] = corners.subarray(i, i + 2);
      [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
    }
  return [x0, y0, x1, y1];
}
