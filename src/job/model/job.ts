/**
 * The complete job: what the user wrote, with every default filled in and the origin of each value beside it. There are
 * no optionals left: a value that nobody gave and no table holds is `Missing`, and becomes a not-checked row, never a guess.
 */
import type { Place } from "../../diagnostics/finding.js";
import type { Pattern } from "../../patterns/index.js";
import type { ReadAs } from "../../schedule/index.js";
import type { EditionKind, EditionOf, Exposure, ThreadSeries } from "../../standards/index.js";
import type { Length, Unit } from "../../units/length.js";
import type { BudgetSpec } from "./budget.js";
import type { PlanSpec } from "./plan.js";
import type { Rates } from "./rates.js";
import type { QuestionNumbers, QuestionRegister } from "./register.js";
import type { RodShop } from "./rod-shop.js";
import type { SheetName } from "./sheet-names.js";
import type { SurveySpec } from "./survey.js";
import type { Given, Input, Offset } from "./values.js";

export type { CircleStart, Pattern } from "../../patterns/index.js";
export type { Exposure } from "../../standards/index.js";
export type { RateName, Rates } from "./rates.js";
export type { RodMaking, RodShop } from "./rod-shop.js";
export type { RodStock } from "./rod-stock.js";
export type { Given, Input, Missing, Offset } from "./values.js";
export { given, keysOfMissing, missing, optional } from "./values.js";

/** Only a released job may be cut; sheets and files of the others say so. */
export type JobStatus = "preliminary" | "for approval" | "released";
/** Each stands for named editions; a job may choose them one by one. */
export type RuleSet = "us" | "metric";
/** What a failed rule does: `stop` holds the base back, `ask` is a question for the engineer of record, `advise` a note. */
export type Severity = "stop" | "ask" | "advise";

/** The named editions that every sheet prints, one a kind: the printed names, by which `standards` looks up. */
export interface Editions extends Readonly<{ [Kind in EditionKind]: EditionOf<Kind> }> {
  readonly set: RuleSet;
}

/** One row of the revision table. */
export interface Revision {
  readonly revision: string;
  readonly date: string;
  readonly text: string;
  /** Bases and templates that it touches; null: the job does not say. */
  readonly marks: readonly string[] | null;
}

/** A whole job: its head, its shop, its bases, and where they stand. */
export interface Job {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly status: JobStatus;
  /** ISO date as written in the job, or the date handed in by the shell. */
  readonly date: string;
  readonly unit: Unit;
  readonly editions: Editions;
  readonly shop: Shop;
  readonly bases: readonly Base[];
  /** Answers of the engineer of record, then those that accept a release with a question open. */
  readonly answers: readonly Answer[];
  /** The questions of the package before, with their numbers; null of a job that has none. */
  readonly register: QuestionRegister | null;
  /** null until every base was looked at for what it asks. */
  readonly numbers: QuestionNumbers | null;
  /** Severities that the job raises, by rule id. */
  readonly raised: Readonly<Record<string, Severity>>;
  /** Source drawing and its revision, as printed in the title block; empty when not given. */
  readonly drawing: { readonly number: string; readonly revision: string };
  /** Revision rows for the sheet's revision table, oldest first. */
  readonly revisions: readonly Revision[];
  /** DRAWN BY; CHECKED BY is never filled in by the program. */
  readonly drawnBy: string;
  /** Name of the legal owner (ISO 7200) printed in the title block; empty when not given. */
  readonly owner: string;
  /** General tolerances, printed in the title block; empty: the sheet says NOT SPECIFIED. */
  readonly tolerances: string;
  /** The one size of all template sheets and plan sheets; null: each as small as it is good. */
  readonly sheet: SheetName | null;
  /** Grid and placements; null where the job has none. */
  readonly plan: PlanSpec | null;
  /** How position errors are reckoned against the base plate's clearance; defaults where the job says nothing. */
  readonly budget: BudgetSpec;
  /** What is known of the survey of the rods as built. */
  readonly survey: SurveySpec;
  /** Rods that a template of another mark would set off by less than this are set wrong without anyone noticing. */
  readonly lookAlike: Given<Length>;
  /** What was understood of the schedule; null of a job that names none. */
  readonly readAs: ReadAs | null;
  /** auto: templates that are the same plate become one. none: only where the job gives one mark to several bases. */
  readonly merge: "auto" | "none";
  /** Quantities that the job gives for a template, instead of those of its bases. */
  readonly templates: readonly TemplateQuantity[];
}

/** How many of one template are made, and where the job says so. */
export interface TemplateQuantity {
  readonly mark: string;
  readonly quantity: number;
  readonly place: Place;
}

/**
 * An answer of the engineer of record to a question; or that somebody accepts the release though the question is open. The
 * ledger keeps the fail and says which.
 */
export interface Answer {
  readonly kind: "answered" | "accepted";
  /** Number of the question that it is to, and to no other: `Q-7`; "" where mark, rule and subject say it. */
  readonly question: string;
  /** "" of an answer that names a number. */
  readonly mark: string;
  readonly rule: string;
  readonly by: string;
  readonly date: string;
  readonly text: string;
  /**
   * The value that was answered, in the job's unit as the question gave it, and the subject. A changed value opens the
   * question again.
   */
  readonly subject: string;
  readonly value: Input<number>;
}

/** How holes are made; `drill`: by a drill list, without a cut file. */
export type CuttingProcess = "plasma" | "laser" | "oxyfuel" | "waterjet" | "drill";

/** How a shop cuts and what it asks for: values of the shop, not of a code. */
export interface Shop {
  readonly name: string;
  readonly process: CuttingProcess;
  /** Deviation of a cut hole on its diameter: an ISO 9013 class, or the shop's own figure. */
  readonly deviation:
    | { readonly kind: "iso9013"; readonly class: 1 | 2 }
    | { readonly kind: "own"; readonly value: Length };
  /** Deviation of a drilled hole on its diameter; of a shop that drills all its holes it is `deviation`. */
  readonly drilled: Input<Length>;
  /** Loss of diameter on the narrow side: twice the ISO 9013 perpendicularity of a range, or the shop's own figure. */
  readonly taper:
    | { readonly kind: "iso9013"; readonly range: 1 | 2 | 3 | 4 | 5 }
    | { readonly kind: "own"; readonly value: Length };
  /** Smallest hole as a multiple of the thickness, and in absolute terms. */
  readonly smallestHole: { readonly perThickness: number; readonly least: Length; readonly from: string };
  /** Smallest web the process can leave. */
  readonly smallestWeb: { readonly perThickness: number; readonly least: Length; readonly from: string };
  /** Smallest inside corner radius the process can cut. */
  readonly smallestCorner: { readonly least: Length; readonly from: string };
  /** Least steel between a hole's edge and the plate's edge or an opening (`hole-edge`), and between holes (`hole-web`). */
  readonly edge: Given<Length>;
  readonly web: Given<Length>;
  /** Gap between two neighbouring nuts. */
  readonly nutGap: Given<Length>;
  /** Bearing of the template on the form at each of two opposite sides; gap inside the form when carried by bearers. */
  readonly bearing: Given<Length>;
  readonly formGap: Given<Length>;
  /** Automatic outlines are rounded up to this. */
  readonly increment: Given<Length>;
  /** Room between T.O.C. and the underside for finishing the concrete, beside nut and washer. */
  readonly finishingRoom: Given<Length>;
  /** Room between T.O.C. and the levelling nut under the base plate; default 0: the nut just clears the concrete. */
  readonly groutRoom: Given<Length>;
  /** Largest side before a template tends to warp. */
  readonly largestSide: Given<Length>;
  /** Largest plate that the table takes and the stock gives, in either direction. */
  readonly table: Input<{ readonly x: Length; readonly y: Length }>;
  /** Thicknesses in stock, one or more. */
  readonly thicknesses: Readonly<Record<Material, Input<readonly Length[]>>>;
  /** Washer on the template (diameter and thickness) under each nut; missing: the nut itself bears. */
  readonly templateWasher: Input<Washer>;
  readonly density: { readonly steel: Given<Density>; readonly plywood: Input<Density> };
  readonly marking: MarkingShop;
  readonly cutFile: CutFileShop;
  /** Bolt of splice plates, where a template does not name its own. */
  readonly spliceBolt: Given<SpliceBolt>;
  readonly rodShop: RodShop;
  readonly rates: Rates;
}

/** Mass per volume, as a fraction in its own unit so that weights agree with handbook tables. */
export interface Density {
  readonly value: number;
  readonly unit: "lb/ft3" | "kg/m3";
}

/** How a shop puts marks on a plate. */
export interface MarkingShop {
  /** scribe: strokes go on the cut file's mark layer. paint: they are drawn on the sheet only. */
  readonly how: "scribe" | "paint" | "none";
  readonly textHeight: Length;
  /** Marks are set smaller, down to this, before they are left out. */
  readonly leastTextHeight: Length;
  /** Clear distance between any stroke and a cut edge or another mark. */
  readonly clearance: Length;
}

/** How a shop wants its cut files: names of layers, and where 0,0 is. */
export interface CutFileShop {
  readonly layers: {
    readonly outline: string;
    readonly holes: string;
    readonly openings: string;
    readonly marks: string;
    readonly drill: string;
  };
  readonly origin: "lower left" | "working point";
  /** What stands in the names of files to cut or drill by, in this order; the mark is among it. */
  readonly name: readonly CutNamePart[];
  /** The flavour that the table loads: it lies beside the cut list, the other in a folder of its own. */
  readonly flavour: CutFlavourName;
}

/** Parts of the name of a file to cut or drill by. */
export const CUT_NAME_PARTS = ["mark", "quantity", "thickness", "material", "revision"] as const;

/** One of them. */
export type CutNamePart = (typeof CUT_NAME_PARTS)[number];

/** How cut files draw a contour: one closed polyline, or single lines, arcs and circles. */
export const CUT_FLAVOURS = ["polyline", "lines"] as const;

/** One of them. */
export type CutFlavourName = (typeof CUT_FLAVOURS)[number];

/** What stands on the base; a post is exempt from the least rod count. */
export type Member = "column" | "post";

/** One type of column base, in its own axes: x right, y up, seen from above, origin at the working point. */
export interface Base {
  /** Where the base stands in the input, for findings of later stages. */
  readonly place: Place;
  readonly mark: string;
  /** The kind that it cites; "" for none. */
  readonly kind: string;
  readonly quantity: number;
  readonly member: Member;
  /** Free note printed on the sheet; empty when not given. */
  readonly note: string;
  /** Truck or pour that its rods and templates go with; empty when not given. */
  readonly delivery: string;
  readonly groups: readonly RodGroup[];
  readonly basePlate: BasePlate;
  readonly column: Input<ColumnShape>;
  /** The column's section as the job names it; "" where it gives dimensions, or nothing. */
  readonly columnName: string;
  readonly concrete: Concrete;
  readonly grout: Input<Length>;
  /** What levels the base plate. */
  readonly levelling: Input<"nuts" | "shims" | "plate">;
  readonly template: TemplateSpec;
  /**
   * Who gave what is not the base's own: key path in the job file, as `rods.grade` or `groups[1].rods.grade`, -> `default`,
   * `kind heavy`, `note 2`. What is not named here is the base's own, or nobody's.
   */
  readonly origins: Readonly<Record<string, string>>;
}

/** Rods of one size and specification on one plate. A base without `groups` has one, lettered A. */
export interface RodGroup {
  readonly letter: string;
  readonly pattern: Pattern;
  readonly rod: Rod;
  /** The hole the template gets, and what the rules would give. */
  readonly hole: Given<Length>;
  readonly tableHole: Input<Length>;
  /** Hole in the base plate, as the job says; and what the named edition tabulates for the rod. */
  readonly baseHole: Input<Length>;
  readonly tableBaseHole: Input<Length>;
  /** Washer on the base plate. */
  readonly washer: Input<Washer>;
}

/** One size and specification of rod. */
export interface Rod {
  /** As printed: `1-1/4` or `M30`. */
  readonly size: string;
  readonly diameter: Length;
  readonly thread: ThreadSeries;
  readonly grade: Input<string>;
  readonly finish: Input<"plain" | "galvanized">;
  /** Growth of the diameter by zinc, upper value; zero for a plain rod. */
  readonly zincGrowth: Input<Length>;
  readonly nut: Input<Nut>;
  readonly torqued: Input<boolean>;
  /** True when something is welded to the rods; and when they are ordered weldable (F1554 grade 55 with supplement S1). */
  readonly welded: boolean;
  readonly weldable: boolean;
  readonly projection: Input<Length>;
  readonly embedment: Input<Length>;
  readonly length: Input<Length>;
  /** Thread at the top, measured down from the top of the rod; of a rod threaded in full its whole length. */
  readonly threadLength: Input<Length>;
  /** True of a rod that is threaded over its whole length. */
  readonly fullThread: boolean;
  /** Thread at the lower end, measured up from it; zero where there is none; of a rod threaded in full its whole length. */
  readonly bottomThread: Input<Length>;
  /** As printed: `2A`, `6g`. */
  readonly threadClass: Input<string>;
  /** How the job says that threads are made; missing: as the shop does it. */
  readonly threading: Input<Threading>;
  /** Of a galvanized rod; missing where the order has no preference, and of a plain rod. */
  readonly zincProcess: Input<ZincProcess>;
  /** Coating of the nuts and washers where it is said apart; missing: as the rods. */
  readonly nutFinish: Input<"plain" | ZincProcess>;
  /** True where the threads that stand out are to be covered for the way. */
  readonly protectors: boolean;
  /** Nuts on the base plate. */
  readonly topNuts: Given<number>;
  /** Nuts under the base plate where the job says how many; missing: by how the base is levelled. */
  readonly levellingNuts: Input<number>;
  /** What anchors the rod at its lower end. */
  readonly bottom: Input<Bottom>;
  /** Room around a nut for a wrench or socket: diameter. */
  readonly wrenchRoom: Input<Length>;
  /** Rod standing out above the nut on the base plate; default 0: flush, the nut fully engaged. */
  readonly stickOut: Input<Length>;
}

/** A nut by its largest figures. */
export interface Nut {
  readonly kind: "hex" | "heavy hex";
  readonly acrossCorners: Length;
  readonly height: Length;
}

/** `size` is the diameter of a round washer, the side of a square one. */
export interface Washer {
  readonly shape: "round" | "square";
  readonly size: Length;
  readonly thickness: Input<Length>;
  /** Least and greatest thickness of its table; absent for a washer by its size, whose thickness is as given. */
  readonly limits?: { readonly least: Length; readonly greatest: Length };
  /** Series of a standard that has two, as `F844 narrow`; absent where there is no choice. */
  readonly series?: string;
  /** The washer of the wide series, which may come where the job names no series: what needs room takes this one. */
  readonly widest?: Washer;
}

/** Classes of external threads: those of inch threads (ASME B1.1) and of metric ones (ISO 965-1). From memory. */
export const THREAD_CLASSES = { inch: ["1A", "2A", "3A"], metric: ["6g", "8g"] } as const;

/** How threads are made: rolled on bar of the pitch diameter, or cut on bar of the full size. */
export type Threading = "rolled" | "cut";

/** How zinc comes on rods and nuts: ASTM F2329, or B695. */
export type ZincProcess = "hot-dip" | "mechanical";

/** A plate at the lower end of a rod: diameter, or side of a square. */
export interface EndPlate {
  readonly shape: "round" | "square";
  readonly size: Length;
  readonly thickness: Length;
}

/**
 * Bottom end: nothing; a nut (its width across corners governs) with or without a plate washer between it and the concrete
 * above it; a plate held by nuts (two: one on each face; one: beneath it; none: it is welded on); a hook, its reach from the
 * rod's axis; or a swedged part, its length up from the end.
 */
export type Bottom =
  | { readonly kind: "straight" }
  | { readonly kind: "nut"; readonly washer: EndPlate | null; readonly tackWelded: boolean }
  | ({ readonly kind: "plate"; readonly nuts: number; readonly tackWelded: boolean } & EndPlate)
  | { readonly kind: "hook"; readonly reach: Length; readonly radius: Length | null }
  | { readonly kind: "swedged"; readonly length: Length };

/** A plate's or pier's shape in plan about its own centre. */
export type PlanShape =
  | { readonly kind: "rectangle"; readonly x: Length; readonly y: Length; readonly corner: Corner }
  | { readonly kind: "circle"; readonly diameter: Length };

/** The plate welded to the column; `at` is its centre. */
export interface BasePlate {
  readonly shape: Input<PlanShape>;
  readonly at: Offset;
  readonly thickness: Input<Length>;
  /** Second source for the pattern, when the job gives one, in the base's axes; one entry a hole. */
  readonly pattern: Input<readonly SecondSourceHole[]>;
  /** Where the second source has its origin; of a file "any" is that its axes alone are those of the base. */
  readonly patternOrigin: PatternOrigin;
  /** Holes that let grout in or air out. */
  readonly groutHoles: readonly RoundHoleSpec[];
}

/** as listed: in the job, exact. any, working point: a drawing, with the rounding of its figures. */
export type PatternOrigin = "as listed" | "any" | "working point";

/** A hole of the base plate as another source has it, in the base's axes. */
export interface SecondSourceHole {
  readonly at: Offset;
  readonly diameter: Input<Length>;
}

/** The column in plan; `at` is its centre. */
export type ColumnShape =
  | {
      readonly kind: "wide flange";
      readonly depth: Length;
      readonly width: Length;
      readonly flange: Length;
      readonly web: Length;
      /** The type's own axis along which the depth lies. */
      readonly depthAlong: "x" | "y";
      readonly at: Offset;
    }
  | { readonly kind: "tube"; readonly x: Length; readonly y: Length; readonly at: Offset }
  | { readonly kind: "pipe"; readonly diameter: Length; readonly at: Offset };

/** The pier or footing under the base; `at` is its centre, `depth` is measured down from the top of concrete. */
export interface Concrete {
  readonly shape: Input<PlanShape>;
  readonly at: Offset;
  readonly depth: Input<Length>;
  readonly exposure: Input<Exposure>;
}

/** What becomes of the template; one set over cast rods takes the base plate's holes. */
export type TemplateUse = "template" | "template left as setting plate" | "setting plate over cast rods";
/** What carries the template while concrete is placed: the form itself, or bearers across it. */
export type Support = "form" | "bearers";
/** What the template is cut from. */
export type Material = "steel" | "plywood";

/** The template as the job wants it, with its defaults; the plate is made from this. */
export interface TemplateSpec {
  readonly mark: string;
  /** How many are made: of a template of several bases for all of them. */
  readonly quantity: number;
  /** Marks of all bases that it serves, in the order of the job; empty where it serves this base alone. */
  readonly sharedBy: readonly string[];
  /** What the job itself says; null for a mark that is not given or is the base's own, and for a quantity that is not given. */
  readonly written: { readonly mark: string | null; readonly quantity: number | null };
  readonly use: TemplateUse;
  readonly support: Input<Support>;
  readonly material: Material;
  /** As written: A36, S235JR; of a board, its sort. */
  readonly grade: Input<string>;
  readonly thickness: Length;
  readonly outline: OutlineSpec;
  readonly opening: OpeningSpec;
  readonly key: "auto" | "none";
  /** Height of the underside above T.O.C. */
  readonly height: Input<Length>;
  readonly nailHoles: readonly RoundHoleSpec[];
  readonly groutHoles: readonly RoundHoleSpec[];
  /** The smaller plate that stays in the concrete at the rods' lower ends; null where none is asked for. */
  readonly lower: LowerSpec | null;
  /** Into how many segments it is cut; null: it is one piece. */
  readonly segments: SegmentsSpec | null;
}

/** A lower template: of steel, with the pattern of its template. */
export interface LowerSpec {
  readonly thickness: Length;
  readonly outline: OutlineSpec;
  readonly opening: OpeningSpec;
  readonly level: Input<LowerLevel>;
}

/** Where its underside stands: above the rods' lower ends, or below the top of concrete. */
export interface LowerLevel {
  readonly from: "lower ends" | "top of concrete";
  readonly distance: Length;
}

/** auto: one piece where the shop's table takes it, else the fewest segments that it takes. `bolt` null: that of the shop. */
export interface SegmentsSpec {
  readonly count: number | "auto";
  readonly bolt: Given<SpliceBolt> | null;
}

/** A bolt of the splice plates with its hole; its nut is no narrower than its head. */
export interface SpliceBolt {
  readonly size: string;
  readonly diameter: Length;
  readonly hole: Given<Length>;
  readonly nut: Input<Nut>;
}

/** A round hole beside those of the rods. */
export interface RoundHoleSpec {
  readonly at: Offset;
  readonly diameter: Length;
}

/** Corner treatment; `legs` of a chamfer may differ (x leg, y leg); a notch cuts a rectangle out of the corner. */
export type Corner =
  | { readonly kind: "square" }
  | { readonly kind: "chamfer"; readonly x: Length; readonly y: Length }
  | { readonly kind: "round"; readonly radius: Length }
  | { readonly kind: "notch"; readonly x: Length; readonly y: Length };

/** The template's outline; `auto` is sized from the edge rule, `at` is the centre, of a polygon the corners in order. */
export type OutlineSpec =
  | { readonly kind: "auto"; readonly corner: Corner }
  | { readonly kind: "rectangle"; readonly x: Length; readonly y: Length; readonly at: Offset; readonly corner: Corner }
  | { readonly kind: "circle"; readonly diameter: Length; readonly at: Offset }
  | { readonly kind: "ring"; readonly outer: Length; readonly inner: Length; readonly at: Offset }
  | { readonly kind: "polygon"; readonly at: readonly Offset[]; readonly corner: Corner };

/** The opening to pour and vibrate through; `at` is its centre. */
export type OpeningSpec =
  | { readonly kind: "none" }
  | { readonly kind: "auto" }
  | { readonly kind: "circle"; readonly diameter: Length; readonly at: Offset }
  | {
      readonly kind: "rectangle";
      readonly x: Length;
      readonly y: Length;
      readonly radius: Length;
      readonly at: Offset;
    };
