/** The tables of a plan: rod and setting schedules, totals, tolerances, control points, grid lines, placements. */
import { toLattice } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import type { Base, Bottom, ColumnShape, Input, RodGroup, Washer } from "../../job/model/job.js";
import { settingPlateThickness, staysUnderBasePlate } from "../../job/model/stack.js";
import type { PlacedBase } from "../../plan/index.js";
import { orderedGradeOf } from "../../rods/index.js";
import { placingRows } from "../../standards/index.js";
import type { PlacingTableRow } from "../../standards/placing.js";
import { COORDINATE_PLACES, formatCoordinate, SURVEY_UNIT_NAMES } from "../../units/coordinate.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { formatDegrees, formatLength, type Length, type Unit } from "../../units/index.js";
import { respelled, spellingOf } from "../spelling.js";
import type { TableText } from "../table.js";
import { unitWord } from "../unit-word.js";
import { turnText } from "./angles.js";
import { elevationText, planLength } from "./lengths.js";
import { distanceText, locate } from "./location.js";
import type { PlanRequest } from "./request.js";

/** Title, alignment. */
type ColumnSpec = readonly [title: string, align: "start" | "end"];

/** A table whose widths are settled when it is set. */
function table(
  name: string,
  heading: string,
  specs: readonly ColumnSpec[],
  rows: readonly (readonly string[])[],
  foot: readonly string[] = [],
  strong: ReadonlySet<number> = new Set(),
): TableText {
  const kept = specs.map(([title], i) => !MAY_BE_LEFT_OUT.has(title) || rows.some((row) => (row[i] ?? "-") !== "-"));
  const columns = specs.filter((_, i) => kept[i]).map(([title, align]) => ({ title, share: 1 / specs.length, align }));
  return { name, heading, columns, rows: rows.map((row) => row.filter((_, i) => kept[i])), foot, under: [], strong };
}

/** Columns that are left out where they would hold dashes alone. */
const MAY_BE_LEFT_OUT: ReadonlySet<string> = new Set(["LENGTH", "RADIUS"]);

/** What the views leave to the tables. */
export interface ListedToo {
  /** Types whose rods are listed. */
  readonly marks: ReadonlySet<string>;
  /** x and y lines are listed too. */
  readonly allLines: boolean;
}

/** Every table of the plan in the order in which they are set; none is empty. */
export function planTables(request: PlanRequest, { marks, allLines }: ListedToo): readonly TableText[] {
  const all = [
    rodSchedule(request),
    settingSchedule(request),
    totalsTable(request),
    toleranceTable(request),
    controlTable(request),
    gridTable(request, allLines),
    rodTable(request, marks),
    placementTable(request),
  ];
  return all.filter(({ rows }) => rows.length > 0);
}

/** Placements of a mark; the quantity of its base where the job places none. */
function countOf(base: Base, { plan }: PlanRequest): number {
  const placed = plan.bases.filter(({ placement }) => placement.mark === base.mark).length;
  return plan.bases.length > 0 ? placed : base.quantity;
}

/** One row a rod group: what stands in the concrete. */
function rodSchedule(request: PlanRequest): TableText {
  const { job, held } = request;
  const { unit } = job;
  const marked = job.bases.flatMap((base) =>
    base.groups.map((group, i) => ({ base, cells: rodCells(request, base, group, i === 0) })),
  );
  const strong = new Set(marked.flatMap(({ base }, i) => (held.has(base.mark) ? [i] : [])));
  return table(
    "rod-schedule",
    `ROD SCHEDULE (${unitWord(unit)})`,
    [
      ["MARK", "start"],
      ["QTY", "end"],
      ["RODS", "end"],
      ["DIA", "end"],
      ["GRADE", "end"],
      ["LENGTH", "end"],
      ["THREAD", "end"],
      ["EMBED", "end"],
      ["PROJ", "end"],
      ["TEMPL.", "end"],
    ],
    marked.map(({ cells }) => cells),
    [
      ...(strong.size > 0 ? ["MARKS IN BOLD ARE HELD: DO NOT SET. REASONS IN LEDGER.CSV."] : []),
      "RODS: NUMBER IN ONE BASE. A DASH: NOT GIVEN.",
      ...(job.bases.some(hasLength) ? [] : ["NO ROD LENGTH IS GIVEN: ASK FOR IT BEFORE RODS ARE ORDERED."]),
      "PROJECTION AND EMBEDMENT ARE FROM T.O.C.",
    ],
    strong,
  );
}

function hasLength({ groups }: Base): boolean {
  return groups.some(({ rod }) => rod.length.kind === "given");
}

/** Undefined where no placement of the base stands on the plan. */
function ownRodsOf(
  { bases }: PlanRequest["plan"],
  { mark }: Base,
): PlanRequest["plan"]["bases"][number]["ownRods"] | undefined {
  return bases.find(({ placement }) => placement.mark === mark)?.ownRods;
}

function rodCells(request: PlanRequest, base: Base, group: RodGroup, first: boolean): readonly string[] {
  const { unit } = request.job;
  const { rod } = group;
  const grade = orderedGradeOf(rod);
  const count = ownRodsOf(request.plan, base)?.filter((each) => each.group.letter === group.letter).length;
  const finish = rod.finish.kind === "given" && rod.finish.value === "galvanized" ? " GALV." : "";
  return [
    first ? `${base.mark}${request.held.has(base.mark) ? " HELD" : ""}` : "",
    first ? String(countOf(base, request)) : "",
    count === undefined ? "-" : String(count),
    rod.size,
    `${grade.kind === "given" ? grade.value : "-"}${finish}`,
    lengthOrDash(rod.length, unit),
    rod.fullThread ? "FULL" : lengthOrDash(rod.threadLength, unit),
    lengthOrDash(rod.embedment, unit),
    lengthOrDash(rod.projection, unit),
    first ? base.template.mark : "",
  ];
}

/** What goes on the rods, and the levels. */
function settingSchedule(request: PlanRequest): TableText {
  const { job } = request;
  const { unit } = job;
  return table(
    "setting-schedule",
    "NUTS, WASHERS, GROUT AND LEVELS",
    [
      ["MARK", "start"],
      ["NUT", "start"],
      ["WASHER", "start"],
      ["BOTTOM", "start"],
      ["LEVEL", "start"],
      ["GROUT", "end"],
      ["T.O.C.", "end"],
      ["BOT PL", "end"],
    ],
    job.bases.flatMap((base) =>
      base.groups.map((group, i) => {
        const own = request.plan.bases.filter(({ placement }) => placement.mark === base.mark);
        const common = [
          upper(base.levelling),
          groutText(base, unit),
          rangeText(
            own.map(({ placement }) => placement.topOfConcrete),
            unit,
          ),
          rangeText(
            own.map(({ placement }) => placement.bottomOfPlate),
            unit,
          ),
        ];
        return [
          i === 0 ? base.mark : "",
          group.rod.nut.kind === "given" ? group.rod.nut.value.kind.toUpperCase().replace("HEAVY", "HVY") : "-",
          washerText(group.washer, unit),
          bottomText(group.rod.bottom, unit),
          ...(i === 0 ? common : []),
        ];
      }),
    ),
  );
}

/** The grout, and the setting plate that stays between it and the base plate: `1-1/2 + PL 1/4`. */
function groutText(base: Base, unit: Unit): string {
  const plate = staysUnderBasePlate(base) ? ` + PL ${formatLength(settingPlateThickness(base), unit)}` : "";
  return `${lengthOrDash(base.grout, unit)}${plate}`;
}

/** `+99'-6"`, a range as `+99'-0" TO +99'-6"`; `PER TABLE` where some are not given. */
function rangeText(inputs: readonly Input<Length>[], unit: Unit): string {
  const known = inputs.flatMap((input) => (input.kind === "given" ? [input.value] : []));
  if (known.length === 0) return "-";
  const [low, high] = [leastOf(known), greatestOf(known)];
  if (known.length < inputs.length) return "PER TABLE";
  const words = elevationText(low, unit);
  return low === high ? words : `${words} TO ${elevationText(high, unit)}`;
}

/** A washer of a series says which; where the job leaves the series open, both that may come. */
function washerText(washer: Input<Washer>, unit: Unit): string {
  if (washer.kind === "missing") return "-";
  const { shape, size, thickness, series, widest } = washer.value;
  const [name = ""] = (series ?? "").toUpperCase().split(",");
  if (widest !== undefined) return `${name} Ø${formatLength(size, unit)} OR WIDE Ø${formatLength(widest.size, unit)}`;
  const thick = thickness.kind === "given" ? ` × ${formatLength(thickness.value, unit)}` : "";
  const sized = `${shape === "square" ? "SQ " : "Ø"}${formatLength(size, unit)}${thick}`;
  return name === "" ? sized : `${name} ${sized}`;
}

function bottomText(bottom: Input<Bottom>, unit: Unit): string {
  if (bottom.kind === "missing") return "-";
  const { value } = bottom;
  switch (value.kind) {
    case "nut":
      return "NUT";
    case "hook":
      return `HOOK ${formatLength(value.reach, unit)}`;
    case "straight":
      return "STRAIGHT";
    case "swedged":
      return `SWEDGED ${formatLength(value.length, unit)}`;
    case "plate":
      return `PL ${value.shape === "square" ? "SQ " : "Ø"}${formatLength(value.size, unit)}`;
  }
}

function upper(input: Input<string>): string {
  return input.kind === "given" ? input.value.toUpperCase() : "-";
}

function lengthOrDash(input: Input<Length>, unit: Unit): string {
  return input.kind === "given" ? formatLength(input.value, unit) : "-";
}

/** Rods alike in size, grade, finish and length, counted over all placements. */
function totalsTable(request: PlanRequest): TableText {
  const { job, plan } = request;
  const kinds = new Map<string, { cells: readonly string[]; count: number }>();
  const perBase = job.bases.map((base) => ({
    base,
    count: countOf(base, request),
    ownRods: ownRodsOf(plan, base),
  }));
  for (const { base, count, ownRods } of perBase)
    for (const group of base.groups) {
      const [, , , ...cells] = rodCells(request, base, group, true);
      const kind = cells.slice(0, 5);
      const rods = ownRods?.filter((each) => each.group.letter === group.letter).length ?? 0;
      const known = kinds.get(kind.join("|"));
      if (known === undefined) kinds.set(kind.join("|"), { cells: kind, count: count * rods });
      else known.count += count * rods;
    }
  const rows = [...kinds.values()].filter(({ count }) => count > 0);
  const total = rows.reduce((sum, { count }) => sum + count, 0);
  const templates = new Map(job.bases.map(({ template }) => [template.mark, template.quantity]));
  const templateCount = [...templates.values()].reduce((sum, count) => sum + count, 0);
  return table(
    "totals",
    "TOTALS",
    [
      ["RODS", "end"],
      ["DIA", "end"],
      ["GRADE", "end"],
      ["LENGTH", "end"],
      ["THREAD", "end"],
      ["EMBED", "end"],
    ],
    rows.map(({ cells, count }) => [String(count), ...cells]),
    [
      `${counted(total, "ROD")}, ${counted(plan.bases.length, "BASE")} OF ${counted(job.bases.length, "TYPE")}, ${counted(templateCount, "TEMPLATE")}`,
    ],
  );
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "S"}`;
}

const ITEMS: ReadonlySet<PlacingTableRow["about"]> = new Set([
  "rod position",
  "rod spacing",
  "adjacent groups",
  "group position",
  "accumulated along a column line",
  "top of rod",
  "verticality",
  "top of concrete",
]);

/** What the named placing edition says of the rods of this job, value for value. */
function toleranceTable({ job }: PlanRequest): TableText {
  const { placing } = job.editions;
  const sizes = new Set(job.bases.flatMap(({ groups }) => groups.map(({ rod }) => rod.size)));
  const isUsed = (row: PlacingTableRow) => row.sizes === "all" || row.sizes.some((size) => sizes.has(size));
  const used = placingRows(placing).filter((row) => ITEMS.has(row.about) && isUsed(row));
  const hasGroup =
    used.some(({ about }) => about === "group position" || about === "adjacent groups") ||
    used.some(({ item }) => item.includes("group centre"));
  const printed = new Set(used.flatMap((row) => (row.sizes === "all" ? [] : row.sizes)));
  const every = used.some(({ about, sizes: rowSizes }) => about.startsWith("rod") && rowSizes === "all");
  const loose = every ? [] : [...sizes].filter((size) => !printed.has(size));
  return table(
    "tolerances",
    `PLACING TOLERANCES: ${placing.toUpperCase()}`,
    [
      ["WHAT IS HELD", "start"],
      ["RODS", "start"],
      ["TOLERANCE", "end"],
      ["CLAUSE", "end"],
    ],
    used.map((row) => [
      respelled(row.item, job.editions),
      row.sizes === "all" ? "all" : row.sizes.join(", "),
      toleranceText(row, job.unit),
      row.clause,
    ]),
    [
      ...(hasGroup
        ? []
        : [`GROUP ${spellingOf(job.editions).center}: ${placing.toUpperCase()} HAS NO VALUE OF ITS OWN.`]),
      ...(loose.length > 0 ? [`NO VALUE FOR ROD ${loose.join(", ")}: ASK THE ENGINEER OF RECORD.`] : []),
    ],
  );
}

/** In the job's unit where that is exact, else as printed in the edition's own. */
function toleranceText({ minus, plus, printed }: PlacingTableRow, unit: Unit): string {
  if (printed !== "" && (minus === null || plus === null)) return printed;
  if (minus === null || plus === null) return "-";
  const figure = (length: Length) => inBestUnit(length, unit);
  const word = minus === plus ? `± ${figure(plus)}` : `- ${figure(minus)}, + ${figure(plus)}`;
  return printed === "" ? word : printed;
}

function inBestUnit(length: Length, unit: Unit): string {
  const isInch = length % 396_875 === 0;
  const own = unit === "in" ? isInch : length % 100_000 === 0;
  const shown = own ? unit : unit === "in" ? "mm" : "in";
  return `${formatLength(length, shown)}${shown === unit ? "" : ` ${shown}`}`;
}

/** Control points as given, in the survey's unit. */
function controlTable({ plan, job }: PlanRequest): TableText {
  const { unit } = plan.spec.settingOut;
  const figure = (length: Length) => formatCoordinate(length, unit, COORDINATE_PLACES[unit]);
  const residual = new Map(plan.transform?.residuals.map((each) => [each.name, each]));
  return table(
    "control-points",
    "CONTROL POINTS",
    [
      ["POINT", "start"],
      ["NORTHING", "end"],
      ["EASTING", "end"],
      ["ELEV", "end"],
      ["PLAN X", "end"],
      ["PLAN Y", "end"],
      ["dN, dE", "end"],
    ],
    plan.control.map(({ name, northing, easting, elevation, plan: own }) => {
      const left = residual.get(name);
      return [
        name,
        figure(northing),
        figure(easting),
        elevation.kind === "given" ? figure(elevation.value) : "-",
        own.kind === "given" ? planLength(own.value.x, job.unit) : "-",
        own.kind === "given" ? planLength(own.value.y, job.unit) : "-",
        left === undefined ? "-" : `${figure(left.dn)}, ${figure(left.de)}`,
      ];
    }),
    [
      `SITE IN ${SURVEY_UNIT_NAMES[unit].toUpperCase()} UNITS, PLAN IN ${job.unit === "in" ? "FEET AND INCHES" : unitWord(job.unit)}.`,
      ...(residual.size > 0 ? ["dN, dE: SITE AS GIVEN MINUS SITE AS COMPUTED FROM THE FITTED TRANSFORM."] : []),
    ],
  );
}

/** Lines that are not told by the chains alone. */
function gridTable({ plan, job }: PlanRequest, allLines: boolean): TableText {
  const listed = plan.spec.lines.filter(({ kind }) => allLines || (kind !== "x" && kind !== "y"));
  return table(
    "grid-lines",
    allLines ? "GRID LINES" : "SKEWED AND RADIAL GRID LINES",
    [
      ["LINE", "start"],
      ["KIND", "start"],
      ["X", "end"],
      ["Y", "end"],
      ["ANGLE", "end"],
      ["RADIUS", "end"],
    ],
    listed.map((line) => gridCells(line, job.unit)),
    [
      `SKEWED: THROUGH X, Y. RADIAL AND ARC: ${spellingOf(job.editions).center} X, Y. X PLAN EAST, Y PLAN NORTH.`,
      `ANGLES COUNTER-CLOCKWISE FROM PLAN EAST. ${originWords(plan.spec.lines, job.unit)}`,
    ],
  );
}

/** Where plan 0,0 lies on the grid. */
function originWords(lines: readonly GridLine[], unit: Unit): string {
  const nearest = (["x", "y"] as const).flatMap((kind) => {
    const all = lines.flatMap((line) => (line.kind === kind ? [line] : []));
    return all.toSorted((a, b) => Math.abs(a.at) - Math.abs(b.at)).slice(0, 1);
  });
  if (nearest.length === 0) return "";
  return `PLAN 0,0: ${nearest.map(({ kind, name, at }) => `LINE ${name} IS ${kind.toUpperCase()} ${planLength(at, unit)}`).join(", ")}.`;
}

function gridCells(line: GridLine, unit: Unit): readonly string[] {
  const figure = (length: Length) => planLength(length, unit);
  switch (line.kind) {
    case "x":
      return [line.name, "X", figure(line.at), "-", formatDegrees(90), "-"];
    case "y":
      return [line.name, "Y", "-", figure(line.at), formatDegrees(0), "-"];
    case "skewed":
      return [line.name, "SKEWED", figure(line.through.x), figure(line.through.y), turnText(line.degrees), "-"];
    case "radial":
      return [line.name, "RADIAL", figure(line.center.x), figure(line.center.y), turnText(line.degrees), "-"];
    case "arc":
      return [line.name, "ARC", figure(line.center.x), figure(line.center.y), "-", figure(line.radius)];
  }
}

/** Rods whose places a detail's dimensions leave out, in the type's own axes. */
function rodTable({ plan, job }: PlanRequest, marks: ReadonlySet<string>): TableText {
  const rodsOf = new Map(plan.bases.map(({ placement, ownRods }) => [placement.mark, ownRods]));
  const listed = job.bases.filter(({ mark }) => marks.has(mark));
  return table(
    "rod-coordinates",
    `RODS FROM W.P., TYPE'S OWN AXES (${unitWord(job.unit)})`,
    [
      ["MARK", "start"],
      ["ROD", "start"],
      ["DIA", "end"],
      ["X", "end"],
      ["Y", "end"],
    ],
    listed.flatMap(({ mark }) =>
      (rodsOf.get(mark) ?? []).map(({ tag, group, center }, i) => [
        i === 0 ? mark : "",
        tag,
        group.rod.size,
        formatLength(toLattice(center.x), job.unit),
        formatLength(toLattice(center.y), job.unit),
      ]),
    ),
  );
}

/** Every placement of the job: this table is always complete. */
function placementTable(request: PlanRequest): TableText {
  const { plan, job } = request;
  return table(
    "placement-table",
    "PLACEMENTS",
    [
      ["MARK", "start"],
      ["AT LINES", "start"],
      ["FROM 1ST", "end"],
      ["FROM 2ND", "end"],
      ["TURN", "end"],
      ["AXIS", "end"],
      ["T.O.C.", "end"],
      ["BOT PL", "end"],
    ],
    plan.bases.map((placed) => placementCells(placed, job.unit)),
    [
      `${counted(plan.bases.length, "PLACEMENT")}. FROM 1ST, FROM 2ND: SQUARE FROM THE LINES TO THE W.P.`,
      "TURN: TYPE'S +X, 0° TO 360° COUNTER-CLOCKWISE FROM PLAN EAST. AXIS: THE COLUMN'S STRONG AXIS.",
    ],
  );
}

function placementCells(placed: PlacedBase, unit: Unit): readonly string[] {
  const { placement, base } = placed;
  const [first, second] = locate(placed);
  return [
    placement.mark,
    placement.lines.join(" / "),
    distanceText(first, unit),
    distanceText(second, unit),
    turnText(placement.turn),
    strongAxisText(base.column, placement.turn),
    elevationOrDash(placement.topOfConcrete, unit),
    elevationOrDash(placement.bottomOfPlate, unit),
  ];
}

function elevationOrDash(input: Input<Length>, unit: Unit): string {
  return input.kind === "given" ? elevationText(input.value, unit) : "-";
}

/**
 * Direction of the strong axis on the plan: parallel to the flanges, across the depth. Tubes and pipes: the axis across
 * the longer side, none where both sides are alike.
 */
function strongAxisText(column: Input<ColumnShape>, turn: number): string {
  if (column.kind === "missing") return "-";
  const along = strongAxisAlong(column.value);
  if (along === null) return "NONE";
  const degrees = (((along + turn) % 180) + 180) % 180;
  if (degrees === 0) return "E-W";
  return degrees === 90 ? "N-S" : formatDegrees(degrees);
}

/** Degrees in the type's own axes; null where the section has no stronger one. */
function strongAxisAlong(column: ColumnShape): number | null {
  switch (column.kind) {
    case "wide flange":
      return column.depthAlong === "x" ? 90 : 0;
    case "tube":
      return column.x === column.y ? null : column.x > column.y ? 90 : 0;
    case "pipe":
      return null;
  }
}
