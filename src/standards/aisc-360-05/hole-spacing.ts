/** AISC 360-05, section J3.3: least spacing of holes. Superseded. Its clause number and text are from memory. */
import type { HoleSpacingRow } from "../hole-spacing.js";
import type { StandardTable } from "../model.js";

const SOURCED = { source: "no stored copy", confidence: "from memory" } as const;
const NOTE = "3 d preferred; a least clear distance is remembered of later editions only";

/** Written for bolts. */
export const aisc360FiveHoleSpacing: StandardTable<HoleSpacingRow> = {
  edition: "AISC 360-05",
  clause: "J3.3",
  rows: [{ what: "spacing", of: "rod", times: 8, per: 3, printed: "2-2/3 d", note: NOTE, ...SOURCED }],
};
