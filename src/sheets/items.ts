/** Short ways to make scene items. Paper millimetres, y up. */
import { arrowProportion } from "../standards/index.js";
import type { FillRole, PaperPoint, PathPart, SceneGroup, SceneItem, StrokeRole, TextRole } from "./scene.js";

/** Which end of a text stands at its place. */
export type Anchor = "start" | "middle" | "end";

/** How a text is set beside its place: defaults are a start anchor, no turn, regular weight. */
export interface TextStyle {
  readonly anchor?: Anchor;
  readonly turn?: number;
  readonly bold?: boolean;
}

/** A point on paper, millimetres, y up. */
export function at(x: number, y: number): PaperPoint {
  return { x, y };
}

/** A text; `height` is that of its capitals, millimetres. */
export function text(role: TextRole, words: string, place: PaperPoint, height: number, style: TextStyle = {}) {
  const { anchor = "start", turn = 0, bold = false } = style;
  return { kind: "text", role, text: words, at: place, anchor, height, turn, bold } as const;
}

/** A stroke of one role, of a few parts; of a list of any length: `strokeOf`. */
export function stroke(role: StrokeRole, ...parts: readonly PathPart[]) {
  return strokeOf(role, parts);
}

/** A stroke of one role. */
export function strokeOf(role: StrokeRole, parts: readonly PathPart[]) {
  return { kind: "stroke", role, parts } as const;
}

/** A straight part of a stroke. */
export function line(from: PaperPoint, to: PaperPoint): PathPart {
  return { kind: "line", from, to };
}

/** A whole circle as a part of a stroke. */
export function circle(center: PaperPoint, radius: number): PathPart {
  return { kind: "circle", center, radius };
}

/** The four sides of an axis-parallel rectangle. */
export function rectangle(x0: number, y0: number, x1: number, y1: number): readonly PathPart[] {
  return [
    line(at(x0, y0), at(x1, y0)),
    line(at(x1, y0), at(x1, y1)),
    line(at(x1, y1), at(x0, y1)),
    line(at(x0, y1), at(x0, y0)),
  ];
}

/** A filled polygon. */
export function fill(role: FillRole, ...points: readonly PaperPoint[]) {
  return { kind: "fill", role, points } as const;
}

/** Items under one name. */
export function group(name: string, items: readonly SceneItem[], data: SceneGroup["data"] = {}): SceneGroup {
  return { kind: "group", name, data, items };
}

/** A filled arrowhead with its point at `tip`, pointing along the unit vector `dx, dy` (ASME Y14 proportion). */
export function arrowHead(tip: PaperPoint, dx: number, dy: number, length: number): SceneItem {
  const half = length / (2 * arrowProportion.value);
  const back = at(tip.x - dx * length, tip.y - dy * length);
  return fill("arrow", tip, at(back.x - dy * half, back.y + dx * half), at(back.x + dy * half, back.y - dx * half));
}
