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
import { printable, shorten, wrap } from "./text-metrics.js";
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
  return rods.toSorted((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
}

function resultTable(surveyed: GroupSurvey, { unit }: Job) {
  const { best, fit, spareOnLine, rows } = surveyed;
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
  const middle = area.x0 + (area.x1 - area.x0) * 0.4;
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
  const { view, scale, middle } = overviewOf(extent, job.unit, area, lettering);
  const name = contour === null ? "PLATE NOT GIVEN; HOLES AND RODS" : "BASE PLATE, HOLES AND RODS";
  const draft = startDraft(area);
  const label = text("label", `${name}: ${scaleWords(scale)}`, at(middle.x, area.y0 + 1), small, { anchor: "middle" });
  put(draft, label, northArrow(surveyed, job, at(area.x0 + NORTH, area.y0 + small * 2.4 + NORTH), small));
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

/** Where the plate stands on the paper, at the largest scale that leaves its axes and the arrow to north their room. */
function overviewOf(extent: Extent, unit: Unit, area: Area, { body }: Lettering) {
  const reach = 2 * (AXIS_REACH + body * 2);
  const [width, height] = [extent.x1 - extent.x0, extent.y1 - extent.y0];
  const room = { x: area.x1 - area.x0 - reach, y: area.y1 - area.y0 - reach - body * 4 - 2 * NORTH };
  const scale = largestScale(scales(unit), (factor) => width * factor <= room.x && height * factor <= room.y);
  const middle = at((area.x0 + area.x1) / 2, (area.y0 + area.y1) / 2 + body + NORTH);
  const origin = at(
    middle.x - ((extent.x0 + extent.x1) / 2) * scale.factor,
    middle.y - ((extent.y0 + extent.y1) / 2) * scale.factor,
  );
  return { scale, middle, view: { scale: scale.factor, origin } };
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

/** Every hole by itself, the least margin first, all at one scale. */
function insetItems(seats: readonly Seated[], job: Job, area: Area, lettering: Lettering): readonly SceneItem[] {
  const ordered = [...seats].sort((a, b) => (a.rod.margin ?? 0) - (b.rod.margin ?? 0));
  const shown = ordered.slice(0, MOST_INSETS);
  const { small } = lettering;
  const foot = small * 3;
  const { columns, rows } = gridFor(shown.length, area.x1 - area.x0, area.y1 - area.y0 - foot);
  const cell = { width: (area.x1 - area.x0) / columns, height: (area.y1 - area.y0 - foot) / rows };
  const words = small * 5.4;
  const reach = greatestOf(shown.map(widestOf));
  const scale = largestScale(
    [TWICE, ...scales(job.unit)],
    (factor) => reach * factor <= Math.min(cell.width, cell.height - words) - 3,
  );
  const more =
    seats.length > shown.length ? `; ${seats.length - shown.length} RODS WITH MORE MARGIN ARE NOT SHOWN` : "";
  const cells = shown.map((each, i) => {
    const x = area.x0 + (i % columns) * cell.width;
    const y = area.y1 - Math.floor(i / columns) * cell.height;
    return inset(each, { x0: x, x1: x + cell.width - 2, y0: y - cell.height + 2, y1: y }, scale, job, lettering);
  });
  const title = `HOLES TRUE TO SCALE: ${scale.factor > 1 ? scale.name : scaleWords(scale)}${more}`;
  return [
    ...cells,
    text("label", shorten(title, area.x1 - area.x0, small), at((area.x0 + area.x1) / 2, area.y0 + 1), small, {
      anchor: "middle",
    }),
  ];
}

function gridFor(count: number, width: number, height: number): { readonly columns: number; readonly rows: number } {
  const grids = Array.from({ length: count }, (_, i) => ({ columns: i + 1, rows: Math.ceil(count / (i + 1)) }));
  const side = ({ columns, rows }: { columns: number; rows: number }): number =>
    Math.min(width / columns, (height / rows) * 0.8);
  return grids.reduce((best, grid) => (side(grid) > side(best) ? grid : best), grids[0] ?? { columns: 1, rows: 1 });
}

/** Twice how far anything of the inset reaches from the hole's centre, in millimetres. */
function widestOf({ rod, hole, center }: Seated): number {
  const { baseHole, washer, rod: spec } = rod.placed.group;
  const away = Math.hypot(center.x - hole.x, center.y - hole.y);
  const washed = washer.kind === "given" ? washer.value.size : spec.diameter;
  const bored = baseHole.kind === "given" ? baseHole.value : spec.diameter;
  return Math.max(toMillimetres(bored), toMillimetres(washed) + 2 * away);
}

function inset(each: Seated, area: Area, scale: Scale, { unit }: Job, { small }: Lettering): SceneItem {
  const { rod, hole, center } = each;
  const { baseHole, washer, rod: spec } = rod.placed.group;
  const middle = at((area.x0 + area.x1) / 2, (area.y0 + area.y1 - small * 5.4) / 2);
  const place = at(middle.x + (center.x - hole.x) * scale.factor, middle.y + (center.y - hole.y) * scale.factor);
  const radius = (diameter: number): number => (diameter / 2e6) * scale.factor;
  const figure = (value: number): string => decimals(value, unit);
  const margin =
    rod.margin === null
      ? "MARGIN NOT KNOWN"
      : rod.margin < 0
        ? `SHORT BY ${figure(-rod.margin)}`
        : `MARGIN ${figure(rod.margin)}`;
  const room = area.x1 - area.x0 - 2;
  const items: SceneItem[] = [
    stroke("table", ...rectangle(area.x0, area.y0, area.x1, area.y1)),
    text("tag", shorten(`${rod.tag}  ${margin}`, room, small, true), at(area.x0 + 1, area.y1 - small - 1), small, {
      bold: true,
    }),
    text(
      "label",
      shorten(`OFF ${figure(rod.radial)}: X ${figure(rod.dx)}, Y ${figure(rod.dy)}`, room, small),
      at(area.x0 + 1, area.y1 - small * 3.1),
      small,
    ),
    ...washerItems(washer, place, scale.factor),
    ...(baseHole.kind === "given" ? [stroke(HOLE, circle(middle, radius(baseHole.value)))] : []),
    ...clearanceItems(rod, middle, scale.factor),
    stroke(ROD, circle(place, radius(spec.diameter))),
    stroke("fine", ...crossAt(place, 1.6)),
    fill(
      "arrow",
      at(middle.x - 0.5, middle.y - 0.5),
      at(middle.x + 0.5, middle.y - 0.5),
      at(middle.x + 0.5, middle.y + 0.5),
      at(middle.x - 0.5, middle.y + 0.5),
    ),
  ];
  return group("hole-inset", items, { tag: rod.tag, scale: scale.factor, marginNm: rod.margin ?? "not known" });
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
