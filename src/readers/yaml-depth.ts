/**
 * How deep a YAML text nests, told from its tokens alone, before anything is parsed: the parser's own recursion can end a
 * process beyond catching. The lexer does not recurse.
 */
import { Lexer } from "yaml";

/** Deepest nesting that is read. */
export const DEEPEST_NESTING = 64;

/** Most tokens that are looked at of one file: keys, values, dashes, brackets, commas, indents and line ends. */
export const MOST_TOKENS = 6_000_000;

/** A block list under a key of the first level: where its dashes stand, and where the line after it starts. */
export interface RootList {
  readonly dashes: readonly number[];
  /** Its tokens, and most of one item. */
  readonly tokens: number;
  readonly largestItem: number;
  readonly end: number;
}

/** What the tokens tell; offsets in UTF-16 code units from the start of the text. */
export interface TokenScan {
  /** Offset of the first token that nests deeper than allowed, or null. Then the scan ends there. */
  readonly deep: number | null;
  /** How many there are; above `MOST_TOKENS` the scan ends. */
  readonly tokens: number;
  readonly rootLists: readonly RootList[];
  /** True without anchors, aliases, tags, directives and document marks: then the items of a list stand for themselves. */
  readonly selfContained: boolean;
}

/** Looks through the tokens once. Depth counts flow brackets, dashes, keys and indents. */
export function scanTokens(text: string, limit: number = DEEPEST_NESTING): TokenScan {
  const scan = new NestingScan();
  for (const token of new Lexer().lex(text)) {
    scan.take(token);
    const { tokens } = scan;
    if (scan.depth > limit) return { deep: scan.offset - token.length, tokens, rootLists: [], selfContained: false };
    if (tokens > MOST_TOKENS) return { deep: null, tokens, rootLists: [], selfContained: false };
  }
  scan.endList(text.length);
  const { tokens, rootLists, selfContained } = scan;
  return { deep: null, tokens, rootLists, selfContained };
}

const DOCUMENT = "\u0002";
const FLOW_ERROR_END = "\u0018";
const SCALAR = "\u001f";
const BEYOND_ITSELF = /^(?:[&*!%]|---$|\.\.\.$)/;

/** Open block collections by column, and open flow collections. */
class NestingScan {
  offset = 0;
  tokens = 0;
  selfContained = true;
  readonly rootLists: RootList[] = [];
  private dashes: number[] = [];
  /** Tokens before the first dash of a list and before its last, and most between two. */
  private atList = 0;
  private atDash = 0;
  private largestItem = 0;
  private lineStart = 0;
  private flow = 0;
  private readonly block: { readonly column: number; readonly kind: string }[] = [];
  private contentColumn: number | null = null;
  private atLineStart = true;
  private isScalar = false;

  get depth(): number {
    return this.flow + this.block.length;
  }

  take(token: string): void {
    this.tokens += 1;
    if (token === SCALAR) this.isScalar = true;
    else if (token === DOCUMENT || token === FLOW_ERROR_END) this.restart(token);
    else this.takeText(token);
  }

  /** Ends the list under the last key of the first level, when there is one. */
  endList(end: number): void {
    this.endItem();
    const { dashes, largestItem } = this;
    if (dashes.length > 0) this.rootLists.push({ dashes, tokens: this.tokens - this.atList, largestItem, end });
    this.dashes = [];
    this.largestItem = 0;
  }

  private endItem(): void {
    if (this.dashes.length > 0) this.largestItem = Math.max(this.largestItem, this.tokens - this.atDash);
    this.atDash = this.tokens;
  }

  private restart(token: string): void {
    if (token === DOCUMENT) this.block.length = 0;
    else this.selfContained = false;
    this.flow = 0;
  }

  private takeText(token: string): void {
    const column = this.offset - this.lineStart;
    const wasScalar = this.isScalar;
    this.isScalar = false;
    this.offset += token.length;
    const isBlank = token.trim() === "" || (token.startsWith("#") && !wasScalar);
    if (!isBlank && !wasScalar && BEYOND_ITSELF.test(token)) this.selfContained = false;
    if (!isBlank) this.takeContent(wasScalar ? "" : token, column, this.offset - token.length);
    const lastBreak = token.lastIndexOf("\n");
    if (lastBreak >= 0) this.startLine(this.offset - token.length + lastBreak + 1);
  }

  private startLine(offset: number): void {
    this.lineStart = offset;
    this.atLineStart = true;
    this.contentColumn = null;
  }

  private takeContent(token: string, column: number, offset: number): void {
    if (this.atLineStart && this.flow === 0) this.close(column);
    this.atLineStart = false;
    if (token === "[" || token === "{") this.flow += 1;
    if (token === "]" || token === "}") this.flow = Math.max(0, this.flow - 1);
    if (this.flow > 0) return;
    if (token === "-" || token === "?") this.open(column, token, offset);
    else if (token === ":") this.open(this.contentColumn ?? column, "key", offset);
    else this.contentColumn ??= column;
  }

  /** Ends the block collections that a line starting at `column` is not part of. */
  private close(column: number): void {
    while ((this.block.at(-1)?.column ?? -1) > column) this.block.pop();
  }

  private open(column: number, kind: string, offset: number): void {
    const open = this.block.findIndex((level) => level.column === column && level.kind === kind);
    if (open < 0) this.block.push({ column, kind });
    this.contentColumn = null;
    if (kind === "key" && column === 0) this.endList(this.lineStart);
    if (kind !== "-" || !this.isUnderRootKey(open < 0 ? this.block.length - 1 : open)) return;
    this.endItem();
    if (this.dashes.length === 0) this.atList = this.tokens;
    this.dashes.push(offset);
  }

  private isUnderRootKey(level: number): boolean {
    return level === 1 && this.block.length === 2 && this.block[0]?.kind === "key" && this.block[0].column === 0;
  }
}
