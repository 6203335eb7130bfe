/** Values that a YAML text names (`&name`) and repeats (`*name`), by their key paths. */
import type { Node } from "yaml";
import { isAlias, isMap, isScalar, isSeq, parseDocument } from "yaml";
import { OPTIONS } from "./yaml-tree.js";

/** `path`: where it stands, as `bases[1].pattern`; `repeatedAt`: where its name stands instead of it. */
export interface RepeatedValue {
  readonly name: string;
  readonly path: string;
  readonly repeatedAt: readonly string[];
}

/** Of most texts none; a name that is given again stands for the later value from there on. */
export function repeatedValues(text: string): readonly RepeatedValue[] {
  if (!/(?:^|[\s[{,])&[^\s&]/.test(text) || !/(?:^|[\s[{,])\*[^\s*]/.test(text)) return [];
  const all: (RepeatedValue & { readonly repeatedAt: string[] })[] = [];
  const visit = (node: Node | null | undefined, path: string): void => {
    if (node === null || node === undefined) return;
    if (isAlias(node)) {
      all.findLast(({ name }) => name === node.source)?.repeatedAt.push(path);
      return;
    }
    const { anchor } = node as { readonly anchor?: string };
    if (anchor !== undefined) all.push({ name: anchor, path, repeatedAt: [] });
    if (isSeq(node)) for (const [index, item] of node.items.entries()) visit(item as Node, `${path}[${index}]`);
    if (!isMap(node)) return;
    for (const { key, value } of node.items)
      if (isScalar(key)) visit(value as Node, path === "" ? String(key.value) : `${path}.${key.value}`);
  };
  visit(parseDocument(text, OPTIONS).contents, "");
  return all.filter(({ repeatedAt }) => repeatedAt.length > 0);
}
