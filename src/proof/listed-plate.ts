/** A cut file of a package against the template that its summary lists it for: the file as it was checked, by its own figures. */
import { circle, pointAt, rectangle } from "../geometry/index.js";
import type { CutFileFinding, LayerRoles } from "../readers/dxf.js";
import { millimetresPer } from "../readers/dxf.js";
import type { CutCertificate } from "../summary/certificate.js";
import type { SummaryBase, SummaryHole } from "../summary/model.js";
import { millimetres, type Unit } from "../units/length.js";
import { CONTOUR_MM, type KnownPlate, type ProvedFile, type TargetHole } from "./model.js";
import { isStop, proveFile } from "./prove-file.js";
import { readingOf } from "./reading.js";

/** A template as a summary has it, and the layers that the summary names of the file. */
export interface ListedPlate {
  readonly base: string;
  readonly template: SummaryBase["template"];
  readonly unit: "in" | "mm";
  readonly layers: LayerRoles;
  /** What was read from the file when it was made; null in packages of programs that did not certify. */
  readonly certificate: CutCertificate | null;
}

/** Proves a file of a package against its own template. */
export function proveListedFile(bytes: Uint8Array, path: string, listed: ListedPlate): ProvedFile {
  const { unit, layers, certificate } = listed;
  const isTemplate = certificate === null || certificate.plate === listed.template.mark;
  const targets = isTemplate ? [plateOf(listed)] : [];
  const file = proveFile(bytes, path, { unit, layers, targets });
  const own = file.match === null ? [] : figureFindings(file, listed);
  const findings = [...file.findings, ...own, ...(certificate === null ? [] : certificateFindings(file, certificate))];
  return { ...file, findings: [...findings.filter(isStop), ...findings.filter((each) => !isStop(each))] };
}

/** How far a figure may be from that of the certificate: twice the rounding of both. */
const ROUNDING = 2e-6;

/** The same reader has found the same in the same bytes; any figure that is another tells of a file, or a certificate, that is. */
function certificateFindings(file: ProvedFile, certificate: CutCertificate): readonly CutFileFinding[] {
  const now = readingOf(file);
  const figures = (reading: ReturnType<typeof readingOf>): Readonly<Record<string, number>> => ({
    ...{ contours: reading.contours, "round holes": reading.holes, "other openings": reading.openings },
    ...{ x0: reading.extent?.[0] ?? 0, y0: reading.extent?.[1] ?? 0, x1: reading.extent?.[2] ?? 0 },
    ...{ y1: reading.extent?.[3] ?? 0, "area inside the outline": reading.area, "net area": reading.netArea },
    ...{ "cut length": reading.cutLength, pierces: reading.pierces },
  });
  const [has, wants] = [figures(now), figures(certificate)];
  return Object.entries(has).flatMap(([what, value]): CutFileFinding[] => {
    const said = wants[what] ?? 0;
    if (Math.abs(value - said) <= ROUNDING) return [];
    const message = `${what}: ${short(value)} is read now, its certificate says ${short(said)}`;
    return [{ code: "certificate-differs", severity: "stop", message, count: 1, at: null }];
  });
}

/** A summary tells the outline whole only where it is a circle. */
function plateOf({ base, template, unit }: ListedPlate): KnownPlate {
  const mm = millimetresPer(unit);
  const [x0, y0, x1, y1] = template.outline.extent;
  const holes = template.holes.flatMap(({ tag, x, y, diameter, made }): TargetHole[] =>
    diameter === undefined ? [] : [{ tag, at: { x: x * mm, y: y * mm }, diameter: diameter * mm, made }],
  );
  return {
    ...{ role: "template", mark: template.mark, base, bases: template.bases, holes },
    box: { x0: x0 * mm, y0: y0 * mm, x1: x1 * mm, y1: y1 * mm },
    outline:
      template.outline.kind === "circle"
        ? circle(
            pointAt(millimetres(((x0 + x1) / 2) * mm), millimetres(((y0 + y1) / 2) * mm)),
            millimetres((x1 - x0) * mm),
          )
        : null,
    openings: template.holes.flatMap((hole) => openingOf(hole, mm)),
  };
}

function openingOf({ x, y, width, height, radius }: SummaryHole, mm: number): KnownPlate["openings"] {
  if (width === undefined || height === undefined) return [];
  const size = millimetres((radius ?? 0) * mm);
  const corner = size === 0 ? { kind: "square" as const } : { kind: "round" as const, radius: size };
  return [
    rectangle(
      pointAt(millimetres(x * mm), millimetres(y * mm)),
      millimetres(width * mm),
      millimetres(height * mm),
      corner,
    ),
  ];
}

/** What is measured of a plate: lengths in one unit, areas in that unit squared. */
export interface PlateFigures {
  readonly outline: {
    readonly extent: readonly [number, number, number, number];
    readonly area: number;
    readonly perimeter: number;
  };
  readonly cutLength: number;
  readonly pierces: number;
}

function figureFindings(file: ProvedFile, { template, unit }: ListedPlate): readonly CutFileFinding[] {
  return compareFigures(file, template, unit, "the summary");
}

/** Size and area of the outline, length of cut and pierces: what a moved side or another corner changes. */
export function compareFigures(
  file: ProvedFile,
  { outline, cutLength, pierces }: PlateFigures,
  unit: Unit,
  who: string,
): readonly CutFileFinding[] {
  if (file.outline === null) return [];
  const each = millimetresPer(file.unit ?? unit) / millimetresPer(unit);
  const near = CONTOUR_MM / millimetresPer(unit);
  const [x0, y0, x1, y1] = file.outline.extent;
  const [a0, b0, a1, b1] = outline.extent;
  const { area, perimeter } = outline;
  const rows: readonly (readonly [string, number, number, number])[] = [
    ["the outline's size in x", (x1 - x0) * each, a1 - a0, 2 * near],
    ["the outline's size in y", (y1 - y0) * each, b1 - b0, 2 * near],
    ["the area inside the outline", file.outline.area * each * each, area, near * perimeter],
    ["the length of cut", file.cutLength * each, cutLength, near * Math.max(4, pierces)],
    ["the number of pierces", file.pierces, pierces, 0],
  ];
  return rows.flatMap(([what, has, wants, allowed]): CutFileFinding[] => {
    if (Math.abs(has - wants) <= allowed) return [];
    const message = `${what} is ${short(has)}, ${who} says ${short(wants)}`;
    return [{ code: "summary-differs", severity: "stop", message, count: 1, at: null }];
  });
}

function short(value: number): string {
  return String(Number(value.toPrecision(9)));
}
