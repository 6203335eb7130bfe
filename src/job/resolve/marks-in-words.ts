/** Bases by their marks, in messages about several of them. */
import { findNode } from "../../readers/source.js";
import type { SourceDocument } from "../document.js";

const MOST_MARKS = 8;

/** `3 bases: B1, B2, B3`; of many the first eight. */
export function countedMarks(bases: readonly SourceDocument[]): string {
  const marks = bases.flatMap(({ root }) => {
    const mark = findNode(root, "mark");
    return mark?.kind === "scalar" ? [mark.text] : [];
  });
  const shown = marks.slice(0, MOST_MARKS).join(", ");
  const more = bases.length > MOST_MARKS && marks.length > MOST_MARKS ? ` and ${bases.length - MOST_MARKS} more` : "";
  return `${bases.length} ${bases.length === 1 ? "base" : "bases"}${shown === "" ? "" : `: ${shown}${more}`}`;
}
