/** The rule ids of the ledger and the severity of each when it fails: public names, shared by job file and checks. */
import type { Severity } from "./job.js";

/** Rules with their own severity. `template-hole` has two rows: against its table (advise) and as cut (stop). */
export const RULE_SEVERITIES = {
  "template-hole": "advise",
  "hole-web": "stop",
  "hole-edge": "stop",
  "seat-on-plate": "stop",
  "nut-room": "stop",
  "template-in-form": "stop",
  "template-height": "stop",
  "cut-web": "stop",
  "pattern-match": "stop",
  "base-plate-hole": "ask",
  "base-plate-edge": "ask",
  "washer-cover": "ask",
  "washer-on-plate": "ask",
  "washer-room": "ask",
  "placing-clearance": "ask",
  "rod-spacing": "ask",
  "rod-cover": "ask",
  projection: "ask",
  "grout-gap": "ask",
  "rod-count": "ask",
  "rod-play": "advise",
  "template-size": "advise",
  "cut-hole": "advise",
  "marks-room": "advise",
  "wrong-placement": "advise",
  "look-alike": "advise",
  key: "advise",
  "neighbour-rods": "ask",
  "neighbour-templates": "advise",
  "neighbour-concrete": "advise",
  "base-off-grid": "advise",
  "plate-elevation": "ask",
  "group-spacing": "ask",
  "line-accumulation": "ask",
  "control-residual": "advise",
  "control-closure": "advise",
  "grid-diagonal": "advise",
  "setting-out-elevation": "advise",
} as const satisfies Readonly<Record<string, Severity>>;

export type RuleId = keyof typeof RULE_SEVERITIES;

const [firstRule, ...otherRules] = Object.keys(RULE_SEVERITIES) as RuleId[];

/** Every rule id. */
export const RULE_IDS: readonly [RuleId, ...RuleId[]] = [firstRule ?? "template-hole", ...otherRules];

const ORDER: readonly Severity[] = ["advise", "ask", "stop"];

/** True when `severity` is at least the rule's own: a severity may be raised, never lowered. */
export function isRaised(rule: RuleId, severity: Severity): boolean {
  return ORDER.indexOf(severity) >= ORDER.indexOf(RULE_SEVERITIES[rule]);
}
