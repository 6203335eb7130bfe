/** Base-plate holes and template holes by edition and rod size. */
import { type Length, millimetres } from "../units/length.js";
import { aisc360BaseHoleRule, aisc360BaseHoles } from "./aisc-360-22/base-plate-holes.js";
import { aisc360MetricBaseHoles } from "./aisc-360-22/base-plate-holes-metric.js";
import { designGuide2BaseHoles } from "./aisc-design-guide-1-2nd/base-plate-holes.js";
import { designGuideTemplateHole } from "./aisc-design-guide-1-2nd/template-hole.js";
import { designGuide3BaseHoles } from "./aisc-design-guide-1-3rd-examples/base-plate-holes.js";
import { type BaseHoleEdition, editionsOf, unknownEdition } from "./editions.js";
import { en1992ClearanceHoles } from "./en-1992-4/clearance-holes.js";
import { iso273Holes } from "./iso-273/clearance-holes.js";
import { metricBaseHoleRule } from "./metric-practice/base-plate-hole-rule.js";
import { metricTemplateHoleRule } from "./metric-practice/template-hole-rule.js";
import type { BaseHoleRow, FromRule, Lookup, TemplateHoleRow } from "./model.js";
import { evaluate } from "./rules.js";
import { findSized, found, indexBySize, type SizedIndex } from "./sized-index.js";
import { diameterOf } from "./sizes.js";

interface BaseHoleTable {
  readonly index: SizedIndex<BaseHoleRow>;
  readonly rule: FromRule | null;
}

const RULE_ONLY = { edition: "d + 6 mm", clause: "common practice", rows: [] } as const;
const TABLES: Readonly<Record<BaseHoleEdition, BaseHoleTable>> = {
  "AISC 360-22 C-J9.1": { index: indexBySize(aisc360BaseHoles), rule: aisc360BaseHoleRule },
  "Design Guide 1, 2nd ed.": { index: indexBySize(designGuide2BaseHoles), rule: null },
  "Design Guide 1, 3rd ed. examples": { index: indexBySize(designGuide3BaseHoles), rule: null },
  "AISC 360-22 C-J9.1M": { index: indexBySize(aisc360MetricBaseHoles), rule: null },
  "d + 6 mm": { index: indexBySize(RULE_ONLY), rule: metricBaseHoleRule },
  "EN 1992-4 Table 6.1": { index: indexBySize(en1992ClearanceHoles), rule: null },
};

const TEMPLATE_HOLES = indexBySize(iso273Holes);
const LAST_MEDIUM = millimetres(39);

/** The base-plate hole that an edition gives for a rod size, by its table or by the rule row printed with it. */
export function findBaseHole(edition: string, size: string): Lookup<BaseHoleRow> {
  if (!isBaseHoleEdition(edition)) return unknownEdition("baseHoles", edition);
  const { index, rule } = TABLES[edition];
  const reading = findSized(index, size);
  const diameter = diameterOf(size, "in");
  if (reading.found || rule === null || diameter === null || diameter < rule.from) return reading;
  return found(index, byRule(rule, size, diameter));
}

/**
 * The template hole that an edition gives. Design Guide 1: d + 1/16 in for every rod. ISO 273: medium series up to M39,
 * d + 3 mm above (common practice).
 */
export function findTemplateHole(edition: string, size: string, diameter: Length): Lookup<TemplateHoleRow> {
  switch (edition) {
    case "Design Guide 1, 2nd ed.":
      return fromRule({ edition, clause: "s.2.9" }, designGuideTemplateHole, diameter);
    case "ISO 273":
      return diameter > LAST_MEDIUM
        ? fromRule({ edition, clause: "d + 3 mm above M39" }, metricTemplateHoleRule, diameter)
        : mediumHole(size);
    default:
      return unknownEdition("templateHoles", edition);
  }
}

function mediumHole(size: string): Lookup<TemplateHoleRow> {
  const reading = findSized(TEMPLATE_HOLES, size);
  if (!reading.found) return reading;
  const { medium, source, confidence, note } = reading.row;
  return found(reading, { hole: medium, source, confidence, note });
}

function fromRule(
  table: { edition: string; clause: string },
  from: FromRule,
  diameter: Length,
): Lookup<TemplateHoleRow> {
  const { source, confidence, note } = from;
  return found(table, { hole: evaluate(from.rule, diameter), source, confidence, note });
}

function byRule(from: FromRule, size: string, diameter: Length): BaseHoleRow {
  const { source, confidence, note } = from;
  const hole = evaluate(from.rule, diameter);
  const bare = { washer: null, washerThickness: null, alternateHole: null };
  return { size, diameter, hole, ...bare, source, confidence, note };
}

function isBaseHoleEdition(edition: string): edition is BaseHoleEdition {
  return editionsOf("baseHoles").includes(edition);
}
