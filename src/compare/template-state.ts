/** From a base of a summary and its cut file to a template state. */
import type { SummaryHole } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { NM_PER_UNIT } from "../units/length.js";
import { readCutShape } from "./cut-shape.js";
import type { HoleSize, HoleState, Material, SummaryTemplate, TemplateState } from "./model.js";

/** Kinds of files that a template is cut or drilled by. */
const CUT_KINDS = ["cut-joined", "cut-r12"] as const;
const DRILL_KIND = "drill-list";

/** True of a file that a template is cut or drilled by. */
export function isMadeBy(kind: string): boolean {
  return kind === DRILL_KIND || CUT_KINDS.some((each) => each === kind);
}

/** The file that tells the shape of the outline and the marks, where there is one. */
export function shapeFileOf({ files }: SummaryTemplate): { readonly path: string } | undefined {
  return files.find(({ kind }) => kind === CUT_KINDS[0]) ?? files.find(({ kind }) => kind === CUT_KINDS[1]);
}

/** `delivered`: the files were handed out. `cutFile`: the bytes of `shapeFileOf`, null where there is none. */
export function makeTemplateState(
  base: SummaryTemplate,
  unit: Unit,
  delivered: boolean,
  cutFile: Uint8Array | null,
): TemplateState {
  const { template, files } = base;
  const { outline } = template;
  const nm = (length: number): number => Math.round(length * NM_PER_UNIT[unit]);
  const [x0, y0, x1, y1] = outline.extent;
  const lowerLeft = { x: nm(x0), y: nm(y0) };
  const making = files.filter(({ kind }) => isMadeBy(kind));
  return {
    ...{ base: base.mark, bases: base.quantity, mark: template.mark, quantity: template.quantity, held: base.held },
    delivered: delivered && making.length > 0,
    thickness: nm(template.thickness),
    material: materialOf(making.map(({ kind }) => kind)),
    outline: {
      kind: outline.kind,
      extent: [lowerLeft.x, lowerLeft.y, nm(x1), nm(y1)],
      area: outline.area * NM_PER_UNIT[unit] ** 2,
      perimeter: nm(outline.perimeter),
    },
    holes: template.holes.map((hole) => holeState(hole, nm)),
    hashes: new Map(making.map(({ kind, sha256 }) => [kind, sha256])),
    shape: cutFile === null ? null : readCutShape(cutFile, lowerLeft),
  };
}

/** Steel is cut, plywood is drilled; without either file nothing tells. */
function materialOf(kinds: readonly string[]): Material | null {
  if (kinds.length === 0) return null;
  return kinds.includes(DRILL_KIND) ? "plywood" : "steel";
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
