/**
 * The survey as a report to the engineer of record: plain sentences that read the same in a message and on paper. It says where
 * the rods stand and what was reckoned; it never says that a change is acceptable.
 */
import type { CheckRow } from "../checks/model.js";
import { comparedTexts, counted, limitWords } from "../checks/words.js";
import { turnOf } from "../geometry/index.js";
import type { Job } from "../job/model/job.js";
import { findPlacing } from "../standards/index.js";
import { formatWithUnit, type Unit } from "../units/index.js";
import type { GroupSurvey, RodAsBuilt, Survey } from "./model.js";
import type { HoleOverRod } from "./motion.js";
import { bestPosition } from "./motion.js";
import { isNotable, placingWords, surveyTotals, totalsWords } from "./placing.js";
import { motionWords, remedyRows, remedyWords, rounded, SURVEY_CAUTIONS, termsWords } from "./words.js";

/** A part of the report. `items`: sentences under its heading, those of a list each by itself. */
export interface ReportPart {
  readonly heading: string;
  readonly items: readonly ReportItem[];
}

/** A paragraph, or an entry of a list. */
export interface ReportItem {
  readonly kind: "paragraph" | "entry";
  readonly words: string;
}

/** Title, and parts in the order in which they are read. */
export interface SurveyReport {
  readonly title: string;
  readonly parts: readonly ReportPart[];
}

const paragraph = (words: string): ReportItem => ({ kind: "paragraph", words });
const entry = (words: string): ReportItem => ({ kind: "entry", words });

/** What is always said where something is to be decided. */
const DECIDES = "ENGINEER TO DECIDE.";

/** The report; bases with something out first, worst first. */
export function surveyReport(job: Job, survey: Survey): SurveyReport {
  const notable = survey.groups.filter(isNotable);
  const parts = [
    { heading: "SUMMARY", items: summaryItems(job, survey, notable) },
    ...notable.map((group) => groupPart(job, group)),
    { heading: "GROUPS AND COLUMN LINES OUT OF TOLERANCE", items: failing(survey.rows, survey.unit) },
    { heading: "BASES WITH NOTHING OUT", items: plainItems(survey) },
    { heading: "NOT SURVEYED", items: survey.notSurveyed.map(({ mark, at }) => entry(`${mark} at ${at}`)) },
    { heading: "POINTS THAT ARE NO ROD OF THE JOB", items: unmatchedItems(survey) },
    { heading: "CONTROL POINTS AS FOUND", items: controlItems(survey) },
    { heading: "HOW THE SURVEY WAS READ, AND HOW SURE IT IS", items: readItems(job, survey) },
    { heading: "CAUTIONS", items: SURVEY_CAUTIONS.map(entry) },
    { heading: "ANSWER OF THE ENGINEER OF RECORD", items: ["Answer:", "By:", "Date:"].map(paragraph) },
  ];
  return { title: "ANCHOR RODS AS SURVEYED: REPORT TO THE ENGINEER OF RECORD", parts: parts.filter(hasItems) };
}

const hasItems = ({ items }: ReportPart): boolean => items.length > 0;

function summaryItems(job: Job, survey: Survey, notable: readonly GroupSurvey[]): readonly ReportItem[] {
  const { groups, notSurveyed, unmatched } = survey;
  const drawing = job.drawing.number === "" ? "" : ` Drawing ${job.drawing.number}, revision ${job.drawing.revision}.`;
  const day = job.survey.date.kind === "given" ? `Survey of ${job.survey.date.value}` : "Day of the survey not given";
  const asked = isAsked(survey)
    ? `What is asked: whether the rods named below stay as they are, or are repaired or replaced, and how. Until that is answered no rod is bent, cut, heated, welded or replaced, and no hole enlarged. ${DECIDES}`
    : `Nothing is out by what was checked. ${DECIDES}`;
  const out = notable.map(({ mark, at, rods, placing }) => {
    const worst = farthestFirst(rods)[0];
    const named = placing.rods.length > 0 ? `out of tolerance ${placing.rods.join(", ")}` : "no rod out of tolerance";
    const far = worst === undefined ? "" : `; farthest ${worst.tag}, ${offWords(worst, survey.unit)}`;
    return entry(`${mark} at ${at}: ${named}${far}`);
  });
  return [
    paragraph(`Job ${job.number}, ${job.title}, revision ${job.revision}, ${job.status}.${drawing}`),
    paragraph(`${day}. Points: ${nameOf(survey)}.`),
    paragraph(
      `${counted(groups.length, "base")} surveyed, ${notSurveyed.length} not; ${counted(unmatched.length, "point")} unmatched. ${totalsWords(surveyTotals(survey), job.editions.placing)}.`,
    ),
    ...out,
    paragraph(asked),
  ];
}

function isAsked({ groups, rows }: Survey): boolean {
  return groups.some(isNotable) || rows.some(({ status }) => status === "fail");
}

function nameOf({ file: { file, sha256 } }: Survey): string {
  const name = file.split(/[/\\]/).at(-1) ?? file;
  return sha256 === undefined ? name : `${name}, SHA-256 begins ${sha256.slice(0, 12)}`;
}

/** Farthest from its place first. */
function farthestFirst(rods: readonly RodAsBuilt[]): readonly RodAsBuilt[] {
  return rods.toSorted((a, b) => b.radial - a.radial);
}

const say = (length: number, unit: Unit): string => formatWithUnit(rounded(Math.abs(length), unit), unit);

/** `1.3 in north and 0.07 in east`; what rounds to nothing is left out. */
function compassParts(north: number, east: number, unit: Unit): readonly string[] {
  const along = (value: number, plus: string, minus: string) =>
    rounded(value, unit) === 0 ? [] : [`${say(value, unit)} ${value < 0 ? minus : plus}`];
  return [...along(north, "north", "south"), ...along(east, "east", "west")];
}

function compassWords(north: number, east: number, unit: Unit): string {
  const parts = compassParts(north, east, unit);
  return parts.length === 0 ? "nothing" : parts.join(" and ");
}

/** `1.302 in: 1.3 in north and 0.07 in east`. */
function offWords({ radial, north, east }: RodAsBuilt, unit: Unit): string {
  const parts = compassParts(north, east, unit);
  return `${say(radial, unit)} off${parts.length === 0 ? "" : `: ${parts.join(" and ")}`}`;
}

function groupPart(job: Job, group: GroupSurvey): ReportPart {
  const { unit } = job;
  const { mark, at, rods, missing, placing, remedies } = group;
  const inPlan = outInPlan(group);
  return {
    heading: `BASE ${mark} AT ${at}`,
    items: [
      paragraph(dropsWords(group, unit)),
      paragraph(`Within tolerance (${job.editions.placing}): ${placingSentence(group)}.`),
      ...suspectItems(group, inPlan, unit),
      ...farthestFirst(rods).map((rod) =>
        entry(rodWords(job, rod, { out: placing.rods.includes(rod.tag), inPlan: inPlan.has(rod.tag) })),
      ),
      ...missing.map((tag) => entry(`Rod ${tag}: NOT SURVEYED, no point is its own`)),
      paragraph(`The group as a whole, by the best fit of its rods, is off by ${groupMotion(group, unit)}.`),
      ...failing(
        group.rows.filter(({ rule }) => rule !== "placed-rod"),
        unit,
      ),
      ...remedyItems(remedies, unit),
    ],
  };
}

/** Tags of rods out of their places, or of their spacing, seen from above. */
function outInPlan({ rows, placing }: GroupSurvey): ReadonlySet<string> {
  const failed = rows.filter(
    ({ rule, status }) => status === "fail" && (rule === "placed-rod" || rule === "placed-spacing"),
  );
  const subjects = new Set(failed.flatMap(({ subject }) => [subject, ...subject.split("-")]));
  return new Set(placing.rods.filter((tag) => subjects.has(tag)));
}

function dropsWords({ verdict, best, why }: GroupSurvey, unit: Unit): string {
  const spare = best === null ? "" : `: in its best position ${spareWords(best.spare, unit)}`;
  const word = verdict === "not-checked" ? "NOT CHECKED" : verdict.toUpperCase();
  const reasons =
    why.length === 0 ? "" : ` ${why.map((words) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`).join(". ")}.`;
  return `Base plate drops on: ${word}${spare}.${reasons}`;
}

function spareWords(spare: number, unit: Unit): string {
  return spare < 0 ? `it is short by ${say(spare, unit)}` : `it has ${say(spare, unit)} to spare`;
}

function placingSentence({ placing }: GroupSurvey): string {
  if (placing.verdict !== "outside") return placingWords(placing);
  const rods =
    placing.rods.length === 0 ? [] : [`NO, ${counted(placing.rods.length, "rod")} out: ${placing.rods.join(", ")}`];
  return [...rods, ...(placing.offLine ? ["the column does not stand on its line"] : [])].join("; ");
}

/** One rod: where it stands from its place, what is allowed, its top, and what its hole leaves. */
function rodWords(
  { unit, editions: { placing } }: Job,
  rod: RodAsBuilt,
  { out, inPlan }: { readonly out: boolean; readonly inPlan: boolean },
): string {
  const { tag, dx, dy, dz, margin, placed } = rod;
  const found = findPlacing(placing, placed.group.rod.diameter, "fixed");
  const allowed =
    found.found && found.row.limits === "position"
      ? [`${formatWithUnit(found.row.tolerance, unit)} is allowed (${found.clause})`]
      : [];
  const signed = (value: number) => formatWithUnit(rounded(value, unit), unit);
  return [
    `Rod ${tag}${out ? (inPlan ? " OUT" : " OUT IN HEIGHT") : ""}, ${offWords(rod, unit)}`,
    ...allowed,
    `in the base's own axes x ${signed(dx)}, y ${signed(dy)}`,
    ...(dz === null ? [] : [dz === 0 ? "top at its height" : `top ${say(dz, unit)} ${dz < 0 ? "low" : "high"}`]),
    ...(margin === null ? [] : [holeWords(margin, inPlan, unit)]),
  ].join("; ");
}

/** The plate in its best position shares what is short among its holes, those of rods that stand well too. */
function holeWords(margin: number, inPlan: boolean, unit: Unit): string {
  if (margin >= 0) return `${say(margin, unit)} left in its hole`;
  const short = `its hole is short by ${say(margin, unit)} with the plate in its best position`;
  return inPlan ? short : `${short}, which shares the error out`;
}

/** Shift along plan north and east, then along the base's own axes with its turn. */
function groupMotion({ fit, standing }: GroupSurvey, unit: Unit): string {
  const { cos, sin } = turnOf(standing.placement.turn);
  const [east, north] = [cos * fit.x - sin * fit.y, sin * fit.x + cos * fit.y];
  return `${compassWords(north, east, unit)} (${motionWords(fit, unit)})`;
}

const MOST_SUSPECTS = 3;

/**
 * Where the plate does not drop on, its best position shares the error out among rods that stand well: which one rod, left
 * out, lets it drop on the others.
 */
function suspectItems({ verdict, rods }: GroupSurvey, inPlan: ReadonlySet<string>, unit: Unit): readonly ReportItem[] {
  const holes = rods.flatMap(holeOver);
  if (verdict !== "does not fit" || holes.length < 3) return [];
  const out = rods.filter(({ tag }) => inPlan.has(tag));
  const tried = farthestFirst(out.length > 0 ? out : rods).slice(0, MOST_SUSPECTS);
  const alone = tried.flatMap(({ tag }) => {
    const { spare } = bestPosition(holes.filter((hole) => hole.tag !== tag));
    return spare < 0 ? [] : [{ tag, spare }];
  });
  const [first] = alone.toSorted((a, b) => b.spare - a.spare);
  if (first === undefined)
    return [paragraph("No one rod alone keeps the plate from dropping on: more than one is off.")];
  const others =
    alone.length === 1
      ? ""
      : `; so it would without ${alone
          .filter((each) => each !== first)
          .map(({ tag }) => tag)
          .join(" or ")}`;
  return [
    paragraph(
      `Without rod ${first.tag} the plate would drop on the others with ${say(first.spare, unit)} to spare${others}: look at ${first.tag} first.`,
    ),
  ];
}

function holeOver({ tag, placed, at, clearanceTwice }: RodAsBuilt): readonly HoleOverRod[] {
  if (clearanceTwice === null) return [];
  return [{ tag, x: placed.center.x, y: placed.center.y, clearance: clearanceTwice / 2e6, rod: at }];
}

/** Rows that fail, as sentences. */
function failing(rows: readonly CheckRow[], unit: Unit): readonly ReportItem[] {
  return rows.filter(({ status }) => status === "fail").map((row) => entry(`Out: ${failWords(row, unit)}`));
}

function failWords({ plainName, subject, value, limit, sense, note, clause, edition }: CheckRow, unit: Unit): string {
  const source = [edition, clause].filter((words) => words !== "" && words !== "job").join(", ");
  if (value?.kind === "count") return `${plainName} (${source}): ${note.split("; figures")[0] ?? note}`;
  if (value === null || limit === null || sense === null) return `${plainName} ${subject} (${source}): ${note}`;
  const [found, asked] = comparedTexts(value, limit, unit);
  const rest = note === "" ? "" : `; ${note}`;
  return `${plainName} ${subject}: ${found}, ${limitWords(sense, asked)} (${source})${rest}`;
}

function remedyItems(remedies: GroupSurvey["remedies"], unit: Unit): readonly ReportItem[] {
  if (remedies.length === 0) return [];
  return [
    paragraph(
      `What would let the plate drop on, each with the checks of the base plate again; none is proposed. ${DECIDES}`,
    ),
    ...remedies.map((remedy) => entry(`${remedyWords(remedy, unit)}; ${remedyRows(remedy, unit).join("; ")}`)),
  ];
}

function plainItems({ groups, unit }: Survey): readonly ReportItem[] {
  return groups
    .filter((group) => !isNotable(group))
    .map(({ mark, at, best, placing, rods }) => {
      const spare = best === null ? "" : ` with ${say(best.spare, unit)} to spare`;
      const far = farthestFirst(rods)[0];
      const most = far === undefined ? "" : `; farthest ${far.tag}, ${offWords(far, unit)}`;
      return entry(`${mark} at ${at}: drops on${spare}; placing ${placingWords(placing)}${most}`);
    });
}

function unmatchedItems({ unmatched }: Survey): readonly ReportItem[] {
  return unmatched.map(({ name, line, why, candidates }) => {
    const may = candidates.length === 0 ? "" : `; it may be ${candidates.join(" or ")}`;
    return entry(`Line ${line}, ${name === "" ? "no name" : name}: ${why}${may}`);
  });
}

function controlItems({ others, unit }: Survey): readonly ReportItem[] {
  return others
    .filter(({ kind }) => kind === "control")
    .map(({ name, north, east }) => entry(`${name}: off its given place by ${compassWords(north, east, unit)}`));
}

function readItems(job: Job, { file, system, terms, unit }: Survey): readonly ReportItem[] {
  const north =
    job.plan === null
      ? "The job has no grid: north and east are the base's own +y and +x."
      : "North and east are those of the plan.";
  return [
    paragraph(
      `Read as ${file.order.value} (${file.order.by}), unit ${file.unit.value} (${file.unit.by}), ${system} coordinates. ${north} Off: as built less as designed.`,
    ),
    ...(job.survey.instrument.kind === "given" ? [paragraph(`Instrument: ${job.survey.instrument.value}.`)] : []),
    ...termsWords(terms, unit).map(paragraph),
  ];
}
