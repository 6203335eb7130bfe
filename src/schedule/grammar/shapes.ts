/** Outlines, corners and openings: `20 x 18`, `dia 30`, `ring 30 / 20`, `chamfer 1 x 2`, `8 x 6 r 1`. */
import type { SourceNode } from "../../readers/source.js";
import type { CellReading } from "../model.js";
import type { CellText, WayParser } from "./answers.js";
import { one, readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { holdUnits, takeLength, takeSides } from "./lengths.js";
import type { Keys } from "./nodes.js";
import { map, scalar } from "./nodes.js";
import { pointIn, pointsIn } from "./points.js";
import { DIAMETER } from "./rods.js";
import type { CellContext } from "./scan.js";
import { phrases, type Scan } from "./scan.js";
import { SQUARE } from "./spacing.js";
import { tokenize } from "./tokens.js";

/** A cell without its ` at 1, 2`, and that place. */
export function withoutPlace(cell: CellText): { readonly cell: CellText; readonly at: Keys } {
  const from = cell.plain.toLowerCase().indexOf(" at ");
  if (from < 0) return { cell, at: {} };
  const plain = cell.plain.slice(0, from).trim();
  const tokens = cell.tokens.filter(({ end }) => end <= from);
  return { cell: { ...cell, plain, tokens }, at: { at: pointIn(cell.plain.slice(from + 4), cell.context) } };
}

/** Lengths by their names, as nodes. */
export function named(names: readonly string[], sides: readonly Written[], { place }: CellContext): Keys {
  return Object.fromEntries(sides.map(({ text }, index) => [names[index] ?? "", scalar(text, place)]));
}

/** Takes `dia 30`, `30 dia`, `Ø30`. */
function takeDiameter(scan: Scan): Written | null {
  const isBefore = scan.phrase(DIAMETER);
  const diameter = takeLength(scan);
  return diameter !== null && (isBefore || scan.phrase(DIAMETER)) ? diameter : null;
}

/** Takes `20 x 18`, `20 SQ`. */
function takeRectangle(scan: Scan): readonly Written[] | null {
  const sides = takeSides(scan, 2);
  const [only, other] = sides;
  holdUnits(scan, sides);
  if (only === undefined) return null;
  if (other !== undefined) return sides;
  return scan.phrase(SQUARE) ? [only, only] : null;
}

function shape(key: string, keys: (scan: Scan) => Keys | null): WayParser {
  return (scan) => {
    const taken = keys(scan);
    return taken === null ? null : { values: { [key]: map(taken, scan.context.place) } };
  };
}

const ALLOWED_OUTLINE = "20 x 18, dia 30, ring 30 / 20, polygon 0,0; 9,0; 9,9, or auto; with at 1, 2";

/** An outline of a template. */
export function readOutline(whole: CellText): CellReading {
  const { place, key } = whole.context;
  const kind = (word: string): { readonly kind: SourceNode } => ({ kind: scalar(word, place) });
  if (whole.tokens[0]?.key === "polygon") {
    const rest = whole.text.trim().slice("polygon".length).trim();
    const points = rest.startsWith(":") ? rest.slice(1) : rest;
    return one(whole, map({ ...kind("polygon"), at: pointsIn(points, whole.context) }, place));
  }
  const { cell, at } = withoutPlace(whole);
  const auto = shape(key, (scan) => (scan.take("auto") ? kind("auto") : null));
  const circle = shape(key, (scan) => {
    const diameter = takeDiameter(scan);
    return diameter === null ? null : { ...kind("circle"), ...named(["diameter"], [diameter], scan.context), ...at };
  });
  const rectangle = shape(key, (scan) => {
    const sides = takeRectangle(scan);
    return sides === null ? null : { ...kind("rectangle"), ...named(["x", "y"], sides, scan.context), ...at };
  });
  if (cell.tokens.some(({ key: word }) => word === "ring")) return readRing(cell, { ...kind("ring") }, at);
  return readWays({ ...cell, text: whole.text }, ALLOWED_OUTLINE, auto, circle, rectangle);
}

/** `ring 30 / 20`, `30 x 20 ring`: a bar with spaces about it parts the diameters, others are those of fractions. */
function readRing(cell: CellText, kind: Keys, at: Keys): CellReading {
  const { key } = cell.context;
  const plain = cell.plain.replace(" / ", " x ");
  const joined = { ...cell, plain, tokens: tokenize(plain) };
  const ring = shape(key, (scan) => {
    const isBefore = scan.take("ring");
    if (isBefore) scan.take(":");
    const sides = takeSides(scan, 2);
    holdUnits(scan, sides);
    if (sides.length !== 2 || (!isBefore && !scan.take("ring"))) return null;
    return { ...kind, ...named(["outer", "inner"], sides, scan.context), ...at };
  });
  return readWays(joined, "ring OUTER / INNER, as ring 30 / 20", ring);
}

const CORNERS: Readonly<Record<string, number>> = { square: 0, chamfer: 2, round: 1, notch: 2 };

/** `chamfer 1`, `chamfer 1 x 2`, `notch 1 x 2`, `round 1`, `square`. */
export function readCorner(cell: CellText): CellReading {
  const corner = shape(cell.context.key, (scan) => {
    const kind = scan.peek()?.key ?? "";
    const most = Object.hasOwn(CORNERS, kind) ? CORNERS[kind] : undefined;
    if (most === undefined) return null;
    scan.at += 1;
    const sizes = takeSides(scan, most);
    holdUnits(scan, sizes);
    if (sizes.length === 0 && most > 0) return null;
    const names = sizes.length === 2 ? ["x", "y"] : ["size"];
    return { kind: scalar(kind, scan.context.place), ...named(names, sizes, scan.context) };
  });
  return readWays(cell, "square, chamfer 1, chamfer 1 x 2, round 1, notch 1, notch 1 x 2", corner);
}

const RADIUS = phrases("R", "RADIUS", "RAD");

/** `dia 6`, `8 x 6`, `8 x 6 r 1`, `auto`, `none`; with `at 1, 2`. */
export function readOpening(whole: CellText): CellReading {
  const { cell, at } = withoutPlace(whole);
  const word = cell.plain.toLowerCase();
  if (word === "auto" || word === "none") return one(whole, word);
  const circle = shape(cell.context.key, (scan) => {
    const diameter = takeDiameter(scan);
    return diameter === null ? null : { ...named(["diameter"], [diameter], scan.context), ...at };
  });
  const rectangle = shape(cell.context.key, (scan) => {
    const sides = takeRectangle(scan);
    if (sides === null) return null;
    const radius = scan.phrase(RADIUS) ? takeLength(scan) : null;
    return {
      ...named(["x", "y"], sides, scan.context),
      ...named(["radius"], radius === null ? [] : [radius], scan.context),
      ...at,
    };
  });
  return readWays(
    { ...cell, text: whole.text },
    "dia 6, 8 x 6, 8 x 6 r 1, auto, or none; with at 1, 2",
    circle,
    rectangle,
  );
}
