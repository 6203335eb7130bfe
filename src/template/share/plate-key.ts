/** Plates held against each other: everything that a cut file or a drill list holds. */
import type { TemplateSpec } from "../../job/model/job.js";
import type { Hole, Mark, Plate } from "../model.js";

/** The same text for two plates of one mark exactly where they are one piece: to the nanometre, stroke by stroke. */
export function plateKey(plate: Plate, use: TemplateSpec["use"]): string {
  const { material, grade, thickness, outlineKind, region, holes, marks } = plate;
  const parts = [use, material, grade, thickness, outlineKind, region, holes.map(holeParts), marks.map(markParts)];
  return JSON.stringify([...parts, ...pieceKeys(plate, use)]);
}

/** Of segments, splice plates and lower template; none of a plate that is one piece. */
function pieceKeys({ parted, lower }: Plate, use: TemplateSpec["use"]): readonly string[] {
  const segments = parted === null ? [] : parted.segments.map(({ plate }) => plate);
  return [...segments, ...(parted?.splices ?? []), ...(lower === null ? [] : [lower])].map((each) =>
    plateKey(each, use),
  );
}

/** A hole as the files have it. */
export function holeParts({ tag, role, center, shape, rod, made, contour }: Hole) {
  return [tag, role, made, center.x, center.y, shape, rod, contour];
}

/** A mark as the files have it. */
export function markParts({ kind, text, strokes }: Mark) {
  return [kind, text, strokes];
}
