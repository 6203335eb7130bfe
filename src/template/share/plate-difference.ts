/** The first difference between two plates that are to be one, in words that a person can use. */
import { extentOf, extentSize, toLattice } from "../../geometry/index.js";
import type { TemplateSpec } from "../../job/model/job.js";
import type { Unit } from "../../units/index.js";
import { formatApart } from "../../units/index.js";
import type { Hole, HoleShape, Plate } from "../model.js";
import { holeParts, markParts, plateKey } from "./plate-key.js";

/** A plate with the base that it was made for. */
export interface PlateOfBase {
  readonly base: string;
  readonly use: TemplateSpec["use"];
  readonly plate: Plate;
}

/** What differs first, as a clause after "B3 and B9, whose plates"; exact, without a tolerance. Only for plates that differ. */
export function plateDifference(a: PlateOfBase, b: PlateOfBase, unit: Unit): string {
  const say: Say = { a: a.base, b: b.base, apart: (one, other) => formatApart(one, other, unit) };
  return (
    specDifference(a, b, say) ??
    holesDifference(a.plate.holes, b.plate.holes, say) ??
    outlineDifference(a.plate, b.plate, say) ??
    lowerDifference(a, b, unit) ??
    partsDifference(a.plate, b.plate, say) ??
    marksDifference(a.plate, b.plate, say) ??
    "differ in what is cut"
  );
}

interface Say {
  readonly a: string;
  readonly b: string;
  readonly apart: (one: number, other: number) => readonly [string, string];
}

function specDifference(a: PlateOfBase, b: PlateOfBase, say: Say): string | null {
  if (a.use !== b.use) return `are not for one use: ${a.use} on ${say.a} and ${b.use} on ${say.b}`;
  const [one, other] = [a.plate, b.plate];
  if (one.material !== other.material)
    return `differ: they are of ${one.material} on ${say.a} and of ${other.material} on ${say.b}`;
  if (one.grade !== other.grade)
    return `differ: they are of ${gradeWords(one)} on ${say.a} and of ${gradeWords(other)} on ${say.b}`;
  if (one.thickness === other.thickness) return null;
  const [thin, thick] = say.apart(one.thickness, other.thickness);
  return `differ: they are ${thin} thick on ${say.a} and ${thick} thick on ${say.b}`;
}

const gradeWords = ({ grade }: Plate): string => grade ?? "no grade that is given";

function holesDifference(a: readonly Hole[], b: readonly Hole[], say: Say): string | null {
  const others = new Map(b.map((hole) => [hole.tag, hole]));
  for (const hole of a) {
    const other = others.get(hole.tag);
    if (other === undefined) return onlyOn(hole.tag, say.a, say.b);
    if (same(holeParts(hole), holeParts(other))) continue;
    return `differ: ${holeDifference(hole, other, say)}`;
  }
  const more = b.find(({ tag }) => !a.some((hole) => hole.tag === tag));
  return more === undefined ? null : onlyOn(more.tag, say.b, say.a);
}

function onlyOn(tag: string, has: string, lacks: string): string {
  return `differ: ${has} has a hole ${tag}, which ${lacks} has not`;
}

function holeDifference(a: Hole, b: Hole, say: Say): string {
  const hole = `hole ${a.tag}`;
  const sizes = sizeDifference(a.shape, b.shape, say);
  if (sizes !== null) return `${hole} is ${sizes[0]} on ${say.a} and ${sizes[1]} on ${say.b}`;
  if (a.center.x !== b.center.x || a.center.y !== b.center.y) {
    const x = say.apart(toLattice(a.center.x), toLattice(b.center.x));
    const y = say.apart(toLattice(a.center.y), toLattice(b.center.y));
    return `${hole} is at ${x[0]}, ${y[0]} on ${say.a} and at ${x[1]}, ${y[1]} on ${say.b}`;
  }
  if (a.rod?.size !== b.rod?.size)
    return `${hole} is for a rod ${a.rod?.size ?? "of no size"} on ${say.a} and ${b.rod?.size ?? "of no size"} on ${say.b}`;
  if (a.made !== b.made) return `${hole} is made by ${a.made} on ${say.a} and by ${b.made} on ${say.b}`;
  return `${hole} is not the same on ${say.a} and on ${say.b}`;
}

function sizeDifference(a: HoleShape, b: HoleShape, say: Say): readonly [string, string] | null {
  if (same(a, b)) return null;
  if (a.kind === "circle" && b.kind === "circle") return say.apart(a.diameter, b.diameter);
  if (a.kind === "circle" || b.kind === "circle")
    return [a.kind === "circle" ? "round" : "a rectangle", b.kind === "circle" ? "round" : "a rectangle"];
  const sides = [say.apart(a.width, b.width), say.apart(a.height, b.height), say.apart(a.radius, b.radius)] as const;
  const words = (at: 0 | 1) => `${sides[0][at]} x ${sides[1][at]} with corners of radius ${sides[2][at]}`;
  return [words(0), words(1)];
}

function outlineDifference(a: Plate, b: Plate, say: Say): string | null {
  const [one, other] = [a.region.outer, b.region.outer];
  if (a.outlineKind === b.outlineKind && same(one, other)) return null;
  if ((a.keyed === null) !== (b.keyed === null)) {
    const [has, lacks] = a.keyed === null ? [say.b, say.a] : [say.a, say.b];
    return `differ: the outline has an orientation cut on ${has} and none on ${lacks}`;
  }
  const [first, second] = [extentOf(one), extentOf(other)].map((extent) => extentSize(extent));
  if (first === undefined || second === undefined) return null;
  const x = say.apart(first.x, second.x);
  const y = say.apart(first.y, second.y);
  if (x[0] === x[1] && y[0] === y[1])
    return `differ: the outline is ${x[0]} x ${y[0]} on both, with other corners or sides, or in another place about the working point`;
  return `differ: the outline is ${x[0]} x ${y[0]} on ${say.a} and ${x[1]} x ${y[1]} on ${say.b}`;
}

/** Of the lower templates. */
function lowerDifference(a: PlateOfBase, b: PlateOfBase, unit: Unit): string | null {
  const [one, other] = [a.plate.lower, b.plate.lower];
  if (one === null && other === null) return null;
  if (one === null || other === null) {
    const [has, lacks] = one === null ? [b.base, a.base] : [a.base, b.base];
    return `differ: there is a lower template on ${has} and none on ${lacks}`;
  }
  if (plateKey(one, a.use) === plateKey(other, a.use)) return null;
  return `have lower templates that ${plateDifference({ ...a, plate: one }, { ...b, plate: other }, unit)}`;
}

/** Of segments and their splice plates. */
function partsDifference(a: Plate, b: Plate, say: Say): string | null {
  const counts = [a, b].map(({ parted }) => parted?.segments.length ?? 1);
  if (counts[0] !== counts[1])
    return `differ: the plate is cut in ${counts[0]} on ${say.a} and in ${counts[1]} on ${say.b}`;
  const [one, other] = [a.parted?.bolt.value.size, b.parted?.bolt.value.size];
  if (one === other || one === undefined || other === undefined) return null;
  return `differ: bolts of splice plates are ${one} on ${say.a} and ${other} on ${say.b}`;
}

function marksDifference(a: Plate, b: Plate, say: Say): string | null {
  const texts = (plate: Plate) => plate.marks.map(({ kind, text }) => (text === "" ? kind : text));
  const [one, other] = [texts(a), texts(b)];
  const onlyA = one.find((text) => !other.includes(text));
  if (onlyA !== undefined) return `are scribed differently: ${onlyA} on ${say.a}, not on ${say.b}`;
  const onlyB = other.find((text) => !one.includes(text));
  if (onlyB !== undefined) return `are scribed differently: ${onlyB} on ${say.b}, not on ${say.a}`;
  const moved = a.marks.find((mark, at) => {
    const beside = b.marks[at];
    return beside === undefined || !same(markParts(mark), markParts(beside));
  });
  if (moved === undefined) return null;
  return `are scribed differently: ${moved.text === "" ? moved.kind : moved.text} stands in another place, or is of another size`;
}

function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
