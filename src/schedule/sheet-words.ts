/** What single texts of a sheet look like: words of a heading, a mark's heading, a unit. What they mean is settled later. */

/** True where the words, with the group over them, are a heading that is known. */
export type KnownHeading = (words: string, group: string) => boolean;

/** Known as they stand or without the unit that is written in them; asks once for each text. */
export function knownWithUnits(known: KnownHeading): KnownHeading {
  return rememberedKnown((words, group) => {
    if (words.length > 80 || !/[\p{L}#\u2300]/u.test(words)) return false;
    return known(words, group) || known(splitUnit(words, (rest) => known(rest, group)).words, group);
  });
}

/** Asks once for each text. */
export function rememberedKnown(known: KnownHeading): KnownHeading {
  const answers = new Map<string, boolean>();
  return (words, group) => {
    const key = `${group}\n${words}`;
    const before = answers.get(key);
    if (before !== undefined) return before;
    const answer = known(words, group);
    answers.set(key, answer);
    return answer;
  };
}

/** A text in one line. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

/** The same words whatever their case, spacing and punctuation. */
export function plainText(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}#]+/gu, "");
}

function wordsOf(text: string): readonly string[] {
  const bare = text.toLowerCase().replace(/\([^)]*\)|\[[^\]]*\]/g, " ");
  return bare.split(/[^\p{L}\p{N}#]+/u).filter((word) => word !== "");
}

const SURE_MARKS = new Set(["mark", "marks", "mk", "mks", "mrk"]);
/** Words that may head the marks, where no surer one does. */
const MAYBE_MARKS = new Set(
  "base bases type types id tag label name ref symbol designation item pos position no nr number # piece detail column col stanchion grid location loc sign pole equipment".split(
    " ",
  ),
);
const BESIDE_MARKS = new Set(
  "base bases column columns col stanchion stanchions piece pc bp plate baseplate footing ftg pier anchor rod bolt ab template member of the assembly line frame".split(
    " ",
  ),
);

/** sure: the heading of marks; maybe: it may be, where the row has no surer one. */
export function markHeading(text: string): "sure" | "maybe" | null {
  if (text.length > 40) return null;
  const words = wordsOf(text);
  if (words.length === 0 || words.length > 4) return null;
  if (!words.every((word) => SURE_MARKS.has(word) || MAYBE_MARKS.has(word) || BESIDE_MARKS.has(word))) return null;
  if (words.includes("template") || words.includes("qty")) return null;
  if (words.some((word) => SURE_MARKS.has(word))) return "sure";
  const isThing = (word: string) => /^(?:bases?|columns?|col|stanchions?|of|the)$/.test(word);
  return words.some((word) => MAYBE_MARKS.has(word) && !isThing(word)) || words.every(isThing) ? "maybe" : null;
}

const UNIT_NAMES: Readonly<Record<string, string>> = {
  ...{ in: "in", ins: "in", inch: "in", inches: "in", '"': "in", "''": "in", "\u2033": "in", "\u201d": "in" },
  ...{ ft: "ft", feet: "ft", foot: "ft", "'": "ft", "\u2032": "ft", "\u2019": "ft" },
  ...{
    "ft-in": "ft-in",
    "ft in": "ft-in",
    "feet-inches": "ft-in",
    "ft&in": "ft-in",
    "'-\"": "ft-in",
    "ft/in": "ft-in",
  },
  ...{ mm: "mm", millimeters: "mm", millimetres: "mm", cm: "cm", m: "m", meters: "m", metres: "m" },
  ...{ maod: "m", mahd: "m", mod: "m", "m aod": "m", "m ahd": "m", "m od": "m" },
  ...{ ea: "ea", each: "ea", pcs: "ea", pc: "ea", nos: "ea", off: "ea" },
  ...{ deg: "deg", "\u00b0": "deg", degrees: "deg", lb: "lb", lbs: "lb", kg: "kg", ksi: "ksi", psi: "psi", mpa: "mpa" },
};

/** The unit that a whole text names, as `in` for `(IN.)`; null where it is none. */
export function unitNamed(text: string): string | null {
  const bare = text.toLowerCase().replace(/^[\s([]+|[\s)\].:]+$/g, "");
  const close = bare.replace(/\./g, "").replace(/\s*([-&/])\s*/g, "$1");
  return Object.hasOwn(UNIT_NAMES, close) ? (UNIT_NAMES[close] ?? null) : null;
}

/** Words of a heading and the unit that was written in or after them. */
export interface WordsWithUnit {
  readonly words: string;
  readonly unit: string | null;
}

/** `"A"` and `'B'`: the last sign shuts the quotation and is no inch or foot. */
const QUOTED = /^(["'\u201c\u2018]).*["'\u201d\u2019]$/;

/** Takes a unit out of brackets, or off the end where what is left is `known` or the unit is no word. */
export function splitUnit(text: string, known: (words: string) => boolean): WordsWithUnit {
  if (QUOTED.test(text)) return { words: text, unit: null };
  for (const found of text.matchAll(/\(([^()]*)\)|\[([^[\]]*)\]/g)) {
    const unit = unitNamed(found[1] ?? found[2] ?? "");
    if (unit === null) continue;
    const words = oneLine(`${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`);
    if (words !== "") return { words, unit };
  }
  const [, words = "", comma = "", last = ""] = /^(.*?\S)(\s*[,/-]\s*|\s+|(?=["\u2033\u201d]))(\S+)$/.exec(text) ?? [];
  const unit = words === "" ? null : unitNamed(last);
  const isPlain = unit !== null && (comma.includes(",") || /^(mm|["\u2033\u201d]|in\.)$/i.test(last) || known(words));
  return isPlain && !COUNTS.has(unit) ? { words, unit } : { words: text, unit: null };
}

const COUNTS = new Set(["ea", "m", "deg"]);

/** A footnote's beginning: `1. ALL`, `(2) SEE`, `3) `, `NOTE 4:`, `* SEE`. */
export const NOTE_START =
  /^(?:(?:foot)?notes?\s*\(?(\d{1,2})\)?\s*[.:)\u2013-]|notes?\s+\(?([a-z])\)?\s*[.:)\u2013-]|\(?(\d{1,2})[.)]\)?(?=\s)|\((\d{1,2})\)|(\*+|\u2020)(?=\s*\S))\s*/i;
/** The line that stands over footnotes. */
export const NOTES_HEAD = /^(?:general |foot)?\s*notes?\s*(?:[:.]|$)|^(?:legend|abbreviations)\s*(?:[:.]|$)/i;

/** True for `NOTES:`, which heads what stands below it and no column; NOTES without a colon may be a heading. */
export function headsNotes(text: string): boolean {
  return /^(?:general |foot)?\s*notes?\s*:/i.test(text) || NOTE_START.test(text);
}

const VALUE = /\d\s*["'\u2033\u201d\u2032\u00d8\u00f8]|\d\s*(?:mm|in|ft)\b|\d\s*\/\s*\d|\d\s*x\s*\d|^[\s\d.,/+-]*$/i;

/** True for short words without values: what a heading that is not known looks like. */
export function isWordy(text: string): boolean {
  if (text.length > 60 || VALUE.test(text) || headsNotes(text)) return false;
  const words = wordsOf(text);
  const numbers = words.filter((word) => /\p{N}/u.test(word)).length;
  return words.length <= 8 && words.length - numbers > numbers;
}

const VALUES =
  /^(?:do|ditto|same(?: as .*)?|yes|typ|typical|varies|none|n\/?a|see .*|["\u2033\u201d\u3003-]+|hdg|galvanized|galvanised|plain|black|(?:heavy )?hex|square|round)\.?$/i;

/** True for words that are values of cells and head no column: DO, HEAVY HEX, HDG. */
export function isValueWord(text: string): boolean {
  return VALUES.test(text);
}

/** True for text that holds a figure. */
export function hasFigure(text: string): boolean {
  return /\p{N}/u.test(text);
}

const OVER_COLUMNS = new Set(
  (
    "anchor anchors rod rods bolt bolts base plate plates baseplate pier piers pedestal concrete conc footing column columns template templates " +
    "pattern grout washer washers nut nuts hole holes spacing spacings gage gages gauge dimensions dimension size sizes elevation elevations " +
    "location offset offsets thread threads hook grid top bottom overall material setting data details group"
  ).split(" "),
);
const UNDER_COLUMNS = new Set(
  (
    "mark qty quantity no number size dia diameter grade length embed embedment proj projection thk thickness width depth x y b n t d l w " +
    "spec type finish material elev elevation above below conc concrete count spacing hole gage gauge plate rod rods bolt reqd required above top bottom each"
  ).split(" "),
);
const TITLE_WORD =
  /\b(?:schedule|schedules|project|job|date|drawn|checked|prepared|sheet|page|drawing|dwg|client|contract|revision|issued)\b|:\s*$/i;

/** True for words that usually stand over several columns, as ANCHOR RODS. */
export function standsOver(text: string): boolean {
  return !TITLE_WORD.test(text) && wordsOf(text).some((word) => OVER_COLUMNS.has(word));
}

/** True for words that usually stand in the lower of two rows of headings, as EMBED. */
export function standsUnder(text: string): boolean {
  return wordsOf(text).some((word) => UNDER_COLUMNS.has(word));
}

/** True for what stands in titles and title blocks, never over columns. */
export function isTitle(text: string): boolean {
  return TITLE_WORD.test(text);
}

const MARK_ENDS = /^\(?(?:mark|mk|no|nr|number|#|type|id|tag|label|ref|symbol|designation)s?\.?\)?$/i;

/** True for the lower half of a mark's heading: `NO.` below `MARK`. */
export function endsMark(text: string): boolean {
  return MARK_ENDS.test(text);
}

/** True for what stands above the other half of a mark's heading: `BASE` over `MARK`. */
export function isPartOfMark(text: string): boolean {
  const words = wordsOf(text);
  const isPart = (word: string) => SURE_MARKS.has(word) || MAYBE_MARKS.has(word) || BESIDE_MARKS.has(word);
  return words.length > 0 && words.length <= 3 && words.every(isPart);
}

type Part = "rods" | "plate" | "concrete";

const PART_WORDS: readonly (readonly [Part, RegExp])[] = [
  ["rods", /\b(?:rods?|bolts?|anchors?)\b/i],
  ["plate", /\bplates?\b|\bbaseplates?\b/i],
  ["concrete", /\b(?:piers?|pedestals?|concrete|footings?)\b/i],
];

/** Words that belong to no part of the kind. */
const FOREIGN: Readonly<Record<Part, RegExp>> = {
  rods: /^(?:[xynbtdw]|thk|thick|thickness|width|depth)\b|\b(?:base ?plates?|piers?|pedestals?|footings?|columns?|templates?)\b/i,
  plate: /\b(?:embed|embedment|proj|projection|threads?|nuts?|rods?|bolts?|piers?|pedestals?|footings?|templates?)\b/i,
  concrete:
    /\b(?:embed|embedment|proj|projection|threads?|nuts?|thk|thickness|rods?|bolts?|grade|hole|base ?plates?|columns?|templates?)\b/i,
};
/** Words of columns that stand by themselves. */
const BY_ITSELF =
  /^(?:remarks?|notes?|comments?|grout|kind|column|col|member|section|shape|location|grid|detail|rev|template)\b|\b(?:elev|elevation|mark|revision|t\.?\s?o\.?\s?c|b\.?\s?o\.?\s?p)\b/i;

/** True where words do not go with those over them: THK under ANCHOR RODS. */
export function isForeign(words: string, group: string): boolean {
  const part = PART_WORDS.find(([, over]) => over.test(group))?.[0];
  return part !== undefined && (FOREIGN[part].test(words) || BY_ITSELF.test(words));
}
