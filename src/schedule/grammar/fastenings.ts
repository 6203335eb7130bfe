/** Washers, nuts and lower ends of rods: `square 3 x 1/2`, `PL WASHER 3x3x1/2`, `HVY HEX`, `plate 3 x 1/2`, `hook 4`. */
import { ownValue } from "../../diagnostics/own-value.js";
import { quote } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText, WayParser } from "./answers.js";
import { one, readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { holdUnits, takeLength, takeSides } from "./lengths.js";
import { map, scalar } from "./nodes.js";
import type { Phrases, Scan } from "./scan.js";
import { phrases } from "./scan.js";
import { SQUARE } from "./spacing.js";

const ROUND = phrases("ROUND", "RD", "RND", "\u00F8", "DIA", "DIAM", "DIAMETER");
const PLATE_WASHER = phrases(
  "PL WASHER",
  "PL WASHERS",
  "PLATE WASHER",
  "PLATE WASHERS",
  "PL WSHR",
  "PL. WASHER",
  "WASHER PL",
  "WASHER",
  "WASHERS",
  "PL",
  "PLATE",
);
const PLATE = phrases("PL", "PLATE", "PLT", "PLATE WASHER", "PL WASHER");

/** A square or round plate with its thickness. */
interface Piece {
  readonly shape: "square" | "round";
  readonly size: Written;
  readonly thickness: Written | null;
}

/** `square 3 x 1/2`, `3" SQ x 1/2`, `3x3x1/2`, `1/2 x 3 x 3`, `3"Ø x 3/8`; `bare` is the shape of `3 x 1/2` without a word. */
function takePiece(scan: Scan, bare: Piece["shape"] | null): Piece | null {
  return scan.either(
    () => takeShaped(scan),
    () => takeSquare(scan),
    () => takeBare(scan, bare),
  );
}

function takeShape(scan: Scan): Piece["shape"] | null {
  if (scan.phrase(SQUARE)) return "square";
  return scan.phrase(ROUND) ? "round" : null;
}

/** A word that says the shape, before the size or after it; a thickness before a size, as `1/2 x 3 SQ`. */
function takeShaped(scan: Scan): Piece | null {
  const before = takeShape(scan);
  const size = takeLength(scan);
  if (size === null) return null;
  const after = before ?? takeShape(scan);
  const second = scan.take("x") ? takeLength(scan) : null;
  if (after !== null)
    return second === null && scan.tokens[scan.at - 1]?.key === "x" ? null : { shape: after, size, thickness: second };
  const shape = second === null ? null : takeShape(scan);
  return shape === null || second === null ? null : { shape, size: second, thickness: size };
}

/** Three lengths of which two are the sides of a square and the other is by far smaller. */
function takeSquare(scan: Scan): Piece | null {
  const sides = takeSides(scan, 3);
  const [first, second, third] = sides;
  if (first === undefined || second === undefined || third === undefined) return null;
  const isLast = third.nm < first.nm;
  const [size, other, thickness] = isLast ? [first, second, third] : [second, third, first];
  if (size.nm !== other.nm || thickness.nm * 2 > size.nm) {
    scan.fault(
      `${quote(scan.plain)} is no square with a thickness; allowed is a square or round one, as 3 x 3 x 1/2 or round 3 x 1/2`,
    );
  }
  return { shape: "square", size, thickness };
}

function takeBare(scan: Scan, shape: Piece["shape"] | null): Piece | null {
  if (shape === null) return null;
  const [size, thickness, third] = takeSides(scan, 3);
  return size === undefined || thickness === undefined || third !== undefined ? null : { shape, size, thickness };
}

function pieceKeys(scan: Scan, { shape, size, thickness }: Piece) {
  const { place } = scan.context;
  holdUnits(scan, thickness === null ? [size] : [size, thickness]);
  if (thickness !== null && thickness.nm > size.nm) {
    scan.fault(`${quote(scan.plain)} is thicker than wide; allowed is the size, then the thickness, as 3 x 1/2`);
  }
  return {
    shape: scalar(shape, place),
    size: scalar(size.text, place),
    ...(thickness === null ? {} : { thickness: scalar(thickness.text, place) }),
  };
}

/** A piece with its name before it, behind it, or without. */
function pieceWay(
  key: string,
  names: Phrases,
  isNameNeeded: boolean,
  kind: string | null,
  bare: Piece["shape"] | null,
): WayParser {
  return (scan) => {
    const isBefore = scan.phrase(names);
    const piece = takePiece(scan, isBefore ? bare : null);
    if (piece === null) return null;
    const isAfter = !isBefore && scan.phrase(names);
    if (isNameNeeded && !isBefore && !isAfter) return null;
    if (kind !== null && piece.thickness === null) return null;
    const keys = pieceKeys(scan, piece);
    return {
      values: {
        [key]: map(kind === null ? keys : { kind: scalar(kind, scan.context.place), ...keys }, scan.context.place),
      },
    };
  };
}

/** A washer by its size, or the name of a standard, as written: whether it is one, the job decides. */
export function readWasher(cell: CellText): CellReading {
  const allowed = "square 3 x 1/2, round 3 x 3/8, PL WASHER 3 x 3 x 1/2, or a standard, as F844 wide";
  const isSized = cell.tokens.some(({ kind, key }, index) => kind === "number" && isSizeAt(cell, index, key));
  return isSized
    ? readWays(cell, allowed, pieceWay(cell.context.key, PLATE_WASHER, false, null, null))
    : one(cell, cell.text);
}

/** A number that is no part of a designation, as F844, ISO 7089 and DIN 125-1 are. */
function isSizeAt({ tokens }: CellText, index: number, key: string): boolean {
  const before = tokens[index - 1];
  if (before === undefined || before.kind === "sign")
    return tokens[index + 1]?.key !== ")" && !isDesignation(tokens[0]?.key);
  return before.kind === "word" && !isDesignation(before.key) && (key.length < 3 || key.includes("."));
}

const DESIGNATIONS = new Set(["f", "iso", "din", "en", "asme", "astm", "b", "usm", "a"]);
const isDesignation = (key: string | undefined): boolean => DESIGNATIONS.has(key ?? "");

const HEAVY = phrases("HEAVY", "HEAVY HEX", "HVY HEX", "HVY. HEX", "HVY", "HH", "HEAVY HEXAGON", "H.H.");
const HEX = phrases("HEX", "HEXAGON", "STD HEX", "REG HEX", "REGULAR HEX");
const NUT = phrases("NUT", "NUTS");
const GRADES = phrases(
  "A563 DH",
  "A563 GR DH",
  "A563 A",
  "A563 GR A",
  "A563 C",
  "A563",
  "A194 2H",
  "A194 GR 2H",
  "ASTM A563",
  "ASTM A563 DH",
  "ASTM A563 GR DH",
  "ASTM A563 GR A",
  "ASTM A194 2H",
  "DH",
  "GR DH",
);

/** The kind of nut; a grade beside it is said, since the job keeps none. */
export function readNut(cell: CellText): CellReading {
  const word = cell.text.toLowerCase().replace(/\s+/g, " ").trim().replace(/\.$/, "");
  const written = ownValue(cell.context.synonyms ?? {}, word);
  if (written !== undefined || word === "hex" || word === "heavy hex") return one(cell, written ?? word);
  const allowed = "hex or heavy hex, as HVY HEX, HEX NUT or A563 DH HVY HEX; a grade alone does not say which";
  return readWays(cell, allowed, (scan) => {
    const first = scan.phrase(GRADES);
    scan.take(",");
    const kind = scan.phrase(HEAVY) ? "heavy hex" : scan.phrase(HEX) ? "hex" : null;
    if (kind === null) return null;
    scan.phrase(NUT);
    scan.take(",");
    const isGraded = first || scan.phrase(GRADES);
    return {
      values: { [cell.context.key]: kind },
      how: isGraded ? `${kind}; the grade of the nut is kept in no key` : "",
    };
  });
}

const HOOK = phrases("HOOK", "HOOKED", "BENT", "L HOOK", "J HOOK");

const STRAIGHT = phrases("STRAIGHT", "STRAIGHT ROD", "STRAIGHT END", "PLAIN END", "NO NUT");
const SWEDGED = phrases("SWEDGED", "SWEDGE", "SWEDGED END");

/** `nut`, `straight`, `swedged 6`, `plate 3 x 1/2` (a square), `plate dia 3 x 1/2`, `PL 3x3x1/2`, `hook 4`, `4" HOOK`. */
export function readBottom(cell: CellText): CellReading {
  const { key, place } = cell.context;
  const nut: WayParser = (scan) => {
    const isHex = scan.phrase(HEAVY) || scan.phrase(HEX);
    if (!scan.phrase(NUT)) return null;
    return {
      values: { [key]: scalar("nut", place) },
      how: isHex ? "a nut; its kind is kept in no key of the lower end" : "",
    };
  };
  const hook: WayParser = (scan) => {
    const isBefore = scan.phrase(HOOK);
    const reach = takeLength(scan);
    if (reach === null || (!isBefore && !scan.phrase(HOOK))) return null;
    return { values: { [key]: map({ kind: scalar("hook", place), reach: scalar(reach.text, place) }, place) } };
  };
  const straight: WayParser = (scan) =>
    scan.phrase(STRAIGHT) ? { values: { [key]: scalar("straight", place) } } : null;
  const swedged: WayParser = (scan) => {
    const isBefore = scan.phrase(SWEDGED);
    const length = takeLength(scan);
    if (length === null || (!isBefore && !scan.phrase(SWEDGED))) return null;
    return { values: { [key]: map({ kind: scalar("swedged", place), length: scalar(length.text, place) }, place) } };
  };
  return readWays(
    cell,
    "nut, straight, plate 3 x 1/2, plate dia 3 x 1/2, hook 4, or swedged 6",
    nut,
    straight,
    hook,
    swedged,
    pieceWay(key, PLATE, true, "plate", "square"),
  );
}
