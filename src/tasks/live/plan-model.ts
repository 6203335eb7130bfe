/** The layout as a page shows it: the anchor-rod plan drawn in a room, what on it can be edited, and what is written. */
import type { Room, ScreenLayout, Zoom } from "../../sheets/plan/on-screen.js";
import type { BaseState } from "./model.js";

/** A base where it stands, or a base that stands nowhere yet. */
export interface LivePlacement {
  /** Of the base in the job, as `bases[2]`. */
  readonly path: string;
  readonly mark: string;
  readonly state: BaseState;
  /** `B1 A-1`, and what is said of it: `turned 90\u00b0, T.O.C. 99'-6"`. */
  readonly name: string;
  readonly words: string;
}

/** The layout. */
export interface LivePlan {
  /** null: the job has no grid. */
  readonly drawing: ScreenLayout | null;
  /** As the drawing has its places, in the same order. */
  readonly placements: readonly LivePlacement[];
  /** Bases without a place; `missing`: how many of its quantity. */
  readonly unplaced: readonly { readonly path: string; readonly mark: string; readonly missing: number }[];
  /** Why the layout is held, one sentence each. */
  readonly held: readonly string[];
  /** Texts of grid, placements, control, site and settingOut as written, by key path. */
  readonly written: Readonly<Record<string, string>>;
}

/** Files of points to set out, as the package has them; a held one is not made, and its reasons are told. */
export interface LivePoints {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  readonly held: readonly string[];
}

export type { Room, ScreenLayout, Zoom };
