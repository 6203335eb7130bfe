/** The machine form of a package: `summary.json`, schema 1. Stable for other programs. */

import type { Material } from "../job/model/job.js";
import type { AskedFigures, QuestionPlace, QuestionState } from "../job/model/register.js";
import type { PieceRole } from "../template/index.js";
import type { HoleRole } from "../template/model.js";

/**
 * What a file is for. cut: a template is cut by it. drill: it is drilled by it. sheet: a drawing for people. table: figures
 * for people and programs. document: anything else that leaves with the package.
 */
export type FileRole = "cut" | "drill" | "sheet" | "table" | "document";

/** One file: path within the package with `/`, size in bytes, SHA-256 in lower-case hexadecimal. */
export interface SummaryFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  /** Only for cut files: the layers that are cut, and those that are marked. */
  readonly layers?: { readonly cut: readonly string[]; readonly mark: readonly string[] };
  /** Mark of the piece of its template that it is of: absent where that is the template itself. */
  readonly piece?: string;
}

/** One hole: centre in the base's axes, size and rod diameter, in the job's unit; no `rod` where none goes through. */
export interface SummaryHole {
  readonly tag: string;
  readonly role: HoleRole;
  readonly x: number;
  readonly y: number;
  readonly diameter?: number;
  readonly width?: number;
  readonly height?: number;
  readonly radius?: number;
  readonly rod?: number;
  readonly made: "cut" | "drill";
}

/**
 * The rods of one group of a base, which are alike: lengths in the job's unit, null where the job does not say. `quantity` is
 * that of one base, `total` that of all bases of the type. `length` is the rod's whole length as the job gives it.
 */
export interface SummaryRods {
  readonly group: string;
  readonly quantity: number;
  readonly total: number;
  /** As printed: `1-1/4`, `M30`. */
  readonly size: string;
  readonly diameter: number;
  /** Thread series: UNC, 8UN, metric coarse. */
  readonly thread: string;
  readonly grade: string | null;
  /** What is ordered beside the grade so that rods may be welded to; absent where nothing is. */
  readonly weldable?: "S1" | "weldable";
  readonly finish: string | null;
  readonly projection: number | null;
  readonly embedment: number | null;
  readonly length: number | null;
  /** Thread at the top. */
  readonly threadLength: number | null;
  readonly bottom: SummaryBottom | null;
  /** The rod as it is made; absent in packages of programs that did not say it. */
  readonly made?: SummaryMadeRod;
}

/**
 * A rod as a shop makes it; lengths in the job's unit, null where something is not known. `overall` goes from end to end, of a
 * hooked rod to the outside of its hook; `cutLength` is that of the bar. `lengthBy`: whether the job gives the length.
 */
export interface SummaryMadeRod {
  readonly kind: string | null;
  readonly overall: number | null;
  readonly cutLength: number | null;
  readonly lengthBy: "given" | "worked out" | null;
  readonly fullThread: boolean;
  readonly bottomThread: number | null;
  /** As called out: `1-1/4-7 UNC-2A`. */
  readonly threadCallout: string;
  readonly threadClass: string | null;
  readonly threading: string | null;
  /** Diameter of the bar. */
  readonly bar: number | null;
  readonly zincProcess: string | null;
  readonly endColor: string | null;
  /** Of one bar as cut, in lb or kg. */
  readonly weight: { readonly value: number; readonly unit: "lb" | "kg" } | null;
  readonly hardware: SummaryHardware;
}

/** What goes on one rod, by place; `template`: what its template takes beside the nuts of the base plate. */
export interface SummaryHardware {
  /** As it is ordered: `1-1/4 heavy hex nut, ASTM A563 A, plain`; null: no nut goes on it. */
  readonly nut: string | null;
  readonly nuts: Readonly<Record<"basePlate" | "levelling" | "template" | "lowerEnd", number>>;
  /** Round and square ones. */
  readonly washers: Readonly<Record<"basePlate" | "levelling" | "template" | "lowerEnd", number>>;
  /** Plates at the lower end. */
  readonly plates: number;
}

/**
 * What anchors a rod at its lower end. `nuts` of a plate is absent where there are two, `radius` of a hook where the job does
 * not give it.
 */
export type SummaryBottom =
  | { readonly kind: "straight" }
  | { readonly kind: "nut"; readonly washer?: SummaryEndPlate; readonly tackWelded?: true }
  | ({ readonly kind: "plate"; readonly nuts?: number; readonly tackWelded?: true } & SummaryEndPlate)
  | { readonly kind: "hook"; readonly reach: number; readonly radius?: number }
  | { readonly kind: "swedged"; readonly length: number };

/** A plate at a lower end: diameter, or side of a square. */
export interface SummaryEndPlate {
  readonly shape: "round" | "square";
  readonly size: number;
  readonly thickness: number;
}

/** One row of the ledger; value, limit and margin in `unit`, which is "" for a count or where nothing was compared. */
export interface SummaryCheck {
  readonly rule: string;
  readonly clause: string;
  readonly edition: string;
  readonly subject: string;
  readonly severity: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly sense: string | null;
  readonly margin: number | null;
  readonly unit: string;
  readonly status: string;
  readonly note: string;
  /** What the engineer of record answered. */
  readonly answer?: SummaryAnswer;
  /** Who accepts a release though the question is open. */
  readonly accepted?: SummaryAnswer;
  /** Number of the question that it is part of; absent of a row that asks nothing. */
  readonly question?: string;
}

/** Who said what, and when. */
export interface SummaryAnswer {
  readonly by: string;
  readonly date: string;
  readonly text: string;
}

/** A question to the engineer of record, as the package has it: every number that was ever given in the job. */
export interface SummaryQuestion {
  readonly number: string;
  /** Marks; empty: of the layout. */
  readonly bases: readonly string[];
  readonly rule: string;
  readonly clause: string;
  readonly edition: string;
  readonly measured: string;
  readonly subject: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly text: string;
  readonly status: QuestionState;
  /** The revision in which it was closed; "" where it is not. */
  readonly closedIn: string;
  /** The answer, or who accepted; null where nobody did, or it is closed. */
  readonly said: SummaryAnswer | null;
  readonly places: readonly QuestionPlace[];
  readonly asked: readonly AskedFigures[];
}

/** A plate that is cut or drilled: figures of one. */
export interface SummaryPlate {
  readonly mark: string;
  /** Of a template: for all the bases that it serves together. */
  readonly quantity: number;
  readonly outline: {
    readonly kind: "path" | "circle";
    readonly extent: readonly [number, number, number, number];
    readonly area: number;
    readonly perimeter: number;
  };
  /** Absent in packages that were made before it was listed, as grade and scribeLength. */
  readonly material?: Material;
  /** As written; null where the job does not say. */
  readonly grade?: string | null;
  readonly thickness: number;
  readonly netArea: number;
  readonly weight: { readonly value: number; readonly unit: "lb" | "kg" } | null;
  readonly cutLength: number;
  readonly pierces: number;
  /** Of all strokes that its cut file draws: what is scribed, and punch marks. */
  readonly scribeLength?: number;
  readonly holes: readonly SummaryHole[];
}

/** A piece of a template in axes of its own; those of the template and of its lower template are the base's. */
export interface SummaryPiece extends SummaryPlate {
  readonly role: PieceRole;
  /** From its axes into those of the base: turned counter-clockwise by degrees, then shifted; absent where they are the same, and of splice plates. */
  readonly place?: { readonly turn: number; readonly x: number; readonly y: number };
}

/** The template of a base. `pieces`: what is cut by itself, only where that is more than the template or not the template whole. */
export interface TemplateSummary extends SummaryPlate {
  /** Marks of the bases that it serves, in the order of the job: figures and quantity are those of one template for all of them. */
  readonly bases: readonly string[];
  /** Of a template that is held and serves several bases: those that hold it. */
  readonly heldBy?: readonly string[];
  /** True where the job is released and no question of a base that it serves is open; absent in packages of earlier programs. */
  readonly released?: boolean;
  readonly pieces?: readonly SummaryPiece[];
}

/** One base with its template; lengths in the job's unit, areas in that unit squared. */
export interface SummaryBase {
  readonly mark: string;
  readonly quantity: number;
  readonly held: boolean;
  /** The kind that the base cites; absent where it cites none. */
  readonly kind?: string;
  readonly template: TemplateSummary;
  /** In the order of the groups' letters. */
  readonly rods: readonly SummaryRods[];
  readonly checks: readonly SummaryCheck[];
  readonly files: readonly SummaryFile[];
}

/** An answer of the job that answers no open question; `value` in the job's unit, null where it names none. */
export interface UnusedSummaryAnswer {
  readonly kind: "answered" | "accepted";
  /** The number that it names; "" where mark and rule say it. */
  readonly question: string;
  readonly mark: string;
  readonly rule: string;
  readonly subject: string;
  readonly value: number | null;
  readonly by: string;
  readonly date: string;
  readonly text: string;
  readonly why: string;
}

/** summary.json whole; `checks` and `files` beside `bases` are those of the job itself. Lengths to 1e-6 in or 1e-5 mm. */
export interface Summary {
  readonly schema: 1;
  readonly job: {
    readonly number: string;
    readonly title: string;
    readonly revision: string;
    readonly status: string;
    readonly unit: "in" | "mm";
    readonly editions: Readonly<Record<string, string>>;
  };
  readonly bases: readonly SummaryBase[];
  readonly checks: readonly SummaryCheck[];
  /** Why setting-out files are held, a sentence each; empty when they are not. */
  readonly layoutHeld: readonly string[];
  /** Answers of the job that answer no open question, each with why, in the job's order. */
  readonly answersNotUsed: readonly UnusedSummaryAnswer[];
  /** Questions to the engineer of record by their numbers, closed ones too. */
  readonly questions: readonly SummaryQuestion[];
  readonly files: readonly SummaryFile[];
}

/** What a budget or a survey says of its job: the placing edition is the one that rods are held to. */
export interface PlacingHead {
  readonly number: string;
  readonly revision: string;
  readonly status: string;
  readonly unit: "in" | "mm";
  readonly placing: string;
}
