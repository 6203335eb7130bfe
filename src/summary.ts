/** The machine form of a package: `summary.json`, schema 1. Stable for other programs. */
import type { CheckRow, Quantity } from "./checks/model.js";
import { answerReach } from "./checks/words.js";
import type { Base, Density, Input, Job } from "./job/model/job.js";
import type { Hole, HoleRole, Plate, PlateMeasures } from "./template/model.js";
import type { Length, Unit } from "./units/length.js";
import { NM_PER_MM, roundSymmetric, toUnit } from "./units/length.js";

export interface SummaryFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  /** Only for cut files: the layers that are cut, and those that are marked. */
  readonly layers?: { readonly cut: readonly string[]; readonly mark: readonly string[] };
}

export interface SummaryHole {
  readonly tag: string;
  readonly role: HoleRole;
  readonly x: number;
  readonly y: number;
  readonly diameter?: number;
  readonly width?: number;
  readonly height?: number;
  readonly radius?: number;
  readonly rod?: number;
  readonly made: "cut" | "drill";
}

export interface SummaryCheck {
  readonly rule: string;
  readonly clause: string;
  readonly edition: string;
  readonly subject: string;
  readonly severity: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly sense: string | null;
  readonly margin: number | null;
  readonly unit: string;
  readonly status: string;
  readonly note: string;
  readonly answer?: { readonly by: string; readonly date: string; readonly text: string };
}

export interface SummaryBase {
  readonly mark: string;
  readonly quantity: number;
  readonly held: boolean;
  readonly template: {
    readonly mark: string;
    readonly quantity: number;
    readonly outline: {
      readonly kind: "path" | "circle";
      readonly extent: readonly [number, number, number, number];
      readonly area: number;
      readonly perimeter: number;
    };
    readonly thickness: number;
    readonly netArea: number;
    readonly weight: { readonly value: number; readonly unit: "lb" | "kg" } | null;
    readonly cutLength: number;
    readonly pierces: number;
    readonly holes: readonly SummaryHole[];
  };
  readonly checks: readonly SummaryCheck[];
  readonly files: readonly SummaryFile[];
}

export interface Summary {
  readonly schema: 1;
  readonly job: {
    readonly number: string;
    readonly title: string;
    readonly revision: string;
    readonly status: string;
    readonly unit: "in" | "mm";
    readonly editions: Readonly<Record<string, string>>;
  };
  readonly bases: readonly SummaryBase[];
  readonly checks: readonly SummaryCheck[];
  readonly files: readonly SummaryFile[];
}

/** Area in square millimetres -> the job's unit squared, rounded to 1e-6 in2 or 1e-5 mm2: half away from zero. */
export function areaInUnit(area: number, unit: Unit): number {
  const perUnit = unit === "in" ? 645.16 : 1;
  const steps = unit === "in" ? 1e6 : 1e5;
  return roundSymmetric((area / perUnit) * steps) / steps || 0;
}

/** A length in millimetres (a double) -> the job's unit, rounded as every length of the summary. */
export function millimetresInUnit(length: number, unit: Unit): number {
  return toUnit(length * NM_PER_MM, unit);
}

/** A quantity of the ledger as a plain number in the job's unit. Counts stay as they are. */
export function quantityInUnit(quantity: Quantity | null, unit: Unit): number | null {
  if (quantity === null) return null;
  return quantity.kind === "length" ? toUnit(quantity.twice / 2, unit) : quantity.count;
}

/** One ledger row in the summary's form. */
export function summarizeCheck(row: CheckRow, unit: Unit): SummaryCheck {
  const measured = row.value ?? row.limit;
  return {
    rule: row.rule,
    clause: row.clause,
    edition: row.edition,
    subject: row.subject,
    severity: row.severity,
    value: quantityInUnit(row.value, unit),
    limit: quantityInUnit(row.limit, unit),
    sense: row.sense,
    margin: quantityInUnit(row.margin, unit),
    unit: measured?.kind === "length" ? unit : "",
    status: row.status,
    note: row.answer === null ? row.note : `${row.note}${answerReach(row.answer)}`,
    ...(row.answer === null ? {} : { answer: { by: row.answer.by, date: row.answer.date, text: row.answer.text } }),
  };
}

/** One hole in the summary's form: centre and size in the job's unit, the base's own axes. */
export function summarizeHole(hole: Hole, unit: Unit): SummaryHole {
  const { shape } = hole;
  const size =
    shape.kind === "circle"
      ? { diameter: toUnit(shape.diameter, unit) }
      : { width: toUnit(shape.width, unit), height: toUnit(shape.height, unit), radius: toUnit(shape.radius, unit) };
  return {
    tag: hole.tag,
    role: hole.role,
    x: millimetresInUnit(hole.center.x, unit),
    y: millimetresInUnit(hole.center.y, unit),
    ...size,
    ...(hole.rod === null ? {} : { rod: toUnit(hole.rod.diameter, unit) }),
    made: hole.made,
  };
}

const POUND_IN_KG = 0.45359237;
const CUBIC_FOOT_IN_MM3 = 304.8 ** 3;

/** Weight of one template: net area x thickness x density, in lb or kg by the job's unit; null without a density. */
export function weighPlate(
  netArea: number,
  thickness: Length,
  density: Input<Density>,
  unit: Unit,
): { readonly value: number; readonly unit: "lb" | "kg" } | null {
  if (density.kind === "missing") return null;
  const volume = (netArea * thickness) / NM_PER_MM;
  const pounds =
    density.value.unit === "lb/ft3"
      ? (volume / CUBIC_FOOT_IN_MM3) * density.value.value
      : ((volume / 1e9) * density.value.value) / POUND_IN_KG;
  const value = unit === "in" ? pounds : pounds * POUND_IN_KG;
  return { value: roundSymmetric(value * 1e6) / 1e6, unit: unit === "in" ? "lb" : "kg" };
}

/** What the summary says of one base, before its files are known. */
export function summarizeBase(
  job: Job,
  base: Base,
  plate: Plate,
  measures: PlateMeasures,
  rows: readonly CheckRow[],
  held: boolean,
): Omit<SummaryBase, "files"> {
  const { unit } = job;
  const { extent } = measures;
  const inUnit = (length: number): number => millimetresInUnit(length, unit);
  return {
    mark: base.mark,
    quantity: base.quantity,
    held,
    template: {
      mark: plate.mark,
      quantity: plate.quantity,
      outline: {
        kind: plate.outlineKind,
        extent: [inUnit(extent.x0), inUnit(extent.y0), inUnit(extent.x1), inUnit(extent.y1)],
        area: areaInUnit(measures.outlineArea, unit),
        perimeter: inUnit(measures.outlinePerimeter),
      },
      thickness: toUnit(plate.thickness, unit),
      netArea: areaInUnit(measures.netArea, unit),
      weight: weighPlate(measures.netArea, plate.thickness, job.shop.density[plate.material], unit),
      cutLength: inUnit(measures.cutLength),
      pierces: measures.pierces,
      holes: plate.holes.map((hole) => summarizeHole(hole, unit)),
    },
    checks: rows.map((row) => summarizeCheck(row, unit)),
  };
}

/** What the summary says of the job itself. */
export function summarizeJob(job: Job): Summary["job"] {
  const { number, title, revision, status, unit, editions } = job;
  const { templateHoles, baseHoles, edges, concrete, placing } = editions;
  return {
    number,
    title,
    revision,
    status,
    unit,
    editions: { rules: editions.set, templateHoles, baseHoles, edges, concrete, placing },
  };
}
