/**
 * What every table of this stage is made of: values as printed, with edition, clause, source and how sure the source is.
 * Lengths are exact. A printed formula such as d + 1/8 is typed data (`Rule`), evaluated in the lookups, never in the data.
 */
import type { Length } from "../units/length.js";

/**
 * How a value was found. high: a clear copy, or agreed by a second source, or re-computed. medium: seen once, or read from a
 * scan. low: a trade page only. from memory: no stored source. common practice: a habit of the trade without a source.
 */
export type Confidence =
  | "high"
  | "high (conflict resolved)"
  | "high / common practice"
  | "medium-high"
  | "medium-high (OCR)"
  | "medium"
  | "medium (single source)"
  | "medium (conflict)"
  | "medium; ID from memory"
  | "low"
  | "low (column alignment uncertain)"
  | "conflict"
  | "computed"
  | "pitch high, area computed"
  | "TPI high; tabulated area from memory (formula confirms)"
  | "from memory"
  | "from memory (numbers)"
  | "common practice"
  | "not found";

/** Where a value comes from; carried by every row. */
export interface Sourced {
  readonly source: string;
  readonly confidence: Confidence;
  /** Conflicts between copies and conditions, in the project's own words; "" where there is none. */
  readonly note: string;
}

/** A table of one edition of one publication. */
export interface StandardTable<Row extends Sourced> {
  /** The edition as printed on sheets and named in job files. */
  readonly edition: string;
  readonly clause: string;
  readonly rows: readonly Row[];
}

/** One printed value that is no table of sizes. */
export interface StandardValue<Value> extends Sourced {
  readonly edition: string;
  readonly clause: string;
  readonly value: Value;
}

/** A found row with its edition and clause, or the (at most two) nearest sizes as printed, smaller first. */
export type Lookup<Row> =
  | { readonly found: true; readonly row: Row; readonly edition: string; readonly clause: string }
  | { readonly found: false; readonly nearest: readonly string[] };

/** A printed formula: `factor` x d + `add`. */
export interface Rule {
  readonly factor: number;
  readonly add: Length;
}

/** A printed formula that holds from a diameter on. */
export interface FromRule extends Sourced {
  readonly from: Length;
  readonly rule: Rule;
}

/** A printed formula that holds for every diameter greater than `beyond`. */
export interface BeyondRule extends Sourced {
  readonly beyond: Length;
  readonly rule: Rule;
  /** As printed: `1-1/4 x d`. */
  readonly printed: string;
}

/** A row that is found by its thread size. */
export interface Sized extends Sourced {
  /** As printed: `1-1/4` or `M30`. */
  readonly size: string;
  /** Nominal diameter of the rod or bolt. */
  readonly diameter: Length;
}

/** Thread series of rods: inch, inch above 1 in with 8 threads, metric. */
export type ThreadSeries = "UNC" | "8UN" | "metric coarse";

/** A thread of a size. */
export interface ThreadRow extends Sized {
  readonly series: ThreadSeries;
  /** Threads per inch (UNC, 8UN) or pitch; the other is null. */
  readonly threadsPerInch: number | null;
  readonly pitch: Length | null;
  /** Tabulated tensile stress area; null where only a computed one exists. in2 or mm2 by series. */
  readonly stressArea: number | null;
  /** Area computed by the formula of the standard, as listed beside the table. in2 or mm2 by series. */
  readonly computedStressArea: number;
}

/** Standards that nuts are tabulated for, as printed in origins. */
export type NutStandard = "ASME B18.2.2 hex" | "ASME B18.2.2 heavy hex" | "ISO 4032" | "ISO 4034";

/** A nut of a size. */
export interface NutRow extends Sized {
  /** Largest width across flats (F, s). */
  readonly acrossFlats: Length;
  readonly acrossFlatsLeast: Length | null;
  /** Largest width across corners (G). null in ISO 4032 and 4034, which tabulate the least only: geometry gives s / cos 30. */
  readonly acrossCorners: Length | null;
  readonly acrossCornersLeast: Length | null;
  /** Largest height (H, m). */
  readonly height: Length;
  readonly heightLeast: Length | null;
}

/** Standards that washers are tabulated for, as a job names them. */
export type WasherStandard =
  | "ASTM F436"
  | "ASTM F844"
  | "ASTM F844 narrow"
  | "ASTM F844 wide"
  | "ASME B18.21.1 Type B narrow"
  | "ASME B18.21.1 Type B regular"
  | "ASME B18.21.1 Type B wide"
  | "ISO 7089"
  | "ISO 7091"
  | "ISO 7093"
  | "ISO 7090 / DIN 125-B";

/** A round washer of a size. */
export interface WasherRow extends Sized {
  /** Inside diameters in circulation: one, or two where sources disagree. */
  readonly inside: readonly Length[];
  readonly outside: Length;
  readonly thickness: {
    readonly least: Length | null;
    readonly nominal: Length | null;
    readonly greatest: Length | null;
  };
}

/** A base-plate hole, of a table or of the rule printed with it. */
export interface BaseHole extends Sourced {
  readonly hole: Length;
  /** Least washer (diameter or side) and its thickness, where the table prints one. */
  readonly washer: Length | null;
  readonly washerThickness: Length | null;
  /** A second hole that the table allows under conditions. */
  readonly alternateHole: Length | null;
}

/** A tabulated base-plate hole. */
export interface BaseHoleRow extends Sized, BaseHole {}

/** Clearance holes of ISO 273. */
export interface ClearanceHoleRow extends Sized {
  readonly fine: Length;
  readonly medium: Length;
  readonly coarse: Length;
}

/** The hole of a setting template. */
export interface TemplateHoleRow extends Sourced {
  readonly hole: Length;
}

/** What a placing tolerance holds: each rod from its specified place, or the spacing of any two rods of a group. */
export interface PlacingRow extends Sourced {
  readonly limits: "position" | "spacing";
  /** Plus and minus this. */
  readonly tolerance: Length;
  readonly item: string;
}

/** Tolerance of the top of the rod, both as positive lengths. */
export interface ElevationRow extends Sourced {
  readonly low: Length;
  readonly high: Length;
  readonly item: string;
}

/** Least distance, centre of hole to edge: as a multiple of the hole, or by the rod for a standard hole. */
export type EdgeRow = Sourced & {
  readonly least: Length;
  /** As printed: `1-5/8`, `1.25 d` or `1.2 d0`. */
  readonly printed: string;
} & ({ readonly by: "hole" } | { readonly by: "rod"; readonly increment: EdgeIncrement });

/**
 * What a hole that is larger than standard adds to the edge distance: C2 of an oversized hole; beyondTable: the hole is
 * larger than oversized too. not held: the edition has no C2 for the rod.
 */
export type EdgeIncrement =
  | { readonly kind: "none" }
  | { readonly kind: "C2"; readonly value: Length; readonly clause: string; readonly beyondTable: boolean }
  | { readonly kind: "not held" };

/** Least spacing and edge distance of cast-in rods. */
export interface SpacingRow extends Sourced {
  /** Least spacing of two rods, centre to centre, as a multiple of the rod diameter. */
  readonly factor: number;
  /** Least distance from rod centre to edge as a multiple of the diameter; null: the cover governs. */
  readonly edgeFactor: number | null;
}

/** A printed row of the spacing rule. */
export interface SpacingTableRow extends SpacingRow {
  readonly torqued: boolean;
}

/** Least concrete cover, to the outside of what is embedded. */
export interface CoverRow extends Sourced {
  readonly cover: Length;
  readonly item: string;
}

/** A grade of rods. */
export interface GradeRow extends Sourced {
  /** As printed: `F1554 55` or `8.8`. */
  readonly grade: string;
  readonly specification: "ASTM F1554" | "ISO 898-1";
  readonly system: "us" | "metric";
  /** Least yield and tensile strength, in `unit`. */
  readonly yieldLeast: number;
  readonly tensileLeast: number;
  readonly tensileGreatest: number | null;
  readonly unit: "ksi" | "MPa";
  /** Colour of the end, for F1554; "" otherwise. */
  readonly colour: string;
  readonly weldable: string;
  /** Diameters that the specification covers, ends included. */
  readonly least: Length;
  readonly greatest: Length;
  readonly elongation: string;
  readonly reductionOfArea: string;
  /** Recommended nut, as listed. */
  readonly nut: string;
  /** The nut is hex up to and including this diameter, heavy hex above; zero: heavy hex always. */
  readonly hexUpTo: Length;
  /** True where a galvanized rod takes a heavy hex nut whatever its diameter. */
  readonly heavyHexWhenGalvanized: boolean;
}

/** ISO 9013 limit deviation: plus or minus, on the dimension. */
export interface DeviationRow extends Sourced {
  readonly class: 1 | 2;
  readonly thickness: Bounds;
  readonly nominal: Bounds;
  readonly plusMinus: Length;
}

/** A printed range. null is unbounded; each bound is included or not, exactly as printed. */
export interface Bounds {
  readonly printed: string;
  readonly from: Length | null;
  readonly fromIncluded: boolean;
  readonly to: Length | null;
  readonly toIncluded: boolean;
}

/** ISO 9013 perpendicularity tolerance u = base + perThickness x a, a being the thickness. */
export interface PerpendicularityRow extends Sourced {
  readonly range: 1 | 2 | 3 | 4 | 5;
  readonly base: Length;
  readonly perThickness: number;
}

/** ACI 318-19 Table 20.5.1.3.1: against ground; exposed to weather or ground; not exposed. */
export type Exposure = "against ground" | "exposed" | "not exposed";

/** An I or H section: in plan its depth lies across the flanges. */
export interface FlangedRow extends Sourced {
  readonly name: string;
  readonly depth: Length;
  readonly width: Length;
  readonly flange: Length;
  readonly web: Length;
}

/** A pipe by its nominal size. */
export interface PipeRow extends Sourced {
  readonly name: string;
  readonly outside: Length;
}
