/**
 * A group as built: the base plate in its best position over the rods as surveyed, and each hole at a scale where its
 * clearance shows, true to scale; with errors, answers, what would let it drop on, and the cautions.
 */

import { planContour } from "../checks/geometry/measure.js";
import type { Extent, Point } from "../geometry/vocabulary.js";
import type { Job } from "../job/model/job.js";
import type { GroupSurvey, Remedy, RodAsBuilt, Survey } from "../survey/index.js";
import {
  inPlateAxes,
  placingWords,
  remedyRows,
  remedyWords,
  rounded,
  SURVEY_CAUTIONS,
  termsWords,
} from "../survey/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { formatDecimals, formatDegrees, type Unit } from "../units/index.js";
import { nanometres, toMillimetres } from "../units/length.js";
import { arrowHead, at, circle, fill, group, line, rectangle, stroke, text } from "./items.js";
import { type Area, put, startDraft, withGaps } from "./paper.js";
import { AXIS_REACH, axisItems, contourParts, onPaper, type View } from "./plan-shapes.js";
import { drawReport, type SheetPlace } from "./report-sheet.js";
import type { PaperPoint, Scene, SceneItem } from "./scene.js";
import type { Lettering, Scale } from "./sheet-sizes.js";
import { scales } from "./sheet-sizes.js";
import { respelled } from "./spelling.js";
import { type Disc, putSurveyTags, type SurveyTag } from "./survey-tags.js";
import type { Piece } from "./table.js";
import { notesPiece, tablePiece } from "./table.js";
import { printable, shorten, textWidth, wrap } from "./text-metrics.js";
import { field, scaleWords } from "./title-block.js";
import { unitWord } from "./unit-word.js";

/** What the sheet of a surveyed group is drawn from; `version` is the program's. */
export interface SurveySheetRequest {
  readonly job: Job;
  readonly survey: Survey;
  readonly group: GroupSurvey;
  readonly version: string;
  readonly sheet?: SheetPlace | undefined;
}

/** Insets on one sheet; the rods with the least margin come first. */
const MOST_INSETS = 16;

/** Draws the sheet on the smallest size on which its tables stand; the smallest of all has no room for the insets. */
export function drawSurveySheet(request: SurveySheetRequest): Scene {
  const { job, survey, group: surveyed, version } = request;
  const report = {
    job,
    version,
    title: `${surveyed.mark} ${surveyed.at}: rods as surveyed, job ${printable(job.number)}`,
    description: `${verdictWords(surveyed)}; placing: ${placingWords(surveyed.placing)}. Engineer to decide.`,
    about: field("RODS AS SURVEYED, BASE", `${surveyed.mark} ${printable(surveyed.at)}`, 0.8, "title"),
    facts: [field("POINTS AND FIRST 12 DIGITS OF THEIR SHA-256", pointsWords(survey), 0.72, "small", 2)],
    day: field("SURVEY DATE", job.survey.date.kind === "given" ? job.survey.date.value : "NOT GIVEN", 0.28),
    sheet: request.sheet,
    pieces: (width: number, lettering: Lettering) => panelPieces(request, width, lettering),
    picture: (area: Area, lettering: Lettering) => drawGroup(request, area, lettering),
  };
  return drawReport(report, ({ name }) => name !== "A" && name !== "A4");
}

/** Name of the points file without its folder, and the first digits of its hash. */
function pointsWords({ file: { file, sha256 } }: Survey): string {
  const name = printable(file.split(/[/\\]/).at(-1) ?? "");
  return sha256 === undefined ? name : `${name} ${sha256.slice(0, 12)}`;
}

function verdictWords({ verdict, best }: GroupSurvey): string {
  return best === null || verdict === "not-checked" ? "NOT CHECKED" : verdict.toUpperCase();
}

function panelPieces(
  { job, survey, group: surveyed }: SurveySheetRequest,
  width: number,
  lettering: Lettering,
): readonly Piece[] {
  const remedies = surveyed.remedies
    .slice(0, MOST_REMEDIES)
    .map((remedy) => `${remedyWords(remedy, job.unit)}; ${plainRows(remedy, job.unit).join("; ")}.`);
  const more = surveyed.remedies.length - remedies.length;
  return [
    tablePiece(rodTable(surveyed, job), width, lettering),
    tablePiece(resultTable(surveyed, job), width, lettering),
    ...(remedies.length === 0
      ? []
      : [
          notesPiece(
            "remedies",
            "WOULD LET IT DROP ON: ENGINEER TO DECIDE",
            [...remedies, ...(more > 0 ? [`${more} more in survey-groups.csv.`] : [])],
            width,
            lettering,
          ),
        ]),
    notesPiece("notes", "NOTES", notesOf(survey, surveyed, job), width, lettering),
    notesPiece("cautions", "CAUTIONS", SURVEY_CAUTIONS, width, lettering),
  ];
}

/** Remedies, and rods in the table: more of them stand in the tables of the survey. */
const [MOST_REMEDIES, MOST_RODS] = [8, 40];

const column = (title: string, share: number, align: "start" | "end" = "end") => ({ title, share, align });

function rodTable({ rods: all, missing }: GroupSurvey, { unit }: Job) {
  const rods = all.length <= MOST_RODS ? all : leastMarginFirst(all).slice(0, MOST_RODS);
  const more = all.length - rods.length;
  const figure = (value: number | null): string => (value === null ? "-" : decimals(value, unit));
  return {
    name: "survey-rods",
    heading: `RODS AS BUILT, OWN AXES, ${unitWord(unit)}`,
    columns: [
      column("ROD", 0.1, "start"),
      column("DX", 0.15),
      column("DY", 0.15),
      column("RADIAL", 0.15),
      column("DZ", 0.15),
      column("CLEAR.", 0.15),
      column("MARGIN", 0.15),
    ],
    rows: rods.map(({ tag, dx, dy, radial, dz, clearanceTwice, margin }) => [
      tag,
      figure(dx),
      figure(dy),
      figure(radial),
      figure(dz),
      figure(clearanceTwice === null ? null : clearanceTwice / 2),
      figure(margin),
    ]),
    foot: [
      ...(more === 0 ? [] : [`Least margin first; ${more} more in survey-rods.csv`]),
      ...(missing.length === 0 ? [] : [`Not surveyed: ${missing.join(", ")}`]),
    ],
    under: [],
    strong: new Set(rods.flatMap(({ margin }, i) => (margin !== null && margin < 0 ? [i] : []))),
  };
}

/** What the rules say of a remedy, each by its plain name. */
function plainRows(remedy: Remedy, unit: Unit): readonly string[] {
  const names = new Map<string, string>(remedy.rows.map(({ rule, plainName }) => [rule, plainName]));
  return remedyRows(remedy, unit).map((words) => words.replace(/^[a-z-]+(?= )/, (rule) => names.get(rule) ?? rule));
}

function leastMarginFirst(rods: readonly RodAsBuilt[]): readonly RodAsBuilt[] {
  return rods.toSorted(leastMargin);
}

/** The plate in its best position shares what is short: of rods with one margin the one that is farthest off comes first. */
function leastMargin(a: RodAsBuilt, b: RodAsBuilt): number {
  return rounded(a.margin ?? 0, "mm") - rounded(b.margin ?? 0, "mm") || b.radial - a.radial;
}

function resultTable(surveyed: GroupSurvey, { unit }: Job) {
  const { best, fit, spareOnLine, rows, rods } = surveyed;
  const length = (value: number): string => `${decimals(value, unit)} ${unit}`;
  const tightest = best === null ? "-" : best.governs.map(({ tag }) => tag).join(", ");
  const failing = new Set(rows.filter(({ status }) => status === "fail").map(({ plainName }) => plainName));
  return {
    name: "survey-results",
    heading: "TWO ANSWERS: DROPS ON, AND STANDS",
    columns: [column("WHAT", 0.36, "start"), column("VALUE", 0.64, "start")],
    rows: [
      ["drops on", verdictWords(surveyed)],
      ["placing", placingWords(surveyed.placing)],
      ["spare, best position", best === null ? "-" : roomWords(best.spare, unit)],
      ["tightest at", tightest],
      ["farthest off", farthestWords(rods, length)],
      ["best fit of the rods", `shift x ${length(fit.x)}, y ${length(fit.y)}, ${turnWords(fit.turn)}`],
      ["spare on line, unturned", spareOnLine === null ? "-" : roomWords(spareOnLine, unit)],
      ["stands on line", standing(surveyed, "stands-on-line")],
      ["stands unturned", standing(surveyed, "stands-unturned")],
      ["rules that fail", failing.size === 0 ? "none" : [...failing].join(", ")],
    ],
    foot: [],
    under: [],
    strong: new Set([0, 1]),
  };
}

/** The rod that stands farthest from its place: the one to look at first. */
function farthestWords(rods: readonly RodAsBuilt[], length: (value: number) => string): string {
  const [first] = rods.toSorted((a, b) => b.radial - a.radial);
  return first === undefined ? "-" : `${first.tag}, ${length(first.radial)}`;
}

function standing({ rows }: GroupSurvey, rule: string): string {
  const own = rows.filter((row) => row.rule === rule);
  if (own.some(({ status }) => status === "fail")) return "outside the erection tolerance";
  if (own.every(({ status }) => status === "pass")) return "within the erection tolerance";
  return "not checked: no tolerance is given";
}

function notesOf(survey: Survey, { why }: GroupSurvey, { editions }: Job): readonly string[] {
  const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
  return [
    "Seen from above. The plate is drawn in its best position; +X and +Y are its own axes. Errors are true to scale, not exaggerated.",
    respelled(
      "Thin circle: hole of the base plate; heavy circle: rod as surveyed; dashed circle around the dot: where the rod's centre may be; phantom line: washer.",
      editions,
    ),
    "Dx, dy: as built less as designed. Margin: clearance less distance from hole to rod, in the best position.",
    ...termsWords(survey.terms, survey.unit),
    ...why.filter((words) => !words.startsWith("accuracy") && !words.startsWith("points within")).map(sentence),
  ];
}

/** Of the drawing's width, what the view of the whole plate has. */
const PLAN_SHARE = 0.46;

/** A rod in the plate's own axes, in its best position. */
interface Seated {
  readonly rod: RodAsBuilt;
  readonly hole: Point;
  readonly center: Point;
}

function seat({ rods, best }: GroupSurvey): readonly Seated[] {
  const motion = best?.motion ?? null;
  return rods.map((rod) => ({
    rod,
    hole: rod.placed.center,
    center: motion === null ? rod.at : inPlateAxes(motion, rod.at),
  }));
}

function drawGroup(
  { job, group: surveyed }: SurveySheetRequest,
  area: Area,
  lettering: Lettering,
): readonly SceneItem[] {
  const seats = seat(surveyed);
  const head = headLines(surveyed, job, area, lettering);
  const middle = area.x0 + (area.x1 - area.x0) * PLAN_SHARE;
  const plan: Area = { ...area, x1: middle - 4, y1: head.y - 4 };
  const insets: Area = { ...area, x0: middle, y1: head.y - 4 };
  return [
    ...head.items,
    ...overview(surveyed, seats, job, plan, lettering),
    ...insetItems(seats, job, insets, lettering),
  ];
}

function headLines(surveyed: GroupSurvey, { unit }: Job, area: Area, { heading, body }: Lettering) {
  const { mark, at: place, best } = surveyed;
  const spare = best === null ? "" : `: ${spareWords(best.spare, unit)}`;
  const width = area.x1 - area.x0;
  const drops = `${verdictWords(surveyed)}${spare}`;
  const words = surveyed.placing.verdict === "outside" ? worstFirst(surveyed, drops) : drops;
  const title = shorten(`BASE ${mark} AT ${place}: ${words}`, width, heading, true);
  const items: SceneItem[] = [text("heading", title, at(area.x0, area.y1 - heading), heading, { bold: true })];
  let y = area.y1 - heading;
  for (const line of wrap("DOES THE BASE PLATE DROP ON THE RODS AS SURVEYED? ENGINEER TO DECIDE.", width, body)) {
    y -= body * 1.9;
    items.push(text("note", line, at(area.x0, y), body));
  }
  return { items, y };
}

/** Of a group that is out of its place: which rods stands in the table. */
function worstFirst({ verdict }: GroupSurvey, drops: string): string {
  return verdict === "does not fit" ? `${drops}; PLACING FAIL` : `PLACING FAIL; ${drops}`;
}

function spareWords(spare: number, unit: Unit): string {
  return roomWords(spare, unit)
    .toUpperCase()
    .replace(/ (IN|MM)\b/, (word) => word.toLowerCase());
}

/** `0.125 in to spare`, `short by 0.718 in`. */
function roomWords(spare: number, unit: Unit): string {
  const length = `${decimals(Math.abs(spare), unit)} ${unit}`;
  return spare < 0 ? `short by ${length}` : `${length} to spare`;
}

function turnWords(turn: number | null): string {
  return turn === null ? "turn not known" : `turn ${formatDegrees(turn, 3)}`;
}

/** Every figure of a survey alike: inches to 0.001, millimetres to 0.01. */
function decimals(length: number, unit: Unit): string {
  return formatDecimals(rounded(length, unit), unit, unit === "in" ? 3 : 2);
}

function overview(
  surveyed: GroupSurvey,
  seats: readonly Seated[],
  job: Job,
  area: Area,
  lettering: Lettering,
): readonly SceneItem[] {
  const { small } = lettering;
  const { shape, at: place } = surveyed.base.basePlate;
  const contour = shape.kind === "given" ? planContour(shape.value, place) : null;
  const extent = extentFor(surveyed, seats);
  const { view, scale, middle, foot } = overviewOf(extent, job.unit, area, lettering);
  const name = contour === null ? "PLATE NOT GIVEN; HOLES AND RODS" : "BASE PLATE, HOLES AND RODS";
  const draft = startDraft(area);
  const label = text("label", `${name}: ${scaleWords(scale)}`, at(middle, foot - small), small, { anchor: "middle" });
  put(draft, label, northArrow(surveyed, job, at(area.x0 + NORTH, foot - small * 2.4 - NORTH), small));
  const named = draft.items.length;
  put(draft, ...(contour === null ? [] : [stroke("hole", ...contourParts(view, contour))]));
  put(draft, ...axisItems(view, extent, lettering));
  for (const each of seats) put(draft, ...seatItems(each, view));
  const discs = seats.flatMap((each) => discsOf(each, view));
  const tags = seats.map((each) => tagOf(each, view));
  const lost = putSurveyTags(draft, tags, discs, small);
  const words = `TAGS WITHOUT ROOM: ${lost.join(", ")}`;
  return [
    ...draft.items.slice(0, named),
    group("survey-plan", withGaps(draft.items.slice(named), draft.gaps), { scale: scale.factor }),
    ...(lost.length === 0 ? [] : [text("label", words, at(area.x0, area.y1 - small), small)]),
  ];
}

/** Where the plate stands on the paper, at the largest scale that leaves its axes and, under it, title and arrow to north their room. */
function overviewOf(extent: Extent, unit: Unit, area: Area, { body, small }: Lettering) {
  const reach = 2 * (AXIS_REACH + body * 2);
  const [width, height] = [extent.x1 - extent.x0, extent.y1 - extent.y0];
  const room = { x: area.x1 - area.x0 - reach, y: area.y1 - area.y0 - reach - small * 6 - 2 * NORTH };
  const scale = largestScale(scales(unit), (factor) => width * factor <= room.x && height * factor <= room.y);
  const middle = (area.x0 + area.x1) / 2;
  const top = area.y1 - small * 2 - reach / 2;
  const origin = at(middle - ((extent.x0 + extent.x1) / 2) * scale.factor, top - extent.y1 * scale.factor);
  return { scale, middle, foot: top - height * scale.factor - reach / 2, view: { scale: scale.factor, origin } };
}

/** Half the size of the arrow to plan north. */
const NORTH = 6;

/** Plan north in the plate's own axes, where the job says how the base is turned on its plan. */
function northArrow({ standing }: GroupSurvey, { plan }: Job, { x, y }: PaperPoint, letter: number): SceneItem {
  const beside = (words: string) => text("label", words, at(x + NORTH + 2, y - letter / 2), letter);
  if (plan === null) return group("north", [text("label", "NORTH NOT GIVEN", at(x - NORTH, y - letter / 2), letter)]);
  const angle = ((90 - standing.placement.turn) * Math.PI) / 180;
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const [tail, tip] = [at(x - dx * NORTH, y - dy * NORTH), at(x + dx * NORTH, y + dy * NORTH)];
  const items = [stroke("fine", circle(at(x, y), NORTH * 0.55), line(tail, tip)), arrowHead(tip, dx, dy, NORTH * 0.6)];
  return group("north", [...items, beside("PLAN NORTH")], { degrees: 90 - standing.placement.turn });
}

/** Hole and rod as discs that no tag may touch. */
function discsOf({ rod, hole, center }: Seated, view: View): readonly Disc[] {
  const { baseHole, rod: spec } = rod.placed.group;
  const radius = (diameter: number): number => (toMillimetres(nanometres(diameter)) / 2) * view.scale;
  const own: Disc = { center: onPaper(view, center), radius: radius(spec.diameter) };
  return baseHole.kind === "missing" ? [own] : [own, { center: onPaper(view, hole), radius: radius(baseHole.value) }];
}

/** At the hole where it is known, else at the rod. */
function tagOf(seat: Seated, view: View): SurveyTag {
  const { rod, hole } = seat;
  const [own, bored] = discsOf(seat, view);
  const disc = bored ?? own ?? { center: onPaper(view, hole), radius: 0 };
  return { ...disc, tag: rod.tag, outward: Math.atan2(hole.y, hole.x) };
}

function extentFor({ base }: GroupSurvey, seats: readonly Seated[]): Extent {
  const { shape, at: place } = base.basePlate;
  const holes = seats.map(({ rod, hole }) => ({ hole, reach: toMillimetres(rod.placed.group.rod.diameter) * 1.5 }));
  const own = {
    x0: leastOf(holes.map(({ hole, reach }) => hole.x - reach)),
    y0: leastOf(holes.map(({ hole, reach }) => hole.y - reach)),
    x1: greatestOf(holes.map(({ hole, reach }) => hole.x + reach)),
    y1: greatestOf(holes.map(({ hole, reach }) => hole.y + reach)),
  };
  if (shape.kind === "missing") return own;
  const { value } = shape;
  const [x, y] = value.kind === "circle" ? [value.diameter, value.diameter] : [value.x, value.y];
  const [halfX, halfY] = [toMillimetres(x) / 2, toMillimetres(y) / 2];
  const middle = { x: toMillimetres(place.x), y: toMillimetres(place.y) };
  return {
    x0: Math.min(own.x0, middle.x - halfX),
    y0: Math.min(own.y0, middle.y - halfY),
    x1: Math.max(own.x1, middle.x + halfX),
    y1: Math.max(own.y1, middle.y + halfY),
  };
}

/** ISO 5455 enlargement, for holes whose clearance is small. */
const TWICE: Scale = { name: "2:1", factor: 2 };

function largestScale(all: readonly Scale[], fits: (factor: number) => boolean): Scale {
  const scale = all.find(({ factor }) => fits(factor)) ?? all.at(-1);
  if (scale === undefined) throw new RangeError("no scales");
  return scale;
}

/** One code on all of the sheet: a thin circle is a hole, a heavy one a rod, a dashed one where a rod's centre may be. */
const [HOLE, ROD, CLEARANCE] = ["fine", "outline", "concrete"] as const;

function seatItems({ rod, hole, center }: Seated, view: View): readonly SceneItem[] {
  const { baseHole, rod: spec } = rod.placed.group;
  const radius = (diameter: number): number => (toMillimetres(nanometres(diameter)) / 2) * view.scale;
  return [
    ...(baseHole.kind === "given" ? [stroke(HOLE, circle(onPaper(view, hole), radius(baseHole.value)))] : []),
    stroke(ROD, circle(onPaper(view, center), radius(spec.diameter))),
  ];
}

/** Every hole by itself, the least margin first, all at one scale, in frames as high as they need be. */
function insetItems(seats: readonly Seated[], job: Job, area: Area, lettering: Lettering): readonly SceneItem[] {
  const ordered = [...seats].sort((a, b) => leastMargin(a.rod, b.rod));
  const { small } = lettering;
  const width = area.x1 - area.x0;
  const height = area.y1 - area.y0 - small * (seats.length > MOST_INSETS ? 2 : 1) * LEADING - 1;
  const reach = {
    x: greatestOf(seats.map((each) => widthOf(each, "x"))),
    y: greatestOf(seats.map((each) => widthOf(each, "y"))),
  };
  const grid = gridFor(Math.min(MOST_INSETS, seats.length), (columns, rows) => {
    const words = insetWords(ordered, job, width / columns - FRAME_GAP - 2, small);
    return { words, x: width / columns - FRAMED, y: height / rows - wordsHeight(words, small) - FRAMED, reach };
  });
  const scale = largestScale(
    [TWICE, ...scales(job.unit)],
    (factor) => reach.x * factor <= grid.x && reach.y * factor <= grid.y,
  );
  const cell = {
    width: width / grid.columns,
    height: Math.min(height / grid.rows, reach.y * scale.factor + wordsHeight(grid.words, small) + FRAMED),
  };
  const shown = ordered.slice(0, grid.columns * grid.rows);
  const cells = shown.map((each, i) => {
    const x = area.x0 + (i % grid.columns) * cell.width;
    const y = area.y1 - Math.floor(i / grid.columns) * cell.height;
    const frame: Area = { x0: x, x1: x + cell.width - FRAME_GAP, y0: y - cell.height + FRAME_GAP, y1: y };
    return inset(each, frame, scale, grid.words[i] ?? { bold: [], plain: [] }, small);
  });
  const more =
    seats.length > shown.length ? `; ${seats.length - shown.length} RODS WITH MORE MARGIN ARE NOT SHOWN` : "";
  const title = `HOLES TRUE TO SCALE: ${scale.factor > 1 ? scale.name : scaleWords(scale)}${more}`;
  const foot = area.y1 - Math.ceil(shown.length / grid.columns) * cell.height;
  const titles = wrap(title, width, small).map((words, i) =>
    text("label", words, at((area.x0 + area.x1) / 2, foot - small * (1 + LEADING * i)), small, { anchor: "middle" }),
  );
  return [...cells, ...titles];
}

/** Between frames; and what frames and paper beside the drawing take of a cell. */
const [FRAME_GAP, FRAMED] = [2, 5];
/** From line to line, in letters. */
const LEADING = 1.75;

/** Lines of words over a hole. */
interface InsetWords {
  readonly bold: readonly string[];
  readonly plain: readonly string[];
}

interface Cells {
  readonly words: readonly InsetWords[];
  /** Paper for the drawing in each frame. */
  readonly x: number;
  readonly y: number;
}

/** Columns and rows that leave the holes the largest scale. */
function gridFor(
  count: number,
  cellsOf: (columns: number, rows: number) => Cells & { readonly reach: { readonly x: number; readonly y: number } },
): Cells & { readonly columns: number; readonly rows: number } {
  const grids = Array.from({ length: Math.max(1, count) }, (_, i) => {
    const [columns, rows] = [i + 1, Math.ceil(count / (i + 1))];
    const { reach, ...cells } = cellsOf(columns, rows);
    return { ...cells, columns, rows, factor: Math.min(cells.x / reach.x, cells.y / reach.y) };
  });
  const [first] = grids;
  if (first === undefined) throw new RangeError("no insets");
  return grids.reduce((best, grid) => (grid.factor > best.factor ? grid : best), first);
}

/** Tag and margin, then the error from the rod's place: each in one line where all have room in it, else in two. */
function insetWords(seats: readonly Seated[], { unit }: Job, room: number, small: number): readonly InsetWords[] {
  const figure = (value: number): string => decimals(value, unit);
  const bold = inLines(
    seats.map(({ rod }) => [rod.tag, marginWords(rod, unit)]),
    "  ",
    (line) => textWidth(line, small, true) <= room,
  );
  const plain = inLines(
    seats.map(({ rod }) => [`OFF ${figure(rod.radial)}:`, `X ${figure(rod.dx)}, Y ${figure(rod.dy)}`]),
    " ",
    (line) => textWidth(line, small) <= room,
  );
  return seats.map((_, i) => ({ bold: bold[i] ?? [], plain: plain[i] ?? [] }));
}

function inLines(
  all: readonly (readonly string[])[],
  between: string,
  fits: (line: string) => boolean,
): readonly (readonly string[])[] {
  const joined = all.map((words) => [words.join(between)]);
  return joined.flat().every(fits) ? joined : all;
}

function marginWords({ margin }: RodAsBuilt, unit: Unit): string {
  if (margin === null) return "MARGIN NOT KNOWN";
  return margin < 0 ? `SHORT BY ${decimals(-margin, unit)}` : `MARGIN ${decimals(margin, unit)}`;
}

function wordsHeight(words: readonly InsetWords[], small: number): number {
  return 1 + small * LEADING * greatestOf(words.map(({ bold, plain }) => bold.length + plain.length));
}

/** What the inset shows along an axis, from the hole's centre, millimetres. */
function spanOf({ rod, hole, center }: Seated, axis: "x" | "y"): readonly [number, number] {
  const { baseHole, washer, rod: spec } = rod.placed.group;
  const half = (diameter: number) => toMillimetres(nanometres(diameter)) / 2;
  const away = center[axis] - hole[axis];
  const own = half(washer.kind === "given" ? washer.value.size : spec.diameter);
  const bored = baseHole.kind === "given" ? half(baseHole.value) : 0;
  return [Math.min(-bored, away - own), Math.max(bored, away + own)];
}

function widthOf(seat: Seated, axis: "x" | "y"): number {
  const [low, high] = spanOf(seat, axis);
  return high - low;
}

function inset(each: Seated, area: Area, scale: Scale, words: InsetWords, small: number): SceneItem {
  const { rod, hole, center } = each;
  const { baseHole, washer, rod: spec } = rod.placed.group;
  const middleOf = (axis: "x" | "y") => spanOf(each, axis).reduce((sum, end) => sum + end, 0) / 2;
  const middle = at(
    (area.x0 + area.x1) / 2 - middleOf("x") * scale.factor,
    (area.y0 + area.y1 - wordsHeight([words], small)) / 2 - middleOf("y") * scale.factor,
  );
  const place = at(middle.x + (center.x - hole.x) * scale.factor, middle.y + (center.y - hole.y) * scale.factor);
  const radius = (diameter: number): number => (diameter / 2e6) * scale.factor;
  const items: SceneItem[] = [
    stroke("table", ...rectangle(area.x0, area.y0, area.x1, area.y1)),
    ...insetTexts(words, area, small),
    ...washerItems(washer, place, scale.factor),
    ...(baseHole.kind === "given" ? [stroke(HOLE, circle(middle, radius(baseHole.value)))] : []),
    ...clearanceItems(rod, middle, scale.factor),
    stroke(ROD, circle(place, radius(spec.diameter))),
    stroke("fine", ...crossAt(place, 1.6)),
    dotAt(middle),
  ];
  return group("hole-inset", items, { tag: rod.tag, scale: scale.factor, marginNm: rod.margin ?? "not known" });
}

function insetTexts({ bold, plain }: InsetWords, { x0, x1, y1 }: Area, small: number): readonly SceneItem[] {
  return [...bold, ...plain].map((line, i) => {
    const isBold = i < bold.length;
    const words = shorten(line, x1 - x0 - 2, small, isBold);
    return text(isBold ? "tag" : "label", words, at(x0 + 1, y1 - 1 - small * (1 + LEADING * i)), small, {
      bold: isBold,
    });
  });
}

/** The centre of a hole. */
function dotAt({ x, y }: PaperPoint): SceneItem {
  const half = 0.5;
  return fill("arrow", at(x - half, y - half), at(x + half, y - half), at(x + half, y + half), at(x - half, y + half));
}

/** Where the rod's centre may be: the clearance around the hole's centre. */
function clearanceItems({ clearanceTwice }: RodAsBuilt, middle: PaperPoint, factor: number): readonly SceneItem[] {
  if (clearanceTwice === null || clearanceTwice <= 0) return [];
  return [stroke(CLEARANCE, circle(middle, (clearanceTwice / 2e6) * factor))];
}

function washerItems(
  washer: RodAsBuilt["placed"]["group"]["washer"],
  { x, y }: PaperPoint,
  factor: number,
): readonly SceneItem[] {
  if (washer.kind === "missing") return [];
  const half = (toMillimetres(washer.value.size) / 2) * factor;
  if (washer.value.shape === "round") return [stroke("base-plate", circle(at(x, y), half))];
  return [stroke("base-plate", ...rectangle(x - half, y - half, x + half, y + half))];
}

const crossAt = ({ x, y }: PaperPoint, reach: number) => [
  line(at(x - reach, y), at(x + reach, y)),
  line(at(x, y - reach), at(x, y + reach)),
];
