/**
 * Joining the layers of a base: its own keys, over those of its kind, over the defaults. What is joined are the nodes as
 * written, before any schema reads them, so that each value keeps its own place.
 */
import { ownValue } from "../../diagnostics/own-value.js";
import type { SourceEntry, SourceList, SourceMap, SourceNode } from "../../readers/source.js";
import { findEntry, isNothing } from "../../readers/source.js";

/** A group of keys that is joined key by key; every other value is a choice, and taken whole. */
interface JoinedGroup {
  /** Sets of keys that say one thing in several ways: one that the upper layer writes, `~` too, stops all of the lower's. */
  readonly alternatives: readonly (readonly string[])[];
  /** Key -> keys of the lower layer that say nothing once the upper layer gives it. */
  readonly settles: Readonly<Record<string, readonly string[]>>;
}

const SHAPE = ["x", "y", "diameter"] as const;
/** Corners are those of a rectangle. */
const PLAN = { alternatives: [SHAPE], settles: { diameter: ["corner"] } } as const satisfies JoinedGroup;

/** A finish is said with its zinc; a thread at the lower end with what anchors it. */
const ROD_KEYS_SETTLED = {
  finish: ["zincGrowth", "zincProcess", "nutFinish"],
  bottom: ["bottomThreads"],
} as const;

const JOINED_GROUPS: Readonly<Record<string, JoinedGroup>> = {
  rods: { alternatives: [], settles: ROD_KEYS_SETTLED },
  basePlate: { ...PLAN, alternatives: [SHAPE, ["pattern", "from"]] },
  concrete: PLAN,
  template: { alternatives: [], settles: {} },
};

/** The value of an entry of a base that is joined key by key: a group of keys; null for a choice, which is taken whole. */
export function joinedGroup({ key, value }: SourceEntry): SourceMap | null {
  return value.kind === "map" && Object.hasOwn(JOINED_GROUPS, key) ? value : null;
}

const BASE: JoinedGroup = { alternatives: [["pattern", "groups"]], settles: { groups: ["rods"] } };

/** The upper layer with what the lower one adds to it. An upper layer that is no group of keys stays as it is. */
export function joinLayers(upper: SourceNode, lower: SourceNode): SourceNode {
  if (upper.kind !== "map" || lower.kind !== "map") return upper;
  const joined = withoutEmptyRods(joinKeys(upper, lower, BASE, joinValue));
  const [groups, rods] = [findEntry(upper, "groups"), findEntry(lower, "rods")];
  if (groups?.value.kind !== "list" || rods === undefined) return joined;
  return replaceEntry(joined, { ...groups, value: withRods(groups.value, rods) });
}

/** A row of a schedule has `rods` even where none of its cells says anything of them: beside groups that is nothing. */
function withoutEmptyRods(base: SourceMap): SourceMap {
  const groups = findEntry(base, "groups");
  if (groups === undefined || isNothing(groups.value)) return base;
  const isEmpty = ({ key, value }: SourceEntry) => key === "rods" && value.kind === "map" && value.entries.length === 0;
  return { ...base, entries: base.entries.filter((entry) => !isEmpty(entry)) };
}

type JoinValue = (own: SourceEntry, given: SourceEntry) => SourceEntry;

function joinKeys(upper: SourceMap, lower: SourceMap, group: JoinedGroup, join: JoinValue): SourceMap {
  const own = upper.entries.map((entry) => {
    const given = findEntry(lower, entry.key);
    return given === undefined ? entry : join(entry, given);
  });
  const added = lower.entries.filter(({ key }) => findEntry(upper, key) === undefined && !isStopped(key, upper, group));
  return { ...upper, entries: [...own, ...added.map((entry) => standIn(entry, upper))] };
}

function isStopped(key: string, upper: SourceMap, { alternatives, settles }: JoinedGroup): boolean {
  const isWritten = (other: string) => findEntry(upper, other) !== undefined;
  const says = (other: SourceEntry) => !isNothing(other.value) && ownValue(settles, other.key)?.includes(key) === true;
  return alternatives.some((set) => set.includes(key) && set.some(isWritten)) || upper.entries.some(says);
}

/** A group that the upper layer does not have is one of its own: what it lacks is asked for there. */
function standIn(entry: SourceEntry, upper: SourceMap): SourceEntry {
  const group = joinedGroup(entry);
  return group === null ? entry : { ...entry, value: { ...group, place: upper.place } };
}

function joinValue(own: SourceEntry, given: SourceEntry): SourceEntry {
  const group = ownValue(JOINED_GROUPS, own.key);
  if (group === undefined || own.value.kind !== "map" || given.value.kind !== "map") return own;
  const lower = own.key === "template" ? withoutOtherGrade(given.value, own.value) : given.value;
  return { ...own, value: joinKeys(own.value, lower, group, (entry) => entry) };
}

/** The grade of steel is none of a board, and the other way round. */
function withoutOtherGrade(lower: SourceMap, upper: SourceMap): SourceMap {
  const own = materialIn(upper);
  if (own === null || own === (materialIn(lower) ?? "steel")) return lower;
  return { ...lower, entries: lower.entries.filter(({ key }) => key !== "grade") };
}

function materialIn(template: SourceMap): string | null {
  const material = findEntry(template, "material");
  return material?.value.kind === "scalar" ? material.value.text.trim().toLowerCase() : null;
}

/** Every group of rods of a base takes what the lower layer says of rods. */
function withRods(groups: SourceList, rods: SourceEntry): SourceList {
  const items = groups.items.map((item) => {
    if (item.kind !== "map") return item;
    const own = findEntry(item, "rods");
    return own === undefined
      ? { ...item, entries: [...item.entries, standIn(rods, item)] }
      : replaceEntry(item, joinValue(own, rods));
  });
  return { ...groups, items };
}

function replaceEntry(map: SourceMap, entry: SourceEntry): SourceMap {
  return { ...map, entries: map.entries.map((other) => (other.key === entry.key ? entry : other)) };
}
