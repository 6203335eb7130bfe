/** From a base of a summary and its cut file to a template state. */
import type { FileRole, SummaryHole } from "../summary/model.js";
import { eachPiece, type OnePiece } from "../summary/pieces.js";
import type { Unit } from "../units/length.js";
import { NM_PER_UNIT } from "../units/length.js";
import { readCutShape } from "./cut-shape.js";
import type { HoleSize, HoleState, Material, SummaryTemplate, TemplateState } from "./model.js";

/** What a template state is made with, beside the base of the summary. */
export interface StateSource {
  readonly unit: Unit;
  /** The files were handed out. */
  readonly delivered: boolean;
  /** What a file is for, by its kind; null for a kind that is not known. */
  readonly roleOf: (kind: string) => FileRole | null;
  /** The bytes of a file that the summary lists. */
  readonly bytesOf: (path: string) => Uint8Array | null;
}

/** Templates of a side while its bases go by; one of several bases is one state. */
export interface TemplateStates {
  add(base: SummaryTemplate, source: StateSource): void;
  /** In the order of their first bases. */
  list(): readonly TemplateState[];
}

/** Starts with none. */
export function startTemplateStates(): TemplateStates {
  const states: TemplateState[] = [];
  const shared = new Map<string, number>();
  const addPiece = (base: PieceOfBase, source: StateSource): void => {
    const key = base.template.mark.toUpperCase();
    const at = shared.get(key);
    const known = at === undefined ? undefined : states[at];
    if (at !== undefined && known !== undefined && base.template.bases.length > 1) {
      states[at] = { ...known, bases: known.bases + base.quantity, serves: [...known.serves, base.mark] };
      return;
    }
    if (base.template.bases.length > 1) shared.set(key, states.length);
    states.push(makeTemplateState(base, source));
  };
  return {
    add: (base, source) => {
      for (const piece of eachPiece(base)) addPiece(piece, source);
    },
    list: () => states,
  };
}

type PieceOfBase = OnePiece<SummaryTemplate>;

/** A piece of one base of a summary as a template state. The first cut file, where there is one, tells the shape of outline and marks. */
export function makeTemplateState(
  base: SummaryTemplate & Partial<Pick<PieceOfBase, "role">>,
  source: StateSource,
): TemplateState {
  const { template, files } = base;
  const { outline } = template;
  const nm = (length: number): number => Math.round(length * NM_PER_UNIT[source.unit]);
  const [x0, y0, x1, y1] = outline.extent;
  const lowerLeft = { x: nm(x0), y: nm(y0) };
  const cut = files.filter((file) => roleIn(file, source) === "cut");
  const drilled = files.filter((file) => roleIn(file, source) === "drill");
  const making = [...cut, ...drilled];
  const bytes = cut[0] === undefined ? null : source.bytesOf(cut[0].path);
  return {
    ...{ base: base.mark, bases: base.quantity, mark: template.mark, quantity: template.quantity, held: base.held },
    ...{ role: base.role ?? "template", serves: [base.mark] },
    delivered: source.delivered && making.length > 0,
    thickness: nm(template.thickness),
    material: template.material ?? materialOf(cut.length > 0, drilled.length > 0),
    grade: template.grade ?? null,
    outline: {
      kind: outline.kind,
      extent: [lowerLeft.x, lowerLeft.y, nm(x1), nm(y1)],
      area: outline.area * NM_PER_UNIT[source.unit] ** 2,
      perimeter: nm(outline.perimeter),
    },
    holes: template.holes.map((hole) => holeState(hole, nm)),
    hashes: new Map(making.map(({ kind, sha256 }) => [kind, sha256])),
    shape: bytes === null ? null : readCutShape(bytes, lowerLeft),
  };
}

/** Steel is cut, plywood is drilled; without either file nothing tells. */
function materialOf(isCut: boolean, isDrilled: boolean): Material | null {
  if (isDrilled) return "plywood";
  return isCut ? "steel" : null;
}

/** A file of an unknown kind that lists layers is a cut file all the same: only those do. */
function roleIn({ kind, layers }: SummaryTemplate["files"][number], { roleOf }: StateSource): FileRole | null {
  return roleOf(kind) ?? (layers === undefined ? null : "cut");
}

function holeState(hole: SummaryHole, nm: (length: number) => number): HoleState {
  const { tag, role, x, y, rod, made } = hole;
  return {
    tag,
    role,
    at: { x: nm(x), y: nm(y) },
    size: sizeOf(hole, nm),
    rod: rod === undefined ? null : nm(rod),
    made,
  };
}

function sizeOf({ diameter, width, height, radius }: SummaryHole, nm: (length: number) => number): HoleSize {
  return diameter === undefined
    ? { kind: "rectangle", width: nm(width ?? 0), height: nm(height ?? 0), radius: nm(radius ?? 0) }
    : { kind: "circle", diameter: nm(diameter) };
}
