/** Strokes of a scene as the path data of SVG, y turned down, to a micrometre. */
import { arcOf } from "../sheets/occupied.js";
import type { PaperPoint, PathPart } from "../sheets/scene.js";
import { decimals, thousandths } from "./decimals.js";

/** Parts that follow on one another are one line, so that corners are joined and dashes run on; closed where it comes back. */
export function pathData(parts: readonly PathPart[], height: number): string {
  let data = "";
  let [start, pen] = [NOWHERE, NOWHERE];
  for (const part of parts) {
    if (part.kind === "circle") {
      data += circleData(part.center, part.radius, height);
      pen = NOWHERE;
      continue;
    }
    const [from, to] = [place(part.from, height), place(part.to, height)];
    if (!isSame(from, pen) || isSame(pen, start)) {
      data += `M${written(from)}`;
      start = from;
    }
    data += part.kind === "arc" ? arcData(part, written(to)) : `L${written(to)}`;
    if (isSame(to, start)) data += "Z";
    pen = to;
  }
  return data;
}

function arcData({ from, to, bulge }: Extract<PathPart, { kind: "arc" }>, end: string): string {
  if (bulge === 0) return `L${end}`;
  const radius = decimals(arcOf(from, to, bulge).radius);
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${end}`;
}

function circleData(center: PaperPoint, radius: number, height: number): string {
  const r = decimals(radius);
  const left = xy({ x: center.x - radius, y: center.y }, height);
  const right = xy({ x: center.x + radius, y: center.y }, height);
  return `M${right}A${r} ${r} 0 1 0 ${left}A${r} ${r} 0 1 0 ${right}Z`;
}

/** A point as it is written. */
export function xy(point: PaperPoint, height: number): string {
  return written(place(point, height));
}

/** Whole micrometres from the upper left corner: points that are written alike are the same. */
interface Place {
  readonly x: number;
  readonly y: number;
}

const NOWHERE: Place = { x: Number.NaN, y: Number.NaN };

function place({ x, y }: PaperPoint, height: number): Place {
  return { x: Math.round(x * 1000), y: Math.round((height - y) * 1000) };
}

function isSame(a: Place, b: Place): boolean {
  return a.x === b.x && a.y === b.y;
}

function written({ x, y }: Place): string {
  return `${thousandths(x)} ${thousandths(y)}`;
}
