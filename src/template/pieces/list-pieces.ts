/** What of a template is cut or drilled by itself, measured and weighed. */
import type { Job } from "../../job/model/job.js";
import { roundSymmetric } from "../../units/length.js";
import { measurePlate } from "../measure.js";
import type { Plate } from "../model.js";
import type { PieceRole, TemplatePiece } from "../piece.js";
import { type Weight, weighPlate } from "../weigh.js";

/** The template, or its segments and splice plates, then its lower template. */
export function listPieces(job: Job, plate: Plate): readonly TemplatePiece[] {
  const { lower } = plate;
  const below = lower === null ? [] : partsOf(job, lower, "lower template");
  return [...partsOf(job, plate, "template"), ...below];
}

function partsOf(job: Job, plate: Plate, whole: PieceRole): readonly TemplatePiece[] {
  const { parted } = plate;
  if (parted === null) return [pieceOf(job, whole, plate)];
  return [
    ...parted.segments.map((segment) => pieceOf(job, "segment", segment.plate)),
    ...parted.splices.map((splice) => pieceOf(job, "splice plate", splice)),
  ];
}

function pieceOf({ shop, unit }: Job, role: PieceRole, plate: Plate): TemplatePiece {
  const measures = measurePlate(plate);
  const weight = weighPlate(measures.netArea, plate.thickness, shop.density[plate.material], unit);
  return { role, plate, measures, weight };
}

/** True of a lower template, and of its segments and splice plates. */
function isOf(lower: Plate | null, { plate }: TemplatePiece): boolean {
  if (lower === null) return false;
  return plate === lower || (lower.parted !== null && plate.mark.startsWith(`${lower.mark}-`));
}

/** Weight of one template as it is put together, without bolts; its lower template is another thing. null without a density. */
export function weighTemplate(pieces: readonly TemplatePiece[], { quantity, lower }: Plate): Weight | null {
  let sum: Weight | null = null;
  for (const { plate, weight } of pieces.filter((piece) => !isOf(lower, piece))) {
    if (weight === null) return null;
    const value: number = (sum?.value ?? 0) + (weight.value * plate.quantity) / quantity;
    sum = { unit: weight.unit, value };
  }
  return sum === null ? null : { ...sum, value: roundSymmetric(sum.value * 1e6) / 1e6 };
}
