/**
 * A job's text in pieces: what stands before the bases, each base, what stands after them. Pieces that are known are not
 * parsed again. Where the text is not sure to come apart like that, the whole is read; the values are the same either way.
 */
import type { Outcome } from "../diagnostics/finding.js";
import type { SourceEntry, SourceMap, SourceNode } from "./source.js";
import { isNothing } from "./source.js";
import { MOST_AT_ONCE, parse, readYaml } from "./yaml.js";
import { DEEPEST_NESTING, scanTokens } from "./yaml-depth.js";

/** Where the pieces of a text stand: offsets of characters. The list of bases runs from the line of its first dash to `end`. */
export interface TextPieces {
  /** Where lines begin that begin with the dash of an item. */
  readonly starts: readonly number[];
  readonly end: number;
  /** Blanks before each dash. */
  readonly indent: number;
}

/** The lines of the list under `bases`, told by their indents alone; null where there is no such list in lines of its own. */
export function findPieces(text: string): TextPieces | null {
  const key = /^bases[ \t]*:[ \t]*(?:#.*)?\r?$/m.exec(text);
  if (key === null) return null;
  const starts: number[] = [];
  let indent = -1;
  for (let at = nextLine(text, key.index); at < text.length; at = nextLine(text, at)) {
    const column = columnOfContent(text, at);
    if (column === null) continue;
    const isDash = text[at + column] === "-" && /\s/.test(text[at + column + 1] ?? " ");
    if (indent < 0 && isDash) indent = column;
    if (column === indent && isDash) starts.push(at);
    else if (column <= indent || indent < 0) return starts.length === 0 ? null : { starts, end: at, indent };
  }
  return starts.length === 0 ? null : { starts, end: text.length, indent };
}

function nextLine(text: string, at: number): number {
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end + 1;
}

/** Blanks before what a line says; null of a line that is empty, or a comment. */
function columnOfContent(text: string, lineStart: number): number | null {
  let at = lineStart;
  while (text[at] === " ") at += 1;
  const sign = text[at];
  if (sign === undefined || sign === "\n" || sign === "#") return null;
  if (sign === "\r" && text[at + 1] === "\n") return null;
  return at - lineStart;
}

/** Reads texts of one job as it is edited. */
export interface PieceReader {
  /** `pieces`: how the text came apart; null where it was read whole. */
  read(text: string, file: string): { readonly root: Outcome<SourceNode>; readonly pieces: TextPieces | null };
}

/** Longer texts are read whole: they are refused, or not edited at this speed. */
const LONGEST = 4 * 1024 * 1024;

/** Starts with no piece known. */
export function startPieceReader(): PieceReader {
  let known = new Map<string, Known>();
  return {
    read: (text, file) => {
      const used = new Map<string, Known>();
      const found = text.length > LONGEST ? null : findPieces(text);
      const made = found === null ? null : readPieces(text, file, found, { known, used });
      if (made === null) return { root: readYaml(text, file), pieces: null };
      known = used;
      return { root: { ok: true, value: made, findings: [] }, pieces: found };
    },
  };
}

/** A piece with its line; and the same moved elsewhere. */
interface Known {
  readonly node: SourceNode;
  readonly line: number;
}

interface Pieces {
  readonly known: ReadonlyMap<string, Known>;
  readonly used: Map<string, Known>;
}

function readPieces(text: string, file: string, found: TextPieces, pieces: Pieces): SourceMap | null {
  const { starts, end, indent } = found;
  const [first = 0] = starts;
  if (!/^(?:[A-Za-z"']|$)/.test(text.slice(end, end + 1))) return null;
  const items: SourceNode[] = [];
  let line = linesIn(text.slice(0, first)) + 1;
  const head = readPiece({ text: text.slice(0, first), line: 1, file, kind: "head" }, pieces);
  for (const [index, start] of starts.entries()) {
    const piece = text.slice(start, starts[index + 1] ?? end);
    const item = readPiece({ text: piece, line, file, kind: "item", indent }, pieces);
    if (item === null) return null;
    items.push(item);
    line += linesIn(piece);
  }
  const tail = end === text.length ? null : readPiece({ text: text.slice(end), line, file, kind: "tail" }, pieces);
  if (head === null || (tail === null && end < text.length)) return null;
  const place = { file, line: linesIn(text.slice(0, first)) + 1, column: indent + 1 };
  return joined(head, { kind: "list", items, place }, tail);
}

/** null where a key would stand twice, or the bases not under the last key of the head. */
function joined(head: SourceMap, bases: SourceNode, tail: SourceMap | null): SourceMap | null {
  const last = head.entries.at(-1);
  if (last?.key !== "bases" || !isNothing(last.value)) return null;
  const entries: SourceEntry[] = [...head.entries.slice(0, -1), { ...last, value: bases }, ...(tail?.entries ?? [])];
  return new Set(entries.map(({ key }) => key)).size === entries.length ? { ...head, entries } : null;
}

interface Piece {
  readonly text: string;
  readonly line: number;
  readonly file: string;
  readonly kind: "head" | "item" | "tail";
  /** Of an item. */
  readonly indent?: number;
}

/** null where the piece is no group of keys by itself, leans on others, or has any fault. */
function readPiece(piece: Piece, { known, used }: Pieces): SourceMap | null {
  const { text, line } = piece;
  const key = `${piece.kind} ${text}`;
  const before = used.get(key) ?? known.get(key);
  const node = before === undefined ? parsePiece(piece) : moved(before.node, line - before.line);
  if (node?.kind !== "map") return null;
  used.set(key, { node, line });
  return node;
}

function parsePiece({ text, line, file, kind, indent = 0 }: Piece): SourceNode | null {
  const scan = scanTokens(text);
  const isReadable = scan.selfContained && scan.deep === null && scan.tokens <= MOST_AT_ONCE;
  if (!isReadable) return null;
  if (kind !== "item") {
    const read = parse(text, file, line, 0);
    return read.ok ? read.value : null;
  }
  const asMap = `${" ".repeat(indent + 1)}${text.slice(indent + 1)}`;
  const read = scanTokens(asMap, DEEPEST_NESTING - 2).deep === null ? parse(asMap, file, line, 2) : null;
  return read?.ok === true ? read.value : null;
}

/** The same values so many lines further down. */
function moved<T extends SourceNode>(node: T, lines: number): T {
  return lines === 0 ? node : (movedNode(node, lines) as T);
}

function movedNode(node: SourceNode, lines: number): SourceNode {
  const place = { ...node.place, line: node.place.line + lines };
  switch (node.kind) {
    case "scalar":
      return { ...node, place };
    case "list":
      return { ...node, place, items: node.items.map((item) => movedNode(item, lines)) };
    case "map": {
      const entries = node.entries.map((entry) => {
        const at = { ...entry.place, line: entry.place.line + lines };
        return { ...entry, place: at, value: movedNode(entry.value, lines) };
      });
      return { ...node, place, entries };
    }
  }
}

function linesIn(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count += 1;
  return count;
}
