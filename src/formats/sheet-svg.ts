/**
 * A scene as SVG, through svg.js on a document that is handed in. Physical size in millimetres, one user unit a
 * millimetre, y turned down. Real text in the sheet font, which the file carries, each of a fixed length, so that no viewer
 * runs it out of its frame. No identifiers, and no style but that of the font, so that many sheets may stand in one page.
 */

import { Svg, withWindow } from "@svgdotjs/svg.js";
import type { Scene, SceneGroup, SceneItem, StrokeRole } from "../sheets/scene.js";
import { fontSize, setWidth } from "../sheets/text-metrics.js";
import { decimals } from "./decimals.js";
import type { DrawingDocument } from "./lean-document.js";
import { pathData, xy } from "./path-data.js";
import { FONT_FAMILY, fontFaces, startLetters, type UsedLetters } from "./sheet-font/used-faces.js";
import { type Ink, type Pen, pensOf } from "./sheet-pens.js";
import { writtenText } from "./written-text.js";

export type { DrawingDocument } from "./lean-document.js";

/** The part of an svg.js element that is used here; svg.js' own typings need the DOM library. Attributes go to the node itself. */
interface Drawn {
  readonly node: { setAttribute(name: string, value: string): void; readonly outerHTML: string };
  element(name: string): Drawn;
  words(words: string): Drawn;
}

const INKS: Readonly<Record<Ink, string>> = { black: "#000", held: "#a00000", paper: "#fff" };

/** The sheet font, fonts of its widths, and a narrow one where a viewer has none of them. */
const FONTS = `'${FONT_FAMILY}', 'Liberation Sans', Arial, Helvetica, 'Nimbus Sans', Arimo, 'DejaVu Sans Condensed', sans-serif`;

/** The sheet as an SVG document, ending in a newline. The same scene gives the same bytes, whatever the document. */
export function writeSheetSvg(scene: Scene, document: DrawingDocument): string {
  let [written, faces] = ["", ""];
  const run = withWindow as unknown as (window: unknown, draw: () => void) => void;
  run(document.defaultView, () => {
    const { root, letters } = drawScene(scene);
    written = root.node.outerHTML;
    faces = fontFaces(letters);
  });
  const lines = oneElementALine(written).replace(NO_FACES, () => `<style>${faces}</style>`);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${lines}\n`;
}

/** The font is long: it is put in last, into the one element that waits for it. */
const NO_FACES = /<style>\n?<\/style>/;

/** One element a line, so that versions can be compared; a browser names the one sign that HTML has a name for. */
function oneElementALine(svg: string): string {
  const lines = svg.replaceAll("></path>", "/>").replaceAll("></rect>", "/>").replaceAll("><", ">\n<");
  return lines.includes("&nbsp;") ? lines.replaceAll("&nbsp;", "\u00a0") : lines;
}

/** What all items of a sheet are drawn with. */
interface Sheet {
  readonly height: number;
  readonly pens: Readonly<Record<StrokeRole, Pen>>;
  readonly letters: UsedLetters;
}

function drawScene(scene: Scene): { readonly root: Drawn; readonly letters: UsedLetters } {
  const root = new Svg() as unknown as Drawn;
  const { node } = root;
  const [width, height] = [decimals(scene.width), decimals(scene.height)];
  const [title, description] = [writtenText(scene.title), writtenText(scene.description)];
  node.setAttribute("width", `${width}mm`);
  node.setAttribute("height", `${height}mm`);
  node.setAttribute("viewBox", `0 0 ${width} ${height}`);
  node.setAttribute("role", "img");
  node.setAttribute("aria-label", attributeText(title));
  node.setAttribute("font-family", FONTS);
  // letters as wide as they were measured, at any zoom
  node.setAttribute("style", "font-kerning:none;text-rendering:geometricPrecision");
  node.setAttribute("fill", INKS.black);
  root.element("title").words(title);
  root.element("desc").words(description);
  root.element("style");
  const paper = root.element("rect").node;
  paper.setAttribute("width", width);
  paper.setAttribute("height", height);
  paper.setAttribute("fill", INKS.paper);
  const sheet = { height: scene.height, pens: pensOf(scene.width), letters: startLetters() };
  drawItems(root, scene.items, sheet);
  return { root, letters: sheet.letters };
}

/** Not every browser escapes angle brackets in attributes, so that others stand in their place. */
function attributeText(text: string): string {
  return text.replace(/</g, "\u2039").replace(/>/g, "\u203a");
}

function drawItems(parent: Drawn, items: readonly SceneItem[], sheet: Sheet): void {
  for (let i = 0; i < items.length; i += 1) {
    const item = items[i];
    if (item === undefined) return;
    switch (item.kind) {
      case "group":
        drawItems(groupOf(parent, item), item.items, sheet);
        break;
      case "stroke": {
        const run = strokesFrom(items, i);
        drawStrokes(parent, item.role, run, sheet);
        i += run.length - 1;
        break;
      }
      case "fill":
        drawFill(parent, item, sheet);
        break;
      case "text":
        drawText(parent, item, sheet);
    }
  }
}

/** `valueNm` becomes `data-value-nm`. */
function groupOf(parent: Drawn, { name, data }: SceneGroup): Drawn {
  const drawn = parent.element("g");
  drawn.node.setAttribute("class", name);
  for (const key of Object.keys(data)) {
    const hyphened = key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    drawn.node.setAttribute(`data-${hyphened}`, attributeText(String(data[key])));
  }
  return drawn;
}

function drawFill(parent: Drawn, { role, points }: Extract<SceneItem, { kind: "fill" }>, { height }: Sheet): void {
  const { node } = parent.element("path");
  node.setAttribute("class", role);
  node.setAttribute("d", `M${points.map((point) => xy(point, height)).join("L")}Z`);
  if (role === "held") node.setAttribute("fill", INKS.held);
}

type Stroke = Extract<SceneItem, { kind: "stroke" }>;

/** Strokes of one role that follow on one another, from the one at `start`: they are one path. */
function strokesFrom(items: readonly SceneItem[], start: number): readonly Stroke[] {
  const run: Stroke[] = [];
  for (let i = start; i < items.length; i += 1) {
    const item = items[i];
    if (item?.kind !== "stroke" || (run[0] !== undefined && item.role !== run[0].role)) break;
    run.push(item);
  }
  return run;
}

function drawStrokes(parent: Drawn, role: StrokeRole, strokes: readonly Stroke[], { height, pens }: Sheet): void {
  const { width, dashes, ink } = pens[role];
  const { node } = parent.element("path");
  node.setAttribute("class", role);
  node.setAttribute("d", strokes.map(({ parts }) => pathData(parts, height)).join(""));
  node.setAttribute("fill", "none");
  node.setAttribute("stroke", INKS[ink]);
  node.setAttribute("stroke-width", String(width));
  if (dashes.length > 0) node.setAttribute("stroke-dasharray", dashes.join(" "));
}

function drawText(parent: Drawn, item: Extract<SceneItem, { kind: "text" }>, { height, letters }: Sheet): void {
  const x = decimals(item.at.x);
  const y = decimals(height - item.at.y);
  const words = writtenText(item.text);
  letters.note(words, item.bold);
  const length = decimals(setWidth(words, item.height, item.bold));
  const drawn = parent.element("text");
  const { node } = drawn;
  node.setAttribute("x", x);
  node.setAttribute("y", y);
  node.setAttribute("font-size", decimals(fontSize(item.height)));
  if (length !== "0") {
    node.setAttribute("textLength", length);
    node.setAttribute("lengthAdjust", "spacingAndGlyphs");
  }
  if (item.anchor !== "start") node.setAttribute("text-anchor", item.anchor);
  if (item.bold) node.setAttribute("font-weight", "bold");
  if (item.role === "reversed") node.setAttribute("fill", INKS.paper);
  if (item.role === "held") node.setAttribute("fill", INKS.held);
  if (item.turn !== 0) node.setAttribute("transform", `rotate(${decimals(-item.turn)} ${x} ${y})`);
  drawn.words(words);
}
