/** The columns of a schedule, as data: heading, other ways of writing it, place in the job file, form of the cells. */
import { ownValue } from "../diagnostics/own-value.js";
import type { PatternColumn } from "../patterns/index.js";
import { PATTERN_COLUMNS, PATTERN_SYNONYMS } from "../patterns/index.js";
import { headingWords } from "./heading-words.js";
import type { FormName } from "./model.js";

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
  /** What its cells hold, for the written grammar. */
  readonly formName: FormName;
  /** What prints write for the words of its cells -> the word. */
  readonly words?: Readonly<Record<string, string>>;
  /** What to write, with an example. */
  readonly example: string;
}

type Words = Readonly<Record<string, string>>;

const finish: Words = { hdg: "galvanized", galv: "galvanized", galvanised: "galvanized", black: "plain" };
const yesNo: Words = { y: "yes", n: "no" };
const galvanized: Words = { y: "galvanized", yes: "galvanized", x: "galvanized", n: "plain", no: "plain", ...finish };
const nut: Words = { heavy: "heavy hex", "hvy hex": "heavy hex" };
const use: Words = {
  "setting plate": "template left as setting plate",
  "over cast rods": "setting plate over cast rods",
};
const levelling: Words = { "leveling nuts": "nuts", "levelling nuts": "nuts", nut: "nuts" };

function base(name: string, key: string, formName: FormName, example: string, ...also: string[]): Heading {
  return { name, key, formName, example, also, scope: "base", measure: "none" };
}

function group(name: string, key: string, formName: FormName, example: string, ...also: string[]): Heading {
  return { ...base(name, key, formName, example, ...also), scope: "group" };
}

function length(heading: Heading): Heading {
  return { ...heading, measure: "length" };
}

function lengths(heading: Heading): Heading {
  return { ...heading, measure: "lengths" };
}

function worded(heading: Heading, words: Words = {}): Heading {
  return { ...heading, words };
}

/** What the cells of a pattern's column hold -> how they are read. */
const PATTERN_CELLS: Readonly<Record<PatternColumn["cell"], Pick<Heading, "formName" | "measure" | "words">>> = {
  length: { formName: "spacing", measure: "length" },
  text: { formName: "count", measure: "none" },
  word: { formName: "word", measure: "none", words: {} },
  "yes or no": { formName: "yesNo", measure: "none", words: yesNo },
  lengths: { formName: "lengths", measure: "lengths" },
  points: { formName: "points", measure: "lengths" },
};

function patternHeadings(): readonly Heading[] {
  return [...PATTERN_COLUMNS].flatMap(([column, key]): Heading[] => {
    const { name, also, example, cell, hasPitch } = column;
    const cells = PATTERN_CELLS[cell];
    const plain: Heading = { name, also, example, key: `pattern.${key}`, scope: "group", ...cells };
    if (cell === "length" && hasPitch === undefined) return [{ ...plain, formName: "length" }];
    if (hasPitch === undefined) return [plain];
    const pitch = { name: `Pitch ${name}`, also: [], example: "6", key: `pattern.pitch.${key}` };
    return [plain, { ...plain, ...pitch, formName: "pitch" }];
  });
}

/** Every heading that is known, in the order of the starting spreadsheet. */
export const HEADINGS: readonly Heading[] = [
  base("Mark", "mark", "mark", "B1", "Base", "Base mark", "Piece mark"),
  base("Qty", "quantity", "count", "6", "No. of bases", "Base qty"),
  worded(base("Member", "member", "word", "column")),
  base("Kind", "kind", "text", "heavy", "Kind of base"),
  base("Delivery", "delivery", "text", "pour 2", "Pour", "Truck"),
  group("Rods", "rods", "rods", '(4) 1" x 2\'-0"'),
  group("Rod count", "rods.count", "count", "4", "No. of rods"),
  length(group("Rod dia", "rods.diameter", "rod", "1-1/4", "Rod size", "Anchor rod dia")),
  worded(group("Thread", "rods.thread", "text", "UNC", "Thread series")),
  group("Rod material", "rods", "material", "F1554 55 galvanized"),
  group("Grade", "rods.grade", "grade", "55", "Rod grade"),
  worded(group("Finish", "rods.finish", "finish", "galvanized", "Rod finish", "Coating"), finish),
  worded(group("Galvanized", "rods.finish", "word", "yes", "Rods galvanized"), galvanized),
  length(group("Zinc growth", "rods.zincGrowth", "length", "0.007")),
  worded(group("Nut", "rods.nut", "nut", "heavy hex", "Nuts"), nut),
  worded(group("Torqued", "rods.torqued", "yesNo", "no"), yesNo),
  worded(group("Welded", "rods.welded", "yesNo", "no"), yesNo),
  worded(group("Weldable", "rods.weldable", "yesNo", "no"), yesNo),
  length(group("Projection", "rods.projection", "length", "9", "Proj", "Rod projection")),
  length(group("Embedment", "rods.embedment", "length", "24", "Embed", "Rod embedment")),
  length(group("Rod length", "rods.length", "length", "36", "Overall length")),
  length(group("Threads", "rods.threads", "length", "8", "Thread length", "Top thread")),
  length(group("Bottom threads", "rods.bottomThreads", "length", "4", "Lower thread")),
  lengths(group("Bottom", "rods.bottom", "bottom", "nut; straight; plate 3 x 1/2; hook 4; swedged 6", "Bottom end")),
  length(group("Stick-out", "rods.stickOut", "length", "1/4")),
  length(group("Wrench room", "rods.wrenchRoom", "length", "3-1/2", "Socket room")),
  worded(group("Pattern", "pattern.kind", "word", "rectangle", "Pattern kind"), PATTERN_SYNONYMS),
  lengths(group("Pattern size", "pattern", "pattern", "12 x 10")),
  lengths(group("Pattern pitch", "pattern.pitch", "pattern", "6 x 6")),
  ...patternHeadings(),
  lengths(base("Base plate size", "basePlate", "plate", "18 x 16 x 1-1/2")),
  length(base("Base plate X", "basePlate.x", "length", "18", "Plate X", "BP X")),
  length(base("Base plate Y", "basePlate.y", "length", "16", "Plate Y", "BP Y")),
  length(base("Base plate dia", "basePlate.diameter", "length", "30", "Plate dia", "BP dia")),
  lengths(base("Base plate at", "basePlate.at", "point", "0, 3", "Plate at")),
  lengths(base("Base plate corner", "basePlate.corner", "corner", "round 1", "Plate corner")),
  length(base("Base plate thk", "basePlate.thickness", "thickness", "1-1/2", "Plate thk", "BP thk")),
  length(group("Base plate hole", "baseHole", "hole", "2-1/16", "Plate hole", "BP hole")),
  length(group("Edge distance", "check.edge", "length", "3", "Edge dist")),
  length(group("Edge X", "check.edgeX", "length", "3")),
  length(group("Edge Y", "check.edgeY", "length", "3")),
  lengths(group("Washer", "washer", "washer", "square 3 x 1/2; F844 wide", "Plate washer")),
  lengths(base("Second source", "basePlate.pattern", "holes", "2-1/16: -6,5; 6,5; 6,-5; -6,-5", "Base plate pattern")),
  lengths(base("Base plate grout holes", "basePlate.groutHoles", "holes", "3: 0,0", "Base plate air holes")),
  lengths(base("Column", "column", "section", "wide flange 12 x 8 x 5/8 x 3/8 along y", "Column shape")),
  lengths(base("Pier size", "concrete", "pier", "24 x 24")),
  length(base("Pier X", "concrete.x", "length", "24", "Concrete X")),
  length(base("Pier Y", "concrete.y", "length", "24", "Concrete Y")),
  length(base("Pier dia", "concrete.diameter", "length", "36", "Concrete dia")),
  lengths(base("Pier at", "concrete.at", "point", "0, 3", "Concrete at")),
  lengths(base("Pier corner", "concrete.corner", "corner", "chamfer 3/4", "Concrete corner")),
  length(base("Pier depth", "concrete.depth", "length", "48", "Concrete depth")),
  worded(base("Exposure", "concrete.exposure", "word", "against ground")),
  length(base("T.O.C.", "check.topOfConcrete", "elevation", "99'-6\"", "Top of concrete")),
  length(base("B.O.P.", "check.bottomOfPlate", "elevation", "99'-8\"", "Bottom of plate")),
  length(base("Grout", "grout", "thickness", "1-1/2", "Grout gap", "Grout thk")),
  worded(base("Levelling", "levelling", "word", "nuts", "Leveling"), levelling),
  base("Template mark", "template.mark", "text", "T1", "Tmpl mark"),
  base("Template qty", "template.quantity", "count", "2", "Tmpl qty"),
  worded(base("Use", "template.use", "word", "template", "Template use"), use),
  worded(base("Support", "template.support", "word", "form", "Template support"), { forms: "form", bearer: "bearers" }),
  worded(base("Material", "template.material", "word", "steel", "Template material"), { ply: "plywood" }),
  base("Template grade", "template.grade", "text", "A36", "Tmpl grade"),
  length(base("Template thk", "template.thickness", "thickness", "1/4", "Tmpl thk")),
  length(group("Template hole", "hole", "hole", "1-5/16", "Tmpl hole")),
  lengths(
    base(
      "Outline",
      "template.outline",
      "outline",
      "20 x 18; dia 30; ring 30 / 20; auto",
      "Template outline",
      "Template size",
    ),
  ),
  lengths(base("Corner", "template.outline.corner", "corner", "chamfer 1", "Template corner")),
  lengths(base("Opening", "template.opening", "opening", "dia 6; 8 x 6 r 1; auto", "Template opening")),
  worded(base("Key", "template.key", "word", "auto")),
  length(base("Template height", "template.height", "length", "3")),
  lengths(base("Nails", "template.nails", "holes", "1/8: -9,8; 9,8", "Nail holes")),
  lengths(base("Grout holes", "template.groutHoles", "holes", "3: 0,0", "Air holes")),
  base("Note", "note", "note", "brace frame", "Remarks"),
];

/** The plain spelling of a heading, whatever its case, punctuation, spacing, abbreviations, and what stands in brackets. */
export function plainHeading(text: string): string {
  return headingWords(text).words.join("");
}

/** Every heading by its names, in plain spelling. */
export const OWN_NAMES: ReadonlyMap<string, Heading> = new Map(
  HEADINGS.flatMap((heading) => [heading.name, ...heading.also].map((name) => [plainHeading(name), heading] as const)),
);

const BY_NAME: ReadonlyMap<string, Heading> = new Map(HEADINGS.map((heading) => [heading.name, heading]));

/** The heading of that name; undefined for none of ours. */
export function headingNamed(name: string): Heading | undefined {
  return BY_NAME.get(name);
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
