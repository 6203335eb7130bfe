/** The part of the npm reader `dxf` that the tests use; the package brings no types. */
declare module "dxf" {
  interface Vertex {
    readonly x: number;
    readonly y: number;
    readonly bulge?: number;
  }
  interface Entity {
    readonly type: string;
    readonly layer: string;
    readonly closed?: boolean;
    readonly vertices?: readonly Vertex[];
    readonly start?: Vertex;
    readonly end?: Vertex;
    readonly x?: number;
    readonly y?: number;
    readonly r?: number;
    /** Radians. */
    readonly startAngle?: number;
    readonly endAngle?: number;
  }
  interface Parsed {
    readonly header: {
      readonly insUnits?: number;
      readonly measurement?: number;
      readonly extMin?: Vertex;
      readonly extMax?: Vertex;
    };
    readonly tables: { readonly layers: Readonly<Record<string, unknown>> };
    readonly entities: readonly Entity[];
  }
  export function parseString(text: string): Parsed;
}
