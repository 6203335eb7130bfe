/** Ways through a scene, for tests. */
import type { Scene, SceneGroup, SceneItem } from "../../../src/sheets/index.js";

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
