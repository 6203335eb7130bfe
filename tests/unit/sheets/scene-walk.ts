/** Ways through a scene, for tests. */

import type { Scene, SceneGroup, SceneItem } from "../../../src/sheets/index.js";
import { textWidth } from "../../../src/sheets/text-metrics.js";

export type SceneText = Extract<SceneItem, { kind: "text" }>;

export function groupsOf(items: readonly SceneItem[], name: string): readonly SceneGroup[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return [...(item.name === name ? [item] : []), ...groupsOf(item.items, name)];
  });
}

export function textsOf(items: readonly SceneItem[]): readonly SceneText[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return textsOf(item.items);
    return item.kind === "text" ? [item] : [];
  });
}

/** Clear paper between texts that stand on one line, each beside the next, mm; below zero where they run into each other. */
export function gapsOnLines(items: readonly SceneItem[]): readonly { readonly words: string; readonly gap: number }[] {
  const lines = new Map<string, { words: string; x0: number; x1: number }[]>();
  for (const { text: words, at, height, bold, anchor } of textsOf(items)) {
    const width = textWidth(words, height, bold);
    const x0 = anchor === "end" ? at.x - width : anchor === "middle" ? at.x - width / 2 : at.x;
    const key = at.y.toFixed(3);
    lines.set(key, [...(lines.get(key) ?? []), { words, x0, x1: x0 + width }]);
  }
  return [...lines.values()].flatMap((line) => {
    const sorted = [...line].sort((a, b) => a.x0 - b.x0);
    return sorted.slice(1).map(({ words, x0 }, i) => ({
      words: `${sorted[i]?.words ?? ""} | ${words}`,
      gap: x0 - (sorted[i]?.x1 ?? x0),
    }));
  });
}

/** All words of a sheet, one text a line. */
export function wordsOf(scene: Scene): string {
  return textsOf(scene.items)
    .map(({ text }) => text)
    .join("\n");
}

/** The words of the first group of this name, joined by spaces, as a reader takes wrapped lines in. */
export function wordsIn(scene: Scene, name: string): string {
  const [group] = groupsOf(scene.items, name);
  return group === undefined
    ? ""
    : textsOf(group.items)
        .map(({ text }) => text)
        .join(" ");
}

/** The words of a table column by column, so that a cell that is broken into lines reads on. */
export function wordsOfTable(scenes: readonly Scene[], name: string): string {
  const texts = scenes.flatMap(({ items }) => groupsOf(items, name)).flatMap(({ items }) => textsOf(items));
  const columns = new Map<number, string[]>();
  for (const { text, at } of texts) columns.set(Math.round(at.x), [...(columns.get(Math.round(at.x)) ?? []), text]);
  return [...columns.values()].flat().join(" ");
}
