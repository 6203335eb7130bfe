/** Ways to understand a cell -> what it gives: one way is a value, several are a choice, none is a fault. */
import type { SourceNode } from "../../readers/source.js";
import { quote } from "../../units/index.js";
import type { CellReading, PossibleReading } from "../model.js";
import { scalar } from "./nodes.js";
import type { CellContext } from "./scan.js";
import { Scan } from "./scan.js";
import type { Token } from "./tokens.js";

/** A cell on its way through the grammar. */
export interface CellText {
  /** As the sheet has it. */
  readonly text: string;
  /** With plain signs. */
  readonly plain: string;
  readonly tokens: readonly Token[];
  readonly context: CellContext;
  /** What was read over and is said, as TYP. */
  readonly said: string;
}

/** Keys and what they are given. */
export interface Way {
  readonly values: Readonly<Record<string, string | SourceNode | null>>;
  readonly how?: string;
}

/** Takes tokens and says what they give; null where they are no such thing. */
export type WayParser = (scan: Scan) => Way | null;

/** Every way that takes all of the cell; equal ones are one. `allowed` is told where there is none. */
export function readWays(cell: CellText, allowed: string, ...parsers: readonly WayParser[]): CellReading {
  const found: PossibleReading[] = [];
  let fault: string | undefined;
  for (const parser of parsers) {
    const scan = new Scan(cell.tokens, cell.plain, cell.context);
    const way = parser(scan);
    if (way === null || !scan.isDone) continue;
    if (scan.faults.length > 0) fault ??= scan.faults[0];
    else found.push(toReading(way, cell));
  }
  const different = found.filter((one, index) => found.findIndex((other) => isSame(one, other)) === index);
  const [first, ...others] = different;
  if (first === undefined) return fault === undefined ? refuse(cell, allowed) : { kind: "fault", message: fault };
  if (others.length === 0) return { kind: "value", ...first };
  const names = different.map(({ how }) => how).join(", or ");
  return {
    kind: "choice",
    readings: different,
    message: `${quote(cell.text)} may be ${names}: write the one that is meant`,
  };
}

function toReading({ values, how = "" }: Way, { context: { place }, said }: CellText): PossibleReading {
  const parts = Object.entries(values).flatMap(([key, value]) => {
    if (value === null) return [];
    return [{ key, node: typeof value === "string" ? scalar(value, place) : value }];
  });
  return { parts, how: [how, said].filter((words) => words !== "").join("; ") };
}

function isSame(a: PossibleReading, b: PossibleReading): boolean {
  return JSON.stringify(a.parts) === JSON.stringify(b.parts);
}

/** What changes a number and so is never read over. */
const QUALIFIERS: Readonly<Record<string, string>> = {
  min: "MIN says at least",
  minimum: "MINIMUM says at least",
  max: "MAX says at most",
  maximum: "MAXIMUM says at most",
  approx: "APPROX says about",
  about: "ABOUT says about",
  nom: "NOM says a nominal size",
  "\u00B1": "\u00B1 is a tolerance or says about",
  "~": "~ says about",
  "?": "? leaves it open",
  "*": "* points to a note",
  note: "it points to a note, which may change it",
  see: "it points to another place, which may change it",
  verify: "VERIFY leaves it open",
  vif: "V.I.F. leaves it open",
  hold: "HOLD leaves it open",
  tbd: "TBD leaves it open",
};

/** The cell cannot be read; where a word or sign changes what it says, that is told. */
export function refuse({ text, tokens }: CellText, allowed: string): CellReading {
  const why = tokens.map(({ key }) => (Object.hasOwn(QUALIFIERS, key) ? QUALIFIERS[key] : undefined)).find(Boolean);
  const isTolerance = tokens.some(({ key }, index) => key === "+" && tokens[index + 1]?.key === "/");
  const reason = isTolerance ? "+/- is a tolerance or says about" : why;
  const told =
    reason === undefined
      ? ""
      : ` as one value: ${reason}, which changes the value and is not left out; ask what is meant, and write that`;
  return { kind: "fault", message: `${quote(text)} cannot be read${told}; allowed is ${allowed}` };
}

/** One key, as the column has it. */
export function one(cell: CellText, node: string | SourceNode, how = ""): CellReading {
  return { kind: "value", ...toReading({ values: { [cell.context.key]: node }, how }, cell) };
}
