/** The outline of a column section by its name, where its dimensions are held or the name itself gives them. */
import type { Length } from "../units/length.js";
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

const PIPES: ReadonlyMap<string, Length> = new Map(
  pipeDiameters.rows.map(({ name, outside }) => [name.replace("PIPE ", ""), outside]),
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
  if (!IS_NAME.test(plain)) return { kind: "unnamed" };
  const flanged = FLANGED.get(flangedName(plain));
  if (flanged !== undefined) {
    const { depth, width, flange, web } = flanged.row;
    return { kind: "found", name, outline: { kind: "flanged", depth, width, flange, web }, from: flanged.from };
  }
  return pipeOf(plain, name) ?? tubeOf(plain, name) ?? { kind: "not held", name };
}

/** Letters of the trade's section names, then figures; or figures first, as in `254x254x73 UC`. */
const IS_NAME =
  /^((W|HP|M|S|HSS|TS|PIPE|P|HE|HEA|HEB|HEM|HEAA|HD|HL|IPE|IPN|INP|UB|UC|UBP|SHS|RHS|CHS)[\d.][\d./X-]*(STD|XS|XXS|X-STRONG|XX-STRONG|SCH\d+|A|B|M|AA)?|[\d.]+(X[\d.]+)+(UB|UC|UBP|SHS|RHS|CHS))$/;

function plainName(written: string): string {
  return written
    .toUpperCase()
    .replace(/[\u00D7*]/g, "X")
    .replace(/[\s_"]+/g, "");
}

/** `HE300B` is HEB300; `254X254X73UC` is UC254X254X73. */
function flangedName(plain: string): string {
  const turned = /^HE(\d+)(A|B|M)$/.exec(plain);
  if (turned !== null) return `HE${turned[2]}${turned[1]}`;
  const last = /^([\d.X]+)(UC|UB)$/.exec(plain);
  return last === null ? plain : `${last[2]}${last[1]}`;
}

/** A pipe's outside diameter hangs on its nominal size alone; `PIPE6.625` and its like, an outside diameter, are not held. */
function pipeOf(plain: string, name: string): SectionLookup | null {
  const parts = /^P(?:IPE)?([\d/-]+?)(STD|XS|XXS|X-STRONG|XX-STRONG|SCH\d+)?$/.exec(plain);
  const diameter = PIPES.get(parts?.[1] ?? "");
  if (diameter === undefined) return null;
  return { kind: "found", name, outline: { kind: "pipe", diameter }, from: pipeDiameters.edition };
}

/** Hollow sections are named by their outside sizes and wall: HSS and TS in inches, SHS, RHS and CHS in millimetres. */
function tubeOf(plain: string, name: string): SectionLookup | null {
  const inchSizes = /^(?:HSS|TS)([\d./X-]+)$/.exec(plain)?.[1]?.split("X");
  if (inchSizes !== undefined) return hollow(inchSizes, "in", name);
  const [, before, after] = /^(?:(?:SHS|RHS|CHS)([\d.X]+)|([\d.X]+)(?:SHS|RHS|CHS))$/.exec(plain) ?? [];
  const sizes = (before ?? after)?.split("X");
  return sizes === undefined ? null : hollow(sizes, "mm", name);
}

function hollow(sizes: readonly string[], unit: "in" | "mm", name: string): SectionLookup {
  const lengths = sizes.map((size) => parseLength(size, unit)).map((reading) => (reading.ok ? reading.value : null));
  const [first, second, third] = lengths;
  const from = "the section's own name";
  if (sizes.length === 2 && isAbove(first) && isAbove(second) && 2 * second < first)
    return { kind: "found", name, outline: { kind: "pipe", diameter: first }, from };
  if (sizes.length !== 3 || !isAbove(first) || !isAbove(second) || !isAbove(third)) return { kind: "not held", name };
  const [long, short] = first >= second ? [first, second] : [second, first];
  if (2 * third >= short) return { kind: "not held", name };
  return { kind: "found", name, outline: { kind: "tube", long, short }, from };
}

function isAbove(length: Length | null | undefined): length is Length {
  return length !== null && length !== undefined && length > 0;
}
