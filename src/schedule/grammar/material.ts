/** Grade and finish of rods: `F1554 GR 55 HDG`, `ASTM F1554, GRADE 105, GALV.`, `8.8`, `A449 PLAIN`. */
import { ownValue } from "../../diagnostics/own-value.js";
import type { CellReading } from "../model.js";
import type { CellText, Way } from "./answers.js";
import { one, readWays } from "./answers.js";
import type { Phrases, Scan } from "./scan.js";
import { phrases } from "./scan.js";

const GRADE = phrases("GR", "GRADE", "GRD", "CL", "CLASS", "PROPERTY CLASS");
const ISO = phrases("ISO 898-1", "ISO 898");
const GALVANIZED = phrases(
  "HDG",
  "H.D.G.",
  "GALV",
  "GALVANIZED",
  "GALVANISED",
  "HOT DIP GALV",
  "HOT DIP GALVANIZED",
  "HOT DIP GALVANISED",
  "HOT DIPPED GALV",
  "HOT DIPPED GALVANIZED",
  "HOT DIPPED GALVANISED",
  "HOT-DIP GALV",
  "HOT-DIP GALVANIZED",
  "HOT-DIP GALVANISED",
  "HOT-DIPPED GALV",
  "HOT-DIPPED GALVANIZED",
  "HOT-DIPPED GALVANISED",
); // prettier-ignore
const PLAIN = phrases("PLAIN", "BLACK", "BLK", "UNCOATED", "SELF COLOUR", "SELF COLOR");
/** What follows a designation as a part of its name, as A193 B7, A354 BD. */
const SUFFIXES = new Set(["b7", "bd", "bc", "b7m", "b8", "b8m", "b16", "jr", "j0", "j2", "k2"]);

/** What a text says of material. */
export interface Material {
  readonly grade: string | null;
  readonly finish: string | null;
  readonly isWeldable: boolean;
}

/** Takes a grade, a finish, S1, in any order, each once; null where none stands here. */
export function takeMaterial(scan: Scan, barely: boolean): Material | null {
  let found: Material = { grade: null, finish: null, isWeldable: false };
  const first = scan.at;
  while (!scan.isDone) {
    const before = scan.at;
    const next = scan.attempt(() => {
      if (scan.at > first) scan.take(",") || scan.take("-") || scan.take("/");
      return takeNext(scan, found, barely);
    });
    if (next === null || scan.at === before) break;
    found = next;
  }
  return scan.at === first ? null : found;
}

function takeNext(scan: Scan, found: Material, barely: boolean): Material | null {
  if (found.finish === null) {
    if (takeInBrackets(scan, GALVANIZED)) return { ...found, finish: "galvanized" };
    if (takeInBrackets(scan, PLAIN)) return { ...found, finish: "plain" };
  }
  if (!found.isWeldable && scan.phrase(WELDABLE)) return { ...found, isWeldable: true };
  const grade = found.grade === null ? takeGrade(scan, barely) : null;
  return grade === null ? null : { ...found, grade };
}

const WELDABLE = phrases("S1", "W/ S1", "WITH S1", "SUPPL S1", "SUPPLEMENT S1", "(S1)", "WELDABLE");

function takeInBrackets(scan: Scan, among: Phrases): boolean {
  const taken = scan.attempt(() => {
    const isOpen = scan.take("(");
    return scan.phrase(among) && (!isOpen || scan.take(")")) ? true : null;
  });
  return taken === true;
}

/** Takes a grade; a bare number only where `barely`. */
export function takeGrade(scan: Scan, barely: boolean): string | null {
  return scan.either(
    () => takeF1554(scan),
    () => takeNumbered(scan, barely),
    () => takeDesignation(scan),
  );
}

function takeF1554(scan: Scan): string | null {
  scan.take("astm");
  if (!scan.take("f")) return null;
  scan.take("-");
  if (!scan.take("1554")) return null;
  scan.take(",") || scan.take("-");
  scan.phrase(GRADE);
  scan.take("-");
  const number = takeKind(scan, "number");
  return number === null ? null : `F1554 ${number}`;
}

/** `GR 55`, `GRADE 8.8`, `CL 8.8`; `55` and `8.8` alone. `8.8/S` is 8.8, tightened by hand (AS 4100, from memory). */
function takeNumbered(scan: Scan, barely: boolean): string | null {
  scan.phrase(ISO);
  if (!scan.phrase(GRADE) && !barely) return null;
  scan.take("-");
  const number = takeKind(scan, "number");
  if (number === "4.6" || number === "8.8") scan.attempt(() => (scan.take("/") && scan.take("s") ? true : null));
  return number;
}

/** `A36`, `ASTM A449`, `A193 B7`, `A354 GR BD`, `S355`: kept as written; what the grade is, the job decides. */
function takeDesignation(scan: Scan): string | null {
  const first = scan.at;
  scan.take("astm");
  const letter = takeKind(scan, "word");
  if (letter === null || !["a", "s", "f"].includes(letter) || scan.peek()?.gap === true) return null;
  if (takeKind(scan, "number") === null) return null;
  scan.attempt(() => takeSuffix(scan));
  return scan.textFrom(first).replace(/^astm /i, "");
}

function takeSuffix(scan: Scan): true | null {
  const isNamed = scan.phrase(GRADE);
  const word = takeKind(scan, "word");
  const number = scan.peek()?.gap === false ? takeKind(scan, "number") : null;
  if (word === null) return isNamed && takeKind(scan, "number") !== null ? true : null;
  return isNamed || SUFFIXES.has(`${word}${number ?? ""}`) ? true : null;
}

function takeKind(scan: Scan, kind: "word" | "number"): string | null {
  const token = scan.peek();
  if (token?.kind !== kind) return null;
  scan.at += 1;
  return token.key;
}

/** The keys that a material gives. */
export function materialValues({ grade, finish, isWeldable }: Material): Way["values"] {
  return { "rods.grade": grade, "rods.finish": finish, "rods.weldable": isWeldable ? "yes" : null };
}

/** Grade and finish in one cell. */
export function readMaterial(cell: CellText): CellReading {
  return readWays(cell, "a grade and a finish, as F1554 GR 55 HDG, 8.8 GALV, A449 PLAIN, or one of them", (scan) => {
    const material = takeMaterial(scan, true);
    return material === null ? null : { values: materialValues(material), how: materialWords(material) };
  });
}

function materialWords({ grade, finish, isWeldable }: Material): string {
  return [grade === null ? "" : `grade ${grade}`, finish ?? "", isWeldable ? "weldable (S1)" : ""]
    .filter((words) => words !== "")
    .join(", ");
}

/** A grade; with a finish or S1 beside it that too. A text that is no grade is kept as written: the shop may have one of that name. */
export function readGrade(cell: CellText): CellReading {
  const reading = readMaterial(cell);
  if (reading.kind !== "value") return one(cell, cell.text);
  const isGradeAlone = reading.parts.every(({ key }) => key === "rods.grade");
  return isGradeAlone && !/[,.]\s|[,-]/.test(cell.plain) && !isClass(cell) ? one(cell, cell.plain) : reading;
}

const isClass = ({ tokens }: CellText): boolean => tokens.some(({ key }) => key === "cl" || key.includes("."));

/** A finish: a word, or what prints write for it. */
export function readFinish(cell: CellText): CellReading {
  const word = cell.text.toLowerCase().replace(/\s+/g, " ").trim().replace(/\.$/, "");
  const written = ownValue(cell.context.synonyms ?? {}, word);
  if (written !== undefined) return one(cell, written);
  const reading = readWays(cell, "plain or galvanized", (scan) => {
    const finish = scan.phrase(GALVANIZED) ? "galvanized" : scan.phrase(PLAIN) ? "plain" : null;
    return finish === null ? null : { values: { [cell.context.key]: finish } };
  });
  return reading.kind === "value" ? reading : one(cell, word);
}
