/** The entities that a cut file is made of. Coordinates in the file's unit, y up. */

/** A corner of a polyline or an end of a line. */
export interface DxfVertex {
  readonly x: number;
  readonly y: number;
  /** tan(sweep / 4) of the segment that leaves the vertex, counter-clockwise positive. */
  readonly bulge: number;
}

/** A line, arc, circle or polyline of the model space, on its layer. */
export type DxfEntity =
  | { readonly kind: "line"; readonly layer: string; readonly from: DxfVertex; readonly to: DxfVertex }
  | {
      /** Runs counter-clockwise from `start` to `end`, degrees from +x. */
      readonly kind: "arc";
      readonly layer: string;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly start: number;
      readonly end: number;
    }
  | { readonly kind: "circle"; readonly layer: string; readonly x: number; readonly y: number; readonly radius: number }
  | {
      readonly kind: "polyline";
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly DxfVertex[];
    };
