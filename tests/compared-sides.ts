/** Sides of a comparison made from jobs in memory, cut files and all. */
import { createHash } from "node:crypto";
import { checkBase } from "../src/checks/checked.js";
import type { Side, TemplateState } from "../src/compare/index.js";
import { makeRodStates, makeTemplateState } from "../src/compare/index.js";
import { writeJoinedDxf } from "../src/formats/cut-dxf-joined.js";
import { writeDrillList } from "../src/formats/drill-list-csv.js";
import type { Base, Job } from "../src/job/model/job.js";
import { roleOf } from "../src/outputs/index.js";
import { placeRods } from "../src/rods/index.js";
import { summarizeBase, summarizeJob, summarizeRods } from "../src/summary/summarize.js";
import { makePlateShape } from "../src/template/index.js";
import { withRods } from "./fixture.js";

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** As `make` would hand the job out; `held`: none is held, or those that the checks hold. */
export function sideOf(job: Job, { held = false } = {}): Side {
  return {
    name: "job.yaml",
    source: "job",
    job: summarizeJob(job),
    templates: job.bases.map((base) => stateOf(job, base, held)),
    rods: makeRodStates(
      withRods(job).bases.map(({ base, rods }) => ({ mark: base.mark, rods: summarizeRods({ job, base, rods }) })),
      job.unit,
    ),
  };
}

function stateOf(job: Job, base: Base, mayHold: boolean): TemplateState {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the job has a fault");
  const shape = makePlateShape(job, base, rods.value);
  if (!shape.ok) throw new Error("the job has a fault");
  const { contour: outline } = shape.value.outline;
  const checked = checkBase(job, { base, rods: rods.value, outline, shape: shape.value });
  const { plate, measures } = checked;
  const held = mayHold ? checked.held : [];
  const { layers, origin } = job.shop.cutFile;
  const isSteel = plate.material === "steel";
  const bytes = isSteel
    ? writeJoinedDxf(plate, {
        draws: "whole",
        unit: job.unit,
        layers,
        origin,
        marks: job.shop.marking.how === "scribe",
      })
    : new TextEncoder().encode(writeDrillList(plate, measures, job.unit));
  const kind = isSteel ? "cut-joined" : "drill-list";
  const files = [{ kind, path: `${base.mark}/file`, bytes: bytes.length, sha256: sha256(bytes) }];
  const { checks: _, ...summary } = summarizeBase({ ...checked, held });
  return makeTemplateState(
    { ...summary, files },
    { unit: job.unit, delivered: held.length === 0, roleOf, bytesOf: () => bytes },
  );
}
