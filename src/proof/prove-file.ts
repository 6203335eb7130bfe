/** Proves one cut file: reads it, and matches it with a job where one is given. */
import type { Job } from "../job/model/job.js";
import { type CutFileFinding, LARGEST_CUT_FILE, type LayerRoles, readCutFile } from "../readers/dxf.js";
import type { BaseWithRods } from "../rods/index.js";
import type { Unit } from "../units/index.js";
import { targetsOf } from "./known-plates.js";
import { matchFile } from "./match-file.js";
import type { KnownPlate, ProvedFile } from "./model.js";

/** What files are proved against: the plates of a job, worked out once for all files. */
export interface Against {
  readonly unit: Unit;
  readonly layers: LayerRoles;
  readonly targets: readonly KnownPlate[];
}

/** The plates of a job and the layers of its shop. */
export function againstJob({ job, bases }: { readonly job: Job; readonly bases: readonly BaseWithRods[] }): Against {
  const { outline, holes, openings, marks, drill } = job.shop.cutFile.layers;
  return {
    unit: job.unit,
    layers: { cut: [outline, holes, openings], mark: [marks, drill] },
    targets: targetsOf(job, bases),
  };
}

/** Any bytes give a result: a broken file is a finding, never an exception. */
export function proveFile(bytes: Uint8Array, path: string, against: Against | null): ProvedFile {
  const file = readCutFile(bytes, against === null ? {} : { layers: against.layers });
  const matched = against === null ? null : matchFile(file, path, against.targets, against.unit);
  const { version, unit, layers, outline, cutLength, pierces, netArea } = file;
  return {
    path,
    version,
    unit,
    layers,
    findings: stopsFirst([...file.findings, ...(matched?.findings ?? [])]),
    outline: outline && { extent: outline.extent, area: outline.area },
    holes: file.holes.map(({ x, y, diameter }) => ({ x, y, diameter })),
    openings: file.openings.map(({ extent, area }) => ({ extent, area })),
    cutLength,
    pierces,
    netArea,
    match: matched?.match ?? null,
  };
}

/** A file that is too large is refused by its size, unread. */
export function refuseLargeFile(size: number, path: string): ProvedFile | null {
  if (size <= LARGEST_CUT_FILE) return null;
  const message = `the file has ${size} bytes; at most ${LARGEST_CUT_FILE} are read`;
  const empty = proveFile(new Uint8Array(0), path, null);
  return { ...empty, findings: [{ code: "too-large", severity: "stop", message, count: 1, at: null }] };
}

function stopsFirst(findings: readonly CutFileFinding[]): readonly CutFileFinding[] {
  return [...findings.filter(isStop), ...findings.filter((finding) => !isStop(finding))];
}

/** True where the file is not to be cut as it is. */
export function isStop({ severity }: CutFileFinding): boolean {
  return severity === "stop";
}
