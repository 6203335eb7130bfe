/** The bases of a job file as pieces of its text: copied, moved, taken out and changed with everything that is written of them. */
import { placesOfItems } from "../../readers/yaml.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import { scalarText, textAfter } from "../../readers/yaml-edit.js";

/** A text taken apart: `gaps` are the blank lines before each item, `leads` the comments above it. */
export interface Items {
  readonly head: string;
  readonly gaps: readonly string[];
  readonly items: readonly Item[];
  readonly tail: string;
}

/** One base: comments above it, and its own lines from its dash on. */
export interface Item {
  readonly lead: string;
  readonly body: string;
}

/** The list of bases; null where there is none in lines of its own, or its items lean on others. */
export function itemsOf(text: string): Items | null {
  const key = /^bases:[^\S\n]*(?:#[^\n]*)?\n(?:[^\S\n]*(?:#[^\n]*)?\n)*(?=[^\S\n]*- )/m.exec(text);
  if (key === null) return null;
  const line = linesIn(text.slice(0, key.index + key[0].length)) + 1;
  const places = placesOfItems(text, line);
  if (places === null) return null;
  const starts = places.dashes.map((dash) => text.lastIndexOf("\n", dash - 1) + 1);
  const pieces = starts.map((start, index) => parted(text.slice(start, starts[index + 1] ?? places.end)));
  const first = starts[0] ?? 0;
  const rests = pieces.map(({ rest }) => rest);
  return {
    head: text.slice(0, first),
    gaps: pieces.map((_, index) => /^(?:[^\S\n]*\n)*/.exec(rests[index - 1] ?? "")?.[0] ?? ""),
    items: pieces.map(({ body }, index) => ({ lead: (rests[index - 1] ?? "").replace(/^(?:[^\S\n]*\n)*/, ""), body })),
    tail: (rests.at(-1) ?? "") + text.slice(places.end),
  };
}

function linesIn(text: string): number {
  return text.split("\n").length - 1;
}

/** Blank lines and comments at the end of a piece are of what follows. */
function parted(piece: string): { readonly body: string; readonly rest: string } {
  const rest = /(?:^[^\S\n]*(?:#[^\n]*)?(?:\n|$))+$/m.exec(piece)?.[0] ?? "";
  const body = piece.slice(0, piece.length - rest.length);
  return { body: body.endsWith("\n") || body === "" ? body : `${body}\n`, rest };
}

/** The text again. Blank lines stay where they were; a new item has those of the second. */
export function textOf({ head, gaps, items, tail }: Items): string {
  const usual = gaps[1] ?? "";
  const list = items.map(({ lead, body }, index) => (index === 0 ? "" : (gaps[index] ?? usual)) + lead + body).join("");
  return head + list + tail;
}

/** The splice from a text to what its items have become; null: nothing changed. */
export function spliceTo(text: string, now: string): Splice | null {
  if (text === now) return null;
  let from = 0;
  while (text[from] === now[from]) from += 1;
  const most = Math.min(text.length, now.length) - from;
  let same = 0;
  while (same < most && text.at(-1 - same) === now.at(-1 - same)) same += 1;
  return { at: from, was: text.slice(from, text.length - same), now: now.slice(from, now.length - same) };
}

/** An item after edits of it alone; their paths begin in it. null: it is written in such a way that one of them cannot be made. */
export function editItem(body: string, edits: readonly KeyEdit[]): string | null {
  const inItem = edits.map((edit): KeyEdit => ({ ...edit, path: ["x", 0, ...edit.path] }));
  const after = textAfter(`x:\n${body}`, inItem)?.slice(3) ?? null;
  return after === null || after.endsWith("\n") ? after : `${after}\n`;
}

/** A new base of this mark, its dash where those of the others stand. */
export function newItem(items: readonly Item[], mark: string): Item {
  const indent = /^\s*/.exec(items[0]?.body ?? "")?.[0].replaceAll("\n", "") ?? "  ";
  return { lead: "", body: `${indent}- mark: ${scalarText(mark)}\n` };
}

/** The next mark that is free: B3 -> B4, COL -> COL-2. */
export function nextMark(mark: string, taken: ReadonlySet<string>): string {
  const [, stem = "", figures] = /^(.*?)(\d{1,9})?$/s.exec(mark) ?? [];
  const isFree = (wanted: string) => !taken.has(wanted.toUpperCase());
  for (let count = Number(figures ?? 1) + 1; ; count += 1) {
    const next =
      figures === undefined
        ? `${stem === "" ? "B" : `${stem}-`}${count}`
        : `${stem}${String(count).padStart(figures.length, "0")}`;
    if (isFree(next)) return next;
  }
}
