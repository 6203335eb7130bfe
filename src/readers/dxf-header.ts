/** The header variables of a DXF file that matter for cutting: version, unit and extents. */
import { type DrawingUnitRow, drawingUnits } from "../standards/index.js";
import type { FindingList } from "./dxf-findings.js";
import type { TagRange, Tags } from "./dxf-tags.js";

/** A box as the header states it, in the file's unit. */
export interface HeaderBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The header variables that say what the file is; boxes in the file's unit. */
export interface DxfHeader {
  /** `$ACADVER`, as AC1009 (R12) or AC1015 (R2000); null where the file does not say. */
  readonly version: string | null;
  /** The unit of `$INSUNITS` by its short name; null where it is absent, unitless or not a known number. */
  readonly unit: string | null;
  /** `$EXTMIN` and `$EXTMAX`; null where they are absent or unset (1e20). */
  readonly extents: HeaderBox | null;
  /** `$LIMMIN` and `$LIMMAX`. */
  readonly limits: HeaderBox | null;
}

const BY_CODE: ReadonlyMap<string, DrawingUnitRow> = new Map(drawingUnits.map((row) => [row.code, row]));
const MM_PER_UNIT: ReadonlyMap<string, number> = new Map(drawingUnits.map((row) => [row.unit, row.millimetres]));

/** Millimetres in a unit of the file; a file that names none is measured as if it were in millimetres. */
export function millimetresPer(unit: string | null): number {
  return MM_PER_UNIT.get(unit ?? "mm") ?? 1;
}

/** Tags of each variable, by its name. */
type Variables = ReadonlyMap<string, TagRange>;

/** Reads the header and reports what it lacks or contradicts. */
export function readHeader(tags: Tags, range: TagRange | undefined, findings: FindingList): DxfHeader {
  const variables = collectVariables(tags, range);
  const version = tags.text(findTag(tags, variables.get("$ACADVER"), 1)) || null;
  if (version === null && tags.count > 0)
    findings.add("no-version", "advise", "the header names no version ($ACADVER)");
  return {
    version,
    unit: tags.count === 0 ? null : readUnit(tags, variables, findings),
    extents: readBox(tags, variables, "$EXTMIN", "$EXTMAX"),
    limits: readBox(tags, variables, "$LIMMIN", "$LIMMAX"),
  };
}

function collectVariables(tags: Tags, range: TagRange | undefined): Variables {
  const variables = new Map<string, TagRange>();
  if (range === undefined) return variables;
  const { codes } = tags;
  let end = range.first;
  for (let index = range.first; index < range.end; index = end) {
    end = index + 1;
    while (end < range.end && codes[end] !== 9) end++;
    if (codes[index] === 9) variables.set(tags.text(index), { first: index + 1, end });
  }
  return variables;
}

/** The tag of a variable with a group code; beyond the last tag where there is none. */
function findTag(tags: Tags, range: TagRange | undefined, code: number): number {
  for (let index = range?.first ?? 0; index < (range?.end ?? 0); index++) if (tags.codes[index] === code) return index;
  return tags.count;
}

function readUnit(tags: Tags, variables: Variables, findings: FindingList): string | null {
  const number = tags.text(findTag(tags, variables.get("$INSUNITS"), 70));
  const row = BY_CODE.get(number);
  if (row === undefined) {
    const said = number === "" ? "$INSUNITS is missing" : `$INSUNITS is ${number}`;
    findings.add("no-unit", "stop", `the file does not say its unit: ${said}`);
    return null;
  }
  const measurement = tags.text(findTag(tags, variables.get("$MEASUREMENT"), 70));
  if (measurement === "") {
    findings.add("no-measurement", "advise", "$MEASUREMENT is missing: some importers then take the unit wrongly");
  } else if (measurement !== (row.metric ? "1" : "0")) {
    findings.add(
      "unit-contradiction",
      "stop",
      `$MEASUREMENT ${measurement} contradicts $INSUNITS ${number} (${row.unit})`,
    );
  }
  return row.unit;
}

function readBox(tags: Tags, variables: Variables, low: string, high: string): HeaderBox | null {
  const read = (name: string, code: number) => tags.number(findTag(tags, variables.get(name), code));
  const [x0, y0, x1, y1] = [read(low, 10), read(low, 20), read(high, 10), read(high, 20)];
  if (x0 === null || y0 === null || x1 === null || y1 === null || Math.abs(x0) >= 1e20) return null;
  return { x0, y0, x1, y1 };
}
