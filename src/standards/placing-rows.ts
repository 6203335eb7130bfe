/** All rows of a placing edition, for drawings that write the tolerances out. */
import { aci117Placing } from "./aci-117-10/placing.js";
import { aisc303TenPlacing } from "./aisc-303-10/placing.js";
import { aisc303Placing } from "./aisc-303-22/placing.js";
import { unknownEdition } from "./editions.js";
import { en1090Placing } from "./en-1090-2/placing.js";
import type { PlacingTableRow } from "./placing.js";

const ROWS: ReadonlyMap<string, readonly PlacingTableRow[]> = new Map([
  ["ACI 117-10", aci117Placing.rows],
  ["AISC 303-10", aisc303TenPlacing.rows],
  ["AISC 303-22", aisc303Placing.rows],
  ["EN 1090-2", en1090Placing.rows.filter(({ fixing }) => fixing !== "adjustable")],
]);

/** In the order printed; of EN 1090-2 those of bolts that are cast in fixed. */
export function placingRows(edition: string): readonly PlacingTableRow[] {
  return ROWS.get(edition) ?? unknownEdition("placing", edition);
}
