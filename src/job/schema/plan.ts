/** The plan as a schema: grid, placements, control points, north, the way to site coordinates. */
import * as z from "zod";
import { keys, lengthLeaf, rows, textLeaf, wordLeaf } from "../../leaves/leaves.js";
import {
  bearingLeaf,
  coordinateLeaf,
  elevationLeaf,
  factorLeaf,
  farLeaf,
  lineLeaf,
  pointNameLeaf,
  spacingLeaf,
  turnLeaf,
} from "../../leaves/plan-leaves.js";
import type { SurveyUnit, Unit } from "../../units/index.js";
import { SURVEY_UNITS } from "../../units/index.js";

/** Keys of the job file that make the plan. */
export const PLAN_KEYS = ["grid", "placements", "control", "site", "settingOut"] as const;

/** The schemas of the plan's parts; bare lengths are in `unit`, bare site coordinates in `surveyUnit`. */
export function planSchemas(unit: Unit, surveyUnit: SurveyUnit | null) {
  const placement = placementBlock(unit);
  return {
    grid: gridBlock(unit),
    placement,
    control: controlBlock(unit, surveyUnit),
    site: siteBlock(unit, surveyUnit),
    settingOut: settingOutBlock(),
  };
}

/** The schemas of a plan's parts. */
export type PlanSchemas = ReturnType<typeof planSchemas>;
/** `grid` as written. */
export type GridDocument = z.output<PlanSchemas["grid"]>;
/** `grid.x` or `grid.y` as written. */
export type AxisDocument = NonNullable<GridDocument["x"]>;
/** An item of `grid.others` as written. */
export type OtherLineDocument = NonNullable<GridDocument["others"]>[number];
/** An item of `placements` as written. */
export type PlacementDocument = z.output<PlanSchemas["placement"]>;
/** An item of `control` as written. */
export type ControlDocument = z.output<PlanSchemas["control"]>;
/** `site` as written. */
export type SiteDocument = z.output<PlanSchemas["site"]>;
/** `settingOut` as written. */
export type SettingOutDocument = z.output<PlanSchemas["settingOut"]>;

/** The plan's keys of a job file, whole, for the JSON Schema. */
export function siteShape(unit: Unit) {
  const { grid, placement, control, site, settingOut } = planSchemas(unit, null);
  const placements = z
    .union([tableChoice(), rows(placement, "a list of placements")], { error: () => PLACEMENTS })
    .describe("Where every base stands: a list, or a CSV or XLSX file with one row a placement.");
  return {
    grid: grid.optional(),
    placements: placements.optional(),
    control: rows(control, "a list of control points").describe("Control points of the survey.").optional(),
    site: site.optional(),
    settingOut: settingOut.optional(),
    ...lookAlikeKey(unit),
  };
}

/** The plan's keys where their values are read apart. */
export function siteShapeUnread(unit: Unit) {
  const unread = Object.fromEntries(PLAN_KEYS.map((key) => [key, z.unknown().optional()]));
  return { ...unread, ...lookAlikeKey(unit) };
}

/** What `placements` may be. */
export const PLACEMENTS = "a list of placements, a file name, or file and sheet";

function lookAlikeKey(unit: Unit) {
  const description = "Largest rod error at which two patterns still look alike; omitted: 1 in, or 25 mm.";
  return { lookAlike: lengthLeaf(unit, "zero or above", description).optional() };
}

/** A spreadsheet by its file, or by file, sheet and table, with the answers to what was asked about it. */
export function tableChoice(allowed = TABLE) {
  const file = textLeaf("A CSV or XLSX file, beside the job file.");
  const sheet = textLeaf("Sheet of the workbook; omitted: the one that holds such a table.").optional();
  const table = textLeaf("Upper left cell of the headings, as B5, where a sheet has several tables.", 12).optional();
  const text = textLeaf("What is meant.", 400);
  const named = z.union([text, z.record(z.string(), text)], {
    error: () => "a text, or texts by the names of headings",
  });
  const block = keys(
    {
      file,
      sheet,
      table,
      columns: answers(text, "What headings stand for: the name of a heading, note, or left out.", "HEADING: NAME"),
      notes: answers(named, "What a numbered note of the sheet gives in a cell that names it.", '"2": TEXT'),
      cells: answers(text, "What is meant in a cell, instead of its text.", "E7: TEXT"),
    },
    "A sheet of a workbook, or a text file, and what its cells mean.",
  );
  return z.union([file, block], { error: () => allowed });
}

const TABLE = "a file name, or file, sheet, table, columns, notes, cells";

function answers<Text extends z.core.$ZodType>(text: Text, description: string, allowed: string) {
  return z
    .record(z.string(), text, { error: () => `a group of answers, ${allowed}` })
    .describe(description)
    .optional();
}

function gridBlock(unit: Unit) {
  return keys(
    {
      x: axisBlock(unit, "Lines that run plan north, located by their x.").optional(),
      y: axisBlock(unit, "Lines that run plan east, located by their y.").optional(),
      others: rows(otherLine(unit), "a list of lines").describe("Skewed and radial lines, and arcs.").optional(),
    },
    "The building grid. Plan axes: x plan east, y plan north.",
  );
}

function axisBlock(unit: Unit, description: string) {
  const spacing = spacingLeaf(unit, "Distance to the next line; 6 @ 25' stands for six of them.");
  return keys(
    {
      names: rows(lineLeaf("Name of a line, as written."), "a list of names").describe("Names in order, as written."),
      spacing: z
        .union([spacing, rows(spacing, "a list of spacings")], { error: () => "a spacing, or a list of spacings" })
        .describe("From line to line, one less than the names; one alone holds for all.")
        .optional(),
      from: farLeaf(unit, "Position of the first line; omitted: 0.").optional(),
      at: rows(farLeaf(unit, "Position of a line."), "a list of positions")
        .describe("Positions, one a name, instead of spacing.")
        .optional(),
    },
    description,
  );
}

function planPoint(unit: Unit, description: string) {
  const coordinate = farLeaf(unit, "A position on the plan.");
  return z.tuple([coordinate, coordinate], { error: () => "two lengths, [x, y]" }).describe(description);
}

function otherLine(unit: Unit) {
  const name = lineLeaf("Name of the line, as written.");
  const degrees = turnLeaf("Direction, degrees counter-clockwise from plan east.");
  const skewed = keys(
    { kind: z.literal("skewed"), name, through: planPoint(unit, "A point of the line, [x, y]."), degrees },
    "A straight line through a point.",
  );
  const radial = keys(
    { kind: z.literal("radial"), name, center: planPoint(unit, "Centre, [x, y]."), degrees },
    "A line that starts at a centre.",
  );
  const arc = keys(
    {
      kind: z.literal("arc"),
      name,
      center: planPoint(unit, "Centre, [x, y]."),
      radius: farLeaf(unit, "Radius, above zero."),
    },
    "A circle about a centre.",
  );
  return z.discriminatedUnion("kind", [skewed, radial, arc], { error: () => "kind: skewed, radial or arc" });
}

function placementBlock(unit: Unit) {
  const crossing = textLeaf("Two grid lines, as A-1.", 40);
  const line = lineLeaf("Name of a grid line.");
  const pair = z.tuple([line, line], { error: () => "two grid lines, [A, 1]" });
  const either = z.union([crossing, pair], { error: () => "two grid lines, as A-1 or [A, 1]" });
  const lines = z.union([line, rows(line, "a list of lines")], { error: () => "a line, or a list of lines" });
  return keys(
    {
      base: textLeaf("Mark of the base."),
      at: z
        .union([crossing, rows(either, "a list of crossings")], {
          error: () => "a crossing, as A-1, or a list of them",
        })
        .describe("The grid lines that it stands on: A-1, [A, 1], or a list, [A-1, A-2, ...].")
        .optional(),
      every: z
        .tuple([lines, lines], { error: () => "two lists of lines, [[A, B], [1, 2, 3]]" })
        .describe("Every crossing of these lines with those, [[A, B], [1, 2, 3]], instead of at.")
        .optional(),
      near: planPoint(unit, "Where two lines cross twice: the crossing nearest to this plan point, [x, y].").optional(),
      offset: planPoint(unit, "From the crossing to the working point in plan axes, [x, y]; omitted: 0, 0.").optional(),
      turn: turnLeaf("Turn of the base's own axes, degrees counter-clockwise; omitted: 0.").optional(),
      topOfConcrete: elevationLeaf(unit, "Elevation of the top of concrete; omitted: that of site.").optional(),
      bottomOfPlate: elevationLeaf(
        unit,
        "Elevation of the underside of the base plate; omitted: that of site, or top of concrete, grout and a setting plate that stays.",
      ).optional(),
      hand: wordLeaf(["as drawn", "opposite"], "A base of opposite hand gets a mark of its own.").optional(),
      delivery: textLeaf("Truck or pour that it goes with; omitted: that of its base.", 40).optional(),
    },
    "One base, or several alike, where they stand.",
  );
}

function controlBlock(unit: Unit, surveyUnit: SurveyUnit | null) {
  const coordinate = (what: string) => coordinateLeaf(surveyUnit, `${what}; a bare number is in settingOut.unit.`);
  return keys(
    {
      point: pointNameLeaf("Name of the point."),
      northing: coordinate("Northing on the site"),
      easting: coordinate("Easting on the site"),
      elevation: coordinate("Elevation").optional(),
      plan: planPoint(unit, "The same point on the plan, [x, y].").optional(),
      at: textLeaf("The same point on the grid, as A-1, instead of plan.", 40).optional(),
    },
    "A control point. Two of them with plan or at make the way from plan to site.",
  );
}

function siteBlock(unit: Unit, surveyUnit: SurveyUnit | null) {
  const coordinate = (what: string) => coordinateLeaf(surveyUnit, `${what}; a bare number is in settingOut.unit.`);
  const origin = keys(
    {
      northing: coordinate("Northing of plan 0,0"),
      easting: coordinate("Easting of plan 0,0"),
      bearing: bearingLeaf("Bearing of plan north, clockwise from site north."),
    },
    "The way from plan to site by an origin and a bearing, instead of control points.",
  );
  return keys(
    {
      trueNorth: bearingLeaf("Bearing of plan north, clockwise from true north.").optional(),
      origin: origin.optional(),
      points: rows(pointNameLeaf("Name of a control point."), "a list of control points")
        .describe("Control points that make the way from plan to site; omitted: all that have plan or at.")
        .optional(),
      scaleFactor: factorLeaf(
        "The surveyor's combined scale factor: site distance / plan distance; omitted: 1.",
      ).optional(),
      tolerance: lengthLeaf(
        unit,
        "zero or above",
        "Largest residual and misclosure of the control points that is accepted; omitted: reported only.",
      ).optional(),
      topOfConcrete: elevationLeaf(unit, "Top of concrete where a placement names none.").optional(),
      bottomOfPlate: elevationLeaf(unit, "Underside of the base plate where a placement names none.").optional(),
    },
    "North, and the way from the building grid to the site.",
  );
}

function settingOutBlock() {
  return keys(
    {
      order: wordLeaf(
        ["PNEZD", "PENZD"],
        "Point, northing, easting, elevation, description; or easting first.",
      ).optional(),
      unit: wordLeaf(
        SURVEY_UNITS,
        "Unit of the setting-out file and of bare site coordinates; ft is the international foot, ft-us the US survey foot.",
      ).optional(),
    },
    "The setting-out file.",
  );
}
