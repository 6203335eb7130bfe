/** The outline of a column section by its name, where its dimensions are held or the name itself gives them. */
import type { Length } from "../units/length.js";
import { inches, millimetres } from "../units/length.js";
import { parseLength } from "../units/parse.js";
import { wShapes } from "./aisc-manual/w-shapes.js";
import { pipeDiameters } from "./asme-b36-10/pipe-diameters.js";
import { flangedSections } from "./en-10365/flanged-sections.js";
import type { FlangedRow, StandardTable } from "./model.js";

/** A section in plan. `long` and `short` are the outside sides of a tube, without its corner radii. */
export type SectionOutline =
  | ({ readonly kind: "flanged" } & Pick<FlangedRow, "depth" | "width" | "flange" | "web">)
  | { readonly kind: "tube"; readonly long: Length; readonly short: Length }
  | { readonly kind: "pipe"; readonly diameter: Length };

/** unnamed: the text is no name of a section. not held: a section whose dimensions are not held here. */
export type SectionLookup =
  | { readonly kind: "found"; readonly name: string; readonly outline: SectionOutline; readonly from: string }
  | { readonly kind: "not held"; readonly name: string }
  | { readonly kind: "unnamed" };

const FLANGED: ReadonlyMap<string, { readonly row: FlangedRow; readonly from: string }> = new Map(
  [wShapes, flangedSections].flatMap((table) => namesIn(table)),
);

function namesIn({ rows, edition, clause }: StandardTable<FlangedRow>) {
  const from = edition.startsWith("AISC") ? `${edition}, ${clause}` : edition;
  return rows.map((row) => [row.name.toUpperCase(), { row, from }] as const);
}

/** By their nominal sizes in inches. */
const PIPES: ReadonlyMap<number, Length> = new Map(
  pipeDiameters.rows.flatMap(({ name, outside }) => {
    const size = parseLength(name.replace("PIPE ", ""), "in");
    return size.ok ? [[size.value, outside] as const] : [];
  }),
);

/** Longest name that is looked at. */
const LONGEST_NAME = 40;

/**
 * `W12x65`, `HSS8x8x1/2`, `HSS6.625x0.280`, `PIPE 6 STD`, `HEB 300`, `HE 300 B`, `UC 254x254x73`, `SHS 200x200x10`,
 * `CHS 219.1x8`: case, blanks and the sign between the numbers do not matter. The name as it is printed comes back.
 */
export function findSection(written: string): SectionLookup {
  if (written.length > LONGEST_NAME) return { kind: "unnamed" };
  const plain = plainName(written);
  const name = written.trim().replace(/\s+/g, " ");
  if (!IS_NAME.some((form) => form.test(plain))) return { kind: "unnamed" };
  const flanged = FLANGED.get(flangedName(plain));
  if (flanged !== undefined) {
    const { depth, width, flange, web } = flanged.row;
    return { kind: "found", name, outline: { kind: "flanged", depth, width, flange, web }, from: flanged.from };
  }
  return pipeOf(plain, name) ?? tubeOf(plain, name) ?? { kind: "not held", name };
}

/** Letters of the trade's section names, then figures; or figures first, as in `254x254x73 UC`. */
const IS_NAME: readonly RegExp[] = [
  /^(W|HP|M|S|WT|MT|ST|C|MC)[\d.]+X[\d.]+$/,
  /^PIPE[\d./-]+(STD|XS|XXS|SCH\d+S?)$/,
  /^(HSS|TS|SHS|RHS|CHS)[\d./-]+X[\d./-]+(X[\d./-]+)?$/,
  /^(L|2L|LL|TUBE)[\d./-]+X[\d./-]+X[\d./-]+(LLBB|SLBB)?$/,
  /^(UC|UB|UBP|PFC)[\d.]+X[\d.]+(X[\d.]+)?$/,
  /^(HEA|HEB|HEM|HEAA|HD|HL|IPE|IPEA|IPN|INP|UPN|UPE)\d+(X[\d.]+)?$|^HE\d+(A|B|M|AA)$/,
  /^[\d.]+X[\d.]+(X[\d.]+)?(UB|UC|UBP|PFC|SHS|RHS|CHS)([\d.]+)?$/,
];

/** Blanks, signs of inches and hyphens beside letters go; `6" STD PIPE` is PIPE6STD, `4 1/2` is 4-1/2, `219,1` is 219.1. */
function plainName(written: string): string {
  const plain = written
    .toUpperCase()
    .replace(/[\u00D7*]/g, "X")
    .replace(/(\d)\s+(\d+\/\d)/g, "$1-$2")
    .replace(/(\d),(\d)/g, "$1.$2")
    .replace(/[\s_"\u201D\u2033]+/g, "")
    .replace(/(X+)-?STRONG/, "$1S")
    .replace("SCH.", "SCH")
    .replace("STANDARD", "STD")
    .replace("DBLXS", "XXS")
    .replace(/(?<=[A-Z])-|-(?=[A-Z])/g, "")
    .replace(/(?<=\d)COL(UMN)?$/, "");
  return plain.replace(/^([\d./-]+)(STD|XS|XXS|SCH\d+S?)PIPE$/, "PIPE$1$2");
}

/** `HE300B` is HEB300; `254X254X73UC` and `254X254UC73` are UC254X254X73. */
function flangedName(plain: string): string {
  const turned = /^HE(\d+)(A|B|M)$/.exec(plain);
  if (turned !== null) return `HE${turned[2]}${turned[1]}`;
  const [, sides, letters, mass = ""] = /^([\d.X]+)(UC|UB)([\d.]+)?$/.exec(plain) ?? [];
  return sides === undefined ? plain : `${letters}${sides}${mass === "" ? "" : `X${mass}`}`;
}

/** A pipe's outside diameter hangs on its nominal size alone; without a class of wall the size may be the outside itself. */
function pipeOf(plain: string, name: string): SectionLookup | null {
  const [, size = ""] = /^PIPE([\d./-]+?)(?:STD|XS|XXS|SCH\d+S?)$/.exec(plain) ?? [];
  const nominal = parseLength(size, "in");
  const diameter = nominal.ok ? PIPES.get(nominal.value) : undefined;
  if (diameter === undefined) return null;
  return { kind: "found", name, outline: { kind: "pipe", diameter }, from: pipeDiameters.edition };
}

/** Hollow sections are named by their outside sizes and wall: HSS and TS in inches, SHS, RHS and CHS in millimetres. */
function tubeOf(plain: string, name: string): SectionLookup | null {
  const [, family = "", inInches = ""] = /^(HSS|TS|TUBE)([\d./X-]+)$/.exec(plain) ?? [];
  if (family !== "") return hollow(inInches.split("X"), "in", name, family);
  const [, before, sizes, after] = /^(SHS|RHS|CHS)?([\d.X]+)(SHS|RHS|CHS)?$/.exec(plain) ?? [];
  return sizes === undefined ? null : hollow(sizes.split("X"), "mm", name, before ?? after ?? "");
}

/**
 * Limits between which a name is read in its unit: no wall is 1-1/2 in thick and none 1.5 mm thin, no side is 20 mm short, so
 * that `HSS 203x203x9.5`, in millimetres, is no tube of 203 in, and `RHS 8x4x1/4` none of 8 mm (common practice).
 */
const MADE = {
  in: { leastSide: millimetres(12), leastWall: millimetres(0.5), mostSide: inches(48), mostWall: inches(1.5) },
  mm: {
    leastSide: millimetres(20),
    leastWall: millimetres(1.5),
    mostSide: millimetres(2500),
    mostWall: millimetres(100),
  },
} as const;

function hollow(sizes: readonly string[], unit: "in" | "mm", name: string, family: string): SectionLookup {
  const lengths = sizes.map((size) => parseLength(size, unit)).map((reading) => (reading.ok ? reading.value : null));
  const [wall, ...sides] = lengths.toReversed();
  const notHeld: SectionLookup = { kind: "not held", name };
  if (!isKnown(wall) || !sides.every(isKnown)) return notHeld;
  const [first, second = first] = sides.toSorted((a, b) => b - a);
  if (first === undefined || second === undefined || sides.length > 2) return notHeld;
  const { leastSide, leastWall, mostSide, mostWall } = MADE[unit];
  const isMade = second >= leastSide && first <= mostSide && wall >= leastWall && wall <= mostWall && 2 * wall < second;
  const outline = isMade ? hollowOutline(family, sizes, [first, second]) : null;
  return outline === null ? notHeld : { kind: "found", name, outline, from: "the section's own name" };
}

/** One side and a wall are a square for SHS, and round for CHS; an HSS is round where its side has a point, as `HSS6.000x0.250`. */
function hollowOutline(
  family: string,
  sizes: readonly string[],
  [long, short]: readonly [Length, Length],
): SectionOutline | null {
  const tube: SectionOutline = { kind: "tube", long, short };
  if (sizes.length === 3) return family === "CHS" ? null : tube;
  if (family === "SHS") return tube;
  const isRound = family === "CHS" || (family === "HSS" && sizes[0]?.includes(".") === true);
  return isRound ? { kind: "pipe", diameter: long } : null;
}

function isKnown(length: Length | null | undefined): length is Length {
  return length !== null && length !== undefined && length > 0;
}
