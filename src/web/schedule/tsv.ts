/** Cells as spreadsheets hand them over: tabs between them, a line a row; a cell with tabs or breaks stands in quotation marks. */

/** Rows of a text that was copied. An inch mark inside a cell is a sign as any other; a closing line break ends the last row. */
export function readTsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  const source = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
  let at = 0;
  while (at <= source.length) {
    const quoted = source[at] === '"' ? quotedAt(source, at) : null;
    const end = quoted?.end ?? endOfCell(source, at);
    rows.at(-1)?.push(quoted?.text ?? source.slice(at, end));
    if (source[end] === "\n") rows.push([]);
    at = end + 1;
  }
  return rows;
}

function endOfCell(source: string, at: number): number {
  const end = source.slice(at).search(/[\t\n]/);
  return end < 0 ? source.length : at + end;
}

/** A cell in quotation marks, where it is closed and holds what needs them; null: the mark is of the text itself. */
function quotedAt(source: string, at: number): { readonly text: string; readonly end: number } | null {
  let end = source.indexOf('"', at + 1);
  while (end >= 0 && source[end + 1] === '"') end = source.indexOf('"', end + 2);
  if (end < 0) return null;
  const next = source[end + 1];
  const isClosed = next === undefined || next === "\t" || next === "\n";
  const inside = source.slice(at + 1, end);
  return isClosed && /[\t\n"]/.test(inside) ? { text: inside.replaceAll('""', '"'), end: end + 1 } : null;
}

/** Rows as a text to be pasted elsewhere. */
export function writeTsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(cellText).join("\t")).join("\n");
}

function cellText(text: string): string {
  return /[\t\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
