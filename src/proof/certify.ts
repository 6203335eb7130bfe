/**
 * Certifies a cut file that was just written: its bytes, as the reader of foreign files has them, against the plate that they
 * were made of. The writer has no part in it.
 */
import type { Base, Job } from "../job/model/job.js";
import { servedMarks } from "../job/model/shared.js";
import type { CutFileFinding, LayerRoles } from "../readers/dxf.js";
import type { DxfDrawing } from "../readers/dxf-drawing.js";
import type { CertificateResult, CertifiedMatch, CertifiedReading } from "../summary/certificate.js";
import { areaInUnit, millimetresInUnit } from "../summary/summarize.js";
import type { Plate, PlateMeasures } from "../template/model.js";
import type { Unit } from "../units/length.js";
import { templateTarget } from "./known-plates.js";
import { compareFigures, type PlateFigures } from "./listed-plate.js";
import type { FileMatch, ProvedFile } from "./model.js";
import { isStop, layerRolesOf, proveDrawing } from "./prove-file.js";
import { readingOf } from "./reading.js";

/** The plate that a file was made of. */
export interface CertifiedPlate {
  readonly job: Job;
  readonly base: Base;
  readonly plate: Plate;
  readonly measures: PlateMeasures;
}

/** What the file holds, and whether that is the plate. `drawing` is what was read from its bytes. */
export function certifyCutFile(drawing: DxfDrawing, path: string, of: CertifiedPlate): CertifiedReading {
  const { job, base, plate, measures } = of;
  const against = { unit: job.unit, layers: layerRolesOf(job), targets: [templateTarget(base, plate)] };
  const file = withoutExtents(proveDrawing(cutPart(drawing, against.layers), path, against));
  const findings = [
    ...file.findings,
    ...poseFindings(file.match),
    ...compareFigures(file, figuresOf(measures, job.unit), job.unit, "its plate"),
  ];
  const words = (each: CutFileFinding): string => `${each.code}: ${each.message}`;
  return {
    ...{ plate: plate.mark, bases: servedMarks(base), version: file.version, unit: file.unit },
    ...readingOf(file),
    match: file.match && matchOf(file.match),
    result: resultOf(file.match, findings),
    stops: findings.filter(isStop).map(words),
    looks: findings.filter((each) => !isStop(each)).map(words),
  };
}

/**
 * What is cut: strokes of marks are most of a file, and were held one by one against the plate's when it was read back, as were
 * the extents that its header says of all.
 */
function cutPart(drawing: DxfDrawing, { mark }: LayerRoles): DxfDrawing {
  const marks = new Set(mark.map((layer) => layer.toUpperCase()));
  return { ...drawing, entities: drawing.entities.filter(({ layer }) => !marks.has(layer.toUpperCase())) };
}

function withoutExtents(file: ProvedFile): ProvedFile {
  return { ...file, findings: file.findings.filter(({ code }) => code !== "extents") };
}

function matchOf({ turn, mirrored, scale, positionError, diameterError, missing, extra }: FileMatch): CertifiedMatch {
  return { turn, mirrored, scale, positionError, diameterError, missing, extra };
}

/** A file of our own lies as its plate does: a turn that is only to be looked at in a foreign one is a fault here. */
function poseFindings(match: FileMatch | null): readonly CutFileFinding[] {
  if (match === null || match.turn === 0) return [];
  const message = `the file lies turned by ${match.turn} degrees on its plate`;
  return [{ code: "turned", severity: "stop", message, count: 1, at: null }];
}

const UNMATCHED = "too-many-holes";

function resultOf(match: FileMatch | null, findings: readonly CutFileFinding[]): CertificateResult {
  const stops = findings.filter(isStop);
  if (match !== null) return stops.length === 0 ? "pass" : "fail";
  return stops.every(({ code }) => code === UNMATCHED) && stops.length > 0 ? "not proved" : "fail";
}

function figuresOf(measures: PlateMeasures, unit: Unit): PlateFigures {
  const inUnit = (length: number): number => millimetresInUnit(length, unit);
  const { extent, outlineArea, outlinePerimeter, cutLength, pierces } = measures;
  return {
    outline: {
      extent: [inUnit(extent.x0), inUnit(extent.y0), inUnit(extent.x1), inUnit(extent.y1)],
      area: areaInUnit(outlineArea, unit),
      perimeter: inUnit(outlinePerimeter),
    },
    ...{ cutLength: inUnit(cutLength), pierces },
  };
}
