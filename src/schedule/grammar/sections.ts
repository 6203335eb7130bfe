/** Columns: their sizes, or the name of a section: `wide flange 12 x 8 x 5/8 x 3/8 along y`, `W12x65`, `HSS 8x8x1/2`, `HEB 300`. */
import { findSection } from "../../standards/index.js";
import { quote } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText, Way } from "./answers.js";
import { readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { holdUnits, takeSides } from "./lengths.js";
import { map, scalar } from "./nodes.js";
import type { Scan } from "./scan.js";
import { phrases } from "./scan.js";
import { named, withoutPlace } from "./shapes.js";

const SIZED = [
  { kind: "wide flange", words: phrases("WIDE FLANGE"), sides: ["depth", "width", "flange", "web"] },
  { kind: "tube", words: phrases("TUBE"), sides: ["x", "y"] },
  { kind: "pipe", words: phrases("PIPE"), sides: ["diameter"] },
] as const;

const OUTSIDE = phrases("O.D.", "OD", "OUTSIDE DIAMETER");
/** Nominal pipe sizes whose outside diameter is another (ASME B36.10M: from NPS 14 both are one), in 1/16 in. */
const NOMINAL = new Set([2, 4, 6, 8, 12, 16, 20, 24, 32, 40, 48, 56, 64, 80, 96, 128, 160, 192]);

/** `PIPE 6` may be the nominal size, which is 6-5/8 in outside. */
function holdOutside(scan: Scan, [diameter]: readonly Written[]): void {
  if (
    diameter === undefined ||
    scan.phrase(OUTSIDE) ||
    diameter.family !== "in" ||
    !NOMINAL.has(diameter.nm / 1_587_500)
  )
    return;
  scan.fault(
    `${quote(scan.plain)} may be the outside diameter, or the nominal size of a pipe, whose outside diameter is another; allowed is PIPE 6 STD, or pipe 6 O.D.`,
  );
}

/** `W12x65`, `6" STD PIPE`, `HE 300 B`: the whole cell but for its axis, kept as written. */
function takeName(scan: Scan): string | null {
  const first = scan.at;
  while (!scan.isDone && scan.peek()?.key !== "along") scan.at += 1;
  const name = scan.textFrom(first);
  return findSection(name).kind === "unnamed" ? null : name;
}

function takeAlong(scan: Scan): string | null {
  if (!scan.take("along")) return null;
  const axis = scan.peek()?.key;
  if (axis !== "x" && axis !== "y") return null;
  scan.at += 1;
  return axis;
}

/** The column, by its sizes or by the name of its section. */
export function readSection(whole: CellText): CellReading {
  const { cell, at } = withoutPlace(whole);
  const { key, place } = cell.context;
  const along = (scan: Scan) => scan.attempt(() => takeAlong(scan));
  const ended = (keys: Parameters<typeof map>[0], axis: string | null): Way => ({
    values: { [key]: map({ ...keys, ...(axis === null ? {} : { depthAlong: scalar(axis, place) }), ...at }, place) },
  });
  const sized = SIZED.map(({ kind, words, sides: names }) => (scan: Scan) => {
    const sides = scan.phrase(words) ? takeSides(scan, names.length) : [];
    if (sides.length !== names.length) return null;
    holdUnits(scan, sides);
    if (kind === "pipe") holdOutside(scan, sides);
    return ended({ kind: scalar(kind, place), ...named(names, sides, scan.context) }, along(scan));
  });
  const byName = (scan: Scan): Way | null => {
    const name = takeName(scan);
    if (name === null) return null;
    const axis = along(scan);
    if (Object.keys(at).length > 0) return ended({ kind: scalar("section", place), name: scalar(name, place) }, axis);
    return { values: { [key]: scalar(axis === null ? name : `${name} along ${axis}`, place) } };
  };
  const allowed =
    "wide flange 12 x 8 x 5/8 x 3/8 along y (depth, width, flange, web), tube 8 x 8, pipe 8-5/8, or a section, as W12x65, HSS8x8x1/2, PIPE 6 STD, HEB 300";
  return readWays({ ...cell, text: whole.text }, allowed, ...sized, byName);
}
