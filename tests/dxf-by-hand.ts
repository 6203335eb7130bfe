/** DXF files written by hand, tag by tag, after the published DXF reference. */

const encoder = new TextEncoder();

export type Tag = readonly [number, string | number];

export const join = (tags: readonly Tag[]) => tags.map(([code, value]) => `${code}\n${value}\n`).join("");

export const header: readonly Tag[] = [
  ...([
    [9, "$ACADVER"],
    [1, "AC1015"],
    [9, "$INSUNITS"],
    [70, 4],
    [9, "$MEASUREMENT"],
    [70, 1],
  ] as const),
];

export const extents = (x0: number, y0: number, x1: number, y1: number): readonly Tag[] => [
  ...([
    [9, "$EXTMIN"],
    [10, x0],
    [20, y0],
    [30, 0],
    [9, "$EXTMAX"],
    [10, x1],
    [20, y1],
    [30, 0],
  ] as const),
];

export const layer = (name: string, color = 7): readonly Tag[] => [
  [0, "LAYER"],
  [2, name],
  [70, 0],
  [62, color],
  [6, "CONTINUOUS"],
];

export interface Around {
  readonly head?: readonly Tag[];
  readonly layers?: readonly (readonly Tag[])[];
  /** Tags of the BLOCKS section. */
  readonly blocks?: readonly Tag[];
}

/** A whole file in millimetres, its layers CUT and MARK, its extents 0,0 to 100,50 unless told otherwise. */
export function fileOf(
  entities: readonly (readonly Tag[])[],
  { head = [...header, ...extents(0, 0, 100, 50)], layers = [layer("CUT"), layer("MARK")], blocks = [] }: Around = {},
): string {
  return join([
    ...([
      [0, "SECTION"],
      [2, "HEADER"],
    ] as const),
    ...head,
    ...([
      [0, "ENDSEC"],
      [0, "SECTION"],
      [2, "TABLES"],
      [0, "TABLE"],
      [2, "LAYER"],
      [70, layers.length],
    ] as const),
    ...layers.flat(),
    ...([
      [0, "ENDTAB"],
      [0, "ENDSEC"],
    ] as const),
    ...(blocks.length === 0 ? [] : ([[0, "SECTION"], [2, "BLOCKS"], ...blocks, [0, "ENDSEC"]] as const)),
    ...([
      [0, "SECTION"],
      [2, "ENTITIES"],
    ] as const),
    ...entities.flat(),
    ...([
      [0, "ENDSEC"],
      [0, "EOF"],
    ] as const),
  ]);
}

export const line = (x0: number, y0: number, x1: number, y1: number, on = "CUT"): readonly Tag[] => [
  ...([
    [0, "LINE"],
    [8, on],
    [10, x0],
    [20, y0],
    [11, x1],
    [21, y1],
  ] as const),
];
export const circle = (x: number, y: number, radius: number, on = "CUT"): readonly Tag[] => [
  ...([
    [0, "CIRCLE"],
    [8, on],
    [10, x],
    [20, y],
    [40, radius],
  ] as const),
];
export const arc = (x: number, y: number, radius: number, start: number, end: number, on = "CUT"): readonly Tag[] => [
  ...([
    [0, "ARC"],
    [8, on],
    [10, x],
    [20, y],
    [40, radius],
    [50, start],
    [51, end],
  ] as const),
];
export const polyline = (
  closed: boolean,
  points: readonly (readonly [number, number, number?])[],
  on = "CUT",
): readonly Tag[] => [
  ...([
    [0, "LWPOLYLINE"],
    [8, on],
    [90, points.length],
    [70, closed ? 1 : 0],
  ] as const),
  ...points.flatMap(([x, y, bulge]): Tag[] => [
    [10, x],
    [20, y],
    ...(bulge === undefined ? [] : [[42, bulge] as const]),
  ]),
];

/** The tags as bytes. */
export const bytesOf = (text: string) => encoder.encode(text);

/** A closed rectangle of 100 by 50. */
export const box = polyline(true, [
  [0, 0],
  [100, 0],
  [100, 50],
  [0, 50],
]);
