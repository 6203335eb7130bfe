/** Title, head and notes of a sheet by what stands on it. */
import { spellingOf } from "../spelling.js";
import type { Piece } from "../table.js";
import { keyPlanPiece } from "./key-plan.js";
import type { PlanLayout } from "./layout.js";
import { legendPiece } from "./legend.js";
import { northPiece } from "./north.js";
import { panelWidth } from "./panel.js";
import type { PlanRequest } from "./request.js";

/** `PLAN, PART 2 OF 2, AND DETAILS`. */
export function sheetTitle({ arrangement, sheets }: PlanLayout, index: number): string {
  const { tiles } = arrangement;
  const hasDetails = (sheets[index]?.cells.length ?? 0) > 0;
  if (index >= tiles.length) {
    const count = sheets.length - tiles.length;
    return count > 1 ? `DETAILS, PART ${index - tiles.length + 1} OF ${count}` : "DETAILS";
  }
  const plan = tiles.length > 1 ? `PLAN, PART ${index + 1} OF ${tiles.length}` : "PLAN";
  if (!hasDetails) return plan;
  return `${plan}${tiles.length > 1 ? "," : ""} AND DETAILS`;
}

/** Key plan, north and symbols. */
export function planHead(
  request: PlanRequest,
  { arrangement }: Pick<PlanLayout, "arrangement">,
  index: number,
  hasControl: boolean,
): readonly Piece[] {
  const { sheet, tiles } = arrangement;
  const width = panelWidth(sheet);
  return [
    ...(tiles.length > 1 ? [keyPlanPiece(request, arrangement, index, width, sheet.lettering)] : []),
    northPiece(request, width, sheet.lettering),
    legendPiece(hasControl, width, sheet.lettering),
  ];
}

/** How details are to be read. */
export function detailNotes({ job }: PlanRequest): readonly string[] {
  const { center, gauge } = spellingOf(job.editions);
  return [
    "Each type in its own axes, seen from above, before it is turned; +X and +Y are the type's own axes, not north.",
    `Distances from the working point (W.P.), which the plan locates; ${gauge}: from rod to rod. Of two figures the one in brackets is exact. Dashed: concrete, its ${center.toLowerCase()} at the W.P. where it is not dimensioned; phantom: base plate, its ${center.toLowerCase()} at the W.P. or at the x, y named.`,
  ];
}
