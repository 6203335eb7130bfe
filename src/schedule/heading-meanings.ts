/** Words of a heading in their place -> what they may stand for. Reads the table of synonyms; knows no cells. */

import type { Doubt, HeadingName, Synonym } from "./heading-synonyms.js";
import { FOREIGN_WORDS, NEUTRAL_WORDS, NOTE, SYNONYMS } from "./heading-synonyms.js";
import type { Subject } from "./heading-words.js";
import { headingWords, isSubject, plainWords } from "./heading-words.js";
import { OWN_NAMES } from "./headings.js";

/** What words may stand for; `doubt` is null where that is one thing. */
export interface Meanings {
  readonly names: readonly HeadingName[];
  readonly doubt: Doubt | null;
}

const UNKNOWN: Meanings = { names: [], doubt: null };

/** Finds what words may stand for below the group over them. */
export type LookUp = (words: string, group: string) => Meanings;

/** What the words of a schedule may stand for below the group over them, best known first; empty where they are not known. */
export function meaningsOf(words: string, group: string): readonly HeadingName[] {
  return lookUp(words, group).names;
}

/** A table of synonyms, with the headings' own names, as what finds their meanings. */
export function lookUpIn(
  synonyms: readonly Synonym[],
  own: ReadonlyMap<string, { readonly name: HeadingName }>,
): LookUp {
  const index: Index = {
    grouped: indexOf(synonyms.filter(({ isGrouped }) => isGrouped === true)),
    phrases: new Map([
      ...[...own].map(([phrase, { name }]) => [phrase, { names: [name], doubt: null }] as const),
      ...indexOf(synonyms.filter(({ isGrouped }) => isGrouped !== true)),
    ]),
  };
  return (words, group) => {
    const { words: own, inBrackets } = headingWords(words);
    const over = readGroup(group);
    const whole = inBrackets.length === 0 ? undefined : inPlace([...own, ...inBrackets], over, index);
    if (whole !== undefined) return whole;
    if (inBrackets.some(changesMeaning) && !isOrder(inBrackets)) return UNKNOWN;
    return inPlace(own, over, index) ?? UNKNOWN;
  };
}

/** Meanings by phrases in plain spelling; `grouped` holds those that need the group over them. */
interface Index {
  readonly grouped: ReadonlyMap<string, Meanings>;
  readonly phrases: ReadonlyMap<string, Meanings>;
}

/** What stands in brackets may be read over, as `(ABOVE T.O.C.)`, but not another thing or another measure. */
function changesMeaning(word: string): boolean {
  return isSubject(word) || CHANGING.has(word);
}

/** `(L x W x T)`: how the cells are written. */
function isOrder(words: readonly string[]): boolean {
  return words.length > 2 && words.every((word) => /^[lwbndtx]$/.test(word));
}

const CHANGING = new Set([
  "overall",
  "spacing",
  "pitch",
  "total",
  "x",
  "y",
  "base",
  "max",
  "each",
  "bop",
  "thread",
  "threads",
]);

/** What a group says of the columns below it. */
type Group =
  | { readonly kind: "none" }
  | { readonly kind: "subject"; readonly words: readonly string[]; readonly subject: Subject | null }
  | { readonly kind: "unknown"; readonly words: readonly string[] }
  | { readonly kind: "foreign" };

const NEUTRAL = new Set(NEUTRAL_WORDS.flatMap((word) => plainWords(word)));
const FOREIGN = new Set(FOREIGN_WORDS.flatMap((word) => plainWords(word)));
/** Words of a group that are neither a thing nor empty: `ROD SPACING` over `X`. */
const MEASURES = new Set(["spacing", "pattern", "pitch", "edge", "dist", "distance", "rod circle", "overall"]);

function readGroup(text: string): Group {
  const { words, inBrackets } = headingWords(text);
  const all = [...words, ...inBrackets];
  const telling = all.filter((word) => !NEUTRAL.has(word));
  if (telling.length === 0) return { kind: "none" };
  const subjects = new Set(telling.filter(isSubject));
  const [subject = null] = subjects;
  const isKnown = telling.every((word) => isSubject(word) || MEASURES.has(word));
  if (isKnown && subjects.size > 1 && !subjects.has("hole") && !telling.includes("spacing")) return { kind: "none" };
  if (isKnown && !isFooting(subjects)) return { kind: "subject", words: telling, subject };
  if (isKnown) return { kind: "subject", words: telling, subject: "footing" };
  return telling.some((word) => FOREIGN.has(word)) ? { kind: "foreign" } : { kind: "unknown", words: telling };
}

function isFooting(subjects: ReadonlySet<string>): boolean {
  return subjects.size === 1 && subjects.has("footing");
}

function inPlace(words: readonly string[], group: Group, index: Index): Meanings | undefined {
  switch (group.kind) {
    case "none":
      return alone(words, index);
    case "foreign":
      return undefined;
    case "unknown":
      return below(words, group.words, index) ?? inUnknown(words, index);
    case "subject":
      return below(words, group.words, index) ?? besides(words, group.subject, index);
  }
}

function alone(words: readonly string[], { phrases }: Index): Meanings | undefined {
  return firstKnown(orders(words), phrases);
}

/** Words below a group that names a thing: that thing's, once. */
function below(words: readonly string[], group: readonly string[], { grouped, phrases }: Index): Meanings | undefined {
  const whole = orders(words).map((order) => [...group, ...order.filter((word) => !group.includes(word))]);
  const bare = words.some(isSubject) ? undefined : firstKnown(whole, grouped);
  return bare ?? firstKnown(whole, phrases);
}

/** Words that name another thing than the group over them, and notes. A plate of the rods is the base plate only by name. */
function besides(words: readonly string[], group: Subject | null, index: Index): Meanings | undefined {
  const subjects = words.filter(isSubject);
  if (group === "footing" || group === "setting") return undefined;
  const isOther = subjects.some((subject) => subject !== group);
  const isForeignPlate = subjects.includes("plate") && group !== "plate" && group !== "el";
  const isOwn = words.some((word) => STANDALONE.has(word));
  return (isOther && !isForeignPlate) || isOwn ? alone(words, index) : undefined;
}

const STANDALONE = new Set(["toc", "bop", "note"]);

/** Below words that are not known, a heading that names its thing may be ours or another's. */
function inUnknown(words: readonly string[], index: Index): Meanings | undefined {
  const known = alone(words, index);
  const isNamed = words.some((word) => isSubject(word) || STANDALONE.has(word) || NAMED.has(word));
  if (known === undefined || !isNamed) return undefined;
  const names = known.names.includes(NOTE) ? known.names : [...known.names, NOTE];
  return { names, doubt: known.names[0] === "Mark" ? "which mark" : "only asked" };
}

const NAMED = new Set(["mark", "projection", "embedment"]);

/** The same words in the orders that mean the same: as written, `B A` for `A of B`, and with the thing first. */
function orders(words: readonly string[]): readonly (readonly string[])[] {
  const turned = turnOf(words);
  const first = subjectFirst(turned);
  const isNeed = words.length > 1 && words.includes("reqd");
  return isNeed ? [words, turned, first, ...orders(words.filter((word) => word !== "reqd"))] : [words, turned, first];
}

const OF = new Set(["of", "for", "in", "at", "on"]);

function turnOf(words: readonly string[]): readonly string[] {
  const at = words.findLastIndex((word) => OF.has(word));
  return at < 1 || at === words.length - 1 ? words : [...words.slice(at + 1), ...turnOf(words.slice(0, at))];
}

/** `NO. RODS` and `SIZE BASE PLATE`: the thing stands last. */
function subjectFirst(words: readonly string[]): readonly string[] {
  const last = words.at(-1);
  return last === undefined || !isSubject(last) || words.slice(0, -1).some(isSubject)
    ? words
    : [last, ...words.slice(0, -1)];
}

function firstKnown(
  phrases: readonly (readonly string[])[],
  among: ReadonlyMap<string, Meanings>,
): Meanings | undefined {
  for (const phrase of phrases) {
    const found = among.get(phrase.join(""));
    if (found !== undefined) return found;
  }
  return undefined;
}

function indexOf(synonyms: readonly Synonym[]): ReadonlyMap<string, Meanings> {
  const found = new Map<string, Meanings>();
  for (const { of, words, means, doubt } of synonyms) {
    for (const written of words) {
      for (const order of orders([...(of === "" ? [] : [of]), ...plainWords(written)])) {
        const phrase = order.join("");
        if (!found.has(phrase)) found.set(phrase, { names: means, doubt: doubt ?? null });
      }
    }
  }
  return found;
}

/** The same for a schedule of bases, with the reason why there are several. */
export const lookUp: LookUp = lookUpIn(SYNONYMS, OWN_NAMES);
