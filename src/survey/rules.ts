/** The rules of a survey: what is held against what, once for the rows, README and the verdict on the placing. */
import type { PlacingEdition } from "../standards/index.js";
import { findElevation, findGroupPlacing, findPlacing } from "../standards/index.js";
import type { Length } from "../units/length.js";

/** What a failing row is about: a rod, the column that will stand on them, or groups against each other and their lines. */
export type SurveyConcern = "rod" | "column" | "groups";

/** One rule of a survey; its rows are questions for the engineer of record. */
export interface SurveyRule<Id extends string = string> {
  readonly id: Id;
  /** The rule in words of the trade, as a sheet says it: at most 28 characters, lower case. */
  readonly plainName: string;
  readonly concern: SurveyConcern;
  /** One line for the README table: what is held against what. */
  readonly title: string;
  /** Clause or source by the placing edition, for a rod of this diameter; null where the edition has none. */
  clause(edition: PlacingEdition, diameter: Length): string | null;
}

const ofGroups =
  (about: Parameters<typeof findGroupPlacing>[1]) =>
  (edition: PlacingEdition): string | null => {
    const found = findGroupPlacing(edition, about);
    return found.found ? found.clause : null;
  };

const inPlan =
  (limits: "position" | "spacing") =>
  (edition: PlacingEdition, diameter: Length): string | null => {
    const found = findPlacing(edition, diameter, "fixed");
    return found.found && found.row.limits === limits ? found.clause : null;
  };

const ofJob = (key: string) => () => `erection tolerance of the job, ${key}`;

/** Every rule of a survey, in the order of its rows. */
export const surveyRules = [
  {
    id: "placed-rod",
    plainName: "rod from its place",
    concern: "rod",
    title: "distance of a rod as built from its place <= the placing tolerance, where the edition limits positions",
    clause: inPlan("position"),
  },
  {
    id: "placed-spacing",
    plainName: "spacing of two rods",
    concern: "rod",
    title:
      "spacing of two rods of a group as built less as designed <= its tolerance, where the edition limits spacings",
    clause: inPlan("spacing"),
  },
  {
    id: "placed-elevation",
    plainName: "top of rod",
    concern: "rod",
    title: "top of a rod as built less as designed, high or low, <= the tolerance of the top",
    clause: (edition) => {
      const found = findElevation(edition, "fixed");
      return found.found ? found.clause : null;
    },
  },
  {
    id: "placed-lean",
    plainName: "lean of rod",
    concern: "rod",
    title: "lean between two points of one rod: reported, it has no limit",
    clause: () => "lean between two points of a rod",
  },
  {
    id: "stands-on-line",
    plainName: "column off its line",
    concern: "column",
    title: "shift of the column on the best fit of its rods, along x and along y, <= the job's survey.line",
    clause: ofJob("survey.line"),
  },
  {
    id: "stands-unturned",
    plainName: "turn of column",
    concern: "column",
    title: "turn of the column on the best fit of its rods <= the job's survey.turn",
    clause: ofJob("survey.turn"),
  },
  {
    id: "group-position",
    plainName: "group off column line",
    concern: "column",
    title: "working point by the best fit of its rods, square to its column line, <= the tolerance to the line",
    clause: ofGroups("group position"),
  },
  {
    id: "group-spacing",
    plainName: "spacing of groups",
    concern: "groups",
    title: "distance of two neighbouring groups as built less as designed <= the tolerance of adjacent groups",
    clause: ofGroups("adjacent groups"),
  },
  {
    id: "line-accumulation",
    plainName: "length of column line",
    concern: "groups",
    title: "length of a column line as built less as designed <= what may add up along it",
    clause: ofGroups("accumulated along a column line"),
  },
] as const satisfies readonly SurveyRule[];

/** The public names of the rules of a survey. */
export type SurveyRuleId = (typeof surveyRules)[number]["id"];

const CONCERNS: ReadonlyMap<string, SurveyConcern> = new Map(surveyRules.map(({ id, concern }) => [id, concern]));

/** What a row of a survey is about, by the id of its rule. */
export function concernOf(rule: string): SurveyConcern {
  const concern = CONCERNS.get(rule);
  if (concern === undefined) throw new RangeError(`no rule of a survey: ${rule}`);
  return concern;
}

const NAMES = Object.fromEntries(surveyRules.map(({ id, plainName }) => [id, plainName])) as Readonly<
  Record<SurveyRuleId, string>
>;

/** A rule of a survey in words of the trade. */
export function surveyRuleName(id: SurveyRuleId): string {
  return NAMES[id];
}
