/**
 * Scenes as the pages of one PDF, through pdfkit, which is handed in. Millimetres become points exactly; the pens are those of
 * the SVG; the letters are those of the sheet font, taken out of it and embedded; characters that it lacks are boxes. Pages
 * are written as they come, where wanted in another thread than their file, and may be put in another order at the end. The
 * same pages give the same bytes: no clock.
 */

import { zlibSync } from "fflate";
import { ProgramFault } from "../diagnostics/program-fault.js";
import { arcOf } from "../sheets/occupied.js";
import type { Bar, Lattice, PaperPoint, PathPart, Scene, SceneItem, StrokeRole } from "../sheets/scene.js";
import { fontSize, isInSheetFont, setWidth } from "../sheets/text-metrics.js";
import { decimals } from "./decimals.js";
import type { PdfDocument, PdfFont, PdfMaker, PdfObject, PdfOutline } from "./pdf-maker.js";
import { WHOLE_FONT } from "./sheet-font/whole.js";
import { type Ink, type Pen, pensOf } from "./sheet-pens.js";
import { writtenText } from "./written-text.js";

/** What a viewer shows as the document's properties. `day` is an ISO date: that of the job, not of the writing. */
export interface PdfFacts {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly day: string;
  readonly program: string;
}

/** A page as it stands in the list of bookmarks; the outer list is folded out. */
export interface Bookmark {
  readonly title: string;
  /** Number of the page in the order of the file, from 1. */
  readonly page: number;
  readonly under: readonly Bookmark[];
}

/** How a scene stands on a page, millimetres: `x`, `y` is where its lower left goes. */
export interface Placement {
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  readonly factor: number;
  /** What is written over it, in millimetres of the page. */
  readonly over: readonly SceneItem[];
}

/**
 * A page that no file has taken yet: millimetres, and operators, packed; as text where letters stand in them marked as
 * themselves, since they have no number before a file needs them.
 */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly content: Uint8Array | string;
}

/** A file that grows page by page. */
export interface PdfPages {
  /** Adds a page; its number in the order of adding, from 0. */
  add(page: PdfPage): number;
  /** The whole file, its pages in this order of their numbers. */
  finish(order: readonly number[], bookmarks: readonly Bookmark[]): Uint8Array;
}

/** Points of a millimetre. */
const POINTS = 72 / 25.4;

/** Starts a file without pages. */
export function startPdf(maker: PdfMaker, facts: PdfFacts): PdfPages {
  const day = new Date(`${facts.day}T00:00:00Z`);
  const pieces: Uint8Array[] = [];
  const doc = new (keeping(maker, pieces))({
    ...{ lang: "en", compress: false, autoFirstPage: false, font: decoded(WHOLE_FONT.regular) },
    info: {
      ...{ Title: facts.title, Author: facts.author, Subject: facts.subject },
      ...{ Creator: facts.program, Producer: `${facts.program}, pdfkit`, CreationDate: day, ModDate: day },
    },
  });
  const viewing = { DisplayDocTitle: true, PrintScaling: "None", PickTrayByPDFSize: true };
  doc._root.data.ViewerPreferences = doc.ref(viewing);
  const faces = startFaces(doc);
  const pages: unknown[] = [];
  return {
    add: ({ width, height, content }) => {
      doc.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      for (const [name, face] of Object.entries(faces)) doc.page.fonts[name] = face.ref();
      doc.page.content.data.Filter = "FlateDecode";
      doc.page.content.buffer = [typeof content === "string" ? packed(withGlyphs(content, faces)) : content];
      return pages.push(doc.page.dictionary) - 1;
    },
    finish: (order, bookmarks) => {
      doc._root.data.Pages.data.Kids = order.map((number) => pages[number]);
      addBookmarks(doc.outline, bookmarks);
      doc.end();
      return joined(pieces);
    },
  };
}

function asItIs({ width, height }: Scene): Placement {
  return { width, height, x: 0, y: 0, factor: 1, over: [] };
}

function addBookmarks(outline: PdfOutline, bookmarks: readonly Bookmark[]): void {
  for (const { title, page, under } of bookmarks)
    addBookmarks(outline.addItem(title, { pageNumber: page - 1, fit: true, expanded: true }), under);
}

/**
 * The same document, whose pieces are kept at once instead of going through a stream, which not every browser has, and whose
 * pages and fonts are packed here, since what the platform packs differs from version to version.
 */
function keeping(maker: PdfMaker, pieces: Uint8Array[]): PdfMaker {
  return class extends maker {
    override push(piece: Uint8Array | null): boolean {
      if (piece !== null) pieces.push(pieces.length === 0 ? withVersion(piece) : piece);
      return true;
    }

    override ref(data: Record<string, unknown>): PdfObject {
      const made = super.ref(data);
      const write = made.finalize;
      made.finalize = () => {
        pack(made);
        write.call(made);
      };
      return made;
    }
  };
}

/** Contents that are packed already say so. */
function pack(object: PdfObject): void {
  const { buffer, data } = object;
  if (buffer.length === 0 || data.Filter !== undefined) return;
  const bytes = joined(buffer);
  if (data.Length1 === undefined && isTrueType(bytes)) data.Length1 = bytes.length;
  object.buffer = [zlibSync(bytes)];
  data.Filter = "FlateDecode";
}

/** By the first four bytes of the font file. */
function isTrueType(bytes: Uint8Array): boolean {
  return ["0,1,0,0", "116,114,117,101"].includes(bytes.subarray(0, 4).join());
}

/** pdfkit is told 1.3, else it writes the properties a second time, as XML and not escaped; the file's head says 1.7. */
function withVersion(head: Uint8Array): Uint8Array {
  return new TextEncoder().encode(new TextDecoder().decode(head).replace("%PDF-1.3", "%PDF-1.7"));
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(pieces.reduce((size, { length }) => size + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

function decoded(base64: string): Uint8Array {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** Names of the two weights in the resources of every page. */
type FaceName = "F1" | "F2";

const faceName = (bold: boolean): FaceName => (bold ? "F2" : "F1");

/** Of operators: a higher level is a twentieth shorter and takes half as long again. */
const LEVEL = 3;

function packed(operators: string): Uint8Array {
  return zlibSync(new TextEncoder().encode(operators), { level: LEVEL });
}

/** Letters that every file takes in first, in this order, so that they have the same numbers in all: ASCII, and what sheets say beside it. */
const USUAL = [...Array.from({ length: 0x5f }, (_, i) => String.fromCharCode(0x20 + i)), ..."Ø×°±…"];

const fourDigits = (number: number): string => number.toString(16).padStart(4, "0");

/** Glyph 0 stands for what is not in the font. */
const USUAL_GLYPHS: ReadonlyMap<string, string> = new Map(USUAL.map((letter, i) => [letter, fourDigits(i + 1)]));

/** Glyphs of each character, encoded once. */
interface Face {
  glyph(character: string): string;
  ref(): unknown;
}

function startFaces(doc: PdfDocument): Readonly<Record<FaceName, Face>> {
  const regular = faceOf(doc._font);
  doc.font(decoded(WHOLE_FONT.bold));
  return { F1: regular, F2: faceOf(doc._font) };
}

function faceOf(font: PdfFont): Face {
  const known = new Map<string, string>();
  const encode = (character: string): string => {
    const [hex] = font.encode(character, []);
    const text = hex.join("");
    known.set(character, text);
    return text;
  };
  for (const [letter, glyph] of USUAL_GLYPHS)
    if (encode(letter) !== glyph) throw new ProgramFault(`${letter} is not glyph ${glyph} of its font`);
  return { glyph: (character) => known.get(character) ?? encode(character), ref: () => font.ref() };
}

/** Control signs, which stand in no text of a sheet, around a run of letters and the name of its face. */
const [OPEN, CLOSE] = ["\u0001", "\u0002"];

/** Letters that are not usual are numbered in the order in which a file comes to need them: they become glyphs where the file is. */
function withGlyphs(content: string, faces: Readonly<Record<FaceName, Face>>): string {
  const [first = "", ...runs] = content.split(OPEN);
  const written = runs.map((run) => {
    const end = run.indexOf(CLOSE);
    const face = faces[run.startsWith("F2") ? "F2" : "F1"];
    let glyphs = "";
    for (const character of run.slice(2, end)) glyphs += face.glyph(character);
    return `<${glyphs}>${run.slice(end + 1)}`;
  });
  return first + written.join("");
}

/** Writes operators, and says again only what has changed: pen and ink. */
interface Content {
  readonly parts: string[];
  pen: Pen | null;
  fill: Ink;
  /** True where every letter has its number. */
  isUsual: boolean;
}

const INKS: Readonly<Record<Ink, string>> = { black: "0 0 0", held: "0.62745 0 0", paper: "1 1 1" };

/** Everything on the page, in millimetres. Without a placement the page has the size of the scene. */
export function writePage(scene: Scene, placement: Placement = asItIs(scene)): PdfPage {
  const { width, height, x, y, factor, over } = placement;
  const moved = factor === 1 && x === 0 && y === 0 ? [] : [`${factor} 0 0 ${factor} ${decimals(x)} ${decimals(y)} cm`];
  const content: Content = {
    parts: [`${POINTS} 0 0 ${POINTS} 0 0 cm`, "q", ...moved, "0 J 0 j"],
    pen: null,
    fill: "black",
    isUsual: true,
  };
  writeItems(content, scene.items, pensOf(scene.width));
  content.parts.push("Q");
  content.pen = null;
  content.fill = "black";
  writeItems(content, over, pensOf(scene.width));
  const operators = content.parts.join("\n");
  return { width, height, content: content.isUsual ? packed(operators) : operators };
}

function writeItems(content: Content, items: readonly SceneItem[], pens: Readonly<Record<StrokeRole, Pen>>): void {
  for (const item of items)
    switch (item.kind) {
      case "group":
        if (item.lattice === undefined) writeItems(content, item.items, pens);
        else writeLattice(content, item.lattice);
        break;
      case "stroke":
        usePen(content, pens[item.role]);
        writePath(content, item.parts);
        break;
      case "fill":
        useFill(content, item.role === "held" ? "held" : "black");
        content.parts.push(`${item.points.map((point, i) => `${xy(point)} ${i === 0 ? "m" : "l"}`).join(" ")} f`);
        break;
      case "text":
        writeText(content, item);
    }
}

/** As whole steps from its upper left: a code is a fifth as long so. */
function writeLattice(content: Content, { step, x, top, bars }: Lattice): void {
  useFill(content, "black");
  content.parts.push(`q ${fine(step)} 0 0 ${fine(-step)} ${decimals(x)} ${decimals(top)} cm`, barsText(bars), "f Q");
}

/** A code stands on many labels. */
const KNOWN_BARS = new WeakMap<readonly Bar[], string>();

function barsText(bars: readonly Bar[]): string {
  const text =
    KNOWN_BARS.get(bars) ?? bars.map(({ x0, y0, x1, y1 }) => `${x0} ${y0} ${x1 - x0} ${y1 - y0} re`).join("\n");
  KNOWN_BARS.set(bars, text);
  return text;
}

function usePen(content: Content, pen: Pen): void {
  const { pen: old, parts } = content;
  if (old === pen) return;
  if (old?.width !== pen.width) parts.push(`${pen.width} w`);
  if (old?.ink !== pen.ink) parts.push(`${INKS[pen.ink]} RG`);
  if (old?.dashes !== pen.dashes) parts.push(`[${pen.dashes.join(" ")}] 0 d`);
  content.pen = pen;
}

function useFill(content: Content, ink: Ink): void {
  if (content.fill === ink) return;
  content.parts.push(`${INKS[ink]} rg`);
  content.fill = ink;
}

/** Parts that follow on one another are one line, closed where it comes back, as in the SVG. */
function writePath({ parts }: Content, path: readonly PathPart[]): void {
  let [start, at] = ["", ""];
  for (const part of path) {
    if (part.kind === "circle") {
      parts.push(circle(part.center, part.radius));
      at = "";
      continue;
    }
    const [from, to] = [xy(part.from), xy(part.to)];
    if (from !== at || at === start) {
      parts.push(`${from} m`);
      start = from;
    }
    parts.push(part.kind === "arc" && part.bulge !== 0 ? arc(part) : `${to} l`);
    if (to === start) parts.push("h");
    at = to;
  }
  parts.push("S");
}

function circle({ x, y }: PaperPoint, radius: number): string {
  const right = { x: x + radius, y };
  const sides = [0, 1, 2, 3].map((i) => curve({ x, y }, radius, (i * Math.PI) / 2, Math.PI / 2));
  return `${xy(right)} m ${sides.join(" ")} h`;
}

/** In curves of a quarter of a circle at most, which stray from it by less than 0.03 % of its radius. */
function arc({ from, to, bulge }: Extract<PathPart, { kind: "arc" }>): string {
  const { center, radius } = arcOf(from, to, bulge);
  const sweep = 4 * Math.atan(bulge);
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  const count = Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9);
  const step = sweep / count;
  return Array.from({ length: count }, (_, i) => curve(center, radius, start + i * step, step)).join(" ");
}

function curve({ x, y }: PaperPoint, radius: number, start: number, sweep: number): string {
  const pull = (4 / 3) * Math.tan(sweep / 4);
  const on = (angle: number, along: number): string => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return xy({ x: x + radius * (cos - along * sin), y: y + radius * (sin + along * cos) });
  };
  const end = start + sweep;
  return `${on(start, pull)} ${on(end, -pull)} ${on(end, 0)} c`;
}

type Text = Extract<SceneItem, { kind: "text" }>;

/** Runs of letters of the font as text, between them a box for each character that it lacks. */
function writeText(content: Content, item: Text): void {
  const words = writtenText(item.text);
  if (words.trim() === "") return;
  useFill(content, item.role === "reversed" ? "paper" : item.role === "held" ? "held" : "black");
  const face = faceName(item.bold);
  const angle = (item.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const width = setWidth(words, item.height, item.bold);
  let along = item.anchor === "start" ? 0 : item.anchor === "middle" ? -width / 2 : -width;
  const at = (u: number): string => `${decimals(item.at.x + u * cos)} ${decimals(item.at.y + u * sin)}`;
  const turn = item.turn === 0 ? "1 0 0 1" : `${fine(cos)} ${fine(sin)} ${fine(-sin)} ${fine(cos)}`;
  for (const run of runsOf(words)) {
    if (run.isInFont)
      content.parts.push(
        `BT /${face} ${decimals(fontSize(item.height))} Tf ${turn} ${at(along)} Tm ${glyphsOf(content, run.text, face)} Tj ET`,
      );
    else content.parts.push(boxes(run.text, item.height, `${turn} ${at(along)}`));
    along += setWidth(run.text, item.height, item.bold);
  }
}

function glyphsOf(content: Content, text: string, face: FaceName): string {
  let glyphs = "";
  for (const letter of text) {
    const glyph = USUAL_GLYPHS.get(letter);
    if (glyph === undefined) {
      content.isUsual = false;
      return `${OPEN}${face}${text}${CLOSE}`;
    }
    glyphs += glyph;
  }
  return `<${glyphs}>`;
}

interface Run {
  readonly text: string;
  readonly isInFont: boolean;
}

function runsOf(words: string): readonly Run[] {
  const runs: { text: string; isInFont: boolean }[] = [];
  for (const character of words) {
    const last = runs[runs.length - 1];
    const isInFont = isInSheetFont(character);
    if (last?.isInFont === isInFont) last.text += character;
    else runs.push({ text: character, isInFont });
  }
  return runs;
}

/** A crossed box as high as a capital for each character that takes room; filled lines, so that no pen is changed. */
function boxes(text: string, height: number, matrix: string): string {
  const [pen, gap] = [decimals(height * 0.08), height * 0.1];
  let left = 0;
  const drawn = [...text].flatMap((character) => {
    const width = setWidth(character, height, false);
    if (width === 0) return [];
    const [x, w, h] = [decimals(left + gap), decimals(width - 2 * gap), decimals(height)];
    left += width;
    return [
      `${x} 0 ${w} ${pen} re ${x} ${decimals(height * 0.92)} ${w} ${pen} re ${x} 0 ${pen} ${h} re`,
      `${decimals(left - gap)} 0 -${pen} ${h} re f`,
    ];
  });
  return `q ${matrix} cm ${drawn.join(" ")} Q`;
}

function xy(point: PaperPoint): string {
  return `${decimals(point.x)} ${decimals(point.y)}`;
}

/** Cosines and sines. */
function fine(value: number): string {
  const rounded = Math.round(value * 1e6) / 1e6;
  return String(rounded === 0 ? 0 : rounded);
}
