/** What a cell of any column may hold instead of a value: nothing, the cell above, another base, a note, or an open question. */
import { quote } from "../../units/index.js";
import type { CellReading, Reference } from "../model.js";
import type { CellText } from "./answers.js";
import type { Phrases } from "./scan.js";
import { phrases, Scan } from "./scan.js";
import { tokenize } from "./tokens.js";

const NONE = phrases("N/A", "NA", "N.A.", "NIL", "NONE", "NONE REQ'D", "NONE REQUIRED", "NOT REQ'D", "NOT REQUIRED");
const ABOVE = phrases(
  "DO",
  "DITTO",
  "-DO-",
  '-"-',
  '"',
  '" "',
  '" " "',
  "\u3003",
  ",,",
  "SAME",
  "SAME AS ABOVE",
  "AS ABOVE",
  "DO ABOVE",
);
const OF_BASE = phrases(
  "SAME AS",
  "SAME AS MARK",
  "SAME AS BASE",
  "SAME AS TYPE",
  "AS",
  "AS PER",
  "AS FOR",
  "SEE",
  "SEE MARK",
  "SEE BASE",
);
const SIMILAR = phrases("SIM", "SIMILAR", "SIM TO", "SIMILAR TO", "OPP", "OPPOSITE", "OPP HAND", "MIRROR", "MIRRORED");
const OF_NOTE = phrases(
  "NOTE",
  "NOTES",
  "SEE NOTE",
  "SEE NOTES",
  "PER NOTE",
  "AS PER NOTE",
  "SEE FOOTNOTE",
  "FOOTNOTE",
);
const OPEN = phrases(
  "?",
  "TBD",
  "TBA",
  "TBC",
  "TO BE DETERMINED",
  "TO BE CONFIRMED",
  "HOLD",
  "ON HOLD",
  "BY OTHERS",
  "BY MFR",
  "PER MFR",
  "PER SUPPLIER",
  "VARIES",
  "VARIABLE",
  "VAR",
  "VERIFY",
  "FIELD VERIFY",
  "V.I.F.",
  "PENDING",
  "RFI",
  "UNKNOWN",
  "LATER",
  "AS REQ'D",
  "AS REQUIRED",
  "AS SHOWN",
  "AS NOTED",
  "PER PLAN",
  "PER DETAIL",
  "PER DWG",
  "PER SPEC",
  "SEE PLAN",
  "SEE PLANS",
  "SEE DETAIL",
  "SEE DETAILS",
  "SEE DTL",
  "SEE DET",
  "SEE DWG",
  "SEE DRAWING",
  "SEE DRAWINGS",
  "SEE ARCH",
  "SEE STRUCT",
  "SEE SCHEDULE",
  "SEE SHEET",
  "SEE SHT",
  "SEE SPEC",
  "SEE SPECS",
  "SEE MFR",
  "SEE SECTION",
  "SEE ELEVATION",
  "SEE GENERAL",
  "SEE BELOW",
  "SEE REMARKS",
  "SEE MANUFACTURER",
); // prettier-ignore
const TYPICAL = ["TYP", "TYPICAL", "U.N.O.", "U.O.N.", "UNLESS NOTED OTHERWISE", "UNLESS OTHERWISE NOTED"];
const TYP = phrases(...TYPICAL);
/** As they end a cell, token by token, in brackets or without. */
const ENDINGS = [...TYPICAL.map((words) => `(${words})`), "(TYP U.N.O.)", "(TYP, U.N.O.)", ...TYPICAL].map((words) =>
  tokenize(words).map(({ key }) => key),
);
const LAST_KEYS = new Set(ENDINGS.map((keys) => keys.at(-1)));

/** True for a cell that holds nothing: empty, a dash, N/A, NIL. `NONE` is nothing too, where the column has no such word. */
export function isBlank(cell: CellText): boolean {
  if (cell.tokens.every(({ key }) => key === "-")) return true;
  return isWhole(cell, NONE);
}

/** True for ditto marks and their words. */
export function isDitto(cell: CellText): boolean {
  return isWhole(cell, ABOVE);
}

function isWhole({ tokens, plain, context }: CellText, among: Phrases): boolean {
  const scan = new Scan(tokens, plain, context);
  return scan.phrase(among) && scan.isDone;
}

/** What holds for every column; null where the cell is to be read by its form. */
export function readEverywhere(cell: CellText): CellReading | null {
  if (cell.tokens[0]?.kind === "number") return readDetail(cell);
  if (isBlank(cell)) return { kind: "blank" };
  if (isDitto(cell)) return { kind: "reference", to: { kind: "above" } };
  return readDetail(cell) ?? readNote(cell) ?? readOpen(cell) ?? readSimilar(cell) ?? readBase(cell);
}

function starts({ tokens, plain, context }: CellText, among: Phrases): Scan | null {
  const scan = new Scan(tokens, plain, context);
  return scan.phrase(among) ? scan : null;
}

/** `SEE NOTE 2`, `NOTE 2`, `NOTE #2`, `NOTE (2)`: one note. */
function readNote(cell: CellText): CellReading | null {
  const scan = starts(cell, OF_NOTE);
  if (scan === null) return null;
  const isBracketed = scan.take("(");
  scan.take("#");
  const note = scan.peek();
  const isName = note?.kind === "number" || (note?.kind === "word" && note.key.length === 1);
  scan.at += 1;
  if (isBracketed && !scan.take(")")) scan.at = 0;
  if (isName && scan.isDone)
    return reference({ kind: "note", note: cell.plain.slice(note.start, note.end).replace(/\.$/, "") });
  return fault(cell, "names no single note; allowed is one note, as SEE NOTE 2, or the value");
}

/** `2/S-501`: a detail on a sheet. */
function readDetail(cell: CellText): CellReading | null {
  const { tokens } = cell;
  const isDetail =
    tokens.length > 3 && tokens.length <= 6 && tokens[1]?.key === "/" && SHEETS.has(tokens[2]?.key ?? "");
  if (!isDetail) return null;
  const words =
    "points to a detail on another sheet: the print leaves it open here; write the value, or - where there is none";
  return fault(cell, words);
}

/** Letters of structural and architectural sheets. */
const SHEETS: ReadonlySet<string> = new Set(["s", "a"]);

function readOpen(cell: CellText): CellReading | null {
  if (isWhole(cell, TYP))
    return fault(cell, "says typical without a value: is it the value above? write DO or the value");
  if (starts(cell, OPEN) === null) return null;
  return fault(
    cell,
    "leaves it open, so that it must be asked of the engineer; write the value, or - where there is none",
  );
}

function readSimilar(cell: CellText): CellReading | null {
  if (starts(cell, SIMILAR) === null) return null;
  return fault(
    cell,
    "says similar, which is not the same; write SAME AS with the mark where nothing differs, or the values",
  );
}

/** `SAME AS B3`, `AS B3`, `SEE B3`: the rest is one mark, with a figure in it or at most two letters. */
function readBase(cell: CellText): CellReading | null {
  const scan = starts(cell, OF_BASE);
  const first = scan?.peek();
  if (scan === null || first === undefined) return null;
  const mark = cell.plain.slice(first.start);
  const isMark = !/[ ,&;()"/]/.test(mark) && (/\d/.test(mark) || mark.length <= 2);
  if (isMark) return reference({ kind: "base", mark });
  return fault(cell, "points elsewhere; allowed is a mark, as SAME AS B3, a note, as SEE NOTE 2, or the value");
}

function reference(to: Reference): CellReading {
  return { kind: "reference", to };
}

function fault({ text }: CellText, words: string): CellReading {
  return { kind: "fault", message: `${quote(text)} ${words}` };
}

/** The cell without TYP or U.N.O. behind a value: they change nothing in the cell, and are said. */
export function withoutTypical(cell: CellText): CellText {
  let tokens = cell.tokens;
  const said: string[] = [];
  while (true) {
    if (!LAST_KEYS.has(tokens.at(-1)?.key)) break;
    const kept = ENDINGS.find((keys) => tokens.length > keys.length && endsWith(tokens, keys));
    if (kept === undefined) break;
    said.unshift(
      kept
        .filter((key) => /^\p{L}/u.test(key))
        .join(" ")
        .toUpperCase(),
    );
    tokens = tokens.slice(0, tokens.length - kept.length);
    if (tokens.at(-1)?.key === ",") tokens = tokens.slice(0, -1);
  }
  if (said.length === 0) return cell;
  const plain = cell.plain.slice(0, tokens.at(-1)?.end ?? 0);
  return { ...cell, tokens, plain, said: `${said.join(" ")} read over` };
}

function endsWith(tokens: CellText["tokens"], keys: readonly string[]): boolean {
  const from = tokens.length - keys.length;
  return keys.every((key, index) => tokens[from + index]?.key === key);
}
