/** What is written of a base, by key path: one value, a list, a group of keys, as the texts of cells and as YAML on one line. */
import { scalarText } from "../../readers/yaml-edit.js";

/** Texts by key path, as `rods.diameter`, `pattern.at[0][1]`. */
export type Texts = Readonly<Record<string, string>>;

/** A value with what is under it. */
type Tree = string | readonly Tree[] | { readonly [key: string]: Tree };

type Growing = string | Map<string, Growing>;

/** True where a key itself, or something under it, is written. */
export function isWritten(texts: Texts, key: string): boolean {
  return texts[key] !== undefined || Object.keys(texts).some((path) => isUnder(path, key));
}

function isUnder(path: string, key: string): boolean {
  const next = path[key.length];
  return path.startsWith(key) && (next === "." || next === "[");
}

/** The texts under a key, their paths beginning there. */
export function textsUnder(texts: Texts, key: string): Texts {
  const under = Object.entries(texts).filter(([path]) => isUnder(path, key));
  return Object.fromEntries(under.map(([path, text]) => [path.slice(key.length).replace(/^\./, ""), text]));
}

/** Items of a list of scalars: `pattern.x[0]`, `pattern.x[1]`. */
export function listUnder(texts: Texts, key: string): readonly string[] {
  return Object.entries(textsUnder(texts, key)).map(([, text]) => text);
}

/** A value as it is typed: one text as it is, a list or group on one line. */
export function flowText(texts: Texts, key: string): string {
  const own = texts[key];
  if (own !== undefined) return own;
  const under = textsUnder(texts, key);
  return Object.keys(under).length === 0 ? "" : flow(treeOf(under));
}

/** A value as it is shown: `plate, shape square, size 80`. */
export function plainText(texts: Texts, key: string): string {
  const own = texts[key];
  if (own !== undefined) return own;
  const under = textsUnder(texts, key);
  return Object.keys(under).length === 0 ? "" : plain(treeOf(under));
}

function treeOf(texts: Texts): Tree {
  const root = new Map<string, Growing>();
  for (const [path, text] of Object.entries(texts)) {
    const steps = path.match(/[^.[\]]+/g) ?? [];
    let at = root;
    for (const step of steps.slice(0, -1)) {
      const next = at.get(step);
      const into = next instanceof Map ? next : new Map<string, Growing>();
      at.set(step, into);
      at = into;
    }
    at.set(steps.at(-1) ?? "", text);
  }
  return grown(root);
}

function grown(node: Growing): Tree {
  if (typeof node === "string") return node;
  const entries = [...node].map(([key, value]) => [key, grown(value)] as const);
  const isList = entries.every(([key], index) => key === String(index));
  return isList ? entries.map(([, value]) => value) : Object.fromEntries(entries);
}

function flow(tree: Tree): string {
  if (typeof tree === "string") return scalarText(tree);
  if (Array.isArray(tree)) return `[${tree.map(flow).join(", ")}]`;
  return `{ ${Object.entries(tree)
    .map(([key, value]) => `${key}: ${flow(value)}`)
    .join(", ")} }`;
}

function plain(tree: Tree): string {
  if (typeof tree === "string") return tree;
  if (Array.isArray(tree))
    return tree.map((item) => (Array.isArray(item) ? item.map(plain).join(",") : plain(item))).join("; ");
  return Object.entries(tree)
    .map(([key, value]) => (key === "kind" ? plain(value) : `${key} ${plain(value)}`))
    .join(", ");
}
