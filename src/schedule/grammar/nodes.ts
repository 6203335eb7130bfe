/** Nodes of a job file that all stand in one cell. */
import type { SourceMap, SourceNode, SourcePlace } from "../../readers/source.js";

/** Keys of a group, each with its node. */
export type Keys = Readonly<Record<string, SourceNode>>;

/** A scalar that stands in a cell; an empty one is a text that says nothing, not an omission. */
export function scalar(text: string, place: SourcePlace): SourceNode {
  return { kind: "scalar", text: text.trim(), style: "quoted", place };
}

/** A group of keys that all stand in one cell. */
export function map(keys: Keys, place: SourcePlace): SourceMap {
  return { kind: "map", entries: Object.entries(keys).map(([key, value]) => ({ key, place, value })), place };
}

/** A list of nodes that all stand in one cell. */
export function list(items: readonly SourceNode[], place: SourcePlace): SourceNode {
  return { kind: "list", items, place };
}
