/** The words of a heading in one spelling: `A.B. Ø`, `ANCHOR ROD DIAM.` and `Dia of holding-down bolts` are all `rod dia`. */
import { ownValue } from "../diagnostics/own-value.js";

/** What a schedule has columns about; each is one word of a heading in its plain spelling. */
export const SUBJECTS = [
  "rod",
  "plate",
  "pier",
  "footing",
  "template",
  "setting",
  "column",
  "grout",
  "el",
  "nut",
  "washer",
  "hole",
] as const;

/** A thing that a schedule has columns about. */
export type Subject = (typeof SUBJECTS)[number];

/** Several words that are one, longest first where one holds another: written with the plain spelling of each word. */
const PHRASES: readonly (readonly [plain: string, ...written: readonly string[]])[] = [
  ["toc", "top of concrete", "to concrete", "t concrete", "top concrete", "top of conc pier", "to conc pier"],
  ["toc", "top of pier", "to pier", "t pier", "top pier", "top of plinth"],
  ["bop", "bottom of base plate", "bottom of plate", "bottom base plate", "bo plate", "bo base plate"],
  ["bop", "underside of base plate", "underside of plate", "underside base plate", "underside plate", "us of plate"],
  ["bop", "us of base plate", "us base plate", "us plate", "u s of base plate", "u s base plate", "u s plate"],
  ["rod circle", "bolt circle", "pitch circle", "bc", "bcd", "pcd"],
  ["rod", "anchor rod", "anchor bolt", "anch rod", "anch bolt", "anc rod", "anc bolt", "a rod", "a bolt"],
  [
    "rod",
    "holding down bolt",
    "holding down rod",
    "holding down",
    "hold down bolt",
    "hd bolt",
    "h d bolt",
    "hdb",
    "hd",
  ],
  ["rod", "foundation bolt", "foundation rod", "anchor", "bolt", "ar", "ab"],
  ["setting", "setting plate", "leveling plate", "level plate", "lvlg plate"],
  ["washer", "plate washer", "washer plate"],
  ["plate", "base plate", "bp", "bpl", "b plate"],
  ["template", "setting template", "rod template"],
  ["pier", "concrete pier", "pier concrete", "concrete"],
  ["base", "column base"],
  ["spacing", "center to center", "center center", "ctr to ctr", "c to c", "on center", "cc", "oc"],
  ["size", "out to out"],
  ["length", "lg overall"],
];

/** One word -> its plain spelling, or several words. */
const WORDS: Readonly<Record<string, string>> = {
  anch: "anchor",
  anchors: "anchor",
  anchorage: "anchorage",
  rods: "rod",
  bolts: "bolt",
  blt: "bolt",
  blts: "bolt",
  diameter: "dia",
  diam: "dia",
  diamtr: "dia",
  thickness: "thk",
  thick: "thk",
  thkns: "thk",
  thknss: "thk",
  tk: "thk",
  quantity: "qty",
  quan: "qty",
  quant: "qty",
  qnty: "qty",
  number: "no",
  numbers: "no",
  num: "no",
  nos: "no",
  nr: "no",
  required: "reqd",
  req: "reqd",
  lengths: "length",
  lgth: "length",
  lngth: "length",
  len: "length",
  lg: "length",
  lng: "length",
  projection: "projection",
  proj: "projection",
  projn: "projection",
  embedment: "embedment",
  embedded: "embedment",
  embed: "embedment",
  embd: "embedment",
  emb: "embedment",
  embt: "embedment",
  abv: "above",
  height: "height",
  ht: "height",
  hgt: "height",
  width: "width",
  wd: "width",
  wdth: "width",
  breadth: "width",
  depth: "depth",
  dp: "depth",
  dpth: "depth",
  gage: "spacing",
  gages: "spacing",
  gauge: "spacing",
  gauges: "spacing",
  ga: "spacing",
  spa: "spacing",
  spc: "spacing",
  spcg: "spacing",
  spac: "spacing",
  spacings: "spacing",
  crs: "spacing",
  ctrs: "spacing",
  cntrs: "spacing",
  centers: "spacing",
  centres: "spacing",
  centre: "center",
  pitches: "pitch",
  grade: "grade",
  gr: "grade",
  grd: "grade",
  matl: "material",
  mtl: "material",
  materials: "material",
  spec: "material",
  specification: "material",
  fin: "finish",
  coat: "finish",
  coating: "finish",
  galvanised: "galvanized",
  galv: "galvanized",
  galvd: "galvanized",
  hdg: "galvanized",
  washers: "washer",
  wshr: "washer",
  wash: "washer",
  nuts: "nut",
  holes: "hole",
  mk: "mark",
  mks: "mark",
  mrk: "mark",
  marks: "mark",
  remark: "note",
  remarks: "note",
  rmks: "note",
  comment: "note",
  comments: "note",
  notes: "note",
  plates: "plate",
  pl: "plate",
  pls: "plate",
  plt: "plate",
  baseplate: "base plate",
  baseplates: "base plate",
  columns: "column",
  col: "column",
  cols: "column",
  stanchion: "column",
  stanchions: "column",
  direction: "dir",
  dirn: "dir",
  piers: "pier",
  pedestal: "pier",
  pedestals: "pier",
  ped: "pier",
  plinth: "pier",
  plinths: "pier",
  concrete: "concrete",
  conc: "concrete",
  footings: "footing",
  ftg: "footing",
  ftgs: "footing",
  fdn: "footing",
  fnd: "footing",
  foundation: "footing",
  templates: "template",
  templ: "template",
  tmpl: "template",
  tmplt: "template",
  grt: "grout",
  grouting: "grout",
  elevation: "el",
  elevations: "el",
  elev: "el",
  elevs: "el",
  els: "el",
  rl: "el",
  elv: "el",
  leveling: "levelling",
  levels: "level",
  lvl: "level",
  lvls: "level",
  bottom: "bottom",
  bot: "bottom",
  bott: "bottom",
  btm: "bottom",
  threaded: "thread",
  thd: "thread",
  thds: "threads",
  thrd: "thread",
  distance: "dist",
  section: "section",
  sect: "section",
  dimension: "size",
  dimensions: "size",
  dims: "size",
  dim: "size",
  sizes: "size",
  nominal: "",
  nom: "",
  specified: "",
  std: "",
  standard: "",
  typ: "",
  typical: "",
  the: "",
  underside: "underside",
  soffit: "underside",
  top: "top",
  corners: "corner",
  bases: "base",
  pattern: "pattern",
  layout: "pattern",
  arrangement: "pattern",
  counts: "count",
  deep: "depth",
  wide: "width",
  high: "height",
  long: "length",
};

const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/[\u2300\u00d8\u00f8\u2205\u03a6\u03c6]/gu, " dia "],
  [/\bu\s*\/\s*s\b/g, " underside "],
  [/\bb\s*\/\s*(?=pl)/g, " bslash "],
  [/\bc\s*[/-]\s*c\b|\bc\.\s*to\s*c\b\.?/g, " cc "],
  [/\b(?:[a-z]\.){2,}(?![a-z]\b)/g, " $& "],
  [/(?<=\b[a-z])\.(?=[a-z]\b)/g, ""],
  [/['\u2019]/g, ""],
  [/#/g, " no "],
  [/&|\+/g, " and "],
];
const UNITS = new Set(["in", "inch", "inches", "ins", "mm", "cm", "ft", "feet", "foot"]);
const MOST_LETTERS = 120;

/** A heading's own words and those that stand in its brackets, in plain spelling. Units in brackets or at the end are left out. */
export interface HeadingWords {
  readonly words: readonly string[];
  readonly inBrackets: readonly string[];
}

/** The words of a heading; of a very long text none, since it is no heading. */
export function headingWords(text: string): HeadingWords {
  if (text.length > MOST_LETTERS) return { words: [], inBrackets: [] };
  const brackets = [...text.matchAll(/[([]([^()[\]]*)[)\]]/g)].map(([, inner = ""]) => inner);
  return {
    words: plainWords(text.replace(/[([][^()[\]]*[)\]]/g, " ")),
    inBrackets: plainWords(brackets.join(" ")),
  };
}

/** A text in plain spelling, word by word. */
export function plainWords(text: string): readonly string[] {
  const signed = SIGNS.reduce((line, [sign, word]) => line.replace(sign, word), text.normalize("NFKC").toLowerCase());
  const pieces = signed.split(/[^a-z0-9]+/).filter((piece) => piece !== "");
  const words = withoutUnit(pieces).flatMap((piece) => {
    const plain = ownValue(WORDS, piece) ?? piece;
    return plain === "" ? [] : plain.split(" ");
  });
  return joinPhrases(words.map((word, at) => (word === "no" && words[at + 1] === "of" ? "qty" : word)));
}

/** `EMBED, IN.` and `PROJECTION MM`: the last words are a unit. */
function withoutUnit(pieces: readonly string[]): readonly string[] {
  const last = pieces.findLastIndex((piece) => !UNITS.has(piece));
  return pieces.slice(0, last + 1);
}

type Phrase = readonly [words: readonly string[], plain: readonly string[]];

const BY_FIRST: ReadonlyMap<string, readonly Phrase[]> = indexPhrases();

function indexPhrases(): ReadonlyMap<string, readonly Phrase[]> {
  const phrases = PHRASES.flatMap(([plain, ...written]) =>
    written.map((text): Phrase => [text.split(" ").map((word) => ownValue(WORDS, word) ?? word), plain.split(" ")]),
  );
  const longestFirst = phrases.toSorted(([a], [b]) => b.length - a.length);
  const firsts = new Set(phrases.map(([[first = ""]]) => first));
  return new Map([...firsts].map((first) => [first, longestFirst.filter(([words]) => words[0] === first)]));
}

function joinPhrases(words: readonly string[]): readonly string[] {
  const joined: string[] = [];
  for (let at = 0; at < words.length; ) {
    const found = BY_FIRST.get(words[at] ?? "")?.find(([phrase]) => phrase.every((word, i) => words[at + i] === word));
    for (const word of found?.[1] ?? [words[at] ?? ""]) joined.push(word);
    at += found?.[0].length ?? 1;
  }
  return joined;
}

/** True for a word that names a thing that a schedule has columns about. */
export function isSubject(word: string): word is Subject {
  return SUBJECTS.some((subject) => subject === word);
}
