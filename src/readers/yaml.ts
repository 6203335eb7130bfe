/** YAML text (JSON is YAML) -> values that remember line and column. */
import type { Alias, Document, Node, Pair, Scalar, YAMLMap, YAMLSeq } from "yaml";
import { isAlias, isMap, isPair, isScalar, isSeq, LineCounter, parseDocument } from "yaml";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { SourceEntry, SourceNode, SourcePlace } from "./source.js";
import { errorAt, isNothing } from "./source.js";
import { decodeText, placeInText } from "./text.js";
import type { RootList, TokenScan } from "./yaml-depth.js";
import { DEEPEST_NESTING, MOST_TOKENS, scanTokens } from "./yaml-depth.js";

/** Most values that aliases may repeat in one file, and most syntax faults that are told. */
const MOST_ALIASED_VALUES = 10_000;
const MOST_FAULTS = 50;

/** Reads one YAML document. Size and nesting are bounded before parsing, aliases before values are made. */
export function readYaml(input: string | Uint8Array, file: string): Outcome<SourceNode> {
  const decoded = decodeText(input, file, "allowed is YAML");
  if (!decoded.ok) return { ok: false, findings: [decoded.finding] };
  const { text } = decoded;
  const scan = scanTokens(text);
  if (scan.deep !== null) {
    const place = { file, ...placeInText(text, scan.deep) };
    return refuse(
      errorAt(place, "too-deep", `nesting over ${DEEPEST_NESTING} levels; at most ${DEEPEST_NESTING} are allowed`),
    );
  }
  if (scan.tokens > MOST_TOKENS) return refuseTokens(file, MOST_TOKENS, "keys, values, indents and line ends");
  const inPieces = readInPieces(text, file, scan);
  if (inPieces !== null) return inPieces;
  if (scan.tokens > MOST_AT_ONCE)
    return refuseTokens(file, MOST_AT_ONCE, "keys, values, indents and line ends outside a plain list of bases");
  return parse(text, file, 1, 0);
}

/** Most tokens that are parsed at once: what is read item by item may have more in all. */
export const MOST_AT_ONCE = 500_000;

function refuseTokens(file: string, most: number, what: string): Outcome<SourceNode> {
  const message = `the file has more than ${most} ${what}; at most ${most} are read`;
  return refuse(errorAt({ file, line: 1, column: 1 }, "too-many-values", message));
}

/** Lists longer than this are read item by item, so that memory does not grow with the whole document's parts. */
const LONG_LIST = 100;

/**
 * The document with its long list read item by item; null where that is not sure to give the same: no such list, items that
 * lean on each other, an item that is no group of keys, or any fault, which reading as a whole then tells.
 */
function readInPieces(text: string, file: string, scan: TokenScan): Outcome<SourceNode> | null {
  const list = scan.rootLists.find(({ dashes }) => dashes.length > LONG_LIST);
  const first = list?.dashes[0];
  if (list === undefined || first === undefined || !scan.selfContained) return null;
  if (Math.max(list.largestItem, scan.tokens - list.tokens) > MOST_AT_ONCE) return null;
  const blank = text.slice(first, list.end).replace(/[^\n]/g, " ");
  const rest = parse(text.slice(0, first) + blank + text.slice(list.end), file, 1, 0);
  if (!rest.ok || rest.value.kind !== "map") return null;
  const start = placeInText(text, first);
  const entries = rest.value.entries;
  const holder = entries.findLast(({ place }) => place.line <= start.line);
  if (holder === undefined || !isNothing(holder.value)) return null;
  const items = readItems(text, file, list, start);
  if (items === null) return null;
  const value: SourceNode = { kind: "list", items, place: { file, ...start } };
  return {
    ok: true,
    value: { ...rest.value, entries: entries.map((entry) => (entry === holder ? { ...entry, value } : entry)) },
    findings: [],
  };
}

function readItems(
  text: string,
  file: string,
  list: RootList,
  start: { readonly line: number; readonly column: number },
) {
  const items: SourceNode[] = [];
  let line = start.line;
  for (const [index, dash] of list.dashes.entries()) {
    const piece = text.slice(dash + 1, list.dashes[index + 1] ?? list.end);
    const item = parse(" ".repeat(start.column) + piece, file, line, 2);
    if (!item.ok || item.value.kind !== "map") return null;
    items.push(item.value);
    line += piece.split("\n").length - 1;
  }
  return items;
}

/** The block list under a key of the first level whose items stand for themselves: the places of their dashes. */
export interface ItemPlaces {
  readonly dashes: readonly number[];
  /** Where the line after the list starts. */
  readonly end: number;
}

/** The list whose first item begins on this line; null where there is none, or its items lean on others. */
export function placesOfItems(text: string, firstLine: number): ItemPlaces | null {
  const { rootLists, selfContained } = scanTokens(text);
  if (!selfContained) return null;
  const isMeant = ({ dashes: [first] }: RootList) => first !== undefined && placeInText(text, first).line === firstLine;
  return rootLists.find(isMeant) ?? null;
}

/** Parses a text that starts on `firstLine` of its file, `depth` levels below the root. Its size and nesting are the caller's to bound. */
export function parse(text: string, file: string, firstLine: number, depth: number): Outcome<SourceNode> {
  const lines = new LineCounter();
  const locate = (offset: number): SourcePlace => {
    const { line, col } = lines.linePos(Math.min(offset, text.length));
    return { file, line: Math.max(1, line) + firstLine - 1, column: Math.max(1, col) };
  };
  let document: Document.Parsed;
  try {
    document = parseDocument(text, {
      lineCounter: lines,
      schema: "failsafe",
      prettyErrors: false,
      uniqueKeys: false,
      logLevel: "error",
    });
  } catch {
    const message = "cannot be read as YAML: its groups, lists or texts are not closed, or nest too deep";
    return refuse(errorAt({ file, line: firstLine, column: 1 }, "yaml-syntax", message));
  }
  const faults = [...document.errors, ...document.warnings];
  if (faults.length > 0) return { ok: false, findings: syntaxFindings(faults, locate) };
  return collectValues(document, locate, depth);
}

function refuse(finding: Finding): Outcome<SourceNode> {
  return { ok: false, findings: [finding] };
}

interface SyntaxFault {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [number, number];
}

function syntaxFindings(faults: readonly SyntaxFault[], locate: (offset: number) => SourcePlace): Finding[] {
  return faults.slice(0, MOST_FAULTS).map((fault) => {
    const { message, hint } = plainFault(fault);
    return errorAt(locate(fault.pos[0]), "yaml-syntax", message, hint);
  });
}

/** By the library's codes, whose own words are those of its makers. */
const SYNTAX_WORDS: ReadonlyMap<string, string> = new Map([
  ["ALIAS_PROPS", "an alias (*name) carries a name or a tag of its own"],
  ["BAD_ALIAS", "an alias (*name) or a named value (&name) is not well written"],
  ["BAD_DIRECTIVE", "a line that starts with % at the head of the file is not known"],
  ["BAD_DQ_ESCAPE", "a backslash between double quotes starts nothing known; write it twice, or use single quotes"],
  ["BAD_INDENT", "a line is indented otherwise than the other lines of its group"],
  ["BAD_PROP_ORDER", "a name (&name) or a tag stands where it belongs to nothing"],
  ["BAD_SCALAR_START", "a text starts with a sign that starts none, as @ or `; put the text between quotes"],
  [
    "BLOCK_AS_IMPLICIT_KEY",
    "a second key on one line; a text that holds a colon goes between quotes, a key on a line of its own",
  ],
  ["BLOCK_IN_FLOW", "a line with a dash, or an indented key, stands inside brackets"],
  ["KEY_OVER_1024_CHARS", "a key has more than 1024 characters"],
  ["MULTILINE_IMPLICIT_KEY", "a key runs over several lines; is a colon, a quote or a bracket missing?"],
  ["MULTIPLE_ANCHORS", "a value has more than one name (&name)"],
  ["UNEXPECTED_TOKEN", "a sign stands here that means nothing in this place"],
]);

/** The library tells in its own words alone which sign it misses. */
function missingSign(message: string): string {
  if (/quote/.test(message)) return "a text between quotes is not closed";
  if (/map values/.test(message)) return "a line among keys has no colon; every key has one, with a blank after it";
  if (/flow (map|seq)/i.test(message)) return "a bracket is not closed, or a comma is missing";
  return "a sign is missing: a bracket, a comma, or the blank after a colon or a dash";
}

/** A fault in plain words. */
function plainFault({ code, message }: SyntaxFault): { readonly message: string; readonly hint?: string } {
  switch (code) {
    case "TAB_AS_INDENT":
      return { message: "a tab is used to indent; spaces are allowed" };
    case "MULTIPLE_DOCS":
      return { message: "a second document starts here; one document a file is allowed" };
    case "TAG_RESOLVE_FAILED":
      return { message: "a tag (!name) is used; plain values are allowed" };
    case "MISSING_CHAR":
      return { message: `cannot be read as YAML: ${missingSign(message)}` };
    default:
      return {
        message: `cannot be read as YAML: ${SYNTAX_WORDS.get(code) ?? "something here is not written as YAML is"}`,
      };
  }
}

function collectValues(
  document: Document.Parsed,
  locate: (offset: number) => SourcePlace,
  depth: number,
): Outcome<SourceNode> {
  const reading = new ValueReading(locate);
  const value = reading.read(document.contents, 0, depth);
  return reading.findings.length > 0 ? { ok: false, findings: reading.findings } : { ok: true, value, findings: [] };
}

type Part = Node | Pair | null | undefined;

/** Walks the parsed nodes once, in the order of the text; an alias repeats the node that its anchor last named. */
class ValueReading {
  readonly findings: Finding[] = [];
  private readonly anchors = new Map<string, Node>();
  private readonly open = new Set<Node>();
  private aliased = 0;
  private inAlias = 0;

  constructor(private readonly locate: (offset: number) => SourcePlace) {}

  read(part: Part, fallback: number, depth: number): SourceNode {
    const start = isPair(part) ? fallback : (part?.range?.[0] ?? fallback);
    const place = this.locate(start);
    if (!this.admit(place, depth)) return { kind: "scalar", text: "", style: "plain", place };
    if (isAlias(part)) return this.readAlias(part, start, depth);
    if (isMap(part) || isSeq(part) || isScalar(part)) {
      if (part.anchor !== undefined && this.inAlias === 0) this.anchors.set(part.anchor, part);
      this.open.add(part);
      const node = this.readNode(part, place, start, depth);
      this.open.delete(part);
      return node;
    }
    return { kind: "scalar", text: "", style: "plain", place };
  }

  private admit(place: SourcePlace, depth: number): boolean {
    if (this.inAlias > 0) this.aliased += 1;
    if (depth > DEEPEST_NESTING) this.refuse(place, "too-deep", `aliases nest over ${DEEPEST_NESTING} levels`);
    if (this.aliased > MOST_ALIASED_VALUES) {
      this.refuse(place, "too-many-aliases", `aliases repeat over ${MOST_ALIASED_VALUES} values`);
    }
    return depth <= DEEPEST_NESTING && this.aliased <= MOST_ALIASED_VALUES;
  }

  private refuse(place: SourcePlace, code: string, message: string): void {
    if (this.findings.some((finding) => finding.code === code)) return;
    this.findings.push(errorAt(place, code, message));
  }

  private readAlias(alias: Alias, start: number, depth: number): SourceNode {
    const place = this.locate(start);
    const node = this.anchors.get(alias.source);
    if (node === undefined || this.open.has(node)) {
      const why = node === undefined ? "names no anchor before it" : "repeats a value that contains it";
      this.findings.push(errorAt(place, "bad-alias", `*${alias.source} ${why}`));
      return { kind: "scalar", text: "", style: "plain", place };
    }
    this.inAlias += 1;
    const value = this.read(node, start, depth);
    this.inAlias -= 1;
    return value;
  }

  private readNode(part: YAMLMap | YAMLSeq | Scalar, place: SourcePlace, start: number, depth: number): SourceNode {
    if (isScalar(part)) return readScalar(part, place);
    if (isSeq(part)) {
      const items = part.items.map((item) => this.read(item as Part, start, depth + 1));
      return { kind: "list", items, place };
    }
    return { kind: "map", entries: this.readEntries(part, start, depth), place };
  }

  private readEntries(map: YAMLMap, start: number, depth: number): SourceEntry[] {
    const seen = new Set<string>();
    return map.items.flatMap((pair) => {
      const key = this.readKey(pair.key as Part, start, seen);
      if (key === null) return [];
      const value = this.read(pair.value as Part, (pair.key as Node).range?.[0] ?? start, depth + 1);
      return [{ key: key.text, place: key.place, value }];
    });
  }

  private readKey(key: Part, start: number, seen: Set<string>): { text: string; place: SourcePlace } | null {
    const place = this.locate(isPair(key) ? start : (key?.range?.[0] ?? start));
    if (!isScalar(key)) {
      this.findings.push(errorAt(place, "yaml-key", "a key that is not a text; plain names are allowed"));
      return null;
    }
    const { text } = readScalar(key, place);
    if (seen.has(text)) this.findings.push(errorAt(place, "duplicate-key", `the key ${text} is given twice`));
    seen.add(text);
    return { text, place };
  }
}

function readScalar(scalar: Scalar, place: SourcePlace) {
  const style = scalar.type === "PLAIN" || scalar.type === undefined ? ("plain" as const) : ("quoted" as const);
  return { kind: "scalar" as const, text: String(scalar.value ?? ""), style, place };
}
