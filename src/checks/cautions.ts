/** Cautions that stand on every ledger and sheet. */
export const CAUTIONS = [
  "Rods are not bent, cut, welded or replaced, and holes are not enlarged, without the approval of the engineer of record (29 CFR 1926.755(b)).",
  "Projecting rods are guarded.",
  "The template is not a lifting device and not a working platform.",
  "Set rods from released drawings only.",
  "Survey the rods again after the pour.",
  "Local codes and licensed practice govern. The program reports; the engineer decides.",
] as const;
