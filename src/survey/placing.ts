/** The second verdict: are the rods within tolerance where they stand, whether or not the base plate drops on? */
import type { CheckRow } from "../checks/model.js";
import { subjectWords } from "../checks/words.js";
import type { GroupPlacing, GroupSurvey, Survey } from "./model.js";
import { concernOf } from "./rules.js";

/** The placing of every group: by its own rows, and by those of the column lines that it stands on. */
export function withPlacing(
  groups: readonly Omit<GroupSurvey, "placing">[],
  rows: readonly CheckRow[],
): readonly GroupSurvey[] {
  const ofLines = new Map<string, CheckRow[]>();
  for (const row of rows.filter(({ rule }) => concernOf(rule) === "column")) {
    const name = row.subject.slice(0, row.subject.lastIndexOf(TO_LINE));
    ofLines.set(name, [...(ofLines.get(name) ?? []), row]);
  }
  return groups.map((group) => ({ ...group, placing: placingOf(group, ofLines.get(group.standing.name) ?? []) }));
}

/** Between a group's name and its column line in the subject of a row. */
export const TO_LINE = " to line ";

function placingOf(group: Omit<GroupSurvey, "placing">, ofLines: readonly CheckRow[]): GroupPlacing {
  const own = [...group.rows, ...ofLines];
  const failing = own.filter(({ status }) => status === "fail");
  const known = new Set(group.rods.map(({ tag }) => tag));
  const rods = new Set(failing.filter(isOfRod).flatMap(({ subject }) => tagsOf(subject, known)));
  const placed = own.filter(({ rule }) => rule === "placed-rod" || rule === "placed-spacing");
  const isHeld = group.missing.length === 0 && placed.length > 0 && placed.every(({ status }) => status === "pass");
  return {
    verdict: failing.length > 0 ? "outside" : isHeld ? "within" : "not-checked",
    rods: [...rods],
    offLine: failing.some(({ rule }) => concernOf(rule) === "column"),
  };
}

const isOfRod = ({ rule }: CheckRow): boolean => concernOf(rule) === "rod";

/** `A1`, or both of `A1-A2`. */
function tagsOf(subject: string, known: ReadonlySet<string>): readonly string[] {
  return known.has(subject) ? [subject] : subject.split("-").filter((tag) => known.has(tag));
}

/** True of a group that has more to say than its line in the table: its plate does not plainly drop on, or its placing is outside. */
export function isNotable({ verdict, placing }: GroupSurvey): boolean {
  return verdict !== "fits" || placing.verdict === "outside";
}

/** The placing of a group in a few words: `FAIL A2 A3, off line`. */
export function placingWords({ verdict, rods, offLine }: GroupPlacing): string {
  switch (verdict) {
    case "outside":
      return `FAIL ${[...(rods.length > 0 ? [subjectWords(rods)] : []), ...(offLine ? ["off line"] : [])].join(", ")}`;
    case "within":
      return "within";
    case "not-checked":
      return "not checked";
  }
}

/** What the whole survey comes to. */
export interface SurveyTotals {
  readonly drop: number;
  readonly unsure: number;
  readonly fail: number;
  readonly unknown: number;
  readonly rodsOutside: number;
  readonly columnsOffLine: number;
  /** Rows of neighbouring groups and column lines that fail. */
  readonly groupsOutside: number;
  /** Groups whose plate drops on, but not while it stands exactly on line and unturned. */
  readonly onlyOffLine: number;
  /** Groups of which no rod was held against a tolerance. */
  readonly placingUnknown: number;
}

/** Counts of both verdicts. */
export function surveyTotals({ groups, rows }: Pick<Survey, "groups" | "rows">): SurveyTotals {
  const placings = groups.map(({ placing }) => placing);
  const count = (verdict: GroupSurvey["verdict"]): number => groups.filter((each) => each.verdict === verdict).length;
  return {
    drop: count("fits"),
    unsure: count("within measuring uncertainty"),
    fail: count("does not fit"),
    unknown: count("not-checked"),
    rodsOutside: placings.reduce((sum, { rods }) => sum + rods.length, 0),
    columnsOffLine: placings.filter(({ offLine }) => offLine).length,
    groupsOutside: rows.filter(({ rule, status }) => status === "fail" && concernOf(rule) === "groups").length,
    onlyOffLine: groups.filter(({ verdict, spareOnLine }) => verdict === "fits" && (spareOnLine ?? 0) < 0).length,
    placingUnknown: placings.filter(({ verdict }) => verdict === "not-checked").length,
  };
}

/** True where something is to be asked of the engineer: a plate that does not drop on, or anything outside its tolerance. */
export function isOutside({ fail, rodsOutside, columnsOffLine, groupsOutside }: SurveyTotals): boolean {
  return fail + rodsOutside + columnsOffLine + groupsOutside > 0;
}

/** Both verdicts in one line, what is wrong first: `2 do not drop on; 5 rods outside ACI 117-10; 12 drop on`. */
export function totalsWords(totals: SurveyTotals, placing: string): string {
  const { drop, unsure, fail, unknown, rodsOutside, columnsOffLine, groupsOutside, onlyOffLine, placingUnknown } =
    totals;
  const some = (count: number, one: string, many: string): readonly string[] =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  return [
    ...some(fail, "does not drop on", "do not drop on"),
    ...some(rodsOutside, `rod outside ${placing}`, `rods outside ${placing}`),
    ...some(columnsOffLine, "column does not stand on line", "columns do not stand on line"),
    ...some(groupsOutside, "distance of groups outside its tolerance", "distances of groups outside their tolerance"),
    ...some(unsure, "within measuring uncertainty", "within measuring uncertainty"),
    ...some(unknown, "not checked", "not checked"),
    `${drop} ${drop === 1 ? "drops" : "drop"} on`,
    ...some(onlyOffLine, "of them only off its line", "of them only off their lines"),
    ...some(placingUnknown, "group whose placing is not checked", "groups whose placing is not checked"),
    ...(rodsOutside === 0 && placingUnknown === 0 ? [`no rod outside ${placing}`] : []),
  ].join("; ");
}
