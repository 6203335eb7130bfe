/** The rods of a base as the carpenter sets them. What is given of no group has no column. */
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Input, RodGroup } from "../job/model/job.js";
import { levellingNutsOf, nutsAtBottom } from "../job/model/stack.js";
import { orderedGradeOf } from "../rods/index.js";
import { formatLength, type Length, type Unit } from "../units/index.js";
import { lowerLevelWords } from "./piece-request.js";
import type { SheetRequest } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import { spellingOf } from "./spelling.js";
import type { Column, TableText } from "./table.js";
import { textWidth, wrap } from "./text-metrics.js";

const NONE: ReadonlySet<number> = new Set();

/** A column before its share is known: what it says of a group, "" where that is not known. */
interface RodColumn {
  readonly title: string;
  readonly align: Column["align"];
  readonly cell: (own: RodGroup) => string;
}

/** Where nobody says how wide it is drawn: as in the panel of a B sheet, in letters of 3 mm. */
const USUAL = { width: 146, letter: 3 } as const;

/** What the carpenter sets: rods of each group, their holes and lengths, nuts and washers. */
export function rodTable(request: SheetRequest, width: number = USUAL.width, lettering?: Lettering): TableText {
  const { base, job } = request;
  const letter = lettering?.small ?? USUAL.letter;
  const groups = base.groups.slice(0, MOST_GROUPS);
  const columns = rodColumns(request).filter(({ cell }) => groups.some((own) => cell(own) !== ""));
  const more = groups.map((own) => moreWords(own, job.unit));
  const isSaidOnce = groups.length > 1 && base.groups.every((own) => moreWords(own, job.unit) === more[0]);
  return {
    name: "rod-table",
    heading: "RODS AND SETTING",
    columns: withShares(columns, groups, width, letter),
    rows: groups.map((own) => columns.map(({ cell }) => cell(own))),
    foot: [
      ...moreGroups(base.groups.length),
      ...wrap(
        [...(isSaidOnce ? everyRod(more) : []), ...footWords(request, groups)].join("; "),
        width - 2 * CELL_PAD,
        letter,
      ),
    ],
    under: isSaidOnce || more.every((words) => words === "") ? [] : more,
    strong: NONE,
  };
}

const MOST_GROUPS = 8;
const CELL_PAD = 1;

function rodColumns({ rods, job }: SheetRequest): readonly RodColumn[] {
  const { unit } = job;
  const count = (own: RodGroup) => rods.filter(({ group }) => group.letter === own.letter).length;
  return [
    { title: "GR", align: "start", cell: ({ letter }) => letter },
    { title: "NO", align: "end", cell: (own) => String(count(own)) },
    { title: "ROD", align: "end", cell: ({ rod }) => rod.size },
    { title: "GRADE", align: "end", cell: gradeWords },
    { title: "HOLE", align: "end", cell: ({ hole }) => formatLength(hole.value, unit) },
    { title: "BASE PL", align: "end", cell: ({ baseHole }) => lengthOrNone(baseHole, unit) },
    { title: "PROJ", align: "end", cell: ({ rod }) => lengthOrNone(rod.projection, unit) },
    { title: "EMBED", align: "end", cell: ({ rod }) => lengthOrNone(rod.embedment, unit) },
  ];
}

/** Shares by the widest text of each column, so that no cell is cut short while there is room. */
function withShares(columns: readonly RodColumn[], groups: readonly RodGroup[], width: number, letter: number) {
  const widths = columns.map(({ title, cell }) =>
    [title, ...groups.map(cell)].reduce((most, words) => Math.max(most, textWidth(words, letter)), 0),
  );
  const spare = (width - widths.reduce((sum, each) => sum + each, 0)) / columns.length;
  const padded = widths.map((each) => each + Math.max(spare, 2 * CELL_PAD));
  const total = padded.reduce((sum, each) => sum + each, 0);
  return columns.map(({ title, align }, i): Column => ({ title, align, share: (padded[i] ?? 0) / total }));
}

function gradeWords({ rod }: RodGroup): string {
  const { finish } = rod;
  const grade = orderedGradeOf(rod);
  const zinc = finish.kind === "given" && finish.value === "galvanized" ? ["GALV."] : [];
  return [...(grade.kind === "given" ? [grade.value] : []), ...zinc].join(" ");
}

/** `THREAD 4-1/2, LENGTH 18, LOWER END NUT`: the second line of a group, what of it is given. */
function moreWords({ rod }: RodGroup, unit: Unit): string {
  const { threadLength, fullThread, length, bottom } = rod;
  return [
    ...(fullThread ? ["THREADED IN FULL"] : lengthPart("THREAD", threadLength, unit)),
    ...lengthPart("LENGTH", length, unit),
    ...(bottom.kind === "given" ? [`LOWER END ${bottom.value.kind.toUpperCase()}`] : []),
  ].join(", ");
}

function lengthPart(name: string, length: Input<Length>, unit: Unit): readonly string[] {
  return length.kind === "given" ? [`${name} ${formatLength(length.value, unit)}`] : [];
}

/** What is the same for all groups; nothing where nothing is given. */
function everyRod([words = ""]: readonly string[]): readonly string[] {
  return words === "" ? [] : [`EVERY ROD: ${words}`];
}

function moreGroups(count: number): readonly string[] {
  return count > MOST_GROUPS ? [`+ ${count - MOST_GROUPS} more groups in summary.json`] : [];
}

function footWords(request: SheetRequest, groups: readonly RodGroup[]): readonly string[] {
  const { base, job, piece } = request;
  if (piece?.role === "lower template") return ["2 NUTS A ROD ON THE LOWER TEMPLATE"];
  const nuts = groups.map((own) => fastenerWords(request, own));
  const isAlike = nuts.every((words) => words === nuts[0]);
  return [
    ...(isAlike ? nuts.slice(0, 1) : nuts.map((words, i) => `${groups[i]?.letter ?? ""}: ${words}`)),
    ...(isSetOverCastRods(base.template) ? [] : [settingLine(base.template.height, job.unit)]),
    ...(base.template.lower === null
      ? []
      : [`LOWER TEMPLATE: ${lowerLevelWords(job, base).toUpperCase()}, 2 NUTS A ROD`]),
    "PROJECTION FROM T.O.C.",
  ];
}

/** `NUTS A ROD: 2 ON TEMPLATE, 1 ON BASE PLATE`, by where they go; washers where the job names them. */
function fastenerWords(request: SheetRequest, { rod, washer }: RodGroup): string {
  const { base, job } = request;
  const { levelling, template } = base;
  const onTemplate = isSetOverCastRods(template) ? 0 : 2;
  const washed = job.shop.templateWasher.kind === "given" || template.material === "plywood";
  const levels = levellingNutsOf(levelling, rod);
  const level = levels.kind === "given" ? levels.value : 0;
  const ends = rod.bottom.kind === "missing" ? 0 : nutsAtBottom(rod.bottom.value);
  const named = washer.kind === "given" ? 1 : 0;
  const { leveling } = spellingOf(job.editions);
  const listed = (counts: readonly (readonly [number, string])[]) =>
    counts.flatMap(([count, where]) => (count === 0 ? [] : [`${count} ${where}`])).join(", ");
  const nuts = listed([
    [onTemplate, "ON TEMPLATE"],
    [level, leveling],
    [rod.topNuts.value, "ON BASE PLATE"],
    [ends, "AT LOWER END"],
  ]);
  const washers = listed([
    [washed ? onTemplate : 0, "ON TEMPLATE"],
    [level > 0 ? named : 0, leveling],
    [named, "ON BASE PLATE"],
  ]);
  return `NUTS A ROD: ${nuts}${washers === "" ? "" : `; WASHERS: ${washers}`}`;
}

function settingLine(height: Input<Length>, unit: Unit): string {
  if (height.kind === "missing") return "TEMPLATE HEIGHT NOT GIVEN";
  return `UNDERSIDE OF TEMPLATE ${formatLength(height.value, unit)} ABOVE T.O.C.`;
}

function lengthOrNone(input: Input<Length>, unit: Unit): string {
  return input.kind === "given" ? formatLength(input.value, unit) : "";
}
