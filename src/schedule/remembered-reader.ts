/** Cells of a column repeat each other: a text is read once, and its nodes are put in the place of each cell. */
import type { SourceNode, SourcePlace } from "../readers/source.js";
import type { CellPart, CellReading } from "./model.js";
import type { CellReader } from "./sheet-cell.js";

/** Different texts of a column that are kept. */
const MOST_KEPT = 2_000;

/** The same reader, quicker; what a text gives hangs on the text alone but for its place. */
export function remembered(read: CellReader): CellReader {
  const known = new Map<string, CellReading>();
  return (text, place) => {
    const before = known.get(text);
    if (before !== undefined) return inPlace(before, place);
    const reading = read(text, place);
    if (known.size < MOST_KEPT) known.set(text, reading);
    return reading;
  };
}

function inPlace(reading: CellReading, place: SourcePlace): CellReading {
  switch (reading.kind) {
    case "value":
      return { ...reading, parts: reading.parts.map((part) => partIn(part, place)) };
    case "choice": {
      const readings = reading.readings.map((each) => ({
        ...each,
        parts: each.parts.map((part) => partIn(part, place)),
      }));
      return { ...reading, readings };
    }
    case "blank":
    case "reference":
    case "fault":
      return reading;
  }
}

function partIn({ key, node }: CellPart, place: SourcePlace): CellPart {
  return { key, node: nodeIn(node, place) };
}

function nodeIn(node: SourceNode, place: SourcePlace): SourceNode {
  switch (node.kind) {
    case "scalar":
      return { ...node, place };
    case "list":
      return { ...node, items: node.items.map((item) => nodeIn(item, place)), place };
    case "map":
      return {
        ...node,
        entries: node.entries.map(({ key, value }) => ({ key, place, value: nodeIn(value, place) })),
        place,
      };
  }
}
