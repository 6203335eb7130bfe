/**
 * Values as YAML that reads back to the same: lines a person can go through. Texts are quoted only where YAML would make
 * something else of them: `007`, `1-1/4` and `1E2` stay as they are, since the reader keeps what is written.
 */
import type { Node, Pair } from "yaml";
import { Document, Scalar, YAMLMap, YAMLSeq } from "yaml";
import type { SourceNode } from "../readers/source.js";
import { isNothing } from "../readers/source.js";

/** Columns that a group of keys may take on one line. */
const WIDEST_LINE = 110;

/** The values of a list one after the other, as `- ...` lines indented by two. */
export function writeYamlItems(items: readonly SourceNode[]): string {
  return items.map((item) => indented(documentText(sequence([nodeOf(item, 4)], false)))).join("");
}

function indented(text: string): string {
  return text.replace(/^(?=.)/gm, "  ");
}

/** One text as a scalar on a line, quoted where it has to be. */
export function yamlScalar(text: string): string {
  return documentText(sequence([scalarOf(text, false)], true))
    .trim()
    .slice(1, -1)
    .trim();
}

/** Any value on one line. */
export function yamlNode(node: SourceNode): string {
  const contents = sequence([flowNode(node)], true);
  return documentText(contents).trim().slice(1, -1).trim();
}

function flowNode(node: SourceNode): Node {
  switch (node.kind) {
    case "scalar":
      return scalarOf(node.text, isNothing(node));
    case "list":
      return sequence(node.items.map(flowNode), true);
    case "map":
      return flowMap(node.entries.map(({ key, value }): [string, Node] => [key, flowNode(value)]));
  }
}

function documentText(contents: Node): string {
  const document = new Document(null, { schema: "failsafe" });
  document.contents = contents as typeof document.contents;
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function nodeOf(node: SourceNode, indent: number): Node {
  switch (node.kind) {
    case "scalar":
      return scalarOf(node.text, isNothing(node));
    case "list": {
      const isFlow = isShort(node, indent);
      return sequence(
        node.items.map((item) => nodeOf(item, indent + 2)),
        isFlow,
      );
    }
    case "map": {
      const entries = node.entries.map(({ key, value }): [string, Node] => [key, nodeOf(value, indent + 2)]);
      return indent > 4 && isShort(node, indent) ? flowMap(entries) : blockMap(entries);
    }
  }
}

/** Signs that only an escape keeps as they are. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/u;
/** What a plain scalar would be read as nothing. */
const NOTHING = new Set(["", "~", "null"]);

function scalarOf(text: string, isEmpty: boolean): Scalar {
  const scalar = new Scalar(text);
  if (!isEmpty && (NOTHING.has(text) || UNSEEN.test(text) || text !== text.trim())) scalar.type = Scalar.QUOTE_DOUBLE;
  else scalar.type = Scalar.PLAIN;
  return scalar;
}

function isShort(node: SourceNode, indent: number): boolean {
  return indent + lengthOf(node) <= WIDEST_LINE;
}

/** Characters on one line, about. */
function lengthOf(node: SourceNode): number {
  switch (node.kind) {
    case "scalar":
      return node.text.length;
    case "list":
      return node.items.reduce((sum, item) => sum + lengthOf(item) + 2, 2);
    case "map":
      return node.entries.reduce((sum, { key, value }) => sum + key.length + 4 + lengthOf(value), 2);
  }
}

function pairs(map: YAMLMap, entries: readonly (readonly [string, Node])[]): YAMLMap {
  for (const [key, value] of entries) map.add({ key: scalarOf(key, false), value } as Pair);
  return map;
}

function blockMap(entries: readonly (readonly [string, Node])[]): YAMLMap {
  return pairs(new YAMLMap(), entries);
}

function flowMap(entries: readonly (readonly [string, Node])[]): YAMLMap {
  const map = blockMap(entries);
  map.flow = true;
  return map;
}

function sequence(items: readonly Node[], isFlow: boolean): YAMLSeq {
  const list = new YAMLSeq();
  for (const item of items) list.add(item);
  list.flow = isFlow;
  return list;
}
