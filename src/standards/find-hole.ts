/** Base-plate holes and template holes by edition and rod diameter. */
import type { Length } from "../units/length.js";
import { aisc360BaseHoleRule, aisc360BaseHoles } from "./aisc-360-22/base-plate-holes.js";
import { aisc360MetricBaseHoles } from "./aisc-360-22/base-plate-holes-metric.js";
import { designGuide2BaseHoles } from "./aisc-design-guide-1-2nd/base-plate-holes.js";
import { designGuideOverCastRods, designGuideTemplateHole } from "./aisc-design-guide-1-2nd/template-hole.js";
import { designGuide3BaseHoles } from "./aisc-design-guide-1-3rd-examples/base-plate-holes.js";
import type { BaseHoleEdition, TemplateHoleEdition } from "./editions.js";
import { en1992ClearanceHoles } from "./en-1992-4/clearance-holes.js";
import { iso273Holes } from "./iso-273/clearance-holes.js";
import { metricBaseHoleRule } from "./metric-practice/base-plate-hole-rule.js";
import { metricOverCastRods, metricTemplateHoleRule } from "./metric-practice/template-hole-rule.js";
import type {
  BaseHole,
  BaseHoleRow,
  BeyondRule,
  ClearanceHoleRow,
  FromRule,
  Lookup,
  StandardTable,
  TemplateHoleRow,
} from "./model.js";
import { evaluate } from "./rules.js";
import { findSized, found, indexByDiameter, type SizedIndex } from "./sized-index.js";

interface BaseHoleTable {
  readonly index: SizedIndex<BaseHoleRow>;
  readonly rule: FromRule | null;
}

const RULE_ONLY: StandardTable<BaseHoleRow> = { edition: "d + 6 mm", clause: "common practice", rows: [] };
const BASE_HOLES: Readonly<Record<BaseHoleEdition, BaseHoleTable>> = {
  "AISC 360-22 C-J9.1": { index: indexByDiameter(aisc360BaseHoles), rule: aisc360BaseHoleRule },
  "Design Guide 1, 2nd ed.": { index: indexByDiameter(designGuide2BaseHoles), rule: null },
  "Design Guide 1, 3rd ed. examples": { index: indexByDiameter(designGuide3BaseHoles), rule: null },
  "AISC 360-22 C-J9.1M": { index: indexByDiameter(aisc360MetricBaseHoles), rule: null },
  "d + 6 mm": { index: indexByDiameter(RULE_ONLY), rule: metricBaseHoleRule },
  "EN 1992-4 Table 6.1": { index: indexByDiameter(en1992ClearanceHoles), rule: null },
};

/** The base-plate hole that an edition gives for a rod, by its table or by the rule row printed with it. */
export function findBaseHole(edition: BaseHoleEdition, diameter: Length): Lookup<BaseHole> {
  const { index, rule } = BASE_HOLES[edition];
  const reading = findSized(index, diameter);
  return reading.found || rule === null || diameter < rule.from ? reading : found(index, byRule(rule, diameter));
}

/**
 * True where the listed hole is the greatest: a smaller one keeps to the table. From memory (AISC Manual, Table 14-2, lists
 * recommended maximum sizes; NZS 3404 and AS 4100 have d + 6 mm at most); the 3rd edition's examples list what they use.
 */
export const listsGreatestHoles: Readonly<Record<BaseHoleEdition, boolean>> = {
  "AISC 360-22 C-J9.1": true,
  "Design Guide 1, 2nd ed.": true,
  "Design Guide 1, 3rd ed. examples": false,
  "AISC 360-22 C-J9.1M": true,
  "d + 6 mm": true,
  "EN 1992-4 Table 6.1": true,
};

/** The second hole that Design Guide 1 allows for a rod, with its condition; null where there is none. */
export function alternateBaseHole(
  diameter: Length,
): { readonly hole: Length; readonly edition: string; readonly note: string } | null {
  const row = designGuide2BaseHoles.rows.find((each) => each.diameter === diameter);
  if (row === undefined || row.alternateHole === null) return null;
  return { hole: row.alternateHole, edition: designGuide2BaseHoles.edition, note: row.note };
}

function byRule({ rule, source, confidence, note }: FromRule, diameter: Length): BaseHole {
  const bare = { washer: null, washerThickness: null, alternateHole: null };
  return { hole: evaluate(rule, diameter), ...bare, source, confidence, note };
}

interface TemplateHoleTable {
  /** Edition and clause of the rule: another than that of the table where the table's publication does not state it. */
  readonly edition: string;
  readonly clause: string;
  readonly rule: BeyondRule;
  /** Clearance holes, of which the medium series is taken, up to where the rule begins; null where the rule is all. */
  readonly medium: SizedIndex<ClearanceHoleRow> | null;
}

const TEMPLATE_HOLES: Readonly<Record<TemplateHoleEdition, TemplateHoleTable>> = {
  "Design Guide 1, 2nd ed.": {
    edition: "Design Guide 1, 2nd ed.",
    clause: "s.2.9",
    rule: designGuideTemplateHole,
    medium: null,
  },
  "ISO 273": {
    edition: metricTemplateHoleRule.source,
    clause: `${metricTemplateHoleRule.printed} above M39`,
    rule: metricTemplateHoleRule,
    medium: indexByDiameter(iso273Holes),
  },
};

/** Where it is said that a plate set over cast rods takes the base plate's holes, by the edition of template holes. */
export const overCastRodsHole: Readonly<
  Record<TemplateHoleEdition, { readonly edition: string; readonly clause: string }>
> = {
  "Design Guide 1, 2nd ed.": { edition: designGuideOverCastRods.edition, clause: designGuideOverCastRods.clause },
  "ISO 273": { edition: metricOverCastRods.edition, clause: metricOverCastRods.clause },
};

/**
 * The template hole that an edition gives. Design Guide 1: d + 1/16 in for every rod. ISO 273: medium series up to M39; above
 * that d + 3 mm, whose edition is "common practice", since ISO 273 does not say it.
 */
export function findTemplateHole(edition: TemplateHoleEdition, diameter: Length): Lookup<TemplateHoleRow> {
  const { edition: ofRule, clause, rule, medium } = TEMPLATE_HOLES[edition];
  if (medium !== null && diameter <= rule.beyond) return mediumHole(medium, diameter);
  const { source, confidence, note } = rule;
  return found({ edition: ofRule, clause }, { hole: evaluate(rule.rule, diameter), source, confidence, note });
}

function mediumHole(index: SizedIndex<ClearanceHoleRow>, diameter: Length): Lookup<TemplateHoleRow> {
  const reading = findSized(index, diameter);
  if (!reading.found) return reading;
  const { medium, source, confidence, note } = reading.row;
  return found(reading, { hole: medium, source, confidence, note });
}
