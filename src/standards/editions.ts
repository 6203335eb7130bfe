/** The printed names by which a job chooses its editions. */
import type { EditionKind } from "./model.js";

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
  placing: ["ACI 117-10", "AISC 303-10", "AISC 303-22", "EN 1090-2"],
  edges: ["AISC 360-22", "AISC 360-22M", "AISC 360-05", "EN 1993-1-8"],
  concrete: ["ACI 318-19", "ACI 318-14", "ACI 318-11"],
} as const satisfies Readonly<Record<EditionKind, readonly string[]>>;

export type BaseHoleEdition = (typeof EDITIONS.baseHoles)[number];
export type TemplateHoleEdition = (typeof EDITIONS.templateHoles)[number];
export type PlacingEdition = (typeof EDITIONS.placing)[number];
export type EdgeEdition = (typeof EDITIONS.edges)[number];
export type ConcreteEdition = (typeof EDITIONS.concrete)[number];

/** The editions of a kind that tables are held for, as printed. */
export function editionsOf(kind: EditionKind): readonly string[] {
  return EDITIONS[kind];
}

/** Throws on an edition that `editionsOf` does not list: the job is validated before anything is looked up. */
export function unknownEdition(kind: EditionKind, edition: string): never {
  throw new RangeError(`no ${kind} edition "${edition}": known are ${EDITIONS[kind].join("; ")}`);
}
