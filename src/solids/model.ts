/** Bodies bounded by triangles: what programs of three dimensions read. Values only; formats write them. */

/** x, y in the axes of the base, z up from the underside of the template; millimetres. */
export type Corner = readonly [x: number, y: number, z: number];

/** Places of its corners in the list, counter-clockwise as seen from outside. */
export type Triangle = readonly [number, number, number];

/** One closed shell: each edge belongs to two triangles, which run along it in opposite senses. */
export interface Solid {
  readonly name: string;
  readonly corners: readonly Corner[];
  readonly triangles: readonly Triangle[];
}

/** Corners of a closed line in order, the first not repeated; what it bounds lies at the left. */
export type Ring = readonly { readonly x: number; readonly y: number }[];
