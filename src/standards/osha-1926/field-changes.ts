/** 29 CFR 1926.755(b): what is done to anchor rods on the site. */

/** (1): no repair, replacement or field modification without the approval of the project structural engineer of record. */
export const fieldChanges = {
  edition: "29 CFR 1926",
  clause: "755(b)",
  source: "29 CFR 1926.755 (secondary copy)",
  confidence: "high",
  note: "",
} as const;
