/** Cells of one value: a length, an elevation, a count, a word. */
import { ownValue } from "../../diagnostics/own-value.js";
import { parseCount } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText } from "./answers.js";
import { one, readWays, refuse } from "./answers.js";
import { takeLength } from "./lengths.js";
import type { Phrases } from "./scan.js";
import { phrases } from "./scan.js";

/** Words that say again what the column is, by the end of its key: they add nothing to the number. */
const SAID_AGAIN: Readonly<Record<string, Phrases>> = {
  embedment: phrases("EMBED", "EMBEDMENT", "EMB"),
  projection: phrases("PROJ", "PROJECTION"),
  length: phrases("LG", "LONG"),
  threads: phrases("THD", "THREAD", "THREADS"),
  grout: phrases("GROUT"),
  thickness: phrases("THK", "THICK"),
  depth: phrases("DEEP"),
  diameter: phrases("\u00F8", "DIA", "DIAM", "DIAMETER"),
};

/** What stands behind the diameter of a bolt circle. */
export const CIRCLE = phrases(
  "B.C.",
  "BC",
  "B.C.D.",
  "BCD",
  "BOLT CIRCLE",
  "BOLT CIRCLE DIA",
  "B. CIRCLE",
  "CIRCLE",
  "P.C.D.",
  "PCD",
  "DIA B.C.",
  "DIA BOLT CIRCLE",
);

const ALLOWED_LENGTH = "one length, as 18, 5/8, 1-1/4, 1'-6 1/2\", 32 mm or 1.5 m";

/** A length, with its sign. */
export function readLength(cell: CellText): CellReading {
  const { key } = cell.context;
  const again = ownValue(SAID_AGAIN, key.slice(key.lastIndexOf(".") + 1));
  return readWays(cell, ALLOWED_LENGTH, (scan) => {
    if (key === "rods.threads" && scan.phrase(FULL_THREAD)) return { values: { [key]: "full" } };
    const length = takeLength(scan, true);
    if (length === null) return null;
    if (again !== undefined) scan.phrase(again);
    if (key === "pattern.diameter") scan.phrase(CIRCLE);
    return { values: { [key]: length.text } };
  });
}

/** A rod that is threaded over its whole length. */
const FULL_THREAD = phrases(
  "FULL",
  "FULL LENGTH",
  "FULL THREAD",
  "FULLY THREADED",
  "ALL THREAD",
  "THREADED FULL LENGTH",
);

const LEVEL = phrases(
  "EL",
  "ELEV",
  "ELEVATION",
  "T.O.C.",
  "T/C",
  "T.O. CONC",
  "T.O.C. EL",
  "T/C EL",
  "B.O.P.",
  "B.O.P. EL",
  "TOP OF CONC EL",
);

const NOUGHT_SIGN = phrases("\u00B1", "+/-");

/** An elevation, as written: `99'-6"`, `EL. +99.50 ft`, `+/-0.00 m`. */
export function readElevation(cell: CellText): CellReading {
  const allowed = `an elevation with its unit, as 99'-6", 99.5 ft, 12350 mm or 12.35 m`;
  return readWays(cell, allowed, (scan) => {
    scan.phrase(LEVEL);
    scan.take("=");
    const first = scan.at;
    const isNoughtSign = scan.phrase(NOUGHT_SIGN);
    const length = takeLength(scan, true);
    if (length === null || (isNoughtSign && length.nm !== 0)) return null;
    return { values: { [cell.context.key]: isNoughtSign ? scan.textFrom(first) : length.text } };
  });
}

const COUNTED = phrases(
  "NO",
  "NOS",
  "NR",
  "EA",
  "EACH",
  "PCS",
  "PC",
  "PIECES",
  "OFF",
  "REQ'D",
  "REQD",
  "REQUIRED",
  "THUS",
  "RODS",
  "BOLTS",
  "COLS",
  "COLUMNS",
  "BASES",
);

/** A whole number: `4`, `(4)`, `4 REQ'D`, `4 EA`. */
export function readCount(cell: CellText): CellReading {
  return readWays(cell, "a whole number, as 4, (4) or 4 REQ'D", (scan) => {
    const isOpen = scan.take("(");
    const first = scan.at;
    if (scan.peek()?.kind !== "number") return null;
    scan.at += 1;
    const text = scan.textFrom(first);
    const count = parseCount(text, 0);
    if (!count.ok) scan.fault(count.message);
    if (isOpen) scan.phrasesAny(COUNTED);
    const isShut = scan.take(")");
    scan.phrasesAny(COUNTED);
    return isOpen === isShut ? { values: { [cell.context.key]: text } } : null;
  });
}

/** One of a few words, in any case; `synonyms` are what prints write for them. Whether it is one, the job decides. */
export function readWord(cell: CellText): CellReading {
  return one(cell, synonymOf(cell) ?? wordOf(cell));
}

/** What the column's synonyms give for the cell. */
export function synonymOf(cell: CellText): string | undefined {
  return ownValue(cell.context.synonyms ?? {}, wordOf(cell).replace(/\.$/, ""));
}

function wordOf({ text }: CellText): string {
  return text.toLowerCase().replace(/\s+/g, " ").trim();
}

const YES_NO: Readonly<Record<string, string>> = {
  y: "yes",
  n: "no",
  yes: "yes",
  no: "no",
  true: "true",
  false: "false",
};

/** Yes or no. */
export function readYesNo(cell: CellText): CellReading {
  const written = synonymOf(cell) ?? ownValue(YES_NO, wordOf(cell).replace(/\.$/, ""));
  return written === undefined ? refuse(cell, "yes or no") : one(cell, written);
}
