/** A view that stands beside the plan of a template, of a size that the layout chooses. */
import type { Area } from "./paper.js";
import type { SceneItem } from "./scene.js";

/** Paper millimetres, without the view's own title. */
export interface ViewSize {
  readonly width: number;
  readonly height: number;
}

/** One view beside the plan. */
export interface SideView {
  /** Name of its group in the scene. */
  readonly name: "marks-view" | "setting-section";
  /** Lettered under it, and in a second line its scale. */
  readonly title: string;
  readonly under: (size: ViewSize) => string;
  /** Paper on which it can stand, the best first; on the last one everything still reads. */
  readonly sizes: readonly ViewSize[];
  /** Draws it centred in an area that is not less than this one of its sizes; clear of itself, nothing outside the area. */
  readonly draw: (area: Area, size: ViewSize) => readonly SceneItem[];
}
