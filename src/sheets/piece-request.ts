/** What the sheet of a piece is drawn from: the same as that of a template, with the piece in its place and in its own axes. */
import type { CheckedBase } from "../checks/checked.js";
import { listed } from "../diagnostics/listed.js";
import type { Path, Segment } from "../geometry/index.js";
import { extentOf, extentSize, toLattice } from "../geometry/index.js";
import type { Base, Job, Offset, OutlineSpec } from "../job/model/job.js";
import { missing } from "../job/model/job.js";
import type { TemplatePiece } from "../template/index.js";
import { lowerBase } from "../template/index.js";
import type { Joint, Parted } from "../template/model.js";
import { formatWithUnit, type Length } from "../units/index.js";
import type { SheetPiece, SheetRequest } from "./request.js";

/** What only the pipeline knows. */
type Named = Pick<SheetRequest, "cutFiles" | "programVersion">;

/** The request of a piece's sheet; null for a template of one piece, which has its own. */
export function pieceRequest(checked: CheckedBase, piece: TemplatePiece, named: Named): SheetRequest | null {
  if (piece.role === "template") return null;
  const { job, base, rods, shared, held, open } = checked;
  const { plate, measures, weight } = piece;
  const said = pieceOn(checked, piece);
  const isLower = piece.role === "lower template";
  const rows =
    shared === null
      ? checked.rows.filter(
          ({ subject }) => subject.startsWith(`${plate.mark} `) || subject.startsWith(`${plate.mark},`),
        )
      : [];
  return {
    ...{ job, plate, measures, weight, held, open, shared, rows, ...named },
    base: isLower ? lowerOn(checked) : partOn(base, plate),
    rods: isLower ? rods : [],
    ...{ drillListName: null, sheetNumber: 1, sheetCount: 1, sheetBases: [base.mark], piece: said },
  };
}

/** The base with its lower template; of several bases without what is not theirs alone. */
function lowerOn({ job, base, rods, shared }: CheckedBase): Base {
  const lower = lowerBase(job, base, rods) ?? base;
  const concrete = { ...base.concrete, shape: missing("concrete", "left out on the sheet of a lower template") };
  return { ...lower, ...withoutColumn(lower), ...(shared === null ? {} : { concrete }) };
}

/** A part of a template has no rods of its own, and nothing around it. */
function partOn(base: Base, plate: TemplatePiece["plate"]): Base {
  const { mark, quantity } = plate;
  const concrete = { ...base.concrete, shape: missing("concrete", "left out on the sheet of a part") };
  const outline = outlineOn(plate);
  const template = { ...base.template, mark, quantity, outline };
  return { ...base, ...withoutColumn(base), concrete, groups: [], template };
}

/** A rectangle has its sizes; any other is a polygon through its joints, so that each of them is numbered and located. */
function outlineOn({ region: { outer } }: TemplatePiece["plate"]): OutlineSpec {
  const corner = { kind: "square" } as const;
  if (outer.kind === "circle") return { kind: "auto", corner };
  if (isRectangle(outer)) return { kind: "rectangle", ...middleOf(outer), corner };
  const at = outer.segments.map(({ from }) => ({ x: toLattice(from.x), y: toLattice(from.y) }));
  return { kind: "polygon", at, corner };
}

/** True of four straight sides along the axes. */
function isRectangle({ segments }: Path): boolean {
  const isLevel = ({ from, to, bulge }: Segment) => bulge === 0 && (from.x === to.x || from.y === to.y);
  return segments.length === 4 && segments.every(isLevel);
}

function middleOf(outer: Path): { readonly x: Length; readonly y: Length; readonly at: Offset } {
  const extent = extentOf(outer);
  const at = { x: toLattice((extent.x0 + extent.x1) / 2), y: toLattice((extent.y0 + extent.y1) / 2) };
  return { ...extentSize(extent), at };
}

function withoutColumn({ basePlate }: Base): Pick<Base, "basePlate" | "column" | "columnName"> {
  const shape = missing("basePlate", "left out on the sheet of a part");
  return { basePlate: { ...basePlate, shape }, column: missing("column", "left out"), columnName: "" };
}

function pieceOn({ job, plate, base }: CheckedBase, piece: TemplatePiece): SheetPiece | null {
  switch (piece.role) {
    case "template":
      return null;
    case "lower template":
      return { role: piece.role, of: plate.mark, notes: lowerNotes(job, base) };
    case "segment":
    case "splice plate": {
      const parted = partedWith(piece.plate.mark, plate.parted, plate.lower?.parted ?? null);
      const notes = parted === null ? [] : NOTES[piece.role](piece.plate.mark, parted);
      return { role: piece.role, of: parted === plate.parted ? plate.mark : (plate.lower?.mark ?? plate.mark), notes };
    }
  }
}

/** That of the plate which has the piece. */
function partedWith(mark: string, own: Parted | null, lower: Parted | null): Parted | null {
  const has = (parted: Parted | null) =>
    parted !== null &&
    (parted.segments.some((each) => each.plate.mark === mark) || parted.splices.some((each) => each.mark === mark));
  return has(own) ? own : has(lower) ? lower : null;
}

const NOTES: Readonly<Record<"segment" | "splice plate", (mark: string, parted: Parted) => readonly string[]>> = {
  segment: segmentNotes,
  "splice plate": spliceNotes,
};

const MOST_NAMED = 12;

function segmentNotes(mark: string, parted: Parted): readonly string[] {
  const number = parted.segments.findIndex(({ plate }) => plate.mark === mark) + 1;
  const joins = parted.joints.flatMap(({ number: joint, between }) => {
    const other = between.find((each) => each !== mark);
    return between.includes(mark) && other !== undefined ? [`J${joint} TO ${other}`] : [];
  });
  return [
    `SEGMENT ${number} OF ${parted.segments.length}. BOLT ${listed(joins, MOST_NAMED)}: the same joint number stands on both sides of a joint.`,
    assemblyNote(parted),
    "X and Y of this sheet are the segment's own, as in its cut file; the +X that is scribed is the template's.",
  ];
}

function spliceNotes(mark: string, { joints, bolt }: Parted): readonly string[] {
  const at = joints.flatMap(({ number, splices }) =>
    splices.filter((each) => each.mark === mark).map(() => `J${number}`),
  );
  return [
    `LIES ON THE TOP FACE OVER ${listed([...new Set(at)], MOST_NAMED)}, its ticks on the joint. Bolts ${bolt.value.size}, nuts on top.`,
  ];
}

/** How segments are put together, for their sheets and that of the whole. */
export function assemblyNote({ bolt, joints }: Parted): string {
  const count = joints.reduce((sum, joint) => sum + boltCount(joint), 0);
  return (
    `ASSEMBLE FACE UP on a level floor: joints closed (gap 0, sizes are nominal), splice plates on the top face, ${count} bolts ${bolt.value.size} ` +
    "from below, nuts on top. Tape the distances of the whole template before the nuts are drawn tight, and again after."
  );
}

/** Bolts at one joint. */
function boltCount({ splices }: Joint): number {
  return splices.reduce((sum, { bolts }) => sum + bolts.length, 0);
}

function lowerNotes(job: Job, base: Base): readonly string[] {
  return [
    `LOWER TEMPLATE of ${base.template.mark}: ${lowerLevelWords(job, base)}. It stays in the concrete.`,
    "A nut above and below on every rod, drawn tight against the plate. Do not weld it to rods or reinforcement. Vibrate the concrete around and under it.",
  ];
}

/** Where the underside of the lower template stands. */
export function lowerLevelWords({ unit }: Job, { template: { lower } }: Base): string {
  if (lower === null || lower.level.kind === "missing") return "its height is NOT GIVEN (template.lower.above)";
  const { from, distance } = lower.level.value;
  const words = from === "lower ends" ? "above the lower ends of the rods" : "below the top of concrete";
  return `underside ${formatWithUnit(distance, unit)} ${words}`;
}
