/** A board at full size on the paper of an office, to be glued together and drilled through. */

import { extentOf } from "../../geometry/index.js";
import type { Scene } from "../scene.js";
import { keyPages } from "./key-page.js";
import type { FullSizeRequest } from "./request.js";
import { tilePage } from "./tile-page.js";
import { tilePlate, tilesOf } from "./tiling.js";

export type { FullSizeRequest } from "./request.js";
export type { OfficePaper } from "./tiling.js";

/** How its sheets are joined, then every tile, row by row. */
export function drawFullSize(request: FullSizeRequest): readonly Scene[] {
  const { board, paper } = request;
  const tiling = tilePlate(extentOf(board.region.outer), board.holes, paper);
  return [...keyPages(request, tiling), ...tilesOf(tiling).map((tile) => tilePage(request, tiling, tile))];
}
