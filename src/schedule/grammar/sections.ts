/** Columns: their sizes, or the name of a section: `wide flange 12 x 8 x 5/8 x 3/8 along y`, `W12x65`, `HSS 8x8x1/2`, `HEB 300`. */
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

/** How a name goes on behind its letters: numbers joined by x, or one number with a letter or without. */
interface SectionName {
  readonly letters: ReturnType<typeof phrases>;
  /** How many numbers, joined by x. */
  readonly numbers: readonly [least: number, most: number];
  /** What may stand behind: the series of an H section, the weight of a pipe. */
  readonly behind: ReturnType<typeof phrases>;
  readonly isBehindNeeded: boolean;
}

const section = (
  letters: readonly string[],
  least: number,
  most: number,
  behind: readonly string[] = [],
  isBehindNeeded = false,
): SectionName => ({
  letters: phrases(...letters),
  numbers: [least, most],
  behind: phrases(...behind),
  isBehindNeeded,
});

const WEIGHTS = [
  "STD",
  "XS",
  "XXS",
  "X-STRONG",
  "XX-STRONG",
  "STANDARD",
  "SCH 40",
  "SCH 80",
  "SCH 120",
  "SCH 160",
  "SCH40",
  "SCH80",
  "SCH 40S",
  "DBL XS",
];
const PIPE_WEIGHTS = phrases(...WEIGHTS);
/** Names of American, European and British sections. */
const SECTIONS: readonly SectionName[] = [
  section(["W", "M", "S", "HP", "C", "MC", "WT"], 2, 2),
  section(["L", "HSS", "TS", "SHS", "RHS", "CHS"], 2, 3),
  section(["UC", "UB", "UBP", "PFC", "UKC", "UKB"], 3, 3),
  section(["PIPE"], 1, 1, WEIGHTS, true),
  section(["HE"], 1, 1, ["A", "B", "M", "AA"], true),
  section(["HEA", "HEB", "HEM", "HEAA", "IPE", "IPN", "INP", "UPN", "UPE", "HD"], 1, 2),
];

/** `W12x65`, `PIPE 6 STD`, `HE 300 B`: kept as written. */
function takeName(scan: Scan): string | null {
  for (const name of SECTIONS) {
    const taken = scan.attempt(() => takeNamed(scan, name));
    if (taken !== null) return taken;
  }
  return scan.either(
    () => takePipeLast(scan),
    () => takeLettersBetween(scan),
    () => takeLettersLast(scan),
  );
}

function takeNamed(
  scan: Scan,
  { letters, numbers: [least, most], behind, isBehindNeeded }: SectionName,
): string | null {
  const first = scan.at;
  if (!scan.phrase(letters)) return null;
  const sides = takeSides(scan, most);
  const isBehind = scan.phrase(behind);
  if (sides.length < least || scan.peek()?.key === "x") return null;
  return isBehindNeeded && !isBehind ? null : scan.textFrom(first);
}

/** `6 STD PIPE`, `6" XS PIPE` */
function takePipeLast(scan: Scan): string | null {
  const first = scan.at;
  if (takeSides(scan, 1).length === 0 || !scan.phrase(PIPE_WEIGHTS) || !scan.take("pipe")) return null;
  return scan.textFrom(first);
}

const LETTERS_LAST = phrases("UC", "UB", "UBP", "PFC", "UKC", "UKB", "SHS", "RHS", "CHS");
const WITH_MASS = phrases("UC", "UB", "UBP", "PFC", "UKC", "UKB");

/** `254x254x73 UC` */
function takeLettersLast(scan: Scan): string | null {
  const first = scan.at;
  return takeSides(scan, 3).length > 1 && scan.phrase(LETTERS_LAST) ? scan.textFrom(first) : null;
}

/** `254 x 254 UC 89`: the mass to a metre stands behind the letters. */
function takeLettersBetween(scan: Scan): string | null {
  const first = scan.at;
  if (takeSides(scan, 2).length !== 2 || !scan.phrase(WITH_MASS)) return null;
  return takeSides(scan, 1).length === 1 ? scan.textFrom(first) : null;
}

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
  const ended = (scan: Scan, keys: Parameters<typeof map>[0]): Way => {
    const along = scan.attempt(() => takeAlong(scan));
    return {
      values: {
        [key]: map({ ...keys, ...(along === null ? {} : { depthAlong: scalar(along, place) }), ...at }, place),
      },
    };
  };
  const sized = SIZED.map(({ kind, words, sides: names }) => (scan: Scan) => {
    const sides = scan.phrase(words) ? takeSides(scan, names.length) : [];
    if (sides.length !== names.length) return null;
    holdUnits(scan, sides);
    if (kind === "pipe") holdOutside(scan, sides);
    return ended(scan, { kind: scalar(kind, place), ...named(names, sides, scan.context) });
  });
  const byName = (scan: Scan): Way | null => {
    const name = takeName(scan);
    if (name === null) return null;
    scan.faults = [];
    return ended(scan, { section: scalar(name, place) });
  };
  const allowed =
    "wide flange 12 x 8 x 5/8 x 3/8 along y (depth, width, flange, web), tube 8 x 8, pipe 8-5/8, or a section, as W12x65, HSS8x8x1/2, PIPE 6 STD, HEB 300";
  return readWays({ ...cell, text: whole.text }, allowed, ...sized, byName);
}
