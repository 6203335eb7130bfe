/**
 * Marks: one, a list, or a range: `B3`, `BP-1`, `B1, B3 & B5`, `B4-B7`, `B4 THRU B7`, `B4 - B7, B9`, `B3 (TYP OF 4)`.
 *
 * A hyphen may be part of a mark. `B4-B7` and `BP-1-BP-4` repeat what stands before the number and are ranges; `BP-1` and
 * `B4-1` are marks. `B1-3` and `1-4` may be either, and are choices. THRU, TO and a dash with spaces about it are no part of one.
 */
import { quote } from "../../units/index.js";
import type { CellReading, PossibleReading } from "../model.js";
import type { CellText } from "./answers.js";
import { scalar } from "./nodes.js";
import { plainCell } from "./tokens.js";

/** Marks of one cell; `quantity` is how many of each it says, where it does. */
export interface Marks {
  readonly marks: readonly string[];
  readonly quantity: string | null;
  readonly how: string;
}

/** What a cell of marks gives. */
export type MarksReading =
  | ({ readonly kind: "marks" } & Marks)
  | { readonly kind: "choice"; readonly readings: readonly Marks[]; readonly message: string }
  | { readonly kind: "fault"; readonly message: string };

/** Marks that one range may stand for. */
export const MOST_IN_RANGE = 200;
/** Longest cell of marks that is read. */
const LONGEST = 2000;

/** One way to understand a part of the cell, or a fault. */
type Part = readonly (readonly string[])[] | string;

/** Reads the marks of a cell that is not blank. */
export function readMarks(text: string): MarksReading {
  const plain = plainCell(text);
  if (plain.length > LONGEST)
    return fault(text, `has ${plain.length} characters; at most ${LONGEST} are read as marks`);
  const said = asSaid(plain);
  if (said !== null) return said;
  const { bare, quantity } = withoutQuantity(withoutInclusive(plain));
  const parts = separated(bare);
  const doubt = doubtOf(bare, parts);
  if (doubt !== null) return fault(text, doubt);
  const read = parts.length === 1 ? [readPart(parts[0] ?? "")] : readList(parts);
  const wrong = read.find((part) => typeof part === "string");
  if (wrong !== undefined) return fault(text, wrong);
  const ways = combine(read.flatMap((part) => (typeof part === "string" ? [] : [part])));
  return ways.length > 1 ? choose(text, ways, quantity) : settle(text, ways[0] ?? [], quantity);
}

/** What the readings of a choice are called, written back as the answer: taken as it says. */
function asSaid(plain: string): MarksReading | null {
  const lower = plain.toLowerCase();
  if (lower.startsWith("the mark "))
    return { kind: "marks", marks: [plain.slice("the mark ".length).trim()], quantity: null, how: "" };
  const colon = lower.indexOf(" marks: ");
  const count = Number(plain.slice(0, Math.max(colon, 0)));
  if (colon < 1 || !Number.isInteger(count)) return null;
  const each = lower.endsWith(" of each") ? plain.slice(plain.lastIndexOf(",") + 1, -" of each".length).trim() : null;
  const listed = plain.slice(colon + " marks: ".length, each === null ? undefined : plain.lastIndexOf(","));
  const parts = listed.split(",").map((part) => part.trim());
  const [from, to] = listed.split(/ thru /i);
  const range =
    parts.length === 1 && from !== undefined && to !== undefined ? expand(from.trim(), to.trim(), true) : [parts];
  if (typeof range === "string" || range[0]?.length !== count || (each !== null && !/^\d{1,5}$/.test(each))) {
    return fault(plain, `does not name ${count} marks; allowed is 3 marks: B1, B3, B5`);
  }
  return { kind: "marks", marks: range[0], quantity: each, how: wordsOf(range[0], each) };
}

function settle(text: string, marks: readonly string[], quantity: string | null): MarksReading {
  const twice = marks.find((mark, index) => marks.indexOf(mark) !== index);
  if (twice !== undefined) return fault(text, `names ${quote(twice)} twice; allowed is each mark once`);
  if (marks.length > MOST_IN_RANGE)
    return fault(text, `names ${marks.length} marks; allowed are at most ${MOST_IN_RANGE} in a cell`);
  if (quantity === null || marks.length === 1) return { kind: "marks", marks, quantity, how: wordsOf(marks, quantity) };
  if (Number(quantity) !== marks.length)
    return fault(
      text,
      `says ${quantity} beside ${marks.length} marks: of each, or of all? allowed is the number of each in the column of quantities`,
    );
  return choose(text, [marks], quantity);
}

function choose(text: string, ways: readonly (readonly string[])[], quantity: string | null): MarksReading {
  const counted = ways.flatMap((marks) => {
    const isWhole = quantity !== null && marks.length > 1 && Number(quantity) === marks.length;
    return isWhole ? [toMarks(marks, null), toMarks(marks, quantity)] : [toMarks(marks, quantity)];
  });
  const names = counted.map(({ how }) => how).join(", or ");
  return {
    kind: "choice",
    readings: counted,
    message: `${quote(text)} may be ${names}: write the one that is meant`,
  };
}

const toMarks = (marks: readonly string[], quantity: string | null): Marks => ({
  marks,
  quantity,
  how: marks.length === 1 && quantity === null ? `the mark ${marks[0]}` : wordsOf(marks, quantity),
});

/** `3 marks: B1, B3, B5`, `9 marks: B1 THRU B9, 4 of each`: reads back to the same. */
function wordsOf(marks: readonly string[], quantity: string | null): string {
  const each = quantity === null ? "" : `${quantity} of ${marks.length > 1 ? "each" : "it"}`;
  if (marks.length === 1) return each;
  const [first = "", last = ""] = [marks[0], marks.at(-1)];
  const range = marks.length > 2 ? expand(first, last, true) : "";
  const isRange = typeof range !== "string" && JSON.stringify(range[0]) === JSON.stringify(marks);
  return `${marks.length} marks: ${isRange ? `${first} THRU ${last}` : marks.join(", ")}${each === "" ? "" : `, ${each}`}`;
}

function fault(text: string, words: string): MarksReading {
  return { kind: "fault", message: `${quote(text)} ${words}` };
}

/** `B1-B3 INCL.`: a range holds its ends. */
function withoutInclusive(plain: string): string {
  const lower = plain.toLowerCase();
  const end = [" incl", " incl.", " inclusive", " (incl)", " (incl.)"].find((words) => lower.endsWith(words));
  return end === undefined ? plain : plain.slice(0, -end.length).trim();
}

const NO_MARKS = new Set(["all", "others", "all others", "all other", "other", "balance", "remaining"]);

/** What is no mark though it stands in their column, or may be several without a sign between them. */
function doubtOf(bare: string, parts: readonly string[]): string | null {
  if (NO_MARKS.has(bare.toLowerCase())) return "names no mark; allowed is each mark, as B1, B3 & B5 or B4 THRU B7";
  if (parts.length > 1 && bare.includes("("))
    return "has brackets in a list of marks; allowed is each mark, and how many of each in the column of quantities";
  if (/\b(sim|similar|opp|mirror(ed)?)\b/i.test(bare))
    return "says similar, which is not the same; allowed is a mark of its own";
  const isJoined = /[/+]/.test(bare) && new Set(parts.map((part) => splitMark(part)?.prefix.toLowerCase())).size > 1;
  if (isJoined) return "may be one mark or several; allowed is each mark with a comma between, as B1, B2";
  const words = parts.flatMap((part) => (/ (?:thru|through|to|til|-) /i.test(part) ? [] : [part.split(" ")]));
  const isSeveral = words.some((each) => each.filter((word) => /[a-z]/i.test(word) && /\d/.test(word)).length > 1);
  return isSeveral ? "may be several marks; allowed is each mark with a comma between, as B1, B2" : null;
}

/** A cell without `(4)`, `(4 REQ'D)` or `(TYP OF 4)` at its end, and that number. */
function withoutQuantity(plain: string): { readonly bare: string; readonly quantity: string | null } {
  const open = plain.lastIndexOf("(");
  if (open <= 0 || !plain.endsWith(")")) return { bare: plain, quantity: null };
  const words = plain
    .slice(open + 1, -1)
    .toLowerCase()
    .replaceAll(".", "")
    .split(" ")
    .filter((word) => word !== "");
  const numbers = words.filter((word) => /^\d{1,5}$/.test(word));
  const isCount = words.every((word) => numbers.includes(word) || COUNT_WORDS.has(word));
  const [quantity] = numbers;
  if (!isCount || numbers.length !== 1 || quantity === undefined) return { bare: plain, quantity: null };
  return { bare: plain.slice(0, open).trim(), quantity: String(Number(quantity)) };
}

const COUNT_WORDS = new Set([
  "typ",
  "of",
  "req'd",
  "reqd",
  "required",
  "thus",
  "ea",
  "each",
  "places",
  "plcs",
  "pl",
  "qty",
  "no",
  "off",
  "total",
]);

/** Parts between commas, semicolons, `&`, `+`, `/` and AND. */
function separated(plain: string): readonly string[] {
  const marked = plain.replace(/ and /gi, " & ").replace(/, *& */g, ",");
  return marked.split(/[,;&+/]/).map((part) => part.trim());
}

/** Parts of a list; numbers alone behind a mark with letters may have lost its letters. */
function readList(parts: readonly string[]): readonly Part[] {
  if (parts.includes("")) return ["has nothing between two signs that part marks; allowed is B1, B3 & B5"];
  const first = splitMark(parts[0] ?? "");
  const rest = parts.slice(1);
  const isShort = first !== null && first.prefix !== "" && rest.some((part) => /^\d+$/.test(part));
  if (!isShort || first === null) return parts.map(readPart);
  const long = rest.map((part) => (/^\d+$/.test(part) ? first.prefix + part : part));
  const [own, full] = [parts.map(readPart), [parts[0] ?? "", ...long].map(readPart)];
  const wrong = [...own, ...full].find((part) => typeof part === "string");
  if (wrong !== undefined) return [wrong];
  const joined = (list: readonly Part[]) => combine(list.flatMap((part) => (typeof part === "string" ? [] : [part])));
  return [[...joined(full), ...joined(own)]];
}

interface Mark {
  readonly prefix: string;
  readonly digits: string;
}

/** A mark that ends in a number: what stands before it, and it. */
function splitMark(mark: string): Mark | null {
  let from = mark.length;
  while (from > 0 && /\d/.test(mark[from - 1] ?? "")) from -= 1;
  const digits = mark.slice(from);
  return digits === "" || digits.length > 9 ? null : { prefix: mark.slice(0, from), digits };
}

/** One mark or a range, in each way that it may be meant. */
function readPart(part: string): Part {
  const joined = / (?:thru|through|to|til|-|-->|->) /i.exec(part) ?? /\.{2,3}/.exec(part);
  if (joined !== null) {
    const [from, to] = [part.slice(0, joined.index).trim(), part.slice(joined.index + joined[0].length).trim()];
    return joined[0].trim() === "-" && !/\d/.test(to) ? [[part]] : expand(from, to, true);
  }
  const dashes = [...part].flatMap((sign, at) => (sign === "-" && at > 0 ? [at] : []));
  const repeated = dashes.find((at) => isRepeated(part.slice(0, at).trim(), part.slice(at + 1).trim()));
  if (repeated !== undefined) return expand(part.slice(0, repeated).trim(), part.slice(repeated + 1).trim(), true);
  const last = dashes.at(-1);
  if (last === undefined) return [[part]];
  const range = expand(part.slice(0, last).trim(), part.slice(last + 1).trim(), false);
  return typeof range === "string" ? [[part]] : [[part], ...range];
}

/** `B4-B7`: the second repeats the letters before the number; or differs from the first in its last letter, as `B1A-B1D`. */
function isRepeated(from: string, to: string): boolean {
  const [first, last] = [splitMark(from), splitMark(to)];
  if (first !== null && last !== null) return first.prefix !== "" && isSamePrefix(first, last);
  return (
    from.length > 1 &&
    from.length === to.length &&
    /[a-z]$/i.test(from) &&
    from.slice(0, -1).toLowerCase() === to.slice(0, -1).toLowerCase() &&
    /\d/.test(from)
  );
}

const isSamePrefix = (a: Mark, b: Mark): boolean => a.prefix.toLowerCase() === b.prefix.toLowerCase();

/** The marks from one to another. A second that is a number alone takes the letters of the first. */
function expand(from: string, to: string, isSure: boolean): Part {
  const [first, last] = [splitMark(from), splitMark(to)];
  if (first === null || last === null) return isSure ? expandLetters(from, to) : "is no range";
  if (last.prefix !== "" && !isSamePrefix(first, last))
    return `is no range: ${from} and ${to} differ in more than their number; allowed is B4 THRU B7, or each mark`;
  const [low, high] = [Number(first.digits), Number(last.digits)];
  const isOdd =
    first.digits.length !== last.digits.length && (first.digits.startsWith("0") || last.digits.startsWith("0"));
  if (isOdd)
    return `is no range: ${first.digits} and ${last.digits} are padded differently; allowed is B01 THRU B03, or each mark`;
  if (low >= high) return `is no range: it does not ascend from ${from} to ${to}; allowed is B4 THRU B7, or each mark`;
  if (high - low >= MOST_IN_RANGE) return `is a range of ${high - low + 1} marks; allowed are at most ${MOST_IN_RANGE}`;
  const width = first.digits.startsWith("0") || last.digits.startsWith("0") ? first.digits.length : 0;
  return [
    Array.from({ length: high - low + 1 }, (_, index) => first.prefix + String(low + index).padStart(width, "0")),
  ];
}

/** `A THRU D`, `B1A THRU B1D` */
function expandLetters(from: string, to: string): Part {
  const [low, high] = [from, to].map((mark) => mark.charCodeAt(mark.length - 1));
  const stem = from.slice(0, -1);
  const isSameStem = from.length === to.length && stem.toLowerCase() === to.slice(0, -1).toLowerCase();
  const areLetters = [from, to].every((mark) => /[A-Z]$/.test(mark)) || [from, to].every((mark) => /[a-z]$/.test(mark));
  if (low === undefined || high === undefined || !isSameStem || !areLetters || low >= high || /[a-z ]$/i.test(stem)) {
    return `is no range: ${quote(from)} and ${quote(to)} do not ascend in one number or letter; allowed is B4 THRU B7, or each mark`;
  }
  return [Array.from({ length: high - low + 1 }, (_, index) => stem + String.fromCharCode(low + index))];
}

/** Most ways that are followed up: beyond, each part is taken in its first. */
const MOST_WAYS = 4;

/** Every way of each part with every way of the others. */
function combine(parts: readonly (readonly (readonly string[])[])[]): readonly (readonly string[])[] {
  return parts.reduce<readonly (readonly string[])[]>(
    (ways, part) => ways.flatMap((way) => part.map((marks) => [...way, ...marks])).slice(0, MOST_WAYS),
    [[]],
  );
}

/** A cell of marks as parts: each mark under the key of the column, and how many of each under `quantity`. */
export function readMarkCell({ text, plain, said, context }: CellText): CellReading {
  const reading = readMarks(said === "" ? text : plain);
  if (reading.kind === "fault") return reading;
  const toParts = ({ marks, quantity, how }: Marks): PossibleReading => ({
    parts: [
      ...marks.map((mark) => ({ key: context.key, node: scalar(mark, context.place) })),
      ...(quantity === null ? [] : [{ key: "quantity", node: scalar(quantity, context.place) }]),
    ],
    how: reading.kind === "choice" ? how : [how, said].filter((words) => words !== "").join("; "),
  });
  if (reading.kind === "choice")
    return { kind: "choice", readings: reading.readings.map(toParts), message: reading.message };
  return { kind: "value", ...toParts(reading) };
}
