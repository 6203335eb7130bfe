/**
 * A scene as SVG, through svg.js on a document that is handed in. Physical size in millimetres, one user unit a
 * millimetre, y turned down. Black on white: roles differ by line width and dash pattern, so that a one-bit print says it
 * all. Real text; no identifiers, no style sheet, so that many sheets may stand in one page.
 */

import { Svg, withWindow } from "@svgdotjs/svg.js";
import { readable } from "../diagnostics/printable.js";
import { arcOf } from "../sheets/occupied.js";
import type { PaperPoint, PathPart, Scene, SceneItem, StrokeRole } from "../sheets/scene.js";
import { fontSize } from "../sheets/text-metrics.js";

/** Any DOM that svg.js can draw on: the browser's own document, or svgdom's `createHTMLWindow().document`. */
export interface DrawingDocument {
  readonly defaultView: unknown;
}

/** The part of an svg.js element that is used here; svg.js' own typings need the DOM library. */
interface Drawn {
  element(name: string): Drawn;
  group(): Drawn;
  plain(words: string): Drawn;
  attr(values: Readonly<Record<string, string | number>>): Drawn;
  words(words: string): Drawn;
  svg(): string;
}

interface LineStyle {
  readonly width: number;
  readonly dash: string;
}

/** ISO 128: long dashes and a dot, long dashes and two; the second shorter and wider, to be told apart. */
const CHAIN = "9 1.2 0.6 1.2";
const PHANTOM = "4.5 1 1 1 1 1";

/** ISO 128: visible edges are twice as wide as narrow lines; the wide ones on small sheets are one step finer. */
const NARROW = 0.25;

interface LineGroup {
  readonly edge: number;
  readonly hole: number;
  readonly border: number;
}

const SMALL_SHEET: LineGroup = { edge: 0.5, hole: 0.5, border: 0.5 };
const LARGE_SHEET: LineGroup = { edge: 0.7, hole: 0.5, border: 0.7 };

function lineStyle(role: StrokeRole, group: LineGroup): LineStyle {
  switch (role) {
    case "outline":
      return { width: group.edge, dash: "" };
    case "frame":
      return { width: group.border, dash: "" };
    case "hole":
    case "table-heavy":
      return { width: group.hole, dash: "" };
    case "concrete":
      return { width: 0.35, dash: "3 1.2" };
    case "base-plate":
      return { width: 0.35, dash: PHANTOM };
    case "centre":
      return { width: NARROW, dash: CHAIN };
    case "held":
      return { width: 1, dash: "" };
    case "dimension":
    case "extension":
    case "leader":
    case "scribe":
    case "fine":
    case "table":
      return { width: NARROW, dash: "" };
  }
}

const INK = "#000";
/** Dark enough to print solid in one bit. */
const ACCENT = "#a00000";
const PAPER = "#fff";
const FONTS = "Arial, Helvetica, 'Liberation Sans', Arimo, sans-serif";

/** The sheet as an SVG document, ending in a newline. The same scene gives the same bytes. */
export function writeSheetSvg(scene: Scene, document: DrawingDocument): string {
  let written = "";
  const run = withWindow as unknown as (window: unknown, draw: () => void) => void;
  run(document.defaultView, () => {
    written = drawScene(scene).svg();
  });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${oneElementALine(written)}\n`;
}

/** Documents serialise empty elements in two ways; one element a line, so that versions can be compared. */
function oneElementALine(svg: string): string {
  return svg.replace(/><\/(?:path|rect)>/g, "/>").replace(/></g, ">\n<");
}

function drawScene(scene: Scene): Drawn {
  const root = new Svg() as unknown as Drawn;
  const { width, height } = scene;
  root.attr({
    width: `${decimals(width)}mm`,
    height: `${decimals(height)}mm`,
    viewBox: `0 0 ${decimals(width)} ${decimals(height)}`,
    "font-family": FONTS,
    fill: INK,
  });
  root.element("title").words(readable(scene.title));
  root.element("desc").words(readable(scene.description));
  root.element("rect").attr({ width: decimals(width), height: decimals(height), fill: PAPER });
  const group = width < 300 ? SMALL_SHEET : LARGE_SHEET;
  for (const item of scene.items) drawItem(root, item, { height, group });
  return root;
}

interface Sheet {
  readonly height: number;
  readonly group: LineGroup;
}

function drawItem(parent: Drawn, item: SceneItem, sheet: Sheet): void {
  const { height } = sheet;
  switch (item.kind) {
    case "group": {
      const drawn = parent.group().attr({ class: item.name, ...dataAttributes(item.data) });
      for (const inner of item.items) drawItem(drawn, inner, sheet);
      return;
    }
    case "stroke": {
      const { width, dash } = lineStyle(item.role, sheet.group);
      const ink = item.role === "held" ? ACCENT : INK;
      parent.element("path").attr({
        class: item.role,
        d: pathData(item.parts, height),
        fill: "none",
        stroke: ink,
        "stroke-width": width,
        ...(dash === "" ? {} : { "stroke-dasharray": dash }),
      });
      return;
    }
    case "fill": {
      const points = item.points.map((point) => xy(point, height)).join("L");
      const paint = item.role === "held" ? { fill: ACCENT } : {};
      parent.element("path").attr({ class: item.role, d: `M${points}Z`, ...paint });
      return;
    }
    case "text":
      drawText(parent, item, height);
  }
}

function drawText(parent: Drawn, item: Extract<SceneItem, { kind: "text" }>, height: number): void {
  const x = decimals(item.at.x);
  const y = decimals(height - item.at.y);
  parent.plain(readable(item.text)).attr({
    x,
    y,
    "font-size": decimals(fontSize(item.height)),
    ...(item.anchor === "start" ? {} : { "text-anchor": item.anchor }),
    ...(item.bold ? { "font-weight": "bold" } : {}),
    ...(item.role === "reversed" ? { fill: PAPER } : item.role === "held" ? { fill: ACCENT } : {}),
    ...(item.turn === 0 ? {} : { transform: `rotate(${decimals(-item.turn)} ${x} ${y})` }),
  });
}

/** `valueNm` becomes `data-value-nm`. */
function dataAttributes(data: Readonly<Record<string, string | number>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [
      `data-${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
      String(value),
    ]),
  );
}

/** Parts that follow on one another are one line, so that corners are joined and dashes run on; closed where it comes back. */
function pathData(parts: readonly PathPart[], height: number): string {
  let data = "";
  let [start, pen] = ["", ""];
  for (const part of parts) {
    if (part.kind === "circle") {
      data += circleData(part.center, part.radius, height);
      pen = "";
      continue;
    }
    const [from, to] = [xy(part.from, height), xy(part.to, height)];
    if (from !== pen || pen === start) {
      data += `M${from}`;
      start = from;
    }
    data += part.kind === "arc" ? arcData(part, to) : `L${to}`;
    if (to === start) data += "Z";
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

function xy(point: PaperPoint, height: number): string {
  return `${decimals(point.x)} ${decimals(height - point.y)}`;
}

/** Micrometres at the finest, no exponent, no minus zero. */
function decimals(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}
