/** What was taken for a base -> the node that a job file would have for it. */
import { ownValue } from "../diagnostics/own-value.js";
import { kindMeant } from "../patterns/index.js";
import type { SourceEntry, SourceMap, SourceNode, SourcePlace } from "../readers/source.js";
import { map, scalar } from "./grammar/index.js";
import { HELD_AGAINST } from "./settle-pattern.js";
import type { Taken } from "./sheet-cell.js";

/** Rods of one size of a base, as a row gives them. */
export interface TakenGroup {
  readonly place: SourcePlace;
  readonly values: readonly Taken[];
}

/** A base with what its rows give. */
export interface TakenBase {
  readonly place: SourcePlace;
  readonly own: readonly Taken[];
  readonly groups: readonly TakenGroup[];
}

type Given = Pick<SourceEntry, "givenBy"> & { readonly node: SourceNode };
type Values = Readonly<Record<string, Given>>;
type Keyed = readonly [string, Given];

/** One group: its holes and washer stand where a base without groups has them. */
const OF_ONE_GROUP: Readonly<Record<string, string>> = {
  hole: "template.hole",
  baseHole: "basePlate.hole",
  washer: "basePlate.washer",
};

/** Where the key of a base with one group, or several, stands in the job file. */
export function keyInBase(key: string, isAlone: boolean): string {
  return isAlone ? (ownValue(OF_ONE_GROUP, key) ?? key) : key;
}

/** The node of a base; of values for the same key the first is taken. */
export function toBaseNode({ place, own, groups }: TakenBase): SourceMap {
  const whole = withOutline(collect(own), place);
  const [only, ...others] = groups.map((group) => ({
    place: group.place,
    values: withKind(collect(group.values), group.place),
  }));
  if (only !== undefined && others.length === 0) {
    const moved = Object.entries(only.values).map(([key, value]): Keyed => [keyInBase(key, true), value]);
    return nest([...asked(place, "template", "rods"), ...Object.entries(whole), ...moved], place);
  }
  const items = [only, ...others].flatMap((group) =>
    group === undefined ? [] : [nest([...asked(group.place, "rods"), ...Object.entries(group.values)], group.place)],
  );
  const node = nest([...asked(place, "template"), ...Object.entries(whole)], place);
  return { ...node, entries: [...node.entries, { key: "groups", place, value: { kind: "list", items, place } }] };
}

/** The first that is filled keeps the key. */
function collect(values: readonly Taken[]): Values {
  const collected: Record<string, Given> = {};
  for (const { key, node, givenBy } of values) {
    if (key !== HELD_AGAINST) collected[key] ??= { node, ...(givenBy === undefined ? {} : { givenBy }) };
  }
  return collected;
}

/** Groups of keys that are there even when no column fills them, so that what they lack is asked for by its heading. */
function asked(place: SourcePlace, ...keys: readonly string[]): Keyed[] {
  return keys.map((key): Keyed => [key, { node: map({}, place) }]);
}

/** A pattern without a kind is the one whose columns are filled. */
function withKind(values: Values, place: SourcePlace): Values {
  const kind = values["pattern.kind"] === undefined ? kindMeant(patternCells(values)) : null;
  return kind === null ? values : { ...values, "pattern.kind": { node: scalar(kind, place) } };
}

/** Corners without an outline are those of an automatic one. */
function withOutline(values: Values, place: SourcePlace): Values {
  if (values["template.outline.corner"] === undefined || values["template.outline"] !== undefined) return values;
  return { ...values, "template.outline": { node: map({ kind: scalar("auto", place) }, place) } };
}

/** Values by the key of the pattern that they fill. */
function patternCells(values: Values): Readonly<Record<string, SourceNode>> {
  const ofPattern = Object.entries(values).filter(([key]) => key.startsWith(PATTERN));
  return Object.fromEntries(ofPattern.map(([key, { node }]) => [key.slice(PATTERN.length), node]));
}

const PATTERN = "pattern.";

/** `rods.diameter` and its like -> groups of keys. A key inside a value that is a group already joins it. */
function nest(values: readonly Keyed[], place: SourcePlace): SourceMap {
  return values.reduce<SourceMap>((whole, [key, value]) => insert(whole, key.split("."), value, place), map({}, place));
}

function insert(into: SourceMap, path: readonly string[], given: Given, place: SourcePlace): SourceMap {
  const [key = "", ...rest] = path;
  const present = into.entries.find((entry) => entry.key === key);
  if (rest.length > 0 && present !== undefined && present.value.kind !== "map") return into;
  const held = present?.value.kind === "map" ? present.value : map({}, place);
  const value = rest.length > 0 ? insert(held, rest, given, place) : join(held, given.node);
  const by = rest.length > 0 || given.givenBy === undefined ? {} : { givenBy: given.givenBy };
  const entry: SourceEntry = { key, place: given.node.place, value, ...by };
  return present === undefined
    ? { ...into, entries: [...into.entries, entry] }
    : { ...into, entries: into.entries.map((other) => (other === present ? { ...other, value } : other)) };
}

/** A cell's group of keys joins what another column put there before. */
function join(held: SourceMap, node: SourceNode): SourceNode {
  return node.kind === "map" ? { ...node, entries: [...node.entries, ...held.entries] } : node;
}
