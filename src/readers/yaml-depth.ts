/**
 * How deep a YAML text nests, told from its tokens alone, before anything is parsed: the parser's own recursion can end a
 * process beyond catching. The lexer does not recurse.
 */
import { Lexer } from "yaml";

/** Deepest nesting that is read. */
export const DEEPEST_NESTING = 64;

/** Offset of the first token that nests deeper than `limit`, or null. Counts flow brackets, dashes, keys and indents. */
export function findDeepNesting(text: string, limit: number = DEEPEST_NESTING): number | null {
  const scan = new NestingScan();
  for (const token of new Lexer().lex(text)) {
    scan.take(token);
    if (scan.depth > limit) return scan.offset - token.length;
  }
  return null;
}

const CONTROL = new Set(["\u0002", "\u0018", "\u001f"]);

/** Open block collections by column, and open flow collections. */
class NestingScan {
  offset = 0;
  private lineStart = 0;
  private flow = 0;
  private readonly block: { readonly column: number; readonly kind: string }[] = [];
  private contentColumn: number | null = null;
  private atLineStart = true;

  get depth(): number {
    return this.flow + this.block.length;
  }

  take(token: string): void {
    if (CONTROL.has(token)) {
      if (token === "\u0002") this.block.length = 0;
      if (token !== "\u001f") this.flow = 0;
      return;
    }
    const column = this.offset - this.lineStart;
    this.offset += token.length;
    const lastBreak = token.lastIndexOf("\n");
    if (lastBreak >= 0) this.startLine(this.offset - token.length + lastBreak + 1);
    if (token.trim() === "" || token.startsWith("#")) return;
    this.takeContent(token, column);
  }

  private startLine(offset: number): void {
    this.lineStart = offset;
    this.atLineStart = true;
    this.contentColumn = null;
  }

  private takeContent(token: string, column: number): void {
    if (this.atLineStart && this.flow === 0) this.close(column);
    this.atLineStart = false;
    if (token === "[" || token === "{") this.flow += 1;
    if (token === "]" || token === "}") this.flow = Math.max(0, this.flow - 1);
    if (this.flow > 0) return;
    if (token === "-" || token === "?") this.open(column, token);
    else if (token === ":") this.open(this.contentColumn ?? column, "key");
    else this.contentColumn ??= column;
  }

  /** Ends the block collections that a line starting at `column` is not part of. */
  private close(column: number): void {
    while ((this.block.at(-1)?.column ?? -1) > column) this.block.pop();
  }

  private open(column: number, kind: string): void {
    const isOpen = this.block.some((level) => level.column === column && level.kind === kind);
    if (!isOpen) this.block.push({ column, kind });
    this.contentColumn = null;
  }
}
