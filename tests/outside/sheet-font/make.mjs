/**
 * `npm run fonts` writes the sheet font anew: Arimo (SIL Open Font License 1.1) in chunks for the SVG, whole for the PDF, its
 * licence, and the table of widths. The same files come out every time.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import subsetFont from "subset-font";
import { copyGlyph, readTables, writeCmap, writeTables } from "./sfnt.mjs";

const require = createRequire(import.meta.url);
const { parse } = require("opentype.js");
const root = fileURLToPath(new URL("../../..", import.meta.url));

/** Arimo as one file a weight. */
const ARIMO = {
  regular: "@expo-google-fonts/arimo/400Regular/Arimo_400Regular.ttf",
  bold: "@expo-google-fonts/arimo/700Bold/Arimo_700Bold.ttf",
};

/** What a viewer without the sheet font is led to where no font of the same widths is there: Debian's fonts-dejavu-extra. */
export const CONDENSED = {
  regular: "/usr/share/fonts/truetype/dejavu/DejaVuSansCondensed.ttf",
  bold: "/usr/share/fonts/truetype/dejavu/DejaVuSansCondensed-Bold.ttf",
};

/** Signs that Arimo lacks and a letter that is drawn alike: the diameter sign and the empty set. */
const DRAWN_AS = new Map([
  [0x2300, 0xd8],
  [0x2205, 0xd8],
]);

/** Chunks of the font by code points, as `unicode-range` has them; each code point stands in one. */
const CHUNKS = {
  core: [
    ..."20-7E A0 AB B0-B2 B1 B3 B7 BB BC-BE D7 D8".split(" "),
    ..."2011 2013 2014 2018-201A 201C-201E 2022 2026 2032 2033 2212 2264 2265 2300".split(" "),
  ],
  latin: ["A1-AA", "AC", "AE-AF", "B4-B6", "B8-BA", "BF-D6", "D9-FF"],
  "latin extended": [
    "100-17F",
    "192",
    "1A0-1A1",
    "1AF-1B0",
    "218-21B",
    "2C6-2C7",
    "2D8-2DD",
    "1E80-1E85",
    "1E9E",
    "1EA0-1EF9",
  ],
  greek: ["37E", "384-38A", "38C", "38E-3A1", "3A3-3CE"],
  cyrillic: ["400-45F", "490-493", "496-497", "49A-49D", "4A2-4A3", "4AE-4B3", "4BA-4BB", "4D8-4D9", "4E8-4E9", "2116"],
  signs: [
    ..."2009 202F 2015 2020 2021 2030 2039 203A 2044 2070 2074-2079 2080-2089 20AC 2122 2126".split(" "),
    ..."2153 2154 215B-215E 2190-2195 2202 2205 2206 220F 2211 2215 2219 221A 221E 222B 2248 2260 2261 25CA".split(" "),
  ],
};

function codesOf(ranges) {
  return ranges.flatMap((range) => {
    const [first, last = first] = range.split("-").map((code) => Number.parseInt(code, 16));
    return Array.from({ length: last - first + 1 }, (_, i) => first + i);
  });
}

const load = (path) => parse(new Uint8Array(readFileSync(path)).buffer);

/** Arimo with the letters of `codes` alone, no layout tables, no hints, and the signs that are drawn as another letter. */
async function cut(path, codes) {
  const bytes = readFileSync(path);
  const wanted = codes.map((code) => DRAWN_AS.get(code) ?? code);
  const options = {
    targetFormat: "sfnt",
    keepFeatures: [],
    noHinting: true,
    dropTables: ["gasp", "GDEF", "STAT", "GPOS", "GSUB"],
  };
  const subset = await subsetFont(bytes, String.fromCodePoint(...wanted), options);
  const tables = readTables(subset);
  const font = parse(new Uint8Array(subset).buffer);
  const known = codes.filter((code) => !DRAWN_AS.has(code));
  const glyphs = known.map((code) => [code, font.charToGlyphIndex(String.fromCodePoint(code))]);
  for (const code of codes.filter((each) => DRAWN_AS.has(each))) {
    const alike = font.charToGlyphIndex(String.fromCodePoint(DRAWN_AS.get(code)));
    glyphs.push([code, copyGlyph(tables, alike)]);
  }
  tables.set("cmap", writeCmap(glyphs));
  return Buffer.from(writeTables(tables));
}

const base64 = (bytes) => Buffer.from(bytes).toString("base64");

/** What all modules begin with. */
const NOTICE =
  "From Arimo, (c) 2020 The Arimo Project Authors, SIL Open Font License 1.1 (OFL.txt beside); written by `npm run fonts`.";

/** `0020-007E` as CSS has it. */
const cssRange = (codes) => {
  const runs = [];
  for (const code of codes) {
    const open = runs.at(-1);
    if (open !== undefined && code === open[1] + 1) open[1] = code;
    else runs.push([code, code]);
  }
  const hex = (code) => code.toString(16).toUpperCase();
  return runs.map(([first, last]) => `U+${hex(first)}${last === first ? "" : `-${hex(last)}`}`).join();
};

function widthRow(code, fonts, condensed) {
  const character = String.fromCodePoint(code);
  const drawn = String.fromCodePoint(DRAWN_AS.get(code) ?? code);
  const figures = [fonts.regular, fonts.bold].flatMap((font) => {
    const glyph = font.charToGlyph(drawn);
    const { y1, y2 } = glyph.getBoundingBox();
    return [glyph.advanceWidth, Math.floor(y1), Math.ceil(y2)];
  });
  const narrow = [condensed.regular, condensed.bold].map((font) => font.charToGlyph(character).advanceWidth);
  return [code.toString(16).padStart(4, "0"), ...figures, ...narrow].join(" ");
}

/** The files by their paths in the project; the table of widths only where both condensed fonts are installed. */
export async function makeFontFiles() {
  const paths = { regular: require.resolve(ARIMO.regular), bold: require.resolve(ARIMO.bold) };
  const fonts = { regular: load(paths.regular), bold: load(paths.bold) };
  const has = (code) => fonts.regular.charToGlyphIndex(String.fromCodePoint(DRAWN_AS.get(code) ?? code)) !== 0;
  const chunks = Object.entries(CHUNKS).map(([name, ranges]) => {
    const codes = [...new Set(codesOf(ranges))].sort((a, b) => a - b).filter(has);
    return { name, codes };
  });
  const faces = [];
  for (const { name, codes } of chunks) {
    const regular = base64(await woff2(await cut(paths.regular, codes)));
    const bold = base64(await woff2(await cut(paths.bold, codes)));
    faces.push({ name, range: cssRange(codes), regular, bold });
  }
  const all = chunks.flatMap(({ codes }) => codes).sort((a, b) => a - b);
  const regular = await cut(paths.regular, all);
  const bold = await cut(paths.bold, all);
  const files = new Map([
    ["src/formats/sheet-font/faces.ts", facesModule(faces)],
    ["src/formats/sheet-font/whole.ts", wholeModule(regular, bold)],
    ["src/formats/sheet-font/OFL.txt", readFileSync(require.resolve("@expo-google-fonts/arimo/LICENSE_FONT"), "utf8")],
  ]);
  if (!Object.values(CONDENSED).every((path) => existsSync(path))) return files;
  const condensed = { regular: load(CONDENSED.regular), bold: load(CONDENSED.bold) };
  return files.set("src/sheets/font-widths.ts", widthsModule(all, fonts, condensed));
}

async function woff2(font) {
  const { convert } = require("fontverter");
  return convert(font, "woff2");
}

function facesModule(faces) {
  const rows = faces.map(
    ({ name, range, regular, bold }) =>
      `  {\n    name: ${JSON.stringify(name)},\n${rangeLine(range)}\n    regular:\n      "${regular}",\n    bold: "${bold}",\n  },`,
  );
  return `/**
 * The sheet font in chunks, WOFF2 in base64.
 * ${NOTICE}
 */

/** Letters of one range in both weights; \`range\` as CSS has it, \`U+20-7E,U+A0\`. */
export interface FontChunk {
  readonly name: string;
  readonly range: string;
  readonly regular: string;
  readonly bold: string;
}

/** The commonest letters first; every letter of the sheet font stands in one. */
export const FONT_CHUNKS: readonly FontChunk[] = [
${rows.join("\n")}
];
`;
}

/** As the formatter sets it. */
function rangeLine(range) {
  const line = `    range: "${range}",`;
  return line.length <= 120 ? line : `    range:\n      "${range}",`;
}

function wholeModule(regular, bold) {
  return `/**
 * The sheet font whole, TrueType in base64, for writers that take its letters out themselves.
 * ${NOTICE}
 */

/** Both weights. */
export const WHOLE_FONT = {
  regular:
    "${base64(regular)}",
  bold: "${base64(bold)}",
} as const;
`;
}

function widthsModule(codes, fonts, condensed) {
  const rows = codes.map((code) => widthRow(code, fonts, condensed));
  return `/**
 * Widths and heights of the letters of the sheet font (Arimo), a line a letter: code point, then in 1/2048 em its advance,
 * lowest and highest ink, regular and bold; last the advances, regular and bold, of DejaVu Sans Condensed, to which a viewer
 * falls back that has neither the sheet font nor one of its widths. Written by \`npm run fonts\`.
 */

/** Space-separated, code points in hexadecimal. */
export const FONT_WIDTHS = \`
${rows.join("\n")}
\`;
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [path, text] of await makeFontFiles()) writeFileSync(`${root}/${path}`, text);
