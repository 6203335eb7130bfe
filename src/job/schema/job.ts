/** The job file as a schema. It checks shape and values; what hangs on tables or on other keys is for `resolveJob`. */
import * as z from "zod";
import {
  countLeaf,
  dateLeaf,
  keys,
  leaf,
  lengthLeaf,
  pointLeaf,
  pointsLeaf,
  rows,
  textLeaf,
  wordLeaf,
  yesNoLeaf,
} from "../../leaves/leaves.js";
import { MOST_RODS, patternChoice } from "../../patterns/index.js";
import { findSection } from "../../standards/index.js";
import type { Length, Unit } from "../../units/index.js";
import { parseLength } from "../../units/index.js";
import { THREAD_CLASSES } from "../model/job.js";
import { parseQuestionNumber, questionNumber } from "../model/register.js";
import { SHEET_NAMES } from "../model/sheet-names.js";
import { answerFields } from "./answer-fields.js";
import { budgetBlock } from "./budget.js";

import { siteShape, siteShapeUnread, tableChoice } from "./plan.js";
import { surveyBlock } from "./survey.js";

const MOST_PIECES = 100_000;

/** The schemas of a job whose bare numbers are in `unit`; `rules` are the ids that it may cite. */
export function jobSchemas(unit: Unit, rules: readonly string[]) {
  const base = baseSchema(unit);
  const layer = layerSchema(unit);
  const head = headShape(unit, rules);
  const anything = { defaults: z.unknown().optional(), kinds: z.unknown().optional(), bases: z.unknown().optional() };
  const unread = { ...head, ...siteShapeUnread(unit), ...anything };
  const full = fullSchema({ ...head, ...siteShape(unit) }, writtenBaseSchema(unit), layer);
  return { head: keys(unread, "A rodplate job."), base, layer, full };
}

/** The head without its bases, one whole base, a part of one (defaults, a kind), and the job as written for the JSON Schema. */
export type JobSchemas = ReturnType<typeof jobSchemas>;
/** A job file as written, but for its bases and its plan. */
export type HeadDocument = z.output<JobSchemas["head"]>;
/** An item of `bases` as written. */
export type BaseDocument = z.output<JobSchemas["base"]>;
/** An item of `groups` as written. */
export type GroupDocument = NonNullable<BaseDocument["groups"]>[number];
/** `rods` as written. */
export type RodsDocument = GroupDocument["rods"];
/** A washer as written: a standard, or a size. */
export type WasherDocument = NonNullable<GroupDocument["washer"]>;
/** A corner as written. */
export type CornerDocument = NonNullable<NonNullable<BaseDocument["basePlate"]>["corner"]>;
/** `template.outline` as written. */
export type OutlineDocument = NonNullable<BaseDocument["template"]["outline"]>;
/** `template.lower` as written. */
export type LowerDocument = NonNullable<BaseDocument["template"]["lower"]>;
/** `template.segments` as written. */
export type SegmentsDocument = NonNullable<BaseDocument["template"]["segments"]>;
/** `template.opening` as written. */
export type OpeningDocument = NonNullable<BaseDocument["template"]["opening"]>;

function fullSchema<Head extends z.core.$ZodLooseShape>(
  head: Head,
  base: ReturnType<typeof writtenBaseSchema>,
  layer: ReturnType<typeof layerSchema>,
) {
  const bases = z.array(base).min(1).describe("The column bases; or name a spreadsheet with schedule.");
  const defaults = layer.describe(`What every base has that does not say otherwise: ${LAYER_KEYS}`);
  const kinds = z
    .record(z.string(), layer.describe(`What every base of this kind has: ${LAYER_KEYS}`))
    .describe(
      "Kinds of bases by name; a base takes one with kind, and goes before it. A kind goes before the defaults.",
    );
  const lists = { defaults: defaults.optional(), kinds: kinds.optional(), bases: bases.optional() };
  return keys({ ...head, ...lists }, "A rodplate job: column bases and their setting templates.");
}

const LAYER_KEYS = "any part of a base but mark, quantity, kind and template.mark.";

function headShape(unit: Unit, rules: readonly string[]) {
  return {
    job: jobBlock(),
    units: wordLeaf(["in", "mm"], "Unit of every number that carries none."),
    rules: rulesChoice().optional(),
    shop: textLeaf(
      "A file of templates/shops by its name, as plasma, or the path of a shop file. Omitted: plasma (in) or plasma-metric (mm).",
    ).optional(),
    schedule: scheduleChoice().optional(),
    readFrom: tableChoice()
      .describe("The sheet that bases were read from: they hold, and what differs from it is said.")
      .optional(),
    answers: rows(answerBlock(unit, rules), "a list of answers")
      .describe("Answers of the engineer of record.")
      .optional(),
    answersFrom: textLeaf(
      "The answer form of a package, filled in: an XLSX or YAML file beside the job file. Its answers come after those of the job.",
    ).optional(),
    accepted: rows(answerBlock(unit, rules), "a list of who accepted what")
      .describe("Who accepts that templates are released though a question is open; the row keeps its fail.")
      .optional(),
    questions: textLeaf(
      "Register of the questions of an earlier package, or its summary.json, so that they keep their numbers. Omitted: make takes that of the package in its folder.",
    ).optional(),
    severities: severityBlock(rules).optional(),
    budget: budgetBlock(unit).optional(),
    survey: surveyBlock(unit).optional(),
    sheet: sheetChoice(unit).optional(),
    merge: wordLeaf(
      ["auto", "none"],
      "auto: templates that are the same plate become one, with one mark. Omitted: none.",
    ).optional(),
    templates: templatesBlock().optional(),
  };
}

function sheetChoice(unit: Unit) {
  const description =
    "One size for all sheets of templates and of the plan, refused with the least size that does where it has no room; omitted: each as small as it is good.";
  return unit === "in" ? wordLeaf(SHEET_NAMES.in, description) : wordLeaf(SHEET_NAMES.mm, description);
}

function templatesBlock() {
  const quantity = countLeaf(1, MOST_PIECES, "How many of this template are made, for all the bases that it serves.");
  return z
    .record(z.string(), keys({ quantity }, "What holds for one template."), {
      error: () => "a group of keys, one a template: T1: { quantity: 4 }",
    })
    .describe("Quantities by template mark, instead of those that the bases give.");
}

function jobBlock() {
  const revision = keys(
    {
      revision: textLeaf("Revision, as written.", 12),
      date: dateLeaf("Day of the revision."),
      text: textLeaf("What changed.", 80).optional(),
      marks: rows(textLeaf("Mark of a base or template.", 60), "a list of marks")
        .describe("Whose sheets have this row; omitted: those that its text names, where it names any, else all.")
        .optional(),
    },
    "One row of the revision table, oldest first.",
  );
  const drawing = keys(
    {
      number: textLeaf("Number of the source drawing.", 60),
      revision: textLeaf("Its revision.", 12).optional(),
    },
    "The source drawing, printed in the title block.",
  );
  return keys(
    {
      number: textLeaf("Job number, as written.", 40),
      title: textLeaf("Job title.", 120).optional(),
      revision: textLeaf("Revision of the job, as written.", 12).optional(),
      status: wordLeaf(["preliminary", "for approval", "released"], "Only a released job may be cut.").optional(),
      date: dateLeaf("Day of this issue; omitted: the day of the run.").optional(),
      drawing: drawing.optional(),
      revisions: rows(revision, "a list of revisions").describe("The revision table, oldest first.").optional(),
      drawnBy: textLeaf("Who drew it. CHECKED BY is never filled in by the program.", 40).optional(),
      tolerances: textLeaf("General tolerances, as ISO 2768-m; omitted: the sheet says NOT SPECIFIED.", 40).optional(),
      owner: textLeaf("Legal owner of the drawing (ISO 7200).", 60).optional(),
    },
    "What the title block says.",
  );
}

function rulesChoice() {
  const edition = (what: string) => textLeaf(`Edition for ${what}.`, 60).optional();
  const set = wordLeaf(["us", "metric"], "Rule set: each stands for named editions.");
  const named = keys(
    {
      set,
      templateHoles: edition("template holes"),
      baseHoles: edition("base-plate holes"),
      placing: edition("rod placing tolerances"),
      edges: edition("base-plate edge distances"),
      concrete: edition("rod spacing and cover"),
    },
    "A rule set with editions chosen one by one.",
  );
  return z
    .union([set, named], {
      error: () => "us, metric, or a group of keys: set, templateHoles, baseHoles, placing, edges, concrete",
    })
    .describe("us, metric, or a set with editions chosen one by one. Omitted: by units.");
}

function scheduleChoice() {
  return tableChoice().describe("A spreadsheet that stands for bases: one row a base.");
}

function answerBlock(unit: Unit, rules: readonly string[]) {
  return keys(
    {
      question: questionLeaf().optional(),
      mark: textLeaf("Mark of the base that the question names; omitted where its number is given.").optional(),
      rule: z
        .union([wordLeaf(rules, "Rule that asked."), textLeaf("Anything else is listed as answering nothing.", 60)], {
          error: () => "the name of a rule, as projection",
        })
        .describe("Rule that asked, as the question names it; omitted where its number is given.")
        .optional(),
      ...answerFields,
      subject: textLeaf(
        "Subject of the question, as the ledger gives it; omitted: every subject of the rule.",
        80,
      ).optional(),
      value: lengthLeaf(
        unit,
        "any sign",
        "The value that was answered; when it changes, the question opens again.",
      ).optional(),
    },
    "An answer of the engineer of record: the ledger keeps the fail and says answered.",
  );
}

function questionLeaf() {
  const allowed = "the number of a question, as Q-7";
  return leaf(allowed, "Number of the question, as Q-7: it is to that question alone.", (text) => {
    const number = parseQuestionNumber(text);
    return number === null
      ? { ok: false, message: `"${text}" is not ${allowed}` }
      : { ok: true, value: questionNumber(number) };
  });
}

function severityBlock(rules: readonly string[]) {
  const severity = wordLeaf(
    ["advise", "ask", "stop"],
    "The severity when the rule fails; it may be raised, not lowered.",
  );
  const shape = Object.fromEntries(rules.map((id) => [id, severity.optional()]));
  return keys(shape, "Severities that this job raises, by rule.");
}

/** Keys that a base alone may have: they are its own. */
function ownShape() {
  return {
    mark: textLeaf("Piece mark of the base, as written; it names files.", 200),
    quantity: countLeaf(1, MOST_PIECES, "How many columns stand on this base; omitted: 1.").optional(),
    kind: textLeaf("A name among kinds, whose values this base takes where it gives none itself.", 40).optional(),
  };
}

/** A base once its layers are joined: nothing that is required may be missing. */
function baseSchema(unit: Unit) {
  const rods = keys(rodsShape(unit), RODS);
  const pattern = patternChoice(unit);
  const group = keys({ rods, pattern, ...groupShape(unit) }, GROUP);
  const parts = { rods: rods.optional(), pattern: pattern.optional(), groups: groupsOf(group).optional() };
  const template = keys(templateShape(unit), TEMPLATE);
  return keys({ ...ownShape(), ...sharedShape(unit, parts), template }, "A column base.");
}

/** A part of a base, as defaults and kinds give it: nothing is required. */
function layerSchema(unit: Unit) {
  const { mark: _, ...template } = templateShape(unit);
  return keys({ ...partShape(unit), template: partTemplate(template) }, "A part of a column base.");
}

/** A base as it is written: what defaults or its kind may give is not required. */
function writtenBaseSchema(unit: Unit) {
  return keys({ ...ownShape(), ...partShape(unit), template: partTemplate(templateShape(unit)) }, "A column base.");
}

function partTemplate<Shape extends Pick<ReturnType<typeof templateShape>, "thickness">>(shape: Shape) {
  return keys({ ...shape, thickness: shape.thickness.optional() }, TEMPLATE).optional();
}

function partShape(unit: Unit) {
  const { diameter, ...others } = rodsShape(unit);
  const rods = keys({ diameter: diameter.optional(), ...others }, RODS).optional();
  const pattern = patternChoice(unit);
  const group = keys({ rods, pattern, ...groupShape(unit) }, GROUP);
  return sharedShape(unit, { rods, pattern: pattern.optional(), groups: groupsOf(group).optional() });
}

const RODS = "The rods.";
const GROUP = "Rods of one size.";
const TEMPLATE = "The setting template.";

/** Keys of a base but for its template; `rods`: its rods, pattern and groups. */
function sharedShape<Rods extends z.core.$ZodLooseShape>(unit: Unit, rods: Rods) {
  return {
    member: wordLeaf(
      ["column", "post"],
      "A post, as 29 CFR 1926.751 defines it, is exempt from the least rod count; omitted: column.",
    ).optional(),
    note: textLeaf("Free note, printed on the sheet.", 120).optional(),
    delivery: textLeaf(
      "Truck or pour that its rods and templates go with; packing lists are parted by it.",
      40,
    ).optional(),
    ...rods,
    basePlate: basePlateBlock(unit).optional(),
    column: columnChoice(unit).optional(),
    concrete: concreteBlock(unit).optional(),
    grout: lengthLeaf(
      unit,
      "zero or above",
      "Grout gap between concrete and base plate, or the setting plate that stays under it.",
    ).optional(),
    levelling: wordLeaf(["nuts", "shims", "plate"], "What levels the base plate.").optional(),
  };
}

function groupsOf<Group extends z.core.$ZodType>(group: Group) {
  return rows(group, "a list of groups: rods, pattern, hole, baseHole, washer").describe(
    "Rods of different sizes on one plate, instead of rods and pattern.",
  );
}

function groupShape(unit: Unit) {
  return {
    hole: lengthLeaf(unit, "above zero", "Template hole of this group; omitted: by the rules.").optional(),
    baseHole: lengthLeaf(unit, "above zero", "Hole in the base plate.").optional(),
    washer: washerChoice(unit).optional(),
  };
}

function rodsShape(unit: Unit) {
  return {
    diameter: textLeaf("Rod size: 1-1/4, M30, 30 mm.", 40),
    count: countLeaf(1, MOST_RODS, "How many rods the print says; the pattern must have as many.").optional(),
    thread: wordLeaf(["UNC", "8UN", "coarse"], "Thread series; omitted: UNC, or metric coarse.").optional(),
    grade: textLeaf(
      "F1554 36, 55, 105; ISO 898-1 4.6, 5.6, 8.8, 10.9; or a grade that the shop file declares.",
      40,
    ).optional(),
    finish: wordLeaf(["plain", "galvanized"], "Finish of the rods.").optional(),
    zincGrowth: lengthLeaf(unit, "zero or above", "Growth of the diameter by zinc; omitted: by the finish.").optional(),
    nut: wordLeaf(["hex", "heavy hex"], "Nut; omitted: as recommended for the grade.").optional(),
    torqued: yesNoLeaf("True when the rods are torqued.").optional(),
    welded: yesNoLeaf("True when anything is welded to the rods; omitted: no.").optional(),
    weldable: yesNoLeaf("True when ordered weldable: F1554 grade 55 with supplement S1; omitted: no.").optional(),
    projection: lengthLeaf(unit, "above zero", "Top of concrete to top of rod.").optional(),
    embedment: lengthLeaf(unit, "above zero", "Length below the top of concrete.").optional(),
    length: lengthLeaf(unit, "above zero", "Overall length of the rod.").optional(),
    threads: threadsLeaf(unit).optional(),
    bottom: bottomChoice(unit).optional(),
    bottomThreads: lengthLeaf(
      unit,
      "zero or above",
      "Thread at the lower end, measured up from it; 0: none.",
    ).optional(),
    threadClass: wordLeaf(
      [...THREAD_CLASSES.inch, ...THREAD_CLASSES.metric],
      "Thread class before any coating; omitted: 2A (F1554), 6g (metric).",
    ).optional(),
    threading: wordLeaf(["rolled", "cut"], "How the threads are made; omitted: as the shop file has it.").optional(),
    zincProcess: wordLeaf(
      ["hot-dip", "mechanical"],
      "How galvanized rods are coated, by ASTM F2329 or B695; omitted: no preference.",
    ).optional(),
    nutFinish: wordLeaf(
      ["plain", "hot-dip", "mechanical"],
      "Coating of nuts and washers where it is not that of the rods.",
    ).optional(),
    protectors: yesNoLeaf("True when the projecting threads are covered for the way; omitted: no.").optional(),
    topNuts: countLeaf(1, 4, "Nuts on the base plate; omitted: 1.").optional(),
    levellingNuts: countLeaf(0, 2, "Nuts under the base plate; omitted: 1 where levelling is nuts.").optional(),
    stickOut: lengthLeaf(unit, "zero or above", "Rod above the nut on the base plate; omitted: 0, flush.").optional(),
    wrenchRoom: lengthLeaf(unit, "above zero", "Diameter that a wrench or socket needs around a nut.").optional(),
  };
}

/** A length, or `full`. */
function threadsLeaf(unit: Unit) {
  const allowed = `a length above zero, as ${unit === "in" ? "6" : "150"} or with its unit, or full`;
  const description = "Thread at the top, measured down from the top of the rod; full: the whole rod is threaded.";
  return leaf<Length | "full">(allowed, description, (text) => {
    if (text.trim().toLowerCase() === "full") return { ok: true, value: "full" };
    const reading = parseLength(text, unit);
    if (!reading.ok) return { ok: false, message: `${reading.message}; or full` };
    return reading.value > 0 ? reading : { ok: false, message: `"${text}" is not above zero` };
  });
}

const BOTTOM_KINDS = "kind: straight, nut, plate, hook or swedged";

function endPlateShape(unit: Unit, what: string) {
  return {
    shape: wordLeaf(["round", "square"], `Shape of the ${what}.`),
    size: lengthLeaf(unit, "above zero", "Diameter, or side of a square."),
    thickness: lengthLeaf(unit, "above zero", "Thickness."),
  };
}

function bottomChoice(unit: Unit) {
  const tackWelded = yesNoLeaf("True when the nut is tack welded so that it does not turn; omitted: no.").optional();
  const plate = keys(
    {
      kind: z.literal("plate"),
      ...endPlateShape(unit, "plate"),
      nuts: countLeaf(0, 2, "2: one on each face; 1: beneath it; 0: welded to the rod; omitted: 2.").optional(),
      tackWelded,
    },
    "A plate at the lower end.",
  );
  const hook = keys(
    {
      kind: z.literal("hook"),
      reach: lengthLeaf(unit, "above zero", "Reach from the rod's axis."),
      radius: lengthLeaf(unit, "above zero", "Inside radius of the bend; omitted: as the shop bends.").optional(),
    },
    "A hook.",
  );
  const washer = keys(endPlateShape(unit, "washer"), "A plate washer on the nut.").optional();
  const nut = keys({ kind: z.literal("nut"), washer, tackWelded }, "A nut at the lower end.");
  const straight = keys({ kind: z.literal("straight") }, "Nothing anchors the rod at its lower end.");
  const swedged = keys(
    { kind: z.literal("swedged"), length: lengthLeaf(unit, "above zero", "Length that is swedged, up from the end.") },
    "A swedged lower end.",
  );
  const kinds = [straight, nut, plate, hook, swedged] as const;
  const detailed = z.discriminatedUnion("kind", kinds, { error: () => BOTTOM_KINDS });
  return z
    .union([z.enum(["nut", "straight"], { error: () => "nut or straight" }), detailed], {
      error: () => `nut, straight, or a group of keys with ${BOTTOM_KINDS}`,
    })
    .describe("What anchors the rod at its lower end.");
}

function atKey(unit: Unit) {
  return pointLeaf(unit).describe("Position in the base's own axes, [x, y]; omitted: 0, 0.").optional();
}

function cornerChoice(unit: Unit) {
  const leg = (what: string) => lengthLeaf(unit, "above zero", what).optional();
  const legs = { size: leg("Both legs."), x: leg("Leg along x."), y: leg("Leg along y.") };
  const square = keys({ kind: z.literal("square") }, "As it is.");
  const chamfer = keys({ kind: z.literal("chamfer"), ...legs }, "Cut off: size, or x and y.");
  const round = keys({ kind: z.literal("round"), radius: leg("Radius."), size: leg("Radius.") }, "Rounded.");
  const notch = keys({ kind: z.literal("notch"), ...legs }, "A rectangle cut out: size, or x and y.");
  return z
    .discriminatedUnion("kind", [square, chamfer, round, notch], {
      error: () => "kind: square, chamfer, round or notch",
    })
    .describe("Treatment of every corner.");
}

function washerChoice(unit: Unit) {
  const own = keys(
    {
      shape: wordLeaf(["round", "square"], "Shape."),
      size: lengthLeaf(unit, "above zero", "Diameter, or side of a square."),
      thickness: lengthLeaf(unit, "above zero", "Thickness.").optional(),
    },
    "A washer by its size.",
  );
  return z
    .union(
      [
        textLeaf(
          "A standard, as F436, F844 narrow or F844 wide: the washer of the rod's size. F844 alone may be either.",
          60,
        ),
        own,
      ],
      {
        error: () => "a standard, as F844 wide, or a group of keys: shape, size, thickness",
      },
    )
    .describe("Washer on the base plate.");
}

/** x and y, or diameter: which of them are given together is judged by `resolveJob`. */
function planKeys(unit: Unit) {
  return {
    x: lengthLeaf(unit, "above zero", "Side along x.").optional(),
    y: lengthLeaf(unit, "above zero", "Side along y.").optional(),
    diameter: lengthLeaf(unit, "above zero", "Diameter, instead of x and y.").optional(),
    corner: cornerChoice(unit).optional(),
    at: atKey(unit),
  };
}

function basePlateBlock(unit: Unit) {
  const holes = keys(
    { at: pointsLeaf(unit), hole: lengthLeaf(unit, "above zero", "Hole diameter.").optional() },
    "Holes of one size, from the shop detail.",
  );
  return keys(
    {
      ...planKeys(unit),
      thickness: lengthLeaf(unit, "above zero", "Thickness.").optional(),
      hole: lengthLeaf(unit, "above zero", "Hole for the rods.").optional(),
      washer: washerChoice(unit).optional(),
      pattern: z
        .union([holes, rows(holes, "a list of holes")], { error: () => "at and hole, or a list of those" })
        .describe("Second source for the pattern: the base plate's holes as its shop detail has them.")
        .optional(),
      from: basePlateFile().optional(),
      groutHoles: roundHoles(unit).describe("Grout or air holes; omitted: none.").optional(),
    },
    "The plate welded to the column.",
  );
}

function roundHoles(unit: Unit) {
  return keys(
    { at: pointsLeaf(unit), diameter: lengthLeaf(unit, "above zero", "Diameter.") },
    "Round holes of one size.",
  );
}

function basePlateFile() {
  const file = textLeaf("A DXF file of the base plate, beside the job file.");
  const named = keys(
    { file, origin: wordLeaf(["any", "working point"], "Origin of the drawing; omitted: any.").optional() },
    "A DXF file of the base plate, seen from above, its x and y along those of the base.",
  );
  return z
    .union([file, named], { error: () => "a file name, or file and origin" })
    .describe("Second source for the pattern: the round holes in a DXF file of the base plate, instead of pattern.");
}

function concreteBlock(unit: Unit) {
  return keys(
    {
      ...planKeys(unit),
      depth: lengthLeaf(unit, "above zero", "Depth of the concrete below the rods' top of concrete.").optional(),
      exposure: wordLeaf(
        ["against ground", "exposed", "not exposed"],
        "ACI 318-19 Table 20.5.1.3.1: cast against ground, exposed to weather or ground, not exposed.",
      ).optional(),
    },
    "The pier.",
  );
}

function columnChoice(unit: Unit) {
  const size = (what: string) => lengthLeaf(unit, "above zero", what);
  const wide = keys(
    {
      kind: z.literal("wide flange"),
      depth: size("Depth of the section."),
      width: size("Width of the flanges."),
      flange: size("Thickness of the flanges."),
      web: size("Thickness of the web."),
      depthAlong: wordLeaf(["x", "y"], "The base's own axis along which the depth lies."),
      at: atKey(unit),
    },
    "A wide-flange section.",
  );
  const tube = keys(
    { kind: z.literal("tube"), x: size("Side along x."), y: size("Side along y."), at: atKey(unit) },
    "A tube.",
  );
  const pipe = keys({ kind: z.literal("pipe"), diameter: size("Outside diameter."), at: atKey(unit) }, "A pipe.");
  const section = keys(
    {
      kind: z.literal("section"),
      name: sectionLeaf(),
      depthAlong: wordLeaf(
        ["x", "y"],
        "The base's own axis along which its depth, or its longer side, lies.",
      ).optional(),
      at: atKey(unit),
    },
    "A section by its name.",
  );
  const detailed = z.discriminatedUnion("kind", [wide, tube, pipe, section], {
    error: () => "kind: wide flange, tube, pipe or section",
  });
  return z
    .union([namedSection(), detailed], {
      error: () =>
        "a section name, as W12x65 along y, or a group of keys with kind: wide flange, tube, pipe or section",
    })
    .describe("The column, for washer room and for the sheet.");
}

const SECTION_NAME = "a section name, as W12x65, HSS8x8x1/2, PIPE 6 STD, HEB 300 or UC 254x254x73";

/** A section's name as printed on sheets: whether its dimensions are held is for `resolveJob`. */
function sectionLeaf() {
  return leaf<string>(SECTION_NAME, "Name of the section, printed on the sheet.", (text) => {
    const name = text.trim();
    return findSection(name).kind === "unnamed"
      ? { ok: false, message: `"${text}" is not ${SECTION_NAME}` }
      : { ok: true, value: name };
  });
}

/** `W12x65`, or `W12x65 along y`. */
function namedSection() {
  const allowed = `${SECTION_NAME}; with "along x" or "along y" where its depth lies`;
  return leaf<SectionDocument>(
    allowed,
    "Name of the section, and along which of the base's axes its depth lies.",
    (text) => {
      const [, name = "", along] = /^(.{1,60}?)(?: along ([xy]))?$/i.exec(text.trim()) ?? [];
      if (findSection(name).kind === "unnamed") return { ok: false, message: `"${text}" is not ${allowed}` };
      const value: SectionDocument = { kind: "section", name: name.trim() };
      if (along === undefined) return { ok: true, value };
      return { ok: true, value: { ...value, depthAlong: along.toLowerCase() === "x" ? "x" : "y" } };
    },
  );
}

/** A column by its section's name, as written. */
export interface SectionDocument {
  readonly kind: "section";
  readonly name: string;
  readonly depthAlong?: "x" | "y" | undefined;
  readonly at?: undefined;
}

function templateShape(unit: Unit) {
  const round = roundHoles(unit);
  return {
    mark: textLeaf("Mark of the template; omitted: the base's mark.", 200).optional(),
    quantity: countLeaf(
      1,
      MOST_PIECES,
      "How many; omitted: the base's quantity. Templates may be used again.",
    ).optional(),
    use: wordLeaf(
      ["template", "template left as setting plate", "setting plate over cast rods"],
      "A plate dropped over rods already cast takes the base plate's holes; omitted: template.",
    ).optional(),
    support: wordLeaf(["form", "bearers"], "What carries the template.").optional(),
    material: wordLeaf(["steel", "plywood"], "Omitted: steel.").optional(),
    grade: textLeaf("Material grade as written: A36, S235JR; omitted: not given, which is said.", 40).optional(),
    thickness: lengthLeaf(unit, "above zero", "Thickness of the template."),
    hole: lengthLeaf(unit, "above zero", "Hole for the rods; omitted: by the rules.").optional(),
    outline: outlineChoice(unit).optional(),
    opening: openingChoice(unit).optional(),
    key: wordLeaf(["auto", "none"], "Corner cut or notch that shows a wrong placement; omitted: auto.").optional(),
    height: lengthLeaf(unit, "zero or above", "Underside of the template above top of concrete.").optional(),
    nails: round.describe("Nail holes.").optional(),
    groutHoles: round.describe("Grout or air holes.").optional(),
    lower: lowerChoice(unit).optional(),
    segments: segmentsChoice().optional(),
  };
}

function lowerChoice(unit: Unit) {
  const own = keys(
    {
      above: lengthLeaf(unit, "zero or above", "Its underside above the rods' lower ends.").optional(),
      below: lengthLeaf(unit, "above zero", "Its underside below the top of concrete, instead of above.").optional(),
      thickness: lengthLeaf(unit, "above zero", "Thickness; omitted: that of a steel template.").optional(),
      outline: outlineChoice(unit).optional(),
      opening: openingChoice(unit).describe("Opening for the concrete; omitted: auto.").optional(),
    },
    "A lower template.",
  );
  return z
    .union([z.enum(["auto", "none"], { error: () => "auto or none" }), own], {
      error: () => "auto, none, or a group of keys: above or below, thickness, outline, opening",
    })
    .describe("Smaller plate of steel at the rods' lower ends, which stays in the concrete; omitted: none.");
}

const MOST_SEGMENTS = 24;

function segmentsChoice() {
  const count = z
    .union(
      [
        z.enum(["auto"], { error: () => "auto" }),
        countLeaf(2, MOST_SEGMENTS, "How many segments, equal where the holes let them be."),
      ],
      { error: () => `auto, or a whole number from 2 to ${MOST_SEGMENTS}` },
    )
    .describe("How many segments; auto: the fewest that the shop's table takes.");
  const own = keys(
    { count, bolt: textLeaf("Size of the bolts of the splice plates: 1/2, M12.", 40).optional() },
    "Segments and their bolts.",
  );
  return z
    .union([z.enum(["none"], { error: () => "none" }), count, own], {
      error: () => `auto, none, a whole number from 2 to ${MOST_SEGMENTS}, or a group of keys: count, bolt`,
    })
    .describe(
      "Segments that are bolted together with splice plates; auto: the fewest that the shop's table takes. Omitted: none.",
    );
}

function outlineChoice(unit: Unit) {
  const size = (what: string) => lengthLeaf(unit, "above zero", what);
  const corner = cornerChoice(unit).optional();
  const auto = keys({ kind: z.literal("auto"), corner }, "Sized from the edge rule.");
  const rectangle = keys(
    { kind: z.literal("rectangle"), x: size("Side along x."), y: size("Side along y."), at: atKey(unit), corner },
    "A rectangle.",
  );
  const circle = keys({ kind: z.literal("circle"), diameter: size("Diameter."), at: atKey(unit) }, "A round plate.");
  const ring = keys(
    { kind: z.literal("ring"), outer: size("Outer diameter."), inner: size("Inner diameter."), at: atKey(unit) },
    "A ring.",
  );
  const polygon = keys({ kind: z.literal("polygon"), at: pointsLeaf(unit), corner }, "A polygon, by its corners.");
  const kinds = z.discriminatedUnion("kind", [auto, rectangle, circle, ring, polygon], {
    error: () => "kind: auto, rectangle, circle, ring or polygon",
  });
  return z
    .union([z.enum(["auto"], { error: () => "auto" }), kinds], {
      error: () => "auto, or a group of keys with kind: auto, rectangle, circle, ring or polygon",
    })
    .describe("Outline of the template; omitted: sized from the edge rule and rounded up.");
}

function openingChoice(unit: Unit) {
  const size = (what: string) => lengthLeaf(unit, "above zero", what).optional();
  const opening = keys(
    {
      diameter: size("Diameter of a round opening."),
      x: size("Width of a rectangular opening."),
      y: size("Height of a rectangular opening."),
      radius: lengthLeaf(unit, "zero or above", "Corner radius of a rectangular opening; omitted: 0.").optional(),
      at: atKey(unit),
    },
    "A round or rectangular opening.",
  );
  return z
    .union([z.enum(["auto", "none"], { error: () => "auto or none" }), opening], {
      error: () => "auto, none, or a group of keys: diameter; or x, y, radius",
    })
    .describe("Opening to pour and vibrate through; omitted: none.");
}
