/** `template.segments` as written -> the segments of the model. */
import type { Given, SegmentsSpec, SpliceBolt } from "../model/job.js";
import { given } from "../model/job.js";
import type { BaseDocument, SegmentsDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";
import { readSpliceBolt } from "./splice-bolt.js";

type Written = Exclude<SegmentsDocument, "none" | "auto" | number>;

const PATH = ["template", "segments"] as const;

/** The segments, null for a template of one piece; faults are in the report. */
export function resolveSegments(document: BaseDocument, report: BaseReport): SegmentsSpec | null {
  const { segments } = document.template;
  if (segments === undefined || segments === "none") return null;
  judgeUse(document, report);
  const { count, bolt }: Written = typeof segments === "object" ? segments : { count: segments };
  return { count, bolt: bolt === undefined ? null : boltOf(bolt, report) };
}

/** Splice plates lie on the top face: no base plate can lie there too. Plywood is not bolted so. */
function judgeUse({ template }: BaseDocument, report: BaseReport): void {
  if (template.material === "plywood")
    report.fault(
      PATH,
      "segments-of-plywood",
      "is given for plywood; allowed are segments of steel: write segments: none",
    );
  if (template.use === undefined || template.use === "template") return;
  const message = `is given for a ${template.use}, on which the base plate would lie on the splice plates; allowed is none`;
  report.fault(PATH, "segments-under-base-plate", message);
}

function boltOf(written: string, report: BaseReport): Given<SpliceBolt> | null {
  const path = [...PATH, "bolt"];
  const read = readSpliceBolt(written, report.unit);
  if (read.ok) return given(read.value, report.from(path));
  report.fault(path, "unknown-bolt", read.message);
  return null;
}
