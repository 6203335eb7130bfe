/** AISC 360-22, section J3.4 (J3.3 of 360-10 and 360-16): least spacing of standard, oversized and slotted holes. */
import type { HoleSpacingRow } from "../hole-spacing.js";
import type { StandardTable } from "../model.js";

const SOURCED = { source: "AISC 360-22", confidence: "high" } as const;

/** Written for bolts; 3 d is preferred. */
export const aisc360HoleSpacing: StandardTable<HoleSpacingRow> = {
  edition: "AISC 360-22",
  clause: "J3.4",
  rows: [
    { what: "spacing", of: "rod", times: 8, per: 3, printed: "2-2/3 d", note: "3 d preferred", ...SOURCED },
    { what: "clear", of: "rod", times: 1, per: 1, printed: "d", note: "", ...SOURCED },
  ],
};
