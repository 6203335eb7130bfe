/**
 * A sheet as a retained scene: strokes, fills, texts and groups, each with a role and never a colour or a line weight.
 * Exporters map roles to what their medium has. Paper millimetres, origin at the lower left of the sheet, y up.
 */

/** What a stroke is for. The exporter gives each its ISO 128 weight and pattern. */
export type StrokeRole =
  | "outline"
  | "hole"
  | "concrete"
  | "base-plate"
  | "centre"
  | "dimension"
  | "extension"
  | "leader"
  | "scribe"
  | "scribe-fine"
  | "frame"
  | "table"
  | "table-heavy"
  | "held"
  | "fine";

/** What a fill means; its colour is the writer's. */
export type FillRole = "arrow" | "bar" | "held";

/** `reversed` stands on a filled ground and is the colour of the paper. */
export type TextRole = "dimension" | "note" | "heading" | "title" | "table" | "tag" | "label" | "held" | "reversed";

/** Paper millimetres, y up. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** Path commands in paper millimetres: lines, circular arcs by bulge (as in geometry), full circles. */
export type PathPart =
  | { readonly kind: "line"; readonly from: PaperPoint; readonly to: PaperPoint }
  | { readonly kind: "arc"; readonly from: PaperPoint; readonly to: PaperPoint; readonly bulge: number }
  | { readonly kind: "circle"; readonly center: PaperPoint; readonly radius: number };

/** A piece of a drawing: strokes, fills, texts, and groups of them. */
export type SceneItem =
  | { readonly kind: "stroke"; readonly role: StrokeRole; readonly parts: readonly PathPart[] }
  | { readonly kind: "fill"; readonly role: FillRole; readonly points: readonly PaperPoint[] }
  | {
      readonly kind: "text";
      readonly role: TextRole;
      readonly text: string;
      /** Anchor on the baseline. */
      readonly at: PaperPoint;
      readonly anchor: "start" | "middle" | "end";
      /** Letter (cap) height in paper millimetres. */
      readonly height: number;
      /** Degrees counter-clockwise. */
      readonly turn: number;
      readonly bold: boolean;
    }
  | SceneGroup;

/**
 * `data` carries what a group means, for tests and other programs. A group named `dimension` has `valueNm` (what its text
 * says, in nanometres) and, in paper millimetres, its end points `x0 y0 x1 y1` measured along the dimension line; the group
 * named `plan` has `scale`, paper over real. A group with `lattice` has nothing but the fills of its bars.
 */
export interface SceneGroup {
  readonly kind: "group";
  readonly name: string;
  readonly data: Readonly<Record<string, string | number>>;
  readonly items: readonly SceneItem[];
  readonly lattice?: Lattice;
}

/** Filled bars that lie whole steps of so many millimetres right of `x` and below `top`. */
export interface Lattice {
  readonly step: number;
  readonly x: number;
  readonly top: number;
  readonly bars: readonly Bar[];
}

/** In steps, from the upper left up to the lower right. */
export interface Bar {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A drawn sheet in paper millimetres, y up, origin at the lower left. */
export interface Scene {
  /** Sheet size name, as `ANSI-style B` or `A3`: the printed name of the standard size. */
  readonly size: string;
  readonly width: number;
  readonly height: number;
  /** Document title: for a screen reader and the window's title. */
  readonly title: string;
  readonly description: string;
  /** For a list of sheets: what is on it, and the scale of its plan; "" where it has none, or several. */
  readonly listing?: { readonly about: string; readonly scale: string };
  readonly items: readonly SceneItem[];
}
