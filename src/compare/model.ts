/** Two states of a job, and what lies between them. Lengths in whole nanometres, in the base's own axes. */

import type { Summary, SummaryBase, SummaryRods } from "../summary/model.js";
import type { PieceRole } from "../template/index.js";
import type { HoleRole } from "../template/model.js";

/** A place in nanometres. */
export interface HolePlace {
  readonly x: number;
  readonly y: number;
}

/** A hole's size: of a round hole, or of a rectangular opening. */
export type HoleSize =
  | { readonly kind: "circle"; readonly diameter: number }
  | { readonly kind: "rectangle"; readonly width: number; readonly height: number; readonly radius: number };

/** One hole of a template: centre and size in nanometres; `rod` is the diameter of its rod, null where it has none. */
export interface HoleState {
  readonly tag: string;
  readonly role: HoleRole;
  readonly at: HolePlace;
  readonly size: HoleSize;
  readonly rod: number | null;
  readonly made: "cut" | "drill";
}

/** The outline as it is cut. `bulge` belongs to the side that starts at the corner; corners run counter-clockwise. */
export type OutlineShape =
  | { readonly kind: "circle"; readonly center: HolePlace; readonly diameter: number }
  | { readonly kind: "path"; readonly corners: readonly (HolePlace & { readonly bulge: number })[] };

/** What a cut file draws. */
export interface CutShape {
  readonly outline: OutlineShape;
  /** Strokes of the marks, in the file's order; each a chain of places. */
  readonly marks: readonly (readonly HolePlace[])[];
}

/** What the template is made of. */
export type Material = "steel" | "plywood";

/** One template, or one piece of it, as it stands in a job or package. */
export interface TemplateState {
  /** Mark of the base, the first that it serves; how many columns stand on all of them; mark and quantity of the template. */
  readonly base: string;
  readonly bases: number;
  /** What piece of a template it is. */
  readonly role: PieceRole;
  /** Marks of all bases that it serves, in the order of the job. */
  readonly serves: readonly string[];
  readonly mark: string;
  readonly quantity: number;
  readonly held: boolean;
  /** A cut file or drill list was handed out: the template may be cut already. */
  readonly delivered: boolean;
  readonly thickness: number;
  /** null: no file tells. */
  readonly material: Material | null;
  /** As written; null: not given. */
  readonly grade: string | null;
  readonly outline: {
    readonly kind: "path" | "circle";
    readonly extent: readonly [number, number, number, number];
    /** Square nanometres, and nanometres. */
    readonly area: number;
    readonly perimeter: number;
  };
  readonly holes: readonly HoleState[];
  /** Hash by kind of the files that it is cut or drilled by, whether they were handed out or not. */
  readonly hashes: ReadonlyMap<string, string>;
  /** null: there is no cut file, as for plywood. */
  readonly shape: CutShape | null;
}

/** One side of a comparison. */
export interface Side {
  /** As the user named it. */
  readonly name: string;
  readonly source: "job" | "package";
  readonly job: Summary["job"];
  readonly templates: readonly TemplateState[];
  /** null: a package that was made before its summary listed rods. */
  readonly rods: readonly RodState[] | null;
}

/** What a template state is made from: a base of the summary, without its checks. */
export type SummaryTemplate = Omit<SummaryBase, "checks" | "rods">;

/** The rods of one group of one base as they stand in a job or package, lengths in nanometres. null: the job does not say. */
export interface RodState extends Omit<SummaryRods, "quantity" | "made"> {
  /** Mark of the base. */
  readonly base: string;
  /** As it is made; null: a package that was made before its summary said so. */
  readonly made: MadeState | null;
}

/** What of a made rod is compared, lengths in nanometres; null: not known. */
export interface MadeState {
  readonly cutLength: number | null;
  readonly bottomThread: number | null;
  readonly threadClass: string | null;
  readonly threading: string | null;
  readonly zincProcess: string | null;
  /** How many nuts and washers go where above the lower end: `1 hex nut on base plate, 0 levelling; 1 washer ...`. */
  readonly hardware: string;
}

/** What anchors a rod at its lower end, in nanometres. */
export type BottomState = NonNullable<SummaryRods["bottom"]>;

/** One difference between two states of a group's rods. */
export type RodChange =
  | { readonly what: RodLength; readonly from: number | null; readonly to: number | null }
  | { readonly what: RodWord; readonly from: string | null; readonly to: string | null }
  | { readonly what: MadeLength; readonly from: number | null; readonly to: number | null }
  | { readonly what: MadeWord; readonly from: string | null; readonly to: string | null }
  | { readonly what: "bottom"; readonly from: BottomState | null; readonly to: BottomState | null }
  | { readonly what: "quantity"; readonly from: number; readonly to: number };

/** Lengths of a rod, in nanometres. */
export type RodLength = "diameter" | "projection" | "embedment" | "length" | "threadLength";

/** What is said of a rod in words. */
export type RodWord = "thread" | "grade" | "finish";

/** Lengths of a rod as it is made, compared where both sides say how it is made; the cut length where nothing else differs. */
export type MadeLength = "cutLength" | "bottomThread";

/** What is said in words of a rod as it is made; threading is compared where nothing else differs. */
export type MadeWord = "threadClass" | "threading" | "zincProcess" | "hardware";

/**
 * remade: another rod in NEW; those that are made are scrap unless they serve elsewhere. look: a value is given on one side only,
 * so that it is not known whether the rods made are those, or other nuts and washers go on them. set otherwise: the same rod at another height. gone: in OLD only. new:
 * in NEW only. quantity: the same rods, more or fewer.
 */
export type RodVerdict = "remade" | "look" | "gone" | "set otherwise" | "new" | "quantity" | "unchanged";

/** Worst first. */
export const ROD_VERDICTS: readonly RodVerdict[] = [
  "remade",
  "look",
  "gone",
  "set otherwise",
  "new",
  "quantity",
  "unchanged",
];

/** The rods of one group in OLD, NEW or both, with their differences and what they come to. */
export interface RodComparison {
  readonly verdict: RodVerdict;
  readonly old: RodState | null;
  readonly new: RodState | null;
  readonly changes: readonly RodChange[];
}

/** Which hole a difference is about. */
export interface HoleRef {
  readonly role: HoleRole;
  /** Tag in NEW, and in OLD: tags may be renumbered, so the movement is that of the hole. */
  readonly tag: string;
  readonly oldTag: string;
}

/** One difference. Those of `RECUT` kinds cannot be had from the plate that is cut already. */
export type Change =
  | (HoleRef & {
      readonly what: "hole-moved";
      readonly from: HolePlace;
      readonly to: HolePlace;
      readonly distance: number;
    })
  | (HoleRef & { readonly what: "hole-size"; readonly from: HoleSize; readonly to: HoleSize })
  | (HoleRef & { readonly what: "hole-role"; readonly from: HoleRole; readonly to: HoleRole })
  | (HoleRef & { readonly what: "hole-made"; readonly from: "cut" | "drill"; readonly to: "cut" | "drill" })
  | (HoleRef & { readonly what: "rod-size"; readonly from: number | null; readonly to: number | null })
  | (HoleRef & { readonly what: "tag" })
  | {
      readonly what: "hole-added";
      readonly role: HoleRole;
      readonly tag: string;
      readonly at: HolePlace;
      readonly size: HoleSize;
    }
  | {
      readonly what: "hole-gone";
      readonly role: HoleRole;
      readonly tag: string;
      readonly at: HolePlace;
      readonly size: HoleSize;
    }
  | { readonly what: "outline"; readonly from: TemplateState["outline"]; readonly to: TemplateState["outline"] }
  | { readonly what: "thickness"; readonly from: number; readonly to: number }
  | { readonly what: "material"; readonly from: Material; readonly to: Material }
  /** Both name a grade, and not the same. */
  | { readonly what: "grade"; readonly from: string; readonly to: string }
  /** One names a grade, the other none. */
  | { readonly what: "grade-said"; readonly from: string | null; readonly to: string | null }
  | { readonly what: "working-point"; readonly dx: number; readonly dy: number }
  | { readonly what: "marks" }
  /** `drawn`: both files draw outline and marks. A drill list does not: its outline is told by size, area and perimeter. */
  | { readonly what: "file"; readonly drawn: boolean }
  | { readonly what: "held"; readonly from: boolean; readonly to: boolean }
  | { readonly what: "quantity"; readonly from: number; readonly to: number }
  | { readonly what: "bases"; readonly from: number; readonly to: number }
  | { readonly what: "template-mark"; readonly from: string; readonly to: string }
  | { readonly what: "base-mark"; readonly from: string; readonly to: string }
  /** Templates of OLD, by their marks, that are one in NEW; `bases` are those that it serves now. */
  | { readonly what: "merged"; readonly from: readonly string[]; readonly bases: readonly string[] }
  /** The template of OLD that served these bases and others. */
  | { readonly what: "split"; readonly from: string; readonly bases: readonly string[] }
  | { readonly what: "serves"; readonly from: readonly string[]; readonly to: readonly string[] };

/** The kinds of difference between two states of a template. */
export type ChangeKind = Change["what"];

/** The kinds of change that make another plate. A mark, a revision letter or a tag alone does not. */
export const RECUT_KINDS: ReadonlySet<ChangeKind> = new Set<ChangeKind>([
  "hole-moved",
  "hole-size",
  "hole-added",
  "hole-gone",
  "outline",
  "thickness",
  "material",
  "grade",
]);

/**
 * recut: handed out in OLD, and another plate in NEW. held: NEW holds it, and has nothing to cut by. gone: in OLD only.
 * to cut: OLD handed out nothing, NEW does. new: in NEW only. marks only: the same plate, scribed otherwise. file only: the
 * same plate and marks, written otherwise (unit, layers, origin). unchanged: the same bytes to cut or drill by.
 */
export type VerdictKind = "recut" | "held" | "gone" | "to cut" | "new" | "marks only" | "file only" | "unchanged";

/** Worst first. */
export const VERDICTS: readonly VerdictKind[] = [
  "recut",
  "held",
  "gone",
  "to cut",
  "new",
  "marks only",
  "file only",
  "unchanged",
];

/** One template of OLD, NEW or both, with its differences and what they come to. */
export interface TemplateComparison {
  readonly verdict: VerdictKind;
  /** null in one of them: the template is new or gone. */
  readonly old: TemplateState | null;
  readonly new: TemplateState | null;
  readonly changes: readonly Change[];
}

/** Both sides without their templates, and every template of either. */
export interface Comparison {
  readonly old: Omit<Side, "templates" | "rods">;
  readonly new: Omit<Side, "templates" | "rods">;
  /** Worst first, then in NEW's order, then OLD's. */
  readonly templates: readonly TemplateComparison[];
  /** In the same order; null where a side does not list its rods. */
  readonly rods: readonly RodComparison[] | null;
}
