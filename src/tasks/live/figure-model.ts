/** The figures of a drawing and the keys of the job behind them. Plain data: from the engine's thread to the page. */

/**
 * How what is typed becomes texts of the job. text: it is the key's own. moves: a length between two features; each key is
 * `plus` nanometres and `times / over` of it. whole: the program chose the value, and typing writes the whole group `root` with
 * these texts by their keys, the typed one in its place.
 */
export type Takes =
  | { readonly kind: "text" }
  | { readonly kind: "moves"; readonly moves: readonly Move[] }
  | { readonly kind: "whole"; readonly root: string; readonly texts: Readonly<Record<string, string>> };

/** One key that a typed length moves. */
export interface Move {
  readonly key: string;
  /** Nanometres. */
  readonly plus: number;
  readonly times: number;
  readonly over: number;
}

/** One field behind a figure. */
export interface FigureKey {
  /** Key path within the base, as `pattern.x` or `groups[1].hole`. */
  readonly key: string;
  /** What it is, in a few words. */
  readonly label: string;
  readonly takes: Takes;
  /** The value as drawn, for a key that is not written, and for a length between features. */
  readonly shown: string;
  /** What typing here does, or who gives the value, where that is not plain; "". */
  readonly note: string;
  /** An empty text takes the key out, and the rules give it again. */
  readonly clears: boolean;
}

/** A box on the paper of the drawing, millimetres, y up. */
export interface PaperBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A figure of the drawing. */
export interface LiveFigure {
  readonly id: string;
  /** What it measures. */
  readonly name: string;
  /** What is drawn. */
  readonly words: string;
  /** Of its words on the paper; null: it found no room there. */
  readonly box: PaperBox | null;
  readonly keys: readonly FigureKey[];
  /** What it follows from; "" of a figure that the job gives itself. */
  readonly follows: string;
}

/** Whose outline: of the template, and of what stands around it. */
export type Edge = "template" | "base plate" | "concrete";

/** An outline, which is clicked on its lines: ends of these on paper, millimetres, y up. */
export interface LiveOutline extends Omit<LiveFigure, "box"> {
  readonly name: Edge;
  readonly lines: readonly (readonly [x0: number, y0: number, x1: number, y1: number])[];
}

/** A hole of the drawing. */
export interface LiveHole {
  readonly tag: string;
  /** Tag, what it is, size, place and its worst row, in a sentence. */
  readonly words: string;
  /** Its own box on the paper. */
  readonly box: PaperBox;
  readonly isRound: boolean;
  readonly keys: readonly FigureKey[];
}

/** Everything on a drawing that can be reached. */
export interface LiveFigures {
  readonly figures: readonly LiveFigure[];
  readonly outlines: readonly LiveOutline[];
  readonly holes: readonly LiveHole[];
  /** Names that stand alone on the drawing: of axes, joints, the working point. */
  readonly names: readonly { readonly words: string; readonly box: PaperBox }[];
}
