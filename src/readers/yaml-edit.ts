/** Changes of a YAML text where its values stand: everything around them, comments too, stays as it was written. */
import { greatestOf, leastOf } from "../units/extremes.js";
import type { TextPieces } from "./yaml-pieces.js";
import { splicesAt } from "./yaml-places.js";
import type { KeyEdit, Splice } from "./yaml-splice.js";
import { spliced } from "./yaml-splice.js";
import { treeAfter, treeOf } from "./yaml-tree.js";

export * from "./yaml-splice.js";

/**
 * The splice that makes this change; null where the text has no such place, or is written in such a way that nothing sure can
 * be done by a splice: what comes out is read again, and is the change and nothing else. `pieces`: how the text comes apart,
 * where that is known; then a change of a base looks at that base alone.
 */
export function spliceOf(text: string, edit: KeyEdit, pieces: TextPieces | null = null): Splice | null {
  const mark = text.startsWith("\uFEFF") ? 1 : 0;
  if (mark > 0) return movedBy(spliceOf(text.slice(mark), edit), mark);
  return (pieces === null ? null : spliceInPiece(text, edit, pieces)) ?? surest(text, edit);
}

/** A change that one piece has to itself; null where it is none. */
function spliceInPiece(text: string, edit: KeyEdit, pieces: TextPieces): Splice | null {
  const [key, index, ...inner] = edit.path;
  if (key !== "bases") return beside(text, edit, pieces);
  return inner.length === 0
    ? inList(text, edit, pieces)
    : inItem(text, { ...edit, path: inner }, Number(index), pieces);
}

/** Above the bases, or below them. */
function beside(text: string, edit: KeyEdit, { starts: [first = 0], end }: TextPieces): Splice | null {
  const below = text.slice(end);
  const tail = below.trim() === "" ? null : treeOf(below);
  const isBelow = tail?.root instanceof Map && tail.root.has(String(edit.path[0]));
  return isBelow ? movedBy(surest(below, edit), end) : surest(text.slice(0, first), edit);
}

/** An item alone; null for what touches its dash. */
function inItem(text: string, edit: KeyEdit, index: number, { starts, end, indent }: TextPieces): Splice | null {
  const start = starts[index];
  if (start === undefined) return null;
  const piece = text.slice(start, starts[index + 1] ?? end);
  const found = surest(`${" ".repeat(indent + 1)}${piece.slice(indent + 1)}`, edit);
  return found === null || found.at <= indent ? null : movedBy(found, start);
}

const HEAD = "bases:\n";

/** Items that are put in, taken out, moved or written once more, with their neighbours. */
function inList(text: string, edit: KeyEdit, { starts, end }: TextPieces): Splice | null {
  const meant = itemsOf(edit, starts.length);
  if (meant === null || starts.length < 2) return null;
  const low = Math.max(0, leastOf(meant) - 1);
  const high = Math.min(starts.length - 1, greatestOf(meant) + 1);
  const start = starts[low] ?? 0;
  const window = HEAD + text.slice(start, starts[high + 1] ?? end);
  return movedBy(surest(window, shifted(edit, low, starts.length)), start - HEAD.length);
}

function itemsOf(edit: KeyEdit, count: number): readonly number[] | null {
  if (edit.kind === "insert") return edit.path.length === 1 ? [Math.min(edit.index, count)] : null;
  if (edit.kind === "move") return edit.path.length === 1 ? [edit.from, edit.to] : null;
  return edit.path.length === 2 && edit.kind !== "set" ? [Number(edit.path[1])] : null;
}

function shifted(edit: KeyEdit, by: number, count: number): KeyEdit {
  if (edit.kind === "insert") return { ...edit, index: Math.min(edit.index, count) - by };
  if (edit.kind === "move") return { ...edit, from: edit.from - by, to: edit.to - by };
  return { ...edit, path: ["bases", Number(edit.path[1]) - by] };
}

function movedBy(splice: Splice | null, by: number): Splice | null {
  return splice && { ...splice, at: splice.at + by };
}

/** The first of the splices that could make the change after which the text reads as it should. */
function surest(text: string, edit: KeyEdit): Splice | null {
  const before = treeOf(text);
  if (before === null) return null;
  const wanted = treeAfter(before, edit);
  if (wanted === null) return null;
  return splicesAt(text, edit).find((each) => treeOf(spliced(text, each))?.words === wanted) ?? null;
}

/** The text after changes, one made after the other, as each is made alone; null where one of them cannot be made. */
export function textAfter(text: string, edits: readonly KeyEdit[]): string | null {
  return quickly(text, edits) ?? oneByOne(text, edits);
}

/** Each by its closest splice; only what comes out of all of them is read again. null: it is not what it should be. */
function quickly(text: string, edits: readonly KeyEdit[]): string | null {
  const before = treeOf(text);
  const wanted = before && treeAfter(before, ...edits);
  if (wanted === null) return null;
  let now = text;
  for (const edit of edits) {
    const [closest] = splicesAt(now, edit);
    if (closest === undefined) return null;
    now = spliced(now, closest);
  }
  return treeOf(now)?.words === wanted ? now : null;
}

function oneByOne(text: string, edits: readonly KeyEdit[]): string | null {
  let now = text;
  for (const edit of edits) {
    const splice = spliceOf(now, edit);
    if (splice === null) return null;
    now = spliced(now, splice);
  }
  return now;
}
