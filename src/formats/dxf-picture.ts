/** What a cut file draws, as path data of SVG in the file's own unit, y turned down. */
import type { CutContour, CutFile, CutFileFinding, CutSegment } from "../readers/dxf.js";
import type { PathPart } from "../sheets/scene.js";
import { pathData } from "./path-data.js";

/** A picture of a cut file: `cut` is cut through, `marks` is drawn else; places of findings with their numbers, from 1. */
export interface CutFilePicture {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cut: string;
  readonly marks: string;
  readonly places: readonly {
    readonly number: number;
    readonly x: number;
    readonly y: number;
    readonly isStop: boolean;
  }[];
}

/** Letters of path data beyond which a file is not drawn: a screen shows no more of it. */
const MOST_DATA = 400_000;

/** null where it draws nothing, or more than a screen can show. `findings` are those that are listed beside it. */
export function drawCutFile(file: CutFile, findings: readonly CutFileFinding[]): CutFilePicture | null {
  const { extent } = file;
  if (extent === null || !extent.every(Number.isFinite)) return null;
  const [x0, y0, x1, y1] = extent;
  const margin = Math.max(x1 - x0, y1 - y0) * 0.06 || 1;
  const inside = findings.flatMap(({ at, severity }, i) => {
    if (at === null || at[0] < x0 - margin || at[0] > x1 + margin || at[1] < y0 - margin || at[1] > y1 + margin)
      return [];
    return [{ number: i + 1, x: at[0], y: y1 - at[1], isStop: severity === "stop" }];
  });
  const cut = file.contours.map((each) => contourData(each, y1)).join("");
  const marks = [
    ...file.closedMarks.map((each) => contourData(each, y1)),
    ...file.openStrokes.map(({ segments }) => pathData(segments.map(partOf), y1)),
  ].join("");
  if (cut.length + marks.length > MOST_DATA) return null;
  const [width, height] = [x1 - x0 + 2 * margin, y1 - y0 + 2 * margin];
  return { x: x0 - margin, y: -margin, width, height, cut, marks, places: inside };
}

function contourData(contour: CutContour, top: number): string {
  switch (contour.kind) {
    case "circle": {
      const { x, y, diameter } = contour;
      return pathData([{ kind: "circle", center: { x, y }, radius: diameter / 2 }], top);
    }
    case "path":
      return pathData(contour.segments.map(partOf), top);
  }
}

function partOf({ from, to, bulge }: CutSegment): PathPart {
  return bulge === 0 ? { kind: "line", from, to } : { kind: "arc", from, to, bulge };
}
