/** What of a template is cut or drilled by itself. Most templates are one piece. */
import type { Plate, PlateMeasures } from "./model.js";
import type { Weight } from "./weigh.js";

/**
 * What a piece is. template: the whole of it. lower template: the smaller plate that holds the lower ends of the rods. segment:
 * a part of a template that is larger than the stock. splice plate: bolts two segments together.
 */
export type PieceRole = "template" | "lower template" | "segment" | "splice plate";

/** One piece: a plate with a mark and files of its own. `plate.quantity` is how many are made, for all templates together. */
export interface TemplatePiece {
  readonly role: PieceRole;
  readonly plate: Plate;
  readonly measures: PlateMeasures;
  /** Of one; null without a density. */
  readonly weight: Weight | null;
}
