/** Two states of one template -> what differs, and whether the plate that is cut already still serves. */
import { sameMarks, sameOutline } from "./cut-shape.js";
import { matchHoles } from "./match-holes.js";
import type { Change, HolePlace, HoleState, TemplateComparison, TemplateState, VerdictKind } from "./model.js";
import { RECUT_KINDS } from "./model.js";
import { distanceBetween, SAME, sameLength, samePlace, sameSize } from "./same.js";

/** Compares the state in OLD with that in NEW. */
export function compareTemplates(old: TemplateState, fresh: TemplateState): TemplateComparison {
  const plate = plateChanges(old, fresh);
  const isOther = plate.some(({ what }) => RECUT_KINDS.has(what));
  const files = isOther ? [] : fileChanges(old, fresh);
  const changes = [...plate, ...files, ...recordChanges(old, fresh)];
  return { verdict: verdictOf(old, fresh, isOther, files), old, new: fresh, changes };
}

function verdictOf(old: TemplateState, fresh: TemplateState, isOther: boolean, files: readonly Change[]): VerdictKind {
  if (old.delivered && isOther) return "recut";
  if (fresh.held || !fresh.delivered) return "held";
  if (!old.delivered) return "to cut";
  if (files.some(({ what }) => what === "marks")) return "marks only";
  return files.length > 0 ? "file only" : "unchanged";
}

/** What the steel or the board itself would tell: holes, outline, thickness, material. */
function plateChanges(old: TemplateState, fresh: TemplateState): readonly Change[] {
  const shift = shiftBetween(old, fresh);
  const before = shift === null ? old : moved(old, shift);
  return [
    ...(shift === null ? [] : [{ what: "working-point" as const, dx: shift.x, dy: shift.y }]),
    ...holeChanges(before.holes, fresh.holes),
    ...outlineChanges(before, fresh),
    ...(sameLength(old.thickness, fresh.thickness)
      ? []
      : [{ what: "thickness" as const, from: old.thickness, to: fresh.thickness }]),
    ...(old.material === null || fresh.material === null || old.material === fresh.material
      ? []
      : [{ what: "material" as const, from: old.material, to: fresh.material }]),
    ...gradeChanges(old.grade, fresh.grade),
  ];
}

/** Blanks and case are no other grade. */
function gradeChanges(from: string | null, to: string | null): readonly Change[] {
  if (from === null && to === null) return [];
  if (from === null || to === null) return [{ what: "grade-said", from, to }];
  const plain = (grade: string) => grade.replace(/\s+/g, "").toUpperCase();
  return plain(from) === plain(to) ? [] : [{ what: "grade", from, to }];
}

/** How far everything moved together, against the working point: the plate is the same. null where it did not. */
function shiftBetween(old: TemplateState, fresh: TemplateState): HolePlace | null {
  const [x0, y0] = old.outline.extent;
  const shift = { x: fresh.outline.extent[0] - x0, y: fresh.outline.extent[1] - y0 };
  if (Math.abs(shift.x) <= SAME && Math.abs(shift.y) <= SAME) return null;
  const away = moved(old, shift);
  const changes = [...holeChanges(away.holes, fresh.holes), ...outlineChanges(away, fresh)];
  return changes.some(({ what }) => RECUT_KINDS.has(what)) ? null : shift;
}

function moved(state: TemplateState, { x, y }: HolePlace): TemplateState {
  const move = (place: HolePlace): HolePlace => ({ x: place.x + x, y: place.y + y });
  const [x0, y0, x1, y1] = state.outline.extent;
  return {
    ...state,
    outline: { ...state.outline, extent: [x0 + x, y0 + y, x1 + x, y1 + y] },
    holes: state.holes.map((hole) => ({ ...hole, at: move(hole.at) })),
    shape: state.shape && {
      outline: movedOutline(state.shape.outline, move),
      marks: state.shape.marks.map((stroke) => stroke.map(move)),
    },
  };
}

function movedOutline(
  outline: NonNullable<TemplateState["shape"]>["outline"],
  move: (place: HolePlace) => HolePlace,
): NonNullable<TemplateState["shape"]>["outline"] {
  return outline.kind === "circle"
    ? { ...outline, center: move(outline.center) }
    : { ...outline, corners: outline.corners.map((corner) => ({ ...corner, ...move(corner) })) };
}

function holeChanges(old: readonly HoleState[], fresh: readonly HoleState[]): readonly Change[] {
  const { pairs, gone, added } = matchHoles(old, fresh);
  return [
    ...pairs.flatMap(([before, after]) => pairChanges(before, after)),
    ...gone.map((hole): Change => ({ what: "hole-gone", ...standing(hole) })),
    ...added.map((hole): Change => ({ what: "hole-added", ...standing(hole) })),
  ];
}

const standing = ({ role, tag, at, size }: HoleState) => ({ role, tag, at, size });

function pairChanges(old: HoleState, fresh: HoleState): readonly Change[] {
  const ref = { role: fresh.role, tag: fresh.tag, oldTag: old.tag };
  const changes: Change[] = [];
  if (!samePlace(old.at, fresh.at)) {
    const distance = distanceBetween(old.at, fresh.at);
    changes.push({ what: "hole-moved", ...ref, from: old.at, to: fresh.at, distance });
  }
  if (!sameSize(old.size, fresh.size)) changes.push({ what: "hole-size", ...ref, from: old.size, to: fresh.size });
  if (old.role !== fresh.role) changes.push({ what: "hole-role", ...ref, from: old.role, to: fresh.role });
  if (old.made !== fresh.made) changes.push({ what: "hole-made", ...ref, from: old.made, to: fresh.made });
  if (!sameRod(old.rod, fresh.rod)) changes.push({ what: "rod-size", ...ref, from: old.rod, to: fresh.rod });
  if (old.tag !== fresh.tag) changes.push({ what: "tag", ...ref });
  return changes;
}

function sameRod(a: number | null, b: number | null): boolean {
  return a === null || b === null ? a === b : sameLength(a, b);
}

function outlineChanges(old: TemplateState, fresh: TemplateState): readonly Change[] {
  const change: Change = { what: "outline", from: old.outline, to: fresh.outline };
  if (!sameFigures(old.outline, fresh.outline)) return [change];
  const bothDrawn = old.shape !== null && fresh.shape !== null;
  return bothDrawn && !sameOutline(old.shape.outline, fresh.shape.outline) ? [change] : [];
}

/** Sides a thousandth of a millimetre apart over the whole length would show in the area and in the perimeter. */
function sameFigures(a: TemplateState["outline"], b: TemplateState["outline"]): boolean {
  const sameExtent = a.extent.every((side, index) => sameLength(side, b.extent[index] ?? Number.NaN));
  const slack = 4 * SAME;
  const sameArea = Math.abs(a.area - b.area) <= slack * Math.max(a.perimeter, b.perimeter) + AREA_ROUNDING;
  return a.kind === b.kind && sameExtent && sameArea && Math.abs(a.perimeter - b.perimeter) <= slack;
}

/** Areas of summaries are rounded to 1e-6 in2 or 1e-5 mm2: in square nanometres, both together. */
const AREA_ROUNDING = 1e9;

/** Whether the files say the same: only where the plates are the same. */
function fileChanges(old: TemplateState, fresh: TemplateState): readonly Change[] {
  if (sameBytes(old, fresh)) return [];
  if (old.hashes.size === 0 || fresh.hashes.size === 0) return [];
  if (old.shape === null || fresh.shape === null) return [{ what: "file", drawn: false }];
  return sameMarks(old.shape.marks, fresh.shape.marks) ? [{ what: "file", drawn: true }] : [{ what: "marks" }];
}

/** True when every kind of file that both have has the same bytes, and there is one. */
function sameBytes(old: TemplateState, fresh: TemplateState): boolean {
  const kinds = [...old.hashes.keys()].filter((kind) => fresh.hashes.has(kind));
  return kinds.length > 0 && kinds.every((kind) => old.hashes.get(kind) === fresh.hashes.get(kind));
}

/** What the papers say of the template, and no cut depends on. */
function recordChanges(old: TemplateState, fresh: TemplateState): readonly Change[] {
  const changes: Change[] = [];
  if (old.held !== fresh.held) changes.push({ what: "held", from: old.held, to: fresh.held });
  if (old.mark !== fresh.mark) changes.push({ what: "template-mark", from: old.mark, to: fresh.mark });
  if (old.serves.length + fresh.serves.length > 2) {
    if (!sameTexts(old.serves, fresh.serves)) changes.push({ what: "serves", from: old.serves, to: fresh.serves });
  } else if (old.base !== fresh.base) changes.push({ what: "base-mark", from: old.base, to: fresh.base });
  if (old.quantity !== fresh.quantity) changes.push({ what: "quantity", from: old.quantity, to: fresh.quantity });
  if (old.bases !== fresh.bases) changes.push({ what: "bases", from: old.bases, to: fresh.bases });
  return changes;
}

function sameTexts(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((each, at) => each === b[at]);
}
