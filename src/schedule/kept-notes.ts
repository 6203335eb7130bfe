/** Texts without a key -> the note of their base, as far as it holds them. */
import type { SourceNode } from "../readers/source.js";
import { scalar } from "./grammar/index.js";
import type { RowBase } from "./row-bases.js";
import type { Kept } from "./row-values.js";
import type { SheetCell, Taken } from "./sheet-cell.js";

/** Most signs that the note of a base has. */
export const LONGEST_NOTE = 120;

/** A text that was kept; `isInNote` is false where the note is full. */
export interface KeptText {
  readonly from: SheetCell;
  readonly words: string;
  readonly isInNote: boolean;
}

/** The base with its one note, and what became of every text. */
export interface BaseWithNote {
  readonly base: RowBase;
  readonly texts: readonly KeptText[];
}

/** The base's own words first, then `HEADING: text` of the columns that have no key, in the order of the sheet. */
export function withNote(base: RowBase): BaseWithNote {
  const own = base.own.filter(({ key }) => key === "note");
  if (base.kept.length === 0 && own.length < 2) return { base, texts: [] };
  const [first] = own;
  let note = own.map(({ node }) => textIn(node)).join("; ");
  const texts = base.kept.map((kept): KeptText => {
    const words = wordsOf(kept);
    const longer = note === "" ? words : `${note}; ${words}`;
    const isInNote = [...longer].length <= LONGEST_NOTE;
    if (isInNote) note = longer;
    return { from: kept.from, words, isInNote };
  });
  const from = first?.from ?? texts.find(({ isInNote }) => isInNote)?.from;
  const others = base.own.filter(({ key }) => key !== "note");
  if (from === undefined || note === "") return { base: { ...base, own: others }, texts };
  const whole: Taken = { key: "note", node: scalar(note, from.place), from, origin: "row", remark: "" };
  return { base: { ...base, own: [...others, whole] }, texts };
}

function textIn(node: SourceNode): string {
  return node.kind === "scalar" ? node.text : "";
}

/** One line of signs that print; a text that is none says nothing. */
function wordsOf({ from, text }: Kept): string {
  const plain = `${from.column.heading}: ${text}`.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\uFFFE\uFFFF]+/gu, " ");
  return plain.replace(/\s+/g, " ").trim();
}
