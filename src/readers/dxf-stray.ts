/** Entities that no cut file should hold, and what is told of them. */
import type { FindingList } from "./dxf-findings.js";
import type { TagRange, Tags } from "./dxf-tags.js";

const STRAY: readonly (readonly [code: string, what: string, types: ReadonlySet<string>])[] = [
  ["stray-text", "texts", new Set(["TEXT", "MTEXT", "ATTRIB", "ATTDEF", "RTEXT", "ARCALIGNEDTEXT"])],
  [
    "stray-dimension",
    "dimensions and leaders",
    new Set(["DIMENSION", "ARC_DIMENSION", "LARGE_RADIAL_DIMENSION", "LEADER", "MULTILEADER", "MLEADER", "TOLERANCE"]),
  ],
  ["stray-hatch", "hatches and fills", new Set(["HATCH", "MPOLYGON", "SOLID", "TRACE", "WIPEOUT"])],
  ["stray-point", "points", new Set(["POINT"])],
  [
    "stray-picture",
    "pictures and references",
    new Set(["IMAGE", "PDFUNDERLAY", "DWFUNDERLAY", "DGNUNDERLAY", "OLE2FRAME"]),
  ],
];

/** An entity that is not read: what kind of thing it is, and where the first stands. */
export function reportUnread(tags: Tags, range: TagRange, findings: FindingList): void {
  const type = tags.text(range.first);
  const at = firstPlace(tags, range);
  if (hasPaperSpace(tags, range)) {
    findings.add("paper-space", "advise", `${type} in paper space is not read`);
    return;
  }
  const stray = STRAY.find(([, , types]) => types.has(type));
  if (stray === undefined) findings.add("unread-entity", "stop", `entities of type ${type} are not read`, at);
  else
    findings.add(
      stray[0],
      "stop",
      `entities of type ${type} are not read: ${stray[1]} do not belong in a cut file`,
      at,
    );
}

function hasPaperSpace(tags: Tags, { first, end }: TagRange): boolean {
  for (let index = first + 1; index < end; index++) if (tags.codes[index] === 67) return tags.number(index) === 1;
  return false;
}

function firstPlace(tags: Tags, { first, end }: TagRange): readonly [number, number] | undefined {
  let x: number | null = null;
  for (let index = first + 1; index < end; index++) {
    if (tags.codes[index] === 10) x = tags.number(index);
    if (tags.codes[index] !== 20 || x === null) continue;
    const y = tags.number(index);
    return y === null ? undefined : [x, y];
  }
  return undefined;
}
