/** The printed names by which a job chooses its editions. */

const EDITIONS = {
  baseHoles: [
    "AISC 360-22 C-J9.1",
    "Design Guide 1, 2nd ed.",
    "Design Guide 1, 3rd ed. examples",
    "AISC 360-22 C-J9.1M",
    "d + 6 mm",
    "EN 1992-4 Table 6.1",
  ],
  templateHoles: ["Design Guide 1, 2nd ed.", "ISO 273"],
  placing: ["ACI 117-10", "AISC 303-10", "AISC 303-22", "EN 1090-2:2008"],
  edges: ["AISC 360-22", "AISC 360-22M", "AISC 360-05", "EN 1993-1-8:2005"],
  concrete: ["ACI 318-19", "ACI 318M-19", "ACI 318-14", "ACI 318-11"],
} as const;

/** What a job chooses an edition for. */
export type EditionKind = keyof typeof EDITIONS;

/** The editions of a kind that tables are held for; every lookup of the kind is a `Record` of these. */
export type EditionOf<Kind extends EditionKind> = (typeof EDITIONS)[Kind][number];

/** Editions of base-plate holes. */
export type BaseHoleEdition = EditionOf<"baseHoles">;
/** Editions of template holes. */
export type TemplateHoleEdition = EditionOf<"templateHoles">;
/** Editions of placing tolerances. */
export type PlacingEdition = EditionOf<"placing">;
/** Editions of edge distances of base-plate holes. */
export type EdgeEdition = EditionOf<"edges">;
/** Editions of rod spacing and concrete cover. */
export type ConcreteEdition = EditionOf<"concrete">;

/** The editions of a kind, as printed. */
export function editionsOf<Kind extends EditionKind>(kind: Kind): readonly EditionOf<Kind>[] {
  return EDITIONS[kind];
}
