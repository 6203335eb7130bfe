/**
 * What rules take of a base, as keys of the job file, each named once; and who gave it. A key stands for everything below it.
 * `groups.rods.grade` counts for a base with groups of rods alone: there it tells one kind of rod from another.
 */
import type { Base } from "../job/model/job.js";

function planKeys(part: "basePlate" | "concrete"): readonly string[] {
  return ["x", "y", "diameter", "corner", "at"].map((key) => `${part}.${key}`);
}

/** Outline of the base plate. */
export const BASE_PLATE: readonly string[] = planKeys("basePlate");
/** Outline of the concrete. */
export const CONCRETE: readonly string[] = planKeys("concrete");
/** Hole of the base plate: as given, or by the rod's size. */
export const BASE_HOLE: readonly string[] = ["basePlate.hole", "rods.diameter"];
/** Hole of the template; over cast rods it is that of the base plate. */
export const HOLE: readonly string[] = ["template.hole", "template.use", ...BASE_HOLE];
/** Nut of the rods: as given, or recommended for grade, size and finish. */
export const NUT: readonly string[] = ["rods.nut", "rods.grade", "rods.finish", "rods.diameter"];
/** Thread at the top: of a rod that is threaded in full its length, or what is known of it. */
export const THREADS: readonly string[] = ["rods.threads", "rods.length", "rods.projection", "rods.embedment"];
/** Washer on the base plate, which a standard has by the rod's size. */
export const WASHER: readonly string[] = ["basePlate.washer", "rods.diameter"];
/** Holes of the base plate by a second source. */
export const SECOND_SOURCE: readonly string[] = ["basePlate.pattern", "basePlate.from"];

/** What tells rods of one kind from those of another group. */
const ROD_KIND: readonly string[] = [
  "thread",
  "grade",
  "finish",
  "projection",
  "embedment",
  "length",
  "threads",
  "bottom",
  "bottomThreads",
  "threadClass",
  "zincProcess",
].map((key) => `groups.rods.${key}`);

/** The template's outline before it is keyed: an automatic one has room for holes and nuts, and reaches across its form. */
export const OUTLINE: readonly string[] = [
  "pattern",
  ...["outline", "support", "material", "thickness", "nails", "groutHoles"].map((key) => `template.${key}`),
  ...HOLE,
  ...NUT,
  ...CONCRETE,
];

/** The whole plate: its key shows wrong ways round, and its opening gives way to marks. */
export const PLATE: readonly string[] = [
  ...OUTLINE,
  ...["opening", "key", "mark", "segments"].map((key) => `template.${key}`),
  "mark",
  ...ROD_KIND,
];

/** Heights of the template with its nuts on a rod, from the top of concrete. */
export const TEMPLATE_STACK: readonly string[] = [
  ...["height", "thickness", "material", "use"].map((key) => `template.${key}`),
  ...NUT,
];

/** Heights of what lies on a rod from the top of concrete to its top. */
export const STACK: readonly string[] = [
  "grout",
  "basePlate.thickness",
  "template.use",
  "template.thickness",
  "rods.stickOut",
  "rods.topNuts",
  ...WASHER,
  ...NUT,
];

/** Keys of a group that stand elsewhere in a base without groups. */
const SHARED: Readonly<Record<string, string>> = {
  "groups.hole": "template.hole",
  "groups.baseHole": "basePlate.hole",
  "groups.washer": "basePlate.washer",
};

/** True where a rule that takes `takes` looks at a key of the job file, as `rods.grade` or `groups[1].rods.grade`. */
export function isTaken(takes: readonly string[], path: string): boolean {
  const inGroup = path.replace(/^groups\[\d+\]/, "groups");
  const names = [inGroup, plainKey(path)];
  return takes.some((key) => names.some((name) => name === key || name.startsWith(`${key}.`)));
}

/** The key as a base without groups has it. */
function plainKey(path: string): string {
  const inGroup = path.replace(/^groups\[\d+\]/, "groups");
  return SHARED[inGroup] ?? inGroup.replace(/^groups\./, "");
}

/** `row` where the base itself gave all that is taken, else `row; default: template.thickness; kind heavy: rods.grade`. */
export function givenBy({ origins }: Pick<Base, "origins">, takes: readonly string[]): string {
  const byGiver = new Map<string, Set<string>>();
  for (const [path, giver] of Object.entries(origins)) {
    if (!isTaken(takes, path)) continue;
    byGiver.set(giver, (byGiver.get(giver) ?? new Set()).add(plainKey(path)));
  }
  const givers = [...byGiver].sort(([a], [b]) => (a < b ? -1 : 1));
  return ["row", ...givers.map(([giver, keys]) => `${giver}: ${[...keys].sort().join(", ")}`)].join("; ");
}
