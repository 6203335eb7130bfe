/** The tables of a sheet: revisions, holes, rods and setting, tape checks, worst rows of the ledger, notes and cautions. */

import { CAUTION } from "../checks/cautions.js";
import { type CheckRow, NOT_CHECKED_AT_ALL, type Quantity } from "../checks/model.js";
import { listed } from "../diagnostics/listed.js";
import type { Base, Input } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import { keyWords } from "../template/index.js";
import type { Hole } from "../template/model.js";
import {
  formatApart,
  formatDifference,
  formatFeetInches,
  formatLength,
  type Length,
  nanometres,
  type Unit,
} from "../units/index.js";
import { alikeHoles, coordinate, sizeText } from "./callouts.js";
import { longestPairs } from "./plan-view.js";
import type { SheetRequest } from "./request.js";
import type { TableText } from "./table.js";

const NONE: ReadonlySet<number> = new Set();

/** A hole table is needed with more than 8 holes, more than 2 sizes, or holes that no dimension chain locates. */
export function needsHoleTable({ plate, job }: SheetRequest): boolean {
  const sizes = new Set(plate.holes.map((hole) => sizeText(hole, job.unit)));
  const loose = plate.holes.some(
    ({ role, center }) => role !== "rod" && (role !== "opening" || center.x !== 0 || center.y !== 0),
  );
  return plate.holes.length > 8 || sizes.size > 2 || loose;
}

/** Rows `from` to `to` of the hole table; the count stands under the last part. */
export function holeTable(request: SheetRequest, from: number, to: number): TableText {
  const { plate, job } = request;
  const rows = plate.holes.slice(from, to).map((hole) => holeRow(hole, job.unit));
  const last = to >= plate.holes.length;
  return {
    name: "hole-table",
    heading: from === 0 ? `HOLE TABLE (${unitWord(job.unit)} FROM W.P.)` : "HOLE TABLE (CONTINUED)",
    columns: [
      { title: "TAG", share: 0.13, align: "start" },
      { title: "X", share: 0.19, align: "end" },
      { title: "Y", share: 0.19, align: "end" },
      { title: "HOLE", share: 0.22, align: "end" },
      { title: "ROD", share: 0.12, align: "end" },
      { title: "MADE", share: 0.15, align: "end" },
    ],
    rows,
    foot: last ? [countWords(plate.holes)] : [],
    under: [],
    strong: NONE,
  };
}

function holeRow(hole: Hole, unit: Unit): readonly string[] {
  const { tag, center, rod, made } = hole;
  return [
    tag,
    coordinate(center.x, unit),
    coordinate(center.y, unit),
    sizeText(hole, unit),
    rod?.size ?? "-",
    made.toUpperCase(),
  ];
}

function countWords(holes: readonly Hole[]): string {
  const drilled = holes.filter(({ made }) => made === "drill").length;
  const parts = [
    ...(holes.length > drilled ? [`${holes.length - drilled} CUT`] : []),
    ...(drilled > 0 ? [`${drilled} DRILLED`] : []),
  ];
  return `COUNT ${holes.length}: ${parts.join(", ")}`;
}

/** The unit as title blocks and headings name it. */
export function unitWord(unit: Unit): string {
  return unit === "in" ? "INCHES" : "MILLIMETRES";
}

/** The newest revisions, oldest of those first; the job's own revision where the job lists none. */
export function revisionTable({ job }: Pick<SheetRequest, "job">, most: number): TableText {
  const known =
    job.revisions.length > 0
      ? job.revisions
      : [{ revision: job.revision, date: job.date, text: `Issued ${job.status}` }];
  const shown = known.slice(-most);
  return {
    name: "revision-block",
    heading: "REVISIONS",
    columns: [
      { title: "REV", share: 0.12, align: "start" },
      { title: "DATE", share: 0.2, align: "start" },
      { title: "DESCRIPTION", share: 0.68, align: "start" },
    ],
    rows: shown.map(({ revision, date, text }) => [revision, date, text]),
    foot: known.length > shown.length ? [`+ ${known.length - shown.length} earlier`] : [],
    under: [],
    strong: NONE,
  };
}

/** What the carpenter sets: rods of each group, their holes, projection and embedment. */
export function rodTable({ base, rods, job }: SheetRequest): TableText {
  const { unit } = job;
  const rows = base.groups.slice(0, MOST_GROUPS).map((own) => {
    const count = rods.filter(({ group }) => group.letter === own.letter).length;
    const { rod } = own;
    return [
      own.letter,
      String(count),
      rod.size,
      `${known(rod.grade)}${rod.finish.kind === "given" && rod.finish.value === "galvanized" ? " GALV." : ""}`,
      formatLength(own.hole.value, unit),
      lengthOrDash(own.baseHole, unit),
      lengthOrDash(rod.projection, unit),
      lengthOrDash(rod.embedment, unit),
    ];
  });
  return {
    name: "rod-table",
    heading: "RODS AND SETTING",
    columns: [
      { title: "GR", share: 0.07, align: "start" },
      { title: "NO", share: 0.07, align: "end" },
      { title: "ROD", share: 0.11, align: "end" },
      { title: "GRADE", share: 0.27, align: "end" },
      { title: "HOLE", share: 0.13, align: "end" },
      { title: "BASE PL", share: 0.13, align: "end" },
      { title: "PROJ", share: 0.1, align: "end" },
      { title: "EMBED", share: 0.12, align: "end" },
    ],
    rows,
    foot: [...moreGroups(base.groups.length), ...settingLines(base.template.height, unit)],
    under: [],
    strong: NONE,
  };
}

const MOST_GROUPS = 8;

function moreGroups(count: number): readonly string[] {
  return count > MOST_GROUPS ? [`+ ${count - MOST_GROUPS} more groups in summary.json`] : [];
}

function settingLines(height: Input<Length>, unit: Unit): readonly string[] {
  const words = height.kind === "given" ? `${formatLength(height.value, unit)} ABOVE T.O.C.` : "HEIGHT NOT GIVEN";
  return [`UNDERSIDE OF TEMPLATE ${words}; PROJECTION IS FROM T.O.C.`];
}

function known(input: Input<string>): string {
  return input.kind === "given" ? input.value : "-";
}

function lengthOrDash(input: Input<Length>, unit: Unit): string {
  return input.kind === "given" ? formatLength(input.value, unit) : "-";
}

/** Rod-to-rod distances that are taped: both ways and both diagonals; exact, and to the nearest 1/16 in or 1 mm. */
export function tapeTable({ plate, job, base }: SheetRequest): TableText | null {
  const rods = plate.holes.filter(({ role }) => role === "rod");
  const bolts = base.groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  const rows = bolts ? boltCircleRows(rods, base, job.unit) : gaugeRows(rods, job.unit);
  if (rows.length === 0) return null;
  return {
    name: "tape-table",
    heading: "TAPE CHECK, CENTRE TO CENTRE",
    columns: [
      { title: "RODS", share: 0.37, align: "start" },
      { title: "GAUGE", share: 0.21, align: "start" },
      { title: "DISTANCE", share: 0.2, align: "end" },
      { title: job.unit === "in" ? "TO 1/16 in" : "TO 1 mm", share: 0.22, align: "end" },
    ],
    rows,
    foot: [],
    under: [],
    strong: NONE,
  };
}

/** Chord to the next rod, and the longest distance across, of each bolt circle. */
function boltCircleRows(rods: readonly Hole[], base: Base, unit: Unit): readonly (readonly string[])[] {
  return base.groups.flatMap(({ letter }) => {
    const own = rods.filter(({ tag }) => /^\D+/.exec(tag)?.[0] === letter);
    const [a, b] = own;
    if (a === undefined || b === undefined) return [];
    const across = own[Math.floor(own.length / 2)] ?? b;
    const row = (to: Hole, what: string, all: string) => {
      const [, ...figures] = tapeCells(a, to, unit);
      return [`${a.tag}-${to.tag}${all}`, what, ...figures];
    };
    return [
      row(b, "CHORD", own.length > 2 ? " AND ALL ROUND" : ""),
      ...(own.length > 3 ? [row(across, "ACROSS", "")] : []),
    ];
  });
}

/** Pairs that are alike in direction and distance share a row. */
function gaugeRows(rods: readonly Hole[], unit: Unit): readonly (readonly string[])[] {
  const kinds = new Map<string, { pairs: string[]; cells: readonly string[] }>();
  for (const [a, b] of tapePairs(rods)) {
    const cells = tapeCells(a, b, unit);
    const known = kinds.get(cells.join("|"));
    if (known === undefined) kinds.set(cells.join("|"), { pairs: [`${a.tag}-${b.tag}`], cells });
    else known.pairs.push(`${a.tag}-${b.tag}`);
  }
  return [...kinds.values()].map(({ pairs, cells }) => [pairs.join(", "), ...cells]);
}

function tapeCells(a: Hole, b: Hole, unit: Unit): readonly string[] {
  const [dx, dy] = [b.center.x - a.center.x, b.center.y - a.center.y];
  const distance = nanometres(Math.hypot(dx, dy) * 1e6);
  const taped = unit === "in" ? formatFeetInches(distance, 16) : `${Math.round(distance / 1e6)}`;
  const what = dy === 0 ? "ALONG X" : dx === 0 ? "ALONG Y" : "DIAGONAL";
  return [what, formatLength(distance, unit), taped];
}

/** Corner rods round the group and both diagonals; without four corners, neighbours and the longest distance. */
function tapePairs(rods: readonly Hole[]): readonly (readonly [Hole, Hole])[] {
  const corner = (sx: number, sy: number) =>
    rods.reduce<Hole | null>((best, rod) => {
      const reach = (hole: Hole) => hole.center.x * sx + hole.center.y * sy;
      return best === null || reach(rod) > reach(best) + 1e-9 ? rod : best;
    }, null);
  const [nw, ne, se, sw] = [corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1)];
  const wanted = [[nw, ne], [ne, se], [se, sw], [sw, nw], [nw, se], [ne, sw], ...longestPairs(rods).slice(0, 1)];
  const seen = new Set<string>();
  return wanted.flatMap((pair) => {
    const [a, b] = pair;
    if (a == null || b == null || a === b) return [];
    const key = [a.tag, b.tag].sort().join("|");
    if (seen.has(key)) return [];
    seen.add(key);
    return [[a, b] as const];
  });
}

/** A request with its ledger rows put together in lines, worst first. */
export interface Prepared extends SheetRequest {
  readonly lines: readonly CheckLine[];
}

/** Rows of one rule that agree in all but their subject are one line. */
export interface CheckLine {
  readonly row: CheckRow;
  readonly subjects: readonly string[];
}

/** Lines of the check table, in the order of the rows, which are worst first; rows that do not apply are left out. */
export function checkLines(rows: readonly CheckRow[], unit: Unit): readonly CheckLine[] {
  const lines = new Map<string, { row: CheckRow; subjects: string[] }>();
  for (const row of rows) {
    if (row.status === "not-applicable") continue;
    const key = [row.severity, answerWords(row), row.clause, row.edition, ...checkCells(row, "", unit)].join("|");
    const known = lines.get(key);
    if (known === undefined) lines.set(key, { row, subjects: [row.subject] });
    else known.subjects.push(row.subject);
  }
  return [...lines.values()];
}

/** The worst rows that fit, counts in the heading, and where the rest is. */
export function checkTable({ rows, lines, job }: Prepared, most: number): TableText {
  const shown = lines.slice(0, most);
  const count = (status: CheckRow["status"]) => rows.filter((row) => row.status === status).length;
  const rest = rows.length - count("not-applicable") - shown.reduce((sum, { subjects }) => sum + subjects.length, 0);
  return {
    name: "check-table",
    heading: `CHECKS: ${count("fail")} FAIL, ${count("not-checked")} NOT CHECKED, ${count("pass")} PASS`,
    columns: [
      { title: "RULE AND CLAUSE", share: 0.265, align: "start" },
      { title: "SUBJECT", share: 0.195, align: "start" },
      { title: "VALUE", share: 0.125, align: "end" },
      { title: "LIMIT", share: 0.16, align: "end" },
      { title: "MARGIN", share: 0.125, align: "end" },
      { title: "STATUS", share: 0.13, align: "end" },
    ],
    rows: shown.map(({ row, subjects }) => checkCells(row, subjectWords(subjects), job.unit)),
    foot: rest > 0 ? [`+ ${rest} more in ledger.csv`] : [],
    under: shown.map(({ row }) => `${answerWords(row)}${row.clause}; ${row.edition}`),
    strong: new Set(shown.flatMap(({ row }, i) => (row.status === "fail" ? [i] : []))),
  };
}

/** `A1`, `A1 A2`, `A1 + 3`. */
function subjectWords(subjects: readonly string[]): string {
  const [first = "", second = ""] = subjects;
  if (subjects.length === 1) return first;
  return subjects.length === 2 && first.length + second.length <= 5
    ? `${first} ${second}`
    : `${first} + ${subjects.length - 1}`;
}

function checkCells(row: CheckRow, subject: string, unit: Unit): readonly string[] {
  const { rule, value, limit, sense, margin, status } = row;
  if (value === null || limit === null) return [rule, subject, "-", "-", "", STATUS[status]];
  const [found, asked] = bareTexts(value, limit, unit);
  const spare = margin === null ? "" : spareText(margin, unit);
  return [rule, subject, found, `${sense ?? ""} ${asked}`, spare, STATUS[status]];
}

const STATUS: Readonly<Record<CheckRow["status"], string>> = {
  pass: "PASS",
  fail: "FAIL",
  "not-checked": "NOT CHECKED",
  "not-applicable": "N/A",
};

/** An answered row keeps its FAIL; who answered stands before the clause. */
function answerWords({ answer }: CheckRow): string {
  return answer === null ? "" : `ANSWERED by ${answer.by}, ${answer.date}; `;
}

/** Value and limit without unit, with as many digits as it takes to show which is the larger. */
function bareTexts(value: Quantity, limit: Quantity, unit: Unit): readonly [string, string] {
  if (value.kind === "length" && limit.kind === "length") return formatApart(value.twice / 2, limit.twice / 2, unit);
  return [countText(value), countText(limit)];
}

function spareText(margin: Quantity, unit: Unit): string {
  return margin.kind === "length" ? formatDifference(margin.twice / 2, unit) : countText(margin);
}

function countText(quantity: Quantity): string {
  return quantity.kind === "count" ? String(quantity.count) : "";
}

/** What the shop and the field must know of this plate. */
export function plateNotes(request: SheetRequest, unplaced: readonly string[]): readonly string[] {
  const { plate, base, job, drillListName } = request;
  const scribed = markWords(request);
  const punched = plate.material === "plywood" ? [] : plate.holes.filter(({ made }) => made === "drill");
  const drilled = alikeHoles(punched, job.unit);
  return [
    "Set with the face marked TOP up. +X and +Y are the type's own axes, not north: the anchor-rod plan shows the turn.",
    ...(plate.material === "plywood"
      ? plywoodNotes(drillListName)
      : ["Sizes are nominal, without kerf. Cut from the cut file, do not scale this print."]),
    ...drilled.map((alike) => punchNote(alike, job.unit)),
    ...(scribed === "" ? [] : [scribed]),
    ...plate.sized.map(({ what, how }) => `Size of ${what}: ${how}.`),
    ...polygonNotes(request),
    ...(plate.marks.some(({ kind }) => kind === "north")
      ? ["N points to plan north wherever this template is set: all its places are turned alike."]
      : []),
    ...(plate.keyed === null
      ? []
      : [`Key: ${keyWords(plate.keyed, job.unit)}. A template that lies any other way round shows it at the edge.`]),
    ...(base.columnName === "" ? [] : [`Column ${base.columnName}.`]),
    ...sharedNotes(request),
    ...(base.note === "" ? [] : [base.note]),
    ...unplaced.slice(0, MOST_GROUPS),
  ];
}

const MOST_MARKS = 40;

/** Which bases this sheet is for, where it is not for all that the template serves. */
function sharedNotes({ base, sheetBases, sheetCount }: SheetRequest): readonly string[] {
  const { mark, sharedBy } = base.template;
  const others = sharedBy.filter((each) => !sheetBases.includes(each));
  if (sharedBy.length === 0 || others.length === 0) return [];
  const [own, rest] = [sheetBases, others].map((marks) => listed(marks, MOST_MARKS));
  return [
    `Rods, levels and checks of this sheet are those of ${own}. ${mark} serves ${rest} too: ${sheetCount} sheets in all.`,
  ];
}

const MOST_CORNERS = 24;

/** The corners of a polygon, before their treatment: dimensions give no more than its overall size. */
function polygonNotes({ base, job }: SheetRequest): readonly string[] {
  const { outline } = base.template;
  if (outline.kind !== "polygon") return [];
  const corners = outline.at.map(({ x, y }) => `${formatLength(x, job.unit)}, ${formatLength(y, job.unit)}`);
  const more = corners.length > MOST_CORNERS ? `; ${corners.length - MOST_CORNERS} more in the cut file` : "";
  return [`Corners of the outline, X, Y from W.P.: ${corners.slice(0, MOST_CORNERS).join("; ")}${more}.`];
}

const MOST_TAGS = 12;

function punchNote(alike: readonly Hole[], unit: Unit): string {
  const more = alike.length > MOST_TAGS ? ` and ${alike.length - MOST_TAGS} more` : "";
  const tags = alike
    .slice(0, MOST_TAGS)
    .map(({ tag }) => tag)
    .join(", ");
  const sizes = [...new Set(alike.map((hole) => sizeText(hole, unit)))].join(", ");
  return `Centre punch and drill ${tags}${more}: ${sizes}.`;
}

function plywoodNotes(drillListName: string | null): readonly string[] {
  const list = drillListName === null ? "the hole table" : drillListName;
  return [`Plywood: drill to ${list}. Marks are painted. Plate washers on both faces at every rod.`];
}

function markWords({ plate, job }: SheetRequest): string {
  const words = [...new Set(plate.marks.filter(({ text }) => text !== "").map(({ text }) => text))];
  const how = plate.material === "plywood" || job.shop.marking.how === "paint" ? "Painted" : "Scribed";
  return words.length === 0 || job.shop.marking.how === "none"
    ? ""
    : `${how} on the top face: ${words.slice(0, MOST_TAGS).join("; ")}${words.length > MOST_TAGS ? "; ..." : "."}`;
}

/** Printed on every sheet. */
export const SHEET_CAUTIONS: readonly string[] = [
  `NOT CHECKED: ${NOT_CHECKED_AT_ALL.join(", ")}.`,
  CAUTION.fieldChange,
  `${CAUTION.guardRods} ${CAUTION.noLifting}`,
  `${CAUTION.releasedOnly} ${CAUTION.surveyAgain}`,
  CAUTION.localCodes,
];
