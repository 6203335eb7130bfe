/** What is kept of every base when its files are made, for lists of the whole job: plain, and small beside its plate. */
import type { CheckedBase } from "../checks/checked.js";
import { columnContour, planContour } from "../checks/geometry/measure.js";
import { isReleased } from "../checks/release.js";
import { isAsking } from "../checks/run.js";
import type { Contour, Point } from "../geometry/index.js";
import type { MarkingShop, Material } from "../job/model/job.js";
import { servedMarks } from "../job/model/shared.js";
import { type PieceRole, scribedLength, type TemplatePiece, type Weight } from "../template/index.js";
import type { HoleRole, Plate } from "../template/model.js";
import { groupBy } from "../units/group-by.js";
import type { Length } from "../units/length.js";
import { toMillimetres } from "../units/length.js";
import type { CutCertificate } from "./certificate.js";
import type { SummaryFile } from "./model.js";

/** A piece of a template as lists have it. Millimetres and square millimetres; weight of one, in the job's unit. */
export interface PieceFacts {
  readonly role: PieceRole;
  readonly mark: string;
  /** How many are made, for all templates of the mark together. */
  readonly quantity: number;
  readonly material: Material;
  /** As written; null where it is not given. */
  readonly grade: string | null;
  readonly thickness: Length;
  /** Size of the box around it. */
  readonly width: number;
  readonly height: number;
  readonly outlineArea: number;
  readonly netArea: number;
  readonly cutLength: number;
  /** Of all strokes that its cut file draws: what is scribed, and punch marks. */
  readonly scribeLength: number;
  readonly pierces: number;
  /** Cut or drilled, by what they are for. */
  readonly holes: Readonly<Record<HoleRole, number>>;
  /** Of those the drilled ones: how many of each diameter, the smallest first. */
  readonly drilled: readonly { readonly diameter: Length; readonly count: number }[];
  readonly weight: Weight | null;
  /** Of plywood, which is drilled by a print of it; null of steel, whose plates are not kept. */
  readonly board: BoardFacts | null;
  /** What it is cut or drilled by; none where it is held and not asked for all the same. */
  readonly files: readonly SummaryFile[];
}

/** A plate as it is printed at full size. */
export type BoardFacts = Pick<
  Plate,
  "mark" | "revision" | "quantity" | "material" | "grade" | "thickness" | "region" | "holes" | "marks"
>;

/** A base in plan, in its own axes, millimetres. */
export interface BaseFigure {
  readonly rods: readonly FigureRod[];
  /** null: the job does not say. */
  readonly basePlate: Contour | null;
  readonly concrete: Contour | null;
  readonly column: Contour | null;
}

/** A rod in plan: its diameter, and that of its hole in the base plate, null where the job does not say. */
export interface FigureRod {
  readonly tag: string;
  readonly group: string;
  readonly center: Point;
  readonly diameter: number;
  readonly hole: number | null;
}

/** A base as lists have it. */
export interface BaseFacts {
  readonly mark: string;
  readonly quantity: number;
  readonly held: boolean;
  /** True where the job is released and no question of a base that its template serves is open. */
  readonly released: boolean;
  readonly template: { readonly mark: string; readonly quantity: number; readonly bases: readonly string[] };
  /** The same for every base that one template serves: a list of pieces takes those of a template once. */
  readonly pieces: readonly PieceFacts[];
  /** Its plan in a few lines, for the letter; null of a base that asks nothing. */
  readonly figure: BaseFigure | null;
  /** Files of the base and its template. */
  readonly files: readonly SummaryFile[];
  /** Of its cut files; the same for every base that one template serves. */
  readonly certificates: readonly CutCertificate[];
}

/** Of a base whose files are made; `filesOf`: those that a piece is cut or drilled by. */
export function factsOf(
  checked: CheckedBase,
  { files, certificates }: Pick<BaseFacts, "files" | "certificates">,
  filesOf: (piece: TemplatePiece) => readonly SummaryFile[],
): BaseFacts {
  const { job, base, plate, held, open, pieces, rows } = checked;
  return {
    mark: base.mark,
    quantity: base.quantity,
    held: held.length > 0,
    template: { mark: plate.mark, quantity: plate.quantity, bases: servedMarks(base) },
    pieces: pieces.map((piece) => pieceFacts(piece, job.shop.marking.how, filesOf(piece))),
    figure: rows.some(isAsking) ? figureOf(checked) : null,
    released: isReleased(job, open),
    files,
    certificates,
  };
}

function figureOf({ base, rods }: CheckedBase): BaseFigure {
  const { basePlate, concrete, column } = base;
  return {
    rods: rods.map(({ tag, group, center }) => ({
      ...{ tag, group: group.letter, center, diameter: toMillimetres(group.rod.diameter) },
      hole: group.baseHole.kind === "missing" ? null : toMillimetres(group.baseHole.value),
    })),
    basePlate: basePlate.shape.kind === "missing" ? null : planContour(basePlate.shape.value, basePlate.at),
    concrete: concrete.shape.kind === "missing" ? null : planContour(concrete.shape.value, concrete.at),
    column: column.kind === "missing" ? null : columnContour(column.value),
  };
}

function pieceFacts(
  { role, plate, measures, weight }: TemplatePiece,
  how: MarkingShop["how"],
  files: readonly SummaryFile[],
): PieceFacts {
  const { extent, outlineArea, netArea, cutLength, pierces } = measures;
  const count = (role: HoleRole) => plate.holes.filter((hole) => hole.role === role).length;
  return {
    ...{ role, mark: plate.mark, quantity: plate.quantity, material: plate.material },
    ...{ grade: plate.grade, thickness: plate.thickness, files },
    ...{ width: extent.x1 - extent.x0, height: extent.y1 - extent.y0, outlineArea, netArea, cutLength },
    ...{ scribeLength: scribedLength(plate, how), pierces, weight },
    drilled: drilledHoles(plate),
    board: plate.material === "plywood" ? boardOf(plate) : null,
    holes: {
      rod: count("rod"),
      opening: count("opening"),
      nail: count("nail"),
      grout: count("grout"),
      bolt: count("bolt"),
    },
  };
}

function boardOf({ mark, revision, quantity, material, grade, thickness, region, holes, marks }: Plate): BoardFacts {
  return { mark, revision, quantity, material, grade, thickness, region, holes, marks };
}

function drilledHoles({ holes }: Plate): PieceFacts["drilled"] {
  const drilled = holes.flatMap(({ made, shape }) =>
    made === "drill" && shape.kind === "circle" ? [shape.diameter] : [],
  );
  const counts = groupBy(drilled, (diameter) => diameter);
  return [...counts]
    .map(([diameter, each]) => ({ diameter, count: each.length }))
    .sort((a, b) => a.diameter - b.diameter);
}
