/** What the look of a cell's text says of the column it stands in: whether it can be a count, a section, a size. */
import type { Length, Unit } from "../units/index.js";
import { parseLength } from "../units/index.js";
import type { FormName } from "./model.js";
import type { KnownHeading } from "./settled-column.js";

/** What a text looks like. `length` is none that is a whole number; `words` has no digit; `code` is letters with a number. */
export type CellShape =
  | "blank"
  | "reference"
  | "whole"
  | "length"
  | "diameter"
  | "thread"
  | "sizes"
  | "three sizes"
  | "rods"
  | "spaces"
  | "grade"
  | "steel"
  | "section"
  | "circle"
  | "elevation"
  | "list"
  | "yes or no"
  | "washer"
  | "end"
  | "code"
  | "words"
  | "other";

/** Whether a text can stand in a column: `unsaid` where its look does not tell. */
export type Fit = "yes" | "no" | "unsaid";

const LONGEST = 200;
const DIAMETER_SIGN = /[\u2300\u00d8\u00f8\u2205\u03a6\u03c6]/gu;

/** Upper case, plain quotes and dashes, one space. */
export function plainCellText(text: string): string {
  return text
    .normalize("NFKC")
    .toUpperCase()
    .replace(DIAMETER_SIGN, " DIA ")
    .replace(/[\u2019\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]|''/g, '"')
    .replace(/[\u2010-\u2015]/g, "-")
    .replace(/\u00d7/g, "X")
    .replace(/\s+/g, " ")
    .trim();
}

const NUMBER = String.raw`[\d.]+(?:[ -]\d+\/\d+|\/\d+)?`;
const LENGTH = String.raw`(?:\d+'(?: ?-? ?${NUMBER} ?"?)?|${NUMBER} ?(?:"|MM|IN\.?|CM|M)?)`;
const DIA = String.raw`(?:DIA\.?|DIAM\.?)`;
/** `4`, `(4)`, `4 EA`, `(4) REQ'D`, `(4 THUS)`. */
const COUNT = /^\(?(\d{1,6})\)?(?: ?(?:EA|NO|NOS|PCS|OFF|REQD|REQ'D|THUS)\.?\)?)?$/;
const SHAPES: readonly (readonly [CellShape, RegExp])[] = [
  ["blank", /^(?:-+|N\/?A|NONE|NIL|TBD|\?|X)?$/],
  ["reference", /^(?:"|DO\.?|DITTO|SAME\b.*|SEE\b.*|TYP\.?|PER\b.*|NOTE \d+|VARIES|V\.?I\.?F\.?)$/],
  ["yes or no", /^(?:Y|N|YES|NO|TRUE|FALSE)$/],
  ["whole", COUNT],
  [
    "grade",
    /^(?:ASTM )?(?:F ?1554|A ?307|A ?193|A ?449|A ?354|GR(?:ADE)?\.? ?(?:36|55|105)\b|CLASS \d|(?:4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|10\.9)\b)/,
  ],
  ["steel", /^(?:ASTM )?(?:A ?36|A ?572|A ?992|A ?529|S ?235|S ?275|S ?355)/],
  [
    "section",
    /^(?:W|HP|HSS|TS|PIPE|WT|MC|UC|UB|UKC|UKB|UBP|SHS|RHS|CHS|HEA|HEB|HEM|HE|IPE|HD|HL|WF) ?\d|^[SMC] ?\d+ ?X ?\d|^\d+ ?X ?\d+ ?X ?\d+ ?(?:UC|UB|UKC|UKB|SHS|RHS|CHS)$|^\d+ ?X ?\d+ ?(?:UC|UB|UBP|UKC|UKB) ?\d|^(?:WIDE FLANGE|TUBE|PIPE) /,
  ],
  ["thread", /^M ?\d{1,3}(?: ?X ?[\d.]+)?$/],
  ["elevation", /^(?:EL|ELEV)\.? ?[+-]?[\d'"]|^[+-]\d+\.\d+ ?M?$|^[+-]\d+'/],
  ["circle", /\d.*(?:\bB\. ?C\b|\bBCD?\b|\bB\. ?CIRCLE|\bBOLT CIRCLE|\bP\.? ?C\.? ?D\b)/],
  [
    "rods",
    new RegExp(
      String.raw`^\(\d+\) ?\S|^\d+ ?(?:NO|NOS|NR|EA|OFF)(?:\. ?|[ -])(?=\S)|^\d+ ?- ?(?:${LENGTH} ?${DIA}|${DIA} ?${LENGTH}|M ?\d)|^\d+ ?- ?\d+(?:[ -]\d+\/\d+)? ?"|^\d+ ?[X/]? ?M ?\d|^${LENGTH} ?${DIA} ?X`,
    ),
  ],
  ["spaces", /^\d+ ?(?:SPA?|SPACES|SPCS?|EQ)?\.? ?@/],
  ["washer", /^(?:F ?(?:436|844)|(?:PL|SQ|SQUARE|ROUND|RD|STD|HARDENED)\b.*WASH|(?:SQUARE|ROUND) \d)/],
  ["end", /^(?:(?:HEX |HVY |HEAVY )*NUT\b.*|HOOK\b.*|HEADED\b.*|PLATE (?:DIA )?\d.*)$/],
  [
    "three sizes",
    new RegExp(
      String.raw`^(?:PL ?)?${LENGTH} ?X ?${LENGTH} ?X ?${LENGTH}(?: ?(?:THK|THICK|PL|PLT|PLATE)\.?)?$|^${LENGTH} ?(?:X ?${LENGTH}|SQ\.?) ?PL ?${LENGTH}$|^${LENGTH} ?SQ\.? ?X ?${LENGTH}$`,
    ),
  ],
  [
    "sizes",
    new RegExp(
      String.raw`^(?:PL ?)?${LENGTH} ?X ?${LENGTH}(?: C\/C)?$|^${LENGTH} ?(?:SQ|SQUARE)\.?$|^SQ\.? ?${LENGTH}$`,
    ),
  ],
  ["diameter", new RegExp(`^${DIA} ?${LENGTH}$|^${LENGTH} ?${DIA}$|^ROUND ${LENGTH}$|^${LENGTH} ?(?:ROUND|RND|RD).?$`)],
  ["length", new RegExp(String.raw`^(?:PL\.? ?)?${LENGTH}(?: (?:MIN|MAX|LG|O\.?C|C\/C|THK|TYP)\.?)?$`)],
  ["list", /^[^A-Z]*[;,][^A-Z]*$/],
  ["words", /^\D+$/],
  ["code", /^[A-Z]{1,4}[ .-]?\d{1,4}[A-Z]?$|^\d{1,3}[A-Z]$/],
];

/** What the text looks like. */
export function shapeOf(text: string): CellShape {
  const plain = plainCellText(text.slice(0, LONGEST));
  return SHAPES.find(([, pattern]) => pattern.test(plain))?.[0] ?? "other";
}

type Fits = Readonly<{ yes: readonly CellShape[]; unsaid?: readonly CellShape[] }>;

const A_LENGTH: Fits = { yes: ["length", "whole"], unsaid: ["circle"] };
const A_HOLE: Fits = { yes: ["length", "whole", "diameter"] };
const A_TEXT: Fits = { yes: ["code", "whole", "words"], unsaid: ["steel", "yes or no"] };
const ANY: Fits = {
  yes: [],
  unsaid: ["whole", "length", "diameter", "thread", "sizes", "three sizes", "list", "code", "circle"],
};
const POINTS: Fits = { yes: ["list"] };
const WORDS: Fits = { yes: [] };

/** The looks that a form has, and those that do not tell; every other is of no such column. Words never tell. */
const FITS: Readonly<Record<FormName, Fits>> = {
  text: A_TEXT,
  mark: A_TEXT,
  note: ANY,
  word: WORDS,
  yesNo: { yes: ["yes or no"] },
  count: { yes: ["whole"] },
  length: A_LENGTH,
  lengths: { yes: ["list", "spaces"], unsaid: ["length", "whole"] },
  point: POINTS,
  points: POINTS,
  elevation: { yes: ["elevation", "length"], unsaid: ["whole"] },
  thickness: A_LENGTH,
  rod: { yes: ["length", "whole", "diameter", "thread"] },
  rods: { yes: ["rods", "sizes", "length", "whole", "diameter", "thread"], unsaid: ["circle"] },
  grade: { yes: ["grade"], unsaid: ["steel"] },
  finish: WORDS,
  material: { yes: ["grade"], unsaid: ["steel"] },
  pattern: { yes: ["sizes", "spaces", "circle"], unsaid: ["length", "whole", "list"] },
  spacing: { yes: ["length", "whole", "spaces"] },
  pitch: { yes: ["length", "whole", "spaces"] },
  plate: { yes: ["sizes", "three sizes", "diameter"] },
  pier: { yes: ["sizes", "diameter"] },
  hole: A_HOLE,
  holes: { yes: ["list"] },
  washer: { yes: ["washer", "sizes", "length", "diameter"], unsaid: ["whole", "three sizes"] },
  nut: { yes: ["end"], unsaid: ["grade"] },
  bottom: { yes: ["end"], unsaid: ["sizes", "three sizes"] },
  section: { yes: ["section"] },
  outline: { yes: ["sizes", "diameter"], unsaid: ["length", "whole"] },
  corner: WORDS,
  opening: { yes: ["sizes", "diameter"] },
};

/** `M24x600`, which is a rod with its length too, and not only a section. */
const METRIC_LENGTH = /^\s*M ?\d{1,3} ?[xX\u00d7] ?\d{2,4}\b/;
const RODS_ALONE = new Set(["36", "55", "105"]);
const WORDS_OF: Readonly<Record<string, RegExp>> = {
  Pattern: /^(?:rectangle|rect|rectangular|circle|circular|bolt circle|lines|points)$/i,
  Member: /^(?:column|post)s?$/i,
  Material: /^(?:steel|plywood|ply)$/i,
  Thread: /^(?:unc|8 ?un|coarse)$/i,
  Nut: /\bhex\b|^heavy$/i,
};

const TEXTS: ReadonlySet<FormName> = new Set(["text", "mark", "note"]);

/** A word that stands under one heading alone. */
function isOwnWord(text: string): boolean {
  return Object.values(WORDS_OF).some((words) => words.test(text));
}

/** Whether the text can stand under the heading. */
export function fitOf({ name, formName }: KnownHeading, text: string, shape: CellShape): Fit {
  if (shape === "blank" || shape === "reference") return "unsaid";
  const own = WORDS_OF[name];
  if (own !== undefined) return own.test(text.trim()) ? "yes" : shape === "words" && name === "Nut" ? "unsaid" : "no";
  if (!TEXTS.has(formName) && isOwnWord(text.trim())) return "no";
  if (shape === "whole" && (formName === "grade" || formName === "material"))
    return RODS_ALONE.has(text.trim()) ? "yes" : "no";
  if (shape === "section" && (formName === "rods" || formName === "rod") && METRIC_LENGTH.test(text)) return "yes";
  const { yes, unsaid = [] } = FITS[formName];
  if (yes.includes(shape)) return "yes";
  return shape === "words" || shape === "other" || unsaid.includes(shape) ? "unsaid" : "no";
}

/** The length that a cell plainly says, in nanometres; null where it says more or less than one. */
export function lengthIn(text: string, heading: string | null, unit: Unit): Length | null {
  const plain = plainCellText(text.slice(0, LONGEST))
    .replace(/^PL\.? ?/, "")
    .replace(/^DIA\.? ?| ?DIA\.?$| ?(?:MIN|LG|THK|TYP|O\.?C|C\/C)\.?$/g, "")
    .replace(/^M(?= ?\d)/, "");
  const isBare = /^[\d\s./+-]+$/.test(plain);
  const isThread = /^M ?\d/.test(plainCellText(text));
  const read = parseLength(isBare ? `${plain} ${isThread ? "mm" : (heading ?? unit)}` : plain, unit);
  return read.ok ? read.value : null;
}

/** The whole number that a cell plainly says; null for any other. */
export function countIn(text: string): number | null {
  const digits = COUNT.exec(plainCellText(text.slice(0, LONGEST)))?.[1];
  return digits === undefined ? null : Number(digits);
}
