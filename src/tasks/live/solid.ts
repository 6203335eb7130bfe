/** A checked base in three dimensions, for a page: triangles of the same shells that STL and 3MF have, and words for who does not see them. */
import type { CheckedBase } from "../../checks/checked.js";
import { counted } from "../../checks/words.js";
import { listed } from "../../diagnostics/listed.js";
import { servedMarks } from "../../job/model/shared.js";
import type { AssemblyPart } from "../../solids/assembly.js";
import { ASSEMBLY_CHORD, assemblyOf, lowerPlateLevel, missingHeights } from "../../solids/assembly.js";
import { extrude } from "../../solids/extrude.js";
import { flatRings } from "../../solids/flat-rings.js";
import type { Corner, Solid } from "../../solids/model.js";
import { drawUp } from "../../solids/plate-solid.js";
import { northOf } from "../../template/index.js";
import type { Parted, PlacedPart, Plate } from "../../template/model.js";
import { formatWithUnit, NM_PER_MM, toMillimetres, type Unit } from "../../units/index.js";

/** What a shell is. */
export type SolidPart = AssemblyPart["part"] | "lower template" | "segment" | "splice plate";

/** One shell: x y z of its corners, millimetres, z up from the underside of the template; corners of its triangles, three each. */
export interface LiveShell {
  readonly part: SolidPart;
  readonly name: string;
  readonly corners: Float32Array;
  readonly triangles: Uint32Array;
}

/** A template with what it holds. */
export interface LiveSolid {
  readonly template: string;
  readonly shells: readonly LiveShell[];
  /** Tags of rods, each at the upper end of what is shown of it. */
  readonly tags: readonly { readonly text: string; readonly at: Corner }[];
  /** Plan north, degrees counter-clockwise from +X; null where it is not known, or not the same at every place. */
  readonly north: number | null;
  /** Sizes of the whole and of its parts, a sentence each. */
  readonly words: readonly string[];
  /** What is not shown, and which keys of the job would show it; empty where all is. */
  readonly lacking: readonly string[];
}

interface Shown extends Solid {
  readonly part: SolidPart;
}

/** Of a held base too, where its plate is one thing. */
export function solidOf(checked: CheckedBase): LiveSolid {
  const assembly = assemblyOf(checked);
  const upper = assembly ?? templateAlone(checked.plate);
  const [whole] = upper;
  const pieces = piecesOf(checked.plate);
  const shown = [
    ...(pieces.length > 0 ? upper.filter((each) => each !== whole) : upper),
    ...pieces,
    ...lowerOf(checked),
  ];
  return {
    template: checked.plate.mark,
    shells: shown.map(shellOf),
    tags: tagsOf(checked, shown),
    north: northOf(checked.job.plan, servedMarks(checked.base)),
    words: wordsOf(checked, shown),
    lacking: lackingOf(checked, assembly !== null, shown),
  };
}

function templateAlone(plate: Plate): readonly Shown[] {
  const solid = drawUp(plate, ASSEMBLY_CHORD);
  return solid === null ? [] : [{ ...solid, part: "template" }];
}

/** Segments and splice plates where they lie; empty where the template is one piece, or its pieces are not. */
function piecesOf({ parted, thickness }: Plate): readonly Shown[] {
  if (parted === null) return [];
  const segments = parted.segments.map(segmentSolid);
  if (segments.some((each) => each === null)) return [];
  return [...segments, ...splicesOf(parted, toMillimetres(thickness))].flatMap((each) => each ?? []);
}

function segmentSolid({ plate, turn, shift }: PlacedPart): Shown | null {
  const solid = drawUp(plate, ASSEMBLY_CHORD);
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return (
    solid && {
      ...{ ...solid, part: "segment" },
      corners: solid.corners.map(([x, y, z]): Corner => [x * cos - y * sin + shift.x, x * sin + y * cos + shift.y, z]),
    }
  );
}

function splicesOf({ joints, splices }: Parted, low: number): readonly (Shown | null)[] {
  return joints
    .flatMap((joint) => joint.splices)
    .map(({ mark, outline }) => {
      const thickness = splices.find((plate) => plate.mark === mark)?.thickness;
      const rings = flatRings(outline, [], ASSEMBLY_CHORD);
      const solid = thickness === undefined ? null : extrude(mark, rings, low, low + toMillimetres(thickness));
      return solid && { ...solid, part: "splice plate" };
    });
}

function lowerOf(checked: CheckedBase): readonly Shown[] {
  const { lower } = checked.plate;
  const level = lower === null ? null : lowerPlateLevel(checked);
  const solid = lower === null || level === null ? null : drawUp(lower, ASSEMBLY_CHORD);
  if (solid === null || level === null) return [];
  const corners = solid.corners.map(([x, y, z]): Corner => [x, y, z + level]);
  return [{ ...solid, corners, part: "lower template" }];
}

function shellOf({ part, name, corners, triangles }: Shown): LiveShell {
  return { part, name, corners: Float32Array.from(corners.flat()), triangles: Uint32Array.from(triangles.flat()) };
}

function tagsOf({ rods, plate }: CheckedBase, shown: readonly Shown[]): LiveSolid["tags"] {
  return rods.map(({ tag, center }) => {
    const rod = shown.find(({ name }) => name === `rod ${tag}`);
    const top = rod === undefined ? toMillimetres(plate.thickness) : rangeOf([rod], 2)[1];
    return { text: tag, at: [center.x, center.y, top] };
  });
}

/** Least and most of one coordinate. */
function rangeOf(shown: readonly Solid[], axis: 0 | 1 | 2): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { corners } of shown)
    for (const corner of corners) {
      low = Math.min(low, corner[axis]);
      high = Math.max(high, corner[axis]);
    }
  return [low, high];
}

const PLATES: readonly SolidPart[] = ["template", "segment"];

function wordsOf({ job: { unit }, plate, rods }: CheckedBase, shown: readonly Shown[]): readonly string[] {
  if (shown.length === 0) return [];
  const ofPlate = shown.filter(({ part }) => PLATES.includes(part));
  const [x, y] = ([0, 1] as const).map((axis) => spanWords(rangeOf(ofPlate, axis), unit));
  const whole = rangeOf(shown, 2);
  const thickness = formatWithUnit(plate.thickness, unit);
  return [
    `Template ${plate.mark} is ${x} along X by ${y} along Y, ${thickness} thick, with ${counted(rods.length, "rod")}.`,
    ...(shown.some(({ part }) => part === "rod") ? [rodWords(shown, toMillimetres(plate.thickness), unit)] : []),
    ...countWords(shown),
    `The whole is ${spanWords(whole, unit)} high.`,
  ];
}

function rodWords(shown: readonly Shown[], thickness: number, unit: Unit): string {
  const [low, high] = rangeOf(
    shown.filter(({ part }) => part === "rod"),
    2,
  );
  const [above, below] = [high - thickness, -low].map((each) => formatWithUnit(Math.round(each * NM_PER_MM), unit));
  return `Rods reach ${above} above the template's top and ${below} below its underside.`;
}

const COUNTED: readonly SolidPart[] = ["nut", "washer", "lower template", "segment", "splice plate"];

function countWords(shown: readonly Shown[]): readonly string[] {
  const counts = COUNTED.map((part) => ({ part, count: shown.filter((each) => each.part === part).length }));
  const words = counts.filter(({ count }) => count > 0).map(({ part, count }) => counted(count, part));
  return words.length === 0 ? [] : [`Shown with ${words.join(", ")}.`];
}

function spanWords([low, high]: readonly [number, number], unit: Unit): string {
  return formatWithUnit(Math.round((high - low) * NM_PER_MM), unit);
}

function lackingOf(checked: CheckedBase, hasRods: boolean, shown: readonly Shown[]): readonly string[] {
  if (shown.length === 0)
    return ["Nothing is shown: holes or edge of the template meet, so that it is no one thing. The ledger says where."];
  const keys = missingHeights(checked);
  const needs = keys.length === 0 ? "" : `; give ${listed(keys, 6)}`;
  const { lower } = checked.plate;
  const hasLower = lower === null || shown.some(({ part }) => part === "lower template");
  return [
    ...(hasRods ? [] : [`Rods and nuts are not shown, since not every height is known${needs}.`]),
    ...(hasLower ? [] : [`Lower template ${lower.mark} is not shown, since its height is not known.`]),
  ];
}
