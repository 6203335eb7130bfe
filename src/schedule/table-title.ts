/** The title that stands above the headings of a table. */
import type { HeadingRange } from "./heading-rows.js";
import { hasFigure, isTitle, NOTE_START, NOTES_HEAD, oneLine, plainText } from "./sheet-words.js";

/** A title, and its first row; without a title the first row of the headings. */
export interface TableTitle {
  readonly text: string;
  readonly top: number;
}

/** Rows of a title, at most, and blank rows between it and the headings. */
const [MOST_TITLE_ROWS, MOST_BLANK_ROWS] = [6, 2];

/** The rows with a single text right above the headings, not above `highest`; the text is that of a schedule's title, else the lowest. */
export function titleAbove(range: HeadingRange, highest: number): TableTitle {
  let top = range.top;
  const texts: string[] = [];
  for (let row = range.top - 1, blanks = 0; row >= highest && texts.length < MOST_TITLE_ROWS; row--) {
    const filled = textsIn(range, row);
    const [only] = filled;
    if (only === undefined) {
      blanks++;
      if (texts.length > 0 || blanks > MOST_BLANK_ROWS) break;
      continue;
    }
    if (filled.length > 1 || !mayBeTitle(only)) break;
    texts.push(only);
    top = row;
  }
  return { text: texts.find((text) => /schedule|table|list/i.test(text)) ?? texts[0] ?? "", top };
}

function mayBeTitle(text: string): boolean {
  if (NOTE_START.test(text) || NOTES_HEAD.test(text)) return false;
  return isTitle(text) || !hasFigure(text) || text.split(/\s+/).length > 1;
}

function textsIn({ grid, left, right }: HeadingRange, row: number): readonly string[] {
  const texts: string[] = [];
  for (let column = left; column <= right && texts.length < 2; column++) {
    const text = grid.text(row, column);
    if (text !== "") texts.push(oneLine(text));
  }
  return texts;
}

/** True for the same title again, also as its continuation. */
export function isSameTitle(title: string, before: string): boolean {
  const bare = (text: string) => plainText(text.replace(/\(?\bcont(?:inued|'?d|\.)?\b.*$/i, ""));
  return bare(title) === "" || bare(title) === bare(before);
}
