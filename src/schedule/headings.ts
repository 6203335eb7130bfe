/** The columns of a schedule, as data: heading, other ways of writing it, place in the job file, form of the cells. */
import { ownValue } from "../diagnostics/own-value.js";
import type { PatternColumn } from "../patterns/index.js";
import { PATTERN_COLUMNS, PATTERN_SYNONYMS } from "../patterns/index.js";
import type { CellForm } from "./cell-forms.js";
import {
  asBottom,
  asColumn,
  asCorner,
  asHoles,
  asLengths,
  asOpening,
  asOutline,
  asPoint,
  asPoints,
  asText,
  asWasher,
  asWord,
} from "./cell-forms.js";

/** A column of a schedule. */
export interface Heading {
  /** As the starting spreadsheet writes it. */
  readonly name: string;
  readonly also: readonly string[];
  /** Place in a base, or in a group of rods, of the job file. */
  readonly key: string;
  /** group: may be given again on a continuation row (blank Mark), for rods of another size on the same plate. */
  readonly scope: "base" | "group";
  /** length: one length a cell, so that a unit in the heading's brackets holds for bare numbers. */
  readonly measure: "length" | "lengths" | "none";
  readonly form: CellForm;
  /** What to write, with an example. */
  readonly example: string;
  /** Where the heading may mean the length overall or the pitch: the key that says how many rods there are. */
  readonly countKey?: string;
}

const finish = { hdg: "galvanized", galv: "galvanized", galvanised: "galvanized", black: "plain" };
const yesNo = { y: "yes", n: "no" };
const nut = { heavy: "heavy hex", "hvy hex": "heavy hex" };
const use = { "setting plate": "template left as setting plate", "over cast rods": "setting plate over cast rods" };

function base(name: string, key: string, form: CellForm, example: string, ...also: string[]): Heading {
  return { name, key, form, example, also, scope: "base", measure: "none" };
}

function group(name: string, key: string, form: CellForm, example: string, ...also: string[]): Heading {
  return { ...base(name, key, form, example, ...also), scope: "group" };
}

function length(heading: Heading): Heading {
  return { ...heading, measure: "length" };
}

function lengths(heading: Heading): Heading {
  return { ...heading, measure: "lengths" };
}

/** What the cells of a pattern's column hold -> how they are read. */
const PATTERN_CELLS: Readonly<Record<PatternColumn["cell"], Pick<Heading, "form" | "measure">>> = {
  length: { form: asText, measure: "length" },
  text: { form: asText, measure: "none" },
  word: { form: asWord(), measure: "none" },
  "yes or no": { form: asWord(yesNo), measure: "none" },
  lengths: { form: asLengths, measure: "lengths" },
  points: { form: asPoints, measure: "lengths" },
};

function patternHeadings(): readonly Heading[] {
  return [...PATTERN_COLUMNS].flatMap(([{ name, also, cell, example, overallOrPitch }, key]): Heading[] => {
    const plain: Heading = { name, also, example, key: `pattern.${key}`, scope: "group", ...PATTERN_CELLS[cell] };
    if (overallOrPitch === undefined) return [plain];
    const [first, ...others] = overallOrPitch.names;
    return [plain, { ...plain, name: first, also: others, countKey: `pattern.${overallOrPitch.count}` }];
  });
}

/** Every heading that is known, in the order of the starting spreadsheet. */
export const HEADINGS: readonly Heading[] = [
  base("Mark", "mark", asText, "B1", "Base", "Base mark", "Piece mark", "Type"),
  base("Qty", "quantity", asText, "6", "No. of bases", "Base qty"),
  base("Kind", "kind", asText, "heavy", "Kind of base"),
  base("Member", "member", asWord(), "column"),
  length(group("Rod dia", "rods.diameter", asText, "1-1/4", "Rod", "Rod size", "Dia", "Anchor rod", "Anchor rod dia")),
  group("Thread", "rods.thread", asText, "UNC", "Thread series"),
  group("Grade", "rods.grade", asText, "55", "Rod grade", "Material grade"),
  group("Finish", "rods.finish", asWord(finish), "galvanized", "Rod finish", "Coating"),
  length(group("Zinc growth", "rods.zincGrowth", asText, "0.007")),
  group("Nut", "rods.nut", asWord(nut), "heavy hex", "Nuts"),
  group("Torqued", "rods.torqued", asWord(yesNo), "no"),
  group("Welded", "rods.welded", asWord(yesNo), "no"),
  group("Weldable", "rods.weldable", asWord(yesNo), "no", "S1"),
  length(group("Projection", "rods.projection", asText, "9", "Proj", "Rod projection")),
  length(group("Embedment", "rods.embedment", asText, "24", "Embed", "Rod embedment")),
  length(group("Rod length", "rods.length", asText, "36", "Overall length", "Length")),
  length(group("Threads", "rods.threads", asText, "8", "Thread length", "Top thread")),
  lengths(group("Bottom", "rods.bottom", asBottom, "nut; plate 3 x 1/2; hook 4", "Bottom end")),
  length(group("Stick-out", "rods.stickOut", asText, "1/4")),
  length(group("Wrench room", "rods.wrenchRoom", asText, "3-1/2", "Socket room")),
  group("Pattern", "pattern.kind", asWord(PATTERN_SYNONYMS), "rectangle", "Pattern kind"),
  ...patternHeadings(),
  length(base("Base plate X", "basePlate.x", asText, "18", "Plate X", "BP X")),
  length(base("Base plate Y", "basePlate.y", asText, "16", "Plate Y", "BP Y")),
  length(base("Base plate dia", "basePlate.diameter", asText, "30", "Plate dia", "BP dia")),
  lengths(base("Base plate at", "basePlate.at", asPoint, "0, 3", "Plate at")),
  lengths(base("Base plate corner", "basePlate.corner", asCorner, "round 1", "Plate corner")),
  length(base("Base plate thk", "basePlate.thickness", asText, "1-1/2", "Plate thk", "BP thk")),
  length(group("Base plate hole", "baseHole", asText, "2-1/16", "Hole", "Plate hole", "BP hole")),
  lengths(group("Washer", "washer", asWasher, "square 3 x 1/2; F844 wide", "Plate washer")),
  lengths(
    base("Second source", "basePlate.pattern", asHoles("hole"), "2-1/16: -6,5; 6,5; 6,-5; -6,-5", "Base plate pattern"),
  ),
  lengths(
    base("Base plate grout holes", "basePlate.groutHoles", asHoles("diameter"), "3: 0,0", "Base plate air holes"),
  ),
  lengths(base("Column", "column", asColumn, "wide flange 12 x 8 x 5/8 x 3/8 along y", "Column shape")),
  length(base("Pier X", "concrete.x", asText, "24", "Concrete X")),
  length(base("Pier Y", "concrete.y", asText, "24", "Concrete Y")),
  length(base("Pier dia", "concrete.diameter", asText, "36", "Concrete dia")),
  lengths(base("Pier at", "concrete.at", asPoint, "0, 3", "Concrete at")),
  lengths(base("Pier corner", "concrete.corner", asCorner, "chamfer 3/4", "Concrete corner")),
  length(base("Pier depth", "concrete.depth", asText, "48", "Concrete depth")),
  base("Exposure", "concrete.exposure", asWord(), "against ground"),
  length(base("Grout", "grout", asText, "1-1/2", "Grout gap", "Grout thk")),
  base(
    "Levelling",
    "levelling",
    asWord({ "leveling nuts": "nuts", "levelling nuts": "nuts", nut: "nuts" }),
    "nuts",
    "Leveling",
  ),
  base("Template mark", "template.mark", asText, "T1", "Tmpl mark"),
  base("Template qty", "template.quantity", asText, "2", "Tmpl qty"),
  base("Use", "template.use", asWord(use), "template", "Template use"),
  base("Support", "template.support", asWord({ forms: "form", bearer: "bearers" }), "form"),
  base("Material", "template.material", asWord({ ply: "plywood" }), "steel", "Template material"),
  length(base("Template thk", "template.thickness", asText, "1/4", "Tmpl thk")),
  length(group("Template hole", "hole", asText, "1-5/16", "Tmpl hole")),
  lengths(
    base(
      "Outline",
      "template.outline",
      asOutline,
      "20 x 18; dia 30; ring 30 / 20; auto",
      "Template outline",
      "Template size",
    ),
  ),
  lengths(base("Corner", "template.outline.corner", asCorner, "chamfer 1", "Corners", "Template corner")),
  lengths(base("Opening", "template.opening", asOpening, "dia 6; 8 x 6 r 1; auto", "Template opening")),
  base("Key", "template.key", asWord(), "auto"),
  length(base("Template height", "template.height", asText, "3", "Height")),
  lengths(base("Nails", "template.nails", asHoles("diameter"), "1/8: -9,8; 9,8", "Nail holes")),
  lengths(base("Grout holes", "template.groutHoles", asHoles("diameter"), "3: 0,0", "Air holes")),
  base("Note", "note", asText, "brace frame", "Notes", "Remarks"),
];

const SAME_WORD: readonly (readonly [RegExp, string])[] = [
  [/[⌀ø]/gu, " dia "],
  [/\b(diameter|diam)\b/g, "dia"],
  [/\b(thickness|thick)\b/g, "thk"],
  [/\b(quantity|quant)\b/g, "qty"],
  [/\bbaseplate\b/g, "base plate"],
  [/\b(rods|bolts|bolt(?! circle))\b/g, "rod"],
  [/\bnumber\b/g, "no"],
];

/** The same heading whatever its case, punctuation, spacing, and what stands in brackets. */
export function plainHeading(text: string): string {
  const bare = text
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, " ")
    .replace(/[^a-z0-9⌀ø]+/gu, " ");
  const words = SAME_WORD.reduce((line, [word, same]) => line.replace(word, same), bare);
  return words.replace(/[^a-z0-9]/g, "");
}

const BY_PLAIN: ReadonlyMap<string, Heading> = new Map(
  HEADINGS.flatMap((heading) => [heading.name, ...heading.also].map((name) => [plainHeading(name), heading] as const)),
);

/** The heading that a text stands for. */
export function findHeading(text: string): Heading | undefined {
  return BY_PLAIN.get(plainHeading(text));
}

const GROUPS_OF_KEYS: Readonly<Record<string, string>> = {
  template: "template.thickness",
  rods: "rods.diameter",
  pattern: "pattern.kind",
  "template.hole": "hole",
  "basePlate.hole": "baseHole",
  "basePlate.washer": "washer",
};

/** The heading under which a key of the job file stands; null where no column has it. */
export function headingOf(path: readonly PropertyKey[]): string | null {
  const key = path.filter((step) => typeof step !== "number" && step !== "groups").join(".");
  return HEADINGS.find((heading) => heading.key === (ownValue(GROUPS_OF_KEYS, key) ?? key))?.name ?? null;
}
