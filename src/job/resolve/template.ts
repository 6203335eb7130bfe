/** The template as written -> the template of the model. */
import type { DocumentPath } from "../document.js";
import type { RoundHoleSpec, TemplateSpec } from "../model/job.js";
import type { BaseDocument } from "../schema/job.js";
import { markKey } from "../schema/marks.js";
import type { BaseReport } from "./base-report.js";
import { resolveLower } from "./lower.js";
import { resolveSegments } from "./segments.js";
import { judgeListLength, offsetOf } from "./shapes.js";
import { judgeOpening, resolveOpening, resolveOutline } from "./template-shape.js";

/** The template; faults are in the report. */
export function resolveTemplate(document: BaseDocument, quantity: number, report: BaseReport): TemplateSpec {
  const { template } = document;
  const outline = resolveOutline(template.outline, OUTLINE, report);
  const opening = resolveOpening(template.opening, OPENING, report);
  judgeOpening(opening, outline, OPENING, report);
  const { mark = document.mark } = template;
  return {
    mark,
    quantity: template.quantity ?? quantity,
    sharedBy: [],
    written: {
      mark: markKey(mark) === markKey(document.mark) ? null : mark,
      quantity: template.quantity ?? null,
    },
    use: template.use ?? "template",
    support: report.optional(template.support, ["template", "support"], "what carries the template is not given"),
    material: template.material ?? "steel",
    grade: report.optional(template.grade, ["template", "grade"], "no material grade of the template is given"),
    thickness: template.thickness,
    outline,
    opening,
    key: template.key ?? "auto",
    height: report.optional(template.height, ["template", "height"], "no height of the template is given"),
    nailHoles: resolveHoles(template.nails, ["template", "nails"], report),
    groutHoles: resolveHoles(template.groutHoles, ["template", "groutHoles"], report),
    lower: resolveLower(document, report),
    segments: resolveSegments(document, report),
  };
}

const OUTLINE = ["template", "outline"] as const;
const OPENING = ["template", "opening"] as const;

type RoundHoles = BaseDocument["template"]["nails"];

/** Round holes beside those of the rods, written at `path`; none where nothing is written. */
export function resolveHoles(holes: RoundHoles, path: DocumentPath, report: BaseReport): RoundHoleSpec[] {
  if (holes === undefined) return [];
  judgeListLength(holes.at.length, 1, [...path, "at"], report);
  return holes.at.map((at) => ({ at: offsetOf(at), diameter: holes.diameter }));
}
