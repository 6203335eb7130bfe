/** Whether two cells say the same. */
import type { SourceNode } from "../readers/source.js";
import { parseLength } from "../units/index.js";

/** Texts that read as one length, or that differ in case and spaces alone; lists and groups of keys part by part. */
export function isSameValue(a: SourceNode, b: SourceNode): boolean {
  if (a.kind === "scalar" && b.kind === "scalar") return isSameText(a.text, b.text);
  if (a.kind === "list" && b.kind === "list") return isSameList(a.items, b.items);
  if (a.kind !== "map" || b.kind !== "map" || a.entries.length !== b.entries.length) return false;
  return a.entries.every(({ key, value }) =>
    b.entries.some((other) => other.key === key && isSameValue(value, other.value)),
  );
}

function isSameList(a: readonly SourceNode[], b: readonly SourceNode[]): boolean {
  return a.length === b.length && a.every((item, index) => isSameNode(item, b[index]));
}

function isSameNode(a: SourceNode, b: SourceNode | undefined): boolean {
  return b !== undefined && isSameValue(a, b);
}

function isSameText(a: string, b: string): boolean {
  if (plain(a) === plain(b)) return true;
  const [one, other] = [parseLength(a, "in"), parseLength(b, "in")];
  return one.ok && other.ok && one.value === other.value;
}

function plain(text: string): string {
  return text.toLowerCase().replace(/\s+/g, " ").trim();
}
