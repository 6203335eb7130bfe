/** Nodes as one line of text, for the read-as table. */
import type { SourceNode } from "../readers/source.js";

/** A value by its key: `["template.opening.x", "8"]`. Groups of keys are taken apart, lists are not. */
export function leavesOf(key: string, node: SourceNode): readonly (readonly [string, string])[] {
  if (node.kind !== "map") return [[key, lineOf(node)]];
  return node.entries.flatMap((entry) => leavesOf(`${key}.${entry.key}`, entry.value));
}

/** `-9; 0; 9`, `-6,5; 6,5`. */
function lineOf(node: SourceNode): string {
  if (node.kind === "scalar") return node.text;
  if (node.kind === "map") return node.entries.map(({ key, value }) => `${key} ${lineOf(value)}`).join(", ");
  return node.items.map((item) => (item.kind === "list" ? item.items.map(lineOf).join(",") : lineOf(item))).join("; ");
}
