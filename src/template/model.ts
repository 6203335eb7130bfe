/** A setting template as a thing to be cut: region, thickness, holes, marks. Values only; formats write it, checks judge it. */
import type { Stretch } from "../geometry/index.js";
import type { Contour, Extent, Path, Point, Region } from "../geometry/vocabulary.js";
import type { Given, Material, SpliceBolt } from "../job/model/job.js";
import type { WrongPlacement } from "../orientation/model.js";
import type { Length } from "../units/length.js";

/** What a hole is for. */
export type HoleRole = "rod" | "opening" | "nail" | "grout" | "bolt";

/** A round hole or a rectangular opening with rounded corners, centred on `center`. */
export type HoleShape =
  | { readonly kind: "circle"; readonly diameter: Length }
  | { readonly kind: "rectangle"; readonly width: Length; readonly height: Length; readonly radius: Length };

/** A hole of a plate. */
export interface Hole {
  /** A1 for rods; OP1, NH1, GH1, BH1 for opening, nail, grout and bolt holes. */
  readonly tag: string;
  readonly role: HoleRole;
  readonly center: Point;
  readonly shape: HoleShape;
  /** Size as printed and diameter of the rod, for a rod hole. */
  readonly rod: { readonly size: string; readonly diameter: Length } | null;
  /** cut: a closed contour in the cut file. drill: too small to cut, so a centre-punch mark, size and note. */
  readonly made: "cut" | "drill";
  /** The contour in plate axes, whatever way it is made. */
  readonly contour: Contour;
}

/** What a mark shows. */
export type MarkKind = "centre-line" | "axis" | "top" | "mark" | "tag" | "size" | "punch" | "north" | "grid" | "joint";

/** One mark: single strokes (polylines of points), each drawn once. `text` is what it says, "" for lines. */
export interface Mark {
  readonly kind: MarkKind;
  readonly text: string;
  readonly strokes: readonly (readonly Point[])[];
  /** Box around the strokes. */
  readonly extent: Extent;
  /** Height of its letters; zero for lines. */
  readonly textHeight: Length;
}

/** A mark that was left out: becomes a `marks-room` row. */
export interface OmittedMark {
  readonly kind: MarkKind;
  readonly text: string;
  /** No room on the plate; letters that the scribed font does not have; an axis that does not meet the plate. */
  readonly cause: "room" | "font" | "off plate";
}

/**
 * What was cut off an outline so that a template that lies wrong shows it. `corner`: cut or notched with legs `x`, `y` along the
 * two edges. `edge`: a notch of one upright and one slanting flank, `x` along the edge, `y` deep, its upright flank at `at`.
 */
export interface Keyed {
  readonly kind: "corner cut" | "corner notch" | "edge notch";
  /** The corner as it was, or where the notch's upright flank meets the edge. */
  readonly at: Point;
  readonly x: Length;
  readonly y: Length;
  /** The outline without the key. */
  readonly bare: Contour;
}

/** A template that can be cut or drilled. */
export interface Plate {
  readonly mark: string;
  readonly revision: string;
  readonly quantity: number;
  readonly material: Material;
  /** As written; null where it is not given. */
  readonly grade: string | null;
  readonly thickness: Length;
  /** `circle` also for a ring. */
  readonly outlineKind: "path" | "circle";
  /** Outer contour and every *cut* hole, in drawing order: openings, then the others by tag. Base axes. */
  readonly region: Region;
  readonly holes: readonly Hole[];
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
  /** The key that was added to the outline; null where none is. */
  readonly keyed: Keyed | null;
  /** Every wrong way round, and what it does to the rods, held against this outline. */
  readonly wrong: readonly WrongPlacement[];
  /** What was sized automatically and by which rule, for the sheet and the ledger. */
  readonly sized: readonly { readonly what: SizedPart; readonly how: string }[];
  /** The segments that it is cut as, bolted together; null where it is one piece. Its own holes have no bolts among them. */
  readonly parted: Parted | null;
  /** The smaller plate at the rods' lower ends; null where there is none. */
  readonly lower: Plate | null;
}

/** A plate in segments, with the splice plates that lie over their joints on the top face. */
export interface Parted {
  /** By their numbers, from 1. */
  readonly joints: readonly Joint[];
  readonly segments: readonly PlacedPart[];
  /** One of each kind; `quantity` of its plate: of all templates together. */
  readonly splices: readonly Plate[];
  /** Pieces that the joints leave beside the segments: none, unless the outline is cut badly. */
  readonly loose: number;
  readonly bolt: Given<SpliceBolt>;
  /** How joints and splice plates were found, in words. */
  readonly how: string;
}

/** A segment, in axes of its own. */
export interface PlacedPart {
  readonly plate: Plate;
  /** From its own axes into the base's: turned counter-clockwise by degrees, then shifted by millimetres. */
  readonly turn: number;
  readonly shift: Point;
}

/** A joint between two segments, from its start to its end across the plate. Base axes, millimetres. */
export interface Joint {
  readonly number: number;
  readonly from: Point;
  readonly to: Point;
  /** Its stretches of material, each under a splice plate. */
  readonly stretches: readonly Stretch[];
  /** Direction counter-clockwise from +x of a joint along a radius; null for one across the plate. */
  readonly degrees: number | null;
  /** Marks of the segments at its right and at its left, seen along it. */
  readonly between: readonly [string, string];
  readonly splices: readonly PlacedSplice[];
}

/** A splice plate where it lies. Base axes. */
export interface PlacedSplice {
  readonly mark: string;
  readonly outline: Path;
  readonly bolts: readonly Point[];
}

/** Parts of a plate that the program sizes where the job does not. */
export type SizedPart = "outline" | "opening";

/** True where the program sized this part of the plate, by the limits of the rules about it. */
export function isSized({ sized }: Pick<Plate, "sized">, part: SizedPart): boolean {
  return sized.some(({ what }) => what === part);
}

/** Figures of a plate, counting closed cut contours, outline included, never scribed or drill marks. Millimetres, mm2. */
export interface PlateMeasures {
  readonly extent: Extent;
  readonly outlineArea: number;
  readonly outlinePerimeter: number;
  readonly netArea: number;
  readonly cutLength: number;
  readonly pierces: number;
}
