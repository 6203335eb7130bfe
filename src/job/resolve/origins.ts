/** Who gave the values of a base, where it is not the base's own row. */
import type { SourceEntry, SourceNode } from "../../readers/source.js";
import { findEntry, isNothing } from "../../readers/source.js";
import type { DocumentPath } from "../document.js";
import { joinPath } from "../document.js";
import { joinedGroup } from "./join-layers.js";

/** Key path, as `rods.grade` or `groups[1].rods.grade`, -> `default`, `kind heavy`, `note 2`; choices by the key of the whole. */
export function originsOf(root: SourceNode): Readonly<Record<string, string>> {
  return Object.fromEntries(originsIn(root, "", undefined));
}

type Origin = readonly [path: string, givenBy: string];

function originsIn(node: SourceNode, path: string, giver: string | undefined): readonly Origin[] {
  if (node.kind !== "map") return [];
  return node.entries.flatMap((entry): readonly Origin[] => {
    const [own, givenBy] = [joinPath(path, [entry.key]), entry.givenBy ?? giver];
    const group = joinedGroup(entry);
    if (group !== null) return originsIn(group, own, givenBy);
    if (entry.key === "groups" && entry.value.kind === "list") {
      return entry.value.items.flatMap((item, index) => originsIn(item, joinPath(own, [index]), givenBy));
    }
    return givenBy === undefined || isNothing(entry.value) ? [] : [[own, givenBy]];
  });
}

/** Who gave the value at a path of a base; null: the base itself. */
export function giverOf(root: SourceNode, path: DocumentPath): string | null {
  let node: SourceNode | undefined = root;
  let giver: string | null = null;
  for (const step of path) {
    if (node?.kind === "list") node = node.items[Number(step)];
    else {
      const entry: SourceEntry | undefined = findEntry(node, String(step));
      giver = entry?.givenBy ?? giver;
      node = entry?.value;
    }
  }
  return giver;
}
