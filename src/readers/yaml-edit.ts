/** Changes of a YAML text where its values stand: everything around them, comments too, stays as it was written. */
import type { Document, Pair, ParsedNode, YAMLMap, YAMLSeq } from "yaml";
import { isMap, isScalar, isSeq, parseDocument } from "yaml";

import type { TextPieces } from "./yaml-pieces.js";

/** `at`: characters from the start; `was` stands there, and `now` is put in its place. */
export interface Splice {
  readonly at: number;
  readonly was: string;
  readonly now: string;
}

/** Keys and indices from the root. */
export type KeyPath = readonly (string | number)[];

/**
 * What is changed: a value as a person types it, or, where it is `flow`, a list or group as YAML on one line; a key or item
 * taken out; an item of a list as its YAML lines.
 */
export type KeyEdit =
  | { readonly kind: "set"; readonly path: KeyPath; readonly text: string; readonly flow?: true }
  | { readonly kind: "remove"; readonly path: KeyPath }
  | { readonly kind: "insert"; readonly path: KeyPath; readonly index: number; readonly lines: string };

/** The text after a splice. */
export function spliced(text: string, { at, was, now }: Splice): string {
  return text.slice(0, at) + now + text.slice(at + was.length);
}

/** What takes a splice back. */
export function inverse({ at, was, now }: Splice): Splice {
  return { at, was: now, now: was };
}

/** The splice between two texts: what they have in common at their ends stays. */
export function spliceBetween(old: string, now: string): Splice {
  const most = Math.min(old.length, now.length);
  let from = 0;
  while (from < most && old[from] === now[from]) from += 1;
  let same = 0;
  while (same < most - from && old.at(-1 - same) === now.at(-1 - same)) same += 1;
  return splice(old, from, old.length - same, now.slice(from, now.length - same));
}

/** The splice that makes this change; null where the text has no such place. */
export function spliceOf(text: string, edit: KeyEdit, _pieces: TextPieces | null = null): Splice | null {
  const document = parseDocument(text, {
    schema: "failsafe",
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: "error",
  });
  switch (edit.kind) {
    case "set":
      return setValue(text, document, edit.path, edit.flow === true ? edit.text : scalarText(edit.text));
    case "remove":
      return removeValue(text, document, edit.path);
    case "insert":
      return insertItem(text, document, edit);
  }
}

/** A text as YAML reads it back unchanged, wherever it stands. */
export function scalarText(text: string): string {
  const isPlain =
    /^[A-Za-z0-9./+-][^#:,[\]{}&*!|>'"%@`\n\r\t]*$/.test(text) && text === text.trim() && !/^[-?](\s|$)/.test(text);
  return isPlain && text !== "~" && text !== "null" ? text : JSON.stringify(text);
}

type Node = ParsedNode | null | undefined;

function setValue(text: string, document: Document.Parsed, path: KeyPath, value: string): Splice | null {
  let node: Node = document.contents;
  for (const [depth, step] of path.entries()) {
    const next: Node = stepInto(node, step);
    if (next === undefined || next === null || (isScalar(next) && next.range[0] === next.range[1])) {
      return isMap(node) ? addKey(text, node as YAMLMap.Parsed, path.slice(depth), value) : null;
    }
    node = next;
  }
  return node?.range === undefined || node.range === null
    ? null
    : splice(text, node.range[0], endOfNode(text, node), value);
}

/** The range of a list or group in lines of its own runs up to what follows it. */
function endOfNode(text: string, node: ParsedNode): number {
  const isBlock = (isMap(node) || isSeq(node)) && node.flow !== true;
  return isBlock ? node.range[0] + text.slice(node.range[0], node.range[1]).trimEnd().length : node.range[1];
}

function stepInto(node: Node, step: string | number): Node {
  if (isSeq(node)) return node.items[Number(step)] as Node;
  return isMap(node) ? (pairOf(node as YAMLMap.Parsed, step)?.value as Node) : undefined;
}

function pairOf(map: YAMLMap.Parsed, key: string | number): Pair<ParsedNode, ParsedNode | null> | undefined {
  return map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(key));
}

function splice(text: string, from: number, to: number, now: string): Splice {
  return { at: from, was: text.slice(from, to), now };
}

/** The rest of the path as a key of this map, what is under it in braces. */
function addKey(text: string, map: YAMLMap.Parsed, path: KeyPath, value: string): Splice {
  const [key = "", ...under] = path.map(String);
  const inner = under.reduceRight((held, each) => `{ ${each}: ${held} }`, value);
  const known = pairOf(map, key);
  if (known !== undefined && isScalar(known.key)) {
    const end = (known.key as ParsedNode).range[1];
    const colon = text.indexOf(":", end) + 1;
    return splice(text, colon, colon, ` ${inner}`);
  }
  const last = map.items.at(-1);
  const end = last === undefined ? map.range[0] + 1 : endOfPair(last);
  if (map.flow === true)
    return splice(text, end, end, last === undefined ? ` ${key}: ${inner} ` : `, ${key}: ${inner}`);
  const indent = columnOf(text, (map.items[0]?.key as ParsedNode | undefined)?.range[0] ?? end);
  const lineEnd = text.indexOf("\n", end);
  const at = lineEnd < 0 ? text.length : lineEnd;
  return splice(text, at, at, `\n${" ".repeat(indent)}${key}: ${inner}`);
}

function endOfPair({ key, value }: Pair<ParsedNode, ParsedNode | null>): number {
  return (value ?? key).range[1];
}

function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf("\n", offset - 1) + 1);
}

function removeValue(text: string, document: Document.Parsed, path: KeyPath): Splice | null {
  const holder = path.slice(0, -1).reduce<Node>((node, step) => stepInto(node, step), document.contents);
  const step = path.at(-1) ?? "";
  if (isSeq(holder)) return removeItem(text, holder.items[Number(step)] as Node);
  if (!isMap(holder)) return null;
  const map = holder as YAMLMap.Parsed;
  const pair = pairOf(map, step);
  if (pair === undefined) return null;
  const [from, to] = [(pair.key as ParsedNode).range[0], endOfPair(pair)];
  return map.flow === true ? removeFlow(text, from, to) : wholeLines(text, from, to);
}

function removeFlow(text: string, from: number, to: number): Splice {
  const after = /^\s*,\s*/.exec(text.slice(to))?.[0].length ?? 0;
  if (after > 0) return splice(text, from, to + after, "");
  const before = /,\s*$/.exec(text.slice(0, from))?.[0].length ?? 0;
  return splice(text, from - before, to, "");
}

function wholeLines(text: string, from: number, to: number): Splice {
  const start = text.lastIndexOf("\n", from - 1) + 1;
  const end = text.indexOf("\n", to - 1);
  return splice(text, start, end < 0 ? text.length : end + 1, "");
}

function removeItem(text: string, item: Node): Splice | null {
  if (item === undefined || item === null) return null;
  return wholeLines(text, item.range[0], item.range[1]);
}

function insertItem(
  text: string,
  document: Document.Parsed,
  edit: Extract<KeyEdit, { kind: "insert" }>,
): Splice | null {
  const list = edit.path.reduce<Node>((node, step) => stepInto(node, step), document.contents);
  if (!isSeq(list) || list.items.length === 0) return firstItem(text, document, edit.path, edit.lines);
  if (list.flow === true) return insertFlow(text, list as YAMLSeq.Parsed, edit);
  const before = list.items[edit.index] as Node;
  const first = list.items[0] as Node;
  if (first === undefined || first === null) return null;
  const dash = text.lastIndexOf("-", first.range[0] - 1);
  const indent = " ".repeat(columnOf(text, dash));
  const lines = edit.lines
    .trimEnd()
    .split("\n")
    .map((line, i) => `${indent}${i === 0 ? "- " : "  "}${line}\n`)
    .join("");
  const at =
    before === undefined || before === null
      ? endOfLines(text, list.range[1])
      : text.lastIndexOf("\n", before.range[0] - 1) + 1;
  const isOpen = at === text.length && !text.endsWith("\n");
  return splice(text, at, at, isOpen ? `\n${lines}` : lines);
}

/** An item of a list in brackets, where it is one line in braces. */
function insertFlow(
  text: string,
  { items }: YAMLSeq.Parsed,
  { index, lines }: Extract<KeyEdit, { kind: "insert" }>,
): Splice | null {
  if (!/^\{.*\}$/.test(lines.trim())) return null;
  const before = items[index];
  if (before !== undefined) return splice(text, before.range[0], before.range[0], `${lines.trim()}, `);
  const end = items.at(-1)?.range[1] ?? 0;
  return splice(text, end, end, `, ${lines.trim()}`);
}

/** The first item of a list of the root that is not there yet, or is empty: before the bases, which are the longest. */
function firstItem(text: string, document: Document.Parsed, path: KeyPath, lines: string): Splice | null {
  const root = document.contents;
  const [key = "", ...under] = path.map(String);
  if (!isMap(root) || root.flow === true || under.length > 0) return null;
  const map = root as YAMLMap.Parsed;
  const written = `\n  - ${lines.trimEnd().split("\n").join("\n    ")}`;
  const known = pairOf(map, key);
  if (known !== undefined) return fillPair(text, known, written);
  const at = placeOfNewKey(text, map);
  const gap = at > 0 && text[at - 1] !== "\n" ? "\n" : "";
  return splice(text, at, at, `${gap}${key}:${written}\n`);
}

/** A pair without a value, or with an empty list, gets these lines. */
function fillPair(text: string, { key, value }: Pair<ParsedNode, ParsedNode | null>, written: string): Splice | null {
  const colon = text.indexOf(":", key.range[1]) + 1;
  if (value === null || (isScalar(value) && value.range[0] === value.range[1]))
    return splice(text, colon, colon, written);
  return isSeq(value) ? splice(text, colon, value.range[1], written) : null;
}

/** After the key that stands before `bases`, below its lines; at the end of a text without. */
function placeOfNewKey(text: string, map: YAMLMap.Parsed): number {
  const bases = map.items.findIndex(({ key }) => isScalar(key) && String(key.value) === "bases");
  const last = map.items[bases < 0 ? map.items.length - 1 : bases - 1];
  if (last === undefined) return 0;
  const end = endOfPair(last);
  return text[end - 1] === "\n" ? end : endOfLines(text, end);
}

function endOfLines(text: string, offset: number): number {
  const end = text.indexOf("\n", offset - 1);
  return end < 0 ? text.length : end + 1;
}
