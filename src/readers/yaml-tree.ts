/** The values of a YAML text without their places: what an edit must leave as it was, and what it must change. */
import type { Node, Pair } from "yaml";
import { isAlias, isMap, isPair, isScalar, isSeq, parseDocument } from "yaml";
import type { KeyEdit, KeyPath } from "./yaml-splice.js";

/** A text, a list, or a group of keys, perhaps with a name by which it is repeated; null: nothing is given. */
type Tree = string | null | readonly Tree[] | ReadonlyMap<string, Tree> | Named;

interface Named {
  readonly name: string;
  readonly value: Tree;
}

/** What a text says; `words`: the same text for the same values, in whatever order the keys stand. */
export interface ReadTree {
  readonly root: Tree;
  readonly words: string;
}

/** null where the text is no YAML. What is named to be repeated is one value: changed within, it changes elsewhere too. */
export function treeOf(text: string): ReadTree | null {
  try {
    const document = parseDocument(text, OPTIONS);
    if (document.errors.length > 0 || document.warnings.length > 0) return null;
    const root = treeIn(document.contents);
    return root === undefined ? null : { root, words: wordsOf(root) };
  } catch {
    return null;
  }
}

/** How texts are parsed to be edited. */
export const OPTIONS = {
  schema: "failsafe",
  prettyErrors: false,
  uniqueKeys: true,
  logLevel: "error",
  keepSourceTokens: true,
} as const;

/** undefined where something in it has no place of its own. */
function treeIn(node: Node | Pair | null | undefined): Tree | undefined {
  if (node === null || node === undefined) return null;
  if (isPair(node)) return undefined;
  if (isAlias(node)) return `\0*${node.source}`;
  const { anchor } = node as { readonly anchor?: string };
  const plain = plainTree(node);
  return anchor === undefined || plain === undefined ? plain : { name: anchor, value: plain };
}

function plainTree(node: Node): Tree | undefined {
  if (isScalar(node)) {
    const isNothing = (node.type === "PLAIN" || node.type === undefined) && NOTHING.has(String(node.value ?? ""));
    return isNothing ? null : String(node.value ?? "");
  }
  if (isSeq(node)) {
    const items = node.items.map((item) => treeIn(item as Node));
    return items.some((item) => item === undefined) ? undefined : items.map((item) => item ?? null);
  }
  if (!isMap(node)) return undefined;
  const entries = node.items.map(
    ({ key, value }) => [isScalar(key) ? String(key.value) : undefined, treeIn(value as Node)] as const,
  );
  const known = entries.flatMap(([key, value]) =>
    key === undefined || value === undefined ? [] : [[key, value] as const],
  );
  return known.length < entries.length ? undefined : new Map(known);
}

const NOTHING: ReadonlySet<string> = new Set(["", "~", "null"]);

function wordsOf(tree: Tree): string {
  if (tree === null || typeof tree === "string") return JSON.stringify(tree);
  if (isNamed(tree)) return JSON.stringify(`\0&${tree.name} ${wordsOf(tree.value)}`);
  if (!(tree instanceof Map)) return `[${(tree as readonly Tree[]).map(wordsOf).join()}]`;
  const entries = [...tree].map(([key, value]) => `${JSON.stringify(key)}:${wordsOf(value)}`);
  return `{${entries.sort().join()}}`;
}

/** The words of the values after changes, one made after the other; null where one cannot be made. */
export function treeAfter({ root }: ReadTree, ...edits: readonly KeyEdit[]): string | null {
  let made: Tree | undefined = root;
  for (const edit of edits) {
    made = changed(made, edit);
    if (made === undefined) return null;
  }
  return wordsOf(made);
}

function changed(root: Tree, edit: KeyEdit): Tree | undefined {
  switch (edit.kind) {
    case "set": {
      const value = edit.flow === true ? treeOf(edit.text)?.root : edit.text;
      return value === undefined ? undefined : at(root, edit.path, () => value, edit.everywhere);
    }
    case "remove": {
      const [path, last] = [edit.path.slice(0, -1), edit.path.at(-1)];
      return last === undefined ? undefined : at(root, path, (holder) => without(holder, last), edit.everywhere);
    }
    case "insert": {
      const item = treeOf(edit.lines)?.root;
      if (item === undefined) return undefined;
      return at(root, edit.path, (list) =>
        list === null ? [item] : isList(list) ? list.toSpliced(edit.index, 0, item) : undefined,
      );
    }
    case "move":
      return at(root, edit.path, (list) => (isList(list) ? movedItem(list, edit.from, edit.to) : undefined));
    case "duplicate": {
      const index = Number(edit.path.at(-1));
      return at(root, edit.path.slice(0, -1), (list) => (isList(list) ? doubled(list, index, edit.sets) : undefined));
    }
  }
}

function isList(tree: Tree): tree is readonly Tree[] {
  return Array.isArray(tree);
}

function isNamed(tree: Tree): tree is Named {
  return tree !== null && typeof tree === "object" && "name" in tree;
}

function movedItem(list: readonly Tree[], from: number, to: number): Tree | undefined {
  const item = list[from];
  if (item === undefined || to < 0 || to >= list.length) return undefined;
  return list.toSpliced(from, 1).toSpliced(to, 0, item);
}

type Sets = Extract<KeyEdit, { kind: "duplicate" }>["sets"];

function doubled(list: readonly Tree[], index: number, sets: Sets): Tree | undefined {
  const item = list[index];
  if (item === undefined) return undefined;
  const made = sets.reduce<Tree | undefined>((tree, { path, text }) => tree && at(tree, path, () => text), item);
  return made === undefined ? undefined : list.toSpliced(index + 1, 0, made);
}

function without(holder: Tree, step: string | number): Tree | undefined {
  if (isList(holder)) return Number(step) in holder ? holder.toSpliced(Number(step), 1) : undefined;
  if (!(holder instanceof Map) || !holder.has(String(step))) return undefined;
  return new Map([...holder].filter(([key]) => key !== String(step)));
}

type Change = (part: Tree) => Tree | undefined;

/** The tree with what `change` makes of the part at a path; groups that are not there are made. `everywhere`: within what is repeated too. */
function at(tree: Tree, path: KeyPath, change: Change, everywhere = false): Tree | undefined {
  const [step, ...rest] = path;
  if (everywhere && isNamed(tree)) return atNamed(tree, path, change);
  if (step === undefined) return change(tree);
  if (typeof step === "number" || isList(tree)) return atIndex(tree, Number(step), rest, change, everywhere);
  if (tree !== null && !(tree instanceof Map)) return undefined;
  const part = at(tree?.get(step) ?? null, rest, change, everywhere);
  return part === undefined ? undefined : new Map([...(tree ?? []), [step, part]]);
}

function atNamed({ name, value }: Named, path: KeyPath, change: Change): Tree | undefined {
  const made = at(value, path, change, true);
  return made === undefined ? undefined : { name, value: made };
}

function atIndex(tree: Tree, index: number, rest: KeyPath, change: Change, everywhere: boolean): Tree | undefined {
  const list = tree ?? [];
  if (!isList(list) || !(index >= 0 && index <= list.length)) return undefined;
  const part = at(list[index] ?? null, rest, change, everywhere);
  return part === undefined ? undefined : list.toSpliced(index, 1, part);
}
