/** ACI 318-11, D.8.1 / D.8.2: spacing and edge of cast-in anchors. From memory: no stored copy was found. */
import type { SpacingTableRow, StandardTable } from "../model.js";

const SOURCED = { source: "from memory", confidence: "from memory", note: "" } as const;

/** Multiples of the anchor diameter. Not torqued, the edge is governed by the cover. */
export const aci318ElevenSpacing: StandardTable<SpacingTableRow> = {
  edition: "ACI 318-11",
  clause: "D.8.1 / D.8.2",
  rows: [
    { torqued: false, factor: 4, edgeFactor: null, ...SOURCED },
    { torqued: true, factor: 6, edgeFactor: 6, ...SOURCED },
  ],
};
