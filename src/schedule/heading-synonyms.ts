/**
 * What prints write over their columns, as data: the thing that a column is about, the words, and what they may stand for.
 * All of it is the trade's general usage, from memory (common practice); no published list of headings exists.
 */
import type { Subject } from "./heading-words.js";

/** A heading of the registry by its name, or `note`: the column is none of ours and is kept as a note of the base. */
export type HeadingName = string;

/** What a column may be instead of one of ours. */
export const NOTE = "note";

/** An answer for a column of one length a base: the gauge of the rods both ways. */
export const SQUARE = "square";

/** Why words have several meanings, and so what may settle which. */
export type Doubt =
  /** Cells of the one form cannot be of the other. */
  | "form"
  /** The same, but asked where no cell is plainly of the form. */
  | "shown"
  /** The same thing in one value or several: the first that fits every cell. */
  | "narrowest"
  | "bases or rods"
  | "rods or bases"
  | "overall or pitch"
  | "x or y"
  | "which length"
  | "which hole"
  | "which diameter"
  | "which mark"
  | "which count"
  | "which grade"
  | "footing or pier"
  | "only asked";

/** Ways of writing that have the same meanings. */
export interface Synonym {
  /** The thing: named in the heading itself, or in the group over it. "" where none is named. */
  readonly of: Subject | "";
  /** `""` is the thing's name alone. */
  readonly words: readonly string[];
  readonly means: readonly [HeadingName, ...HeadingName[]];
  /** Set where there are several meanings. */
  readonly doubt?: Doubt;
  /** Set where the words mean this only below a group that names the thing. */
  readonly isGrouped?: true;
}

/** Words of one thing with one meaning. */
export function one(of: Subject | "", means: HeadingName, ...words: readonly string[]): Synonym {
  return { of, words, means: [means] };
}

/** Words of one thing with several meanings. */
export function several(
  of: Subject | "",
  doubt: Doubt,
  means: readonly [HeadingName, ...HeadingName[]],
  ...words: readonly string[]
): Synonym {
  return { of, words, means, doubt };
}

function grouped(synonym: Synonym): Synonym {
  return { ...synonym, isGrouped: true };
}

const BASE: readonly Synonym[] = [
  one("", "Mark", "mark", "piece mark", "base mark", "mark no.", "base no.", "base id", "base"),
  several("plate", "which mark", ["Mark", NOTE], "mark", "mk no.", "id", "ref"),
  several("", "which mark", ["Mark", NOTE], "ref", "ref no.", "base ref", "reference", "mark ref"),
  several(
    "",
    "which mark",
    ["Mark", NOTE],
    "pos",
    "pos no.",
    "position",
    "item",
    "item no.",
    "tag",
    "tag no.",
    "label",
    "symbol",
    "designation",
    "id",
    "name",
  ),
  several("column", "which mark", ["Mark", NOTE], "mark", "no.", "id", "ref", "base mark"),
  several("", "which mark", ["Mark", NOTE], "grid", "grid line", "location", "loc", "grid location", "sign", "pole"),
  several("", "which mark", ["Mark", NOTE], "sign type", "pole type", "equipment", "equipment tag", "frame line"),
  several("column", "which mark", ["Mark", NOTE], "location", "loc", "grid", "grid location", "line"),
  several("pier", "which mark", ["Mark", NOTE], "mark", "no.", "id", "type"),
  several("footing", "which mark", ["Mark", NOTE], "mark", "no.", "id", "type"),
  several("", "which mark", ["Mark", "Pattern", "Column", "Kind", NOTE], "type", "base type", "type mark"),
  several("plate", "which mark", ["Mark", "Kind", NOTE], "type"),
  several("", "which count", ["Mark", "Qty", "Rod count", NOTE], "no.", "number"),
  several("", "bases or rods", ["Qty", "Rod count"], "qty", "no. req'd", "qty req'd", "no. off", "no. of"),
  one("", "Qty", "base qty", "no. of bases", "qty of bases", "bases req'd", "no. of bases req'd", "no. thus"),
  one("", "Qty", "no. bases", "qty bases"),
  one("column", "Qty", "qty", "qty req'd", "no. req'd"),
  several("plate", "bases or rods", ["Qty", NOTE], "qty", "qty req'd", "no. req'd"),
  one("", "Kind", "kind", "base kind"),
  several("", "form", ["Member", "Column"], "member"),
  one("", "Member", "member kind"),
  one("", "Note", "note", "general note"),
  one("", "Delivery", "delivery", "delivery no.", "truck", "truck no.", "pour", "pour no."),
];

const RODS: readonly Synonym[] = [
  several("rod", "form", ["Rods", "Rod count"], ""),
  several("rod", "narrowest", ["Rod dia", "Rods"], "size", "dia", "thread size", "size and length", "dia and length"),
  several(
    "rod",
    "narrowest",
    ["Rods", "Rod dia"],
    "qty and size",
    "no. and size",
    "no. size",
    "qty size",
    "size and qty",
  ),
  one("rod", "Rod dia", "m size", "m"),
  one("", "Rod dia", "m size", "thread size"),
  grouped(several("rod", "only asked", ["Rod dia", "Embedment", NOTE], "d")),
  one("rod", "Rods", "dia and grade", "size and grade", "dia grade", "size grade", "no. dia"),
  one("rod", "Rods", "qty and dia", "no. and dia", "qty dia", "description", "qty size and length", "callout"),
  several("rod", "narrowest", ["Rods", "Rod dia"], "qty size length", "no. dia and length"),
  one("", "Rods", "no. and size", "qty and size"),
  several("", "which diameter", ["Rod dia", "Base plate hole", "Template hole", "Bolt circle", NOTE], "dia"),
  several("", "which diameter", ["Rod dia", "Rods", "Base plate size", "Pier size", "Column", NOTE], "size"),
  one("rod", "Rod count", "qty", "count", "qty req'd", "no. req'd", "no. off", "per base", "per column", "per plate"),
  several("rod", "form", ["Rod count", NOTE], "no."),
  several("rod", "only asked", ["Rod count", "nx", "ny", NOTE], "per side", "each side", "per face", "each face"),
  one("rod", "Rod count", "qty per base", "no. per base", "qty per column", "no. per column", "qty per plate"),
  one("", "Rod count", "qty per base", "no. per base", "rods per base plate"),
  one("", "Rod count", "no. of rods per base", "no. rods per base", "no. rods per column", "no. of rods per column"),
  grouped(
    several("rod", "rods or bases", ["Rod count", "Qty"], "qty", "no.", "count", "qty req'd", "no. req'd", "no. off"),
  ),
  several(
    "rod",
    "narrowest",
    ["Grade", "Rod material"],
    "grade",
    "astm grade",
    "class",
    "property class",
    "strength grade",
  ),
  several("", "narrowest", ["Grade", "Rod material"], "F1554 grade", "ASTM F1554", "F1554", "bolt class"),
  several(
    "",
    "which grade",
    ["Grade", "Rod material", NOTE],
    "grade",
    "material grade",
    "steel grade",
    "class",
    "astm",
  ),
  several(
    "rod",
    "narrowest",
    ["Rod material", "Grade"],
    "material",
    "material grade",
    "astm",
    "grade and finish",
    "steel",
  ),
  several("", "which grade", ["Material", "Rod material", NOTE], "material"),
  one("template", "Material", "material"),
  one("rod", "Finish", "finish"),
  one("", "Finish", "finish"),
  one("", "Galvanized", "galvanized"),
  one("rod", "Galvanized", "galvanized"),
  several("nut", "form", ["Nut", NOTE], "", "type", "size"),
  several("rod", "form", ["Nut", NOTE], "nut", "nut type"),
  one("", "Projection", "projection", "projection above toc", "projection above concrete", "height above toc"),
  one(
    "rod",
    "Projection",
    "projection",
    "projection above toc",
    "projection length",
    "height above toc",
    "top projection",
  ),
  one("", "Embedment", "embedment", "embedment length", "embedment depth", "min embedment", "length embedment", "hef"),
  one("rod", "Embedment", "embedment", "embedment length", "embedment depth", "min embedment", "length embedment"),
  one("", "Embedment", "embedment below toc", "depth of embedment"),
  one("rod", "Embedment", "embedment below toc"),
  one("rod", "Rod length", "length", "overall length", "total length", "oal", "oa length", "length oa"),
  one("", "Rod length", "overall length", "oal", "oa length", "length oa"),
  grouped(one("rod", "Rod length", "l")),
  several(
    "",
    "which length",
    ["Rod length", "Base plate X", "Base plate Y", "Pier X", "Pier Y", NOTE],
    "length",
    "l",
    "total length",
  ),
  one("", "Threads", "thread length", "length thread", "top thread", "top thread length", "thread length top"),
  one("rod", "Threads", "threads", "thread length", "length thread", "top thread", "top thread length"),
  one("", "Bottom threads", "bottom thread", "bottom thread length", "thread length bottom", "lower thread"),
  one("rod", "Bottom threads", "bottom thread", "bottom thread length", "thread length bottom", "lower thread"),
  several("", "form", ["Thread", "Threads"], "thread"),
  several("rod", "form", ["Thread", "Threads"], "thread"),
  one("", "Thread", "thread series", "thread type"),
  one("rod", "Thread", "thread series", "thread type"),
  several("", "form", ["Bottom", "B.O.P.", NOTE], "bottom"),
  one("", "Bottom", "bottom end"),
  one("rod", "Bottom", "bottom", "bottom end", "end condition", "embedment end", "end"),
  several("", "form", ["B.O.P.", "Bottom", NOTE], "bottom plate"),
  one("", "Stick-out", "stick-out", "stickout"),
  one("", "Wrench room", "wrench room", "socket room"),
  several("", "form", ["Weldable", NOTE], "S1"),
];

/** `SPACING X`, `C/C DISTANCE ALONG X-X`, with the words of a spacing in their plain spelling. */
function spacingsAlong(of: "" | "rod", axis: "x" | "y", means: Synonym["means"]): Synonym {
  const where = [axis, `in ${axis}`, `along ${axis}`, `in ${axis} dir`];
  const behind = ["spacing", "spacing dist"].flatMap((words) => where.map((ends) => `${words} ${ends}`));
  const words = [...behind, `${axis} spacing`, `spacing cc ${axis}`, `spacing ${axis} dir`];
  return { of, words, means, doubt: "overall or pitch" };
}

/** Spacings by a direction that the sheet's sketch shows, and the words do not. */
const NAMED_SPACINGS = [
  "spacing l",
  "spacing w",
  "spacing length",
  "spacing width",
  "spacing 1",
  "spacing 2",
  "spacing a",
  "spacing b",
  "spacing n s",
  "n s spacing",
  "g1",
  "g2",
] as const;

/** `E.W.` is east to west, or each way. */
const EAST_WEST_SPACINGS = ["spacing e w", "e w spacing", "spacing ew"] as const;

const EITHER_AXIS = ["X", "Y", "Pitch X", "Pitch Y"] as const;

const PATTERN: readonly Synonym[] = [
  several("", "form", ["Pattern", "Pattern size"], "pattern"),
  several("rod", "form", ["Pattern", "Pattern size"], "pattern"),
  one("", "Pattern", "pattern kind"),
  several(
    "",
    "overall or pitch",
    ["Pattern size", "Pattern pitch"],
    "spacing",
    "spacing cc",
    "spacing x y",
    "spacing x x y",
    "spacing x and y",
  ),
  several(
    "rod",
    "overall or pitch",
    ["Pattern size", "Pattern pitch"],
    "spacing",
    "spacing cc",
    "spacing x y",
    "spacing x x y",
    "group size",
  ),
  several("", "shown", ["Pattern pitch", NOTE], "pitch"),
  several("rod", "shown", ["Pattern pitch", NOTE], "pitch"),
  one("", "Pattern pitch", "pitch x y"),
  one("rod", "Pattern pitch", "pitch x y"),
  one("", "Pattern size", "overall spacing", "spacing overall"),
  one("rod", "Pattern size", "overall spacing", "spacing overall", "pattern size", "pattern x y", "pattern x x y"),
  one("", "Pattern size", "pattern x y", "pattern x x y"),
  spacingsAlong("", "x", ["X", "Pitch X"]),
  spacingsAlong("", "y", ["Y", "Pitch Y"]),
  several("rod", "overall or pitch", ["X", "Pitch X"], "x"),
  spacingsAlong("rod", "x", ["X", "Pitch X"]),
  several("rod", "overall or pitch", ["Y", "Pitch Y"], "y"),
  spacingsAlong("rod", "y", ["Y", "Pitch Y"]),
  several("", "overall or pitch", ["X", "Pitch X"], "gx"),
  several("", "overall or pitch", ["Y", "Pitch Y"], "gy"),
  several("rod", "overall or pitch", ["X", "Pitch X"], "gx"),
  several("rod", "overall or pitch", ["Y", "Pitch Y"], "gy"),
  { of: "rod", words: EAST_WEST_SPACINGS, means: [...EITHER_AXIS, SQUARE], doubt: "only asked" },
  { of: "", words: EAST_WEST_SPACINGS, means: [...EITHER_AXIS, SQUARE], doubt: "only asked" },
  { of: "rod", words: NAMED_SPACINGS, means: EITHER_AXIS, doubt: "only asked" },
  { of: "", words: [...NAMED_SPACINGS, "n s", "e w"], means: EITHER_AXIS, doubt: "only asked" },
  one("", "Pitch X", "pitch x", "x pitch"),
  one("", "Pitch Y", "pitch y", "y pitch"),
  one("rod", "Pitch X", "pitch x", "x pitch"),
  one("rod", "Pitch Y", "pitch y", "y pitch"),
  one("", "X", "x", "overall x", "x overall", "pattern x", "spacing overall x", "overall spacing x"),
  one("", "Y", "y", "overall y", "y overall", "pattern y", "spacing overall y", "overall spacing y"),
  one("rod", "X", "pattern x", "overall x", "spacing overall x", "overall spacing x"),
  one("rod", "Y", "pattern y", "overall y", "spacing overall y", "overall spacing y"),
  one("", "nx", "nx", "rods in x", "count x", "no. in x", "qty in x", "no. x"),
  one("", "ny", "ny", "rods in y", "count y", "no. in y", "qty in y", "no. y"),
  one("rod", "nx", "in x", "no. in x", "qty in x", "no. x", "count x", "nx"),
  one("rod", "ny", "in y", "no. in y", "qty in y", "no. y", "count y", "ny"),
  one("", "Bolt circle", "bolt circle", "bolt circle dia", "dia bolt circle", "bc dia"),
  several("", "which count", ["Count", "Rod count", "Qty"], "count"),
  one("", "Count", "rods on circle", "bolt circle qty", "bolt circle no.", "bolt circle count"),
  one("", "Points", "points", "rod points", "coordinates", "rod coordinates"),
];

const PLATE: readonly Synonym[] = [
  several("plate", "form", ["Base plate size", "Base plate thk", NOTE], ""),
  one("plate", "Base plate size", "size", "l x w x t", "w x l x t", "b x l x t", "b x n x t", "n x b x t", "l w t"),
  one(
    "plate",
    "Base plate size",
    "size l x w x t",
    "size w x l x t",
    "size b x n x t",
    "size n x b x t",
    "size and thk",
  ),
  one("plate", "Base plate size", "l x w", "w x l", "size l x w", "b x n", "n x b", "x x y x t", "size t x w x l"),
  one(
    "plate",
    "Base plate size",
    "t x b x n",
    "t x n x b",
    "t x w x l",
    "t x l x w",
    "size t x b x n",
    "size t x l x w",
  ),
  one("plate", "Base plate X", "x", "size x", "x size"),
  one("plate", "Base plate Y", "y", "size y", "y size"),
  several("plate", "x or y", ["Base plate X", "Base plate Y"], "length", "l", "width", "w", "b", "n", "depth", "d"),
  one("plate", "Base plate dia", "dia"),
  one("plate", "Base plate thk", "thk", "t", "tp"),
  one("", "Base plate thk", "tp"),
  several("", "only asked", ["Base plate thk", "Template thk", "Grout", NOTE], "thk", "t"),
  several("", "only asked", ["Base plate X", "Base plate Y", "Pier X", "Pier Y", NOTE], "width", "w", "b", "n", "d"),
  several("", "only asked", ["Embedment", "Pier depth", "Base plate X", "Base plate Y", NOTE], "depth"),
  several("", "only asked", ["Template height", "Pier depth", "Projection", NOTE], "height", "h"),
  one(
    "plate",
    "Base plate hole",
    "hole",
    "hole dia",
    "hole size",
    "dia hole",
    "rod hole",
    "rod hole dia",
    "rod hole size",
  ),
  one("", "Base plate hole", "hole in base plate", "dia of hole in base plate"),
  several("", "which hole", ["Base plate hole", "Template hole", NOTE], "hole", "hole dia", "hole size", "dia hole"),
  several("rod", "which hole", ["Base plate hole", "Template hole", NOTE], "hole", "hole dia", "hole size"),
  one("plate", "Second source", "pattern"),
  one("plate", "Base plate grout holes", "air hole"),
  one("", "Edge distance", "edge distance", "edge dist", "edge"),
  one("plate", "Edge distance", "edge distance", "edge dist", "edge"),
  one("rod", "Edge distance", "edge distance", "edge dist", "edge"),
  one("", "Edge X", "edge distance x", "edge dist x", "edge x"),
  one("", "Edge Y", "edge distance y", "edge dist y", "edge y"),
  one("plate", "Edge X", "edge distance x", "edge dist x", "edge x"),
  one("plate", "Edge Y", "edge distance y", "edge dist y", "edge y"),
  several("washer", "form", ["Washer", NOTE], "", "size", "type", "size x thk", "size and thk"),
  several("rod", "form", ["Washer", NOTE], "washer", "washer size"),
  several("plate", "form", ["Washer", NOTE], "washer", "washer size"),
];

const COLUMN: readonly Synonym[] = [
  several("column", "which mark", ["Column", "Mark", NOTE], ""),
  one("column", "Column", "size", "shape", "section", "section size"),
  several("column", "form", ["Column", NOTE], "type", "profile"),
  several("", "form", ["Column", NOTE], "section", "profile", "section size", "steel section"),
  one("", "Column", "member size", "member section"),
];

const CONCRETE: readonly Synonym[] = [
  several("pier", "form", ["Pier size", NOTE], ""),
  one("pier", "Pier size", "size", "l x w", "w x l", "b x d", "b x l", "w x d", "size l x w", "plan size"),
  one("pier", "Pier X", "x", "size x"),
  one("pier", "Pier Y", "y", "size y"),
  several("pier", "x or y", ["Pier X", "Pier Y"], "length", "l", "width", "w", "b"),
  several("pier", "only asked", ["Pier depth", "Pier X", "Pier Y", NOTE], "depth", "d"),
  one("pier", "Pier depth", "height", "h"),
  one("pier", "Pier dia", "dia"),
  several("footing", "footing or pier", ["Pier size", NOTE], "size", "l x w"),
  several("footing", "only asked", ["Pier dia", NOTE], "dia"),
  one("grout", "Grout", "", "thk", "gap", "t", "bed", "bed thk", "bedding"),
  one("", "Grout", "bedding", "bedding thk", "bedding gap", "non-shrink grout"),
];

const TEMPLATE: readonly Synonym[] = [
  several("template", "form", ["Template mark", "Template thk", "Outline"], ""),
  one("template", "Template mark", "mark", "no."),
  one("template", "Template qty", "qty", "qty req'd", "no. req'd", "no. off"),
  one("template", "Template grade", "grade", "material grade", "steel grade"),
  one("template", "Template thk", "thk", "t", "plate thk"),
  one("template", "Outline", "size", "outline", "plate size", "l x w"),
  one("template", "Template hole", "hole", "hole dia", "hole size", "rod hole", "rod hole dia", "rod hole size"),
  one("template", "Template height", "height", "height above toc"),
  one("template", "Use", "use"),
  one("template", "Corner", "corner"),
  one("template", "Opening", "opening", "center hole"),
  one("template", "Grout holes", "grout hole", "air hole"),
  several("setting", "only asked", ["Template mark", NOTE], "mark"),
  several("setting", "only asked", ["Template thk", NOTE], "thk", "t"),
  several("setting", "only asked", ["Outline", NOTE], "size"),
  several("setting", "only asked", ["Template hole", NOTE], "hole", "hole dia", "hole size"),
  several("setting", "only asked", ["Template mark", "Template thk", "Outline", NOTE], ""),
  one("", "Nails", "nail holes"),
  one("", "Grout holes", "air hole"),
  one("", "Levelling", "leveling", "levelling method"),
  one("", "Corner", "corner"),
];

const LEVELS: readonly Synonym[] = [
  one("", "T.O.C.", "toc", "toc el", "el toc", "toc level", "level toc"),
  one("", "B.O.P.", "bop", "bop el", "el bop", "bop level", "level bop"),
  one("el", "T.O.C.", "toc", "pier", "top of pier"),
  one("el", "B.O.P.", "bop"),
  one("pier", "T.O.C.", "el", "toc", "toc el", "top el", "el top"),
  several("pier", "only asked", ["T.O.C.", NOTE], "top"),
  several("plate", "only asked", ["B.O.P.", NOTE], "el", "level", "top and bottom el"),
  several("el", "only asked", ["B.O.P.", NOTE], "plate"),
  several("", "only asked", ["T.O.C.", "B.O.P.", NOTE], "el", "level"),
  several("", "only asked", ["T.O.C.", NOTE], "top", "top el", "el top", "top level"),
  several("", "only asked", ["B.O.P.", NOTE], "bottom el", "el bottom", "bottom level", "underside"),
  several("el", "only asked", ["T.O.C.", NOTE], "top"),
  several("el", "only asked", ["B.O.P.", NOTE], "bottom"),
  several("footing", "only asked", ["T.O.C.", NOTE], "el", "top", "top el", "toc", "to", "t"),
];

/** Every way of writing a heading but the registry's own names. */
export const SYNONYMS: readonly Synonym[] = [
  ...BASE,
  ...RODS,
  ...PATTERN,
  ...PLATE,
  ...COLUMN,
  ...CONCRETE,
  ...TEMPLATE,
  ...LEVELS,
];

/** Words of a group that say nothing of what its columns are about. */
export const NEUTRAL_WORDS: readonly string[] = [
  "schedule",
  "data",
  "detail",
  "details",
  "info",
  "information",
  "size",
  "requirement",
  "requirements",
  "properties",
  "general",
  "base",
  "item",
  "identification",
  "description",
  "and",
  "of",
  "no",
  "all",
  "in",
];

/** Groups whose columns are never ours, whatever stands under them. */
export const FOREIGN_WORDS: readonly string[] = [
  "reinf",
  "reinforcement",
  "reinforcing",
  "rebar",
  "rebars",
  "bar",
  "bars",
  "verticals",
  "ties",
  "tie",
  "stirrups",
  "dowel",
  "dowels",
  "load",
  "loads",
  "reaction",
  "reactions",
  "force",
  "forces",
  "existing",
  "exist",
  "future",
  "demo",
  "weld",
  "welds",
  "shear",
  "lug",
  "key",
  "cap",
  "stiffener",
  "stiffeners",
  "gusset",
  "brace",
  "bracing",
  "braced",
  "splice",
  "beam",
  "wall",
  "pile",
  "caisson",
  "alternate",
  "footing",
];
