/** Proves one cut file: reads it, and matches it with a job where one is given. */
import type { Job } from "../job/model/job.js";
import {
  type CutFile,
  type CutFileFinding,
  LARGEST_CUT_FILE,
  type LayerRoles,
  readCutDrawing,
} from "../readers/dxf.js";
import { type DxfDrawing, readDrawing } from "../readers/dxf-drawing.js";
import type { BaseWithRods } from "../rods/index.js";
import type { Unit } from "../units/index.js";
import { targetsOf } from "./known-plates.js";
import { matchFile } from "./match-file.js";
import type { KnownPlate, ProvedFile } from "./model.js";

/** What files are proved against: the plates of a job, worked out once for all files. Without plates nothing is matched. */
export interface Against {
  readonly unit: Unit;
  readonly layers: LayerRoles;
  readonly targets: readonly KnownPlate[];
}

/** The plates of a job and the layers of its shop. */
export function againstJob({ job, bases }: { readonly job: Job; readonly bases: readonly BaseWithRods[] }): Against {
  return { unit: job.unit, layers: layerRolesOf(job), targets: targetsOf(job, bases) };
}

/** The layers of the job's shop. */
export function layerRolesOf({ shop }: Pick<Job, "shop">): LayerRoles {
  const { outline, holes, openings, marks, drill } = shop.cutFile.layers;
  return { cut: [outline, holes, openings], mark: [marks, drill] };
}

/** Any bytes give a result: a broken file is a finding, never an exception. */
export function proveFile(bytes: Uint8Array, path: string, against: Against | null): ProvedFile {
  return proveDrawing(readDrawing(bytes), path, against);
}

/** The same of a file whose entities are read already. */
export function proveDrawing(drawing: DxfDrawing, path: string, against: Against | null): ProvedFile {
  const file = withinMeasure(readCutDrawing(drawing, against === null ? {} : { layers: against.layers }));
  const hasTargets = against !== null && against.targets.length > 0;
  const matched = hasTargets ? matchFile(file, path, against.targets, against.unit) : null;
  const { version, unit, layers, outline, cutLength, pierces, netArea } = file;
  return {
    path,
    version,
    unit,
    layers,
    findings: bounded(stopsFirst(withOpenOutline([...file.findings, ...(matched?.findings ?? [])]))),
    outline: outline && { extent: outline.extent, area: outline.area },
    holes: file.holes.map(({ x, y, diameter }) => ({ x, y, diameter })),
    openings: file.openings.map(({ extent, area }) => ({ extent, area })),
    cutLength,
    pierces,
    netArea,
    match: matched?.match ?? null,
  };
}

/** What is said of a file that may be whole but for an outline that is not closed: another contour is taken for it then. */
const OPEN_INSTEAD: ReadonlySet<string> = new Set(["second-outline", "no-match", "scaled", "mark-outside", "odd-size"]);

function withOpenOutline(findings: readonly CutFileFinding[]): readonly CutFileFinding[] {
  if (!findings.some(({ code }) => code === "open-contour")) return findings;
  return findings.map((each) =>
    OPEN_INSTEAD.has(each.code)
      ? { ...each, message: `${each.message} - unless the outline is the contour that is not closed` }
      : each,
  );
}

/** A file that is too large is refused by its size, unread. */
export function refuseLargeFile(size: number, path: string): ProvedFile | null {
  if (size <= LARGEST_CUT_FILE) return null;
  const message = `the file has ${size} bytes; at most ${LARGEST_CUT_FILE} are read`;
  const empty = proveFile(new Uint8Array(0), path, null);
  return { ...empty, findings: [{ code: "too-large", severity: "stop", message, count: 1, at: null }] };
}

/** Most findings of one file that are told; a file may have as many layers as lines. */
const MOST_FINDINGS = 100;

function bounded(findings: readonly CutFileFinding[]): readonly CutFileFinding[] {
  if (findings.length <= MOST_FINDINGS) return findings;
  const rest = findings.slice(MOST_FINDINGS - 1);
  const stops = rest.filter(isStop).length;
  const message = `${rest.length} more findings, ${stops} of them STOP, are not listed`;
  const severity = stops > 0 ? "stop" : "advise";
  return [...findings.slice(0, MOST_FINDINGS - 1), { code: "more-findings", severity, message, count: 1, at: null }];
}

/** A file that draws so far or so large that its figures are no numbers has none, and is not to be cut. */
function withinMeasure(file: CutFile): CutFile {
  const { outline, holes, openings, cutLength, netArea } = file;
  const figures = [
    ...(outline === null ? [] : [...outline.extent, outline.area]),
    ...holes.flatMap(({ x, y, diameter }) => [x, y, diameter]),
    ...openings.flatMap(({ extent, area }) => [...extent, area]),
    ...[cutLength, netArea],
  ];
  const isMeasured = ({ message, at }: CutFileFinding) =>
    !/\b(NaN|Infinity)\b/.test(message) && (at === null || at.every(Number.isFinite));
  const findings = file.findings.filter(isMeasured);
  if (figures.every(Number.isFinite) && findings.length === file.findings.length) return file;
  const message = "the file draws farther or larger than can be measured: a coordinate or a size is wrong";
  return {
    ...file,
    findings: [{ code: "beyond-measure", severity: "stop", message, count: 1, at: null }, ...findings],
    ...{ outline: null, outlineContour: null, holes: [], openings: [], cutLength: 0, pierces: 0, netArea: 0 },
  };
}

function stopsFirst(findings: readonly CutFileFinding[]): readonly CutFileFinding[] {
  return [...findings.filter(isStop), ...findings.filter((finding) => !isStop(finding))];
}

/** True where the file is not to be cut as it is. */
export function isStop({ severity }: CutFileFinding): boolean {
  return severity === "stop";
}
