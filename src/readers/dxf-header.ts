/** The header variables of a DXF file that matter for cutting: version, unit and extents. */
import type { FindingList } from "./dxf-findings.js";
import { readNumber, type TagRange, type Tags } from "./dxf-tags.js";

/** A box as the header states it, in the file's unit. */
export interface HeaderBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

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

/** `$INSUNITS` (published DXF reference). */
const UNIT_NAMES: Readonly<Record<string, string>> = {
  "1": "in",
  "2": "ft",
  "3": "mi",
  "4": "mm",
  "5": "cm",
  "6": "m",
  "7": "km",
  "8": "microinch",
  "9": "mil",
  "10": "yd",
  "21": "US survey foot",
};

const METRIC = new Set(["mm", "cm", "m", "km"]);

type Variables = ReadonlyMap<string, ReadonlyMap<number, string>>;

/** Reads the header and reports what it lacks or contradicts. */
export function readHeader(tags: Tags, range: TagRange | undefined, findings: FindingList): DxfHeader {
  const variables = collectVariables(tags, range);
  const version = variables.get("$ACADVER")?.get(1) ?? null;
  if (version === null && tags.codes.length > 0)
    findings.add("no-version", "advise", "the header names no version ($ACADVER)");
  return {
    version,
    unit: tags.codes.length === 0 ? null : readUnit(variables, findings),
    extents: readBox(variables, "$EXTMIN", "$EXTMAX", findings),
    limits: readBox(variables, "$LIMMIN", "$LIMMAX", findings),
  };
}

function collectVariables({ codes, values }: Tags, range: TagRange | undefined): Variables {
  const variables = new Map<string, Map<number, string>>();
  if (range === undefined) return variables;
  let current = new Map<number, string>();
  for (let index = range.first; index < range.end; index++) {
    const code = codes[index] ?? 0;
    const value = values[index] ?? "";
    if (code === 9) {
      current = new Map();
      variables.set(value, current);
    } else current.set(code, value);
  }
  return variables;
}

function readUnit(variables: Variables, findings: FindingList): string | null {
  const number = variables.get("$INSUNITS")?.get(70);
  const unit = number === undefined ? undefined : UNIT_NAMES[number];
  if (unit === undefined) {
    const said = number === undefined ? "$INSUNITS is missing" : `$INSUNITS is ${number}`;
    findings.add("no-unit", "stop", `the file does not say its unit: ${said}`);
    return null;
  }
  const measurement = variables.get("$MEASUREMENT")?.get(70);
  if (measurement === undefined) {
    findings.add("no-measurement", "advise", "$MEASUREMENT is missing: some importers then take the unit wrongly");
  } else if (measurement !== (METRIC.has(unit) ? "1" : "0")) {
    findings.add("unit-contradiction", "stop", `$MEASUREMENT ${measurement} contradicts $INSUNITS ${number} (${unit})`);
  }
  return unit;
}

function readBox(variables: Variables, low: string, high: string, findings: FindingList): HeaderBox | null {
  const read = (name: string, code: number) => readNumber(variables.get(name)?.get(code) ?? "", findings);
  const [x0, y0, x1, y1] = [read(low, 10), read(low, 20), read(high, 10), read(high, 20)];
  if (x0 === null || y0 === null || x1 === null || y1 === null || Math.abs(x0) >= 1e20) return null;
  return { x0, y0, x1, y1 };
}
