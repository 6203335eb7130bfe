/** What is kept of every base when its files are made, for lists of the whole job: plain, and small beside its plate. */
import type { CheckedBase } from "../checks/checked.js";
import type { Material } from "../job/model/job.js";
import { servedMarks } from "../job/model/shared.js";
import type { PieceRole, TemplatePiece, Weight } from "../template/index.js";
import type { HoleRole, Plate } from "../template/model.js";
import { markLength } from "../template/model.js";
import { groupBy } from "../units/group-by.js";
import type { Length } from "../units/length.js";
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
  /** Of all scribed strokes, whether the shop scribes or paints. */
  readonly scribeLength: number;
  readonly pierces: number;
  /** Cut or drilled, by what they are for. */
  readonly holes: Readonly<Record<HoleRole, number>>;
  /** Of those the drilled ones: how many of each diameter, the smallest first. */
  readonly drilled: readonly { readonly diameter: Length; readonly count: number }[];
  readonly weight: Weight | null;
  /** What it is cut or drilled by; none where it is held and not asked for all the same. */
  readonly files: readonly SummaryFile[];
}

/** A base as lists have it. */
export interface BaseFacts {
  readonly mark: string;
  readonly quantity: number;
  readonly held: boolean;
  readonly template: { readonly mark: string; readonly quantity: number; readonly bases: readonly string[] };
  /** The same for every base that one template serves: a list of pieces takes those of a template once. */
  readonly pieces: readonly PieceFacts[];
  /** Files of the base and its template. */
  readonly files: readonly SummaryFile[];
}

/** Of a base whose files are made; `filesOf`: those that a piece is cut or drilled by. */
export function factsOf(
  checked: CheckedBase,
  files: readonly SummaryFile[],
  filesOf: (piece: TemplatePiece) => readonly SummaryFile[],
): BaseFacts {
  const { base, plate, held, pieces } = checked;
  return {
    mark: base.mark,
    quantity: base.quantity,
    held: held.length > 0,
    template: { mark: plate.mark, quantity: plate.quantity, bases: servedMarks(base) },
    pieces: pieces.map((piece) => pieceFacts(piece, filesOf(piece))),
    files,
  };
}

function pieceFacts({ role, plate, measures, weight }: TemplatePiece, files: readonly SummaryFile[]): PieceFacts {
  const { extent, outlineArea, netArea, cutLength, pierces } = measures;
  const count = (role: HoleRole) => plate.holes.filter((hole) => hole.role === role).length;
  return {
    ...{ role, mark: plate.mark, quantity: plate.quantity, material: plate.material },
    ...{ grade: plate.grade, thickness: plate.thickness, files },
    ...{ width: extent.x1 - extent.x0, height: extent.y1 - extent.y0, outlineArea, netArea, cutLength },
    ...{ scribeLength: markLength(plate.marks), pierces, weight },
    drilled: drilledHoles(plate),
    holes: {
      rod: count("rod"),
      opening: count("opening"),
      nail: count("nail"),
      grout: count("grout"),
      bolt: count("bolt"),
    },
  };
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
