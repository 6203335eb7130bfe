/** A job of a few bases whose templates look alike, and files of its plates drawn by hand with a fault in each. Inches. */
import type { Contour, Point } from "../src/geometry/vocabulary.js";
import { againstJob, type KnownPlate, proveFile, type TargetHole } from "../src/proof/index.js";
import { inches } from "../src/units/length.js";
import type { Tag } from "./dxf-by-hand.js";
import { bytesOf, circle, fileOf, layer, polyline } from "./dxf-by-hand.js";
import { baseFixture, groupFixture, jobFixture, withRods } from "./fixture.js";

const rectangle = (x: number, y: number) =>
  ({ kind: "rectangle", x: inches(x), y: inches(y), nx: 2, ny: 2, perimeter: false }) as const;
const points = (...at: readonly (readonly [number, number])[]) =>
  ({ kind: "points", at: at.map(([x, y]) => ({ x: inches(x), y: inches(y) })) }) as const;

const base = (mark: string, template: string, pattern: ReturnType<typeof rectangle> | ReturnType<typeof points>) => {
  const whole = baseFixture();
  return baseFixture({ mark, groups: [groupFixture({ pattern })], template: { ...whole.template, mark: template } });
};

/** T1 at 12 x 10, T2 at 12-1/2 x 10, T4 with one rod an inch in: no turn or mirror maps it onto itself. Plates 26 x 18. */
export const job = jobFixture({
  bases: [
    base("B1", "T1", rectangle(12, 10)),
    base("B2", "T2", rectangle(12.5, 10)),
    base("B4", "T4", points([-6, 5], [6, 5], [6, -5], [-5, -5])),
  ],
});

export const against = againstJob(withRods(job));

export function targetOf(mark: string): KnownPlate {
  const found = against.targets.find((target) => target.mark === mark);
  if (found === undefined) throw new Error(`no plate ${mark}`);
  return found;
}

export interface Drawn {
  readonly holes: readonly TargetHole[];
  readonly outline: Contour | null;
}

export interface Drawing {
  /** From the plate's millimetres to the file's. */
  readonly move?: (point: Point) => Point;
  /** The file's own header tags; inches without extents unless told. */
  readonly head?: readonly Tag[];
  /** Millimetres to a unit of the file. */
  readonly mm?: number;
  readonly mirrored?: boolean;
}

export const INCH_HEAD: readonly Tag[] = [
  [9, "$ACADVER"],
  [1, "AC1015"],
  [9, "$INSUNITS"],
  [70, 1],
  [9, "$MEASUREMENT"],
  [70, 0],
];

/** A file with one circle a hole and the outline as a closed polyline, on the layers of the fixture's shop. */
export function draw({ holes, outline }: Drawn, drawing: Drawing = {}): Uint8Array {
  const { move = (point) => point, head = INCH_HEAD, mm = 25.4, mirrored = false } = drawing;
  const place = (point: Point) => {
    const { x, y } = move(point);
    return [round(x / mm), round(y / mm)] as const;
  };
  const circles = holes.map(({ at, diameter }) => circle(...place(at), round(diameter / 2 / mm), "HOLES"));
  return bytesOf(
    fileOf([...circles, outlineTags(outline, place, mirrored)], { head, layers: [layer("HOLES"), layer("OUTLINE")] }),
  );
}

function outlineTags(
  outline: Contour | null,
  place: (point: Point) => readonly [number, number],
  mirrored: boolean,
): readonly Tag[] {
  if (outline === null || outline.kind === "circle") throw new Error("drawn by paths alone");
  const vertices = outline.segments.map(({ from, bulge }) => [...place(from), mirrored ? -bulge : bulge] as const);
  return polyline(true, vertices, "OUTLINE");
}

function round(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

export const prove = (bytes: Uint8Array, name: string) => proveFile(bytes, name, against);

/** Codes of a severity, each once. */
export const codesOf = ({ findings }: ReturnType<typeof prove>, severity: "stop" | "advise") => [
  ...new Set(findings.filter((finding) => finding.severity === severity).map(({ code }) => code)),
];
